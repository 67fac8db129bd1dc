//! Trees as they stand: reach, rise and gaps worked by hand, and rooms that are never larger than what is there.

use pourbook::calc::all_rules;
use pourbook::calc::rule::How;
use pourbook::calc::solid::Point;
use pourbook::calc::stand::{Form, Hang, Part, Trunk, room, stand};

use super::Dice;

const TRUNK: Trunk = Trunk { diameter_mm: 8.0, length_mm: 60.0, dome_mm: 15.0 };

fn hang(joint_mm: f64, around_deg: f64, angle_deg: f64, sides: [f64; 3]) -> Hang {
    Hang { joint_mm, around_deg, angle_deg, twist_deg: 0.0, feed_diameter_mm: 3.0, feed_length_mm: 6.0, form: Form::Sides(sides) }
}

/// A rule of the book by its key, as a function.
fn rule(key: &str) -> fn(&[f64]) -> f64 {
    let rule = all_rules().into_iter().find(|rule| rule.id == key).unwrap();
    let How::Formula { call, .. } = rule.how else { panic!("{key} is a formula") };
    call
}

#[test]
fn it_stands_as_the_rules_of_reach_and_rise_say() {
    let (reach, rise) = (rule("tree.reach"), rule("tree.rise"));
    for angle in [20.0, 45.0, 60.0, 90.0] {
        for around in [0.0, 37.0, 200.0] {
            let [along, across, deep] = [22.0, 9.0, 4.0];
            let tree = stand(&TRUNK, &[hang(50.0, around, angle, [along, across, deep])]);
            let piece = &tree.pieces[0];
            assert!((piece.reach() - reach(&[8.0, 6.0, along, across, deep, angle])).abs() < 1e-12, "{angle} {around}");
            assert!((piece.heights()[1] - 50.0 - rise(&[6.0, along, across, angle])).abs() < 1e-12, "{angle} {around}");
        }
    }
}

#[test]
fn gaps_worked_by_hand() {
    // Six straight out, 12 × 5 × 4, feet 10 mm from the axis: neighbours are nearest at their inner edges, 2 (10 sin 30° − 2 cos 30°) apart.
    let six: Vec<Hang> = (0..6).map(|k| hang(40.0, 60.0 * f64::from(k), 90.0, [12.0, 5.0, 4.0])).collect();
    let tree = stand(&TRUNK, &six);
    let found = room(&tree, 60.0, 90.0, 8.0);
    let between: Vec<_> = found.tight.iter().filter(|between| matches!(between.parts, [Part::Piece(_), Part::Piece(_)])).collect();
    assert_eq!(between.len(), 6);
    let truth = 10.0 - 2.0 * 3.0_f64.sqrt();
    assert!(between.iter().all(|between| (between.apart.at_least_mm - truth).abs() < 1e-9), "{truth} {between:?}");
    // The far corners stand at √(22² + 2²); the upper sides at 42.5; the trunk ends at 75.
    let wall = 30.0 - 488.0_f64.sqrt();
    assert!(found.wall_mm.iter().all(|room| (room - wall).abs() < 1e-12), "{:?}", found.wall_mm);
    assert!((found.top_mm - 15.0).abs() < 1e-12 && (found.bottom_mm - 37.5).abs() < 1e-12, "{found:?}");
    // Each stands 6 mm off the trunk's surface.
    let to_trunk = found.tight.iter().filter(|between| between.parts[0] == Part::Trunk).map(|between| between.apart.at_least_mm);
    assert!(to_trunk.clone().count() == 6 && to_trunk.into_iter().all(|gap| (gap - 6.0).abs() < 1e-9));

    // Two tiers straight out, 11 mm apart, 5 mm upright: 6 mm between.
    let tiers = stand(&TRUNK, &[hang(30.0, 0.0, 90.0, [12.0, 5.0, 4.0]), hang(41.0, 0.0, 90.0, [12.0, 5.0, 4.0])]);
    let pair = room(&tiers, 60.0, 90.0, 8.0).tight.into_iter().find(|between| between.parts == [Part::Piece(0), Part::Piece(1)]).unwrap();
    assert!((pair.apart.at_least_mm - 6.0).abs() < 1e-12, "{pair:?}");
    // Leaning at 45° the same tiers are nearer by the cosine: 11 / √2 − 5.
    let leaning = stand(&TRUNK, &[hang(30.0, 0.0, 45.0, [12.0, 5.0, 4.0]), hang(41.0, 0.0, 45.0, [12.0, 5.0, 4.0])]);
    let pair = room(&leaning, 80.0, 90.0, 8.0).tight.into_iter().find(|between| between.parts == [Part::Piece(0), Part::Piece(1)]).unwrap();
    assert!((pair.apart.at_least_mm - (11.0 / 2.0_f64.sqrt() - 5.0)).abs() < 1e-9, "{pair:?}");
    // Turned a quarter about its feed, a piece is as wide as it was high.
    let twisted = stand(&TRUNK, &[Hang { twist_deg: 90.0, ..hang(40.0, 0.0, 90.0, [12.0, 5.0, 4.0]) }]);
    assert!((twisted.pieces[0].heights()[1] - 42.0).abs() < 1e-12);
    assert!((twisted.pieces[0].reach() - (22.0_f64.powi(2) + 2.5_f64.powi(2)).sqrt()).abs() < 1e-12);
}

