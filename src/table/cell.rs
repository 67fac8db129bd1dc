//! Cutting a line into cells.

use super::quote::{Opened, blanks_from, opened};
use std::borrow::Cow;

/// A cell as it stands in the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cell<'a> {
    /// What stands there, without the quotes around it.
    pub text: &'a str,
    /// True where quotes stood around it; then two of them stand for one.
    pub quoted: bool,
}

impl<'a> Cell<'a> {
    /// What the cell says.
    #[must_use]
    pub fn plain(self) -> Cow<'a, str> {
        if self.quoted && self.text.contains('"') { Cow::Owned(self.text.replace("\"\"", "\"")) } else { Cow::Borrowed(self.text) }
    }
}

/// The cells of a line that one sign parts; `sign` is ASCII. There is always one.
pub fn cells(line: &str, sign: u8) -> impl Iterator<Item = Cell<'_>> {
    let mut at = Some(0);
    std::iter::from_fn(move || {
        let from = at?;
        let (cell, next) = cell_at(line, from, sign);
        at = next;
        Some(cell)
    })
}

/// The cell that begins at `from`, and where the next one does.
fn cell_at(line: &str, from: usize, sign: u8) -> (Cell<'_>, Option<usize>) {
    let bytes = line.as_bytes();
    let end_from = |at: usize| {
        let length = bytes.get(at..).and_then(|rest| rest.iter().position(|&b| b == sign));
        length.map_or((bytes.len(), None), |length| (at + length, Some(at + length + 1)))
    };
    let start = blanks_from(bytes, from);
    if bytes.get(start) == Some(&b'"')
        // How far a cell may go on was decided when the lines were made.
        && let Opened::Cell(close) = opened(bytes, start, &[sign], usize::MAX)
    {
        let (_, next) = end_from(close + 1);
        return (Cell { text: line.get(start + 1..close).unwrap_or_default(), quoted: true }, next);
    }
    let (end, next) = end_from(from);
    (Cell { text: line.get(from..end).unwrap_or_default(), quoted: false }, next)
}
