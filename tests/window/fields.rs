//! The house field: Enter commits and moves down, Tab commits and moves on, Escape restores, bad text stays with its reason, and going through
//! changes nothing.

use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::window::Window;
use pourbook::job::Weighing;

use super::{USUAL, empty, on_sample};

const WEIGHT: &str = "tree and base on the scale";
const TARE: &str = "base alone";

fn type_into(harness: &mut Harness<'static, Window>, name: &str, text: &str) {
    harness.get_by_role_and_label(Role::TextInput, name).focus();
    harness.run();
    harness.get_by_role_and_label(Role::TextInput, name).type_text(text);
    harness.run();
}

fn gross(harness: &Harness<'static, Window>) -> Option<String> {
    match harness.state().workbook.job.trees.first()?.weighed.first()?.weight? {
        Weighing::Gross { weight, .. } => Some(weight.decimal().to_string()),
        Weighing::Net(weight) => Some(weight.decimal().to_string()),
    }
}

#[test]
fn enter_commits_and_a_unit_is_converted() {
    let mut harness = empty(USUAL);
    type_into(&mut harness, WEIGHT, "143,80");
    assert_eq!(gross(&harness), None, "nothing is taken while it is typed");
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(gross(&harness).as_deref(), Some("143.8"));
    type_into(&mut harness, WEIGHT, "2 ozt");
    harness.key_press(Key::Enter);
    harness.run();
    // 2 troy ounces of 31.1034768 g each, by definition.
    assert_eq!(gross(&harness).as_deref(), Some("62.206954"));
}

#[test]
fn escape_restores() {
    let mut harness = empty(USUAL);
    type_into(&mut harness, WEIGHT, "100");
    harness.key_press(Key::Enter);
    harness.run();
    type_into(&mut harness, WEIGHT, "250");
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(gross(&harness).as_deref(), Some("100"));
}

#[test]
fn bad_text_stays_and_says_why() {
    let mut harness = empty(USUAL);
    type_into(&mut harness, WEIGHT, "12 mm");
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(gross(&harness), None);
    harness.get_by_label_contains("measures");
    harness.key_press(Key::Escape);
    harness.run();
    // What can mean two things is refused with both.
    type_into(&mut harness, WEIGHT, "1,250");
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(gross(&harness), None);
    harness.get_by_label_contains("Choose which is meant");
}

#[test]
fn going_through_every_field_changes_nothing() {
    let mut harness = on_sample("mixed-kiln.ron", USUAL);
    let before = harness.state().workbook.job.clone();
    for page in pourbook::app::page::Page::RAIL {
        harness.state_mut().workbook.view.page = page;
        harness.run();
        for _ in 0..60 {
            harness.key_press(Key::Tab);
            harness.run_ok();
        }
    }
    assert_eq!(harness.state().workbook.job, before);
    assert!(!harness.state().workbook.is_changed());
}

#[test]
fn tab_commits_and_moves_on() {
    let mut harness = empty(USUAL);
    type_into(&mut harness, WEIGHT, "143.8");
    harness.key_press(Key::Tab);
    harness.run();
    assert_eq!(gross(&harness).as_deref(), Some("143.8"));
    assert!(harness.get_by_role_and_label(Role::TextInput, TARE).is_focused());
}

#[test]
fn what_was_done_has_a_name_and_can_be_taken_back() {
    let mut harness = empty(USUAL);
    type_into(&mut harness, WEIGHT, "143.8");
    harness.key_press(Key::Enter);
    harness.run();
    let workbook = &mut harness.state_mut().workbook;
    assert_eq!(workbook.history.undo_name(), Some("weigh the tree"));
    workbook.undo();
    assert!(workbook.job.trees.is_empty() && !workbook.is_changed());
    assert_eq!(workbook.history.redo_name(), Some("weigh the tree"));
    workbook.redo();
    assert_eq!(gross(&harness).as_deref(), Some("143.8"));
}

/// The alloy of the quick batch.
fn alloy(harness: &Harness<'static, Window>) -> Option<String> {
    harness.state().workbook.job.flasks.first().and_then(|flask| flask.alloy.as_ref()).map(ToString::to_string)
}

fn open_list(harness: &Harness<'static, Window>) -> bool {
    harness.query_all_by_role(Role::ListBoxOption).count() > 0
}

#[test]
fn a_list_is_looked_through_by_letters_and_gone_along_by_arrows() {
    let mut harness = empty(USUAL);
    let name = super::hands::words("start-alloy");
    harness.get_by_role_and_label(Role::ComboBox, &name).focus();
    harness.run();
    // Letters open it; what nothing is called leaves it open, and Enter takes nothing.
    harness.event(eframe::egui::Event::Text("sterlinx".to_owned()));
    harness.run();
    assert!(!open_list(&harness), "nothing is called so");
    harness.get_by_label_contains("sterlinx");
    harness.key_press(Key::Enter);
    harness.run();
    harness.get_by_label_contains("sterlinx");
    assert_eq!(alloy(&harness), None);
    harness.key_press(Key::Backspace);
    harness.run();
    assert!(open_list(&harness));
    // The second of those that are found.
    let second = harness.query_all_by_role(Role::ListBoxOption).nth(1).and_then(|node| node.accesskit_node().label());
    harness.key_press(Key::ArrowDown);
    harness.key_press(Key::Enter);
    harness.run();
    let taken = alloy(&harness).expect("one was taken");
    assert_eq!(Some(pourbook::stock::Shelf::shipped().entry(&taken).unwrap().name().to_owned()), second);
    assert!(!open_list(&harness));
    // Escape leaves everything as it was, and the focus where it was.
    harness.get_by_role_and_label(Role::ComboBox, &name).focus();
    harness.run();
    harness.key_press(Key::ArrowDown);
    harness.run();
    assert!(open_list(&harness));
    harness.key_press(Key::ArrowDown);
    harness.key_press(Key::Escape);
    harness.run();
    assert!(!open_list(&harness));
    assert_eq!(alloy(&harness).as_deref(), Some(taken.as_str()));
    assert!(harness.get_by_role_and_label(Role::ComboBox, &name).is_focused());
}

