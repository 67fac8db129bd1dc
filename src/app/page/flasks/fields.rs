//! What is entered of a flask.

use eframe::egui::{Checkbox, Id, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::flasks::change;
use crate::app::theme::Tokens;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::number::{Number, count, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::calc::{FlaskFigures, Wanting};
use crate::job::{Drive, Flask, Place};
use crate::quantity::{Finite, Grams, Kind, print};
use crate::stock::{Alloy, Base, Flask as Vessel, PatternMaterial, Section};

/// Width of a chooser.
const WIDE: f32 = 230.0;

/// Number on the face, steel, tree, alloy, collar, load, melt.
pub fn what(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let (tokens, id) = (cx.tokens, flask.id);
    let label = cx.label("flasks-scratch");
    let field = Id::unique(("flask-scratch", id.0));
    if let Some(scratch) = row(ui, &label, &tokens, |ui| text(ui, cx, field, &label, &flask.scratch, 90.0)) {
        change(cx, "edit-flasks-scratch", id, move |flask| flask.scratch = scratch);
    }
    let label = cx.label("flasks-vessel");
    let words = |vessel: &Vessel| (vessel.id.clone(), vessel.name.clone());
    let place = (Id::unique(("flask-vessel", id.0)), label.as_str(), WIDE);
    if let Some(vessel) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, flask.vessel.as_ref(), words)) {
        change(cx, "edit-flasks-vessel", id, move |flask| flask.vessel = vessel);
    }
    smallest(ui, cx, flask);
    tree(ui, cx, flask, &tokens);
    let label = cx.label("flasks-alloy");
    let words = |alloy: &Alloy| (alloy.id.clone(), alloy.name.clone());
    let place = (Id::unique(("flask-alloy", id.0)), label.as_str(), WIDE);
    if let Some(alloy) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, flask.alloy.as_ref(), words)) {
        change(cx, "edit-flasks-alloy", id, move |flask| flask.alloy = alloy);
    }
    let label = cx.label("flasks-collar");
    let field = Number::new(Id::unique(("flask-collar", id.0)), &label, Kind::Length);
    let now = flask.collar_mm.map(Finite::get);
    if let Some(collar) = row(ui, &label, &tokens, |ui| number(ui, cx, &field.now(now).default(Some(0.0)))) {
        change(cx, "edit-flasks-collar", id, move |flask| flask.collar_mm = collar);
    }
    load(ui, cx, flask, &tokens);
    melt(ui, cx, flask, &tokens);
    let mut trial = flask.trial;
    if ui.add(Checkbox::new(&mut trial, cx.label("flasks-trial"))).changed() {
        change(cx, "edit-flasks-trial", id, move |flask| flask.trial = trial);
    }
}

/// The smallest flask on the shelf that takes the tree, where it is another one than was chosen; or that none does, with the figures.
fn smallest(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let (tokens, id) = (cx.tokens, flask.id);
    let shelf = &cx.computed.shelves.job;
    let tree = flask.tree.and_then(|id| cx.job.trees.iter().find(|tree| tree.id == id));
    let outline = flask.tree.and_then(|id| cx.computed.report.trees.iter().find(|tree| tree.id == id)).map(|tree| &tree.outline);
    let number = |id: Option<crate::calc::Id>| id.and_then(|id| cx.computed.book.number(id));
    let size = outline.and_then(|outline| Some((number(outline.diameter)?, number(outline.height)?)));
    let Some((diameter, height)) = size else { return };
    let figures = cx.computed.report.flasks.iter().find(|figures| figures.id == id);
    let materials = figures.map(|figures| figures.materials.as_slice()).unwrap_or_default();
    let materials: Vec<&PatternMaterial> = materials.iter().filter_map(|id| shelf.get(id.as_str())).collect();
    let wanting = Wanting::new(diameter, height, &materials);
    let base = tree.and_then(|tree| tree.base.as_ref()).and_then(|id| shelf.get::<Base>(id.as_str()));
    let mm = |mm: f64| print(mm, Kind::Length, cx.style).to_string();
    let chosen = flask.vessel.as_ref().and_then(|id| shelf.get::<Vessel>(id.as_str()));
    // Another wall of the same size is no smaller.
    let as_small =
        |found: &Vessel| chosen.is_some_and(|chosen| wanting.goes_into(chosen) && chosen.volume_cm3() <= found.volume_cm3() + 1e-6);
    match wanting.smallest(shelf.all::<Vessel>(), base) {
        Some(found) if !as_small(found) => {
            let words = cx.say("flasks-smallest", &[("size", found.to_string().into())]);
            let entry = found.id.clone();
            ui.horizontal_wrapped(|ui| {
                heading::says(ui, &words, &tokens);
                if button::link(ui, &cx.label("flasks-smallest-take"), &tokens).clicked() {
                    change(cx, "edit-flasks-vessel", id, move |flask| flask.vessel = Some(entry));
                }
            });
        }
        Some(_) => {}
        None => {
            let args = [("diameter", mm(diameter).into()), ("height", mm(height).into()), ("wall", mm(wanting.wall_mm).into())];
            heading::says(ui, &cx.say(if base.is_some() { "flasks-none-for-base" } else { "flasks-none-takes" }, &args), &tokens);
        }
    }
}

fn tree(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, tokens: &Tokens) {
    let id = flask.id;
    let label = cx.label("flasks-tree");
    let trees: Vec<_> = cx.job.trees.iter().map(|tree| (tree.id, names::tree(cx, tree.id))).collect();
    let place = (Id::unique(("flask-tree", id.0)), label.as_str(), WIDE - 50.0);
    row(ui, &label, tokens, |ui| {
        if let Some(tree) = choice(ui, cx, place, flask.tree.as_ref(), &trees, true) {
            change(cx, "edit-flasks-tree", id, move |flask| flask.tree = tree);
        }
        if let Some(tree) = flask.tree
            && button::link(ui, &cx.label("do-show"), tokens).clicked()
        {
            cx.act(Action::Show(Place::Tree(tree)));
        }
    });
}

