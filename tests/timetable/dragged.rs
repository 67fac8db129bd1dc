//! Steps in somebody's hand: pins, and starts they snap to.

use pourbook::calc::timetable::{Ask, Hours, Pin, PinKind, Problem, StepKey, nearest_allowed, next_allowed, plan, previous_allowed};

use crate::{CURE, INVEST, KILN, PRINT, SET, TREE, WASH, WORKDAYS, ask, at, problems, starts, taken, wall, whole_night, work, zone};

fn studio() -> Hours {
    let mut week = work(&WORKDAYS, (9, 0), (17, 0));
    week.extend(work(&WORKDAYS, (18, 0), (20, 0)));
    Hours { week, ..Hours::default() }
}

// The Thursday of `worked`, with an evening every day; the tree put on Tuesday at 11:00. Curing ends by 11:00, washing is from 09:30, and
// the print ends by 09:30, so it begins on Monday: by 23:30, and so as the evening ends at 20:00. Investing and all after it stay where
// they were.
#[test]
fn what_stands_before_a_pin_follows_it() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T09:00"));
    let pour = at(&zone, "2026-11-12T09:30");
    let free = plan(&ask, pour, &[]).unwrap();
    let pinned = plan(&ask, pour, &[Pin::wished(TREE, at(&zone, "2026-11-10T11:00"))]).unwrap();
    assert_eq!(starts(&zone, &pinned)[..4], ["Mon 09 20:00", "Tue 10 09:30", "Tue 10 10:00", "Tue 10 11:00"]);
    assert_eq!(starts(&zone, &pinned)[4..], starts(&zone, &free)[4..]);
    assert!(pinned.is_clear());
    assert_eq!(pinned.row(TREE).unwrap().pin, Some(PinKind::Wished));
    assert_eq!(pinned.row(WASH).unwrap().pin, None);
    // From Tuesday 12:30 to Wednesday 15:45.
    assert_eq!(pinned.row(TREE).unwrap().wait_min, 27.0 * 60.0 + 15.0);
}

// The tree put 20 min later than planned, at 14:35: it ends at 16:05, 20 min after investing begins. Then at 16:45, when somebody is
// missing from 17:00 to 18:00, and it ends at 18:15, 2.5 h after investing began.
#[test]
fn a_pin_too_late_is_told() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T09:00"));
    let told = |wall: &str| problems(&plan(&ask, at(&zone, "2026-11-12T09:30"), &[Pin::wished(TREE, at(&zone, wall))]).unwrap());
    assert_eq!(told("2026-11-11T14:15"), []);
    assert_eq!(told("2026-11-11T14:35"), [(TREE, Problem::Overlaps { by_min: 20.0 })]);
    let missing = Problem::OutsideHours { at: at(&zone, "2026-11-11T17:00"), minutes: 60.0 };
    assert_eq!(told("2026-11-11T16:45"), [(TREE, missing), (TREE, Problem::Overlaps { by_min: 150.0 })]);
}

// Setting cannot be put apart from investing: pinned an hour early, at 15:30, it takes investing with it (14:45 to 15:30), and waits an
// hour more.
#[test]
fn what_must_follow_at_once_goes_along() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T09:00"));
    let table = plan(&ask, at(&zone, "2026-11-12T09:30"), &[Pin::wished(SET, at(&zone, "2026-11-11T15:30"))]).unwrap();
    assert_eq!(wall(&zone, table.row(INVEST).unwrap().start), "Wed 11 14:45");
    assert_eq!(table.row(SET).unwrap().wait_min, 60.0);
    assert!(table.is_clear());
}

// On Wednesday at noon, everything up to curing is done: no fault is found with it, though the print was started on a Sunday. What is left
// is planned as before, and a wish to have it begin yesterday is told.
#[test]
fn what_is_done_is_a_fact() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-11T12:00"));
    let pour = at(&zone, "2026-11-12T09:30");
    let mut pins = vec![Pin::done(CURE, at(&zone, "2026-11-11T10:00")), Pin::done(PRINT, at(&zone, "2026-11-08T15:00"))];
    let table = plan(&ask, pour, &pins).unwrap();
    assert_eq!(starts(&zone, &table)[..5], ["Sun 08 15:00", "Wed 11 09:30", "Wed 11 10:00", "Wed 11 14:15", "Wed 11 15:45"]);
    assert!(table.is_clear(), "{:?}", problems(&table));
    assert_eq!(table.rows.iter().map(|row| row.over).collect::<Vec<_>>(), [true, true, true, false, false, false, false, false]);
    assert_eq!(table.next().unwrap().key, TREE);
    pins.push(Pin::wished(TREE, at(&zone, "2026-11-10T12:00")));
    let told = plan(&ask, pour, &pins).unwrap();
    assert_eq!(told.row(TREE).unwrap().problems, [Problem::Past { by_min: 24.0 * 60.0 }]);
    // Curing ended today at 11:00, which is 23 h after that wish.
    assert_eq!(told.row(CURE).unwrap().problems, [Problem::Overlaps { by_min: 23.0 * 60.0 }]);
}

fn snapped(zone: &jiff::tz::TimeZone, ask: &Ask<'_>, key: StepKey, wished: &str) -> [String; 3] {
    let wished = at(zone, wished);
    [previous_allowed, nearest_allowed, next_allowed].map(|of| of(ask, key, wished).unwrap().map_or("none".to_owned(), |at| wall(zone, at)))
}

// The tree takes 90 min, by hand all the time: Tuesday it may begin from 09:00 to 15:30 and from 18:00 to 18:30.
#[test]
fn starts_snap_to_where_the_step_may_begin() {
    let zone = zone("Europe/Dublin");
    let (steps, mut hours) = (whole_night(), studio());
    hours.taken = vec![taken(&zone, "2026-11-10T12:00", "2026-11-10T13:02")];
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T10:02"));
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-10T11:07"), ["Tue 10 11:05", "Tue 10 11:05", "Tue 10 11:10"]);
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-10T11:10"), ["Tue 10 11:05", "Tue 10 11:10", "Tue 10 11:15"]);
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-10T16:00"), ["Tue 10 15:30", "Tue 10 15:30", "Tue 10 18:00"]);
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-10T18:30"), ["Tue 10 18:25", "Tue 10 18:30", "Wed 11 09:00"]);
    // Halfway between 15:30 and 18:00 the earlier one.
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-10T16:45")[1], "Tue 10 15:30");
    // Nothing begins before now.
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-06T10:00"), ["none", "Mon 09 10:05", "Mon 09 10:05"]);
    // Burnout takes 14 h of a kiln that is taken from 12:00 to 13:02, and is started by hand: by Mon 22:00, so 20:00 in the evening; then
    // from 13:05.
    let kiln = crate::BURNOUT;
    assert_eq!(snapped(&zone, &ask, kiln, "2026-11-10T09:00"), ["Mon 09 20:00", "Tue 10 13:05", "Tue 10 13:05"]);
    assert_eq!(steps[7].uses, Some(KILN));
}

// Somebody is there from 08:58 to 10:28, just as long as the tree takes: the one start that is allowed is not on the grid, and is offered.
#[test]
fn a_slot_without_a_point_of_the_grid_offers_its_beginning() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), Hours { week: work(&[jiff::civil::Weekday::Tuesday], (8, 58), (10, 28)), ..Hours::default() });
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T10:02"));
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-10T08:58"), ["none", "Tue 10 08:58", "Tue 17 08:58"]);
    assert_eq!(snapped(&zone, &ask, TREE, "2026-11-14T03:00"), ["Tue 10 08:58", "Tue 17 08:58", "Tue 17 08:58"]);
}
