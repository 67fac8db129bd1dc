//! Tables in text, as spreadsheets and instruments write them.
//!
//! Start at [`read`]: bytes become a [`Table`] of rows that know their line in the file, or a [`TableError`] that names the line.
//! [`write()`] makes bytes of rows.
//!
//! The way of the bytes: `text` makes characters of them, `records` lines, `sniff` finds what parts the cells, `cell` cuts them, `heading`
//! finds the names of the columns. What a cell says by itself is read by `number`, `written_date` and `stamp`; `evidence` gathers what all
//! cells of a column say about the way it is written.

mod cell;
mod decimal;
mod evidence;
mod harmless;
mod heading;
mod kind;
mod limits;
mod lines;
mod number;
mod quote;
mod read;
mod records;
mod separator;
mod sniff;
mod stamp;
mod table_error;
mod text;
mod write;
mod written_date;

pub use cell::{Cell, cells};
pub use decimal::Decimal;
pub use evidence::{DayOrderEvidence, DecimalEvidence};
pub use kind::{Kind, kind};
pub use limits::Limits;
pub use lines::Lines;
pub use number::{Shape, exact, number, shape};
pub use read::{Row, Table, read};
pub use records::{Record, Records, records};
pub use separator::Separator;
pub use sniff::{named_separator, sniff};
pub use stamp::{Clock, Stamp, stamp};
pub use table_error::{TableError, shortened};
pub use text::{Decoded, Encoding, decode};
pub use write::{OutCell, Style, write};
pub use written_date::{WrittenDate, leading_date, leading_digits, named_date};
