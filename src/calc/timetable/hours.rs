//! When somebody is there, and what is taken.

use jiff::civil::{Date, Time, Weekday};

use super::step::Resource;

/// From one moment to another, both in minutes since the Unix epoch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Its start.
    pub start: f64,
    /// Its end; not before the start.
    pub end: f64,
}

/// Working hours of one weekday.
///
/// They begin at the first moment at which the clock on the wall shows `from` or later, and end at the first at which it shows `until` or
/// later: a time that is skipped when clocks change is the moment of the change, one that is shown twice is the first of both.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct WorkSpan {
    /// The day on which they begin.
    pub weekday: Weekday,
    /// When they begin.
    pub from: Time,
    /// When they end: on the next day where this is not after `from`. From midnight to midnight is the whole day.
    pub until: Time,
}

/// A resource that something else has to itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taken {
    /// Which one.
    pub resource: Resource,
    /// When. A step may begin at the moment this ends, and end at the moment this begins.
    pub span: Span,
}

/// When somebody is there, and what is taken by something else.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Hours {
    /// The week, in any order, any number of spans a day. Spans that touch or overlap are worked through as one.
    pub week: Vec<WorkSpan>,
    /// Days off: hours that would begin on them are not worked. What began the evening before is finished.
    pub days_off: Vec<Date>,
    /// Times when nobody is there in spite of the week.
    pub away: Vec<Span>,
    /// What other loads have taken.
    pub taken: Vec<Taken>,
}

impl Hours {
    /// The same hours on each of several weekdays.
    #[must_use]
    pub fn on(weekdays: &[Weekday], from: Time, until: Time) -> Vec<WorkSpan> {
        weekdays.iter().map(|&weekday| WorkSpan { weekday, from, until }).collect()
    }

    /// Are there hours that begin on this day?
    pub(super) fn work_on(&self, date: Date) -> bool {
        !self.days_off.contains(&date) && self.week.iter().any(|span| span.weekday == date.weekday())
    }
}
