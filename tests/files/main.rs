//! Everything that touches a disk, tried on disks that fail, lose power, and on the machine's own.
#![allow(clippy::print_stdout, reason = "tests say how much they walked")]
#![allow(clippy::unwrap_used, reason = "in tests a missing value is a failure")]

mod agree;
mod around;
mod crash;
mod document;
mod faults;
mod kills;
mod locks;
mod names;
mod outside;
mod pairs;
mod planted;
mod real;
mod recovery;
mod two;
