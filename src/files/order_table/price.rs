//! Prices, and numbers with all their digits.

use super::marks::Marks;
use super::{CellAt, Reason};
use crate::table::{Decimal, Shape, exact, shape};

/// Signs and letters for a currency.
const CURRENCIES: [&str; 11] = ["eur", "usd", "gbp", "chf", "us$", "fr.", "€", "$", "£", "sfr.", "euro"];

/// The number without currency, and without the dash that stands for no cents: `€ 12,50`, `12,-`, `CHF 1'250.–`.
pub(super) fn without_currency(cell: &str) -> &str {
    let mut bare = cell.trim();
    for _ in 0..2 {
        for currency in CURRENCIES {
            let starts = bare.get(..currency.len()).is_some_and(|start| start.eq_ignore_ascii_case(currency));
            if starts {
                bare = bare.get(currency.len()..).unwrap_or(bare).trim_start();
            }
            let from = bare.len().saturating_sub(currency.len());
            let ends = bare.get(from..).is_some_and(|end| end.eq_ignore_ascii_case(currency));
            if ends {
                bare = bare.get(..from).unwrap_or(bare).trim_end();
            }
        }
    }
    let no_cents = [",-", ",--", ",–", ",—", ".-", ".--", ".–", ".—"].iter().find_map(|end| bare.strip_suffix(end));
    no_cents.unwrap_or(bare)
}

/// The price in a cell that says something, with a decimal point and no grouping.
pub(super) fn price(cell: &str, column: usize, marks: Marks) -> Result<String, Reason> {
    let number = exact_number(without_currency(cell), cell, column, marks)?;
    let is_nothing = number.bytes().all(|b| matches!(b, b'0' | b'.' | b'-'));
    match number.strip_prefix('-') {
        Some(digits) if is_nothing => Ok(digits.to_owned()),
        Some(_) => Err(Reason::PriceNegative(CellAt::new(column, cell))),
        None => Ok(number),
    }
}

/// A number with all its digits; `bare` is the cell without what may stand beside a number.
pub(super) fn exact_number(bare: &str, cell: &str, column: usize, marks: Marks) -> Result<String, Reason> {
    let not = || Reason::NotANumber(CellAt::new(column, cell));
    let read = |decimal: Decimal| exact(bare, decimal).ok_or_else(not);
    match (shape(bare).ok_or_else(not)?, marks.decimal) {
        (Shape::Open(_), None) => {
            let readings = [read(Decimal::Point)?, read(Decimal::Comma)?];
            Err(Reason::AmbiguousNumber { cell: CellAt::new(column, cell), readings })
        }
        (_, decimal) => read(decimal.unwrap_or(Decimal::Point)),
    }
}
