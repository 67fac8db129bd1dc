//! Walks through the window as a caster goes: six entries to charge, mix and kiln start; signing; closing; finding.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::{AccessKitNode, Queryable, by};
use pourbook::app::action::Action;
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::stock::Shelf;

use super::{USUAL, empty, on_sample};

fn choose(harness: &mut Harness<'static, Window>, name: &str, option: &str) {
    let field = |node: &AccessKitNode<'_>| {
        node.role() == Role::ComboBox && node.label().is_some_and(|label| label == name || label.starts_with(&format!("{name}, ")))
    };
    harness.get(by().predicate(field)).click();
    harness.run();
    harness.get_by_role_and_label(Role::Button, option).scroll_to_me();
    harness.run();
    harness.get_by_role_and_label(Role::Button, option).click();
    harness.run();
}

fn fill(harness: &mut Harness<'static, Window>, name: &str, text: &str) {
    harness.get_by_role_and_label(Role::TextInput, name).focus();
    harness.run();
    harness.get_by_role_and_label(Role::TextInput, name).type_text(text);
    harness.key_press(Key::Enter);
    harness.run();
}

/// What an entry of the shelf is called.
fn named(id: &str) -> String {
    Shelf::shipped().entry(id).unwrap().name().to_owned()
}

#[test]
fn six_entries_give_charge_powder_water_and_kiln_start() {
    let mut harness = empty(USUAL);
    choose(&mut harness, "alloy", &named("silver-925"));
    choose(&mut harness, "flask", &named("flask-89x102"));
    choose(&mut harness, "base", &named("base-89"));
    fill(&mut harness, "tree and base on the scale", "152.40");
    fill(&mut harness, "base alone", "121.30");
    choose(&mut harness, "pattern material", &named("wax-injection"));
    fill(&mut harness, "pour at", "2026-12-03 09:30");
    let window = harness.state();
    let (book, report) = (&window.workbook.computed.book, window.report());
    let flask = &report.flasks[0];
    for id in [flask.metal.on_balance, flask.mix.powder, flask.mix.water, report.burnouts[0].kiln_start] {
        assert!(book.number(id).is_some(), "{:?}", book.figure(id));
    }
    // 31.1 g of wax at 0.95 g/cm³ are 32.7 cm³: 339 g of sterling at 10.36 g/cm³, and the button and the loss besides.
    let charge = book.number(flask.metal.on_balance).unwrap();
    assert!((339.0..420.0).contains(&charge), "{charge}");
}

#[test]
fn a_stop_is_signed_for_by_a_master_with_a_reason() {
    let mut harness = on_sample("workshop-class.ron", USUAL);
    let before = harness.state().stops();
    let found = harness.state().report().findings.iter().find(|found| found.stands() && found.kind.may_be_signed).unwrap().clone();
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::Answer(found.kind.key, found.place));
    harness.run();
    choose(&mut harness, "Who", "MW");
    harness.get_by_label("Sign").click();
    harness.run();
    assert_eq!(harness.state().stops(), before, "without a reason nothing is signed");
    fill(&mut harness, "Why", "Tried on scrap last week, two good pours.");
    harness.get_by_label("Sign").click();
    harness.run();
    assert_eq!(harness.state().stops(), before - 1);
    assert!(harness.state().dialog.is_none());
}

#[test]
fn every_action_with_a_key_is_told() {
    let mut harness = empty(USUAL);
    harness.key_press(Key::F1);
    harness.run();
    for action in Action::PLAIN.iter().filter(|action| action.shortcut().is_some()) {
        let words = pourbook::texts::Texts::english().label(action.key());
        assert!(harness.query_all_by_label(&words).count() > 0, "{words}");
    }
    harness.key_press(Key::Escape);
    harness.run();
    assert!(harness.state().dialog.is_none());
}

#[test]
fn what_is_not_saved_is_asked_about() {
    let mut harness = empty(USUAL);
    fill(&mut harness, "tree and base on the scale", "100");
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::New);
    harness.run();
    assert!(harness.state().dialog.is_some());
    harness.get_by_label("Cancel").click();
    harness.run();
    assert!(harness.state().dialog.is_none() && harness.state().workbook.is_changed());
    harness.state_mut().perform(&ctx, Action::New);
    harness.run();
    harness.get_by_label("Close without saving").click();
    harness.run();
    assert!(!harness.state().workbook.is_changed());
}

#[test]
fn anything_is_found_from_one_field() {
    let mut harness = on_sample("mixed-kiln.ron", USUAL);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::K);
    harness.run();
    harness.get_by_role_and_label(Role::TextInput, "Find a piece, a figure, an action").type_text("burnout");
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(harness.state().workbook.view.page, Page::Burnout);
}

#[test]
fn a_batch_is_saved_and_opened_again() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("tide.ron");
    let mut harness = empty(USUAL);
    fill(&mut harness, "tree and base on the scale", "100");
    harness.state_mut().workbook.save_as(&pourbook::files::disk::RealDisk, path.clone()).unwrap();
    assert!(!harness.state().workbook.is_changed());
    let job = harness.state().workbook.job.clone();
    fill(&mut harness, "base alone", "40");
    assert!(harness.state().workbook.is_changed());
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::Save);
    assert!(!harness.state().workbook.is_changed());
    let mut again = empty(USUAL);
    let ctx = again.ctx.clone();
    again.state_mut().open(&ctx, &path);
    assert_ne!(again.state().workbook.job, job);
    assert_eq!(again.state().workbook.job, harness.state().workbook.job);
}
