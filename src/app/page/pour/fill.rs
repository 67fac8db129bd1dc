//! How the metal gets in: what drives it, how fine it goes, whether it is there before the thinnest wall has frozen, and the machine's balance.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::page::flasks::change;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::calc::{self, FlaskFigures};
use crate::job::{Drive, Flask, FlaskId, Spin};
use crate::quantity::{Finite, Grams, Kind};

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    match flask.drive {
        Drive::Vacuum => vacuum(ui, cx, flask),
        Drive::Centrifugal => spin(ui, cx, flask, figures),
        Drive::Gravity => {}
    }
    let fill = &figures.fill;
    let tokens = cx.tokens;
    shown(ui, cx, "pour-fill-pressure", Some(fill.pressure));
    shown(ui, cx, "pour-fill-detail", Some(fill.detail));
    shown(ui, cx, "pour-fill-thinnest", fill.thinnest.map(|[wall, _]| wall));
    shown(ui, cx, "pour-fill-thinnest-asks", fill.thinnest.map(|[_, pressure]| pressure));
    match fill.filling {
        Some(filling) => shown(ui, cx, "pour-fill-time", Some(filling)),
        None => drop(heading::says(ui, &cx.label("pour-fill-time-unknown"), &tokens)),
    }
    shown(ui, cx, "pour-fill-freezes", fill.thin_freezes);
    shown(ui, cx, "pour-fill-heavy", fill.heavy_freezes);
    if fill.never_freezes {
        heading::says(ui, &cx.label("pour-fill-never"), &tokens);
    }
}

fn shown(ui: &mut Ui, cx: &mut Cx<'_>, key: &str, id: Option<calc::Id>) {
    if let Some(id) = id {
        let (label, tokens) = (cx.label(key), cx.tokens);
        row(ui, &label, &tokens, |ui| figure(ui, cx, id, Look::ROW));
    }
}

fn vacuum(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let (tokens, id) = (cx.tokens, flask.id);
    let label = cx.label("pour-vacuum");
    let field = Number::new(Id::unique(("flask-vacuum", id.0)), &label, Kind::Vacuum).now(flask.vacuum_kpa.map(Finite::get));
    let usual = flask.vacuum_kpa.is_none().then_some(calc::VACUUM_KPA);
    if let Some(gauge) = row(ui, &label, &tokens, |ui| number(ui, cx, &field.default(usual).width(100.0))) {
        change(cx, "edit-pour-vacuum", id, move |flask| flask.vacuum_kpa = gauge);
    }
}

/// A number of the spin: its name, what it measures, what was typed, what rules, and where it goes.
type Typed = (&'static str, Kind, Option<Finite>, calc::Id, fn(&mut Spin, Option<Finite>));
/// A weight of the spin.
type Weighed = (&'static str, Option<Grams>, Option<calc::Id>, fn(&mut Spin, Option<Grams>));

fn spin(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let (tokens, id, spin) = (cx.tokens, flask.id, &flask.spin);
    heading::group(ui, &cx.label("pour-spin"), &tokens);
    machine(ui, cx, id, spin);
    let Some(found) = figures.spin else { return };
    let typed: [Typed; 3] = [
        ("pour-spin-rpm", Kind::Rotation, spin.rpm, found.speed, |spin, said| spin.rpm = said),
        ("pour-spin-metal", Kind::Length, spin.metal_mm, found.metal_radius, |spin, said| spin.metal_mm = said),
        ("pour-spin-pattern", Kind::Length, spin.pattern_mm, found.pattern_radius, |spin, said| spin.pattern_mm = said),
    ];
    for (key, kind, now, rules, set) in typed {
        let label = cx.label(key);
        let default = cx.computed.book.number(rules).filter(|_| now.is_none());
        let field = Number::new(Id::unique((key, id.0)), &label, kind).now(now.map(Finite::get)).default(default).width(100.0);
        if let Some(said) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            change(cx, "edit-pour-spin", id, move |flask| set(&mut flask.spin, said));
        }
    }
    let weighed: [Weighed; 2] = [
        ("pour-spin-loaded", spin.loaded, Some(found.loaded), |spin, said| spin.loaded = said),
        ("pour-spin-set", spin.counterweight, None, |spin, said| spin.counterweight = said),
    ];
    for (key, now, rules, set) in weighed {
        let label = cx.label(key);
        let default = rules.and_then(|id| cx.computed.book.number(id)).filter(|_| now.is_none());
        let field = Number::new(Id::unique((key, id.0)), &label, Kind::Mass).now(now.map(Grams::to_f64)).default(default).width(100.0);
        if let Some(said) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
            change(cx, "edit-pour-spin", id, move |flask| set(&mut flask.spin, said));
        }
    }
    shown(ui, cx, "pour-spin-needed", Some(found.counterweight));
    shown(ui, cx, "pour-spin-difference", found.difference);
    let melt = cx.computed.report.melts.iter().find(|melt| melt.flasks.contains(&id));
    let (least, most) = melt.map_or((None, None), |melt| (melt.least, melt.most));
    shown(ui, cx, "pour-spin-least", least);
    shown(ui, cx, "pour-spin-most", most);
}

/// The studio's machines, where there are several to choose from.
fn machine(ui: &mut Ui, cx: &mut Cx<'_>, id: FlaskId, spin: &Spin) {
    let tokens = cx.tokens;
    let machines = &cx.studio.centrifuges;
    if machines.is_empty() {
        heading::says(ui, &cx.label("pour-spin-machine-none"), &tokens);
        return;
    }
    let label = cx.label("pour-spin-machine");
    let mut options: Vec<(String, String)> = machines.iter().map(|machine| (machine.name.clone(), machine.name.clone())).collect();
    options.retain(|(name, _)| !name.trim().is_empty());
    let only = Some(&spin.machine).filter(|name| !name.trim().is_empty()).or(match machines.as_slice() {
        [only] => Some(&only.name),
        _ => None,
    });
    let place = (Id::unique(("flask-machine", id.0)), label.as_str(), 200.0);
    if let Some(machine) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, only, &options, true)) {
        change(cx, "edit-pour-spin", id, move |flask| flask.spin.machine = machine.unwrap_or_default());
    }
}
