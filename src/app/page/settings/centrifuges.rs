//! The studio's spinning machines: speeds, radii, weights and limits, by their manuals.

use eframe::egui::{Id, Ui};

use super::sections::heads;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::job::Centrifuge;
use crate::quantity::{Finite, Grams, Kind};

/// Width of a number.
const WIDE: f32 = 104.0;

/// Where a number of a machine stands and goes.
type Typed = (&'static str, Kind, fn(&Centrifuge) -> Option<Finite>, fn(&mut Centrifuge, Option<Finite>));
/// The same of a weight.
type Weighed = (&'static str, fn(&Centrifuge) -> Option<Grams>, fn(&mut Centrifuge, Option<Grams>));

const SPEEDS: [Typed; 4] = [
    ("centrifuges-rpm", Kind::Rotation, |machine| machine.rpm, |machine, said| machine.rpm = said),
    ("centrifuges-most-rpm", Kind::Rotation, |machine| machine.most_rpm, |machine, said| machine.most_rpm = said),
    ("centrifuges-widest", Kind::Length, |machine| machine.widest_mm, |machine, said| machine.widest_mm = said),
    ("centrifuges-highest", Kind::Length, |machine| machine.highest_mm, |machine, said| machine.highest_mm = said),
];
const RADII: [Typed; 5] = [
    ("centrifuges-metal", Kind::Length, |machine| machine.metal_mm, |machine, said| machine.metal_mm = said),
    ("centrifuges-pattern", Kind::Length, |machine| machine.pattern_mm, |machine, said| machine.pattern_mm = said),
    ("centrifuges-flask", Kind::Length, |machine| machine.flask_mm, |machine, said| machine.flask_mm = said),
    ("centrifuges-crucible-at", Kind::Length, |machine| machine.crucible_mm, |machine, said| machine.crucible_mm = said),
    ("centrifuges-counterweight-at", Kind::Length, |machine| machine.counterweight_mm, |machine, said| machine.counterweight_mm = said),
];
const WEIGHTS: [Weighed; 4] = [
    ("centrifuges-crucible", |machine| machine.crucible, |machine, said| machine.crucible = said),
    ("centrifuges-cradle", |machine| machine.cradle, |machine, said| machine.cradle = said),
    ("centrifuges-most-counterweight", |machine| machine.most_counterweight, |machine, said| machine.most_counterweight = said),
    ("centrifuges-heaviest", |machine| machine.heaviest, |machine, said| machine.heaviest = said),
];

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("centrifuges-says"), &tokens);
    for (at, machine) in cx.studio.centrifuges.iter().enumerate() {
        one(ui, cx, at, machine);
        ui.add_space(2.0 * STEP);
    }
    if button::plain(ui, &cx.label("centrifuges-add"), &tokens).clicked() {
        cx.edit_studio("edit-centrifuges-add", |studio| studio.centrifuges.push(Centrifuge::default()));
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, machine: &Centrifuge) {
    let tokens = cx.tokens;
    let label = cx.label("centrifuges-name");
    let name = numbered(&label, at);
    if let Some(said) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("centrifuge-name", at)), &name, &machine.name, 200.0)) {
        edit(cx, at, move |machine| machine.name = said);
    }
    numbers(ui, cx, at, machine, &SPEEDS);
    heading::says(ui, &cx.label("centrifuges-radii"), &tokens);
    numbers(ui, cx, at, machine, &RADII);
    heads(ui, &WEIGHTS.map(|(key, ..)| (cx.label(key), WIDE)), &tokens);
    ui.horizontal(|ui| {
        for (key, get, set) in WEIGHTS {
            let name = numbered(&cx.label(key), at);
            let field = Number::new(Id::unique((key, at)), &name, Kind::Mass).now(get(machine).map(Grams::to_f64)).width(WIDE);
            if let Some(said) = grams(ui, cx, &field) {
                edit(cx, at, move |machine| set(machine, said));
            }
        }
    });
    let label = cx.label("centrifuges-notes");
    let name = numbered(&label, at);
    if let Some(said) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("centrifuge-notes", at)), &name, &machine.notes, 320.0)) {
        edit(cx, at, move |machine| machine.notes = said);
    }
    let name = numbered(&cx.label("centrifuges-take-out"), at);
    if button::link(ui, &cx.label("row-take-out"), &tokens).accessible_name(name).clicked() {
        cx.edit_studio("edit-centrifuges-out", move |studio| {
            if at < studio.centrifuges.len() {
                studio.centrifuges.remove(at);
            }
        });
    }
}

fn numbers(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, machine: &Centrifuge, columns: &[Typed]) {
    let tokens = cx.tokens;
    let labels: Vec<(String, f32)> = columns.iter().map(|(key, ..)| (cx.label(key), WIDE)).collect();
    heads(ui, &labels, &tokens);
    ui.horizontal(|ui| {
        for (key, kind, get, set) in columns.iter().copied() {
            let name = numbered(&cx.label(key), at);
            let field = Number::new(Id::unique((key, at)), &name, kind).now(get(machine).map(Finite::get)).width(WIDE);
            if let Some(said) = number(ui, cx, &field) {
                edit(cx, at, move |machine| set(machine, said));
            }
        }
    });
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Centrifuge) + 'static) {
    cx.edit_studio("edit-centrifuges", move |studio| {
        if let Some(machine) = studio.centrifuges.get_mut(at) {
            change(machine);
        }
    });
}
