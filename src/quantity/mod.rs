//! Kinds of quantity, their units, what a person types and what a person reads. Finite numbers only.
//!
//! Start at [`Kind`]: each kind has one unit it is computed in, named in every field and argument that holds it.

mod describe;
mod entry_error;
mod evaluate;
mod expression;
mod finite;
mod grams;
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

pub use describe::Description;
pub use entry_error::{EntryError, EntryErrorKind, Reading};
pub use finite::Finite;
pub use grams::Grams;
pub use kind::{Dimension, Kind};
pub use money::Money;
pub use parse::{Habits, Parsed, parse, parse_grams, parse_money};
pub use print::{MINUS, Printed, THIN, align, print};
pub use style::{Style, Units};
pub use unit::{Mistake, Unit};
