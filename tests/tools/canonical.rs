//! Puts job and studio files into the form the program itself writes: `cargo run --example canonical -- FILE…`
//!
//! A job also takes copies of the shelf entries it names, from the shipped shelf under the studio beside it, and hash and measures of every
//! pattern file that it does not know yet. Copies that stand are kept; `--retake` drops them first, for when the shelf has changed.
//! `--arrange` arranges the pieces of every tree that stands in a flask anew.

use std::io::Write as _;
use std::path::Path;
use std::process::ExitCode;

use pourbook::calc::arrange::{STEPS, arrange, task_of, write_down};
use pourbook::calc::{Book, Runs, Setting, Shelves, recompute};
use pourbook::files::disk::RealDisk;
use pourbook::files::outside::Allowed;
use pourbook::files::pattern_runs::{measure_patterns, note_measures};
use pourbook::job::format::{read_job, read_studio, write_job, write_studio};
use pourbook::job::{Job, Studio, carry};
use pourbook::mesh::Limits;
use pourbook::stock::{Overlay, Shelf};

fn main() -> ExitCode {
    let (flags, files): (Vec<String>, Vec<String>) = std::env::args().skip(1).partition(|word| word.starts_with("--"));
    let retake = flags.iter().any(|flag| flag == "--retake");
    for file in files {
        if let Err(why) = put(Path::new(&file), retake, flags.iter().any(|flag| flag == "--arrange")) {
            let _ = writeln!(std::io::stderr(), "{file}: {why}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// Rewrites one file.
fn put(path: &Path, retake: bool, arranged: bool) -> Result<(), String> {
    let bytes = std::fs::read(path).map_err(|error| error.to_string())?;
    let text = if path.file_name().is_some_and(|name| name == "studio.ron") {
        write_studio(&read_studio(&bytes).map_err(|error| error.to_string())?.document).map_err(|error| error.to_string())?
    } else {
        job_text(&bytes, path.parent().unwrap_or(Path::new("")), retake, arranged)?
    };
    std::fs::write(path, text).map_err(|error| error.to_string())
}

fn job_text(bytes: &[u8], folder: &Path, retake: bool, arranged: bool) -> Result<String, String> {
    let mut job = read_job(bytes).map_err(|error| error.to_string())?.document;
    let studio = match std::fs::read(folder.join("studio.ron")) {
        Ok(bytes) => read_studio(&bytes).map_err(|error| format!("studio.ron: {error}"))?.document,
        Err(_) => Studio::default(),
    };
    let (shelf, _) = Shelf::with_overlay(&Overlay(studio.shelf.clone()));
    if retake {
        job.shelf.clear();
    }
    carry::take_copies(&mut job, &shelf);
    let runs = measure_patterns(&RealDisk, folder, &job, &Allowed::None, &Limits::default());
    note_measures(&mut job, &runs);
    if arranged {
        arrange_trees(&mut job, &studio, &runs)?;
    }
    write_job(&job).map_err(|error| error.to_string())
}

/// Arranges every tree that stands in a flask.
fn arrange_trees(job: &mut Job, studio: &Studio, runs: &Runs) -> Result<(), String> {
    for tree in &mut job.trees {
        tree.placed.clear();
    }
    let (sound, shelves) = (job.clone(), Shelves::new(job, studio));
    let setting = Setting { at: jiff::civil::date(2026, 11, 25), zone: jiff::tz::TimeZone::UTC };
    let mut book = Book::default();
    let report = recompute(&sound, studio, &shelves, runs, &setting, &mut book);
    for tree in &mut job.trees {
        let task = task_of(&sound, tree, &report, &book, &shelves, false).map_err(|lacks| format!("{}: {lacks:?}", tree.name))?;
        let found = arrange(&task, STEPS, &|_| true).map_err(|why| format!("{}: {why:?}", tree.name))?;
        let figures = report.trees.iter().find(|figures| figures.id == tree.id);
        let spots = figures.map(|figures| figures.outline.spots.as_slice()).unwrap_or_default();
        let _ = writeln!(std::io::stderr(), "{}: {} pieces, {:.3} off the best", tree.name, spots.len(), found.cost.total);
        write_down(tree, &task.trunk, spots, &found.hangs);
    }
    Ok(())
}
