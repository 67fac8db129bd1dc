//! Documents: jobs and studios.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use jiff::civil::date;
use jiff::tz::TimeZone;
use pourbook::calc::{Book, FileProblem, PairRun, PatternMeasure, PatternRun, Report, Runs, Setting, Shelves, recompute};
use pourbook::job::check::{Wrong, mend};
use pourbook::job::format::{read_job, read_studio, write_job, write_studio};
use pourbook::job::{Job, PatternId, Place, Studio};
use pourbook::paper::words::{Words, figure_title, finding_sentence, print_figure};
use pourbook::quantity::Style;
use pourbook::texts::Texts;

/// Bytes as a job, and as a studio.
///
/// # Panics
/// Where a document that was read is not the same once written and read again, where mending a job twice mends more than mending it once,
/// and where a figure is neither missing nor finite.
pub fn check(bytes: &[u8]) {
    match read_job(bytes) {
        Ok(opened) => check_job(&opened.document),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
    match read_studio(bytes) {
        Ok(opened) => check_studio(&opened.document),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

fn check_job(job: &Job) {
    let text = write_job(job).expect("what was read can be written");
    let again = read_job(text.as_bytes()).unwrap_or_else(|error| panic!("{error}: {text}"));
    assert!(!again.read_only);
    assert_eq!(again.document, *job);
    assert_eq!(write_job(&again.document).as_ref(), Ok(&text));
    let (sound, faults) = mend(job);
    faults.iter().for_each(|fault| assert!(!fault.to_string().is_empty()));
    let (twice, left) = mend(&sound);
    assert!(left.is_empty(), "mending leaves {left:?}");
    assert_eq!(twice, sound);
    // Rings of a line are implicit: a short text can ask for very many.
    let pieces: u64 = sound.lines().map(|(_, line)| u64::from(line.quantity)).sum();
    if pieces <= 2000 {
        check_figures(&sound, sample_studio());
    }
    crate::planted(faults.iter().any(|fault| matches!(fault.what, Wrong::Dangling(Place::Pattern(_)))));
}

fn check_studio(studio: &Studio) {
    let text = write_studio(studio).expect("what was read can be written");
    let again = read_studio(text.as_bytes()).unwrap_or_else(|error| panic!("{error}: {text}"));
    assert!(!again.read_only);
    assert_eq!(again.document, *studio);
    assert_eq!(write_studio(&again.document).as_ref(), Ok(&text));
    check_figures(sample_job(), studio);
}

/// Computes a mended job and says everything that was computed.
fn check_figures(job: &Job, studio: &Studio) {
    let zone = zone();
    let setting = Setting { at: date(2026, 11, 25), zone: zone.clone() };
    let shelves = Shelves::new(job, studio);
    let mut book = Book::default();
    let report = recompute(job, studio, &shelves, &runs(job), &setting, &mut book);
    let words = Words { texts: Texts::english(), style: &Style::TRADE, zone, currency: &studio.money.currency };
    for figure in book.lines() {
        let known = figure.value.number();
        assert!(known.is_none_or(f64::is_finite), "{} of {} is {:?}", figure.origin.key(), figure.place, figure.value);
        assert_ne!(known.is_some(), figure.value.cause().is_some(), "{} is there and missing", figure.origin.key());
        assert!(figure_title(&figure, words.texts).len() + print_figure(&book, figure.id, &words).len() > 1);
    }
    check_report(&report, &book, &words);
}

fn check_report(report: &Report, book: &Book, words: &Words<'_>) {
    assert!(report.findings.is_sorted_by_key(|finding| finding.kind.weight), "Stops come first");
    for finding in &report.findings {
        assert!(finding.value.is_none_or(f64::is_finite), "{finding:?}");
        assert!(!(finding.accepted.is_some() && !finding.kind.may_be_signed), "nobody can sign for {}", finding.kind.key);
        let sentence = finding_sentence(finding, book, words);
        assert!(!sentence.is_empty() && !sentence.starts_with("«finding-"), "{}: {sentence}", finding.kind.key);
    }
}

/// Something of everything that can be known of a pattern's file.
fn runs(job: &Job) -> Runs {
    let run = |id: PatternId| match id.0 % 5 {
        0 => PatternRun::Missing,
        1 => PatternRun::Measured(measure(Vec::new())),
        2 => PatternRun::Measured(PatternMeasure {
            volume: None,
            fills: None,
            walls: Some([0.2, 1.0, 3.0]),
            triangles: 4,
            shells: 1,
            ..measure(vec![FileProblem::Open(3), FileProblem::MixedWinding])
        }),
        3 => PatternRun::Measured(measure(vec![
            FileProblem::SealedVoid(12.5),
            FileProblem::Nested(2.5),
            FileProblem::WallsNotMeasured,
            FileProblem::ProbableUnit(pourbook::job::FileUnit::Inch),
            FileProblem::Overlapping { union: Some(322.5), plain_sum: 340.0 },
        ])),
        _ => PatternRun::Unreadable("it is empty".to_owned()),
    };
    // A pattern without a run is one whose file is still being read.
    let known = job.patterns.iter().filter(|pattern| pattern.file.is_some() && pattern.id.0 % 7 != 6);
    let patterns = known.map(|pattern| (pattern.id, run(pattern.id))).collect::<BTreeMap<_, _>>();
    let pair = |id: PatternId| PairRun { as_it_is_mm: f64::from(id.0 % 3), mirrored_mm: f64::from(id.0 % 2) };
    let pairs = job.patterns.iter().filter(|pattern| pattern.pair.is_some()).map(|pattern| (pattern.id, pair(pattern.id)));
    Runs { patterns, pairs: pairs.collect(), ..Runs::default() }
}

fn measure(problems: Vec<FileProblem>) -> PatternMeasure {
    PatternMeasure {
        hash: "00".repeat(32),
        volume: Some(310.0),
        fills: Some(322.5),
        area: 640.0,
        size: [21.0, 19.0, 8.0],
        walls: None,
        triangles: 12,
        shells: 1,
        problems,
        shape: None,
    }
}

fn zone() -> &'static TimeZone {
    static ZONE: OnceLock<TimeZone> = OnceLock::new();
    ZONE.get_or_init(|| TimeZone::get("Europe/Dublin").expect("the zones are built in"))
}

fn sample_studio() -> &'static Studio {
    static STUDIO: OnceLock<Studio> = OnceLock::new();
    STUDIO.get_or_init(|| read_studio(include_bytes!("../../../sample-jobs/studio.ron")).expect("the sample studio is read").document)
}

fn sample_job() -> &'static Job {
    static JOB: OnceLock<Job> = OnceLock::new();
    JOB.get_or_init(|| mend(&read_job(include_bytes!("../../../sample-jobs/first-pour.ron")).expect("the sample job is read").document).0)
}
