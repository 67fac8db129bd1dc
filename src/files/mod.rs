//! Everything that touches a disk.
//!
//! Start at [`disk::Disk`], the only door to files, then [`save::save`]. This layer's foundations know bytes, never what the bytes say:
//! callers hand over the serialised document and a check that reads it back. No clock is read here: times are passed in.

pub mod again;
pub mod batch;
pub mod clocks;
pub mod disk;
pub mod host;
pub mod lock;
pub mod order_table;
pub mod outside;
pub mod pair_runs;
pub mod pattern_runs;
pub mod pictures;
pub mod preferences;
pub mod recover;
pub mod save;
pub mod take_in;
