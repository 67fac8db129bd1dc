//! The main sprue and the runs of feed sprues.

use eframe::egui::{Id, Label, RichText, Ui, vec2};

use super::{WIDE, change};
use crate::app::cx::Cx;
use crate::app::theme::ROW;
use crate::app::widget::choice::entry_of;
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::job::{MainSprue, SprueRun, Tree, TreeId};
use crate::quantity::{Finite, Kind};
use crate::stock::PatternMaterial;

/// Widths of the columns: material, count, diameter, length, angle.
const COLUMNS: [f32; 5] = [150.0, 50.0, 76.0, 76.0, 62.0];
/// Feed sprues stand so where nobody said otherwise; the calculation says the same.
const ANGLE: f64 = 45.0;

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    main(ui, cx, tree);
    let (tokens, id) = (cx.tokens, tree.id);
    heading::group(ui, &cx.label("trees-sprues"), &tokens);
    if tree.sprues.is_empty() {
        heading::says(ui, &cx.label("trees-sprues-none"), &tokens);
    } else {
        let heads = ["trees-material", "trees-sprue-count", "trees-sprue-diameter", "trees-sprue-length", "trees-sprue-angle"];
        ui.horizontal(|ui| {
            for (key, width) in heads.into_iter().zip(COLUMNS) {
                ui.allocate_ui(vec2(width, 16.0), |ui| {
                    ui.set_min_width(width);
                    ui.add(Label::new(RichText::new(cx.label(key)).size(12.0).color(tokens.ink2)).truncate());
                });
            }
        });
        for place in 0..tree.sprues.len() {
            run(ui, cx, tree, place);
        }
    }
    if button::plain(ui, &cx.label("trees-sprue-add"), &tokens).clicked() {
        let like = tree.sprues.last().cloned().or_else(|| {
            let material = tree.main_sprue.as_ref().and_then(|main| main.material.clone());
            Some(SprueRun { material, ..SprueRun::default() })
        });
        let run = SprueRun { count: 1, ..like.unwrap_or_default() };
        change(cx, "edit-trees-sprue-add", id, move |tree| tree.sprues.push(run));
    }
}

/// Changes the main sprue; one that says nothing is none.
fn of_main(cx: &mut Cx<'_>, key: &str, id: TreeId, with: impl FnOnce(&mut MainSprue) + 'static) {
    change(cx, key, id, move |tree| {
        let mut main = tree.main_sprue.take().unwrap_or_default();
        with(&mut main);
        tree.main_sprue = (main != MainSprue::default()).then_some(main);
    });
}

fn main(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let (tokens, id) = (cx.tokens, tree.id);
    heading::group(ui, &cx.label("trees-main"), &tokens);
    let main = tree.main_sprue.clone().unwrap_or_default();
    // Feed sprues have fields of the same labels.
    let named = |cx: &Cx<'_>, label: &str| format!("{}, {label}", cx.label("trees-main"));
    let label = cx.label("trees-material");
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    let name = named(cx, &label);
    let field = (Id::unique(("main-material", id.0)), name.as_str(), WIDE);
    if let Some(material) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, field, main.material.as_ref(), words)) {
        of_main(cx, "edit-trees-main-material", id, move |main| main.material = material);
    }
    let label = cx.label("trees-main-diameter");
    let name = named(cx, &label);
    let field = Number::new(Id::unique(("main-diameter", id.0)), &name, Kind::Length).now(main.diameter_mm.map(Finite::get));
    if let Some(diameter) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        of_main(cx, "edit-trees-main-diameter", id, move |main| main.diameter_mm = diameter);
    }
    let label = cx.label("trees-main-length");
    let name = named(cx, &label);
    let field = Number::new(Id::unique(("main-length", id.0)), &name, Kind::Length).now(main.length_mm.map(Finite::get));
    if let Some(length) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        of_main(cx, "edit-trees-main-length", id, move |main| main.length_mm = length);
    }
}

fn edit(cx: &mut Cx<'_>, key: &str, (id, place): (TreeId, usize), with: impl FnOnce(&mut SprueRun) + 'static) {
    change(cx, key, id, move |tree| {
        if let Some(run) = tree.sprues.get_mut(place) {
            with(run);
        }
    });
}

fn run(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, place: usize) {
    let (tokens, id, run) = (cx.tokens, tree.id, &tree.sprues[place]);
    let at = (id, place);
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), place);
    ui.horizontal(|ui| {
        let label = named(cx, "trees-sprue-material");
        let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
        let field = (Id::unique(("run-material", id.0, place)), label.as_str(), COLUMNS[0]);
        let choosing = |ui: &mut Ui| {
            ui.set_min_width(COLUMNS[0]);
            entry_of(ui, cx, field, run.material.as_ref(), words)
        };
        if let Some(material) = ui.allocate_ui(vec2(COLUMNS[0], ROW), choosing).inner {
            edit(cx, "edit-trees-run-material", at, move |run| run.material = material);
        }
        let label = named(cx, "trees-sprue-count");
        let field = Number::new(Id::unique(("run-count", id.0, place)), &label, Kind::Count).width(COLUMNS[1]);
        if let Some(count) = count(ui, cx, &field.now(Some(f64::from(run.count)))) {
            edit(cx, "edit-trees-run-count", at, move |run| run.count = count.unwrap_or(1));
        }
        let label = named(cx, "trees-sprue-diameter");
        let field = Number::new(Id::unique(("run-diameter", id.0, place)), &label, Kind::Length).width(COLUMNS[2]);
        if let Some(diameter) = number(ui, cx, &field.now(run.diameter_mm.map(Finite::get))) {
            edit(cx, "edit-trees-run-diameter", at, move |run| run.diameter_mm = diameter);
        }
        let label = named(cx, "trees-sprue-length");
        let field = Number::new(Id::unique(("run-length", id.0, place)), &label, Kind::Length).width(COLUMNS[3]);
        if let Some(length) = number(ui, cx, &field.now(run.length_mm.map(Finite::get))) {
            edit(cx, "edit-trees-run-length", at, move |run| run.length_mm = length);
        }
        let label = named(cx, "trees-sprue-angle");
        let field = Number::new(Id::unique(("run-angle", id.0, place)), &label, Kind::Angle).width(COLUMNS[4]);
        let angle = run.angle_deg.map(Finite::get);
        if let Some(angle) = number(ui, cx, &field.now(angle).default(Some(ANGLE))) {
            edit(cx, "edit-trees-run-angle", at, move |run| run.angle_deg = angle);
        }
        let remove = button::link(ui, &cx.label("trees-sprue-remove"), &tokens).accessible_name(named(cx, "trees-sprue-take-out"));
        if remove.clicked() {
            change(cx, "edit-trees-sprue-remove", id, move |tree| {
                if place < tree.sprues.len() {
                    tree.sprues.remove(place);
                }
            });
        }
    });
}
