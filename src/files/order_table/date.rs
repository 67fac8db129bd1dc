//! Dates of an order.

use super::marks::Marks;
use super::{CellAt, Reason};
use crate::table::{WrittenDate, stamp};
use jiff::civil::Date;

/// The date a cell says, with a clock behind it or without, before it is known whether day or month stands first.
pub(super) fn written(cell: &str) -> Option<WrittenDate> {
    stamp(cell.trim()).and_then(|stamp| stamp.date)
}

/// The date in a cell that says something.
pub(super) fn date(cell: &str, column: usize, marks: Marks) -> Result<Date, Reason> {
    let not = || Reason::NotADate(CellAt::new(column, cell));
    let date = written(cell).ok_or_else(not)?;
    match [true, false].map(|day_first| date.date(day_first)) {
        [Some(one), Some(other)] if one == other => Ok(one),
        [Some(day_first), Some(month_first)] => match (marks.day_first, date) {
            (Some(true), _) => Ok(day_first),
            (Some(false), _) => Ok(month_first),
            // With dots nobody writes the month first.
            (None, WrittenDate::Dotted { .. }) => Ok(day_first),
            (None, _) => Err(Reason::AmbiguousDate { cell: CellAt::new(column, cell), readings: [day_first, month_first] }),
        },
        [one, other] => one.or(other).ok_or_else(not),
    }
}
