//! Orders taken in from a table: looked at first, bad rows left out only where that is said, and read the same way the next time.

use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::job::Job;
use pourbook::texts::Texts;

use super::shapes::texts;
use super::{Sight, USUAL, on_sample};

fn label(key: &str) -> String {
    Texts::english().label(key)
}

fn shows(harness: &Harness<'static, Window>, words: &str) -> bool {
    texts(&harness.output().shapes).into_iter().any(|seen| seen.words.contains(words))
}

fn written(harness: &Harness<'static, Window>) -> Vec<String> {
    texts(&harness.output().shapes).into_iter().map(|seen| seen.words).collect()
}

fn read(harness: &mut Harness<'static, Window>, path: &std::path::Path) {
    harness.get_by_role_and_label(Role::TextInput, &label("from-table-path")).focus();
    harness.run();
    harness.key_press_modifiers(eframe::egui::Modifiers::COMMAND, Key::A);
    harness.event(eframe::egui::Event::Text(path.display().to_string()));
    harness.key_press(Key::Enter);
    harness.run();
    harness.run();
}

/// The button that takes the rows in, and whether it may be pressed.
fn take(harness: &Harness<'static, Window>) -> Option<(String, bool)> {
    let buttons = harness.query_all_by_role(Role::Button);
    let mut named = buttons.filter_map(|node| Some((node.accesskit_node().label()?, !node.accesskit_node().is_disabled())));
    named.find(|(name, _)| name.starts_with("Take ") && name.contains(" in, "))
}

fn job(window: &Window) -> &Job {
    &window.workbook.job
}

#[test]
fn a_table_is_looked_at_and_taken_in() {
    let mut harness = on_sample("order-book.ron", Sight { height: 4200.0, ..USUAL });
    harness.state_mut().workbook.view.page = Page::Orders;
    harness.state_mut().workbook.view.unfolded.insert("orders-from-table");
    harness.run();
    let before = job(harness.state()).orders.len();
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("orders.csv");
    let table = "Client;Design;Quantity;Alloy;Due;Price\nK;Limpet ring;2;925;2026-12-18;48,50\nK;Whelk charm;1;925;2026-12-18;31,00\n\
                 M;Sloe pendant;0;925;2026-12-20;60,00\nM;\"Bramble stud; pair\";3;925;2026-12-20;22,00\n";
    std::fs::write(&path, table).unwrap();
    read(&mut harness, &path);
    assert!(shows(&harness, "3 rows can be taken in, 1 cannot."), "{:?}", written(&harness));
    assert!(shows(&harness, &label("table-row-zero")), "the bad row says why: {:?}", written(&harness));
    assert_eq!(take(&harness).map(|(_, may)| may), Some(false), "nothing is left out unasked");
    harness.get_by_label("Leave out the row that cannot be read").click();
    harness.run();
    let (name, may) = take(&harness).expect("the button");
    assert!(may && name == "Take 3 lines in, 2 orders", "{name}");
    harness.get_by_label(&name).click();
    harness.run();
    let orders = &job(harness.state()).orders[before..];
    assert_eq!(orders.iter().map(|order| order.client.as_str()).collect::<Vec<_>>(), ["K", "M"]);
    assert_eq!((orders[0].lines.len(), orders[0].lines[0].quantity), (2, 2));
    assert_eq!(orders[1].lines[0].design, "Bramble stud; pair");
    assert!(orders.iter().flat_map(|order| &order.lines).all(|line| line.alloy.as_ref().is_some_and(|id| id.as_str() == "silver-925")));
    let remembered = harness.state().preferences.mappings.clone();
    assert_eq!(remembered.len(), 1, "how it was read is remembered");
    // One step back takes all of them out again.
    harness.key_press_modifiers(eframe::egui::Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(harness.state()).orders.len(), before);
    // What is no table is refused with its line, and changes nothing.
    std::fs::write(&path, "<html><body>orders</body></html>").unwrap();
    read(&mut harness, &path);
    assert!(shows(&harness, "line 1: this is a page with marks"), "{:?}", written(&harness));
}
