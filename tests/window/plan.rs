//! Sixty pieces are planned, a flask is kept, the plan is built and taken back, by mouse and by keys alone.

use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::calc::batch::open_pieces;
use pourbook::stock::Shelf;

use super::hands::{Hands, Way, words};
use super::shapes::{faults, texts};
use super::{Sight, USUAL, on_sample};

/// Waits for the plan.
fn planned(hands: &mut Hands) {
    for _ in 0..1500 {
        hands.harness.run();
        let planner = &hands.harness.state().workbook.planner;
        if planner.progress().is_none() && planner.found().is_some() && !planner.is_stale() {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    panic!("no plan came");
}

fn on_the_fair(sight: Sight, way: Way) -> Hands {
    let mut hands = Hands::new(on_sample("fair.ron", sight), way);
    hands.go(Page::Flasks);
    hands.unfold(&words("plan-batch"));
    hands
}

fn rows(window: &Window) -> Vec<(String, usize, bool)> {
    let found = window.workbook.planner.found().unwrap();
    found.outcome.rows.iter().map(|row| (row.size.clone(), row.pieces.len(), row.kept)).collect()
}

fn sixty(way: Way) {
    let mut hands = on_the_fair(USUAL, way);
    assert_eq!(open_pieces(&hands.harness.state().workbook.job).len(), 60);
    hands.press(&words("plan-do"));
    planned(&mut hands);
    let first = rows(hands.harness.state());
    assert_eq!(first.iter().map(|(_, pieces, _)| pieces).sum::<usize>(), 60);
    // One flask is kept: what is asked for is another thing then, until it was planned again.
    hands.press(&format!("{} 2", words("plan-keep")));
    assert!(hands.harness.state().workbook.planner.is_stale());
    hands.press(&words("plan-do"));
    planned(&mut hands);
    let again = rows(hands.harness.state());
    assert_eq!((again.len(), again.iter().filter(|(.., kept)| *kept).count()), (first.len(), 1));
    hands.press_beginning(&words("plan-let-go"));
    hands.press(&words("plan-do"));
    planned(&mut hands);
    assert!(rows(hands.harness.state()).iter().all(|(.., kept)| !kept));
    let before = hands.harness.state().workbook.job.clone();
    hands.press(&words("plan-build"));
    let workbook = &hands.harness.state().workbook;
    assert_eq!((workbook.job.flasks.len(), workbook.job.trees.len()), (first.len(), first.len()));
    assert!(open_pieces(&workbook.job).is_empty() && workbook.planner.found().is_none());
    // The job keeps what it took off the shelf.
    assert!(
        workbook.job.flasks.iter().all(|flask| workbook.job.shelf.iter().any(|copied| Some(copied.entry.id()) == flask.vessel.as_ref()))
    );
    // One step, and back.
    hands.harness.state_mut().workbook.undo();
    assert_eq!(hands.harness.state().workbook.job, before);
    hands.harness.run();
}

#[test]
fn sixty_pieces_are_planned_and_built_by_mouse() {
    sixty(Way::Mouse);
}

#[test]
fn sixty_pieces_are_planned_and_built_by_keys() {
    sixty(Way::Keys);
}

#[test]
fn a_change_of_the_batch_makes_the_plan_old() {
    let mut hands = on_the_fair(USUAL, Way::Mouse);
    hands.press(&words("plan-do"));
    planned(&mut hands);
    hands.harness.state_mut().workbook.edit("more", |job| job.orders[0].lines[0].quantity += 1);
    hands.harness.run();
    assert!(hands.harness.state().workbook.planner.is_stale());
    // What it was found for stands no more: it is not built.
    hands.harness.state_mut().workbook.build_plan();
    assert!(hands.harness.state().workbook.job.flasks.is_empty());
    hands.harness.state_mut().workbook.undo();
    hands.harness.run();
    assert!(!hands.harness.state().workbook.planner.is_stale(), "taken back, it is the answer again");
}

#[test]
fn what_is_asked_for_is_chosen() {
    let mut hands = on_the_fair(USUAL, Way::Mouse);
    let named = |id: &str| Shelf::shipped().entry(id).unwrap().name().to_owned();
    hands.choose(&words("plan-crucible"), &named("crucible-silica-spin"));
    hands.choose(&words("plan-kiln"), &named("kiln-bench"));
    hands.tick(&words("plan-add"));
    let ask = hands.harness.state().workbook.planner.ask().unwrap();
    assert_eq!(ask.wish.most_flasks, Some(2));
    assert!(ask.alloys.iter().all(|alloy| alloy.crucible.as_ref().is_some_and(|id| id.as_str() == "crucible-silica-spin")));
    hands.press(&words("plan-do"));
    planned(&mut hands);
    let outcome = &hands.harness.state().workbook.planner.found().unwrap().outcome;
    assert!(outcome.rows.len() <= 2 && !outcome.left.is_empty());
}

#[test]
fn a_plan_is_neither_cut_nor_over_anything() {
    let mut told = Vec::new();
    for (width, zoom, trade) in [(1280.0, 100, false), (1024.0, 100, true), (1024.0, 150, false)] {
        let sight = Sight { width, height: 2600.0, dark: false, zoom, trade };
        let mut hands = on_the_fair(sight, Way::Mouse);
        hands.harness.state_mut().workbook.view.plan.kiln =
            pourbook::calc::batch::Places::Of(pourbook::stock::EntryId::new("kiln-bench").unwrap());
        hands.harness.run();
        hands.press(&words("plan-do"));
        planned(&mut hands);
        let seen = texts(&hands.harness.output().shapes);
        assert!(seen.iter().any(|text| text.words.contains(&words("plan-left-over"))), "what is left stands there");
        assert!(seen.iter().all(|text| !text.words.contains('«')));
        told.extend(faults(&seen).into_iter().map(|fault| format!("{sight:?}: {fault}")));
    }
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}

/// The studio's flasks and its usual tree are written down.
fn a_studio(way: Way) {
    let mut hands = Hands::new(on_sample("fair.ron", USUAL), way);
    hands.go(Page::Settings);
    hands.unfold(&words("settings-flasks"));
    let before = hands.harness.state().workbook.studio.flasks.len();
    hands.press(&words("stock-add"));
    let numbered = |key: &str| format!("{} {}", words(key), before + 1);
    hands.choose(&numbered("stock-flask"), Shelf::shipped().entry("flask-89x127").unwrap().name());
    hands.fill(&numbered("stock-count"), "3");
    hands.fill(&words("usual-feed"), "9.5");
    let studio = &hands.harness.state().workbook.studio;
    let stock = studio.flasks.last().unwrap();
    assert_eq!((stock.entry.as_ref().map(ToString::to_string), stock.count), (Some("flask-89x127".to_owned()), Some(3)));
    assert_eq!(studio.usual_tree.feed_length_mm.map(pourbook::quantity::Finite::get), Some(9.5));
    hands.press(&numbered("stock-out"));
    assert_eq!(hands.harness.state().workbook.studio.flasks.len(), before);
}

#[test]
fn the_studio_says_what_it_has_by_mouse() {
    a_studio(Way::Mouse);
}

#[test]
fn the_studio_says_what_it_has_by_keys() {
    a_studio(Way::Keys);
}
