//! Tables read and written, and orders taken in from them.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop where it stands, and prints what it found"
)]

mod alloys;
mod cells;
mod columns;
mod grouping;
mod malformed;
mod previews;
mod reading;
mod rfc4180;
mod round_trip;
mod speed;
mod support;
