//! The texts, the bench sheet and the quotes.
#![allow(clippy::unwrap_used)]

mod cautions;
mod edges;
#[path = "../documents/generate.rs"]
mod generate;
mod jobs;
mod pages;
mod pdf;
mod quotes;
mod sheet;
mod texts;
#[path = "../world/mod.rs"]
mod world;
