//! The shipped shelf against sources outside this crate, and the overlay against everything a studio may do to it.

// Helpers stand outside test functions, where an `unwrap` is as good as a failed assertion.
#![allow(clippy::unwrap_used)]

mod alloys;
mod overlay;
mod powders;
mod reading;
mod rings;
mod shipped;
mod vessels;

use std::path::PathBuf;

use pourbook::stock::Shelf;

/// The text of a table made outside this crate.
fn outside(path: &str) -> String {
    let full = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/outside").join(path);
    std::fs::read_to_string(&full).unwrap_or_else(|error| panic!("{}: {error}", full.display()))
}

fn shelf() -> &'static Shelf {
    Shelf::shipped()
}
