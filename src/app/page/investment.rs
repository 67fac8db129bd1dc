//! Investment: how much powder and water a flask takes, in how many mixes, by which clock and under which vacuum.

mod done;

use eframe::egui::{Id, Label, RichText, Ui};

use super::flasks::{self, change};
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::Page;
use crate::app::theme::{STEP, size};
use crate::app::widget::choice::entry_of;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::mark::mark;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{finding, heading};
use crate::calc::{FlaskFigures, Id as FigureId, Weight};
use crate::job::{Flask, FlaskId};
use crate::paper::words::weight_words;
use crate::quantity::{Finite, Kind, Style, print};
use crate::stock::{Hazard, Liquid, Powder};

/// Width of a chooser.
const WIDE: f32 = 240.0;

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    if cx.job.flasks.is_empty() {
        heading::title(ui, &cx.label("stage-investment"), "", &tokens);
        flasks::nothing(ui, cx, "invest-what");
        return;
    }
    heading::title(ui, &cx.label("stage-investment"), &cx.label("invest-about"), &tokens);
    flasks::chooser(ui, cx, Page::Investment);
    if let Some(flask) = flasks::chosen(cx)
        && let Some(figures) = flasks::figures_of(cx, flask.id)
    {
        heading::group(ui, &names::flask(cx, flask.id), &tokens);
        if ui.available_width() < 720.0 {
            left(ui, cx, flask, figures);
            right(ui, cx, figures);
        } else {
            ui.horizontal_top(|ui| {
                ui.vertical(|ui| {
                    ui.set_width(410.0);
                    left(ui, cx, flask, figures);
                });
                ui.vertical(|ui| right(ui, cx, figures));
            });
        }
        cautions(ui, cx, flask);
        done::show(ui, cx, flask, figures);
    }
    ui.add_space(3.0 * STEP);
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Investment);
}

fn left(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let (tokens, mix) = (cx.tokens, &figures.mix);
    powder(ui, cx, flask);
    fields(ui, cx, flask, figures);
    heading::group(ui, &cx.label("invest-weigh"), &tokens);
    for (key, id, look) in [
        ("invest-powder", mix.powder, Look::ROW.powder()),
        ("invest-water", mix.water, Look::ROW.powder()),
        ("invest-mixes", mix.mixes, Look::ROW),
        ("invest-powder-each", mix.powder_of_mix, Look::ROW.powder()),
        ("invest-water-each", mix.water_of_mix, Look::ROW.powder()),
        ("invest-slurry", mix.slurry, Look::ROW),
        ("invest-density", mix.slurry_density, Look::ROW),
    ] {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, look));
    }
}

fn powder(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let (tokens, id) = (cx.tokens, flask.id);
    let label = cx.label("invest-powder");
    let words = |powder: &Powder| (powder.id.clone(), powder.name.clone());
    let place = (Id::unique(("invest-powder", id.0)), label.as_str(), WIDE);
    if let Some(powder) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, flask.powder.as_ref(), words)) {
        change(cx, "edit-invest-powder", id, move |flask| flask.powder = powder);
    }
    let label = cx.label("invest-lot");
    let field = Id::unique(("invest-lot", id.0));
    if let Some(lot) = row(ui, &label, &tokens, |ui| text(ui, cx, field, &label, &flask.powder_lot, 132.0)) {
        change(cx, "edit-invest-lot", id, move |flask| flask.powder_lot = lot);
    }
}

/// Ratio, spill, bowl, water. A default is the term that the figure rests on.
fn fields(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let (id, mix, book) = (flask.id, &figures.mix, &cx.computed.book);
    let term = |of: FigureId, nth: usize| book.figure(of).terms.get(nth).and_then(|term| book.number(*term));
    let site = book.number(cx.computed.report.site.water);
    if let Some(ratio) = field(ui, cx, id, "invest-ratio", Kind::Ratio, (flask.ratio, book.number(mix.ratio))) {
        change(cx, "edit-invest-ratio", id, move |flask| flask.ratio = ratio);
    }
    if let Some(spill) = field(ui, cx, id, "invest-spill", Kind::Ratio, (flask.spill_share, term(mix.slurry, 3))) {
        change(cx, "edit-invest-spill", id, move |flask| flask.spill_share = spill);
    }
    if let Some(bowl) = field(ui, cx, id, "invest-bowl", Kind::Volume, (flask.bowl_cm3, term(mix.mixes, 2))) {
        change(cx, "edit-invest-bowl", id, move |flask| flask.bowl_cm3 = bowl);
    }
    if let Some(water) = field(ui, cx, id, "invest-water-at", Kind::Temperature, (flask.water_c, site)) {
        change(cx, "edit-invest-water", id, move |flask| flask.water_c = water);
    }
}

