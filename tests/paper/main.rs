//! The texts, the bench sheet, the quotes and the tables for spreadsheets.
#![allow(clippy::unwrap_used)]

mod cautions;
mod csv;
mod edges;
#[path = "../documents/generate.rs"]
mod generate;
mod jobs;
mod pages;
mod pdf;
mod privacy;
mod quotes;
mod sheet;
mod texts;
mod what_now;
#[path = "../world/mod.rs"]
mod world;
