//! A flask that is spun: its machine's numbers are reached by keys, and the arm's balance follows what is typed.

use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::job::FlaskId;
use pourbook::quantity::Finite;

use super::hands::words;
use super::{Sight, USUAL, on_sample};

/// The gold flask of the mixed kiln, its section unfolded.
fn on_the_pour() -> Harness<'static, Window> {
    let mut harness = on_sample("mixed-kiln.ron", Sight { height: 4000.0, ..USUAL });
    let view = &mut harness.state_mut().workbook.view;
    (view.page, view.flask) = (Page::Pour, Some(FlaskId(2)));
    view.unfolded.insert("pour-fill");
    harness.run();
    harness
}

fn stands(harness: &Harness<'static, Window>, key: &str) -> bool {
    harness.state().workbook.computed.report.findings.iter().any(|found| found.kind.key == key)
}

#[test]
fn the_arm_is_balanced_by_keys() {
    let mut harness = on_the_pour();
    assert!(!stands(&harness, "spin-off-balance") && !stands(&harness, "spin-unbalanced"));
    // Tab leads from one field of the machine to the next.
    harness.get_by_role_and_label(Role::TextInput, &words("pour-spin-rpm")).focus();
    harness.run();
    for next in ["pour-spin-metal", "pour-spin-pattern", "pour-spin-loaded", "pour-spin-set"] {
        harness.key_press(Key::Tab);
        harness.run();
        assert!(harness.get_by_role_and_label(Role::TextInput, &words(next)).accesskit_node().is_focused(), "{next}");
    }
    harness.get_by_role_and_label(Role::TextInput, &words("pour-spin-set")).type_text("1100");
    harness.key_press(Key::Enter);
    harness.run();
    assert!(stands(&harness, "spin-off-balance"), "1100 g for 1178 g");
    harness.state_mut().workbook.undo();
    harness.run();
    assert!(!stands(&harness, "spin-off-balance"));
}

#[test]
fn the_machine_s_limits_stand_in_the_settings() {
    let mut harness = on_sample("mixed-kiln.ron", Sight { height: 4000.0, ..USUAL });
    let view = &mut harness.state_mut().workbook.view;
    view.page = Page::Settings;
    view.unfolded.insert("settings-centrifuges");
    harness.run();
    let most = format!("{} 1", words("centrifuges-most-rpm"));
    harness.get_by_role_and_label(Role::TextInput, &most).focus();
    harness.run();
    harness.get_by_role_and_label(Role::TextInput, &most).type_text("300");
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(harness.state().workbook.studio.centrifuges[0].most_rpm.map(Finite::get), Some(300.0));
    assert!(stands(&harness, "spin-too-fast"), "it is to turn at 320");
}
