//! Why a table could not be read.

use std::error::Error;
use std::fmt;

/// Why a file gave no table. Lines are counted from 1.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TableError {
    /// The file has nothing in it.
    Empty,
    /// The file is longer than the limit.
    TooLarge {
        /// Its length in bytes.
        bytes: usize,
        /// The limit in bytes.
        most: usize,
    },
    /// The file has more rows than the limit.
    TooManyRows {
        /// The first line beyond it.
        line: u32,
        /// The limit.
        most: usize,
    },
    /// A row has more cells than the limit.
    TooManyColumns {
        /// The line.
        line: u32,
        /// The limit.
        most: usize,
    },
    /// The file is a spreadsheet's own, packed one.
    SpreadsheetFile,
    /// The file is a page or a document with marks between angle brackets.
    Markup {
        /// The line of the first mark.
        line: u32,
    },
    /// The bytes are no text.
    NotText {
        /// The line with the first sign that stands in no text.
        line: u32,
    },
    /// Bytes are no character of the encoding that the file says it has.
    BrokenText {
        /// The line.
        line: u32,
    },
    /// A quote opens a cell, and none closes it.
    QuoteNotClosed {
        /// The line.
        line: u32,
    },
}

impl fmt::Display for TableError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("the file is empty"),
            Self::TooLarge { bytes, most } => write!(f, "the file has {bytes} bytes; at most {most} are read"),
            Self::TooManyRows { line, most } => write!(f, "line {line}: the file has more than {most} rows"),
            Self::TooManyColumns { line, most } => write!(f, "line {line}: the row has more than {most} cells"),
            Self::SpreadsheetFile => f.write_str("line 1: this is a spreadsheet's own file; save the table as CSV"),
            Self::Markup { line } => write!(f, "line {line}: this is a page with marks, no table; save the table as CSV"),
            Self::NotText { line } => write!(f, "line {line}: the file is no text; save the table as CSV"),
            Self::BrokenText { line } => write!(f, "line {line}: bytes stand there that are no characters; save the table again as UTF-8"),
            Self::QuoteNotClosed { line } => write!(f, "line {line}: a quote opens a cell there, and none closes it"),
        }
    }
}

impl Error for TableError {}

/// The beginning of what a file says, for a sentence: a hostile file may say very much.
#[must_use]
pub fn shortened(said: &str) -> String {
    said.chars().take(40).map(|c| if c.is_control() { ' ' } else { c }).collect()
}
