//! Nights worked out by hand.

use jiff::civil::Weekday;
use pourbook::calc::timetable::{Gap, Hands, Hours, Problem, Step, plan};

use super::{BURNOUT, DEWAX, INVEST, KILN, PRINT, SET, WORKDAYS, ask, at, problems, starts, step, taken, wall, whole_night, work, zone};

/// Monday to Friday from nine to five, and Wednesday evening from six to eight.
fn studio() -> Hours {
    let mut week = work(&WORKDAYS, (9, 0), (17, 0));
    week.extend(work(&[Weekday::Wednesday], (18, 0), (20, 0)));
    Hours { week, ..Hours::default() }
}

// Pour on Thursday at 09:30.
//   burnout  14 h, ends at the pour                           Wed 19:30 to Thu 09:30, started by hand within the evening
//   dewax    1 h, straight into the kiln                      Wed 18:30 to 19:30, both ends within the evening
//   set      2 h, begins as investing ends                    must end by 18:30, so investing ends by 16:30
//   invest   45 min, somebody there all the time              Wed 15:45 to 16:30, setting 16:30 to 18:30
//   tree     90 min, by 15:45                                 Wed 14:15 to 15:45
//   cure     1 h right after washing, by 14:15                washing Wed 12:45 to 13:15, curing 13:15 to 14:15
//   print    10 h, started by hand, by 12:45                  by Wed 02:45, so Tuesday as the studio closes: 17:00, done at 03:00
#[test]
fn a_thursday_in_dublin() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T09:00"));
    let table = plan(&ask, at(&zone, "2026-11-12T09:30"), &[]).unwrap();
    let expected =
        ["Tue 10 17:00", "Wed 11 12:45", "Wed 11 13:15", "Wed 11 14:15", "Wed 11 15:45", "Wed 11 16:30", "Wed 11 18:30", "Wed 11 19:30"];
    assert_eq!(starts(&zone, &table), expected);
    assert!(table.is_clear(), "{:?}", problems(&table));
    // From 03:00, when the print is done, to 12:45.
    assert_eq!(table.row(PRINT).unwrap().wait_min, 585.0);
    assert_eq!(table.row(BURNOUT).unwrap().wait_min, 0.0);
    assert_eq!(table.next().unwrap().key, PRINT);
}

// The same on a Tuesday, the Monday before it a day off. Without an evening, burnout (Mon 19:30) and dewax (Mon 18:30) want somebody when
// nobody is there: the pour forces it. Investing is on Friday by 17:00: setting until 19:00, then 71.5 h until Monday 18:30, which is 23.5
// h over 48 h.
#[test]
fn what_the_pour_forces_is_told() {
    let zone = zone("Europe/Dublin");
    let (steps, mut hours) = (whole_night(), studio());
    hours.days_off.push("2026-11-16".parse().unwrap());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T09:00"));
    let table = plan(&ask, at(&zone, "2026-11-17T09:30"), &[]).unwrap();
    assert_eq!(starts(&zone, &table)[4..], ["Fri 13 16:15", "Fri 13 17:00", "Mon 16 18:30", "Mon 16 19:30"]);
    let expected = [
        (SET, Problem::WaitTooLong { by_min: 23.5 * 60.0 }),
        (DEWAX, Problem::OutsideHours { at: at(&zone, "2026-11-16T18:30"), minutes: 0.0 }),
        (BURNOUT, Problem::OutsideHours { at: at(&zone, "2026-11-16T19:30"), minutes: 0.0 }),
    ];
    assert_eq!(problems(&table), expected);
}

