//! Every page in every theme, size, zoom and set of units: nothing is cut, nothing lies over anything else.

use eframe::egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{AccessKitNode, Queryable, by};
use pourbook::app::page::Page;
use pourbook::app::window::Window;

use super::shapes::{faults, texts};
use super::{Sight, on_sample};

/// Unfolds every section of the page.
pub fn unfold(harness: &mut Harness<'static, Window>) {
    let folded = |node: &AccessKitNode<'_>| node.role() == Role::DisclosureTriangle;
    let many = harness.query_all(by().predicate(folded)).count();
    for place in 0..many {
        let node = harness.query_all(by().predicate(folded)).nth(place);
        node.expect("as many as before, or more").click();
        harness.run();
    }
}

fn look_at(sample: &str, sight: Sight, told: &mut Vec<String>) {
    let mut harness = on_sample(sample, sight);
    for page in Page::RAIL.into_iter().chain([Page::Gallery]) {
        harness.state_mut().workbook.view.page = page;
        super::looked_at(&mut harness);
        if sight.height > 2000.0 {
            let before = texts(&harness.output().shapes).len();
            unfold(&mut harness);
            let after = texts(&harness.output().shapes).len();
            assert!(page != Page::Settings || after > before + 40, "{before} texts folded, {after} unfolded");
        }
        let seen = texts(&harness.output().shapes);
        assert!(seen.len() > 10, "{page:?} shows something");
        let missing: Vec<&str> = seen.iter().map(|text| text.words.as_str()).filter(|words| words.contains('«')).collect();
        assert!(missing.is_empty(), "{page:?}: texts that are not in the catalogue: {missing:?}");
        told.extend(faults(&seen).into_iter().map(|fault| format!("{sample} {sight:?} {page:?}: {fault}")));
    }
}

#[test]
fn nothing_is_cut_or_overlaps() {
    let mut told = Vec::new();
    for (width, height) in [(1280.0, 800.0), (1024.0, 700.0)] {
        for dark in [false, true] {
            for (zoom, trade) in [(100, false), (100, true), (150, false)] {
                // A zoomed window is a smaller one in points.
                look_at("mixed-kiln.ron", Sight { width, height, dark, zoom, trade }, &mut told);
            }
        }
    }
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}

#[test]
fn an_empty_batch_fits_and_says_what_comes_first() {
    let mut told = Vec::new();
    for (width, height, zoom) in [(1280.0, 800.0, 100), (1024.0, 700.0, 100), (1024.0, 700.0, 150)] {
        let sight = Sight { width, height, dark: false, zoom, trade: false };
        let mut harness = super::empty(sight);
        for page in Page::RAIL {
            harness.state_mut().workbook.view.page = page;
            harness.run();
            let seen = texts(&harness.output().shapes);
            told.extend(faults(&seen).into_iter().map(|fault| format!("{sight:?} {page:?}: {fault}")));
            // Every page but the studio's own leads on: with a sample, or with what comes first.
            let leads = harness.query_all_by_label(&super::hands::words("do-open-sample")).count();
            assert!(leads > 0 || page == Page::Settings, "{page:?} offers the sample");
        }
    }
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}

#[test]
fn nothing_is_cut_or_overlaps_below_the_fold() {
    let mut told = Vec::new();
    for width in [1280.0, 1024.0] {
        // So high that nothing has to be scrolled to.
        look_at("mixed-kiln.ron", Sight { width, height: 4000.0, dark: false, zoom: 100, trade: true }, &mut told);
        look_at("workshop-class.ron", Sight { width, height: 4000.0, dark: true, zoom: 100, trade: false }, &mut told);
    }
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}

#[test]
fn a_class_full_of_mistakes_still_fits() {
    let mut told = Vec::new();
    look_at("workshop-class.ron", Sight { width: 1024.0, height: 700.0, dark: false, zoom: 100, trade: false }, &mut told);
    look_at("order-book.ron", Sight { width: 1024.0, height: 700.0, dark: false, zoom: 100, trade: false }, &mut told);
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}
