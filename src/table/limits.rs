//! How much a table may cost.

/// The most a table may cost before it is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// The longest file that is read, in bytes.
    pub max_bytes: usize,
    /// The most rows that are kept, blank ones not counted.
    pub max_rows: usize,
    /// The most cells in a row.
    pub max_columns: usize,
    /// The line breaks a quoted cell may hold: a stray quote must not eat the file.
    pub max_breaks: usize,
}

impl Default for Limits {
    /// 16 MB, 50 000 rows of 256 cells, 200 line breaks in a cell: far beyond what a studio is asked for at one time.
    fn default() -> Self {
        Self { max_bytes: 16_000_000, max_rows: 50_000, max_columns: 256, max_breaks: 200 }
    }
}
