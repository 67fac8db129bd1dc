//! The lines of a text that have something on them.

use super::quote::{Opened, blanks_from, breaks, opened};
use super::{Limits, TableError};

/// A line, or several where a quoted cell goes on.
#[derive(Debug, Clone, Copy)]
pub struct Record<'a> {
    /// Number of its first line, from 1.
    pub line: u32,
    /// The line without its end.
    pub text: &'a str,
}

impl Record<'_> {
    /// True where it begins with `#` or `//`, as instruments write remarks; in a spreadsheet `#` may be the name of a column.
    #[must_use]
    pub fn is_comment(&self) -> bool {
        let text = self.text.trim_start();
        text.starts_with('#') || text.starts_with("//")
    }
}

/// The lines of a text.
#[derive(Debug, Clone)]
pub struct Records<'a> {
    /// Those that are not blank.
    pub records: Vec<Record<'a>>,
    /// The line of the first quote that opens a cell and is never closed; it was taken as a sign like any other.
    pub unclosed: Option<u32>,
}

/// The lines that are not blank; they end with LF, CR or both. A cell may begin at the start of a line and behind each of `signs`, and goes
/// on over line breaks where quotes stand around it.
///
/// # Errors
/// [`TableError::TooManyRows`].
pub fn records<'a>(text: &'a str, signs: &[u8], limits: &Limits) -> Result<Records<'a>, TableError> {
    let bytes = text.as_bytes();
    let mut found = Records { records: Vec::new(), unclosed: None };
    let (mut at, mut line) = (0, 1_u32);
    while at < bytes.len() {
        let (mut end, mut next) = line_end(bytes, at);
        let mut lines = 1;
        if bytes.get(at..end).is_some_and(|line| line.contains(&b'"')) {
            let (quoted_end, unclosed) = quoted_line_end(bytes, at, signs, limits.max_breaks);
            (end, next) = line_end(bytes, quoted_end);
            lines += breaks(bytes.get(at..end).unwrap_or_default());
            if let (None, Some(place)) = (found.unclosed, unclosed) {
                found.unclosed = Some(line + count(breaks(bytes.get(at..place).unwrap_or_default())));
            }
        }
        let text = text.get(at..end).unwrap_or_default();
        if !text.trim_ascii().is_empty() && !text.trim().is_empty() {
            if found.records.len() >= limits.max_rows {
                return Err(TableError::TooManyRows { line, most: limits.max_rows });
            }
            found.records.push(Record { line, text });
        }
        line = line.saturating_add(count(lines));
        at = next;
    }
    Ok(found)
}

/// Lines beyond four thousand million are not told apart.
fn count(lines: usize) -> u32 {
    u32::try_from(lines).unwrap_or(u32::MAX)
}

/// Where the line ends, and where the next begins.
fn line_end(bytes: &[u8], from: usize) -> (usize, usize) {
    let rest = bytes.get(from..).unwrap_or_default();
    let end = from + rest.iter().position(|&b| b == b'\n' || b == b'\r').unwrap_or(rest.len());
    let width = match bytes.get(end..) {
        Some([b'\r', b'\n', ..]) => 2,
        Some([_, ..]) => 1,
        _ => 0,
    };
    (end, end + width)
}

/// A place on the last line of a record, behind all quoted cells, and the first quote that is never closed.
fn quoted_line_end(bytes: &[u8], from: usize, signs: &[u8], max_breaks: usize) -> (usize, Option<usize>) {
    let (mut at, mut unclosed) = (from, None);
    loop {
        let start = blanks_from(bytes, at);
        if bytes.get(start) == Some(&b'"') {
            match opened(bytes, start, signs, max_breaks) {
                Opened::Cell(close) => at = close + 1,
                Opened::Nothing => {}
                Opened::Unclosed => unclosed = unclosed.or(Some(start)),
            }
        }
        let rest = bytes.get(at..).unwrap_or_default();
        let Some(length) = rest.iter().position(|b| matches!(b, b'\n' | b'\r') || signs.contains(b)) else {
            return (bytes.len(), unclosed);
        };
        at += length;
        if bytes.get(at).is_some_and(|b| matches!(b, b'\n' | b'\r')) {
            return (at, unclosed);
        }
        at += 1;
    }
}
