//! Kinds of quantity, their units, what a person types and what a person reads. Finite numbers only.
//!
//! Start at [`Kind`]: each kind has one unit it is computed in, named in every field and argument that holds it.

mod describe;
mod finite;
mod grams;
mod kind;
mod money;
mod print;
mod round;
mod style;
mod unit;
mod unit_table;

pub use describe::Description;
pub use finite::Finite;
pub use grams::Grams;
pub use kind::{Dimension, Kind};
pub use money::Money;
pub use print::{MINUS, Printed, THIN, align, print};
pub use style::{Style, Units};
pub use unit::{Mistake, Unit};
