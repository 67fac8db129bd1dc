//! A job as rows: one for the job as a whole, then one for every line. They lie close together, since a search walks over all of them.

use jiff::civil::Date;

use super::{DateOf, Field};
use crate::job::LineId;

/// Bits of a [`Cell`] that are the number of its text; the field stands above them.
const TEXT_BITS: u32 = 28;

/// A text in a field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Cell(u32);

impl Cell {
    /// `None` where there are more texts than can be told apart.
    pub(super) fn new(field: Field, text: u32) -> Option<Self> {
        (text >> TEXT_BITS == 0).then_some(Self((field as u32) << TEXT_BITS | text))
    }

    pub(super) fn field(self) -> Field {
        Field::ALL.get((self.0 >> TEXT_BITS) as usize).copied().unwrap_or(Field::Job)
    }

    pub(super) fn text(self) -> u32 {
        self.0 & ((1 << TEXT_BITS) - 1)
    }
}

/// Where a row's cells and dates end; they begin where those of the row before end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Ends {
    pub(super) line: LineId,
    pub(super) cells: u32,
    pub(super) dates: u32,
}

/// A row: the job as a whole, or a line with what is not in common with others.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Row<'r> {
    /// The line; nothing of meaning in the job's own row.
    pub(super) line: LineId,
    pub(super) cells: &'r [Cell],
    /// The newest first.
    pub(super) dates: &'r [(Date, DateOf)],
}

/// A job as rows.
#[derive(Debug, Clone, Default)]
pub(crate) struct Rows {
    /// The job's own row, then those of its lines.
    pub(super) ends: Box<[Ends]>,
    pub(super) cells: Box<[Cell]>,
    pub(super) dates: Box<[(Date, DateOf)]>,
}

impl Rows {
    /// The row of the job as a whole.
    pub(super) fn job(&self) -> Row<'_> {
        self.row(0).unwrap_or_default()
    }

    /// The rows of the lines.
    pub(super) fn lines(&self) -> impl Iterator<Item = Row<'_>> {
        (1..self.ends.len()).filter_map(|number| self.row(number))
    }

    /// The row of the line at this place among the lines, from 0.
    pub(super) fn line(&self, place: usize) -> Option<Row<'_>> {
        self.row(place + 1)
    }

    fn row(&self, number: usize) -> Option<Row<'_>> {
        let ends = self.ends.get(number)?;
        let begin = number.checked_sub(1).and_then(|before| self.ends.get(before)).copied().unwrap_or_default();
        let cells = self.cells.get(begin.cells as usize..ends.cells as usize)?;
        let dates = self.dates.get(begin.dates as usize..ends.dates as usize)?;
        Some(Row { line: ends.line, cells, dates })
    }

    /// The lines, each with the number of the text in which its design stands.
    pub(crate) fn designs(&self) -> impl Iterator<Item = (LineId, u32)> {
        let design = |row: &Row<'_>| row.cells.iter().find(|cell| cell.field() == Field::Design).map(|cell| cell.text());
        self.lines().filter_map(move |row| Some((row.line, design(&row)?)))
    }
}
