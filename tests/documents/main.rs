//! The documents: how they are written and read, what cannot be in them, what they raise and who may answer for it.
#![allow(clippy::unwrap_used, reason = "in tests a missing value is a failure")]

mod acceptance;
mod copies;
mod faults;
mod findings;
mod format;
mod generate;
mod hostile;
mod kept;
mod newer;
mod outline;
mod overruled;
mod prints;
mod studio_faults;
mod survive;
#[path = "../world/mod.rs"]
mod world;
