//! `derive` is the only door: every rule's text against its function, over numbers and over dimensions, and what the book makes of them.
#![allow(clippy::unwrap_used, reason = "in tests a missing value is a failure")]

mod dimensions;
mod door;
mod grammar;
mod keys;
mod moves;
mod numbers;
mod random;
mod reach;
mod sums;
#[path = "../world/mod.rs"]
mod world;
