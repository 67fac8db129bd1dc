//! Name and letterhead of the studio, its balance and its bowl.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::calc::LEAST_WALL_MM;
use crate::quantity::{Finite, Grams, Kind};
use crate::stock::{EntryId, MarkingLaw};

/// Width of a line of the letterhead.
const WIDE: f32 = 300.0;

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    letterhead(ui, cx);
    let tokens = cx.tokens;
    let label = cx.label("studio-balance");
    row(ui, &label, &tokens, |ui| {
        let now = cx.studio.balance_step.map(Grams::to_f64);
        if let Some(step) = grams(ui, cx, &Number::new(Id::unique("studio-balance"), &label, Kind::Mass).now(now)) {
            cx.edit_studio("edit-studio-balance", move |studio| studio.balance_step = step);
        }
    });
    let label = cx.label("studio-least-wall");
    row(ui, &label, &tokens, |ui| {
        let now = cx.studio.least_wall_mm.map(Finite::get);
        let field = Number::new(Id::unique("studio-least-wall"), &label, Kind::Length).now(now).default(Some(LEAST_WALL_MM));
        if let Some(wall) = number(ui, cx, &field) {
            cx.edit_studio("edit-studio-least-wall", move |studio| studio.least_wall_mm = wall);
        }
    });
    let label = cx.label("studio-marking");
    let laws: Vec<(EntryId, String)> =
        cx.computed.shelves.today.all::<MarkingLaw>().map(|law| (law.id.clone(), law.name.clone())).collect();
    let place = (Id::unique("studio-marking"), label.as_str(), WIDE);
    if let Some(said) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, cx.studio.marking.as_ref(), &laws, true)) {
        cx.edit_studio("edit-studio-marking", move |studio| studio.marking = said);
    }
    let label = cx.label("studio-bowl");
    row(ui, &label, &tokens, |ui| {
        let now = cx.studio.bowl_cm3.map(Finite::get);
        if let Some(bowl) = number(ui, cx, &Number::new(Id::unique("studio-bowl"), &label, Kind::Volume).now(now)) {
            cx.edit_studio("edit-studio-bowl", move |studio| studio.bowl_cm3 = bowl);
        }
    });
}

fn letterhead(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let label = cx.label("studio-name");
    row(ui, &label, &tokens, |ui| {
        if let Some(name) = text(ui, cx, Id::unique("studio-name"), &label, &cx.studio.name, WIDE) {
            cx.edit_studio("edit-studio-name", move |studio| studio.name = name);
        }
    });
    let label = cx.label("studio-picture");
    row(ui, &label, &tokens, |ui| {
        if let Some(path) = text(ui, cx, Id::unique("studio-picture"), &label, &cx.studio.letterhead, WIDE) {
            cx.edit_studio("edit-studio-picture", move |studio| studio.letterhead = path);
        }
    });
    let label = cx.label("studio-address");
    row(ui, &label, &tokens, |ui| {
        let now = cx.studio.address.join("\n");
        if let Some(lines) = notes(ui, cx, Id::unique("studio-address"), &label, &now, WIDE) {
            let lines: Vec<String> = lines.lines().map(|line| line.trim().to_owned()).filter(|line| !line.is_empty()).collect();
            cx.edit_studio("edit-studio-address", move |studio| studio.address = lines);
        }
    });
}
