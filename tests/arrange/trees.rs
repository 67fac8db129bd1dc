//! Trees as a caster builds them.

use std::cell::Cell;
use std::time::Instant;

use pourbook::calc::arrange::{Arrangement, CannotArrange, Held, Limits, STEPS, Task, Wanted, arrange, check, cost, places};
use pourbook::calc::stand::{Form, Hang, Trunk};

use super::apart::spare;
use super::world::{Dice, LIMITS, TRUNK, charms, egg, equal, piece, ring, straight};

/// Arranges with all steps, checks by the program and by planes, and prints a line.
fn arranged(name: &str, task: &Task) -> Arrangement {
    let begun = Instant::now();
    let found = arrange(task, STEPS, &|_| true).unwrap_or_else(|why| panic!("{name}: {why:?}"));
    let taken = begun.elapsed().as_secs_f64();
    check(task, &found.hangs).unwrap();
    let spare = spare(task, &found.hangs);
    assert!(spare > -1e-6, "{name}: {spare}");
    assert_eq!(found.cost, cost(task, &found.hangs));
    assert!(!found.stopped);
    println!(
        "{name}: {taken:.2} s, {} steps; heavy {:.4}, thin {:.4}, balance {:.1e}; tiers {:?}; {spare:.1e} mm to spare",
        found.steps,
        found.cost.heavy,
        found.cost.thin,
        found.cost.balance,
        tiers(&found.hangs)
    );
    found
}

/// The height of every tier and how many hang there.
fn tiers(hangs: &[Hang]) -> Vec<(f64, usize)> {
    let mut joints: Vec<f64> = hangs.iter().map(|hang| hang.joint_mm).collect();
    joints.sort_by(f64::total_cmp);
    let mut found: Vec<(f64, usize)> = Vec::new();
    for joint in joints {
        match found.last_mut() {
            Some((at, many)) if joint - *at < 1e-6 => *many += 1,
            _ => found.push((joint, 1)),
        }
    }
    found
}

/// How far the angles of those at this height are from even, in degrees.
fn uneven(hangs: &[Hang], joint: f64) -> f64 {
    let mut angles: Vec<f64> =
        hangs.iter().filter(|hang| (hang.joint_mm - joint).abs() < 1e-6).map(|hang| hang.around_deg.rem_euclid(360.0)).collect();
    angles.sort_by(f64::total_cmp);
    let even = 360.0 / angles.len() as f64;
    angles.push(angles[0] + 360.0);
    angles.windows(2).map(|two| (two[1] - two[0] - even).abs()).fold(0.0, f64::max)
}

#[test]
fn twenty_four_charms_none_like_another() {
    for seed in 1..=3 {
        let found = arranged("24 charms", &charms(24, seed));
        assert!(found.cost.balance < 1e-3 && found.cost.heavy < 0.1 && found.cost.thin < 0.1, "{:?}", found.cost);
        let tiers = tiers(&found.hangs);
        assert!(tiers.len() <= 12, "{tiers:?}");
    }
}

#[test]
fn eighteen_rings_stand_in_even_staggered_tiers() {
    let found = arranged("18 rings", &equal(18, &piece(ring(20.0, 3.0), 3.0, 1.5)));
    let tiers = tiers(&found.hangs);
    assert_eq!(tiers.iter().map(|(_, many)| *many).collect::<Vec<_>>(), [6, 6, 6]);
    assert!(tiers.iter().all(|(joint, _)| uneven(&found.hangs, *joint) < 1e-6));
    let first = |joint: f64| found.hangs.iter().find(|hang| (hang.joint_mm - joint).abs() < 1e-6).unwrap().around_deg.rem_euclid(60.0);
    for two in tiers.windows(2) {
        let off = (first(two[1].0) - first(two[0].0)).rem_euclid(60.0);
        assert!((off - 30.0).abs() < 1e-6, "{off}");
    }
    assert!(found.cost.total < 1e-12, "{:?}", found.cost);
}

