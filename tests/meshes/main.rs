//! Pattern files against figures from outside the program, and against properties that must hold for every mesh.
#![allow(missing_docs, clippy::unwrap_used, reason = "a test may stop where it stands")]

mod files;
mod format;
mod look;
mod properties;
mod shapes;
mod touching;
mod truth;
