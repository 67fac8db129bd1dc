//! Every job of the folder: found by a word, held against what was cast before, begun again, and the weeks ahead.

use std::path::Path;
use std::time::{Duration, Instant};

use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use jiff::civil::date;
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::job::format::{read_job, write_job};
use pourbook::job::{Entry, Event, FlaskId, Frozen, Job, JobId, PieceException, PieceId, PouredAs, RecordId};
use pourbook::quantity::Finite;
use pourbook::texts::Texts;

use super::shapes::texts;
use super::{Sight, USUAL, empty};

const TALL: Sight = Sight { height: 3000.0, ..USUAL };

fn sample(file: &str) -> Vec<u8> {
    std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs").join(file)).unwrap()
}

fn first_pour() -> Job {
    read_job(&sample("first-pour.ron")).unwrap().document
}

/// The same batch in March, in a thicker mix, poured, with a ring that did not fill.
fn in_march() -> Job {
    let mut job = Job { job_id: JobId([3; 16]), name: "In March".to_owned(), ..first_pour() };
    job.flasks[0].ratio = Finite::new(0.36);
    let at = Some(date(2026, 3, 3).at(9, 30, 0, 0));
    let poured = Event::Poured { flask: FlaskId(1), plan: Frozen::default(), done: PouredAs::default() };
    let rejected = Event::Rejected { piece: PieceId { line: job.orders[0].lines[0].id, number: 1 }, defect: "no-fill".to_owned() };
    let next = job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1;
    job.record.extend((next..).zip([poured, rejected]).map(|(id, event)| Entry { id: RecordId(id), at, event, ..Entry::default() }));
    job
}

/// A folder with the studio, the first pour and these jobs; the window with the first pour, on the page of all jobs, once it was looked through.
fn on_jobs(others: &[(&str, String)]) -> (tempfile::TempDir, Harness<'static, Window>) {
    let folder = tempfile::tempdir().unwrap();
    for file in ["studio.ron", "first-pour.ron"] {
        std::fs::write(folder.path().join(file), sample(file)).unwrap();
    }
    for (file, text) in others {
        std::fs::write(folder.path().join(file), text).unwrap();
    }
    let mut harness = empty(TALL);
    let ctx = harness.ctx.clone();
    harness.state_mut().open(&ctx, &folder.path().join("first-pour.ron"));
    harness.state_mut().workbook.view.page = Page::Jobs;
    harness.run();
    wait(&mut harness, |window| window.workbook.indexer.index().is_some());
    (folder, harness)
}

fn wait(harness: &mut Harness<'static, Window>, until: impl Fn(&Window) -> bool) {
    let begun = Instant::now();
    while !until(harness.state()) {
        assert!(begun.elapsed() < Duration::from_secs(60), "it came to nothing");
        std::thread::sleep(Duration::from_millis(30));
        harness.run_steps(2);
    }
    harness.run();
}

fn written(harness: &Harness<'static, Window>) -> Vec<String> {
    texts(&harness.output().shapes).into_iter().map(|seen| seen.words).collect()
}

#[track_caller]
fn shows(harness: &Harness<'static, Window>, words: &str) {
    let all = written(harness);
    assert!(all.iter().any(|text| text.contains(words)), "no “{words}”: {all:#?}");
}

fn press(harness: &mut Harness<'static, Window>, name: &str) {
    harness.get_by_label(name).click();
    harness.run();
}

fn label(key: &str) -> String {
    Texts::english().label(key)
}

fn search(harness: &mut Harness<'static, Window>, words: &str) {
    let name = label("jobs-search");
    harness.get_by_role_and_label(eframe::egui::accesskit::Role::TextInput, &name).focus();
    harness.run();
    harness.event(eframe::egui::Event::Text(words.to_owned()));
    harness.run();
}

