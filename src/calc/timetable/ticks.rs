//! Moments and lengths as whole numbers: 2²⁰ ticks a minute, so that nothing is lost between minutes and ticks, and all sums are exact.

use super::error::TimetableError;

/// A moment since the Unix epoch, or a length.
pub(super) type Ticks = i64;

/// Ticks in a minute.
pub(super) const MINUTE: Ticks = 1 << 20;
/// Ticks in a day of 24 h.
pub(super) const DAY: Ticks = 24 * 60 * MINUTE;

/// The furthest moment from the Unix epoch, in min: some 190 years. Its ticks stay far below 2⁵³.
const FURTHEST_MIN: f64 = 1.0e8;

/// The ticks of a number of minutes that is known to be within bounds.
pub(super) fn of_bounded(minutes: f64) -> Ticks {
    (minutes * MINUTE as f64).round() as Ticks
}

/// The ticks of a moment.
///
/// # Errors
/// `OutOfRange` where it is no number, or centuries away.
pub(super) fn of_moment(what: &'static str, minutes: f64) -> Result<Ticks, TimetableError> {
    within(what, minutes, -FURTHEST_MIN, FURTHEST_MIN).map(of_bounded)
}

/// The ticks of a length.
///
/// # Errors
/// `OutOfRange` where it is no number, negative, or more than `most_min`.
pub(super) fn of_length(what: &'static str, minutes: f64, most_min: f64) -> Result<Ticks, TimetableError> {
    within(what, minutes, 0.0, most_min).map(of_bounded)
}

/// Minutes of so many ticks.
pub(super) fn minutes(ticks: Ticks) -> f64 {
    ticks as f64 / MINUTE as f64
}

fn within(what: &'static str, value: f64, least: f64, most: f64) -> Result<f64, TimetableError> {
    if (least..=most).contains(&value) { Ok(value) } else { Err(TimetableError::OutOfRange { what, value, least, most }) }
}
