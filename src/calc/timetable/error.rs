//! Why there is no timetable.

use std::fmt;

use super::step::StepKey;

/// Why nothing was planned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TimetableError {
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
    /// There are too many.
    TooMany {
        /// Of what.
        what: &'static str,
        /// The most that are taken.
        most: usize,
    },
    /// A span ends before it begins.
    Reversed {
        /// Which one.
        what: &'static str,
    },
    /// Two steps have the same key.
    SameKey(StepKey),
    /// No step has this key.
    NoSuchStep(StepKey),
    /// A step is pinned more than once.
    PinnedTwice(StepKey),
}

impl fmt::Display for TimetableError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange { what, value, least, most } => write!(f, "{what} is {value}; it must be from {least} to {most}."),
            Self::TooMany { what, most } => write!(f, "Too many: {what}; at most {most}."),
            Self::Reversed { what } => write!(f, "{what} ends before it begins."),
            Self::SameKey(key) => write!(f, "Two steps have the key {}.", key.0),
            Self::NoSuchStep(key) => write!(f, "No step has the key {}.", key.0),
            Self::PinnedTwice(key) => write!(f, "The step with the key {} is pinned more than once.", key.0),
        }
    }
}

impl std::error::Error for TimetableError {}
