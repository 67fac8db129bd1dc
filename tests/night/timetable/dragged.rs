//! Steps in somebody's hand: pins, and starts they snap to.

use pourbook::calc::timetable::{Ask, Hours, Pin, PinKind, Problem, StepKey, nearest_allowed, next_allowed, plan, previous_allowed};

use super::{CURE, INVEST, KILN, PRINT, SET, TREE, WASH, WORKDAYS, ask, at, problems, starts, taken, wall, whole_night, work, zone};

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

// Invested on Wednesday from 10:00 to 10:45; setting began then by itself, and is not asked for. At noon it is set until 12:45, and waits
// for the steam.
#[test]
fn what_runs_by_itself_is_running() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-11T12:00"));
    let table = plan(&ask, at(&zone, "2026-11-12T09:30"), &[Pin::done(INVEST, at(&zone, "2026-11-11T10:00"))]).unwrap();
    let set = table.row(SET).unwrap();
    assert_eq!((wall(&zone, set.start), set.wait_min, set.pin, set.over), ("Wed 11 10:45".to_owned(), 345.0, None, true));
    assert_eq!(table.next().unwrap().key, super::DEWAX);
    assert!(table.is_clear());
}

// The tree must begin within 20 min of curing, which was over at 11:00; at noon that cannot be kept any more. The tree is planned by itself
// then, as late as may be before a pour at 20:00: at 18:30. It is not held to when washing and curing might have been instead (the latest
// washing in hours would be from 16:30 to 17:00, and the tree at 18:20).
#[test]
fn what_came_too_late_after_a_done_step_stands_by_itself() {
    let zone = zone("Europe/Dublin");
    let within = pourbook::calc::timetable::Gap { strict: true, ..pourbook::calc::timetable::Gap::at_most(20.0) };
    let mut steps = whole_night()[1..4].to_vec();
    steps[1].then = within;
    let hours = studio();
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-11T12:00"));
    let pour = at(&zone, "2026-11-11T20:00");
    let table = plan(&ask, pour, &[Pin::done(CURE, at(&zone, "2026-11-11T10:00"))]).unwrap();
    assert_eq!(starts(&zone, &table), ["Wed 11 09:30", "Wed 11 10:00", "Wed 11 18:30"]);
    assert_eq!(problems(&table), [(CURE, Problem::WaitTooLong { by_min: 430.0 })]);
    // Without that: cured from 17:00, by 18:00.
    let free = plan(&super::ask(&steps, &hours, &zone, at(&zone, "2026-11-11T09:00")), pour, &[]).unwrap();
    assert_eq!(starts(&zone, &free), ["Wed 11 16:30", "Wed 11 17:00", "Wed 11 18:20"]);
}

// Wednesday 20:30, and burnout should have begun at 19:30. Investing is wished for at 22:00 all the same: there is time for the tree before
// it, from now on, though nobody is there; it is not put into this afternoon.
#[test]
fn before_a_pin_there_may_be_time_where_there_is_none_before_the_pour() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = ([whole_night()[3], whole_night()[4], whole_night()[7]], studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-11T20:30"));
    let table = plan(&ask, at(&zone, "2026-11-12T09:30"), &[Pin::wished(INVEST, at(&zone, "2026-11-11T22:00"))]).unwrap();
    assert_eq!(starts(&zone, &table), ["Wed 11 20:30", "Wed 11 22:00", "Wed 11 19:30"]);
    assert!(table.row(TREE).unwrap().problems.iter().all(|problem| matches!(problem, Problem::OutsideHours { .. })));
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
    let kiln = super::BURNOUT;
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
