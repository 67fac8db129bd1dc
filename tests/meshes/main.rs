//! Pattern files against figures from outside the program, and against properties that must hold for every mesh.
#![allow(missing_docs, clippy::unwrap_used, reason = "a test may stop where it stands")]
#![allow(clippy::print_stdout, reason = "tables are printed for who asks")]

mod files;
mod format;
mod heavy;
mod hostile;
mod independent;
mod likeness;
mod look;
mod mending;
mod obj;
mod overlaps;
mod ply;
mod properties;
mod shapes;
mod threemf;
mod touching;
mod truth;
mod twins;
mod walls;
mod writers;