#[test]
fn a_piece_that_does_not_go_in_has_less_than_no_room() {
    let tree = stand(&TRUNK, &[hang(20.0, 0.0, 90.0, [30.0, 5.0, 4.0]), hang(22.0, 3.0, 90.0, [30.0, 5.0, 4.0])]);
    let found = room(&tree, 60.0, 70.0, 5.0);
    assert!(found.wall_mm.iter().all(|room| *room < 0.0) && found.top_mm < 0.0);
    assert!(found.tight[0].apart.at_least_mm < 0.0 && found.tight[0].parts == [Part::Piece(0), Part::Piece(1)], "{:?}", found.tight[0]);
}

#[test]
fn no_room_is_larger_than_what_is_there() {
    let mut dice = Dice(11);
    for _ in 0..60 {
        let hangs: Vec<Hang> = (0..8)
            .map(|_| Hang {
                twist_deg: dice.between(0.0, 360.0),
                ..hang(
                    dice.between(20.0, 70.0),
                    dice.between(0.0, 360.0),
                    dice.between(20.0, 100.0),
                    [0, 1, 2].map(|_| dice.between(2.0, 14.0)),
                )
            })
            .collect();
        let boxes = stand(&TRUNK, &hangs);
        // What hangs there is less than its box: an ellipsoid of the same sides, as a hull of some of its points.
        let round: Vec<Hang> = hangs
            .iter()
            .map(|hang| {
                let Form::Sides([along, across, deep]) = hang.form else { panic!("a box") };
                let points = (0..60).map(|_| dice.way()).map(|[x, y, z]| [0.5 * along * (1.0 + x), 0.5 * across * y, 0.5 * deep * z]);
                Hang { form: Form::Hull(points.collect()), ..hang.clone() }
            })
            .collect();
        let hulls = stand(&TRUNK, &round);
        let [in_boxes, in_hulls] = [&boxes, &hulls].map(|tree| room(tree, 70.0, 100.0, 1e9));
        for (boxed, hulled) in in_boxes.wall_mm.iter().zip(&in_hulls.wall_mm) {
            assert!(boxed <= &(hulled + 1e-12), "a box is never farther from the wall than what is in it");
        }
        // Any two points of two pieces are at least as far apart as the two are said to be.
        let corners = |tree: &pourbook::calc::stand::Standing, at: usize| -> Vec<Point> {
            let pourbook::calc::solid::Solid::Hull(points) = &tree.pieces[at] else { panic!("a hull") };
            points.clone()
        };
        for between in in_hulls.tight.iter().filter(|between| between.apart.at_least_mm > 0.0) {
            let [Part::Piece(one), Part::Piece(other)] = between.parts else { continue };
            let (a, b) = (corners(&hulls, one), corners(&hulls, other));
            let pairs = a.iter().flat_map(|a| b.iter().map(move |b| (0..3).map(|k| (a[k] - b[k]).powi(2)).sum::<f64>().sqrt()));
            assert!(pairs.fold(f64::INFINITY, f64::min) >= between.apart.at_least_mm - 1e-12);
            let boxed = in_boxes.tight.iter().find(|other| other.parts == between.parts).unwrap();
            assert!(boxed.apart.at_least_mm <= between.apart.at_least_mm + 1e-9, "{boxed:?} {between:?}");
        }
    }
}

#[test]
fn what_is_asked_for_by_nearness_is_all_of_it() {
    let hangs: Vec<Hang> = (0..24).map(|k| hang(25.0 + 2.0 * f64::from(k), 50.0 * f64::from(k), 60.0, [9.0, 6.0, 5.0])).collect();
    let tree = stand(&TRUNK, &hangs);
    let all = room(&tree, 80.0, 120.0, 1e9).tight;
    let near = room(&tree, 80.0, 120.0, 4.0).tight;
    let those: Vec<_> = all.iter().filter(|between| between.apart.at_least_mm < 4.0).collect();
    assert!(near.len() > 5 && near.len() < all.len() && near.iter().eq(those));
}
