//! Samples weighed in water: what their materials' densities come to, and how sure that is.

use eframe::egui::{Id, RichText, Ui};

use super::sections::heads;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::entry_of;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::calc::WeighingFigures;
use crate::job::WaterWeighing;
use crate::quantity::{Finite, Grams, Kind};
use crate::stock::{Entry, PatternMaterial, Sourced, Trust, put_own};

/// Width of a reading.
const READING: f32 = 100.0;
/// The readings of a row.
const COLUMNS: [&str; 4] = ["weighed-dry", "weighed-sinker", "weighed-both", "weighed-water"];

/// Sets a reading.
type Set = fn(&mut WaterWeighing, Option<Grams>);

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("weighed-says"), &tokens);
    for (at, weighing) in cx.studio.water_weighings.iter().enumerate() {
        ui.horizontal(|ui| what(ui, cx, at, weighing));
        heads(ui, &COLUMNS.map(|key| (cx.label(key), READING)), &tokens);
        ui.horizontal(|ui| readings(ui, cx, at, weighing));
        let found = cx.computed.report.weighings.iter().find(|found| found.row == at).copied();
        ui.horizontal_wrapped(|ui| result(ui, cx, at, weighing, found));
        remarks(ui, cx, at, weighing);
        ui.add_space(2.0 * STEP);
    }
    if button::plain(ui, &cx.label("weighed-add"), &tokens).clicked() {
        let on = Some(cx.setting.at);
        cx.edit_studio("edit-weighed-add", move |studio| studio.water_weighings.push(WaterWeighing { on, ..WaterWeighing::default() }));
    }
}

fn what(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, weighing: &WaterWeighing) {
    let name = numbered(&cx.label("weighed-material"), at);
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    let place = (Id::unique(("weighed-material", at)), name.as_str(), 220.0);
    if let Some(material) = entry_of(ui, cx, place, weighing.material.as_ref(), words) {
        edit(cx, at, move |weighing| weighing.material = material);
    }
    let name = numbered(&cx.label("weighed-on"), at);
    if let Some(on) = day(ui, cx, Id::unique(("weighed-on", at)), &name, weighing.on, 98.0) {
        edit(cx, at, move |weighing| weighing.on = on);
    }
}

fn remarks(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, weighing: &WaterWeighing) {
    let (label, tokens) = (cx.label("weighed-notes"), cx.tokens);
    let name = numbered(&label, at);
    if let Some(said) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("weighed-notes", at)), &name, &weighing.notes, 240.0)) {
        edit(cx, at, move |weighing| weighing.notes = said);
    }
}

fn readings(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, weighing: &WaterWeighing) {
    let [dry, sinker, both, water] = COLUMNS;
    let weights: [(&str, Option<Grams>, Set); 3] = [
        (dry, weighing.dry, |weighing, grams| weighing.dry = grams),
        (sinker, weighing.sinker_in_water, |weighing, grams| weighing.sinker_in_water = grams),
        (both, weighing.both_in_water, |weighing, grams| weighing.both_in_water = grams),
    ];
    for (key, now, set) in weights {
        let name = numbered(&cx.label(key), at);
        let field = Number::new(Id::unique((key, at)), &name, Kind::Mass).now(now.map(Grams::to_f64)).width(READING);
        if let Some(mass) = grams(ui, cx, &field) {
            edit(cx, at, move |weighing| set(weighing, mass));
        }
    }
    let name = numbered(&cx.label(water), at);
    let field = Number::new(Id::unique((water, at)), &name, Kind::Temperature).now(weighing.water_c.map(Finite::get));
    if let Some(water_c) = number(ui, cx, &field.default(Some(20.0)).width(READING)) {
        edit(cx, at, move |weighing| weighing.water_c = water_c);
    }
}

fn result(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, weighing: &WaterWeighing, found: Option<WeighingFigures>) {
    let tokens = cx.tokens;
    if let Some(found) = found {
        figure(ui, cx, found.density, Look::ROW.width(120.0));
        ui.label(RichText::new("±").color(tokens.ink2));
        figure(ui, cx, found.within, Look::ROW.width(110.0));
        let words = cx.label("weighed-take");
        let taken = own_density(cx, weighing, found);
        let name = numbered(&words, at);
        if button::outlined(ui, &words, &tokens, taken.is_some()).accessible_name(name).clicked()
            && let Some((stands, own)) = taken
        {
            cx.edit_studio("edit-weighed-take", move |studio| put_own(&mut studio.shelf, &stands, own));
        }
    }
    let name = numbered(&cx.label("weighed-take-out"), at);
    if button::link(ui, &cx.label("row-take-out"), &tokens).accessible_name(name).clicked() {
        cx.edit_studio("edit-weighed-out", move |studio| {
            if at < studio.water_weighings.len() {
                studio.water_weighings.remove(at);
            }
        });
    }
}

/// The material's entry as it stands, and the same with the density that was weighed; `None` where it has that density already.
fn own_density(cx: &Cx<'_>, weighing: &WaterWeighing, found: WeighingFigures) -> Option<(Entry, Entry)> {
    let stands = cx.computed.shelves.today.entry(weighing.material.as_ref()?.as_str())?;
    let Entry::PatternMaterial(mut material) = Entry::clone(stands) else { return None };
    // No balance of a studio is surer than the fourth figure.
    let weighed = (cx.computed.book.number(found.density)? * 1000.0).round() / 1000.0;
    if (material.density_g_cm3.value - weighed).abs() < 5e-4 {
        return None;
    }
    let source = match weighing.on {
        Some(on) => cx.say("weighed-source", &[("on", on.to_string().into())]),
        None => cx.label("weighed-source-undated"),
    };
    material.density_g_cm3 = Sourced::new(weighed, source, Trust::Studio)?;
    Some((Entry::clone(stands), Entry::PatternMaterial(material)))
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut WaterWeighing) + 'static) {
    cx.edit_studio("edit-weighed", move |studio| {
        if let Some(weighing) = studio.water_weighings.get_mut(at) {
            change(weighing);
        }
    });
}