// Investing waits 4 h at most, and is done on Monday and Thursday mornings only, from nine to twelve. By itself the kiln would begin on
// Friday at 16:00 for a pour at 17:00, and the flask wait since Thursday noon. Kept within 4 h it begins on Thursday at 16:00 at the
// latest.
#[test]
fn an_earlier_slot_keeps_a_wait() {
    let zone = zone("Europe/Dublin");
    let hours = Hours { week: work(&[Weekday::Monday, Weekday::Thursday], (9, 0), (12, 0)), ..Hours::default() };
    let steps =
        [step(INVEST, 60.0, Hands::All, Gap::at_most(240.0)), Step { uses: Some(KILN), ..step(BURNOUT, 60.0, Hands::None, Gap::ANY) }];
    let pour = at(&zone, "2026-11-13T17:00");
    let early = ask(&steps, &hours, &zone, at(&zone, "2026-11-02T09:00"));
    let table = plan(&early, pour, &[]).unwrap();
    assert_eq!(starts(&zone, &table), ["Thu 12 11:00", "Thu 12 16:00"]);
    assert!(problems(&table).is_empty());
    // On Thursday afternoon nobody is there any more before the pour: so outside hours it is, as late as may be.
    let late = ask(&steps, &hours, &zone, at(&zone, "2026-11-12T13:00"));
    let table = plan(&late, pour, &[]).unwrap();
    assert_eq!(starts(&zone, &table), ["Fri 13 15:00", "Fri 13 16:00"]);
    assert_eq!(problems(&table), [(INVEST, Problem::OutsideHours { at: at(&zone, "2026-11-13T15:00"), minutes: 60.0 })]);
}

// The kiln counts down by itself from Friday to Sunday 19:30, for a pour on Monday at 09:30. Loaded on Friday from 16:45 to 17:00 the flask
// waits 50.5 h in it, 2.5 h over 48 h. Where another load has the kiln on Saturday from 10:00 to 20:00, the flask cannot stand in it
// meanwhile: somebody has to load on Sunday from 19:15 to 19:30, when nobody is there.
#[test]
fn a_loaded_kiln_is_taken_up_while_it_waits() {
    let zone = zone("Europe/Dublin");
    let in_the_kiln = Gap { keeps: Some(KILN), ..Gap::at_most(2880.0) };
    let steps = [
        Step { uses: Some(KILN), ..step(DEWAX, 15.0, Hands::All, in_the_kiln) },
        Step { uses: Some(KILN), ..step(BURNOUT, 840.0, Hands::None, Gap::AT_ONCE) },
    ];
    let mut hours = Hours { week: work(&WORKDAYS, (9, 0), (17, 0)), ..Hours::default() };
    let (now, pour) = (at(&zone, "2026-11-09T09:00"), at(&zone, "2026-11-16T09:30"));
    let table = plan(&ask(&steps, &hours, &zone, now), pour, &[]).unwrap();
    assert_eq!(starts(&zone, &table), ["Fri 13 16:45", "Sun 15 19:30"]);
    assert_eq!(problems(&table), [(DEWAX, Problem::WaitTooLong { by_min: 150.0 })]);
    hours.taken = vec![taken(&zone, "2026-11-14T10:00", "2026-11-14T20:00")];
    let table = plan(&ask(&steps, &hours, &zone, now), pour, &[]).unwrap();
    assert_eq!(starts(&zone, &table), ["Sun 15 19:15", "Sun 15 19:30"]);
    assert_eq!(problems(&table), [(DEWAX, Problem::OutsideHours { at: at(&zone, "2026-11-15T19:15"), minutes: 15.0 })]);
}

// Another load has the kiln from Wednesday noon to ten at night; the pour fixes the burnout, so that is told, from 19:30 when it would
// begin.
#[test]
fn a_kiln_that_is_taken_is_told() {
    let zone = zone("Europe/Dublin");
    let (steps, mut hours) = (whole_night(), studio());
    hours.taken = vec![taken(&zone, "2026-11-11T12:00", "2026-11-11T22:00")];
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-09T09:00"));
    let table = plan(&ask, at(&zone, "2026-11-12T09:30"), &[]).unwrap();
    let (from, until) = (at(&zone, "2026-11-11T19:30"), at(&zone, "2026-11-11T22:00"));
    assert_eq!(problems(&table), [(BURNOUT, Problem::Taken { resource: KILN, from, until })]);
}

