//! The board: pieces are found, moved on, rejected, made again, sent out and taken back; every job of the folder is on it.

use std::time::{Duration, Instant};

use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::files::clocks::{Moment, Running};
use pourbook::job::{BenchStep, Event, OutFor, PieceId, PieceStage, follow, standing};
use pourbook::texts::Texts;

use super::shapes::texts;
use super::{Sight, USUAL, on_sample};

const TALL: Sight = Sight { height: 3000.0, ..USUAL };

fn on_board(sample: &str) -> Harness<'static, Window> {
    let mut harness = on_sample(sample, TALL);
    harness.state_mut().workbook.view.page = Page::Pieces;
    harness.run();
    harness
}

fn written(harness: &Harness<'static, Window>) -> Vec<String> {
    texts(&harness.output().shapes).into_iter().map(|seen| seen.words).collect()
}

fn shows(harness: &Harness<'static, Window>, words: &str) -> bool {
    written(harness).iter().any(|text| text.contains(words))
}

fn label(key: &str) -> String {
    Texts::english().label(key)
}

/// The pieces on the board, as they are told.
fn pieces(harness: &Harness<'static, Window>) -> Vec<String> {
    let boxes = harness.query_all_by_role(Role::CheckBox);
    let names = boxes.filter_map(|node| node.accesskit_node().label());
    names.filter(|name| name.matches(", ").count() >= 4).collect()
}

fn tick(harness: &mut Harness<'static, Window>, beginning: &str) {
    let name = pieces(harness).into_iter().find(|name| name.starts_with(beginning));
    let name = name.unwrap_or_else(|| panic!("no piece {beginning}: {:?}", pieces(harness)));
    harness.get_by_label(&name).click();
    harness.run();
}

/// Writes into the field of a name.
fn write_in(harness: &mut Harness<'static, Window>, key: &str, words: &str) {
    let name = label(key);
    harness.get_by_role_and_label(Role::TextInput, &name).focus();
    harness.run();
    harness.event(eframe::egui::Event::Text(words.to_owned()));
    harness.run();
}

fn press(harness: &mut Harness<'static, Window>, key: &str) {
    harness.get_by_label(&label(key)).click();
    harness.run();
}

fn job<'a>(harness: &'a Harness<'static, Window>) -> &'a pourbook::job::Job {
    &harness.state().workbook.job
}

/// The first piece of the batch, and how it is told.
fn first(harness: &Harness<'static, Window>) -> (PieceId, String) {
    let (_, line) = job(harness).lines().next().unwrap();
    (PieceId { line: line.id, number: 1 }, format!("{} 1", line.design))
}

fn stage_of(harness: &Harness<'static, Window>, piece: PieceId) -> Option<PieceStage> {
    follow(job(harness)).into_iter().find(|one| one.piece == piece).unwrap().stage
}

#[test]
fn a_piece_is_found_and_moved_on() {
    let mut harness = on_board("first-pour.ron");
    let (piece, name) = first(&harness);
    let before = pieces(&harness).len();
    assert!(before > 2, "{:?}", pieces(&harness));
    write_in(&mut harness, "pieces-search", &name);
    let found = pieces(&harness);
    assert!(
        !found.is_empty()
            && found.len() < before
            && found.iter().any(|one| one.starts_with(&name))
            && found.iter().all(|one| one.starts_with("Limpet ring")),
        "{found:?}"
    );
    tick(&mut harness, &name);
    press(&mut harness, "pieces-reached-do");
    assert_eq!(stage_of(&harness, piece), Some(PieceStage::Invested), "what comes next is offered");
    assert!(shows(&harness, &label("reached-invested")));
    // Taken back, it hangs on its tree again.
    harness.key_press_modifiers(eframe::egui::Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(stage_of(&harness, piece), Some(PieceStage::OnTree));
}

#[test]
fn a_rejected_piece_is_made_again_at_the_studios_cost() {
    let mut harness = on_board("first-pour.ron");
    let (piece, name) = first(&harness);
    let line = |harness: &Harness<'static, Window>| job(harness).lines().find(|(_, line)| line.id == piece.line).unwrap().1.clone();
    let cost = |harness: &Harness<'static, Window>| {
        let computed = &harness.state().workbook.computed;
        let figures = computed.report.lines.iter().find(|figures| figures.line == piece.line).unwrap();
        (computed.book.number(figures.cost), computed.book.number(figures.rough_all))
    };
    let (pieces_before, (cost_before, rough_before)) = (line(&harness).quantity, cost(&harness));
    tick(&mut harness, &name);
    write_in(&mut harness, "pieces-defect", "no-fill");
    harness.key_press(Key::Enter);
    harness.run();
    press(&mut harness, "pieces-reject-do");
    assert!(follow(job(&harness))[0].rejected.as_deref() == Some("no-fill"));
    tick(&mut harness, &name);
    press(&mut harness, "pieces-remake-do");
    let made = follow(job(&harness)).into_iter().find(|one| one.remake_of == Some(piece)).unwrap();
    assert_eq!((made.piece.number, line(&harness).quantity), (pieces_before + 1, pieces_before + 1));
    // The tree was weighed before it was made: it does not hang there, and nothing is told of it.
    assert_eq!((made.stage, made.tree, made.flask), (None, None, None));
    let (cost_after, rough_after) = cost(&harness);
    assert_eq!(cost_after, cost_before, "the client pays for the first alone");
    assert!(rough_after > rough_before, "and another is cast: {rough_after:?} after {rough_before:?}");
    assert!(shows(&harness, &label("pieces-history")));
}

