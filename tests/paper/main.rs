//! The texts, the bench sheet and the quotes.
#![allow(clippy::unwrap_used)]

mod jobs;
mod sheet;
mod texts;
#[path = "../world/mod.rs"]
mod world;
