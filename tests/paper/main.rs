//! The texts, the bench sheet and the quotes.
#![allow(clippy::unwrap_used)]

mod cautions;
mod edges;
mod jobs;
mod quotes;
mod sheet;
mod texts;
#[path = "../world/mod.rs"]
mod world;
