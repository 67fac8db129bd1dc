//! Why a row cannot be taken in, and what to look at in one that can.

use jiff::civil::Date;

/// A cell that something is said about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CellAt {
    /// Its column, from 0.
    pub column: usize,
    /// What it says, shortened to 80 characters.
    pub text: String,
}

impl CellAt {
    pub(super) fn new(column: usize, text: &str) -> Self {
        Self { column, text: text.trim().chars().take(80).map(|c| if c.is_control() { ' ' } else { c }).collect() }
    }
}

/// Why a row cannot be taken in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reason {
    /// Nobody is named; `column` is where, if a column is the client at all.
    NoClient {
        /// The column, from 0.
        column: Option<usize>,
    },
    /// No design is named.
    NoDesign {
        /// The column, from 0.
        column: Option<usize>,
    },
    /// No quantity is told.
    NoQuantity {
        /// The column, from 0.
        column: Option<usize>,
    },
    /// What should be a number is none, or has lost digits to an exponent.
    NotANumber(CellAt),
    /// The comma or point of a number parts thousands or decimals, and nothing in its column decides.
    AmbiguousNumber {
        /// The number.
        cell: CellAt,
        /// What it is with a decimal point and with a decimal comma.
        readings: [String; 2],
    },
    /// A part of a piece is asked for.
    QuantityNotWhole(CellAt),
    /// No piece is asked for.
    QuantityZero(CellAt),
    /// Fewer than no pieces are asked for.
    QuantityNegative(CellAt),
    /// More pieces are asked for than a line holds.
    QuantityTooLarge {
        /// The quantity.
        cell: CellAt,
        /// The most.
        most: u32,
    },
    /// No alloy is called that.
    UnknownAlloy {
        /// What it says.
        cell: CellAt,
        /// Ids of the alloys whose names come nearest, the nearest first; at most three, perhaps none.
        nearest: Vec<String>,
    },
    /// Several alloys are called that.
    SeveralAlloys {
        /// What it says.
        cell: CellAt,
        /// Their ids.
        fitting: Vec<String>,
    },
    /// What should be a date is none.
    NotADate(CellAt),
    /// Day and month can be taken for each other, and nothing in the column decides.
    AmbiguousDate {
        /// The date.
        cell: CellAt,
        /// What it is with the day first and with the month first.
        readings: [Date; 2],
    },
    /// It is due before it was ordered.
    DateBeforeTaken {
        /// When it is due.
        due: Date,
        /// When it was ordered.
        taken: Date,
    },
    /// The price is below nothing.
    PriceNegative(CellAt),
    /// What should be a size is none; spreadsheets turn `6.5` into a date.
    SizeUnreadable(CellAt),
    /// More cells hold something than the table has columns: a separator within a cell has no quotes around it.
    TooManyCells {
        /// Cells up to the last that holds something.
        cells: usize,
        /// Columns of the table.
        columns: usize,
    },
    /// The spreadsheet could not work out the cell, and wrote so.
    SpreadsheetFault(CellAt),
    /// The cell says more than fits.
    TooLong {
        /// The cell.
        cell: CellAt,
        /// The most characters.
        most: usize,
    },
}

/// What to look at in a row that can be taken in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caution {
    /// Every cell is that of an earlier row.
    Repeat {
        /// The line of the first such row.
        of_line: u32,
    },
    /// It was due before today.
    DuePast,
    /// It is due more than two years from today.
    DueFarOff,
    /// It was ordered after today.
    TakenInFuture,
}

/// What a person must say before some rows can be read. The answers are kept in the [`super::Mapping`].
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Question {
    /// Does the day stand first in this column?
    DayOrder {
        /// The column, from 0.
        column: usize,
    },
    /// Which is the decimal sign of this column?
    DecimalSign {
        /// The column, from 0.
        column: usize,
    },
    /// Which alloy is meant?
    Alloy {
        /// The words, as first written.
        text: String,
        /// Ids of the alloys that fit or, where none does, come nearest.
        among: Vec<String>,
    },
}
