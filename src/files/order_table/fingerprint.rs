//! By what a table is known again.

use super::letters::key;
use crate::table::{Kind, Row, Table, kind};
use serde::{Deserialize, Serialize};

/// The rows among which headings are looked for: titles may stand above them.
pub(super) const FIRST_ROWS: usize = 20;
/// The rows that say what a column without heading holds.
const SAMPLE: usize = 200;

/// By what a table is known again. Two tables with the same one have the same columns in the same order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Fingerprint {
    /// The headings in small letters, without signs and marks.
    Headings(Vec<String>),
    /// Without headings, what most cells of each column hold.
    Kinds(Vec<Kind>),
}

impl Fingerprint {
    /// That of a row of headings.
    #[must_use]
    pub fn of_headings(row: &Row) -> Self {
        Self::Headings(row.cells.iter().map(|cell| key(cell).chars().take(60).collect()).collect())
    }

    /// That of a table without headings.
    #[must_use]
    pub fn of_kinds(table: &Table) -> Self {
        Self::Kinds((0..table.width()).map(|column| most(table, column)).collect())
    }

    /// Where its columns begin in a table: the index of the first row below the headings. `None` where the table has others.
    pub(super) fn first_row(&self, table: &Table) -> Option<usize> {
        match self {
            Self::Headings(headings) => {
                let is_it = |row: &Row| row.cells.len() == headings.len() && Self::of_headings(row) == *self;
                table.rows.iter().take(FIRST_ROWS).position(is_it).map(|at| at + 1)
            }
            Self::Kinds(kinds) => {
                let agrees = |(column, kind): (usize, &Kind)| {
                    let found = most(table, column);
                    found == *kind || found == Kind::Empty || *kind == Kind::Empty
                };
                let fits = table.heading.is_none() && table.width() <= kinds.len() && kinds.iter().enumerate().all(agrees);
                fits.then_some(0)
            }
        }
    }
}

fn most(table: &Table, column: usize) -> Kind {
    let kinds = || table.rows.iter().take(SAMPLE).map(|row| kind(row.cell(column)));
    let count = |wanted: Kind| kinds().filter(|kind| *kind == wanted).count();
    let filled = [Kind::Text, Kind::Number, Kind::Date].map(|kind| (count(kind), kind));
    filled.into_iter().filter(|(count, _)| *count > 0).max_by_key(|(count, _)| *count).map_or(Kind::Empty, |(_, kind)| kind)
}