#[test]
fn a_job_is_found_and_held_against_this_one() {
    let (_folder, mut harness) = on_jobs(&[("march.ron", write_job(&in_march()).unwrap())]);
    shows(&harness, "2 jobs in this folder.");
    search(&mut harness, "no-fill");
    shows(&harness, "One line is found.");
    shows(&harness, "rejected for no-fill");
    press(&mut harness, "Look at 2 × Limpet ring of march");
    shows(&harness, "In March");
    shows(&harness, "≠ Water to powder");
    shows(&harness, "One piece of that flask was rejected for no-fill.");
}

#[test]
fn the_last_time_is_told_line_by_line() {
    let (_folder, mut harness) = on_jobs(&[("march.ron", write_job(&in_march()).unwrap())]);
    press(&mut harness, &label("jobs-last"));
    shows(&harness, "of march; one piece was rejected for no-fill.");
    shows(&harness, "of march; nothing was rejected.");
    let what = harness.query_all_by_label_contains("What differs, ").next().map(|_| ());
    assert!(what.is_some(), "{:?}", written(&harness));
    harness.query_all_by_label_contains("What differs, ").next().unwrap().click();
    harness.run();
    shows(&harness, "≠ Water to powder");
}

#[test]
fn a_batch_is_begun_again_in_a_file_of_its_own() {
    let (folder, mut harness) = on_jobs(&[("march.ron", write_job(&in_march()).unwrap())]);
    search(&mut harness, "no-fill");
    press(&mut harness, "Look at 2 × Limpet ring of march");
    press(&mut harness, &label("jobs-again"));
    let workbook = &harness.state().workbook;
    assert_eq!(workbook.path(), Some(folder.path().join("march again.ron").as_path()));
    assert!(workbook.job.record.is_empty() && workbook.job.job_id != JobId([3; 16]));
    assert_eq!(workbook.job.flasks[0].ratio, Finite::new(0.36));
    assert_eq!(std::fs::read_to_string(folder.path().join("march.ron")).unwrap(), write_job(&in_march()).unwrap());
}

#[test]
fn what_changes_in_the_folder_is_seen_and_what_is_broken_is_told() {
    let (folder, mut harness) = on_jobs(&[]);
    shows(&harness, "One job in this folder.");
    std::fs::write(folder.path().join("march.ron"), write_job(&in_march()).unwrap()).unwrap();
    std::fs::write(folder.path().join("torn.ron"), "(format: 2, readable_since: 1,\n  name: \"cut").unwrap();
    wait(&mut harness, |window| window.workbook.indexer.index().is_some_and(|index| index.files().len() == 3));
    shows(&harness, "2 jobs in this folder.");
    shows(&harness, "torn.ron could not be read and is left out. line 2");
}

#[test]
fn a_piece_that_two_jobs_took_on_is_a_finding() {
    let from = pourbook::job::From { job: JobId([7; 16]), piece: PieceId { line: pourbook::job::LineId(1), number: 1 } };
    let taking = |job: &mut Job| {
        let own = PieceException { from: Some(from), ..PieceException::default() };
        job.orders[0].lines[0].exceptions.insert(1, own);
    };
    let mut march = in_march();
    taking(&mut march);
    let (_folder, mut harness) = on_jobs(&[("march.ron", write_job(&march).unwrap())]);
    let told = |harness: &Harness<'static, Window>| {
        let findings = &harness.state().workbook.computed.report.findings;
        findings.iter().filter(|finding| finding.kind.key == "piece-taken-twice").count()
    };
    assert_eq!(told(&harness), 0);
    harness.state_mut().workbook.edit("taken on", taking);
    wait(&mut harness, |window| window.workbook.computed.report.findings.iter().any(|finding| finding.kind.key == "piece-taken-twice"));
    assert_eq!(told(&harness), 1);
}

#[test]
fn the_weeks_ahead_are_told() {
    let (_folder, mut harness) = on_jobs(&[("march.ron", write_job(&in_march()).unwrap())]);
    press(&mut harness, &label("jobs-weeks"));
    wait(&mut harness, |window| window.workbook.folder_jobs.found().is_some());
    shows(&harness, "Week from");
    shows(&harness, "pieces are overdue.");
}
