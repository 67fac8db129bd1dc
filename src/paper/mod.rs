//! The sheets that lie on the bench and the quotes a client signs.
//!
//! Paper works nothing out: it prints what [`crate::calc`] computed. Start at [`sheet()`] and [`quotes()`]; how
//! figures and findings become words is in [`words`], what a sheet is made of in [`block`], how it is set as text in [`set`]. Tables for
//! spreadsheets are in [`mod@csv`].

pub mod batch;
pub mod block;
mod burnout;
mod cautions;
mod costs;
pub mod csv;
pub mod cut;
mod desk;
mod findings;
mod flask_plan;
pub mod keyed;
mod kiln;
pub mod layout;
pub mod list;
mod load_rows;
mod metal;
mod mix;
mod moulds;
mod offer;
mod orders;
pub mod origin;
pub mod pdf;
mod piece_rows;
mod pieces;
mod pour;
mod printed;
mod quote;
mod receipt;
pub mod set;
mod set_table;
mod sheet;
mod slip;
pub mod what_now;
pub mod words;
mod work;
mod wrap;

pub use desk::SheetInput;
pub use flask_plan::{Drawn, Look, plan, plan_of_tree};
pub use printed::{Dress, Pictures, Printed, Sort, as_pages, as_pdf, as_text, document_name, papers};
pub use quote::{ClientPaper, frozen_quote, quote_papers};
pub use sheet::bench_sheet;

/// The bench sheet of a batch as plain text: lines of at most 100 columns, pages set apart by form feeds.
#[must_use]
pub fn sheet(input: &SheetInput<'_>) -> String {
    set::set(&bench_sheet(input), input.texts)
}

/// The quotes of a batch as plain text, a document a client, form feeds between them.
#[must_use]
pub fn quotes(input: &SheetInput<'_>) -> String {
    as_text(&papers(input, Sort::Quote), Sort::Quote, input.texts)
}