// Clocks go back on Sunday 1 November 2026 in New York: the night to a pour at 09:30 has an hour more, so 14 h begin at 20:30, not 19:30.
// They go forward on Sunday 14 March 2027: the night has an hour less, and 14 h begin at 18:30.
#[test]
fn nights_when_clocks_change() {
    let zone = zone("America/New_York");
    let steps = [step(BURNOUT, 840.0, Hands::None, Gap::AT_ONCE)];
    let hours = Hours::default();
    let begins = |pour: &str| {
        let pour = at(&zone, pour);
        let table = plan(&ask(&steps, &hours, &zone, pour - 10_000.0), pour, &[]).unwrap();
        assert_eq!(table.rows[0].end - table.rows[0].start, 840.0);
        assert!(problems(&table).is_empty());
        wall(&zone, table.rows[0].start)
    };
    assert_eq!(begins("2026-11-01T09:30"), "Sat 31 20:30");
    assert_eq!(begins("2027-03-14T09:30"), "Sat 13 18:30");
    assert_eq!(begins("2026-11-08T09:30"), "Sat 07 19:30");
}

// A night watch from 20:00 to 08:00, somebody there all the time: 12 h, but 13 h as clocks go back in Dublin (25 October 2026) and 11 h as
// they go forward (28 March 2027). What takes 13 h, or 11 h, fits on that night and must begin at 20:00; on another it is 1 h outside, or
// has 1 h to spare.
#[test]
fn a_watch_through_such_a_night() {
    let zone = zone("Europe/Dublin");
    let hours = Hours { week: work(&[Weekday::Saturday], (20, 0), (8, 0)), ..Hours::default() };
    let night = |minutes: f64, pour: &str| {
        let steps = [step(INVEST, minutes, Hands::All, Gap::AT_ONCE)];
        let pour = at(&zone, pour);
        let table = plan(&ask(&steps, &hours, &zone, pour - 2000.0), pour, &[]).unwrap();
        (wall(&zone, table.rows[0].start), problems(&table).into_iter().map(|(_, problem)| problem).collect::<Vec<_>>())
    };
    assert_eq!(night(780.0, "2026-10-25T08:00"), ("Sat 24 20:00".to_owned(), vec![]));
    assert_eq!(night(660.0, "2027-03-28T08:00"), ("Sat 27 20:00".to_owned(), vec![]));
    let missing = Problem::OutsideHours { at: at(&zone, "2027-03-27T19:00"), minutes: 60.0 };
    assert_eq!(night(720.0, "2027-03-28T08:00"), ("Sat 27 19:00".to_owned(), vec![missing]));
    // On an ordinary night 13 h never fit, on none of the Saturdays of the sixty days before.
    assert_eq!(night(780.0, "2026-09-06T08:00"), ("Sat 05 19:00".to_owned(), vec![Problem::NoFreeTime { days: 60 }]));
}

// Thursday 09:30 asked for on Wednesday at 20:00: not even a night's work would do. The plan stands as it would have had to be, and says
// what should have begun already: burnout half an hour ago (19:30), printing since Tuesday 17:00 is 27 h ago.
#[test]
fn too_late_says_by_how_much() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-11T20:00"));
    let table = plan(&ask, at(&zone, "2026-11-12T09:30"), &[]).unwrap();
    assert_eq!(table.row(PRINT).unwrap().problems, [Problem::Past { by_min: 27.0 * 60.0 }]);
    assert_eq!(table.row(BURNOUT).unwrap().problems, [Problem::Past { by_min: 30.0 }]);
    assert_eq!(problems(&table).len(), steps.len());
}

// Tuesday 22:00, pour on Thursday at 09:30: in working hours printing should have begun on Tuesday at 17:00. It is still possible if
// somebody starts it outside hours: it must end by Wednesday 12:45, so at 02:45 at the latest.
#[test]
fn a_night_call_rather_than_nothing() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (whole_night(), studio());
    let ask = ask(&steps, &hours, &zone, at(&zone, "2026-11-10T22:00"));
    let table = plan(&ask, at(&zone, "2026-11-12T09:30"), &[]).unwrap();
    let start = at(&zone, "2026-11-11T02:45");
    assert_eq!(problems(&table), [(PRINT, Problem::OutsideHours { at: start, minutes: 0.0 })]);
    assert_eq!(table.row(PRINT).unwrap().start, start);
}