#[test]
fn a_figure_stands_on_one_heavy_sprue() {
    let figure = Wanted { feed_length_mm: 6.0, feed_diameter_mm: 6.0, angle_deg: 15.0, ..piece(egg([35.0, 22.0, 18.0], 48), 40.0, 2.0) };
    let task = Task { trunk: Trunk { length_mm: 25.0, ..TRUNK }, pieces: vec![figure], limits: LIMITS };
    let found = arranged("a figure", &task);
    // One piece cannot be balanced by another.
    assert!((found.cost.balance - 1.0).abs() < 1e-12 && found.cost.heavy == 0.0 && found.cost.thin == 0.0);
}

#[test]
fn equal_pieces_of_one_tier_come_to_what_is_known_by_hand() {
    for many in 4..=6 {
        let found = arranged("one tier", &equal(many, &piece(egg([14.0, 8.0, 5.0], 40), 2.0, 1.0)));
        assert_eq!(tiers(&found.hangs).len(), 1);
        assert!(uneven(&found.hangs, found.hangs[0].joint_mm) < 1e-6);
        assert!(found.cost.total < 1e-12, "{:?}", found.cost);
    }
}

#[test]
fn two_weights_of_one_form_hang_opposite_to_their_like() {
    // 5 g, 5 g, 1 g, 1 g, in an order that is not balanced: 5 opposite 5, 1 opposite 1 is, at any angle between.
    let mut task = equal(4, &straight([12.0, 5.0, 4.0]));
    for (piece, weight) in task.pieces.iter_mut().zip([5.0, 5.0, 1.0, 1.0]) {
        piece.weight_g = weight;
    }
    let found = arranged("two weights", &task);
    assert!(found.cost.total < 1e-9, "{:?}", found.cost);
    let off = (found.hangs[0].around_deg - found.hangs[1].around_deg).rem_euclid(360.0);
    assert!((off - 180.0).abs() < 0.01, "{off}");
}

/// Tiers of four in the order of the task, evenly over the trunk, each staggered to the one below.
fn plain(task: &Task, joints: &[f64]) -> Vec<Hang> {
    let hang = |(at, wanted): (usize, &Wanted)| {
        let (tier, seat) = (at / 4, at % 4);
        wanted.hang(joints[tier], 90.0 * seat as f64 + 45.0 * (tier % 2) as f64, 0.0)
    };
    task.pieces.iter().enumerate().map(hang).collect()
}

#[test]
fn the_search_betters_plain_even_tiers() {
    let (mut compared, mut plain_sum, mut found_sum) = (0, 0.0, 0.0);
    for seed in 20..40 {
        let task = charms(12, seed);
        let plain = plain(&task, &[20.0, 40.0, 60.0]);
        if check(&task, &plain).is_err() {
            continue;
        }
        let found = arrange(&task, STEPS, &|_| true).unwrap();
        let (before, after) = (cost(&task, &plain).total, found.cost.total);
        assert!(after < 0.5 * before, "{seed}: {after} after {before}");
        (compared, plain_sum, found_sum) = (compared + 1, plain_sum + before, found_sum + after);
    }
    let mean = |sum: f64| sum / f64::from(compared);
    println!("{compared} trees of 12 charms: plain tiers cost {:.4} on average, the search {:.4}", mean(plain_sum), mean(found_sum));
    assert!(compared >= 8, "{compared}");
}

#[test]
fn what_was_put_by_hand_stays() {
    let mut task = charms(12, 4);
    let held = [Held { joint_mm: 33.3, around_deg: -20.5, twist_deg: 12.0 }, Held { joint_mm: 50.0, around_deg: 200.0, twist_deg: 90.0 }];
    task.pieces[1].held = Some(held[0]);
    task.pieces[6].held = Some(held[1]);
    let found = arranged("two held", &task);
    for (at, held) in [(1, held[0]), (6, held[1])] {
        let hang = &found.hangs[at];
        assert_eq!((hang.joint_mm, hang.around_deg, hang.twist_deg), (held.joint_mm, held.around_deg, held.twist_deg));
    }
    // All held: nothing to search for, and the cost is that of what is there.
    for (wanted, hang) in task.pieces.iter_mut().zip(&found.hangs) {
        wanted.held = Some(Held { joint_mm: hang.joint_mm, around_deg: hang.around_deg, twist_deg: hang.twist_deg });
    }
    let again = arrange(&task, STEPS, &|_| true).unwrap();
    assert_eq!(again.hangs, found.hangs);
    assert_eq!(again.cost, found.cost);
}

