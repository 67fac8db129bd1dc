//! The kiln programmes of a batch as CSV.

use super::{figure, moment, plain, table, words};
use crate::paper::desk::{Desk, SheetInput};
use crate::paper::load_rows::{LoadRow, Step, load_rows};

const HEAD: [&str; 12] =
    ["load_id", "load", "kiln_id", "kiln", "flasks", "step", "stage", "target_c", "ramp_min", "hold_min", "begins", "ends"];

/// Every kiln load step by step, a row each, as the day goes: so that rows can be put straight into a calendar.
///
/// The shape is one for all loads. `step` says what a row is:
///
/// | `step` | row | `begins` | `ends` |
/// |---|---|---|---|
/// | `mixing` | one a flask of the load | when mixing starts at the latest | when investing must be over |
/// | `dewaxing` | one where there is steam | the steam | the kiln's start |
/// | `stage` | one a stage, numbered from 1 in `stage`, with `target_c`, `ramp_min` and `hold_min` | of the ramp | of the hold |
/// | `pour` | one | the pour of the first flask | empty |
///
/// `flasks` holds what is scratched into the flasks a row is about, with commas between them.
#[must_use]
pub fn programme(input: &SheetInput<'_>) -> String {
    let desk = Desk::new(input);
    table(HEAD, load_rows(&desk).iter().map(|row| cells(&desk, row)))
}

fn cells(desk: &Desk<'_>, row: &LoadRow<'_>) -> [String; 12] {
    let kiln = row.load.kiln.as_ref();
    let (step, stage) = match row.step {
        Step::Mixing => ("mixing", None),
        Step::Dewaxing => ("dewaxing", None),
        Step::Stage(number) => ("stage", Some(number)),
        Step::Pour => ("pour", None),
    };
    [
        row.load.id.to_string(),
        words(&row.load.name),
        plain(kiln),
        kiln.map_or_else(String::new, |kiln| words(&desk.entry(Some(kiln)))),
        words(&row.flasks),
        step.to_owned(),
        plain(stage),
        figure(desk, row.target),
        figure(desk, row.ramp),
        figure(desk, row.hold),
        moment(desk, row.begins),
        moment(desk, row.ends),
    ]
}
