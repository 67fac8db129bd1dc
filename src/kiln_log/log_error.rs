//! Why a log could not be read.

use std::error::Error;
use std::fmt;

/// Why a file gave no curve. Lines and columns are counted from 1.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LogError {
    /// The file has nothing in it.
    Empty,
    /// The file is longer than the limit.
    TooLarge {
        /// Its length in bytes.
        bytes: usize,
        /// The limit in bytes.
        most: usize,
    },
    /// The file has more lines than the limit.
    TooManyRows {
        /// The limit.
        most: usize,
    },
    /// The bytes are no text.
    NotText,
    /// No two columns of numbers or times were found.
    NoTable {
        /// The first line with something on it.
        line: u32,
    },
    /// No column is a time.
    NoTime {
        /// Line of the header or, without one, of the first row.
        line: u32,
    },
    /// No column beside the time is a temperature.
    NoTemperature {
        /// Line of the header or, without one, of the first row.
        line: u32,
    },
    /// The column that was asked for is not there, or is no column of that kind.
    NoSuchColumn {
        /// The column.
        column: usize,
        /// How many there are.
        there: usize,
    },
    /// What stands for a temperature is none.
    NotATemperature {
        /// The line.
        line: u32,
        /// What stands there, shortened.
        found: String,
    },
    /// What stands for a time is none.
    NotATime {
        /// The line.
        line: u32,
        /// What stands there, shortened.
        found: String,
    },
    /// A number can be read in two ways, and nothing in the file decides.
    TwoReadings {
        /// The line.
        line: u32,
        /// The number as it stands.
        found: String,
    },
    /// Commas part the columns and are decimal signs as well.
    CommaTwice {
        /// The first row.
        line: u32,
    },
    /// The times go back further than a row out of place.
    GoesBack {
        /// The first line that does.
        line: u32,
    },
    /// All readings are sensor faults.
    OnlyFaults {
        /// How many.
        count: usize,
    },
    /// Fewer than two points are left.
    TooFewPoints {
        /// How many.
        count: usize,
    },
}

impl fmt::Display for LogError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("the file is empty"),
            Self::TooLarge { bytes, most } => write!(f, "the file has {bytes} bytes; at most {most} are read"),
            Self::TooManyRows { most } => write!(f, "the file has more than {most} rows"),
            Self::NotText => f.write_str("the file is no text; export the log as CSV"),
            Self::NoTable { line } => write!(f, "line {line} and after: no two columns of times and temperatures were found"),
            Self::NoTime { line } => write!(f, "line {line}: no column of times was found"),
            Self::NoTemperature { line } => write!(f, "line {line}: no column of temperatures was found"),
            Self::NoSuchColumn { column, there } => write!(f, "column {column} is no column to take here; the file has {there}"),
            Self::NotATemperature { line, found } => write!(f, "line {line}: “{found}” is no temperature"),
            Self::NotATime { line, found } if found.is_empty() => write!(f, "line {line}: nothing stands where a time was expected"),
            Self::NotATime { line, found } => write!(f, "line {line}: “{found}” is no time"),
            Self::TwoReadings { line, found } => {
                write!(f, "line {line}: “{found}” can be read in two ways; say which sign is the decimal sign")
            }
            Self::CommaTwice { line } => write!(f, "line {line}: commas part the columns and the decimals; export with semicolons"),
            Self::GoesBack { line } => write!(f, "line {line}: the time goes back; a log of several firings must be split"),
            Self::OnlyFaults { count } => write!(f, "all {count} readings are sensor faults"),
            Self::TooFewPoints { count } => write!(f, "{count} readings are no curve; at least 2 are needed"),
        }
    }
}

impl Error for LogError {}

/// The beginning of what a file says, for a sentence: a hostile file may say very much.
pub(super) fn shortened(said: &str) -> String {
    said.chars().take(40).map(|c| if c.is_control() { ' ' } else { c }).collect()
}
