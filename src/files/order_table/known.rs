//! What is known beside the table.

use jiff::civil::Date;

/// What is known beside the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Known {
    /// The alloys a row may ask for: shelf id and name.
    pub alloys: Vec<(String, String)>,
    /// The day of taking in.
    pub today: Date,
}
