//! Files that were cut off, nested without end, or made to hurt.

use std::time::{Duration, Instant};

use pourbook::job::Job;
use pourbook::job::format::{FORMAT, ReadError, read_job, read_studio, write_job};
use proptest::prelude::*;

use super::world::World;

fn refused_in_time(text: &str) {
    let started = Instant::now();
    let result = read_job(text.as_bytes());
    assert!(started.elapsed() < Duration::from_secs(5), "{:?} for {}…", started.elapsed(), text.chars().take(80).collect::<String>());
    assert!(result.is_err());
}

#[test]
fn a_file_cut_off_anywhere_is_never_another_job() {
    let job = World::full().job;
    let text = write_job(&job).unwrap();
    for end in 0..text.len() {
        // Only the line end behind the last bracket may be missing.
        match read_job(&text.as_bytes()[..end]) {
            Ok(opened) => assert_eq!((end, opened.document), (text.len() - 1, job.clone())),
            Err(error) => assert!(!error.to_string().is_empty()),
        }
    }
}

#[test]
fn the_golden_studio_cut_off_anywhere_is_refused() {
    let text = std::fs::read("tests/golden/studio_format_1.ron").unwrap();
    for end in 0..text.len() - 1 {
        assert!(read_studio(&text[..end]).is_err(), "cut after {end} bytes");
    }
}

#[test]
fn deep_nesting_is_refused_quickly() {
    for format in [1, 2] {
        for (open, close) in [("(", ")"), ("[", "]"), ("{", "}"), ("Some(", ")"), ("(a:", ")"), ("[[", "]]")] {
            for depth in [50, 10_000, 1_000_000] {
                for field in ["flasks", "notes", "job_id"] {
                    let deep = format!("(format: {format}, readable_since: 1, {field}: {}{})", open.repeat(depth), close.repeat(depth));
                    refused_in_time(&deep);
                    refused_in_time(&format!("(format: {format}, readable_since: 1, {field}: {}", open.repeat(depth)));
                }
            }
        }
    }
    // Unknown and balanced in a newer file, it is passed over without being understood.
    let deep = format!("(format: 9, readable_since: 1, wrench: {}{}, name: \"x\")", "[".repeat(1_000_000), "]".repeat(1_000_000));
    assert_eq!(read_job(deep.as_bytes()).map(|opened| opened.document.name), Ok("x".to_owned()));
}

#[test]
fn deep_nesting_is_said_plainly() {
    let deep = format!("(format: 1, readable_since: 1, patterns: {}", "[".repeat(10_000));
    let error = read_job(deep.as_bytes()).unwrap_err();
    assert!(matches!(error, ReadError::Syntax { line: 1, .. }), "{error}");
}

#[test]
fn hostile_sizes_are_read_or_refused_without_harm() {
    let long = "x".repeat(5_000_000);
    let opened = read_job(format!("(format: 1, readable_since: 1, notes: \"{long}\")").as_bytes()).unwrap();
    assert_eq!(opened.document.notes.len(), long.len());
    let many = "(),".repeat(200_000);
    let opened = read_job(format!("(format: 1, readable_since: 1, flasks: [{many}])").as_bytes()).unwrap();
    // All without an id: faults, and a job without flasks.
    let started = Instant::now();
    let (mended, faults) = pourbook::job::check::mend(&opened.document);
    assert_eq!((mended.flasks.len(), faults.len()), (0, 200_000));
    assert!(started.elapsed() < Duration::from_secs(5), "{:?}", started.elapsed());
    let pieces =
        "(format: 1, readable_since: 1, orders: [(id: 1, lines: [(id: 1, quantity: 4294967295)])], trees: [(id: 1, pieces: [(line: 1)])])";
    let job = read_job(pieces.as_bytes()).unwrap().document;
    assert_eq!(pourbook::job::check::faults(&job).len(), 2, "the line, and the tree it hangs on");
    refused_in_time(&format!("(format: 1, readable_since: 1, name: {})", "9".repeat(1_000_000)));
    refused_in_time(&format!("(format: 1, readable_since: 1, {}", "/*".repeat(1_000_000)));
    refused_in_time(&format!("(format: 1, readable_since: 1, {}: 1)", "a".repeat(1_000_000)));
    refused_in_time(&format!("({}format: 1, readable_since: 1)", " ".repeat(1_000_000)).replace("1)", "x)"));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_changed_byte_never_panics(at in 0_usize..6000, byte in any::<u8>()) {
        let mut text = write_job(&World::full().job).unwrap().into_bytes();
        let at = at % text.len();
        text[at] = byte;
        let _ = read_job(&text);
    }

    #[test]
    fn a_changed_byte_of_a_newer_file_never_panics(at in 0_usize..6000, byte in any::<u8>(), extra in "[a-z]{1,3}: [\\[\\](){}\"'r#/*,a-z0-9 ]{0,12}, ") {
        let text = write_job(&World::full().job).unwrap().replacen(&format!("(format: {FORMAT}, readable_since: 1,"), &format!("(format: {}, readable_since: 1, {extra}", FORMAT + 1), 1);
        let mut text = text.into_bytes();
        let at = at % text.len();
        text[at] = byte;
        let _ = read_job(&text);
    }

    #[test]
    fn any_text_behind_the_header_never_panics(body in ".{0,60}", format in 0_u32..4) {
        let _: Result<_, _> = read_job(format!("(format: {format}, readable_since: 1, {body}").as_bytes());
    }
}

#[test]
fn a_job_is_not_silently_another_when_fields_repeat() {
    let text = write_job(&Job { name: "one".to_owned(), ..Job::default() }).unwrap().replacen(")\n", "  name: \"two\",\n)\n", 1);
    let error = read_job(text.as_bytes()).unwrap_err();
    assert!(error.to_string().contains("twice"), "{error}");
}
