//! The sign between whole and part of a number.

use serde::{Deserialize, Serialize};

/// The sign between whole and part of a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Decimal {
    /// 20.5
    Point,
    /// 20,5
    Comma,
}
