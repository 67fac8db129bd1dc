//! Every rule is reached by a job.

use std::collections::BTreeSet;

use pourbook::calc::{Book, FileProblem, PatternMeasure, Report, Runs, Shelves, all_rules, recompute};
use pourbook::calc::{batch, plan};
use pourbook::job::format::{read_job, read_studio};
use pourbook::job::{Pair, PairKind, PatternId, Studio, check};

use super::world::{Outcome, World, measure, new_book};

fn rules_in(book: &Book) -> BTreeSet<&'static str> {
    book.figures().filter_map(|figure| figure.rule()).map(|rule| rule.id).collect()
}

/// The jobs among the samples, recomputed without their files' runs; none where there are no samples yet.
fn samples() -> Vec<(Book, Report)> {
    let Ok(folder) = std::fs::read_dir("sample-jobs") else { return Vec::new() };
    let studio = std::fs::read("sample-jobs/studio.ron").map_or_else(|_| Studio::default(), |text| read_studio(&text).unwrap().document);
    let mut found = Vec::new();
    for entry in folder {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|extension| extension != "ron") || path.file_name().is_some_and(|name| name == "studio.ron") {
            continue;
        }
        let job = read_job(&std::fs::read(&path).unwrap()).unwrap_or_else(|error| panic!("{}: {error}", path.display())).document;
        let (job, faults) = check::mend(&job);
        assert!(faults.is_empty(), "{}: {faults:?}", path.display());
        let mut book = new_book();
        let setting = World::empty().setting;
        let report = recompute(&job, &studio, &Shelves::new(&job, &studio), &Runs::default(), &setting, &mut book);
        found.push((book, report));
    }
    found
}

/// The book of a plan: four bands that hang nowhere.
fn planned() -> Book {
    let world = World::sound().with(|w| {
        w.job.trees.clear();
        w.job.flasks.clear();
    });
    let shelves = Shelves::new(&world.job, &world.studio);
    let mut ask = batch::ask(&world.job, &world.studio, &shelves, &world.runs, &world.setting, &batch::Options::default());
    let found = batch::settle(&ask.question(), plan::STEPS, &|_| true);
    let outcome = ask.read(&found, &shelves.job);
    assert_eq!(outcome.rows.len(), 1);
    for figure in ask.book.figures().filter(|figure| figure.rule().is_some_and(|rule| rule.id.starts_with("plan."))) {
        assert!(figure.value.cause().is_none(), "{}", figure.origin.key());
    }
    ask.book
}

#[test]
fn every_rule_is_reached_by_a_job() {
    // The leaf is hollow besides, and makes a pair with the knob.
    let world = World::full().with(|w| {
        let problems = vec![FileProblem::SealedVoid(50.0)];
        w.measured(2, PatternMeasure { volume: Some(950.0), problems, ..measure(1000.0, 600.0, [30.0, 10.0, 10.0]) });
        w.job.patterns[1].pair = Some(Pair { with: PatternId(3), like: PairKind::Alike });
    });
    let Outcome { book, report } = world.heated();
    let mut reached = rules_in(&book);
    for (book, _) in samples() {
        reached.extend(rules_in(&book));
    }
    reached.extend(rules_in(&planned()));
    let all: BTreeSet<&str> = all_rules().iter().map(|rule| rule.id).collect();
    let missed: Vec<&&str> = all.difference(&reached).collect();
    assert!(missed.is_empty(), "no job reaches {missed:?}");
    assert!(reached.is_subset(&all), "figures by rules that stand in no list");
    assert_eq!(report.flasks.len(), 2);
}

#[test]
fn the_full_job_has_every_figure() {
    let outcome = World::full().recompute();
    for figure in outcome.book.figures() {
        assert!(figure.value.cause().is_none(), "{} at {}: {:?}", figure.origin.key(), figure.place, outcome.roots(figure.id));
    }
}

#[test]
fn terms_stand_before_what_is_made_of_them() {
    let outcome = World::full().recompute();
    for figure in outcome.book.lines() {
        assert!(figure.terms.iter().all(|term| *term < figure.id), "{}", figure.origin.key());
    }
}

#[test]
fn a_recompute_repeats_and_keeps_nothing_of_the_last() {
    let (one, other) = (World::full(), World::sound());
    let shelves = Shelves::new(&one.job, &one.studio);
    let mut book = new_book();
    let text = |book: &Book| book.lines().map(|line| format!("{line:?}")).collect::<Vec<_>>();
    recompute(&one.job, &one.studio, &shelves, &one.runs, &one.setting, &mut book);
    let first = text(&book);
    recompute(&other.job, &other.studio, &Shelves::new(&other.job, &other.studio), &other.runs, &other.setting, &mut book);
    recompute(&one.job, &one.studio, &shelves, &one.runs, &one.setting, &mut book);
    assert_eq!(first, text(&book));
}

#[test]
fn an_empty_job_computes() {
    let outcome = World::empty().recompute();
    assert!(outcome.report.flasks.is_empty());
    assert!(outcome.keys().iter().all(|key| *key == "defaults"), "{:?}", outcome.keys());
}

#[test]
fn a_job_in_every_state_of_undress_computes() {
    // Each field of the sound job left out in turn: figures go missing with their causes, and nothing panics.
    let undress: [fn(&mut World); 24] = [
        |w| w.studio.prices.clear(),
        |w| w.studio.lots.clear(),
        |w| w.line().alloy = None,
        |w| w.line().pattern = None,
        |w| w.pattern().material = None,
        |w| w.pattern().weighed = None,
        |w| w.pattern().extents_mm = None,
        |w| w.tree().base = None,
        |w| w.tree().pieces.clear(),
        |w| w.tree().weighed.clear(),
        |w| w.tree().weighed.iter_mut().for_each(|part| part.material = None),
        |w| w.tree().weighed.iter_mut().for_each(|part| part.weight = None),
        |w| w.tree().envelope = None,
        |w| w.flask().vessel = None,
        |w| w.flask().tree = None,
        |w| w.flask().powder = None,
        |w| w.flask().burnout = None,
        |w| w.flask().melt = None,
        |w| w.burnout().kiln = None,
        |w| w.burnout().programme = None,
        |w| w.burnout().pour_at = None,
        |w| w.melt().crucible = None,
        |w| w.melt().charge.clear(),
        |w| w.burnout().hours_include_ramps = None,
    ];
    for base in [World::sound, World::full] {
        for first in &undress {
            for second in &undress {
                let outcome = base().with(first).with(second).recompute();
                for figure in outcome.book.figures().filter(|figure| figure.value.cause().is_some()) {
                    assert!(!outcome.book.root_causes(figure.id).is_empty(), "{} is missing without a cause", figure.origin.key());
                }
            }
        }
    }
}
