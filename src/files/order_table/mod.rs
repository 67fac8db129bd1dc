//! Orders taken in from a table: the list a client sends, or that a shop writes.
//!
//! Start at [`guess`], which says what each column of a [`crate::table::Table`] is; the person looks at that [`Mapping`] and corrects it.
//! Then [`preview`] reads every row or says why it cannot, and [`group`] makes orders of the rows that were taken. Nothing is guessed
//! within a row: what can be read in two ways is asked.

mod alloy;
mod alloy_atoms;
mod alloy_words;
mod columns;
mod date;
mod fingerprint;
mod group;
mod guess;
mod heading_words;
mod known;
mod letters;
mod mapping;
mod marks;
mod preview;
mod price;
mod profile;
mod quantity;
mod reason;
mod role;
mod row;
mod size;

pub use fingerprint::Fingerprint;
pub use group::{GroupedOrder, group};
pub use guess::guess;
pub use known::Known;
pub use mapping::Mapping;
pub use preview::{Preview, preview};
pub use quantity::MOST_PIECES;
pub use reason::{Caution, CellAt, Question, Reason};
pub use role::Role;
pub use row::{OrderRow, PreviewRow};
