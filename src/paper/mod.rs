//! The sheets that lie on the bench and the quotes a client signs.
//!
//! Paper does no arithmetic of casting: it prints what [`crate::calc`] computed, and sums money on quotes. Start at [`sheet`]; how
//! figures and findings become words is in [`words`], what a sheet is made of in [`block`], how it is set as text in [`set`].

pub mod block;
mod burnout;
mod cautions;
mod costs;
mod desk;
mod findings;
mod metal;
mod mix;
mod orders;
mod pieces;
mod pour;
pub mod set;
mod set_table;
mod sheet;
pub mod words;
mod wrap;

pub use desk::SheetInput;
pub use sheet::bench_sheet;

/// The bench sheet of a batch as plain text: lines of at most 100 columns, pages set apart by form feeds.
#[must_use]
pub fn sheet(input: &SheetInput<'_>) -> String {
    set::set(&bench_sheet(input), input.texts)
}