#[test]
fn pieces_go_out_and_come_back() {
    let mut harness = on_board("first-pour.ron");
    let (piece, name) = first(&harness);
    tick(&mut harness, &name);
    press(&mut harness, "pieces-send");
    write_in(&mut harness, "pieces-out-whom", "the assay office");
    harness.key_press(Key::Enter);
    harness.run();
    press(&mut harness, "pieces-send-do");
    let out = follow(job(&harness))[0].out.clone().expect("it is out");
    assert_eq!((out.what_for, out.to.as_str()), (OutFor::Hallmark, "the assay office"));
    assert_eq!(stage_of(&harness, piece), Some(PieceStage::Out));
    assert!(shows(&harness, "with the assay office"));
    tick(&mut harness, &name);
    press(&mut harness, "pieces-back-do");
    assert_eq!((stage_of(&harness, piece), follow(job(&harness))[0].out.clone()), (Some(PieceStage::OnTree), None));
}

#[test]
fn every_job_of_the_folder_is_on_the_board() {
    let mut harness = on_board("first-pour.ron");
    press(&mut harness, "pieces-everywhere");
    let begun = Instant::now();
    while harness.state().workbook.folder_jobs.found().is_none() {
        assert!(begun.elapsed() < Duration::from_secs(60), "the folder was read");
        std::thread::sleep(Duration::from_millis(50));
        harness.run_steps(2);
    }
    harness.run();
    let found = harness.state().workbook.folder_jobs.found().unwrap();
    let names: Vec<String> = found.open.iter().filter_map(|other| Some(other.path.file_name()?.to_string_lossy().into_owned())).collect();
    assert!(names.contains(&"order-book.ron".to_owned()) && !names.contains(&"first-pour.ron".to_owned()), "{names:?}");
    assert!(found.broken.is_empty(), "{:?}", found.broken);
    write_in(&mut harness, "pieces-search", "order-book");
    assert!(harness.query_all_by_label("Open order-book").count() > 0, "each of its pieces leads there");
}

/// A clock that was begun before the program was started again goes on, and tells across the room that its time is over; what was done by
/// it goes into the record.
#[test]
fn a_clock_at_the_bench_survives_a_restart_and_is_logged() {
    let mut harness = on_sample("first-pour.ron", USUAL);
    let job_id = job(&harness).job_id.to_string();
    let since = jiff::Timestamp::now() - jiff::SignedDuration::from_mins(47);
    harness.state_mut().preferences.clocks.push(Running {
        job: job_id,
        step: "Mix flask/1 ".to_owned(),
        since: Moment::by_wall(since),
        done: false,
    });
    let before = job(&harness).record.len();
    harness.key_press(Key::F5);
    harness.run_steps(3);
    assert!(shows(&harness, "47:0"), "{:?}", written(&harness));
    assert!(shows(&harness, &label("bench-over")), "{:?}", written(&harness));
    harness.key_press(Key::Space);
    harness.run_steps(3);
    let timed: Vec<u32> = standing(&job(&harness).record)
        .filter_map(|entry| match &entry.event {
            Event::Timed { step: BenchStep::Mix, seconds, .. } => Some(*seconds),
            _ => None,
        })
        .collect();
    assert!(matches!(timed[..], [seconds] if (2810..2900).contains(&seconds)), "{timed:?}");
    // Leafing on through the next steps writes nothing.
    harness.key_press(Key::Space);
    harness.run_steps(3);
    assert_eq!(job(&harness).record.len(), before + 1);
}