fn field(
    ui: &mut Ui,
    cx: &Cx<'_>,
    id: FlaskId,
    key: &'static str,
    kind: Kind,
    (now, default): (Option<Finite>, Option<f64>),
) -> Option<Option<Finite>> {
    let label = cx.label(key);
    let field = Number::new(Id::unique((key, id.0)), &label, kind).now(now.map(Finite::get)).default(default.filter(|_| now.is_none()));
    row(ui, &label, &cx.tokens, |ui| number(ui, cx, &field))
}

/// The clock and the vacuum.
fn right(ui: &mut Ui, cx: &mut Cx<'_>, figures: &FlaskFigures) {
    let (tokens, mix) = (cx.tokens, &figures.mix);
    heading::group(ui, &cx.label("invest-clock"), &tokens);
    ui.horizontal(|ui| {
        ui.add_space(108.0);
        for key in ["invest-takes", "invest-over"] {
            ui.allocate_ui(eframe::egui::vec2(118.0, 16.0), |ui| {
                ui.set_min_width(118.0);
                ui.label(RichText::new(cx.label(key)).size(12.0).color(tokens.ink2));
            });
        }
    });
    for ((key, step), over) in
        ["invest-step-mix", "invest-step-bowl", "invest-step-pour", "invest-step-flask"].into_iter().zip(mix.steps).zip(mix.over)
    {
        ui.horizontal(|ui| {
            ui.allocate_ui(eframe::egui::vec2(100.0, 28.0), |ui| {
                ui.set_min_width(100.0);
                ui.add(Label::new(RichText::new(cx.label(key)).color(tokens.ink)).truncate());
            });
            figure(ui, cx, step, Look::ROW.width(118.0));
            figure(ui, cx, over, Look::ROW.width(118.0));
        });
    }
    row(ui, &cx.label("invest-finish"), &tokens, |ui| figure(ui, cx, mix.finish_by, Look::ROW));
    for (key, id) in [("invest-by", figures.mix_by), ("invest-invested", figures.invested_by)] {
        if let Some(id) = id {
            row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(170.0)));
        }
    }
    if figures.mix_by.is_none() {
        heading::says(ui, &cx.label("invest-no-load"), &tokens);
    }
    heading::group(ui, &cx.label("invest-vacuum"), &tokens);
    row(ui, &cx.label("invest-gauge"), &tokens, |ui| figure(ui, cx, mix.gauge, Look::ROW));
    other_gauge(ui, cx, mix.gauge);
    heading::says(ui, &cx.label("invest-gauge-says"), &tokens);
}

/// The same reading on the other kind of gauge.
fn other_gauge(ui: &mut Ui, cx: &Cx<'_>, gauge: FigureId) {
    let Some(reading) = cx.computed.book.number(gauge) else { return };
    let other = if cx.style.units.of(Kind::Vacuum).symbol == "inHg" { "kPa" } else { "inHg" };
    let Some(units) = cx.style.units.with(Kind::Vacuum, other) else { return };
    let words = print(reading, Kind::Vacuum, &Style { units, ..*cx.style }).to_string();
    row(ui, &cx.label("invest-gauge-other"), &cx.tokens, |ui| ui.label(RichText::new(words).size(size::BODY).color(cx.tokens.ink)));
}

/// What the powder and the vacuum can do to a person.
fn cautions(ui: &mut Ui, cx: &Cx<'_>, flask: &Flask) {
    let tokens = cx.tokens;
    let powder = flask.powder.as_ref().and_then(|id| cx.computed.shelves.job.get::<Powder>(id.as_str()));
    let silica = powder.is_none_or(|powder| powder.hazards.contains(&Hazard::Silica));
    let liquid = powder.is_some_and(|powder| powder.liquid == Liquid::SpecialLiquid);
    heading::group(ui, &cx.label("invest-mind"), &tokens);
    let word = weight_words(Weight::Caution, cx.texts);
    for (_, key) in [
        (silica, "caution-silica-mix"),
        (liquid, "caution-special-liquid"),
        (powder.is_none(), "caution-powder-unknown"),
        (true, "caution-bell-jar"),
    ]
    .into_iter()
    .filter(|(holds, _)| *holds)
    {
        ui.horizontal_top(|ui| {
            ui.add_space(2.0);
            mark(ui, Weight::Caution, 13.0, &word, &tokens);
            ui.add(Label::new(RichText::new(cx.label(key)).size(13.0).color(tokens.ink2)).wrap());
        });
    }
}
