//! Walks through the window as a caster goes: six entries to charge, mix and kiln start; signing; closing; finding.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use pourbook::app::action::Action;
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::stock::Shelf;

use super::hands::{Hands, Way, words};
use super::{USUAL, empty, on_sample};

fn fill(harness: &mut Harness<'static, Window>, name: &str, text: &str) {
    harness.get_by_role_and_label(Role::TextInput, name).focus();
    harness.run();
    harness.get_by_role_and_label(Role::TextInput, name).type_text(text);
    harness.key_press(Key::Enter);
    harness.run();
}

/// Six entries from nothing, and what stands there then.
fn six_entries(way: Way) {
    let mut hands = Hands::new(empty(USUAL), way);
    let named = |id: &str| Shelf::shipped().entry(id).unwrap().name().to_owned();
    hands.choose(&words("start-alloy"), &named("silver-925"));
    hands.choose(&words("start-vessel"), &named("flask-89x102"));
    hands.choose(&words("start-base"), &named("base-89"));
    hands.fill(&words("start-weight"), "152.40");
    hands.fill(&words("start-tare"), "121.30");
    hands.choose(&words("start-material"), &named("wax-injection"));
    hands.fill(&words("start-pour-at"), "2026-12-03 09:30");
    let window = hands.harness.state();
    let (book, report) = (&window.workbook.computed.book, window.report());
    let flask = &report.flasks[0];
    for id in [flask.metal.on_balance, flask.mix.powder, flask.mix.water, report.burnouts[0].kiln_start] {
        assert!(book.number(id).is_some(), "{:?}", book.figure(id));
    }
    // 31.1 g of wax at 0.95 g/cm³ are 32.7 cm³: 339 g of sterling at 10.36 g/cm³, and the button and the loss besides.
    let charge = book.number(flask.metal.on_balance).unwrap();
    assert!((339.0..420.0).contains(&charge), "{charge}");
    // With gloves in two minutes: a few moves an entry, and none that is lost.
    assert!(hands.moves < 60, "{} moves", hands.moves);
}

#[test]
fn six_entries_by_mouse_give_charge_powder_water_and_kiln_start() {
    six_entries(Way::Mouse);
}

#[test]
fn six_entries_by_keys_give_charge_powder_water_and_kiln_start() {
    six_entries(Way::Keys);
}

/// A Stop, signed by a master with a reason from the list of findings.
fn sign_a_stop(way: Way) {
    let mut hands = Hands::new(on_sample("workshop-class.ron", USUAL), way);
    let before = hands.harness.state().stops();
    match way {
        Way::Mouse => hands.press_beginning(&before.to_string()),
        Way::Keys => hands.key(Modifiers::NONE, Key::F7),
    }
    hands.press_beginning(&words("do-answer"));
    hands.choose(&words("sign-hands"), "MW");
    hands.press(&words("sign-do"));
    assert_eq!(hands.harness.state().stops(), before, "without a reason nothing is signed");
    hands.fill(&words("sign-reason"), "Tried on scrap last week, two good pours.");
    hands.press(&words("sign-do"));
    assert_eq!(hands.harness.state().stops(), before - 1);
    assert!(hands.harness.state().dialog.is_none());
    let signed = hands.harness.state().workbook.job.accepted.last().unwrap().clone();
    assert_eq!((signed.hands.as_str(), signed.at.is_some()), ("MW", true));
}

#[test]
fn a_stop_is_signed_for_by_mouse() {
    sign_a_stop(Way::Mouse);
}

#[test]
fn a_stop_is_signed_for_by_keys() {
    sign_a_stop(Way::Keys);
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
