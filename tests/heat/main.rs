//! Heat in the mould against series, textbook examples, an independent solver, and itself. `--nocapture` prints what was found.
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a test prints what it found, and a missing value is a failure")]

mod convergence;
mod drying;
mod flask;
mod nonsense;
mod pieces;
mod random;
mod series;
mod shell;
mod textbook;
mod world;
