//! From the bytes of a file to a table.

use super::harmless::bare;
use super::heading::heading;
use super::sniff::{named_separator, sniff};
use super::{Encoding, Limits, Record, Separator, TableError, cells, decode, records};

/// A row of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The line it begins on, from 1.
    pub line: u32,
    /// What its cells say, blanks and all; empty ones at the end are dropped, so there is at least one that is not.
    pub cells: Vec<String>,
}

impl Row {
    /// A cell, empty where the row has none there.
    #[must_use]
    pub fn cell(&self, column: usize) -> &str {
        self.cells.get(column).map_or("", String::as_str)
    }
}

/// A table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// Its rows in the order of the file, those with nothing in them left out; at least one.
    pub rows: Vec<Row>,
    /// The row that names the columns, where the cells below show that it does. Titles may stand above it.
    pub heading: Option<usize>,
    /// How its characters were written.
    pub encoding: Encoding,
    /// What parted its cells.
    pub separator: Separator,
}

impl Table {
    /// The most cells of a row.
    #[must_use]
    pub fn width(&self) -> usize {
        self.rows.iter().map(|row| row.cells.len()).max().unwrap_or(0)
    }
}

/// Reads a table as spreadsheets write it, by RFC 4180 and what programs make of it: UTF-8, UTF-16 or Windows-1252; commas, semicolons,
/// tabs or bars, found by counting or named by a first line `sep=;`; quotes around cells, doubled within, with line breaks; lines that end
/// with LF, CR or both. An apostrophe that [`super::write()`] put before what looks like a formula is taken off again. Takes time in
/// proportion to the length.
///
/// # Errors
/// Where the file is no text, holds nothing, exceeds the limits, or has a quote that is never closed.
pub fn read(bytes: &[u8], limits: &Limits) -> Result<Table, TableError> {
    if bytes.len() > limits.max_bytes {
        return Err(TableError::TooLarge { bytes: bytes.len(), most: limits.max_bytes });
    }
    // The first bytes of zip archives and of the older compound files.
    if bytes.starts_with(b"PK\x03\x04") || bytes.starts_with(b"\xd0\xcf\x11\xe0") {
        return Err(TableError::SpreadsheetFile);
    }
    let decoded = decode(bytes).map_err(|before| TableError::NotText { line: line_at(&before, before.len()) })?;
    let text = &*decoded.text;
    refuse_nonsense(text)?;
    if let Some(place) = decoded.broken {
        return Err(TableError::BrokenText { line: line_at(text, place) });
    }
    let all = records(text, Separator::BYTES, limits)?;
    let (named, after) = named_separator(&all.records);
    let separator = named.unwrap_or_else(|| sniff(after));
    // Now that the sign is known, no other one can open a quote.
    let sure = records(text, &[separator.byte()], limits)?;
    let from = after.first().map_or(u32::MAX, |record| record.line);
    if let Some(line) = sure.unclosed {
        return Err(TableError::QuoteNotClosed { line });
    }
    let mut rows = Vec::with_capacity(sure.records.len());
    for record in sure.records.iter().filter(|record| record.line >= from) {
        rows.extend(row(record, separator, limits)?);
    }
    if rows.is_empty() {
        return Err(TableError::Empty);
    }
    let heading = heading(&rows);
    Ok(Table { rows, heading, encoding: decoded.encoding, separator })
}

/// The row of a line; none where all its cells are blank.
fn row(record: &Record<'_>, separator: Separator, limits: &Limits) -> Result<Option<Row>, TableError> {
    let mut row = Row { line: record.line, cells: Vec::new() };
    let mut left_out = 0;
    for cell in cells(record.text, separator.byte()) {
        let cell = cell.plain();
        let cell = bare(&cell);
        if cell.trim().is_empty() {
            left_out += 1;
            continue;
        }
        if row.cells.len() + left_out >= limits.max_columns {
            return Err(TableError::TooManyColumns { line: record.line, most: limits.max_columns });
        }
        row.cells.extend(std::iter::repeat_n(String::new(), left_out));
        left_out = 0;
        row.cells.push(cell.to_owned());
    }
    Ok((!row.cells.is_empty()).then_some(row))
}

/// Refuses what is text and no table: signs that stand in no text, and pages.
fn refuse_nonsense(text: &str) -> Result<(), TableError> {
    let is_odd = |c: char| c.is_control() && !matches!(c, '\t' | '\n' | '\r' | '\u{b}' | '\u{c}' | '\u{80}'..='\u{9f}');
    let odd = text.chars().filter(|&c| is_odd(c)).count();
    if odd > 2 && 50 * odd > text.len() {
        return Err(TableError::NotText { line: line_at(text, text.find(is_odd).unwrap_or(0)) });
    }
    let start = text.trim_start();
    let marks = ["<html", "<table", "<!doctype", "<?xml", "{\\rtf", "%pdf-"];
    let is_marked = marks.iter().any(|mark| start.get(..mark.len()).is_some_and(|start| start.eq_ignore_ascii_case(mark)));
    if is_marked { Err(TableError::Markup { line: line_at(text, text.len() - start.len()) }) } else { Ok(()) }
}

/// The line of a place in a text, from 1.
fn line_at(text: &str, place: usize) -> u32 {
    let before = text.as_bytes().get(..place).unwrap_or_default();
    u32::try_from(super::quote::breaks(before)).map_or(u32::MAX, |breaks| breaks.saturating_add(1))
}
