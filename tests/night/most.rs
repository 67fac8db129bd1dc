//! How many flasks fit: against the best that the literature knows, bounds by hand; and loads of every kind, measured by another way.

use pourbook::calc::kiln_floor::{
    Flask, Floor, FloorError, Hottest, MOST_FLASKS, Room, SLACK_MM, Shape, Why, Zones, arrange, best_known_round, best_known_square, most,
    third, zone_k,
};
use proptest::prelude::*;

fn bare(shape: Shape) -> Floor {
    Floor { shape, height_mm: 150.0, wall_mm: 0.0, gap_mm: 0.0, zones: Zones::default() }
}

fn square(side: f64) -> Floor {
    bare(Shape::Rectangle { width_mm: side, depth_mm: side })
}

fn flask(key: u32, diameter_mm: f64) -> Flask {
    Flask { key, diameter_mm, height_mm: 100.0, warmth: 0, pour: None, held_mm: None }
}

/// Room that a flask has to the wall and to the others beyond what it must have, by sampling its outline for the wall.
fn spare(floor: &Floor, stands: &[([f64; 2], f64)]) -> f64 {
    let mut least = f64::INFINITY;
    for (at, (place, diameter)) in stands.iter().enumerate() {
        let reach = 0.5 * diameter + floor.wall_mm;
        match floor.shape {
            Shape::Rectangle { width_mm, depth_mm } => {
                let [x, y] = *place;
                least = [x - reach, y - reach, width_mm - x - reach, depth_mm - y - reach].into_iter().fold(least, f64::min);
            }
            Shape::Round { diameter_mm } => {
                for degree in 0..720 {
                    let (s, c) = (0.5 * f64::from(degree)).to_radians().sin_cos();
                    let (x, y) = (place[0] + reach * c - 0.5 * diameter_mm, place[1] + reach * s - 0.5 * diameter_mm);
                    least = least.min(0.5 * diameter_mm - x.hypot(y));
                }
            }
        }
        for (other, wide) in &stands[at + 1..] {
            let apart = ((place[0] - other[0]).powi(2) + (place[1] - other[1]).powi(2)).sqrt();
            least = least.min(apart - 0.5 * (diameter + wide) - floor.gap_mm);
        }
    }
    least
}

/// Both searches reach so many at this share of the best radius known.
fn reaches(floor: &Floor, many: usize, diameter: f64) {
    let found = most(diameter, floor).unwrap();
    assert!(found.count as usize >= many, "{many}: {} fit at {diameter}", found.count);
    let stands: Vec<([f64; 2], f64)> = found.places_mm.iter().map(|at| (*at, diameter)).collect();
    assert!(stands.len() == found.count as usize && spare(floor, &stands) >= -SLACK_MM, "{}", spare(floor, &stands));
    let flasks: Vec<Flask> = (0..many as u32).map(|key| flask(key, diameter)).collect();
    let stands = arrange(floor, &flasks).unwrap();
    assert_eq!((stands.standing.len(), stands.room), (many, Room::Enough), "at {diameter}");
}

#[test]
fn up_to_twenty_in_a_square_at_99_in_100_of_the_best_radius() {
    for many in 1..=20 {
        reaches(&square(1000.0), many, 0.99 * 2000.0 * best_known_square(many).unwrap());
    }
}

#[test]
fn up_to_twenty_in_a_circle_at_99_in_100_of_the_best_radius() {
    for many in 1..=20 {
        reaches(&bare(Shape::Round { diameter_mm: 1000.0 }), many, 0.99 * 1000.0 * best_known_round(many).unwrap());
    }
}

#[test]
fn no_more_stand_than_the_literature_proves_for_a_square() {
    // Just wider than so many can be: one fewer at most; it would be a wrong check, or a wrong table.
    for many in 2..=20 {
        let diameter = 1.0005 * 2000.0 * best_known_square(many).unwrap();
        let found = most(diameter, &square(1000.0)).unwrap();
        assert!((found.count as usize) < many && found.known.unwrap() < many as u32, "{many}: {found:?}");
        assert!(found.at_most >= found.known.unwrap(), "a bound below what is known to fit: {found:?}");
    }
}

#[test]
fn closed_forms_of_the_table() {
    // Two in a square along its diagonal: √2 · (1 - 2r) = 2r, r = 1 / (2 + √2). Five: four in the corners and one in the middle,
    // √2 · (1/2 - r) = 2r. Four in a circle: 1 / (1 + √2). Seven: a third.
    let root = 2.0_f64.sqrt();
    for (has, is) in [
        (best_known_square(2), 1.0 / (2.0 + root)),
        (best_known_square(5), root / (4.0 + 2.0 * root)),
        (best_known_square(9), 1.0 / 6.0),
        (best_known_round(4), 1.0 / (1.0 + root)),
        (best_known_round(3), 1.0 / (1.0 + 2.0 / 3.0_f64.sqrt())),
        (best_known_round(7), 1.0 / 3.0),
        (best_known_round(13), 1.0 / (2.0 + 5.0_f64.sqrt())),
    ] {
        assert!((has.unwrap() - is).abs() < 1e-6);
    }
    assert_eq!((best_known_square(0), best_known_square(21)), (None, None));
}

