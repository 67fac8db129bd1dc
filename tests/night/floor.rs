//! Where flasks stand in a kiln: figures of a check by hand, wishes against trying everything, loads of every kind measured anew.

use pourbook::calc::kiln_floor::{
    Arrangement, Bound, Column, Fault, Flask, Floor, FloorError, Hottest, Place, Room, Row, Shape, Why, Zones, arrange, check, third,
    zone_k,
};

const EVEN: Zones = Zones { hottest: Hottest::Even, hot_k: 0.0, cold_k: 0.0 };

fn rectangle(width_mm: f64, depth_mm: f64, wall_mm: f64, gap_mm: f64, zones: Zones) -> Floor {
    Floor { shape: Shape::Rectangle { width_mm, depth_mm }, height_mm: 150.0, wall_mm, gap_mm, zones }
}

fn flask(key: u32, diameter_mm: f64) -> Flask {
    Flask { key, diameter_mm, height_mm: 100.0, warmth: 0, pour: None, held_mm: None }
}

fn place(key: u32, x: f64, y: f64) -> Place {
    Place { key, at_mm: [x, y] }
}

fn at(found: &Arrangement, key: u32) -> [f64; 2] {
    found.standing.iter().find(|standing| standing.key == key).unwrap().at_mm
}

fn zones(hottest: Hottest) -> Zones {
    Zones { hottest, hot_k: 10.0, cold_k: 30.0 }
}

#[test]
fn a_check_tells_every_fault_with_its_figures() {
    let floor = rectangle(400.0, 300.0, 20.0, 10.0, EVEN);
    let mut flasks: Vec<Flask> = (1..=7).map(|key| flask(key, 100.0)).collect();
    flasks[6].height_mm = 151.0;
    // 1 and 2: 90 apart, 10 in each other. 2 and 3: 104 apart, 4 between them where 10 must be.
    // 4: 45 from the left wall, so 5 through it. 5: 65 from the back, 15 to the wall where 20 must be. 7 is 1 too high.
    let places = [
        place(1, 80.0, 80.0),
        place(2, 170.0, 80.0),
        place(3, 274.0, 80.0),
        place(4, 45.0, 220.0),
        place(5, 180.0, 235.0),
        place(6, f64::NAN, 80.0),
        place(7, 320.0, 225.0),
        place(1, 80.0, 80.0),
        place(9, 80.0, 80.0),
    ];
    let faults = check(&floor, &flasks, &places).unwrap();
    let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
    assert_eq!(faults.len(), 8, "{faults:?}");
    assert!(matches!(faults[0], Fault::Outside { key: 4, by_mm } if near(by_mm, 5.0)), "{faults:?}");
    assert!(matches!(faults[1], Fault::NearWall { key: 5, has_mm, needs_mm } if near(has_mm, 15.0) && near(needs_mm, 20.0)), "{faults:?}");
    assert_eq!(faults[2], Fault::Number { key: 6 });
    assert_eq!(faults[3], Fault::TooHigh { key: 7, needs_mm: 151.0, has_mm: 150.0 });
    assert_eq!([faults[4], faults[5]], [Fault::Twice { key: 1 }, Fault::Unknown { key: 9 }]);
    assert!(matches!(faults[6], Fault::Overlap { keys: [1, 2], by_mm } if near(by_mm, 10.0)), "{faults:?}");
    assert!(
        matches!(faults[7], Fault::TooNear { keys: [2, 3], has_mm, needs_mm } if near(has_mm, 4.0) && near(needs_mm, 10.0)),
        "{faults:?}"
    );
    // In a round kiln of 400: 3-4-5 from its middle (200, 200), the middle of the flask is 150 out, so 50 - 50 = 0 to the wall.
    let round = Floor { shape: Shape::Round { diameter_mm: 400.0 }, ..floor };
    let faults = check(&round, &flasks[..1], &[place(1, 290.0, 320.0)]).unwrap();
    assert!(matches!(faults[..], [Fault::NearWall { key: 1, has_mm, .. }] if near(has_mm, 0.0)), "{faults:?}");
}

#[test]
fn what_is_short_by_a_hair_is_not_short() {
    let floor = rectangle(400.0, 300.0, 20.0, 10.0, EVEN);
    let flasks = [flask(1, 100.0), flask(2, 100.0)];
    let faults = |x: f64, y: f64| check(&floor, &flasks, &[place(1, 70.0, 70.0), place(2, x, y)]).unwrap().len();
    // 110 apart and 70 from the wall are just enough; a hundredth less is none, a twentieth of a millimetre is.
    assert_eq!([faults(180.0, 70.0), faults(179.99, 69.99), faults(179.95, 70.0), faults(180.0, 69.95)], [0, 0, 1, 1]);
}

