//! Names and order for those who hear the window, or go through it by keys: every input has a name of its own on its page, and Tab goes through
//! a page in the order it is read.

use std::collections::BTreeMap;

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::{AccessKitNode, NodeT, Queryable, by};
use pourbook::app::page::Page;
use pourbook::app::window::Window;

use super::hands::words;
use super::layout::unfold;
use super::{Sight, USUAL, on_sample};

const INPUTS: [Role; 5] = [Role::TextInput, Role::MultilineTextInput, Role::ComboBox, Role::CheckBox, Role::DisclosureTriangle];

#[test]
fn every_input_has_a_name_of_its_own() {
    let mut told = Vec::new();
    for sample in ["mixed-kiln.ron", "workshop-class.ron", "order-book.ron"] {
        let mut harness = on_sample(sample, Sight { height: 4000.0, ..USUAL });
        for page in Page::RAIL {
            harness.state_mut().workbook.view.page = page;
            harness.run();
            unfold(&mut harness);
            let mut names: BTreeMap<String, u32> = BTreeMap::new();
            for node in harness.query_all(by().predicate(|node: &AccessKitNode<'_>| INPUTS.contains(&node.role()))) {
                // What is chosen is no part of a list's name.
                let label = node.accesskit_node().label().unwrap_or_default();
                *names.entry(label).or_default() += 1;
            }
            told.extend(names.into_iter().filter(|(_, many)| *many > 1).map(|(name, many)| format!("{sample} {page:?}: {many} × {name}")));
        }
    }
    assert!(told.is_empty(), "{} names stand for several inputs:\n{}", told.len(), told.join("\n"));
}

/// What has the focus: its name, without what is chosen or computed.
fn focused(harness: &Harness<'static, Window>) -> Option<String> {
    let node = harness.query_all(by().predicate(|node: &AccessKitNode<'_>| node.is_focused())).next()?;
    Some(node.accesskit_node().label().unwrap_or_default())
}

/// Names in the order that Tab goes through a page, from its top until it leads out of it.
fn order(harness: &mut Harness<'static, Window>, page: Page) -> Vec<String> {
    // Another page first, so that this one is come to.
    for come in [if page == Page::Record { Page::Pour } else { Page::Record }, page] {
        harness.state_mut().workbook.view.page = come;
        harness.run();
    }
    assert_eq!(focused(harness).as_deref(), Some(words(page.key()).as_str()), "the top of the page has the focus");
    // What stands on this page hangs on what lies in the folder.
    for _ in 0..500 {
        if page != Page::Jobs || harness.state().workbook.indexer.index().is_some() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(20));
        harness.run();
    }
    let out = words("do-menu");
    let mut names = Vec::new();
    for _ in 0..300 {
        harness.key_press(Key::Tab);
        harness.run();
        match focused(harness) {
            Some(name) if name == out => return names,
            Some(name) => names.push(name),
            None => names.push("(nothing)".to_owned()),
        }
    }
    panic!("{page:?}: Tab does not lead out of the page: {names:?}");
}

#[test]
fn a_question_gives_the_focus_back() {
    let mut harness = on_sample("first-pour.ron", USUAL);
    assert_eq!(focused(&harness).as_deref(), Some(words("stage-start").as_str()), "the first Tab leads to the first field");
    for opens in [Key::F1, Key::K] {
        for _ in 0..3 {
            harness.key_press(Key::Tab);
            harness.run();
        }
        let before = focused(&harness);
        assert!(before.is_some());
        harness.key_press_modifiers(if opens == Key::K { Modifiers::COMMAND } else { Modifiers::NONE }, opens);
        harness.run();
        assert_ne!(focused(&harness), before, "{opens:?} opens a question");
        harness.key_press(Key::Escape);
        harness.run();
        assert_eq!(focused(&harness), before, "{opens:?}");
    }
    // Back from the bench view the page begins at its top.
    harness.key_press(Key::F5);
    harness.run();
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(focused(&harness).as_deref(), Some(words("stage-start").as_str()));
}

#[test]
fn tab_goes_through_every_page_in_the_order_it_is_read() {
    let mut harness = on_sample("first-pour.ron", USUAL);
    harness.state_mut().workbook.view.working = false;
    let mut all = String::new();
    for page in Page::RAIL {
        all.push_str(&format!("{page:?}\n"));
        for name in order(&mut harness, page) {
            all.push_str(&format!("  {name}\n"));
        }
    }
    assert_eq!(all, include_str!("focus_order.txt"), "{all}");
}
