//! The night before a pour: its timetable, its shortest programme by heat, the kiln's floor and its controller.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop where it stands, and prints its table"
)]

#[path = "../world/mod.rs"]
mod world;

mod always;
mod asked;
mod controller;
mod floor;
mod most;
mod shortest;
mod stands;
mod timetable;
