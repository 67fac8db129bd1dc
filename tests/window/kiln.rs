//! The kiln's page: a log that is read, its large answer, the order of pouring, the work dragged along, the floor, the shortest night.

use std::io::Write as _;
use std::time::{Duration, Instant};

use eframe::egui::accesskit::Role;
use eframe::egui::{Event, Key, Modifiers, PointerButton, Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::action::Action;
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::calc::shortest::{Outcome, total_min};
use pourbook::job::{BurnoutId, Programme, WorkStep};

use super::shapes::texts;
use super::{Sight, USUAL, on_sample};

const TALL: Sight = Sight { height: 5200.0, ..USUAL };

fn on_kiln(sight: Sight, load: u32) -> Harness<'static, Window> {
    let mut harness = on_sample("power-cut.ron", sight);
    harness.state_mut().workbook.view.page = Page::Burnout;
    harness.state_mut().workbook.view.burnout = Some(BurnoutId(load));
    harness.run();
    harness
}

/// Everything that is written on the window, also beyond its edge.
fn written(harness: &Harness<'static, Window>) -> Vec<String> {
    texts(&harness.output().shapes).into_iter().map(|seen| seen.words).collect()
}

fn shows(harness: &Harness<'static, Window>, words: &str) -> bool {
    written(harness).iter().any(|text| text.contains(words))
}

fn unfold(harness: &mut Harness<'static, Window>, key: &'static str) {
    harness.state_mut().workbook.view.unfolded.insert(key);
    harness.run();
}

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE }
}

/// Taken hold of in the middle and let go elsewhere, in steps as a hand does it.
fn drag(harness: &mut Harness<'static, Window>, from: Pos2, by: eframe::egui::Vec2) {
    harness.hover_at(from);
    harness.event(button(from, true));
    harness.run_steps(1);
    for step in 1..=8_u8 {
        harness.hover_at(from + by * (f32::from(step) / 8.0));
        harness.run_steps(1);
    }
    harness.event(button(from + by, false));
    harness.run();
}

#[test]
fn the_kept_log_answers_in_large_type_and_on_the_card() {
    let mut harness = on_kiln(TALL, 1);
    assert!(shows(&harness, "REHEAT"), "{:?}", written(&harness));
    assert!(shows(&harness, "Order of pouring") && shows(&harness, "The work before the pour"));
    harness.state_mut().workbook.view.cards = Some(pourbook::app::what_now::Cards::One(pourbook::paper::what_now::Trouble::KilnOff));
    harness.run();
    assert!(shows(&harness, "REHEAT"), "the card for a kiln that went off says it too");
}

#[test]
fn a_log_that_is_dropped_is_read_and_can_be_taken_back() {
    let mut harness = on_kiln(TALL, 2);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("night.csv");
    let mut file = std::fs::File::create(&path).unwrap();
    writeln!(file, "time;temperature °C\n0:00;560\n1:00;730\n4:00;730\n6:00;90\n7:00;60").unwrap();
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::TakeIn(vec![path.clone()]));
    harness.run();
    let log = harness.state().workbook.job.burnouts[1].log.clone().expect("it was read");
    assert_eq!((log.file.as_str(), log.points.len() >= 4), ("night.csv", true));
    // What cannot be read is said in the question, which stands.
    std::fs::write(&path, "nothing of a table").unwrap();
    harness.state_mut().perform(&ctx, Action::TakeIn(vec![path]));
    harness.run();
    assert!(shows(&harness, "Read a kiln log"), "{:?}", written(&harness));
    assert_eq!(harness.state().workbook.job.burnouts[1].log.as_ref(), Some(&log));
    harness.key_press(Key::Escape);
    harness.run();
    harness.state_mut().perform(&ctx, Action::Undo);
    harness.run();
    assert_eq!(harness.state().workbook.job.burnouts[1].log, None);
}

