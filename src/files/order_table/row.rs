//! A row of the table, read.

use super::{Caution, Reason};
use jiff::civil::Date;

/// A line of an order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OrderRow {
    /// The line of the file it stands on, from 1.
    pub line: u32,
    /// Who ordered.
    pub client: String,
    /// The order's number or reference.
    pub reference: Option<String>,
    /// What the piece is.
    pub design: String,
    /// How many pieces, from 1 to [`super::MOST_PIECES`].
    pub quantity: u32,
    /// The alloy, by shelf id.
    pub alloy: Option<String>,
    /// The size as written; on which scale, nobody said.
    pub size: Option<String>,
    /// When it is due.
    pub due: Option<Date>,
    /// When it was ordered.
    pub taken: Option<Date>,
    /// The price with a decimal point and no grouping; the currency is left out.
    pub price: Option<String>,
    /// The file of the pattern.
    pub pattern_file: Option<String>,
    /// Remarks; those of several columns stand on lines of their own.
    pub notes: String,
    /// What to look at before it is taken in.
    pub cautions: Vec<Caution>,
}

/// A row of the table, read.
#[derive(Debug, Clone, PartialEq, Eq)]
// Most rows are ready ones, so a box for each would save nothing.
#[allow(clippy::large_enum_variant)]
pub enum PreviewRow {
    /// It can be taken in.
    Ready(OrderRow),
    /// It cannot.
    Bad {
        /// Its line in the file, from 1.
        line: u32,
        /// Everything that is wrong with it; at least one.
        reasons: Vec<Reason>,
    },
}

impl PreviewRow {
    /// Its line in the file, from 1.
    #[must_use]
    pub fn line(&self) -> u32 {
        match self {
            Self::Ready(row) => row.line,
            Self::Bad { line, .. } => *line,
        }
    }
}
