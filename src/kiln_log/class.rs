//! What kind of thing a cell holds.

use super::behind::without_unit;
use super::cut::Separator;
use crate::table::shape;
use crate::table::stamp;

/// What a cell holds, taken by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Class {
    Empty,
    /// What an instrument writes in place of a number.
    Fault,
    Number,
    /// A time without date.
    Clock,
    Date,
    /// Date and time.
    Moment,
    Text,
}

impl Class {
    pub fn is_value(self) -> bool {
        matches!(self, Self::Number | Self::Clock | Self::Date | Self::Moment)
    }
}

pub(super) fn class(cell: &str, separator: Separator) -> Class {
    if cell.is_empty() {
        return Class::Empty;
    }
    if cell.len() > 80 {
        return Class::Text;
    }
    // With commas between the cells a number with a blank is two numbers and a wrong separator.
    let parted = separator == Separator::Comma && cell.contains(' ');
    let (bare, _) = without_unit(cell);
    if shape(bare).is_some() && !(parted && bare.contains(' ')) {
        return Class::Number;
    }
    if is_fault(cell) {
        return Class::Fault;
    }
    match stamp(cell) {
        Some(found) => match (found.date, found.clock) {
            (Some(_), Some(_)) => Class::Moment,
            (Some(_), None) => Class::Date,
            _ => Class::Clock,
        },
        None => Class::Text,
    }
}

/// Whole words that stand for a fault of the sensor (common practice, no source).
const FAULTS: [&str; 34] = [
    "open",
    "opn",
    "offen",
    "nan",
    "n/a",
    "na",
    "#n/a",
    "#nv",
    "null",
    "none",
    "nil",
    "err",
    "error",
    "fault",
    "fehler",
    "fail",
    "bruch",
    "fühlerbruch",
    "break",
    "over",
    "under",
    "ovr",
    "udr",
    "or",
    "ur",
    "ol",
    "inf",
    "hi",
    "lo",
    "invalid",
    "bad",
    "disconnected",
    "sbr",
    "b.out",
];

/// True for what an instrument writes in place of a number: dashes, `OPEN`, `NaN`, `#N/A`.
pub(super) fn is_fault(cell: &str) -> bool {
    if cell.chars().all(|c| matches!(c, '-' | '–' | '—' | '−' | '_' | '*' | '?' | '.' | '#' | '<' | '>')) {
        return true;
    }
    if cell.len() > 24 {
        return false;
    }
    let word = cell.to_lowercase();
    let bare = word.trim_matches(|c: char| matches!(c, '-' | '+' | '*' | '!' | '(' | ')' | '<' | '>' | '.' | '°') || c.is_whitespace());
    FAULTS.contains(&word.as_str())
        || FAULTS.contains(&bare)
        || ["err", "fehler", "#", "open ", "sensor"].iter().any(|start| bare.starts_with(start))
        || [" open", " fault", " error", " break"].iter().any(|end| bare.ends_with(end))
}
