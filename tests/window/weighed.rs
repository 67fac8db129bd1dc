//! A density that was weighed in water becomes the material's own on the studio's shelf.

use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::page::Page;
use pourbook::stock::{Entry, OverlayItem, PatternMaterial, Trust};

use super::hands::words;
use super::{Sight, USUAL, on_sample};

#[test]
fn a_weighed_density_is_taken_onto_the_shelf() {
    let mut harness = on_sample("first-pour.ron", Sight { height: 4000.0, ..USUAL });
    harness.state_mut().workbook.view.page = Page::Settings;
    harness.state_mut().workbook.view.unfolded.insert("settings-weighed");
    harness.run();
    let button = format!("{} 1", words("weighed-take"));
    // The sample's block came to what the shelf says: there is nothing to take.
    assert!(harness.get_by_label(&button).accesskit_node().is_disabled());
    // 10.02 g dry, 24.60 g of sinker, 25.80 g together: 8.82 g of water pushed aside, so 10.02/8.82 × 0.99799 at 21 °C.
    let both = format!("{} 1", words("weighed-both"));
    harness.get_by_role_and_label(Role::TextInput, &both).focus();
    harness.run();
    harness.get_by_role_and_label(Role::TextInput, &both).type_text("25.80");
    harness.key_press(Key::Enter);
    harness.run();
    harness.get_by_label(&button).click();
    harness.run();
    let own = harness.state().workbook.studio.shelf.iter().find_map(|item| match item {
        OverlayItem::Replace { entry: Entry::PatternMaterial(material), .. } => Some(material.clone()),
        _ => None,
    });
    let own = own.expect("an entry of the studio's own");
    assert_eq!(own.id.as_str(), "resin-castable");
    assert_eq!(own.density_g_cm3.trust, Trust::Studio);
    assert_eq!(own.density_g_cm3.source, "weighed in water, 2026-11-17");
    assert!((own.density_g_cm3.value - 10.02 / 8.82 * 0.997_99).abs() < 0.001, "{}", own.density_g_cm3.value);
    let today = &harness.state().workbook.computed.shelves.today;
    assert!((today.get::<PatternMaterial>("resin-castable").unwrap().density_g_cm3.value - own.density_g_cm3.value).abs() < 1e-12);
    assert!(harness.get_by_label(&button).accesskit_node().is_disabled(), "taken once, there is nothing left to take");
    harness.state_mut().workbook.undo();
    assert!(harness.state().workbook.studio.shelf.iter().all(|item| !matches!(item, OverlayItem::Replace { .. })));
}
