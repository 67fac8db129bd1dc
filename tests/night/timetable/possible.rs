//! What can still be poured when, and the bands of a drawing.

use jiff::civil::{Time, Weekday};
use pourbook::calc::timetable::{BandKind, Gap, Hands, Hours, Pin, Span, Step, bands, earliest_pour, free_spans, plan, pours_at};

use super::{BURNOUT, INVEST, KILN, SET, WORKDAYS, ask, at, span, step, taken, wall, work, zone};

fn short_night() -> [Step; 3] {
    [
        step(INVEST, 60.0, Hands::All, Gap::AT_ONCE),
        step(SET, 120.0, Hands::None, Gap::at_most(2880.0)),
        Step { uses: Some(KILN), ..step(BURNOUT, 840.0, Hands::None, Gap::AT_ONCE) },
    ]
}

// Monday 10:00. Investing until 11:00, set at 13:00, burnout of 14 h until Tuesday 03:00 at the earliest; it begins by itself, so it waits
// until it ends as somebody is there: Tuesday 09:00. Asked for 09:30: Tuesday to Friday. Not Monday: invested on Friday until 17:00 and set
// at 19:00, the flask would wait until Sunday 19:30, 48.5 h, which is more than 48 h. Then Tuesday again.
#[test]
fn the_next_pours() {
    let zone = zone("Europe/Dublin");
    let (steps, hours) = (short_night(), Hours { week: work(&WORKDAYS, (9, 0), (17, 0)), ..Hours::default() });
    let now = at(&zone, "2026-11-09T10:00");
    let ask = ask(&steps, &hours, &zone, now);
    let earliest = earliest_pour(&ask, now, &[]).unwrap().unwrap();
    assert_eq!(wall(&zone, earliest), "Tue 10 09:00");
    assert!(plan(&ask, earliest, &[]).unwrap().is_clear());
    assert!(!plan(&ask, earliest - 1.0, &[]).unwrap().is_clear());
    let half_past_nine = Time::constant(9, 30, 0, 0);
    let pours = pours_at(&ask, half_past_nine, now, &[], 6).unwrap();
    let shown: Vec<String> = pours.iter().map(|at| wall(&zone, *at)).collect();
    assert_eq!(shown, ["Tue 10 09:30", "Wed 11 09:30", "Thu 12 09:30", "Fri 13 09:30", "Tue 17 09:30", "Wed 18 09:30"]);
    // Not before Wednesday noon: as long as somebody is there.
    assert_eq!(earliest_pour(&ask, at(&zone, "2026-11-11T12:00"), &[]).unwrap().map(|at| wall(&zone, at)).unwrap(), "Wed 11 12:00");
    // Half an hour of pouring must be over by 17:00; asked for at 16:45 there is none, at 16:30 there is.
    let long = pourbook::calc::timetable::Ask { pouring_min: 30.0, ..ask };
    assert!(pours_at(&long, Time::constant(16, 45, 0, 0), now, &[], 3).unwrap().is_empty());
    assert_eq!(pours_at(&long, Time::constant(16, 30, 0, 0), now, &[], 3).unwrap().len(), 3);
}

// The kiln is taken until Tuesday 06:00: burnout ends at 20:00 at the earliest, which nobody sees; so Wednesday 09:00. That it set at 08:00
// already changes nothing. But where the kiln did start, on Monday at 20:00, the pour is 14 h later: Tuesday 10:00, and only then.
#[test]
fn taken_kilns_and_what_is_done() {
    let zone = zone("Europe/Dublin");
    let steps = short_night();
    let hours = Hours {
        week: work(&WORKDAYS, (9, 0), (17, 0)),
        taken: vec![taken(&zone, "2026-11-09T08:00", "2026-11-10T06:00")],
        ..Hours::default()
    };
    let now = at(&zone, "2026-11-09T10:00");
    let ask = ask(&steps, &hours, &zone, now);
    let shown = |pins: &[Pin]| earliest_pour(&ask, now, pins).unwrap().map(|at| wall(&zone, at));
    assert_eq!(shown(&[]).unwrap(), "Wed 11 09:00");
    assert_eq!(shown(&[Pin::done(SET, at(&zone, "2026-11-09T08:00"))]).unwrap(), "Wed 11 09:00");
    assert_eq!(shown(&[Pin::done(BURNOUT, at(&zone, "2026-11-09T20:00"))]).unwrap(), "Tue 10 10:00");
    // Started at 13:00 it ends at 03:00: no pour without a problem.
    assert_eq!(shown(&[Pin::done(BURNOUT, at(&zone, "2026-11-09T13:00"))]), None);
    // Nobody ever there: never.
    let never = Hours::default();
    assert_eq!(earliest_pour(&super::ask(&steps, &never, &zone, now), now, &[]).unwrap(), None);
}

// Friday noon to Tuesday noon, nine to five on working days, Monday a day off, and a watch from Friday 22:00 into Saturday 02:00.
#[test]
fn bands_of_a_long_weekend() {
    let zone = zone("Europe/Dublin");
    let mut week = work(&WORKDAYS, (9, 0), (17, 0));
    week.extend(work(&[Weekday::Friday], (22, 0), (2, 0)));
    let hours = Hours {
        week,
        days_off: vec!["2026-11-16".parse().unwrap()],
        away: vec![span(&zone, "2026-11-17T11:00", "2026-11-17T20:00")],
        taken: vec![taken(&zone, "2026-11-14T10:00", "2026-11-14T20:00"), taken(&zone, "2026-11-14T18:00", "2026-11-14T23:00")],
    };
    let (from, until) = (at(&zone, "2026-11-13T12:00"), at(&zone, "2026-11-17T12:00"));
    let shown = |span: Span| format!("{} - {}", wall(&zone, span.start), wall(&zone, span.end));
    let all: Vec<(String, BandKind)> =
        bands(&hours, &zone, from, until).unwrap().iter().map(|band| (shown(band.span), band.kind)).collect();
    let expected = [
        ("Fri 13 17:00 - Fri 13 22:00", BandKind::Night),
        ("Sat 14 02:00 - Tue 17 00:00", BandKind::DayOff),
        ("Sat 14 10:00 - Sat 14 23:00", BandKind::Taken(KILN)),
        ("Tue 17 00:00 - Tue 17 09:00", BandKind::Night),
        ("Tue 17 11:00 - Tue 17 12:00", BandKind::Away),
    ];
    assert_eq!(all, expected.map(|(span, kind)| (span.to_owned(), kind)));
    let free: Vec<String> = free_spans(&hours, &zone, from, until).unwrap().into_iter().map(shown).collect();
    assert_eq!(free, ["Fri 13 12:00 - Fri 13 17:00", "Fri 13 22:00 - Sat 14 02:00", "Tue 17 09:00 - Tue 17 11:00"]);
}
