//! Why a mould's heat cannot be computed.

use std::fmt;

/// Why nothing was computed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HeatError {
    /// A number is no number, or outside what makes sense.
    OutOfRange {
        /// Which number, with its unit.
        what: &'static str,
        /// What it was.
        value: f64,
        /// The least that is taken.
        least: f64,
        /// The most that is taken.
        most: f64,
    },
    /// A table has no row.
    Empty {
        /// Which table.
        what: &'static str,
    },
    /// A table has too many rows, or there is too much to sample.
    TooMany {
        /// Of what.
        what: &'static str,
        /// The most that are taken.
        most: usize,
    },
    /// The temperatures of a table do not rise from row to row.
    Unsorted {
        /// Which table.
        what: &'static str,
    },
    /// A schedule, or the time to advance to, goes back in time.
    BackInTime {
        /// Which one.
        what: &'static str,
    },
    /// The numbers are so far apart that no end was reached in the steps allowed.
    GivenUp {
        /// How far it came, in s.
        reached_s: f64,
    },
}

impl fmt::Display for HeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange { what, value, least, most } => write!(f, "{what} is {value}; it must be from {least} to {most}."),
            Self::Empty { what } => write!(f, "{what} has no row."),
            Self::TooMany { what, most } => write!(f, "Too many: {what}; at most {most}."),
            Self::Unsorted { what } => write!(f, "The temperatures of {what} must rise from row to row."),
            Self::BackInTime { what } => write!(f, "{what} goes back in time."),
            Self::GivenUp { reached_s } => write!(f, "Given up at {reached_s} s: the numbers lie too far apart to reach the end."),
        }
    }
}

impl std::error::Error for HeatError {}

/// That a number is one, and within bounds.
pub(super) fn within(what: &'static str, value: f64, least: f64, most: f64) -> Result<f64, HeatError> {
    if (least..=most).contains(&value) { Ok(value) } else { Err(HeatError::OutOfRange { what, value, least, most }) }
}
