//! Kinds of quantity, their units, what a person types and what a person reads. Finite numbers only.
//!
//! Start at [`Kind`]: each kind has one unit it is computed in, named in every field and argument that holds it.

mod finite;
mod grams;
mod kind;
mod money;

pub use finite::Finite;
pub use grams::Grams;
pub use kind::{Dimension, Kind};
pub use money::Money;
