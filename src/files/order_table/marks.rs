//! How the numbers and dates of a column are written, from all its rows.

use super::date::written;
use super::price::without_currency;
use super::quantity::without_pieces;
use super::{Mapping, Role};
use crate::table::{DayOrderEvidence, Decimal, DecimalEvidence, Row};

/// The way a column is written.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Marks {
    /// Its decimal sign, where a cell of it or a person decides.
    pub decimal: Option<Decimal>,
    /// Whether the day stands first, where a cell of it or a person decides.
    pub day_first: Option<bool>,
}

impl Marks {
    /// Looks through all rows of a column. What the cells say goes before what a person said, for a sure cell can only be read in one way.
    pub fn of(rows: &[Row], column: usize, mapping: &Mapping) -> Self {
        let (mut numbers, mut dates) = (DecimalEvidence::default(), DayOrderEvidence::default());
        let role = mapping.columns.get(column).copied().unwrap_or(Role::Ignored);
        for row in rows {
            let cell = row.cell(column).trim();
            match role {
                Role::Quantity => numbers.take(without_pieces(cell), row.line),
                Role::Price => numbers.take(without_currency(cell), row.line),
                Role::Due | Role::Taken => {
                    if let Some(date) = written(cell) {
                        dates.take(date);
                    }
                }
                _ => {}
            }
        }
        Self { decimal: numbers.agreed().or(mapping.decimal), day_first: dates.agreed().or(mapping.day_first) }
    }
}
