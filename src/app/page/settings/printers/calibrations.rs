//! Calibrations: which printer with which resin, what was measured, what comes of it, and whether it counts.

use eframe::egui::{Checkbox, Id, Ui};

use super::{gauges, lines};
use crate::app::cx::Cx;
use crate::app::page::settings::kept::{keep, kept};
use crate::app::theme::STEP;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::calc::accepted;
use crate::job::Calibration;
use crate::quantity::{Finite, Kind};
use crate::stock::PatternMaterial;

const WIDE: f32 = 240.0;

fn chosen_id() -> Id {
    Id::unique("calibrations-chosen")
}

/// Shows them under the printers.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    ui.add_space(2.0 * STEP);
    heading::group(ui, &cx.label("calibrations"), &tokens);
    heading::says(ui, &cx.label("calibrations-says"), &tokens);
    let all = &cx.studio.calibrations;
    let last = all.len().checked_sub(1);
    let chosen = kept(ui, chosen_id()).parse::<usize>().ok().filter(|at| *at < all.len()).or(last);
    rows(ui, "calibrations", all.len(), |ui, place| {
        let calibration = &all[place];
        if choose(ui, cx, chosen == Some(place), &name_of(cx, place, calibration), &about(cx, place, calibration)) {
            keep(ui, chosen_id(), place.to_string());
        }
    });
    if button::plain(ui, &cx.label("calibration-add"), &tokens).clicked() {
        keep(ui, chosen_id(), all.len().to_string());
        let printer = cx.studio.printers.first();
        let name = printer.map(|printer| printer.name.clone()).unwrap_or_default();
        let material = printer.and_then(|printer| printer.settings.first()).and_then(|setting| setting.material.clone());
        let on = Some(cx.setting.at);
        let fresh = Calibration { printer: name, material, on, ..Calibration::default() };
        cx.edit_studio("edit-calibration-add", move |studio| studio.calibrations.push(fresh));
    }
    if let Some(at) = chosen {
        let calibration = cx.studio.calibrations[at].clone();
        ui.add_space(STEP);
        what(ui, cx, at, &calibration);
        gauges::show(ui, cx, at, &calibration);
        lines::show(ui, cx, at);
        counts(ui, cx, at, &calibration);
    }
}

fn name_of(cx: &Cx<'_>, at: usize, calibration: &Calibration) -> String {
    let name = calibration.name.trim();
    if name.is_empty() { cx.say("calibration-of", &[("number", (at + 1).to_string().into())]) } else { name.to_owned() }
}

/// Printer, day, and whether it is the one that counts.
fn about(cx: &Cx<'_>, at: usize, calibration: &Calibration) -> String {
    let counts = accepted(cx.studio, &calibration.printer, calibration.material.as_ref()).first().is_some_and(|(newest, _)| *newest == at);
    let state = match (counts, calibration.accepted) {
        (true, _) => "calibration-counts",
        (false, true) => "calibration-older",
        (false, false) => "calibration-not-accepted",
    };
    let day = calibration.on.map(|on| on.to_string());
    [day, Some(cx.label(state))].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn what(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, calibration: &Calibration) {
    let tokens = cx.tokens;
    let label = cx.label("calibration-name");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("calibration-name", at)), &label, &calibration.name, WIDE)) {
        edit(cx, at, move |calibration| calibration.name = name);
    }
    let label = cx.label("calibration-printer");
    let printers: Vec<(String, String)> = cx.studio.printers.iter().map(|printer| (printer.name.clone(), printer.name.clone())).collect();
    let place = (Id::unique(("calibration-printer", at)), label.as_str(), WIDE);
    let now = Some(&calibration.printer).filter(|name| !name.is_empty());
    if let Some(printer) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, now, &printers, true)) {
        edit(cx, at, move |calibration| calibration.printer = printer.unwrap_or_default());
    }
    let label = cx.label("calibration-material");
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    let place = (Id::unique(("calibration-material", at)), label.as_str(), WIDE);
    if let Some(material) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, calibration.material.as_ref(), words)) {
        edit(cx, at, move |calibration| calibration.material = material);
    }
    let label = cx.label("calibration-on");
    if let Some(on) = row(ui, &label, &tokens, |ui| day(ui, cx, Id::unique(("calibration-on", at)), &label, calibration.on, 132.0)) {
        edit(cx, at, move |calibration| calibration.on = on);
    }
    let label = cx.label("calibration-wanted");
    let field = Number::new(Id::unique(("calibration-wanted", at)), &label, Kind::Length).now(calibration.wanted_mm.map(Finite::get));
    if let Some(wanted) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        edit(cx, at, move |calibration| calibration.wanted_mm = wanted);
    }
}

/// Does it count, until when, and what else is to be said.
fn counts(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, calibration: &Calibration) {
    let tokens = cx.tokens;
    ui.add_space(STEP);
    let mut accepted = calibration.accepted;
    if ui.add(Checkbox::new(&mut accepted, cx.label("calibration-accept"))).changed() {
        edit(cx, at, move |calibration| calibration.accepted = accepted);
    }
    let label = cx.label("calibration-recheck");
    let id = Id::unique(("calibration-recheck", at));
    if let Some(recheck) = row(ui, &label, &tokens, |ui| day(ui, cx, id, &label, calibration.recheck, 132.0)) {
        edit(cx, at, move |calibration| calibration.recheck = recheck);
    }
    let label = cx.label("calibration-notes");
    let id = Id::unique(("calibration-notes", at));
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, id, &label, &calibration.notes, 320.0)) {
        edit(cx, at, move |calibration| calibration.notes = said);
    }
    if button::outlined(ui, &cx.label("calibration-take-out"), &tokens, true).clicked() {
        cx.edit_studio("edit-calibration-out", move |studio| {
            if at < studio.calibrations.len() {
                studio.calibrations.remove(at);
            }
        });
    }
}

/// Changes a calibration.
pub fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Calibration) + 'static) {
    cx.edit_studio("edit-calibration", move |studio| {
        if let Some(calibration) = studio.calibrations.get_mut(at) {
            change(calibration);
        }
    });
}
