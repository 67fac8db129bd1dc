//! Columns as a person knows them.

use super::{Decimal, Separator, TimeUnit, Unit};
use std::fmt;

/// A column of the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// Its place, from 0.
    pub index: usize,
    /// What its header says, shortened; empty where there is none.
    pub name: String,
}

impl fmt::Display for Column {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.name.is_empty() { write!(f, "column {}", self.index + 1) } else { write!(f, "“{}”", self.name) }
    }
}

/// How the file was understood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// What parts its cells.
    pub separator: Separator,
    /// Line of the header, where there is one.
    pub header_line: Option<u32>,
    /// The column of the time, or those of date and clock.
    pub time: Vec<Column>,
    /// What a time that is a plain number counts; `None` for clocks and dates.
    pub time_unit: Option<TimeUnit>,
    /// The column of the temperature.
    pub temperature: Column,
    /// The unit of that column.
    pub unit: Unit,
    /// The decimal sign of that column.
    pub decimal: Decimal,
    /// Other columns of numbers that can be taken for the temperature.
    pub others: Vec<Column>,
}
