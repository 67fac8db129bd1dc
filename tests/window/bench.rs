//! The bench view: gone through by keys, readable at two metres, nothing cut.

use eframe::egui::Key;
use egui_kittest::Harness;
use pourbook::app::window::Window;
use pourbook::texts::Texts;

use super::shapes::{faults, texts};
use super::{Sight, USUAL, empty, on_sample};

fn press(harness: &mut Harness<'static, Window>, key: Key) {
    harness.key_press(key);
    harness.run();
}

/// Faults of every step of a sample, told with the step.
fn go_through(sample: &str, sight: Sight) -> Vec<String> {
    let mut harness = on_sample(sample, sight);
    let mut told = Vec::new();
    press(&mut harness, Key::F5);
    let mut steps = 0;
    while let Some(step) = harness.state().workbook.view.bench {
        let seen = texts(&harness.output().shapes);
        let low = seen.iter().filter(|text| text.ink.bottom() > text.clip.bottom() + 1.0 || text.words.contains('«'));
        told.extend(low.map(|text| format!("step {step}: “{}” is cut below", text.words)));
        told.extend(faults(&seen).into_iter().map(|fault| format!("{sample} {sight:?} step {step}: {fault}")));
        press(&mut harness, Key::Space);
        steps += 1;
        assert!(steps < 500, "the steps end");
    }
    assert!(steps > 10, "{steps} steps");
    told
}

#[test]
fn every_step_fits_in_every_window() {
    let mut told = Vec::new();
    for (width, height) in [(1280.0, 800.0), (1024.0, 700.0)] {
        for (zoom, trade, dark) in [(100, false, false), (150, true, true)] {
            told.extend(go_through("mixed-kiln.ron", Sight { width, height, dark, zoom, trade }));
        }
    }
    told.extend(go_through("workshop-class.ron", Sight { width: 1024.0, height: 700.0, ..USUAL }));
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}

#[test]
fn keys_go_on_and_back_and_leave() {
    let mut harness = on_sample("first-pour.ron", USUAL);
    press(&mut harness, Key::F5);
    for (key, step) in [(Key::Space, 1), (Key::ArrowRight, 2), (Key::Enter, 3), (Key::ArrowLeft, 2), (Key::Backspace, 1)] {
        press(&mut harness, key);
        assert_eq!(harness.state().workbook.view.bench, Some(step), "{key:?}");
    }
    press(&mut harness, Key::Escape);
    assert_eq!(harness.state().workbook.view.bench, None);
    assert!(!harness.state().workbook.is_changed());
}

#[test]
fn title_and_figures_are_read_at_two_metres() {
    let mut harness = on_sample("first-pour.ron", Sight { width: 1024.0, height: 700.0, ..USUAL });
    press(&mut harness, Key::F5);
    let seen = texts(&harness.output().shapes);
    let tall = |words: &str| seen.iter().filter(|text| text.words.contains(words)).map(|text| text.ink.height()).fold(0.0, f32::max);
    // Capitals stand 0.73 of the size over the line, and a descender goes below it.
    assert!(tall(&Texts::english().label("bench-weigh")) > 56.0 * 0.73);
    let window = harness.state();
    let powder = window.workbook.computed.book.number(window.report().flasks[0].mix.powder).unwrap();
    let powder = pourbook::quantity::print(powder, pourbook::quantity::Kind::Mass, &pourbook::quantity::Style::METRIC.for_powder()).number;
    assert!(tall(&powder) > 48.0 * 0.73, "{powder}");
}

#[test]
fn an_empty_batch_says_what_comes_first() {
    let mut harness = empty(USUAL);
    press(&mut harness, Key::F5);
    let seen = texts(&harness.output().shapes);
    assert!(seen.iter().any(|text| text.words.contains(&Texts::english().label("bench-nothing"))));
    press(&mut harness, Key::Escape);
    assert_eq!(harness.state().workbook.view.bench, None);
}
