//! Kinds of quantity, their units, what a person types and what a person reads. Finite numbers only.
//!
//! Start at [`Kind`]: each kind has one unit it is computed in, named in every field and argument that holds it. [`parse`] takes what a
//! person types into that unit, [`print()`] brings it back in the units of a [`Style`]; what is printed can be typed. An entry that can mean two
//! things is refused with both ([`EntryError::readings`]): nothing is guessed that could cost a flask.

mod decimal_round;
mod describe;
mod entry_error;
mod evaluate;
mod expression;
mod finite;
mod grams;
mod kept;
mod kind;
mod meaning;
mod moment;
mod money;
mod node;
mod number;
mod parse;
mod print;
mod round;
mod style;
mod token;
mod unit;
mod unit_table;

pub use decimal_round::half_up;
pub use describe::Description;
pub use entry_error::{EntryError, EntryErrorKind, Reading};
pub use finite::Finite;
pub use grams::Grams;
pub use kind::{Dimension, Kind};
pub use money::Money;
pub use parse::{Habits, Parsed, parse, parse_grams, parse_money};
pub use print::{MINUS, Printed, THIN, align, print, print_moment};
pub use style::{Style, Units};
pub use unit::{Mistake, Unit};
