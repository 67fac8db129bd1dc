//! The papers: as text to the terminal or into a file, or as PDFs; a file that is there already is left as it is.

use std::path::{Path, PathBuf};

use super::args::{Day, PaperSize, Printing, Tongue, UnitSet};
use super::open::Computed;
use super::out::Out;
use super::{BAD_INPUT, FINE};
use crate::calc::finding::PRICE_STALE;
use crate::files::disk::RealDisk;
use crate::files::pictures::pictures;
use crate::files::save::{Original, save};
use crate::paper::layout::Format;
use crate::paper::words::finding_sentence;
use crate::paper::{Dress, Pictures, Printed, SheetInput, Sort, as_pdf, as_text, papers};
use crate::quantity::Style;
use crate::texts::{Language, Texts};

/// The bench sheet as text, to the terminal.
pub(super) fn bench(job: &Path, day: &Day, out: &mut Out) -> u8 {
    let how = Printing {
        job: job.to_path_buf(),
        output: None,
        client: None,
        paper: PaperSize::A4,
        language: Tongue::En,
        units: UnitSet::Metric,
        comma: false,
        day: *day,
    };
    print(Sort::Bench, &how, out)
}

/// Prints the papers of a sort.
pub(super) fn print(sort: Sort, how: &Printing, out: &mut Out) -> u8 {
    let Some(computed) = Computed::open(&how.job, &how.day, out) else { return BAD_INPUT };
    let dress = dress(how);
    let (texts, style) = (dress.texts(), dress.style());
    if sort == Sort::Quote {
        stale_prices(&computed, out);
    }
    let as_pdfs = how.output.as_ref().filter(|path| path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("pdf")));
    let seen = match as_pdfs {
        Some(_) => pictures(&RealDisk, computed.batch.folder(), &computed.batch.sound, &computed.batch.sound_studio, &how.day.allowed()),
        None => Pictures::default(),
    };
    for complaint in &seen.complaints {
        out.tell(complaint);
    }
    let studio_hash = computed.batch.studio_hash.map_or_else(String::new, |hash| hash.to_hex().to_string());
    let input = input(&computed, texts, &style, &seen, &studio_hash);
    let mut printed = papers(&input, sort);
    if let Some(client) = &how.client {
        // What belongs to no client is everybody's.
        printed.retain(|one| one.client.is_empty() || one.client.eq_ignore_ascii_case(client.trim()));
    }
    let written = match (&how.output, as_pdfs) {
        (Some(to), Some(_)) => write_pdfs(&printed, sort, to, dress.format, &input, out),
        (Some(to), None) => write(to, as_text(&printed, sort, texts).as_bytes(), out),
        (None, _) => {
            out.data(&as_text(&printed, sort, texts));
            true
        }
    };
    if computed.faulty || !written { BAD_INPUT } else { FINE }
}

fn dress(how: &Printing) -> Dress {
    let language = match how.language {
        Tongue::En => Language::English,
        Tongue::De => Language::German,
    };
    let format = match how.paper {
        PaperSize::A4 => Format::A4,
        PaperSize::Letter => Format::Letter,
    };
    Dress { format, language, trade_units: matches!(how.units, UnitSet::Trade), comma: how.comma || language.has_comma() }
}

/// A PDF a document; where there are several, each has its own name behind the one that was given.
fn write_pdfs(printed: &[Printed], sort: Sort, to: &Path, format: Format, input: &SheetInput<'_>, out: &mut Out) -> bool {
    if printed.is_empty() {
        out.tell(&input.texts.label(sort.none_key()));
        return true;
    }
    let mut fine = true;
    for one in printed {
        let path = if printed.len() == 1 { to.to_path_buf() } else { beside(to, &one.name) };
        fine &= match as_pdf(one, format, input) {
            Ok(bytes) => write(&path, &bytes, out),
            Err(error) => {
                out.tell(&error.to_string());
                false
            }
        };
    }
    fine
}

/// `quote.pdf` for C becomes `quote-C.pdf`.
fn beside(to: &Path, name: &str) -> PathBuf {
    let stem = to.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    to.with_file_name(format!("{stem}-{name}.pdf"))
}

/// Who quotes by an old price is told so beside the paper; the client's page says the price's day.
fn stale_prices(computed: &Computed, out: &mut Out) {
    let words = computed.words(&Style::METRIC);
    for found in computed.report.findings.iter().filter(|found| *found.kind == PRICE_STALE) {
        out.tell(&finding_sentence(found, &computed.book, &words));
    }
}

fn input<'a>(computed: &'a Computed, texts: &'a Texts, style: &'a Style, pictures: &'a Pictures, studio_hash: &'a str) -> SheetInput<'a> {
    let batch = &computed.batch;
    SheetInput {
        job: &batch.sound,
        studio: &batch.sound_studio,
        shelves: &computed.shelves,
        report: &computed.report,
        book: &computed.book,
        setting: &computed.setting,
        texts,
        style,
        content_hash: &batch.hash_text,
        saved: true,
        studio_hash,
        pictures,
    }
}

static NO_PICTURES: Pictures = Pictures::NONE;

/// What a table is made from: English, metric units, no pictures.
pub(super) fn plain_input(computed: &Computed) -> SheetInput<'_> {
    input(computed, Texts::english(), &Style::METRIC, &NO_PICTURES, "")
}

/// Writes as safely as a job is saved; a file that is there already is left as it is.
pub(super) fn write(output: &Path, bytes: &[u8], out: &mut Out) -> bool {
    if output.exists() {
        out.tell(&format!("a file of this name is there already and was left as it is; name another ({})", output.display()));
        return false;
    }
    match save(&RealDisk, output, bytes, None, Original::Replace, |_| Ok(())) {
        Ok(_) => true,
        Err(error) => {
            out.tell(&error.to_string());
            false
        }
    }
}
