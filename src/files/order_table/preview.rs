//! Reading the rows of a table as lines of orders.

use super::alloy::{Alloys, Meant};
use super::columns::Columns;
use super::letters::{key, tidy};
use super::{Caution, Known, Mapping, OrderRow, PreviewRow, Question, Reason};
use crate::table::{Lines, Row, Table};
use jiff::{Span, civil::Date};
use std::collections::HashMap;

/// What a table would bring.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Preview {
    /// Every row below the headings, in the order of the file.
    pub rows: Vec<PreviewRow>,
    /// What a person must say before some of them can be read.
    pub questions: Vec<Question>,
    /// Lines above the headings and that of the headings, which are no rows.
    pub above: Lines,
}

impl Preview {
    /// The lines that cannot be taken in.
    #[must_use]
    pub fn bad(&self) -> Lines {
        self.rows.iter().filter(|row| matches!(row, PreviewRow::Bad { .. })).map(PreviewRow::line).collect()
    }

    /// The rows that can be taken in.
    pub fn ready(&self) -> impl Iterator<Item = &OrderRow> {
        self.rows.iter().filter_map(|row| match row {
            PreviewRow::Ready(row) => Some(row),
            PreviewRow::Bad { .. } => None,
        })
    }
}

/// Reads every row of a table, or says why it cannot be read. Nothing is left out: that is for a person to say. A mapping that does not fit
/// the table reads all rows below the table's own headings by the places of its columns.
#[must_use]
pub fn preview(table: &Table, mapping: &Mapping, known: &Known) -> Preview {
    let first = mapping.fingerprint.first_row(table).unwrap_or_else(|| table.heading.map_or(0, |at| at + 1));
    let (above, rows) = table.rows.split_at_checked(first).unwrap_or((&table.rows, &[]));
    let alloys = Alloys::new(&known.alloys, &mapping.alloys);
    let mut meant: HashMap<String, Meant> = HashMap::new();
    let mut earlier: HashMap<Vec<&str>, u32> = HashMap::new();
    let columns = Columns::new(rows, mapping);
    let read = rows.iter().map(|row| {
        let mut look_up = |cell: &str| meant.entry(tidy(cell)).or_insert_with(|| alloys.meant(cell)).clone();
        let repeat = repeat_of(row, &mut earlier);
        match columns.read(row, &mut look_up) {
            Ok(mut order) => {
                order.cautions = cautions(&order, repeat, known.today);
                PreviewRow::Ready(order)
            }
            Err(reasons) => PreviewRow::Bad { line: row.line, reasons },
        }
    });
    let rows: Vec<PreviewRow> = read.collect();
    let questions = questions(&rows);
    Preview { rows, questions, above: above.iter().map(|row| row.line).collect() }
}

/// The line of the first row with the same cells; remembers the row where there is none.
fn repeat_of<'a>(row: &'a Row, earlier: &mut HashMap<Vec<&'a str>, u32>) -> Option<u32> {
    let cells = row.cells.iter().map(|cell| cell.trim()).collect();
    let first = *earlier.entry(cells).or_insert(row.line);
    (first != row.line).then_some(first)
}

fn cautions(order: &OrderRow, repeat: Option<u32>, today: Date) -> Vec<Caution> {
    let far_off = today.checked_add(Span::new().years(2)).unwrap_or(Date::MAX);
    let told = [
        repeat.map(|of_line| Caution::Repeat { of_line }),
        order.due.filter(|due| *due < today).map(|_| Caution::DuePast),
        order.due.filter(|due| *due > far_off).map(|_| Caution::DueFarOff),
        order.taken.filter(|taken| *taken > today).map(|_| Caution::TakenInFuture),
    ];
    told.into_iter().flatten().collect()
}

/// Each question once, in the order of the file.
fn questions(rows: &[PreviewRow]) -> Vec<Question> {
    let mut questions: Vec<Question> = Vec::new();
    let mut asked = std::collections::HashSet::new();
    for row in rows {
        let PreviewRow::Bad { reasons, .. } = row else { continue };
        for reason in reasons {
            let (name, question) = match reason {
                Reason::AmbiguousDate { cell, .. } => (format!("d{}", cell.column), Question::DayOrder { column: cell.column }),
                Reason::AmbiguousNumber { cell, .. } => (format!("n{}", cell.column), Question::DecimalSign { column: cell.column }),
                Reason::SeveralAlloys { cell, fitting: among } | Reason::UnknownAlloy { cell, nearest: among } => {
                    (format!("a{}", key(&cell.text)), Question::Alloy { text: cell.text.clone(), among: among.clone() })
                }
                _ => continue,
            };
            if asked.insert(name) {
                questions.push(question);
            }
        }
    }
    questions
}
