//! The tree of one flask: trees as a caster builds them, measured by another way; what cannot be; and tasks of every size.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a test may stop where it stands, and prints its table"
)]

mod apart;
mod random;
mod reasons;
mod trees;
mod world;
