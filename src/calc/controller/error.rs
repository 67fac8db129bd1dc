//! Why nothing can be keyed in or played.

use std::fmt;

/// Why nothing was worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ControllerError {
    /// A number is no number, or outside what makes sense.
    OutOfRange {
        /// Which number, with its unit.
        what: &'static str,
        /// The segment, row or band it belongs to, from nought, where it belongs to one.
        at: Option<usize>,
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
    /// The kiln's bands do not rise, or there is none.
    Bands,
}

impl fmt::Display for ControllerError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange { what, at: Some(at), value, least, most } => {
                write!(f, "{what} is {value} in place {}; it must be from {least} to {most}.", at.saturating_add(1))
            }
            Self::OutOfRange { what, at: None, value, least, most } => write!(f, "{what} is {value}; it must be from {least} to {most}."),
            Self::TooMany { what, most } => write!(f, "Too many: {what}; at most {most}."),
            Self::Bands => write!(f, "The kiln's bands must rise, and there must be one."),
        }
    }
}

impl std::error::Error for ControllerError {}