#[test]
fn a_step_of_the_work_is_dragged_and_moved_by_keys() {
    let mut harness = on_kiln(TALL, 1);
    let bar = |harness: &Harness<'static, Window>| {
        let mut bars = harness.query_all_by_role(Role::Slider).map(|node| (node.rect(), node.accesskit_node().label().unwrap_or_default()));
        bars.find(|(_, name)| name.starts_with("Trees begins")).map(|(rect, _)| rect)
    };
    let rect = bar(&harness).expect("the bar of the trees");
    let begins = |harness: &Harness<'static, Window>| {
        let work = &harness.state().workbook.computed.report.work[0];
        work.rows.iter().find(|row| row.step == WorkStep::Tree).map(|row| row.row.start).unwrap()
    };
    let before = begins(&harness);
    drag(&mut harness, rect.center(), vec2(-60.0, 0.0));
    assert!(harness.state().workbook.job.burnouts[0].pins.contains_key(&WorkStep::Tree), "it is pinned");
    let dragged = begins(&harness);
    assert!(dragged < before - 10.0, "{dragged} after {before}");
    // The arrows move it to the next time that is allowed, and only it is moved.
    let rect = bar(&harness).unwrap();
    harness.hover_at(rect.center());
    let node = harness
        .query_all_by_role(Role::Slider)
        .find(|node| node.accesskit_node().label().is_some_and(|name| name.starts_with("Trees begins")));
    node.unwrap().focus();
    harness.run();
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert!(begins(&harness) > dragged);
    harness.get_by_label("let go Trees").click();
    harness.run();
    assert!((begins(&harness) - before).abs() < 0.5, "let go, it is as late as it may be");
}

#[test]
fn a_flask_is_moved_on_the_floor_and_all_are_arranged_again() {
    let mut harness = on_kiln(TALL, 1);
    unfold(&mut harness, "floor-heading");
    let flask = |harness: &Harness<'static, Window>| {
        let mut all = harness.query_all_by_role(Role::Slider).map(|node| (node.rect(), node.accesskit_node().label().unwrap_or_default()));
        all.find(|(_, name)| name.starts_with("Flask 8,")).map(|(rect, _)| rect)
    };
    let rect = flask(&harness).expect("the second flask stands on the floor");
    drag(&mut harness, rect.center(), vec2(30.0, -20.0));
    let put = harness.state().workbook.job.flasks[1].floor_mm.expect("it was put there by hand");
    assert!(put.iter().all(|mm| mm.get() > 0.0));
    harness.get_by_label("Let all stand where they fit best").click();
    harness.run();
    assert!(harness.state().workbook.job.flasks.iter().all(|flask| flask.floor_mm.is_none()));
}

#[test]
fn the_shortest_night_is_never_longer_and_can_be_taken() {
    let mut harness = on_kiln(TALL, 1);
    unfold(&mut harness, "night-heading");
    harness.get_by_label("Seek the shortest night").click();
    let begun = Instant::now();
    while harness.state().workbook.nights.found().is_none() {
        assert!(begun.elapsed() < Duration::from_secs(200), "no night was found");
        std::thread::sleep(Duration::from_millis(400));
        harness.run_steps(2);
    }
    harness.run();
    let (night, found) = harness.state().workbook.nights.found().cloned().unwrap();
    let found = found.unwrap();
    let Outcome::Found(programme) = &found.outcome else { panic!("{:?}", found.outcome) };
    assert!(!found.now.sound() || programme.total_min <= total_min(&night.now) + 1e-6);
    assert!(programme.judged.sound());
    assert!(found.checked.as_ref().is_some_and(pourbook::calc::shortest::Judged::sound), "a finer run bears it out: {:?}", found.checked);
    harness.get_by_label("Take this programme").click();
    harness.run();
    let Some(Programme::Segments(segments)) = &harness.state().workbook.job.burnouts[0].programme else { panic!("segments") };
    assert_eq!(segments.len(), programme.segments.len());
    let total = harness.state().workbook.computed.report.burnouts[0].total;
    let total = harness.state().workbook.computed.book.number(total).unwrap();
    assert!((total - programme.total_min).abs() < 1.0, "the programme that was taken takes {total}, not {}", programme.total_min);
}
