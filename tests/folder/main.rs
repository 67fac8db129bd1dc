//! All jobs of a folder at once: the quick reader against `ron`, searches and claims against plain loops over an invented studio, the index
//! against one that is built anew, a batch once more, and two castings side by side.
#![allow(clippy::cast_possible_truncation, clippy::cast_possible_wrap)]
#![allow(missing_docs, clippy::unwrap_used, reason = "a test may stop where it stands")]

mod again;
mod asking;
mod compare;
mod plain;
mod seed;
mod steps;
mod studio;

pub use seed::Seed;
