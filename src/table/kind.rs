//! What kind of thing a cell holds, taken by itself.

use super::{shape, stamp};
use serde::{Deserialize, Serialize};

/// What a cell holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Kind {
    /// Nothing.
    Empty,
    /// A number.
    Number,
    /// A date, with a clock or without.
    Date,
    /// Anything else.
    Text,
}

/// What a cell holds, whatever stands beside it.
#[must_use]
pub fn kind(cell: &str) -> Kind {
    let cell = cell.trim();
    if cell.is_empty() {
        Kind::Empty
    } else if cell.len() > 80 {
        Kind::Text
    } else if shape(cell).is_some() {
        Kind::Number
    } else if stamp(cell).is_some_and(|stamp| stamp.date.is_some()) {
        Kind::Date
    } else {
        Kind::Text
    }
}
