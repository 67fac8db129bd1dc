//! Finding the row that names the columns.

use super::{Kind, Row, kind};

/// The rows among which the headings may stand, below titles of the table.
pub(super) const FIRST_ROWS: usize = 20;
/// The rows below that are asked.
const BELOW: usize = 50;

/// The row of the headings: the first that holds words alone, as many as half the columns, over a column that holds numbers or dates. Where
/// all columns hold words, nothing tells a heading from a row.
pub(super) fn heading(rows: &[Row]) -> Option<usize> {
    let width = rows.iter().map(|row| row.cells.len()).max().unwrap_or(0);
    rows.iter().take(FIRST_ROWS).enumerate().position(|(at, row)| {
        let words = row.cells.iter().filter(|cell| kind(cell) == Kind::Text).count();
        let other = row.cells.iter().any(|cell| matches!(kind(cell), Kind::Number | Kind::Date));
        !other && 2 * words >= width && (0..row.cells.len()).any(|column| names_values(rows, at, column))
    })
}

/// True where a word stands over numbers or dates.
fn names_values(rows: &[Row], at: usize, column: usize) -> bool {
    let kind_in = |row: &Row| row.cells.get(column).map_or(Kind::Empty, |cell| kind(cell));
    let is_word = rows.get(at).is_some_and(|row| kind_in(row) == Kind::Text);
    let below = || rows.iter().skip(at + 1).take(BELOW).map(kind_in);
    let values = below().filter(|kind| matches!(kind, Kind::Number | Kind::Date)).count();
    let words = below().filter(|kind| *kind == Kind::Text).count();
    is_word && values > words
}
