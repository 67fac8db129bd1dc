//! How documents are written: RON with a first line that says its format, read by a scanner of its own before anything else.
//!
//! `(format: 1, readable_since: 1,` — a program of format F reads a file when F ≥ `readable_since`; when the file's own
//! `format` is newer, it opens read-only. Reading refuses unknown fields within the same format, NaN and infinite numbers,
//! and nesting deeper than any document has. Formats 1 and 2 differ only by fields
//! that format 2 added, so both are read into the same structs. When a format changes what was there, the old structs move to a frozen module
//! here with a `From` into the next one; one golden file of each format stays under `tests/golden`.

mod header;
mod plain;
mod read;
mod skip;
mod write;

pub use header::{Header, header};
pub use plain::read_plain;
pub use read::{Opened, ReadError, read_job, read_studio};
pub use write::{WriteError, write_entry, write_job, write_studio};

/// The format this program writes.
pub const FORMAT: u32 = 2;
/// The oldest format whose program can read what this one writes.
pub const READABLE_SINCE: u32 = 1;

/// Deepest nesting that is read; the deepest document has about twelve levels.
const DEEPEST: usize = 48;

/// Reader and writer settings: `Some(x)` is written as `x`.
fn options() -> ron::Options {
    ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME).with_recursion_limit(DEEPEST)
}
