//! Flasks: which tree goes into which steel, what is poured into it, and whether there is room.

mod add;
mod fields;
pub(super) mod list;
mod plan;
mod view;

use eframe::egui::Ui;

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::Page;
use crate::app::page::take_out::take_out;
use crate::app::theme::STEP;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::row;
use crate::app::widget::{button, finding, heading};
use crate::calc::{FlaskFigures, Weight};
use crate::job::{Flask, FlaskId, Place};

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    if cx.job.flasks.is_empty() {
        heading::title(ui, &cx.label("stage-flasks"), "", &tokens);
        nothing(ui, cx, "flasks-what");
        ui.add_space(STEP);
        cx.folded(ui, "plan-batch", plan::show);
        return;
    }
    heading::title(ui, &cx.label("stage-flasks"), &cx.label("flasks-about"), &tokens);
    chooser(ui, cx, Page::Flasks);
    ui.add_space(STEP);
    if button::plain(ui, &cx.label("flasks-add"), &tokens).clicked() {
        add::add(cx);
    }
    cx.folded(ui, "plan-batch", plan::show);
    let chosen = chosen(cx);
    if let Some(flask) = chosen {
        one(ui, cx, flask);
    }
    ui.add_space(3.0 * STEP);
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Flasks);
}

/// What a page says that needs a flask and has none.
pub(super) fn nothing(ui: &mut Ui, cx: &mut Cx<'_>, what: &str) {
    let tokens = cx.tokens;
    heading::empty(ui, &cx.label(what), &cx.label("flasks-first"), &tokens);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("flasks-add"), &tokens).clicked() {
            add::add(cx);
        }
        if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
    });
}

/// Changes one flask under a name.
pub(super) fn change(cx: &mut Cx<'_>, key: &str, id: FlaskId, change: impl FnOnce(&mut Flask) + 'static) {
    cx.edit(key, move |job| {
        if let Some(flask) = job.flasks.iter_mut().find(|flask| flask.id == id) {
            change(flask);
        }
    });
}

/// The chosen flask.
pub(super) fn chosen<'a>(cx: &Cx<'a>) -> Option<&'a Flask> {
    let job = cx.job;
    cx.view.flask.and_then(|id| job.flasks.iter().find(|flask| flask.id == id))
}

/// Its figures.
pub(super) fn figures_of<'a>(cx: &Cx<'a>, id: FlaskId) -> Option<&'a FlaskFigures> {
    let report = &cx.computed.report;
    report.flasks.iter().find(|figures| figures.id == id)
}

/// All flasks with the worst mark each has on a page; one of them is chosen.
pub(super) fn chooser(ui: &mut Ui, cx: &mut Cx<'_>, page: Page) {
    let job = cx.job;
    let line = |place: usize| {
        let flask = &job.flasks[place];
        let size = flask.vessel.as_ref().map_or_else(|| cx.label("flasks-no-vessel"), |id| size_of(cx, id));
        let figures = cx.computed.report.flasks.get(place).filter(|figures| figures.id == flask.id);
        let alloy = figures.and_then(|figures| figures.alloy.as_ref()).map(|id| names::entry(cx, id));
        list::Line {
            name: names::flask(cx, flask.id),
            about: vec![size, alloy.unwrap_or_else(|| cx.label("flasks-no-alloy"))],
            worst: worst(cx, flask.id, page),
            chosen: cx.view.flask == Some(flask.id),
        }
    };
    let chosen = ui.scope(|ui| list::list(ui, cx, page.key(), job.flasks.len(), line)).inner;
    if let Some(place) = chosen {
        let id = job.flasks[place].id;
        cx.look(move |view| view.flask = Some(id));
    }
}

fn worst(cx: &Cx<'_>, id: FlaskId, page: Page) -> Option<Weight> {
    let here = cx.computed.report.findings.iter().filter(|found| {
        found.accepted.is_none()
            && matches!(found.place, Place::Flask(at) | Place::Mix(at, _) if at == id)
            && Page::of_finding(found.kind, found.place) == page
    });
    here.map(|found| found.kind.weight).min()
}

/// Diameter and height of a steel, as every flask is called.
fn size_of(cx: &Cx<'_>, id: &crate::stock::EntryId) -> String {
    let vessel = cx.computed.shelves.job.get::<crate::stock::Flask>(id.as_str());
    vessel.map_or_else(|| names::entry(cx, id), |vessel| cx.say("flasks-size", &[("size", vessel.to_string().into())]))
}

/// The flask's rows, with its drawing beside them or under them.
fn one(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let tokens = cx.tokens;
    heading::group(ui, &names::flask(cx, flask.id), &tokens);
    if ui.available_width() < 720.0 {
        rows(ui, cx, flask);
        view::show(ui, cx, flask, ui.available_width());
    } else {
        let width = ui.available_width();
        ui.horizontal_top(|ui| {
            ui.vertical(|ui| {
                ui.set_width(400.0);
                rows(ui, cx, flask);
            });
            ui.vertical(|ui| {
                ui.set_width(width - 416.0);
                view::show(ui, cx, flask, width - 416.0);
            });
        });
    }
    let id = flask.id;
    ui.add_space(2.0 * STEP);
    take_out(ui, cx, ("flasks-remove", "edit-flasks-remove"), Place::Flask(id), move |job| job.flasks.retain(|flask| flask.id != id));
}

fn rows(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let tokens = cx.tokens;
    fields::what(ui, cx, flask);
    let Some(figures) = figures_of(cx, flask.id) else { return };
    heading::group(ui, &cx.label("flasks-metal"), &tokens);
    let metal = &figures.metal;
    for (key, id) in [("flasks-tree-metal", metal.tree), ("flasks-button", metal.button), ("flasks-charge", metal.on_balance)] {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW));
    }
    fields::metal(ui, cx, flask, figures);
    heading::group(ui, &cx.label("flasks-room"), &tokens);
    let room = &figures.room;
    let rooms = [
        ("flasks-wall", room.wall),
        ("flasks-wall-needed", room.wall_needed),
        ("flasks-above", room.top),
        ("flasks-above-needed", room.top_needed),
    ];
    for (key, id) in rooms {
        if let Some(id) = id {
            row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW));
        }
    }
    if room.wall.is_none() || room.top.is_none() {
        heading::says(ui, &view::missing(cx, flask, figures), &tokens);
    }
    fields::more(ui, cx, flask);
}
