//! Puts job and studio files into the form the program itself writes: `cargo run --example canonical -- FILE…`
//!
//! A job also takes copies of the shelf entries it names, from the shipped shelf under the studio beside it, and hash and measures of every
//! pattern file that it does not know yet. Copies that stand are kept; `--retake` drops them first, for when the shelf has changed.

use std::io::Write as _;
use std::path::Path;
use std::process::ExitCode;

use pourbook::files::disk::RealDisk;
use pourbook::files::outside::Allowed;
use pourbook::files::pattern_runs::{measure_patterns, note_measures};
use pourbook::job::format::{read_job, read_studio, write_job, write_studio};
use pourbook::job::{Studio, carry};
use pourbook::mesh::Limits;
use pourbook::stock::{Overlay, Shelf};

fn main() -> ExitCode {
    let (flags, files): (Vec<String>, Vec<String>) = std::env::args().skip(1).partition(|word| word.starts_with("--"));
    let retake = flags.iter().any(|flag| flag == "--retake");
    for file in files {
        if let Err(why) = put(Path::new(&file), retake) {
            let _ = writeln!(std::io::stderr(), "{file}: {why}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// Rewrites one file.
fn put(path: &Path, retake: bool) -> Result<(), String> {
    let bytes = std::fs::read(path).map_err(|error| error.to_string())?;
    let text = if path.file_name().is_some_and(|name| name == "studio.ron") {
        write_studio(&read_studio(&bytes).map_err(|error| error.to_string())?.document).map_err(|error| error.to_string())?
    } else {
        job_text(&bytes, path.parent().unwrap_or(Path::new("")), retake)?
    };
    std::fs::write(path, text).map_err(|error| error.to_string())
}

fn job_text(bytes: &[u8], folder: &Path, retake: bool) -> Result<String, String> {
    let mut job = read_job(bytes).map_err(|error| error.to_string())?.document;
    let studio = match std::fs::read(folder.join("studio.ron")) {
        Ok(bytes) => read_studio(&bytes).map_err(|error| format!("studio.ron: {error}"))?.document,
        Err(_) => Studio::default(),
    };
    let (shelf, _) = Shelf::with_overlay(&Overlay(studio.shelf));
    if retake {
        job.shelf.clear();
    }
    carry::take_copies(&mut job, &shelf);
    let runs = measure_patterns(&RealDisk, folder, &job, &Allowed::None, &Limits::default());
    note_measures(&mut job, &runs);
    write_job(&job).map_err(|error| error.to_string())
}