#[test]
fn zones_fall_in_a_straight_line_and_have_names() {
    let back = rectangle(300.0, 400.0, 0.0, 0.0, zones(Hottest::Back));
    // From +10 at the back to -30 at the door over 400: 0.1 K a millimetre, nought 100 before the back.
    for (y, k) in [(400.0, 10.0), (300.0, 0.0), (200.0, -10.0), (0.0, -30.0)] {
        assert!((zone_k(&back, [77.0, y]) - k).abs() < 1e-9);
        assert!((zone_k(&Floor { zones: zones(Hottest::Front), ..back }, [77.0, 400.0 - y]) - k).abs() < 1e-9);
    }
    for (x, k) in [(0.0, 10.0), (75.0, 0.0), (300.0, -30.0)] {
        assert!((zone_k(&Floor { zones: zones(Hottest::Left), ..back }, [x, 9.0]) - k).abs() < 1e-9);
        assert!((zone_k(&Floor { zones: zones(Hottest::Right), ..back }, [300.0 - x, 9.0]) - k).abs() < 1e-9);
    }
    // The middle of 300 × 400 is 250 from its corners: halfway out 10 - 20.
    let middle = Floor { zones: zones(Hottest::Middle), ..back };
    for (place, k) in [([150.0, 200.0], 10.0), ([225.0, 300.0], -10.0), ([0.0, 0.0], -30.0)] {
        assert!((zone_k(&middle, place) - k).abs() < 1e-9);
    }
    assert_eq!(third(&back, [99.0, 300.0]), (Row::Back, Column::Left));
    assert_eq!(third(&back, [150.0, 100.0]), (Row::Front, Column::Middle));
    assert_eq!(third(&back, [201.0, 200.0]), (Row::Middle, Column::Right));
}

#[test]
fn one_narrow_row_stands_in_the_order_of_pouring() {
    // 5 of 100 with 10 between and 20 to the walls need 2·20 + 5·100 + 4·10 = 580.
    let floor = rectangle(140.0, 580.0, 20.0, 10.0, EVEN);
    let flasks: Vec<Flask> = [3, 1, 4, 0, 2].iter().map(|pour| Flask { pour: Some(*pour), ..flask(10 + pour, 100.0) }).collect();
    let found = arrange(&floor, &flasks).unwrap();
    assert_eq!((found.room, found.left.len(), found.reached_over.len()), (Room::Enough, 0, 0));
    for pour in 0..5 {
        let [x, y] = at(&found, 10 + pour);
        assert!((x - 70.0).abs() < 0.02 && (y - (70.0 + 110.0 * f64::from(pour))).abs() < 0.05, "{pour}: {x}, {y}");
    }
    // A kiln that is hot at the door turns the row where the last poured are thin; then every one is reached over the ones before it.
    let hot = Floor { zones: zones(Hottest::Front), ..floor };
    let thin: Vec<Flask> = flasks.iter().map(|flask| Flask { warmth: flask.pour.unwrap() as i32, ..*flask }).collect();
    let found = arrange(&hot, &thin).unwrap();
    assert!(at(&found, 14)[1] < at(&found, 13)[1] && at(&found, 11)[1] < at(&found, 10)[1]);
    assert_eq!(found.reached_over.len(), 10);
}

