//! `pourbook sheet` and `pourbook quote`: paper as text, to the terminal or into a file that must not exist yet.

use std::path::Path;

use super::args::Day;
use super::open::Computed;
use super::out::Out;
use super::{BAD_INPUT, FINE};
use crate::calc::finding::PRICE_STALE;
use crate::files::disk::RealDisk;
use crate::files::save::{Original, save};
use crate::paper::words::finding_sentence;
use crate::paper::{self, SheetInput};
use crate::quantity::Style;
use crate::texts::Texts;

pub(super) fn sheet(path: &Path, output: Option<&Path>, day: &Day, out: &mut Out) -> u8 {
    print(path, output, day, out, paper::sheet, |_, _| ())
}

pub(super) fn quote(path: &Path, output: Option<&Path>, day: &Day, out: &mut Out) -> u8 {
    print(path, output, day, out, paper::quotes, stale_prices)
}

fn print(
    path: &Path,
    output: Option<&Path>,
    day: &Day,
    out: &mut Out,
    paper: fn(&SheetInput<'_>) -> String,
    before: fn(&Computed, &mut Out),
) -> u8 {
    let Some(computed) = Computed::open(path, day, out) else { return BAD_INPUT };
    before(&computed, out);
    let text = paper(&input(&computed));
    let written = match output {
        None => {
            out.data(&text);
            true
        }
        Some(output) => write(output, &text, out),
    };
    if computed.faulty || !written { BAD_INPUT } else { FINE }
}

/// Who quotes by an old price is told so beside the paper; the client's page says the price's day.
fn stale_prices(computed: &Computed, out: &mut Out) {
    let words = computed.words(&Style::METRIC);
    for found in computed.report.findings.iter().filter(|found| *found.kind == PRICE_STALE) {
        out.tell(&finding_sentence(found, &computed.book, &words));
    }
}

pub(super) fn input(computed: &Computed) -> SheetInput<'_> {
    let batch = &computed.batch;
    SheetInput {
        job: &batch.sound,
        studio: &batch.sound_studio,
        shelves: &computed.shelves,
        report: &computed.report,
        book: &computed.book,
        setting: &computed.setting,
        texts: Texts::english(),
        style: &Style::METRIC,
        content_hash: &batch.hash_text,
    }
}

/// Writes as safely as a job is saved; a file that is there already is left as it is.
pub(super) fn write(output: &Path, text: &str, out: &mut Out) -> bool {
    if output.exists() {
        out.tell(&format!("a file of this name is there already and was left as it is; name another ({})", output.display()));
        return false;
    }
    match save(&RealDisk, output, text.as_bytes(), None, Original::Replace, |_| Ok(())) {
        Ok(_) => true,
        Err(error) => {
            out.tell(&error.to_string());
            false
        }
    }
}