fn load(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, tokens: &Tokens) {
    let id = flask.id;
    let label = cx.label("flasks-load");
    let loads: Vec<_> = cx.job.burnouts.iter().map(|load| (load.id, names::load(cx, load.id))).collect();
    let place = (Id::unique(("flask-load", id.0)), label.as_str(), WIDE);
    if let Some(load) = row(ui, &label, tokens, |ui| choice(ui, cx, place, flask.burnout.as_ref(), &loads, true)) {
        change(cx, "edit-flasks-load", id, move |flask| flask.burnout = load);
    }
}

/// The melt it is poured from; one of its own where none is chosen.
fn melt(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, tokens: &Tokens) {
    let id = flask.id;
    let label = cx.label("flasks-melt");
    let melts = cx.job.melts.iter().map(|melt| (Some(melt.id), names::melt(cx, melt.id)));
    let melts: Vec<_> = std::iter::once((None, cx.label("flasks-melt-own"))).chain(melts).collect();
    let place = (Id::unique(("flask-melt", id.0)), label.as_str(), WIDE);
    if let Some(melt) = row(ui, &label, tokens, |ui| choice(ui, cx, place, Some(&flask.melt), &melts, false)) {
        change(cx, "edit-flasks-melt", id, move |flask| flask.melt = melt.flatten());
    }
}

/// The button, the reserve, the melt loss. A default is the term that the figure rests on.
pub fn metal(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let (tokens, id, book) = (cx.tokens, flask.id, &cx.computed.book);
    let terms = book.figure(figures.metal.button).terms;
    let term = |nth: usize| terms.get(nth).and_then(|term| book.number(*term));
    let label = cx.label("flasks-button-least");
    let now = flask.button.least.map(Grams::to_f64);
    let field = Number::new(Id::unique(("flask-button-least", id.0)), &label, Kind::Mass).now(now);
    let default = term(0).filter(|_| now.is_none());
    if let Some(least) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field.default(default))) {
        change(cx, "edit-flasks-button", id, move |flask| flask.button.least = least);
    }
    let label = cx.label("flasks-button-share");
    let now = flask.button.share.map(Finite::get);
    let field = Number::new(Id::unique(("flask-button-share", id.0)), &label, Kind::Ratio).now(now);
    let default = term(1).filter(|_| now.is_none());
    if let Some(share) = row(ui, &label, &tokens, |ui| number(ui, cx, &field.default(default))) {
        change(cx, "edit-flasks-button", id, move |flask| flask.button.share = share);
    }
    let label = cx.label("flasks-reserve");
    let now = flask.reserve.map(Grams::to_f64);
    let field = Number::new(Id::unique(("flask-reserve", id.0)), &label, Kind::Mass).now(now);
    let default = book.number(figures.metal.reserve).filter(|_| now.is_none());
    if let Some(reserve) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field.default(default))) {
        change(cx, "edit-flasks-reserve", id, move |flask| flask.reserve = reserve);
    }
    let label = cx.label("flasks-loss");
    let now = flask.melt_loss.map(Finite::get);
    let field = Number::new(Id::unique(("flask-loss", id.0)), &label, Kind::Ratio).now(now);
    let default = book.number(figures.metal.loss).filter(|_| now.is_none());
    if let Some(loss) = row(ui, &label, &tokens, |ui| number(ui, cx, &field.default(default))) {
        change(cx, "edit-flasks-loss", id, move |flask| flask.melt_loss = loss);
    }
}

/// How it is poured, and remarks.
pub fn more(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let (tokens, id) = (cx.tokens, flask.id);
    crate::app::widget::heading::group(ui, &cx.label("flasks-pour"), &tokens);
    let label = cx.label("flasks-section");
    let sections = [
        (Section::Filigree, "section-filigree"),
        (Section::Thin, "section-thin"),
        (Section::Medium, "section-medium"),
        (Section::Heavy, "section-heavy"),
    ];
    let sections = sections.map(|(section, key)| (section, cx.label(key)));
    let place = (Id::unique(("flask-section", id.0)), label.as_str(), WIDE);
    if let Some(section) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, flask.section.as_ref(), &sections, true)) {
        change(cx, "edit-flasks-section", id, move |flask| flask.section = section);
    }
    let label = cx.label("flasks-turn");
    let field = Number::new(Id::unique(("flask-turn", id.0)), &label, Kind::Count).now(flask.turn.map(f64::from)).width(90.0);
    if let Some(turn) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        change(cx, "edit-flasks-turn", id, move |flask| flask.turn = turn.filter(|turn| *turn > 0));
    }
    let label = cx.label("flasks-drive");
    let drives = [(Drive::Gravity, "drive-gravity"), (Drive::Vacuum, "drive-vacuum"), (Drive::Centrifugal, "drive-centrifugal")];
    let drives = drives.map(|(drive, key)| (drive, cx.label(key)));
    let place = (Id::unique(("flask-drive", id.0)), label.as_str(), WIDE);
    if let Some(Some(drive)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&flask.drive), &drives, false)) {
        change(cx, "edit-flasks-drive", id, move |flask| flask.drive = drive);
    }
    let label = cx.label("flasks-notes");
    let field = Id::unique(("flask-notes", id.0));
    if let Some(words) = row(ui, &label, &tokens, |ui| notes(ui, cx, field, &label, &flask.notes, WIDE)) {
        change(cx, "edit-flasks-notes", id, move |flask| flask.notes = words);
    }
}