#[test]
fn what_cannot_stand_is_told_apart_from_what_was_not_found() {
    // A row for three: their middles have 210 × 4 to stand on, and 99.9 to the side of each other; by area there would be room for a fourth.
    let floor = rectangle(310.0, 104.0, 0.0, 0.0, EVEN);
    let flasks: Vec<Flask> = (0..4).map(|key| Flask { pour: Some(key), ..flask(key, 100.0) }).collect();
    let found = arrange(&floor, &flasks).unwrap();
    assert_eq!(found.room, Room::Full(Bound::Close { diameter_mm: 100.0, wanted: 4, most: 3 }));
    assert_eq!(found.left.iter().map(|left| (left.key, left.why)).collect::<Vec<_>>(), [(3, Why::NoRoom)]);
    // Four of 100 cover 31 416, more than 300 × 104 = 31 200; three stand.
    let found = arrange(&rectangle(300.0, 104.0, 0.0, 0.0, EVEN), &flasks).unwrap();
    assert!(
        matches!(found.room, Room::Full(Bound::Area { needs_mm2, has_mm2 }) if needs_mm2 > 31_390.0 && has_mm2 < 31_220.0),
        "{found:?}"
    );
    // Two of 200 in 390 × 210: their middles have 190 × 10, 190.3 from corner to corner.
    let narrow = rectangle(390.0, 210.0, 0.0, 0.0, EVEN);
    let found = arrange(&narrow, &[flask(1, 200.0), flask(2, 200.0)]).unwrap();
    assert_eq!(found.room, Room::Full(Bound::Close { diameter_mm: 200.0, wanted: 2, most: 1 }));
    // Ten of 100 in 299 × 340: the literature has nine in a square of 300, but no bound here rules ten out.
    let ten: Vec<Flask> = (0..10).map(|key| flask(key, 100.0)).collect();
    let found = arrange(&rectangle(299.0, 340.0, 0.0, 0.0, EVEN), &ten).unwrap();
    assert!(matches!(found.room, Room::NotFound { at_most: 10 }), "{found:?}");
    let by_itself = [Flask { height_mm: 151.0, ..flask(1, 50.0) }, flask(2, 211.0), flask(3, 210.0)];
    let found = arrange(&narrow, &by_itself).unwrap();
    assert_eq!((found.room, found.standing.len()), (Room::Enough, 1));
    assert_eq!(found.left[0].why, Why::TooHigh { needs_mm: 151.0, has_mm: 150.0 });
    assert_eq!(found.left[1].why, Why::TooWide { needs_mm: 211.0, has_mm: 210.0 });
}

#[test]
fn what_was_put_by_hand_stays_and_the_others_stand_around_it() {
    let floor = rectangle(320.0, 320.0, 10.0, 10.0, zones(Hottest::Back));
    let held = Flask { held_mm: Some([160.0, 160.0]), ..flask(1, 100.0) };
    // From a flask in the middle to a corner flask of 80: √2 · 110 = 155.6, and 50 + 10 + 40 is needed.
    let four: Vec<Flask> = [held].into_iter().chain((2..6).map(|key| flask(key, 80.0))).collect();
    let found = arrange(&floor, &four).unwrap();
    assert_eq!((found.standing.len(), at(&found, 1)), (5, [160.0, 160.0]));
    // One of 140 in the corner: √2 · (160 - 80) = 113 apart, and 50 + 10 + 70 is needed: there is no place at all.
    let found = arrange(&floor, &[held, flask(2, 140.0)]).unwrap();
    assert_eq!(found.left.iter().map(|left| (left.key, left.why)).collect::<Vec<_>>(), [(2, Why::HeldInTheWay)]);
    assert_eq!(found.room, Room::Enough);
    // What is wrong by hand stays wrong, and is told.
    let wrong = [held, Flask { held_mm: Some([170.0, 160.0]), ..flask(2, 100.0) }, flask(3, 50.0)];
    let found = arrange(&floor, &wrong).unwrap();
    assert!(matches!(found.held_faults[..], [Fault::Overlap { keys: [1, 2], by_mm }] if (by_mm - 90.0).abs() < 1e-9));
    assert_eq!((found.standing.len(), at(&found, 2)), (3, [170.0, 160.0]));
}

/// Sums of both wishes, from the positions: importance by whole kelvins, then order of pouring by whole millimetres from the door.
fn wishes(floor: &Floor, flasks: &[Flask], places: &[[f64; 2]]) -> (i64, i64) {
    let mut pours: Vec<u32> = flasks.iter().filter_map(|flask| flask.pour).collect();
    pours.sort_unstable();
    pours.dedup();
    let (mut warm, mut late) = (0, 0);
    for (flask, at) in flasks.iter().zip(places) {
        warm += i64::from(flask.warmth) * zone_k(floor, *at).round() as i64;
        if let Some(pour) = flask.pour {
            let rank = pours.iter().position(|other| *other == pour).unwrap() as i64;
            late += (2 * rank - (pours.len() as i64 - 1)) * at[1].round() as i64;
        }
    }
    (warm, late)
}

fn in_order(found: &Arrangement, flasks: &[Flask]) -> Vec<[f64; 2]> {
    flasks.iter().map(|flask| at(found, flask.key)).collect()
}

