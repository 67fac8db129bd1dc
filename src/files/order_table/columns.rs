//! Reading one row by what its columns are.

use super::alloy::Meant;
use super::date::date;
use super::letters::{is_spreadsheet_fault, says_nothing, tidy};
use super::marks::Marks;
use super::price::price;
use super::quantity::quantity;
use super::size::size;
use super::{CellAt, Mapping, OrderRow, Reason, Role};
use crate::table::Row;

/// The most characters of a name, and of remarks.
const MOST_NAME: usize = 300;
const MOST_NOTES: usize = 5000;

/// What the columns are, and how each is written.
pub(super) struct Columns<'a> {
    mapping: &'a Mapping,
    marks: Vec<Marks>,
}

/// A row while it is read: what is wrong with it is gathered, so that a person sees all of it at once.
struct Reading<'a, 'r> {
    columns: &'a Columns<'a>,
    row: &'r Row,
    reasons: Vec<Reason>,
}

impl<'a> Columns<'a> {
    pub fn new(rows: &[Row], mapping: &'a Mapping) -> Self {
        let marks = (0..mapping.columns.len()).map(|column| Marks::of(rows, column, mapping)).collect();
        Self { mapping, marks }
    }

    /// The row as a line of an order, or all that is wrong with it.
    pub fn read(&self, row: &Row, alloy: &mut dyn FnMut(&str) -> Meant) -> Result<OrderRow, Vec<Reason>> {
        let mut reading = Reading { columns: self, row, reasons: Vec::new() };
        let width = self.mapping.columns.len();
        if row.cells.len() > width {
            reading.reasons.push(Reason::TooManyCells { cells: row.cells.len(), columns: width });
        }
        let client = reading.name(Role::Client).or_else(|| self.mapping.client.clone());
        let client = reading.needed(client, Role::Client, |column| Reason::NoClient { column });
        let design = reading.name(Role::Design);
        let design = reading.needed(design, Role::Design, |column| Reason::NoDesign { column });
        let quantity = reading.value(Role::Quantity, quantity).or(self.mapping.quantity);
        let quantity = reading.needed(quantity, Role::Quantity, |column| Reason::NoQuantity { column });
        let alloy = reading.value(Role::Alloy, |cell, column, _| match alloy(cell) {
            Meant::One(id) => Ok(id),
            Meant::Several(fitting) => Err(Reason::SeveralAlloys { cell: CellAt::new(column, cell), fitting }),
            Meant::Unknown(nearest) => Err(Reason::UnknownAlloy { cell: CellAt::new(column, cell), nearest }),
        });
        let order = OrderRow {
            line: row.line,
            client: client.unwrap_or_default(),
            reference: reading.name(Role::Reference),
            design: design.unwrap_or_default(),
            quantity: quantity.unwrap_or_default(),
            alloy,
            size: reading.value(Role::Size, |cell, column, _| size(cell, column)),
            due: reading.value(Role::Due, date),
            taken: reading.value(Role::Taken, date),
            price: reading.value(Role::Price, price),
            pattern_file: reading.name(Role::PatternFile),
            notes: reading.notes(),
            cautions: Vec::new(),
        };
        if let (Some(due), Some(taken)) = (order.due, order.taken)
            && due < taken
        {
            reading.reasons.push(Reason::DateBeforeTaken { due, taken });
        }
        if reading.reasons.is_empty() { Ok(order) } else { Err(reading.reasons) }
    }
}

impl<'r> Reading<'_, 'r> {
    /// The column of a role and its cell, where that says something the spreadsheet could work out.
    fn cell(&mut self, role: Role) -> Option<(usize, &'r str)> {
        let row: &'r Row = self.row;
        let column = self.columns.mapping.column(role)?;
        let cell = row.cell(column);
        if says_nothing(cell) {
            return None;
        }
        if is_spreadsheet_fault(cell) {
            self.reasons.push(Reason::SpreadsheetFault(CellAt::new(column, cell)));
            return None;
        }
        Some((column, cell))
    }

    /// A name, tidied.
    fn name(&mut self, role: Role) -> Option<String> {
        let (column, cell) = self.cell(role)?;
        let name = tidy(cell);
        if name.chars().count() > MOST_NAME {
            let reason = Reason::TooLong { cell: CellAt::new(column, cell), most: MOST_NAME };
            self.reasons.push(reason);
            return None;
        }
        Some(name)
    }

    /// What a cell says, read; what is wrong with it is noted.
    fn value<T>(&mut self, role: Role, read: impl FnOnce(&str, usize, Marks) -> Result<T, Reason>) -> Option<T> {
        let marks = self.columns.mapping.column(role).and_then(|column| self.columns.marks.get(column)).copied().unwrap_or_default();
        let (column, cell) = self.cell(role)?;
        match read(cell, column, marks) {
            Ok(value) => Some(value),
            Err(reason) => {
                self.reasons.push(reason);
                None
            }
        }
    }

    /// Notes that something needed is missing, unless something wrong was noted about its cell already.
    fn needed<T>(&mut self, found: Option<T>, role: Role, missing: impl FnOnce(Option<usize>) -> Reason) -> Option<T> {
        let column = self.columns.mapping.column(role);
        let is_empty = column.is_none_or(|column| says_nothing(self.row.cell(column)));
        if found.is_none() && is_empty {
            self.reasons.push(missing(column));
        }
        found
    }

    /// The remarks of all their columns, each on lines of its own.
    fn notes(&mut self) -> String {
        let row: &'r Row = self.row;
        let mut notes: Vec<&str> = Vec::new();
        for (column, _) in self.columns.mapping.columns.iter().enumerate().filter(|(_, role)| **role == Role::Notes) {
            let cell = row.cell(column).trim();
            if cell.chars().count() > MOST_NOTES {
                self.reasons.push(Reason::TooLong { cell: CellAt::new(column, cell), most: MOST_NOTES });
            } else if !says_nothing(cell) {
                notes.push(cell);
            }
        }
        notes.join("\n")
    }
}
