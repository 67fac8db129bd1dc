//! Trees: what hangs where, what the scale says, what the sprues are, and how large the whole is.

mod arrange;
mod feeding;
mod hang;
mod numbers;
mod parts;
mod pieces;
mod place;
mod spot;
mod sprues;
mod standing;

use eframe::egui::{Id, Ui};

use super::flasks::list::{self, Line};
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::Page;
use crate::app::page::take_out::take_out;
use crate::app::theme::STEP;
use crate::app::widget::choice::entry_of;
use crate::app::widget::figure::{Look, figure, printed};
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, finding, heading};
use crate::job::{Envelope, Job, Place, Tree, TreeId};
use crate::quantity::Kind;
use crate::stock::Base;

/// Width of a field for a name.
pub(super) const WIDE: f32 = 240.0;

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    if cx.job.trees.is_empty() {
        heading::title(ui, &cx.label("stage-trees"), "", &tokens);
        heading::empty(ui, &cx.label("trees-what"), &cx.label("trees-first"), &tokens);
        ui.horizontal(|ui| {
            add_button(ui, cx, true);
            if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
                cx.act(Action::OpenSample);
            }
        });
        return;
    }
    heading::title(ui, &cx.label("stage-trees"), &cx.label("trees-about"), &tokens);
    ui.scope(|ui| all(ui, cx));
    ui.add_space(STEP);
    add_button(ui, cx, false);
    let chosen = cx.view.tree.and_then(|id| cx.job.trees.iter().find(|tree| tree.id == id));
    if let Some(tree) = chosen {
        one(ui, cx, tree);
    }
    ui.add_space(3.0 * STEP);
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Trees);
}

fn all(ui: &mut Ui, cx: &mut Cx<'_>) {
    let job = cx.job;
    let line = |place: usize| {
        let tree = &job.trees[place];
        let figures = cx.computed.report.trees.get(place).filter(|figures| figures.id == tree.id);
        let volume = figures.map(|figures| printed(cx, figures.volume, false));
        let volume = volume.map(|(number, unit, _)| format!("{number} {unit}").trim_end().to_owned()).unwrap_or_default();
        let flask = job.flasks.iter().find(|flask| flask.tree == Some(tree.id)).map(|flask| names::flask(cx, flask.id));
        Line {
            name: names::tree(cx, tree.id),
            about: vec![volume, flask.unwrap_or_else(|| cx.label("trees-in-no-flask"))],
            worst: list::worst(cx, |at| matches!(at, Place::Tree(id) | Place::TreeRow(id, _) if id == tree.id)),
            chosen: cx.view.tree == Some(tree.id),
        }
    };
    if let Some(place) = list::list(ui, cx, "trees", job.trees.len(), line) {
        let id = job.trees[place].id;
        cx.look(move |view| view.tree = Some(id));
    }
}

/// The id the next tree gets.
pub(super) fn next(job: &Job) -> TreeId {
    TreeId(job.trees.iter().map(|tree| tree.id.0).max().unwrap_or(0).saturating_add(1))
}

fn add_button(ui: &mut Ui, cx: &mut Cx<'_>, first: bool) {
    let (words, tokens) = (cx.label("trees-add"), cx.tokens);
    let response = if first { button::main(ui, &words, &tokens) } else { button::plain(ui, &words, &tokens) };
    if response.clicked() {
        let id = next(cx.job);
        cx.look(move |view| view.tree = Some(id));
        cx.edit("edit-trees-add", |job| {
            let id = next(job);
            job.trees.push(Tree { id, ..Tree::default() });
        });
    }
}

/// Changes one tree under a name.
pub(super) fn change(cx: &mut Cx<'_>, key: &str, id: TreeId, change: impl FnOnce(&mut Tree) + 'static) {
    cx.edit(key, move |job| {
        if let Some(tree) = job.trees.iter_mut().find(|tree| tree.id == id) {
            change(tree);
        }
    });
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let tokens = cx.tokens;
    heading::group(ui, &names::tree(cx, tree.id), &tokens);
    head(ui, cx, tree);
    standing::show(ui, cx, tree);
    pieces::show(ui, cx, tree);
    sprues::show(ui, cx, tree);
    parts::show(ui, cx, tree);
    outer(ui, cx, tree);
    figures(ui, cx, tree);
    heading::group(ui, &cx.label("trees-notes"), &tokens);
    let id = tree.id;
    if let Some(words) = notes(ui, cx, Id::unique(("tree-notes", id.0)), &cx.label("trees-notes"), &tree.notes, 420.0) {
        change(cx, "edit-trees-notes", id, move |tree| tree.notes = words);
    }
    ui.add_space(2.0 * STEP);
    take_out(ui, cx, ("trees-remove", "edit-trees-remove"), Place::Tree(id), move |job| {
        job.trees.retain(|tree| tree.id != id);
        for flask in job.flasks.iter_mut().filter(|flask| flask.tree == Some(id)) {
            flask.tree = None;
        }
    });
}