#[test]
fn what_was_typed_for_one_batch_does_not_turn_up_in_the_next() {
    let mut harness = empty(USUAL);
    type_into(&mut harness, TARE, "121.3");
    harness.key_press(Key::Enter);
    harness.run();
    type_into(&mut harness, WEIGHT, "12 mm");
    harness.key_press(Key::Enter);
    harness.run();
    let ctx = harness.ctx.clone();
    harness.state_mut().answer(&ctx, pourbook::app::dialog::Answer::Anyway(pourbook::app::dialog::Then::New));
    harness.run();
    for name in [TARE, WEIGHT] {
        let field = harness.get_by_role_and_label(Role::TextInput, name);
        assert_eq!(field.value().unwrap_or_default(), "", "{name}");
    }
    assert_eq!(harness.query_all_by_label_contains("measures").count(), 0);
}

#[test]
fn space_takes_the_default_in_lighter_ink() {
    let mut harness = on_sample("first-pour.ron", USUAL);
    harness.state_mut().workbook.view.page = pourbook::app::page::Page::Investment;
    harness.run();
    let name = super::hands::words("invest-bowl");
    assert_eq!(harness.state().workbook.job.flasks[0].bowl_cm3, None);
    harness.get_by_role_and_label(Role::TextInput, &name).focus();
    harness.run();
    harness.key_press(Key::Space);
    harness.run();
    // The studio's bowl, as its file says.
    assert_eq!(harness.state().workbook.job.flasks[0].bowl_cm3.map(pourbook::quantity::Finite::get), Some(3000.0));
}

#[test]
fn what_is_written_is_taken_before_a_click_or_a_key_leads_elsewhere() {
    use eframe::egui::{Event, Modifiers, PointerButton};
    let mut harness = on_sample("first-pour.ron", USUAL);
    harness.state_mut().workbook.view.page = pourbook::app::page::Page::Patterns;
    harness.run();
    // The pattern's file is looked at on a thread; what comes of it moves the page, which a hand would see.
    for _ in 0..2000 {
        if matches!(harness.state_mut().workbook.inspection(), Some((_, None))) {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
        harness.run();
    }
    let weight = super::hands::words("patterns-on-scale");
    type_into(&mut harness, &weight, "3.2");
    // Pressed and let go in frames of their own, as a hand does.
    let at = harness.get_by_label(&super::hands::words("patterns-add")).rect().center();
    harness.hover_at(at);
    for pressed in [true, false] {
        harness.event(Event::PointerButton { pos: at, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE });
        harness.run();
    }
    let weighed = |harness: &Harness<'static, Window>, place: usize| harness.state().workbook.job.patterns[place].weighed.is_some();
    assert!(weighed(&harness, 0), "the weight was taken");
    assert_eq!(harness.state().workbook.job.patterns.len(), 4, "and a pattern added");
    type_into(&mut harness, &weight, "1.1");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::PageDown);
    harness.run();
    assert_ne!(harness.state().workbook.view.page, pourbook::app::page::Page::Patterns);
    assert!(weighed(&harness, 3), "a key that leads to another page takes it too");
    // A click on another row or in the rail, pressed and let go within one frame.
    for elsewhere in ["Haw, printed", "Trees, one tree"] {
        harness.state_mut().workbook.view.page = pourbook::app::page::Page::Patterns;
        harness.run();
        let chosen = harness.state().workbook.view.pattern.unwrap();
        type_into(&mut harness, &weight, "2.75");
        // The rail tells a Caution behind the page's words.
        let here = harness.query_by_label(elsewhere).or_else(|| harness.query_all_by_label_contains(elsewhere).next());
        here.unwrap().click();
        harness.run();
        let pattern = harness.state().workbook.job.patterns.iter().find(|pattern| pattern.id == chosen).unwrap().clone();
        let taken = match pattern.weighed {
            Some(Weighing::Net(weight) | Weighing::Gross { weight, .. }) => weight.decimal().to_string(),
            None => String::new(),
        };
        assert_eq!(taken, "2.75", "{elsewhere}");
    }
    // And so does closing: what was written is asked about.
    let mut harness = empty(USUAL);
    type_into(&mut harness, WEIGHT, "100");
    harness.input_mut().viewports.entry(eframe::egui::ViewportId::ROOT).or_default().events.push(eframe::egui::ViewportEvent::Close);
    harness.step();
    harness.run();
    assert_eq!(gross(&harness).as_deref(), Some("100"));
    assert_eq!(harness.state().dialog, None, "the field comes first");
    // The window asks to be closed again, as the system does on its word.
    harness.input_mut().viewports.entry(eframe::egui::ViewportId::ROOT).or_default().events.push(eframe::egui::ViewportEvent::Close);
    harness.step();
    harness.run();
    assert_eq!(harness.state().dialog, Some(pourbook::app::dialog::Dialog::Close(pourbook::app::dialog::Then::Quit)));
}
