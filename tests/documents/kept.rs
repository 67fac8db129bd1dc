//! What a job keeps of a pattern's file rules until somebody takes the file as it is now.

use pourbook::calc::{FileProblem, PatternMeasure, PatternRun};
use pourbook::job::{PatternFile, PatternId};

use crate::world::{Outcome, World, measure, said};

/// Half a tenth of a cubic centimetre of wax, kept; and whatever stands under its name now.
fn after(kept: bool, run: PatternRun) -> Outcome {
    let mut world = World::sound();
    let old = PatternMeasure { hash: "old".to_owned(), ..measure(842.0, 900.0, [22.0, 22.0, 4.0]) };
    let pattern = world.pattern();
    pattern.weighed = None;
    pattern.file = Some(PatternFile {
        path: "band.stl".to_owned(),
        hash: Some("old".to_owned()),
        kept: kept.then(|| old.kept()),
        ..PatternFile::default()
    });
    world.runs.patterns.insert(PatternId(1), run);
    world.recompute()
}

fn has(outcome: &Outcome, key: &str) -> bool {
    outcome.report.findings.iter().any(|found| found.kind.key == key)
}

fn volume(outcome: &Outcome) -> Option<f64> {
    let figures = outcome.report.patterns.iter().find(|figures| figures.id == PatternId(1)).unwrap();
    outcome.book.number(figures.charge_volume)
}

fn new(hash: &str) -> PatternRun {
    PatternRun::Measured(PatternMeasure { hash: hash.to_owned(), ..measure(1200.0, 950.0, [23.0, 23.0, 4.0]) })
}

#[test]
fn a_changed_missing_or_unread_file_leaves_the_old_measures_standing() {
    for (run, key) in [
        (new("new"), "file-changed"),
        (PatternRun::Missing, "file-missing"),
        (PatternRun::Apart, "file-apart"),
        (PatternRun::Unreadable("cut off".to_owned()), "file-unreadable"),
    ] {
        let outcome = after(true, run.clone());
        assert_eq!(volume(&outcome), Some(0.842), "{key}");
        assert!(has(&outcome, key), "{key}");
        // Nothing kept: a changed file is measured anew and says so, others say nothing.
        let outcome = after(false, run);
        assert_eq!(volume(&outcome), (key == "file-changed").then_some(1.2), "{key}");
        assert!(has(&outcome, key), "{key}");
    }
    // The same content is the same file, and what is being read may be either.
    let outcome = after(true, new("old"));
    assert_eq!(volume(&outcome), Some(1.2));
    assert!(!has(&outcome, "file-changed"));
    assert_eq!(volume(&after(true, PatternRun::Pending)), None);
}

#[test]
fn a_sealed_void_is_cautioned_while_its_file_is_away() {
    let measured = PatternMeasure { problems: vec![FileProblem::SealedVoid(200.0)], ..measure(842.0, 900.0, [22.0, 22.0, 4.0]) };
    let mut world = World::sound();
    world.pattern().file = Some(PatternFile {
        path: "band.stl".to_owned(),
        hash: Some("a".to_owned()),
        kept: Some(measured.kept()),
        scale: said(1.0),
        ..PatternFile::default()
    });
    world.runs.patterns.insert(PatternId(1), PatternRun::Missing);
    assert!(has(&world.recompute(), "sealed-void"));
}

#[test]
fn what_is_kept_comes_back_as_it_was() {
    let measured = PatternMeasure {
        hash: "a".to_owned(),
        problems: vec![FileProblem::SealedVoid(12.5)],
        walls: Some([0.5, 1.0, 2.0]),
        ..measure(842.0, 900.0, [22.0, 21.0, 4.0])
    };
    assert_eq!(PatternMeasure::of_kept(&measured.kept(), "a"), Some(measured));
    assert_eq!(PatternMeasure::of_kept(&pourbook::job::KeptMeasures::default(), "a"), None);
}
