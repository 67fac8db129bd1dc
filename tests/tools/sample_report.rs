//! Prints the figures and findings of a job: `cargo run --example sample_report -- FILE [DATE]`

use std::io::Write as _;
use std::path::Path;

use pourbook::calc::{Arg, Book, Report, Setting, Shelves, recompute};
use pourbook::files::batch::Batch;
use pourbook::files::disk::RealDisk;
use pourbook::files::pattern_runs::measure_patterns;
use pourbook::mesh::Limits;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let file = std::env::args().nth(1).ok_or("a file is needed")?;
    let at = std::env::args().nth(2).unwrap_or_else(|| "2026-11-25".to_owned()).parse()?;
    let batch = Batch::open(&RealDisk, Path::new(&file))?;
    let runs = measure_patterns(&RealDisk, batch.folder(), &batch.job, &Limits::default());
    let zone = jiff::tz::TimeZone::get(&batch.studio.site.zone).unwrap_or(jiff::tz::TimeZone::UTC);
    let shelves = Shelves::new(&batch.job, &batch.studio);
    let mut book = <Book as Default>::default();
    let report = recompute(&batch.sound, &batch.studio, &shelves, &runs, &Setting { at, zone }, &mut book);
    let mut out = std::io::stdout().lock();
    for fault in &batch.faults {
        writeln!(out, "FAULT {fault}")?;
    }
    if let Some(error) = &batch.studio_error {
        writeln!(out, "STUDIO {error}")?;
    }
    for figure in book.figures() {
        writeln!(out, "{:28} {:34} {:?}", figure.place.to_string(), figure.origin.key(), figure.value)?;
    }
    findings(&mut out, &book, &report)?;
    Ok(())
}

fn findings(out: &mut impl std::io::Write, book: &Book, report: &Report) -> std::io::Result<()> {
    for finding in &report.findings {
        let args: Vec<String> = finding
            .args
            .iter()
            .map(|arg| match arg {
                Arg::Figure(id) => format!("{:?}", book.value(*id)),
                Arg::Text(text) => text.clone(),
                Arg::Count(count) => count.to_string(),
            })
            .collect();
        let place = finding.place.to_string();
        writeln!(out, "{:?} {place} {} {args:?} {:?}", finding.kind.weight, finding.kind.key, finding.accepted)?;
    }
    Ok(())
}
