//! `pourbook sheet` and `pourbook quote`: paper as text, to the terminal or into a file.

use std::path::Path;

use super::args::Day;
use super::open::Computed;
use super::out::Out;
use super::{BAD_INPUT, FINE};

pub(super) fn sheet(path: &Path, output: Option<&Path>, day: &Day, out: &mut Out) -> u8 {
    let Some(_computed) = Computed::open(path, day, out) else { return BAD_INPUT };
    let _ = output;
    FINE
}

pub(super) fn quote(path: &Path, output: Option<&Path>, day: &Day, out: &mut Out) -> u8 {
    let Some(_computed) = Computed::open(path, day, out) else { return BAD_INPUT };
    let _ = output;
    FINE
}