#[test]
fn no_exchange_of_equal_flasks_would_be_better() {
    // All 720 ways to put six equal flasks on the places found.
    let floor = rectangle(420.0, 300.0, 15.0, 12.0, zones(Hottest::Back));
    for case in 0..12_u32 {
        let wish =
            |key: u32| Flask { warmth: ((key * 7 + case * 5) % 4) as i32 - 1, pour: Some((key * 5 + case) % 6), ..flask(key, 102.0) };
        let flasks: Vec<Flask> = (0..6).map(wish).collect();
        let found = arrange(&floor, &flasks).unwrap();
        assert_eq!(found.standing.len(), 6, "{:?}", found.room);
        let places = in_order(&found, &flasks);
        let reached = wishes(&floor, &flasks, &places);
        let mut best = reached;
        let mut order: Vec<usize> = (0..6).collect();
        permute(&mut order, 0, &mut |order| {
            let moved: Vec<[f64; 2]> = order.iter().map(|at| places[*at]).collect();
            best = best.max(wishes(&floor, &flasks, &moved));
        });
        assert_eq!(reached, best, "case {case}");
    }
}

fn permute(order: &mut Vec<usize>, from: usize, each: &mut dyn FnMut(&[usize])) {
    if from == order.len() {
        each(order);
    }
    for at in from..order.len() {
        order.swap(from, at);
        permute(order, from + 1, each);
        order.swap(from, at);
    }
}

#[test]
fn thin_ones_stand_as_hot_as_on_any_place_of_a_grid() {
    // Three unlike flasks on every place of a grid of 20 mm: none is better than what was found.
    for hottest in [Hottest::Back, Hottest::Front, Hottest::Left, Hottest::Right, Hottest::Middle] {
        let floor = rectangle(300.0, 260.0, 15.0, 12.0, zones(hottest));
        let flasks =
            [Flask { warmth: 3, ..flask(1, 64.0) }, Flask { warmth: 1, ..flask(2, 76.0) }, Flask { warmth: -2, ..flask(3, 102.0) }];
        let found = arrange(&floor, &flasks).unwrap();
        let reached = wishes(&floor, &flasks, &in_order(&found, &flasks)).0;
        let grid: Vec<[f64; 2]> = (0..16).flat_map(|x| (0..14).map(move |y| [f64::from(x) * 20.0, f64::from(y) * 20.0])).collect();
        let fits = |at: [f64; 2], flask: &Flask| {
            let away = 0.5 * flask.diameter_mm + 15.0;
            at[0] >= away && at[0] <= 300.0 - away && at[1] >= away && at[1] <= 260.0 - away
        };
        let clear = |a: [f64; 2], b: [f64; 2], needs: f64| (a[0] - b[0]).hypot(a[1] - b[1]) >= needs;
        let mut best = i64::MIN;
        for a in grid.iter().filter(|at| fits(**at, &flasks[0])) {
            for b in grid.iter().filter(|at| fits(**at, &flasks[1]) && clear(*a, **at, 82.0)) {
                for c in grid.iter().filter(|at| fits(**at, &flasks[2]) && clear(*a, **at, 95.0) && clear(*b, **at, 101.0)) {
                    best = best.max(wishes(&floor, &flasks, &[*a, *b, *c]).0);
                }
            }
        }
        assert!(best > i64::MIN && reached >= best, "{hottest:?}: {reached} against {best}");
    }
}

#[test]
fn numbers_that_make_no_sense_are_errors() {
    let floor = rectangle(300.0, 300.0, 10.0, 10.0, EVEN);
    for bad in [f64::NAN, f64::INFINITY, -1.0, 0.0, 1e9] {
        assert!(matches!(arrange(&floor, &[flask(7, bad)]), Err(FloorError::OutOfRange { key: Some(7), .. })));
        let wide = rectangle(bad, 300.0, 10.0, 10.0, EVEN);
        assert!(matches!(arrange(&wide, &[]), Err(FloorError::OutOfRange { key: None, .. })));
    }
    assert_eq!(arrange(&floor, &[flask(7, 50.0), flask(7, 60.0)]), Err(FloorError::SameKey { key: 7 }));
    let many: Vec<Flask> = (0..41).map(|key| flask(key, 50.0)).collect();
    assert_eq!(arrange(&floor, &many), Err(FloorError::TooMany { many: 41, most: 40 }));
    let none = arrange(&floor, &[]).unwrap();
    assert!(none.standing.is_empty() && none.left.is_empty() && none.room == Room::Enough);
}
