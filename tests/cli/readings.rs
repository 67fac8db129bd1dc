//! `readings`: a kiln's log held against a load.
#![allow(clippy::unwrap_used, reason = "a test may stop where it stands")]

use std::fmt::Write as _;

use jiff::civil::date;
use pourbook::job::format::{read_job, write_job};
use pourbook::job::{Entry, Event, RecordId};

use crate::{DAY, run, sample, told};

/// A log in a file of its own: minutes and °C.
fn log(points: &[(u32, f64)]) -> (tempfile::TempDir, std::path::PathBuf) {
    let mut text = String::from("minutes,actual °C\n");
    for two in points.windows(2) {
        let [(from, start), (to, end)] = [two[0], two[1]];
        for minute in (from..to).step_by(5) {
            let share = f64::from(minute - from) / f64::from(to - from);
            let _ = writeln!(text, "{minute},{:.1}", start + (end - start) * share);
        }
    }
    let _ = writeln!(text, "{},{:.1}", points.last().unwrap().0, points.last().unwrap().1);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kiln.csv");
    std::fs::write(&path, text).unwrap();
    (folder, path)
}

fn said(points: &[(u32, f64)], more: &str) -> (i32, String, String) {
    let (_folder, path) = log(points);
    let (code, stdout, stderr) =
        told(&run(format!("readings {{}} {} --at {DAY} {more}", path.display()).trim(), &sample("mixed-kiln.ron")));
    // Between a number and its unit stands a space that does not break.
    (code, stdout.replace(['\u{202f}', '\u{a0}'], " "), stderr)
}

/// Up to 732 °C and held there for an hour.
const UP: [(u32, f64); 5] = [(0, 20.0), (60, 150.0), (180, 150.0), (480, 732.0), (540, 732.0)];

#[test]
fn a_cut_is_answered_by_the_coldest_corner() {
    // Off for a quarter of an hour: nothing fell through.
    let (code, stdout, stderr) = said(&[&UP[..], &[(555, 650.0), (600, 732.0), (720, 732.0)]].concat(), "");
    assert_eq!(code, 0, "{stderr}");
    assert!(stdout.contains("Fell from 732 °C to 650 °C") && stdout.contains("then rose again"), "{stdout}");
    assert_eq!(stdout.matches("REHEAT").count(), 3, "three flasks: {stdout}");
    // Off all night.
    let (_, stdout, _) = said(&[&UP[..], &[(1300, 60.0), (1310, 60.0)]].concat(), "");
    assert_eq!(stdout.matches("SCRAP").count(), 3, "{stdout}");
    assert!(stdout.contains("did not rise again") && stdout.contains("Do not pour"), "{stdout}");
    // Off before anything was fired.
    let (_, stdout, _) = said(&[(0, 20.0), (60, 150.0), (180, 150.0), (240, 40.0)], "--language de");
    assert_eq!(stdout.matches("WEITER").count(), 3, "{stdout}");
    assert!(!stdout.contains('«'), "{stdout}");
}

#[test]
fn what_the_kiln_does_after_the_pour_does_not_matter() {
    // By the record the batch is poured on 5 December at ten; the kiln is left to cool afterwards.
    let mut text = String::from("time;°C\n");
    for (at, c) in
        [("04 14:00", 20), ("04 18:00", 150), ("04 23:00", 732), ("05 08:00", 732), ("05 09:50", 620), ("05 23:00", 80), ("05 23:10", 80)]
    {
        let (day, clock) = at.split_once(' ').expect("day and time");
        let _ = writeln!(text, "2026-12-{day} {clock};{c}");
    }
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kiln.csv");
    std::fs::write(&path, text).unwrap();
    let answers = |job: &std::path::Path| {
        let said = told(&run(&format!("readings {{}} {} --at {DAY}", path.display()), job)).1;
        (said.matches("REHEAT").count(), said.matches("SCRAP").count())
    };
    // As long as nothing says that they were poured, the flasks are in the kiln.
    assert_eq!(answers(&sample("mixed-kiln.ron")), (0, 3));
    let text = std::fs::read(sample("mixed-kiln.ron")).unwrap();
    let mut job = read_job(&text).unwrap().document;
    for (number, flask) in (1000..).zip(job.flasks.iter().map(|flask| flask.id).collect::<Vec<_>>()) {
        let event = Event::Poured { flask, plan: Default::default(), done: Default::default() };
        job.record.push(Entry { id: RecordId(number), at: Some(date(2026, 12, 5).at(10, 0, 0, 0)), event, ..Entry::default() });
    }
    let poured = folder.path().join("poured.ron");
    std::fs::write(&poured, write_job(&job).unwrap()).unwrap();
    std::fs::copy(sample("studio.ron"), folder.path().join("studio.ron")).unwrap();
    assert_eq!(answers(&poured), (3, 0));
}

#[test]
fn nonsense_gets_a_sentence_with_its_line() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kiln.csv");
    std::fs::write(&path, "minutes,°C\n0,20\n5,warm\n10,40\n15,hot\n").unwrap();
    let (code, stdout, stderr) = told(&run(&format!("readings {{}} {}", path.display()), &sample("mixed-kiln.ron")));
    assert!(code == 2 && stdout.is_empty() && stderr.contains("line 3"), "{stderr}");
    let (code, _, stderr) = told(&run("readings {} /nowhere/kiln.csv", &sample("mixed-kiln.ron")));
    assert!(code == 2 && stderr.contains("cannot be read"), "{stderr}");
    let (code, _, stderr) = said(&UP, "--load 77");
    assert!(code == 2 && stderr.contains("no flask"), "{stderr}");
}
