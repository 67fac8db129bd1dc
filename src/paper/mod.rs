//! The sheets that lie on the bench and the quotes a client signs.
//!
//! Paper works nothing out: it prints what [`crate::calc`] computed. Start at [`sheet()`] and [`quotes()`]; how
//! figures and findings become words is in [`words`], what a sheet is made of in [`block`], how it is set as text in [`set`]. Tables for
//! spreadsheets are in [`mod@csv`].

mod account;
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
mod parcel;
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

/// A table for spreadsheets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Listed {
    /// Every piece: what it is, where it hangs, how far it is.
    Pieces,
    /// What happened, entry by entry.
    Record,
    /// The kiln loads step by step.
    Programme,
    /// Every figure with its rule.
    Figures,
}

impl Listed {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Pieces, Self::Record, Self::Programme, Self::Figures];

    /// The key of its name.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Pieces => "table-pieces",
            Self::Record => "table-record",
            Self::Programme => "table-programme",
            Self::Figures => "table-figures",
        }
    }

    /// A word for file names.
    #[must_use]
    pub const fn stem(self) -> &'static str {
        match self {
            Self::Pieces => "pieces",
            Self::Record => "record",
            Self::Programme => "programme",
            Self::Figures => "figures",
        }
    }

    /// The table as it stands in a file: a spreadsheet takes a file for one of its system's old encodings unless a mark stands first. Where
    /// all letters are plain they read the same either way.
    #[must_use]
    pub fn csv(self, input: &SheetInput<'_>) -> String {
        let text = match self {
            Self::Pieces => csv::pieces(input),
            Self::Record => csv::record(input),
            Self::Programme => csv::programme(input),
            Self::Figures => csv::figures(input),
        };
        marked(text)
    }
}

/// Text of a table with the mark that spreadsheets look for, where it has letters that are not plain.
#[must_use]
pub fn marked(text: String) -> String {
    if text.is_ascii() { text } else { format!("\u{feff}{text}") }
}

/// The quotes of a batch as plain text, a document a client, form feeds between them.
#[must_use]
pub fn quotes(input: &SheetInput<'_>) -> String {
    as_text(&papers(input, Sort::Quote), Sort::Quote, input.texts)
}
