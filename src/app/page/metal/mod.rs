//! Metal: what goes into each crucible, and what of it goes where.

mod bar;
mod charge;

use eframe::egui::{Id, Rect, RichText, Ui, vec2};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::page::burnout::caution;
use crate::app::page::take_out::take_out;
use crate::app::theme::STEP;
use crate::app::widget::choice::entry_of;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, finding, heading};
use crate::calc::MeltFigures;
use crate::job::{Job, Melt, MeltId, Place};
use crate::quantity::{Finite, Kind};
use crate::stock::Crucible;

/// More melts than this are drawn only where they are in sight.
const MANY: usize = 6;

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-metal"), "", &tokens);
    let job = cx.job;
    if job.flasks.is_empty() && job.melts.is_empty() {
        heading::empty(ui, &cx.label("melt-empty"), &cx.label("melt-first"), &tokens);
    }
    ui.horizontal_wrapped(|ui| {
        for melt in &job.melts {
            if ui.selectable_label(cx.view.melt == Some(melt.id), crate::app::names::melt(cx, melt.id)).clicked() {
                let id = melt.id;
                cx.look(move |view| view.melt = Some(id));
            }
        }
        if button::plain(ui, &cx.label("melt-add"), &tokens).clicked() {
            let id = next(job);
            cx.look(move |view| view.melt = Some(id));
            cx.edit("edit-melt-add", add);
        }
        if job.flasks.is_empty() && button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
    });
    let melts = cx.computed.report.melts.clone();
    if let Some(melt) = job.melts.iter().find(|melt| Some(melt.id) == cx.view.melt) {
        fields(ui, cx, melt);
        if let Some(figures) = melts.iter().find(|figures| figures.id == Some(melt.id)) {
            of_melt(ui, cx, figures);
        }
        charge::show(ui, cx, melt);
        cx.folded(ui, "melt-more", |ui, cx| more(ui, cx, melt));
    }
    // A flask that names no melt is poured from one of its own.
    let alone: Vec<&MeltFigures> = melts.iter().filter(|figures| figures.id.is_none()).collect();
    for figures in &alone {
        if alone.len() > MANY {
            in_sight(ui, figures, |ui| of_one(ui, cx, figures));
        } else {
            of_one(ui, cx, figures);
        }
    }
    ui.add_space(2.0 * STEP);
    caution(ui, cx, "caution-damp-charge");
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Metal);
}

/// A melt of one flask alone.
fn of_one(ui: &mut Ui, cx: &mut Cx<'_>, figures: &MeltFigures) {
    let names: Vec<String> = figures.flasks.iter().map(|id| crate::app::names::flask(cx, *id)).collect();
    let tokens = cx.tokens;
    heading::group(ui, &cx.say("melt-alone", &[("flask", names.join(", ").into())]), &tokens);
    of_melt(ui, cx, figures);
}

/// Draws what is in sight, and leaves the room it took last time where it is not.
fn in_sight(ui: &mut Ui, figures: &MeltFigures, add: impl FnOnce(&mut Ui)) {
    let key = Id::unique(("height of a melt", figures.flasks.first().map(|id| id.0)));
    let last: Option<f32> = ui.data(|data| data.get_temp(key));
    if let Some(height) = last.filter(|height| !ui.is_rect_visible(Rect::from_min_size(ui.cursor().min, vec2(1.0, *height)))) {
        ui.add_space(height);
        return;
    }
    let height = ui.scope(add).response.rect.height();
    ui.data_mut(|data| data.insert_temp(key, height));
}

fn fields(ui: &mut Ui, cx: &mut Cx<'_>, melt: &Melt) {
    let (tokens, id) = (cx.tokens, melt.id);
    let label = cx.label("melt-crucible");
    let words = |crucible: &Crucible| (crucible.id.clone(), crucible.name.clone());
    let place = (Id::unique(("melt-crucible", id.0)), label.as_str(), 260.0);
    if let Some(crucible) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, melt.crucible.as_ref(), words)) {
        change(cx, "edit-melt-crucible", id, move |melt| melt.crucible = crucible);
    }
    let job = cx.job;
    heading::group(ui, &cx.label("melt-feeds"), &tokens);
    ui.horizontal_wrapped(|ui| {
        for flask in &job.flasks {
            let mut fed = flask.melt == Some(id);
            let flask_id = flask.id;
            if ui.checkbox(&mut fed, crate::app::names::flask(cx, flask_id)).changed() {
                cx.edit("edit-melt-feeds", move |job| {
                    if let Some(flask) = job.flasks.iter_mut().find(|flask| flask.id == flask_id) {
                        flask.melt = fed.then_some(id);
                    }
                });
            }
        }
    });
}

/// The charge of a melt, how it stands in its crucible, and its parts.
fn of_melt(ui: &mut Ui, cx: &mut Cx<'_>, melt: &MeltFigures) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("melt-charge"), &tokens);
    let mut rows = vec![("melt-all", melt.charge), ("melt-molten", melt.molten)];
    rows.extend(melt.fill.map(|id| ("melt-fill", id)));
    rows.extend(melt.fineness.map(|id| ("melt-fineness", id)));
    for (key, id) in rows {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(170.0)));
    }
    if melt.fineness.is_some() {
        heading::says(ui, &cx.label("melt-not-assayed"), &tokens);
    }
    if let Some(smallest) = &melt.smallest {
        let name = crate::app::names::entry(cx, smallest);
        ui.label(RichText::new(cx.say("melt-smallest", &[("name", name.into())])).color(tokens.ink2));
    }
    for flask in &melt.flasks {
        bar::show(ui, cx, *flask);
    }
}

fn more(ui: &mut Ui, cx: &mut Cx<'_>, melt: &Melt) {
    let (tokens, id) = (cx.tokens, melt.id);
    let label = cx.label("melt-name");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("melt-name", id.0)), &label, &melt.name, 240.0)) {
        change(cx, "edit-melt-name", id, move |melt| melt.name = name);
    }
    let label = cx.label("melt-target");
    let field = Number::new(Id::unique(("melt-target", id.0)), &label, Kind::Fineness).now(melt.target_permille.map(Finite::get));
    if let Some(target) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-melt-target", id, move |melt| melt.target_permille = target);
    }
    let label = cx.label("melt-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("melt-notes", id.0)), &label, &melt.notes, 320.0)) {
        change(cx, "edit-melt-notes", id, move |melt| melt.notes = said);
    }
    take_out(ui, cx, ("melt-remove", "edit-melt-remove"), Place::Melt(id), move |job| {
        job.melts.retain(|melt| melt.id != id);
        for flask in &mut job.flasks {
            flask.melt = flask.melt.filter(|melt| *melt != id);
        }
    });
}

/// The id the next melt gets.
fn next(job: &Job) -> MeltId {
    MeltId(job.melts.iter().map(|melt| melt.id.0).max().unwrap_or(0) + 1)
}

fn add(job: &mut Job) {
    let id = next(job);
    job.melts.push(Melt { id, ..Melt::default() });
}

/// Changes a melt.
fn change(cx: &mut Cx<'_>, key: &str, id: MeltId, change: impl FnOnce(&mut Melt) + 'static) {
    cx.edit(key, move |job| {
        if let Some(melt) = job.melts.iter_mut().find(|melt| melt.id == id) {
            change(melt);
        }
    });
}
