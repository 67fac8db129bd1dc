//! What cannot be, and why, with figures worked by hand; and what a check finds wrong.

use pourbook::calc::arrange::{CannotArrange, Fault, Held, LARGEST_MM, Limits, STEPS, Task, Wanted, arrange, check, cost, places};
use pourbook::calc::stand::{Form, Hang, Part, Trunk};

use super::world::{LIMITS, TRUNK, equal, straight};

fn why(task: &Task) -> CannotArrange {
    arrange(task, STEPS, &|_| true).unwrap_err()
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

#[test]
fn a_piece_too_wide_however_it_is_turned() {
    // 4 + 7 + 30 out, and at least 2 to either side: √(41² + 2²), and 6 to the wall.
    let found = why(&equal(3, &straight([30.0, 5.0, 4.0])));
    let needs = 2.0 * (1685.0_f64.sqrt() + 6.0);
    assert!(
        matches!(found, CannotArrange::TooWide { piece: 0, needs_mm, has_mm } if near(needs_mm, needs) && near(has_mm, 89.0)),
        "{found:?}"
    );
    // With so much it goes in.
    let task = Task { limits: Limits { inner_diameter_mm: needs + 1e-6, ..LIMITS }, ..equal(3, &straight([30.0, 5.0, 4.0])) };
    check(&task, &arrange(&task, STEPS, &|_| true).unwrap().hangs).unwrap();
}

#[test]
fn a_piece_too_high_and_a_trunk_too_short() {
    // Straight out, 15 up and 15 down however it is turned: joined at 10 + 15, it ends at 40, and 12 above make 52.
    let square = straight([10.0, 30.0, 30.0]);
    let trunk = Trunk { length_mm: 20.0, ..TRUNK };
    let task = Task { trunk, pieces: vec![square.clone()], limits: Limits { height_mm: 50.0, ..LIMITS } };
    let found = why(&task);
    assert!(
        matches!(found, CannotArrange::TooHigh { piece: 0, needs_mm, has_mm } if near(needs_mm, 52.0) && near(has_mm, 50.0)),
        "{found:?}"
    );
    let task = Task { limits: Limits { height_mm: 52.0 + 1e-6, ..LIMITS }, ..task };
    check(&task, &arrange(&task, STEPS, &|_| true).unwrap().hangs).unwrap();
    // 25 above the rim and 15 down: joined at 40, its feed of 2.5 ends at 41.25: 26.25 over the dome.
    let task = Task { trunk, pieces: vec![square], limits: Limits { bottom_mm: 25.0, ..LIMITS } };
    let found = why(&task);
    assert!(
        matches!(found, CannotArrange::TrunkTooShort { piece: 0, needs_mm, has_mm } if near(needs_mm, 26.25) && near(has_mm, 20.0)),
        "{found:?}"
    );
}

#[test]
fn a_trunk_too_long_or_too_thick_and_a_feed_too_short() {
    let task = Task { trunk: Trunk { length_mm: 90.0, ..TRUNK }, ..equal(2, &straight([12.0, 5.0, 4.0])) };
    let found = why(&task);
    assert!(matches!(found, CannotArrange::TrunkTooLong { needs_mm, has_mm } if near(needs_mm, 117.0) && near(has_mm, 102.0)), "{found:?}");
    let task = Task { trunk: Trunk { diameter_mm: 80.0, ..TRUNK }, ..equal(2, &straight([12.0, 5.0, 4.0])) };
    let found = why(&task);
    assert!(matches!(found, CannotArrange::TrunkTooThick { needs_mm, has_mm } if near(needs_mm, 92.0) && near(has_mm, 89.0)), "{found:?}");
    let found = why(&equal(2, &Wanted { feed_length_mm: 1.5, ..straight([12.0, 5.0, 4.0]) }));
    // 1.5 beside the trunk, and a little more beside its round end.
    assert!(
        matches!(found, CannotArrange::FeedTooShort { piece: 0, needs_mm, has_mm } if near(needs_mm, 2.0) && (1.5..1.6).contains(&has_mm)),
        "{found:?}"
    );
}

#[test]
fn room_for_so_many_of_so_many() {
    // One tier, for feeds may be joined within 2.5 mm. Inner edges of 4 mm stand 11 mm from the axis: k of them are 2 (11 sin π/k − 2 cos π/k) apart,
    // which is 2.36 for 11 and 1.83 for 12. Turned flat they are 20 wide, and fewer go on.
    let gap = |k: f64| 2.0 * (11.0 * (std::f64::consts::PI / k).sin() - 2.0 * (std::f64::consts::PI / k).cos());
    assert!(gap(11.0) > 2.3 && gap(12.0) < 1.9);
    let one = Wanted { feed_diameter_mm: 1.5, ..straight([12.0, 20.0, 4.0]) };
    let limits = Limits { bottom_mm: 6.0, ..LIMITS };
    let trunk = Trunk { length_mm: 4.0, ..TRUNK };
    let task = |many: usize| Task { trunk, limits, pieces: vec![one.clone(); many] };
    assert_eq!(places(&trunk, &one, &limits), Ok(11));
    check(&task(11), &arrange(&task(11), STEPS, &|_| true).unwrap().hangs).unwrap();
    let CannotArrange::RoomFor { most, of, hangs, stopped, .. } = arrange(&task(13), 100_000, &|_| true).unwrap_err() else { panic!() };
    assert_eq!((most, of, stopped, hangs.iter().flatten().count()), (11, 13, false, 11));
    check(&task(11), &hangs.into_iter().flatten().collect::<Vec<_>>()).unwrap();
}

#[test]
fn what_is_held_may_be_wrong_in_itself() {
    let mut task = equal(3, &straight([12.0, 5.0, 4.0]));
    let at = |joint_mm: f64, around_deg: f64| Some(Held { joint_mm, around_deg, twist_deg: 0.0 });
    (task.pieces[0].held, task.pieces[2].held) = (at(40.0, 0.0), at(41.0, 0.0));
    let found = why(&task);
    assert!(
        matches!(found, CannotArrange::Held(Fault::Between { parts: [_, Part::Feed(2) | Part::Piece(2)], needs_mm, .. }) if needs_mm == 2.0),
        "{found:?}"
    );
    (task.pieces[0].held, task.pieces[2].held) = (None, at(75.0, 0.0));
    let found = why(&task);
    // It ends 75 over the rim, and the feed is 1.25 thick to either side.
    assert!(
        matches!(found, CannotArrange::Held(Fault::OffTrunk { piece: 2, joint_mm, from_to_mm: [from, to] })
            if joint_mm == 75.0 && near(from, 16.25) && near(to, 73.75)),
        "{found:?}"
    );
}

#[test]
fn what_is_no_size_is_named() {
    let good = equal(3, &straight([12.0, 5.0, 4.0]));
    for bad in [f64::NAN, f64::INFINITY, -1.0, 2.0 * LARGEST_MM] {
        let mut task = good.clone();
        task.pieces[1].form = Form::Sides([12.0, bad, 4.0]);
        assert_eq!(why(&task), CannotArrange::BadPiece { piece: 1 });
        let mut task = good.clone();
        task.pieces[2].weight_g = bad;
        assert_eq!(why(&task), CannotArrange::BadPiece { piece: 2 });
        let mut task = good.clone();
        task.limits.wall_mm = bad;
        assert_eq!(why(&task), CannotArrange::BadFlask);
        let mut task = good.clone();
        task.trunk.diameter_mm = bad;
        assert_eq!(why(&task), CannotArrange::BadFlask);
    }
    let mut task = good.clone();
    task.pieces[0].form = Form::Hull(Vec::new());
    assert_eq!(why(&task), CannotArrange::BadPiece { piece: 0 });
    for angle_deg in [0.0, 180.0, -45.0, f64::NAN] {
        let mut task = good.clone();
        task.pieces[0].angle_deg = angle_deg;
        assert_eq!(why(&task), CannotArrange::BadPiece { piece: 0 });
    }
}

#[test]
fn a_check_finds_every_planted_fault() {
    let task = equal(4, &straight([12.0, 5.0, 4.0]));
    let good = arrange(&task, STEPS, &|_| true).unwrap().hangs;
    let planted = |change: &dyn Fn(&mut Vec<Hang>)| {
        let mut hangs = good.clone();
        change(&mut hangs);
        check(&task, &hangs).unwrap_err()
    };
    assert!(matches!(planted(&|hangs| drop(hangs.pop())), Fault::Count { has: 3, needs: 4 }));
    assert!(matches!(planted(&|hangs| hangs[1].around_deg = f64::NAN), Fault::Number { piece: 1 }));
    assert!(matches!(planted(&|hangs| hangs[2].feed_length_mm = 8.0), Fault::NotAsked { piece: 2 }));
    assert!(matches!(planted(&|hangs| hangs[3].joint_mm = 15.5), Fault::OffTrunk { piece: 3, .. }));
    assert!(matches!(planted(&|hangs| hangs[1].around_deg = hangs[0].around_deg + 1.0), Fault::Between { .. }));
    let stricter = |limits: Limits| check(&Task { limits, ..task.clone() }, &good).unwrap_err();
    assert!(matches!(stricter(Limits { wall_mm: 22.0, ..LIMITS }), Fault::Wall { needs_mm, .. } if needs_mm == 22.0));
    assert!(matches!(stricter(Limits { top_mm: 28.0, ..LIMITS }), Fault::Top { .. }));
    assert!(matches!(stricter(Limits { bottom_mm: 73.0, ..LIMITS }), Fault::Bottom { .. }));
    assert!(matches!(stricter(Limits { trunk_mm: 7.1, ..LIMITS }), Fault::Between { parts: [Part::Trunk, _], .. }));
    // At the trunk four feeds of 2.5 stand a quarter round apart: 4 √2 between their middles.
    let feeds = 4.0 * 2.0_f64.sqrt() - 2.5;
    assert!(matches!(stricter(Limits { feeds_mm: Some(feeds + 0.01), ..LIMITS }),
        Fault::Between { parts: [Part::Feed(_), Part::Feed(_)], has_mm, .. } if near(has_mm, feeds)));
    assert_eq!(check(&Task { limits: Limits { feeds_mm: None, ..LIMITS }, ..task.clone() }, &good), Ok(()));
    let mut held = task.clone();
    held.pieces[0].held = Some(Held { joint_mm: good[0].joint_mm, around_deg: good[0].around_deg + 1.0, twist_deg: 0.0 });
    assert!(matches!(check(&held, &good), Err(Fault::Moved { piece: 0 })));
}

#[test]
fn costs_worked_by_hand() {
    // 6 g at 50, 2 g at 30, opposite: 4 g × 20 mm over 4 g × 60 mm; the thicker one is above as well; (6 − 2)/(6 + 2) off.
    let mut task = equal(2, &straight([12.0, 5.0, 4.0]));
    (task.pieces[0].weight_g, task.pieces[0].thinnest_mm) = (6.0, Some(2.0));
    (task.pieces[1].weight_g, task.pieces[1].thinnest_mm) = (2.0, Some(0.5));
    let hang = |at: usize, joint: f64, around: f64| task.pieces[at].hang(joint, around, 0.0);
    let found = cost(&task, &[hang(0, 50.0, 10.0), hang(1, 30.0, 190.0)]);
    assert!(near(found.heavy, 1.0 / 3.0) && near(found.thin, 1.0 / 3.0) && near(found.balance, 0.5), "{found:?}");
    assert!(near(found.total, 3.5 / 9.0), "{found:?}");
    // Turned over, nothing is too high; together, all of it leans one way.
    let found = cost(&task, &[hang(0, 30.0, 10.0), hang(1, 50.0, 10.0)]);
    assert!(found.heavy == 0.0 && found.thin == 0.0 && near(found.balance, 1.0), "{found:?}");
    assert_eq!(cost(&Task { pieces: Vec::new(), ..task.clone() }, &[]).total, 0.0);
}
