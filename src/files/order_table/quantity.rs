//! How many pieces.

use super::marks::Marks;
use super::price::exact_number;
use super::{CellAt, Reason};

/// The most pieces of a line: as many as a job file holds.
pub const MOST_PIECES: u32 = 100_000;

/// What stands behind or before a number of pieces, in small letters. A pair is two, and who writes it may mean either: it is none of
/// these.
const PIECES: [&str; 13] = ["pieces", "piece", "pcs.", "pcs", "pc.", "pc", "stück", "stueck", "stk.", "stk", "st.", "ea", "×"];

/// The number without the word for pieces.
pub(super) fn without_pieces(cell: &str) -> &str {
    let cell = cell.trim();
    if cell.bytes().all(|b| b.is_ascii_digit()) {
        return cell;
    }
    let behind = |word: &str| {
        let (number, end) = cell.split_at_checked(cell.len().checked_sub(word.len())?)?;
        (end.to_lowercase() == word && number.trim_end().ends_with(|c: char| c.is_ascii_digit())).then(|| number.trim_end())
    };
    if let Some(number) = PIECES.iter().find_map(|word| behind(word)) {
        return number;
    }
    let bare = cell.strip_suffix(['x', 'X']).or_else(|| cell.strip_prefix(['x', 'X', '×'])).map_or(cell, str::trim);
    if bare.starts_with(|c: char| c.is_ascii_digit()) { bare } else { cell }
}

/// The quantity in a cell that says something.
pub(super) fn quantity(cell: &str, column: usize, marks: Marks) -> Result<u32, Reason> {
    let at = || CellAt::new(column, cell);
    let number = exact_number(without_pieces(cell), cell, column, marks)?;
    let digits = number.strip_prefix('-').unwrap_or(&number);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let is_nothing = digits.bytes().all(|b| matches!(b, b'0' | b'.'));
    if is_nothing {
        return Err(Reason::QuantityZero(at()));
    }
    if number.starts_with('-') {
        return Err(Reason::QuantityNegative(at()));
    }
    if part.bytes().any(|b| b != b'0') {
        return Err(Reason::QuantityNotWhole(at()));
    }
    let too_large = || Reason::QuantityTooLarge { cell: at(), most: MOST_PIECES };
    whole.parse().ok().filter(|quantity| *quantity <= MOST_PIECES).ok_or_else(too_large)
}