#[test]
fn more_go_on_where_feeds_may_run_into_each_other() {
    // Eight feeds of 4 mm do not stand side by side on a trunk of 8: at the trunk they are 8 sin 22.5° = 3.06 apart.
    let task = equal(8, &Wanted { feed_diameter_mm: 4.0, feed_length_mm: 9.0, ..straight([10.0, 5.0, 4.0]) });
    let task = Task { trunk: Trunk { length_mm: 6.0, ..TRUNK }, ..task };
    assert!(matches!(arrange(&task, 20_000, &|_| true), Err(CannotArrange::RoomFor { most: 5, of: 8, .. })));
    let free = Task { limits: Limits { feeds_mm: None, ..LIMITS }, ..task };
    assert_eq!(tiers(&arranged("feeds in each other", &free).hangs).len(), 1);
}

#[test]
fn the_same_task_gets_the_same_tree() {
    for task in [charms(12, 9), charms(24, 2), equal(9, &piece(ring(18.0, 4.0), 4.0, 1.0))] {
        assert_eq!(arrange(&task, 60_000, &|_| true), arrange(&task, 60_000, &|_| true));
    }
}

#[test]
fn a_stopped_search_gives_the_best_so_far() {
    let task = charms(16, 8);
    let whole = arrange(&task, STEPS, &|_| true).unwrap();
    let mut costs = Vec::new();
    for share in [0.0, 0.002, 0.03, 0.06] {
        let last = Cell::new(0.0);
        let found = arrange(&task, STEPS, &|at| {
            assert!((0.0..=1.0).contains(&at) && at >= last.get());
            last.set(at);
            at < share
        });
        match found {
            Ok(found) => {
                check(&task, &found.hangs).unwrap();
                assert!(found.stopped && found.steps < whole.steps);
                costs.push(found.cost.total);
            }
            Err(CannotArrange::RoomFor { most, of, hangs, stopped, .. }) => {
                assert!(stopped && of == 16 && most == hangs.iter().flatten().count() && costs.is_empty());
            }
            Err(other) => panic!("{other:?}"),
        }
    }
    println!("stopped after 3 % and 6 %: {costs:?}, and {} at the end", whole.cost.total);
    assert!(costs.len() >= 2);
}

#[test]
fn as_many_as_it_says_do_go_on() {
    let mut dice = Dice(5);
    let mut rows = vec![piece(ring(20.0, 3.0), 3.0, 1.5), straight([12.0, 5.0, 4.0]), piece(Form::Sides([16.0, 8.0, 8.0]), 4.0, 1.0)];
    for _ in 0..5 {
        let sides = [dice.between(6.0, 20.0), dice.between(3.0, 12.0), dice.between(2.0, 12.0)];
        rows.push(Wanted {
            angle_deg: dice.between(40.0, 90.0),
            feed_length_mm: dice.between(7.0, 10.0),
            ..piece(egg(sides, 30), 2.0, 1.0)
        });
    }
    for one in rows {
        let many = places(&TRUNK, &one, &LIMITS).unwrap();
        let found = arrange(&equal(many as usize, &one), STEPS, &|_| true).unwrap_or_else(|why| panic!("{many}: {why:?}"));
        check(&equal(many as usize, &one), &found.hangs).unwrap();
        println!("{many} places for {:?}", one.form.clone().sides());
        assert!(many >= 5);
    }
}

/// The sides of what lies around a form, for a line of text.
trait Sides {
    fn sides(self) -> [f64; 3];
}

impl Sides for Form {
    fn sides(self) -> [f64; 3] {
        match self {
            Self::Sides(sides) => sides,
            Self::Hull(points) => [0, 1, 2].map(|k| {
                let all = || points.iter().map(|point| point[k]);
                (10.0 * (all().fold(f64::NEG_INFINITY, f64::max) - all().fold(f64::INFINITY, f64::min))).round() / 10.0
            }),
        }
    }
}
