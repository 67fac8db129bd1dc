//! Trees of the samples as they stand: what is written down holds every limit, and the trees of sixty planned pieces are arranged.
#![allow(clippy::print_stdout, reason = "`--nocapture` tells how long it took")]

use std::time::Instant;

use pourbook::calc::arrange::{STEPS, Wanted, arrange, check, task_of, write_down};
use pourbook::calc::stand::Hang;
use pourbook::calc::{Book, Report, Shelves, TreeFigures, batch, plan};
use pourbook::files::batch::Batch;
use pourbook::job::{FlaskId, Job, Tree};

use super::support::{computed, open, runs, setting};

/// What must not be said of a tree whose places were searched for.
const NO_ROOM: [&str; 7] =
    ["parts-touch", "parts-near", "piece-near-trunk", "wall-clearance", "tree-too-wide", "top-clearance", "tree-too-high"];

fn no_room(report: &Report) -> Vec<&'static str> {
    report.findings.iter().map(|found| found.kind.key).filter(|key| NO_ROOM.contains(key)).collect()
}

/// A tree whose places are all written down holds every limit by them; how many pieces it has.
fn holds(batch: &Batch, job: &Job, tree: &Tree, figures: &TreeFigures, report: &Report, book: &Book) -> usize {
    assert!(figures.outline.spots.iter().all(|spot| spot.said.place()), "{}: every place is written down", tree.name);
    let shelves = Shelves::new(job, &batch.studio);
    // Held to the places that are written down, the task checks every two solids anew.
    let mut task = task_of(job, tree, report, book, &shelves, true).unwrap();
    let hang = |piece: &Wanted| {
        let held = piece.held.unwrap();
        piece.hang(held.joint_mm, held.around_deg, held.twist_deg)
    };
    let hangs: Vec<Hang> = task.pieces.iter().map(hang).collect();
    // A place is written down to a hundredth, for which the search keeps a hair more room.
    let limits = &mut task.limits;
    for room in [&mut limits.between_mm, &mut limits.trunk_mm] {
        *room -= 0.04;
    }
    limits.top_mm -= 0.01;
    assert_eq!(check(&task, &hangs), Ok(()), "{}", tree.name);
    hangs.len()
}

#[test]
fn the_three_trees_hold_every_limit() {
    let batch = open("three-trees.ron");
    let (report, book) = computed(&batch, &batch.sound);
    let counts: Vec<usize> = report.trees.iter().map(|tree| tree.outline.spots.len()).collect();
    assert_eq!(counts, [18, 1, 24], "rings, a figurine, charms");
    for (tree, figures) in batch.sound.trees.iter().zip(&report.trees) {
        holds(&batch, &batch.sound, tree, figures, &report, &book);
    }
    assert_eq!(no_room(&report), Vec::<&str>::new());
}

/// The fair, planned and built.
fn built(batch: &Batch) -> Job {
    let shelves = Shelves::new(&batch.sound, &batch.studio);
    let mut ask = batch::ask(&batch.sound, &batch.studio, &shelves, &runs(batch), &setting(batch), &batch::Options::default());
    let found = batch::settle(&ask.question(), plan::STEPS, &|_| true);
    let outcome = ask.read(&found, &shelves.job);
    assert!(outcome.left.is_empty(), "{:?}", outcome.left);
    let mut job = batch.sound.clone();
    batch::build(&mut job, &outcome.rows, &ask.template(&batch.sound, &shelves.job));
    job
}

/// Arranges a tree of the job and writes it down; how many pieces hang.
fn arranged(batch: &Batch, job: &mut Job, at: usize) -> usize {
    let began = Instant::now();
    let (report, book) = computed(batch, job);
    let shelves = Shelves::new(job, &batch.studio);
    let sound = job.clone();
    let tree = &mut job.trees[at];
    let task = task_of(&sound, tree, &report, &book, &shelves, false).unwrap_or_else(|lacks| panic!("{}: {lacks:?}", tree.name));
    let found = arrange(&task, STEPS, &|_| true).unwrap_or_else(|why| panic!("{}: {why:?}", tree.name));
    check(&task, &found.hangs).unwrap();
    println!("{} pieces arranged in {:.2} s, {:.3} off the best", found.hangs.len(), began.elapsed().as_secs_f64(), found.cost.total);
    write_down(tree, &task.trunk, &report.trees[at].outline.spots, &found.hangs);
    found.hangs.len()
}

#[test]
fn sixty_pieces_are_planned_and_their_trees_arranged() {
    let batch = open("fair.ron");
    let began = Instant::now();
    let mut job = built(&batch);
    println!("planned and arranged: {} flasks in {:.2} s", job.flasks.len(), began.elapsed().as_secs_f64());
    // As built, every place is written down and holds every limit.
    let (report, book) = computed(&batch, &job);
    let hung: usize = job.trees.iter().zip(&report.trees).map(|(tree, figures)| holds(&batch, &job, tree, figures, &report, &book)).sum();
    assert_eq!(hung, 60);
    assert_eq!(no_room(&report), Vec::<&str>::new());
    assert!(report.findings.iter().all(|found| found.kind.key != "pieces-on-no-tree"));
    assert!(job.flasks.iter().all(|flask| flask.id != FlaskId(0) && flask.tree.is_some()));
    // Every tree can be arranged anew from the page, by its own sprues.
    let again: usize = (0..job.trees.len()).map(|at| arranged(&batch, &mut job, at)).sum();
    assert_eq!(again, 60);
    assert_eq!(no_room(&computed(&batch, &job).0), Vec::<&str>::new());
}
