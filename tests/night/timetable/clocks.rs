//! The clock on the wall, minute by minute.

use jiff::Timestamp;
use jiff::civil::{Date, DateTime, Time, Weekday};
use jiff::tz::TimeZone;
use pourbook::calc::timetable::{BandKind, Hours, Span, bands, free_spans};

use super::brute::Dice;
use super::{WEEK, at, span, wall, work, zone};

fn shown(zone: &TimeZone, minute: i64) -> DateTime {
    zone.to_datetime(Timestamp::from_second(minute * 60).unwrap())
}

/// The first minute, from one well before it on, at which the clock shows this or a later time.
fn first_showing(zone: &TimeZone, wall: DateTime, from: i64) -> i64 {
    (from..from + 4 * 1440).find(|minute| shown(zone, *minute) >= wall).unwrap()
}

/// For every minute between two: is somebody there? By walking along the clock.
fn walked(hours: &Hours, zone: &TimeZone, from: i64, until: i64) -> Vec<bool> {
    let mut is_open = vec![false; (until - from) as usize];
    let mut date: Date = shown(zone, from - 2 * 1440).date();
    while date <= shown(zone, until).date() {
        // A day before midnight by UTC is before midnight of the day in every zone.
        let before = at(&TimeZone::UTC, &date.to_string()) as i64 - 1440;
        let next = date.tomorrow().unwrap();
        for work in hours.week.iter().filter(|work| work.weekday == date.weekday() && !hours.days_off.contains(&date)) {
            let last = if work.until <= work.from { next } else { date };
            let (begins, ends) =
                (first_showing(zone, date.to_datetime(work.from), before), first_showing(zone, last.to_datetime(work.until), before));
            for minute in begins.max(from)..ends.min(until) {
                is_open[(minute - from) as usize] = true;
            }
        }
        date = next;
    }
    for away in &hours.away {
        for minute in (away.start as i64).max(from)..(away.end as i64).min(until) {
            is_open[(minute - from) as usize] = false;
        }
    }
    is_open
}

fn runs(is_open: &[bool], from: i64) -> Vec<Span> {
    let mut out: Vec<Span> = Vec::new();
    for (minute, _) in (from..).zip(is_open).filter(|(_, is_open)| **is_open) {
        match out.last_mut() {
            Some(last) if last.end == minute as f64 => last.end += 1.0,
            _ => out.push(Span { start: minute as f64, end: minute as f64 + 1.0 }),
        }
    }
    out
}

#[test]
fn hours_are_what_the_clock_shows() {
    // Both changes of either zone; a zone that changes by half an hour; one where midnight itself is skipped; one that left out a whole
    // day.
    let nights = [
        ("America/New_York", "2026-10-30T12:00"),
        ("America/New_York", "2027-03-12T12:00"),
        ("Europe/Dublin", "2026-10-23T12:00"),
        ("Europe/Dublin", "2027-03-26T12:00"),
        ("Australia/Lord_Howe", "2026-10-02T12:00"),
        ("Australia/Lord_Howe", "2027-04-02T12:00"),
        ("America/Havana", "2027-03-12T12:00"),
        ("Africa/Cairo", "2026-04-22T12:00"),
        ("Pacific/Apia", "2011-12-28T12:00"),
    ];
    let mut dice = Dice(0x5eed_cafe_f00d_0005);
    for (name, begins) in nights {
        let zone = zone(name);
        let from = at(&zone, begins) as i64;
        let until = from + 4 * 1440;
        for round in 0..40 {
            let mut hours = Hours::default();
            for _ in 0..12 {
                let mut clock = || Time::constant(dice.below(24) as i8, (dice.below(12) * 5) as i8, 0, 0);
                let (begin, end) = (clock(), clock());
                hours.week.extend(Hours::on(&[WEEK[dice.below(7) as usize]], begin, end));
            }
            let away = (from + dice.below(5000)) as f64;
            hours.away.push(Span { start: away, end: away + dice.below(600) as f64 });
            hours.days_off.push(shown(&zone, from + dice.below(4 * 1440)).date());
            let free = free_spans(&hours, &zone, from as f64, until as f64).unwrap();
            assert_eq!(free, runs(&walked(&hours, &zone, from, until), from), "{name}, round {round}: {hours:?}");
            let mut all: Vec<Span> = free;
            all.extend(bands(&hours, &zone, from as f64, until as f64).unwrap().iter().map(|band| band.span));
            all.sort_by(|one, other| one.start.total_cmp(&other.start));
            assert_eq!((all[0].start, all[all.len() - 1].end), (from as f64, until as f64));
            assert!(all.windows(2).all(|pair| pair[0].end == pair[1].start), "{name}: bands and free time leave no gap: {all:?}");
        }
    }
}

// New York, 14 March 2027: 02:00 to 03:00 is skipped. Hours from 02:30 begin at 03:00, hours until 02:30 end then, hours from 02:15 to
// 02:45 are none. 1 November 2026: 01:00 to 02:00 is shown twice. From 00:30 to 01:30 is one hour, to 02:00 two and a half.
#[test]
fn hours_within_the_change() {
    let zone = zone("America/New_York");
    let free = |from: (i8, i8), until: (i8, i8), day: &str| {
        let hours = Hours { week: work(&[Weekday::Sunday], from, until), ..Hours::default() };
        let start = at(&zone, &format!("{day}T00:00"));
        let spans = free_spans(&hours, &zone, start, start + 1440.0).unwrap();
        spans.iter().map(|span| (wall(&zone, span.start), span.end - span.start)).collect::<Vec<_>>()
    };
    assert_eq!(free((2, 30), (6, 0), "2027-03-14"), [("Sun 14 03:00".to_owned(), 180.0)]);
    assert_eq!(free((1, 0), (2, 30), "2027-03-14"), [("Sun 14 01:00".to_owned(), 60.0)]);
    assert_eq!(free((2, 15), (2, 45), "2027-03-14"), []);
    assert_eq!(free((0, 30), (1, 30), "2026-11-01"), [("Sun 01 00:30".to_owned(), 60.0)]);
    assert_eq!(free((0, 30), (2, 0), "2026-11-01"), [("Sun 01 00:30".to_owned(), 150.0)]);
}

// A working day's night from 20:00 to 08:00 as a band: 12 h, and 13 h or 11 h as clocks change.
#[test]
fn bands_are_as_long_as_the_night() {
    let zone = zone("Europe/Dublin");
    let hours = Hours { week: work(&WEEK, (8, 0), (20, 0)), ..Hours::default() };
    let night = |start: &str, end: &str| {
        let span = span(&zone, start, end);
        let bands = bands(&hours, &zone, span.start, span.end).unwrap();
        assert!(bands.iter().all(|band| band.kind == BandKind::Night));
        bands.iter().map(|band| band.span.end - band.span.start).collect::<Vec<_>>()
    };
    assert_eq!(night("2026-10-23T12:00", "2026-10-26T12:00"), [720.0, 780.0, 720.0]);
    assert_eq!(night("2027-03-26T12:00", "2027-03-29T12:00"), [720.0, 660.0, 720.0]);
}