#[test]
fn how_many_by_hand() {
    // 20 to the walls, 10 between: in 580 × 140 five of 100 in one row, and the bound says so.
    let row = Floor { wall_mm: 20.0, gap_mm: 10.0, ..bare(Shape::Rectangle { width_mm: 580.0, depth_mm: 140.0 }) };
    let found = most(100.0, &row).unwrap();
    assert!(found.count == 5 && found.is_proven() && found.known.is_none());
    // Nine of 100 in 300 × 300 is the literature's best.
    let found = most(100.0, &square(300.0)).unwrap();
    assert!(found.count == 9 && found.is_known_best(), "{found:?}");
    // Thirty-nine stagger where six rows of six stand straight: rows of 6 and 5 in 600 wide, 86.6 apart; 7 rows need 100 + 6 · 86.6 = 620.
    let found = most(100.0, &bare(Shape::Rectangle { width_mm: 600.0, depth_mm: 620.0 })).unwrap();
    assert!(found.count >= 39, "{found:?}");
    assert_eq!(most(301.0, &square(300.0)).unwrap().count, 0);
    assert!(matches!(most(1.0, &square(5000.0)), Err(FloorError::TooMany { .. })));
    for bad in [f64::NAN, 0.0, -3.0, f64::INFINITY] {
        assert!(most(bad, &square(300.0)).is_err() && most(50.0, &square(bad)).is_err());
    }
}

#[test]
fn mixed_loads_that_are_known_to_fit() {
    // Rows of mixed flasks, each as full as it goes, are laid out, and the kiln is made just deep enough: so all of them fit.
    let sizes = [51.0, 63.5, 76.0, 89.0, 102.0, 127.0, 152.0];
    let (wall_mm, gap_mm, mut state) = (15.0, 12.0, 1_u64);
    let mut roll = |many: usize| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) as usize % many
    };
    for case in 0..40 {
        let width_mm = 350.0 + roll(300) as f64;
        let (mut depth_mm, mut flasks) = (2.0 * wall_mm - gap_mm, Vec::new());
        for _ in 0..2 + roll(3) {
            let (mut long, mut deep) = (2.0 * wall_mm - gap_mm, 0.0_f64);
            loop {
                let fits: Vec<f64> = sizes.iter().copied().filter(|size| long + gap_mm + size <= width_mm).collect();
                if fits.is_empty() {
                    break;
                }
                let size = fits[roll(fits.len())];
                (long, deep) = (long + gap_mm + size, deep.max(size));
                flasks.push(flask(flasks.len() as u32, size));
            }
            depth_mm += gap_mm + deep;
        }
        if flasks.len() <= MOST_FLASKS {
            let floor = Floor { wall_mm, gap_mm, ..bare(Shape::Rectangle { width_mm, depth_mm }) };
            let found = arrange(&floor, &flasks).unwrap();
            assert_eq!((found.standing.len(), found.room), (flasks.len(), Room::Enough), "case {case}");
        }
    }
}

fn floors() -> impl Strategy<Value = Floor> {
    let shape = prop_oneof![
        (120.0..900.0_f64, 120.0..900.0_f64).prop_map(|(width_mm, depth_mm)| Shape::Rectangle { width_mm, depth_mm }),
        (120.0..900.0_f64).prop_map(|diameter_mm| Shape::Round { diameter_mm }),
    ];
    let hottest = prop::sample::select(vec![Hottest::Back, Hottest::Front, Hottest::Left, Hottest::Right, Hottest::Middle, Hottest::Even]);
    (shape, 90.0..160.0_f64, 0.0..40.0_f64, 0.0..30.0_f64, hottest, 0.0..40.0_f64, 0.0..60.0_f64).prop_map(
        |(shape, height_mm, wall_mm, gap_mm, hottest, hot_k, cold_k)| Floor {
            shape,
            height_mm,
            wall_mm,
            gap_mm,
            zones: Zones { hottest, hot_k, cold_k },
        },
    )
}