fn head(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let (tokens, id) = (cx.tokens, tree.id);
    let label = cx.label("trees-name");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("tree-name", id.0)), &label, &tree.name, WIDE)) {
        change(cx, "edit-trees-name", id, move |tree| tree.name = name);
    }
    let label = cx.label("trees-base");
    let words = |base: &Base| (base.id.clone(), base.name.clone());
    let place = (Id::unique(("tree-base", id.0)), label.as_str(), WIDE);
    if let Some(base) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, tree.base.as_ref(), words)) {
        change(cx, "edit-trees-base", id, move |tree| tree.base = base);
    }
    let label = cx.label("trees-base-number");
    let field = Id::unique(("tree-base-number", id.0));
    if let Some(number) = row(ui, &label, &tokens, |ui| text(ui, cx, field, &label, &tree.base_number, 90.0)) {
        change(cx, "edit-trees-base-number", id, move |tree| tree.base_number = number);
    }
}

/// Outer measures with the ruler, where the computed ones are not to rule.
fn outer(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let (tokens, id) = (cx.tokens, tree.id);
    heading::group(ui, &cx.label("trees-outer"), &tokens);
    let computed = cx.computed.report.trees.iter().find(|figures| figures.id == id);
    let number_of = |figure: Option<crate::calc::Id>| figure.and_then(|figure| cx.computed.book.number(figure));
    let (diameter, height) =
        (number_of(computed.and_then(|figures| figures.outline.diameter)), number_of(computed.and_then(|figures| figures.outline.height)));
    let envelope = tree.envelope.clone().unwrap_or_default();
    let label = cx.label("trees-diameter");
    let now = envelope.diameter_mm.map(crate::quantity::Finite::get);
    let field = Number::new(Id::unique(("tree-diameter", id.0)), &label, Kind::Length).now(now).default(diameter.filter(|_| now.is_none()));
    if let Some(diameter_mm) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-trees-outer", id, move |tree| measured(tree, |envelope| envelope.diameter_mm = diameter_mm));
    }
    let label = cx.label("trees-height");
    let now = envelope.height_mm.map(crate::quantity::Finite::get);
    let field = Number::new(Id::unique(("tree-height", id.0)), &label, Kind::Length).now(now).default(height.filter(|_| now.is_none()));
    if let Some(height_mm) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-trees-outer", id, move |tree| measured(tree, |envelope| envelope.height_mm = height_mm));
    }
}

/// Changes the measured envelope; one that says nothing is none.
fn measured(tree: &mut Tree, change: impl FnOnce(&mut Envelope)) {
    let mut envelope = tree.envelope.take().unwrap_or_default();
    change(&mut envelope);
    tree.envelope = (envelope.diameter_mm.is_some() || envelope.height_mm.is_some()).then_some(envelope);
}

fn figures(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let (tokens, id) = (cx.tokens, tree.id);
    let Some(figures) = cx.computed.report.trees.iter().find(|figures| figures.id == id) else { return };
    heading::group(ui, &cx.label(if figures.weighed { "trees-from-scale" } else { "trees-from-patterns" }), &tokens);
    row(ui, &cx.label("trees-volume"), &tokens, |ui| figure(ui, cx, figures.volume, Look::ROW));
    if let Some(difference) = figures.difference {
        row(ui, &cx.label("trees-difference"), &tokens, |ui| figure(ui, cx, difference, Look::ROW));
    }
    match figures.outline.diameter {
        Some(diameter) => row(ui, &cx.label("trees-diameter"), &tokens, |ui| drop(figure(ui, cx, diameter, Look::ROW))),
        None => drop(heading::says(ui, &cx.label("trees-diameter-unknown"), &tokens)),
    }
    match figures.outline.height {
        Some(height) => row(ui, &cx.label("trees-height"), &tokens, |ui| drop(figure(ui, cx, height, Look::ROW))),
        None => drop(heading::says(ui, &cx.label("trees-height-unknown"), &tokens)),
    }
    feeding::show(ui, cx, tree, &figures.feed);
    // The volumes of weighed parts stand in the parts' own rows.
    if !figures.weighed && figures.parts.len() > 1 {
        let parts: Vec<_> = figures.parts.iter().map(|part| (part.material.clone(), part.volume)).collect();
        cx.folded(ui, "trees-parts", |ui, cx| {
            for (material, volume) in parts.iter().take(40) {
                let name = material.as_ref().map_or_else(|| cx.label("trees-part-unsaid"), |id| names::entry(cx, id));
                row(ui, &name, &tokens, |ui| figure(ui, cx, *volume, Look::ROW));
            }
            let more = parts.len().saturating_sub(40);
            if more > 0 {
                heading::says(ui, &cx.say("trees-parts-more", &[("count", more.into())]), &tokens);
            }
        });
    }
}
