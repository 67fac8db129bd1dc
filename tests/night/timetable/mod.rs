//! The timetable: nights worked out by hand, the clock minute by minute, trying everything, laws that hold for any night, and nonsense.

mod brute;
mod clocks;
mod dragged;
mod laws;
mod nonsense;
mod possible;
mod worked;

use jiff::Timestamp;
use jiff::civil::{DateTime, Time, Weekday};
use jiff::tz::TimeZone;
use pourbook::calc::timetable::{Ask, Gap, Hands, Hours, Span, Step, StepKey, Taken, Timetable, WorkSpan};
use pourbook::calc::timetable::{Problem, Resource};

pub const WORKDAYS: [Weekday; 5] = [Weekday::Monday, Weekday::Tuesday, Weekday::Wednesday, Weekday::Thursday, Weekday::Friday];
pub const WEEK: [Weekday; 7] =
    [Weekday::Monday, Weekday::Tuesday, Weekday::Wednesday, Weekday::Thursday, Weekday::Friday, Weekday::Saturday, Weekday::Sunday];
pub const KILN: Resource = Resource(7);

pub const PRINT: StepKey = StepKey(10);
pub const WASH: StepKey = StepKey(20);
pub const CURE: StepKey = StepKey(30);
pub const TREE: StepKey = StepKey(40);
pub const INVEST: StepKey = StepKey(50);
pub const SET: StepKey = StepKey(60);
pub const DEWAX: StepKey = StepKey(70);
pub const BURNOUT: StepKey = StepKey(80);

pub fn zone(name: &str) -> TimeZone {
    TimeZone::get(name).unwrap()
}

/// Minutes of a time on the wall, such as `2026-11-12T09:30`, or of a day's midnight.
pub fn at(zone: &TimeZone, wall: &str) -> f64 {
    let wall: DateTime = if wall.contains('T') { wall.parse() } else { format!("{wall}T00:00").parse() }.unwrap();
    zone.to_zoned_datetime(wall).unwrap().timestamp().as_second() as f64 / 60.0
}

/// What the clock on the wall shows.
pub fn wall(zone: &TimeZone, minutes: f64) -> String {
    let shown = zone.to_datetime(Timestamp::from_second((minutes * 60.0).round() as i64).unwrap());
    format!("{} {}", &format!("{:?}", shown.date().weekday())[..3], shown.strftime("%d %H:%M"))
}

pub fn work(days: &[Weekday], from: (i8, i8), until: (i8, i8)) -> Vec<WorkSpan> {
    Hours::on(days, Time::constant(from.0, from.1, 0, 0), Time::constant(until.0, until.1, 0, 0))
}

pub fn step(key: StepKey, minutes: f64, needs: Hands, then: Gap) -> Step {
    Step { key, minutes, needs, uses: None, then }
}

pub fn span(zone: &TimeZone, start: &str, end: &str) -> Span {
    Span { start: at(zone, start), end: at(zone, end) }
}

pub fn taken(zone: &TimeZone, start: &str, end: &str) -> Taken {
    Taken { resource: KILN, span: span(zone, start, end) }
}

/// A night with everything: prints, tree, investment that sets and may wait two days, steam, and fourteen hours in the kiln.
pub fn whole_night() -> Vec<Step> {
    vec![
        step(PRINT, 600.0, Hands::Start, Gap::ANY),
        step(WASH, 30.0, Hands::All, Gap::AT_ONCE),
        step(CURE, 60.0, Hands::None, Gap::ANY),
        step(TREE, 90.0, Hands::All, Gap::ANY),
        step(INVEST, 45.0, Hands::All, Gap::AT_ONCE),
        step(SET, 120.0, Hands::None, Gap::at_most(2880.0)),
        step(DEWAX, 60.0, Hands::Both, Gap::AT_ONCE),
        Step { uses: Some(KILN), ..step(BURNOUT, 840.0, Hands::Start, Gap::AT_ONCE) },
    ]
}

pub fn ask<'a>(steps: &'a [Step], hours: &'a Hours, zone: &'a TimeZone, now: f64) -> Ask<'a> {
    Ask { steps, hours, zone, now, pouring_min: 0.0 }
}

/// Starts as the clock shows them, in order.
pub fn starts(zone: &TimeZone, table: &Timetable) -> Vec<String> {
    table.rows.iter().map(|row| wall(zone, row.start)).collect()
}

/// All problems of the rows, each with its step.
pub fn problems(table: &Timetable) -> Vec<(StepKey, Problem)> {
    table.rows.iter().flat_map(|row| row.problems.iter().map(|problem| (row.key, *problem))).collect()
}