fn loads() -> impl Strategy<Value = Vec<Flask>> {
    let held = prop::option::weighted(0.15, (-50.0..900.0_f64, -50.0..900.0_f64));
    let one = (51.0..152.0_f64, 60.0..155.0_f64, -5..=5_i32, prop::option::of(0..20_u32), held, any::<bool>());
    prop::collection::vec(one, 0..16).prop_map(|rows| {
        (0..)
            .zip(rows)
            .map(|(key, (wide, height_mm, warmth, pour, held, even))| Flask {
                key: key * 3,
                diameter_mm: if even { 89.0 } else { wide },
                height_mm,
                warmth,
                pour,
                held_mm: held.map(|(x, y)| [x, y]),
            })
            .collect()
    })
}

/// Whether a flask stands free beside those that are held, on any place of a grid.
fn free_on_a_grid(floor: &Floor, flask: &Flask, held: &[([f64; 2], f64)]) -> bool {
    let [width, depth] = floor.shape.sides_mm();
    (0..=60).flat_map(|x| (0..=60).map(move |y| (x, y))).any(|(x, y)| {
        let at = [width * f64::from(x) / 60.0, depth * f64::from(y) / 60.0];
        let clear =
            |(place, wide): &([f64; 2], f64)| (at[0] - place[0]).hypot(at[1] - place[1]) >= 0.5 * (wide + flask.diameter_mm) + floor.gap_mm;
        held.iter().all(clear) && spare(floor, &[(at, flask.diameter_mm)]) >= 0.0
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn whatever_stands_has_its_room(floor in floors(), flasks in loads()) {
        let found = arrange(&floor, &flasks).unwrap();
        prop_assert_eq!(&found, &arrange(&floor, &flasks).unwrap());
        let mut keys: Vec<u32> = found.standing.iter().map(|one| one.key).chain(found.left.iter().map(|one| one.key)).collect();
        keys.sort_unstable();
        prop_assert_eq!(keys, flasks.iter().map(|flask| flask.key).collect::<Vec<_>>());
        let of = |key: u32| flasks.iter().find(|flask| flask.key == key).unwrap();
        for one in &found.standing {
            prop_assert!(one.zone_k <= floor.zones.hot_k + 1e-9 && one.zone_k >= -floor.zones.cold_k - 1e-9);
            prop_assert_eq!((one.row, one.column), third(&floor, one.at_mm));
            prop_assert!((one.zone_k - zone_k(&floor, one.at_mm)).abs() < 1e-12);
            prop_assert!(of(one.key).held_mm.is_none_or(|at| at == one.at_mm) && of(one.key).height_mm <= floor.height_mm);
        }
        // Without those by hand that are wrong themselves everything keeps its room.
        let kept: Vec<([f64; 2], f64)> = found.standing.iter()
            .filter(|one| found.held_faults.is_empty() || of(one.key).held_mm.is_none())
            .map(|one| (one.at_mm, of(one.key).diameter_mm)).collect();
        prop_assert!(spare(&floor, &kept) >= -SLACK_MM - 1e-9, "{}", spare(&floor, &kept));
        let is_no_room = |why: Why| why == Why::NoRoom;
        match found.room {
            Room::Enough => prop_assert!(!found.left.iter().any(|left| is_no_room(left.why))),
            Room::NotFound { at_most } => prop_assert!((found.standing.len() as u32) < at_most),
            Room::Full(_) => prop_assert!(found.left.iter().any(|left| is_no_room(left.why))),
        }
    }

    #[test]
    fn held_in_the_way_is_proven(floor in floors(), flasks in loads()) {
        let found = arrange(&floor, &flasks).unwrap();
        let low = |flask: &&Flask| flask.height_mm <= floor.height_mm;
        let held: Vec<([f64; 2], f64)> =
            flasks.iter().filter(low).filter_map(|flask| Some((flask.held_mm?, flask.diameter_mm))).collect();
        for flask in flasks.iter().filter(low).filter(|flask| flask.held_mm.is_none()) {
            let why = found.left.iter().find(|left| left.key == flask.key).map(|left| left.why);
            let ruled_out = matches!(why, Some(Why::HeldInTheWay | Why::TooWide { .. }));
            prop_assert!(!(ruled_out && free_on_a_grid(&floor, flask, &held)));
        }
    }

    #[test]
    fn no_more_than_the_bound(floor in floors(), diameter in 51.0..152.0_f64) {
        let found = most(diameter, &floor).unwrap();
        prop_assert!(found.count <= found.at_most);
        let stands: Vec<([f64; 2], f64)> = found.places_mm.iter().map(|at| (*at, diameter)).collect();
        prop_assert!(spare(&floor, &stands) >= -SLACK_MM - 1e-9);
        // A floor where one stands has room for it, and a wider flask never fits more often.
        let wider = most(diameter * 1.5, &floor).unwrap();
        prop_assert!(wider.count <= found.count);
    }
}
