//! Setting a table in a fixed pitch: columns as wide as they need, words wrapped where the line is too short, decimal marks aligned.

use super::block::{Side, Table};
use super::wrap::{columns, fill, wrap};

const GAP: usize = 2;
const LEAST: usize = 6;

/// The lines of a table, heads first; at most `width` columns.
#[must_use]
pub(super) fn table_lines(table: &Table, width: usize) -> Vec<String> {
    let cells = aligned(table);
    let widths = widths(table, &cells, width);
    let heads: Vec<String> = table.columns.iter().map(|(head, _)| head.clone()).collect();
    let mut lines = row_lines(table, &heads, &widths);
    lines.push(widths.iter().map(|width| "─".repeat(*width)).collect::<Vec<_>>().join(&" ".repeat(GAP)));
    for row in &cells {
        lines.extend(row_lines(table, row, &widths));
    }
    lines
}

/// The cells, those of decimal columns padded so that their marks stand below each other.
fn aligned(table: &Table) -> Vec<Vec<String>> {
    let mut cells = table.rows.clone();
    for (index, (_, side)) in table.columns.iter().enumerate() {
        let filled = match side {
            Side::Tick => "[ ]",
            Side::Write => "____________",
            _ => continue,
        };
        cells.iter_mut().filter_map(|row| row.get_mut(index)).filter(|cell| cell.is_empty()).for_each(|cell| filled.clone_into(cell));
    }
    for (index, (_, side)) in table.columns.iter().enumerate() {
        if *side != Side::Decimal {
            continue;
        }
        let after = |cell: &String| columns(cell) - mark_at(cell);
        let numbers = || table.rows.iter().filter_map(|row| row.get(index)).filter(|cell| is_number(cell));
        let most = numbers().map(after).max().unwrap_or(0);
        for row in &mut cells {
            if let Some(cell) = row.get_mut(index).filter(|cell| is_number(cell)) {
                *cell = fill(cell, columns(cell) + most - after(cell));
            }
        }
    }
    cells
}

pub(super) fn is_number(cell: &str) -> bool {
    cell.starts_with(|sign: char| sign.is_ascii_digit() || sign == '−' || sign == '-')
}

/// How many columns stand before the decimal mark, or before what follows the digits.
pub(super) fn mark_at(cell: &str) -> usize {
    let signs: Vec<char> = cell.chars().collect();
    let mark = signs.windows(2).position(|pair| matches!(pair[0], '.' | ',') && pair[1].is_ascii_digit());
    mark.or_else(|| signs.iter().rposition(char::is_ascii_digit).map(|last| last + 1)).unwrap_or(signs.len())
}

/// Each column as wide as its widest cell; where that is too much, the widest columns of words give way.
fn widths(table: &Table, cells: &[Vec<String>], width: usize) -> Vec<usize> {
    let widest = |index: usize, head: &str| {
        let cells = cells.iter().filter_map(|row| row.get(index)).map(|cell| columns(cell));
        cells.chain([columns(head)]).max().unwrap_or(0)
    };
    let mut widths: Vec<usize> = table.columns.iter().enumerate().map(|(index, (head, _))| widest(index, head)).collect();
    let room = width.saturating_sub(GAP * widths.len().saturating_sub(1));
    while widths.iter().sum::<usize>() > room {
        let giving = |left: bool| {
            let columns = table.columns.iter().zip(&widths).enumerate();
            let able = columns.filter(|(_, ((_, side), wide))| (!left || *side == Side::Left) && **wide > LEAST);
            able.max_by_key(|(index, (_, wide))| (**wide, usize::MAX - index)).map(|(index, _)| index)
        };
        match giving(true).or_else(|| giving(false)) {
            Some(index) => widths[index] -= 1,
            None => break,
        }
    }
    widths
}

fn row_lines(table: &Table, row: &[String], widths: &[usize]) -> Vec<String> {
    let parts: Vec<Vec<String>> = row.iter().zip(widths).map(|(cell, width)| cell_lines(cell, *width)).collect();
    let height = parts.iter().map(Vec::len).max().unwrap_or(0);
    let line = |at: usize| {
        let cells = parts.iter().zip(widths).zip(&table.columns).map(|((part, width), (_, side))| {
            let text = part.get(at).map_or("", String::as_str);
            if matches!(side, Side::Left | Side::Tick | Side::Write) { fill(text, *width) } else { format!("{text:>width$}") }
        });
        cells.collect::<Vec<_>>().join(&" ".repeat(GAP))
    };
    (0..height).map(line).collect()
}

/// A cell that fits is kept as it was padded.
fn cell_lines(cell: &str, width: usize) -> Vec<String> {
    if columns(cell) <= width { vec![cell.to_owned()] } else { wrap(cell, width) }
}
