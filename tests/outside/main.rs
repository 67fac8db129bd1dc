//! Every figure against something outside the project. Run with `--nocapture` for the table.
#![allow(clippy::unwrap_used, reason = "in tests a missing value is a failure")]

mod accounts;
mod feeding;
mod kiln;
mod lines;
mod melts;
mod metal;
mod mix;
mod mould_heat;
mod prices;
mod prints;
mod quench;
mod same;
mod shapes;
mod sizes;
mod table;
mod vapour;
mod water;
#[path = "../world/mod.rs"]
mod world;
