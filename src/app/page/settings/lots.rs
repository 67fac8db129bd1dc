//! Metal lots with what came in. What goes out is written in the batch that draws it.

mod receipts;

use eframe::egui::{Checkbox, Id, Ui};

use super::kept::{keep, kept};
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::job::{Lot, LotId, LotKind, Studio};
use crate::quantity::{Finite, Kind};
use crate::stock::Alloy;

/// Width of a choice.
const WIDE: f32 = 240.0;

fn chosen_id() -> Id {
    Id::unique("lots-chosen")
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("lots-says"), &tokens);
    let lots = &cx.studio.lots;
    let name = kept(ui, chosen_id());
    let chosen = lots.iter().position(|lot| lot.id.0 == name).or((!lots.is_empty()).then_some(0));
    rows(ui, "lots", lots.len(), |ui, place| {
        let lot = &lots[place];
        if choose(ui, cx, chosen == Some(place), &lot.id.0, &about(cx, lot)) {
            keep(ui, chosen_id(), lot.id.0.clone());
        }
    });
    if button::plain(ui, &cx.label("lot-add"), &tokens).clicked() {
        let label = free_label(cx.studio);
        keep(ui, chosen_id(), label.clone());
        cx.edit_studio("edit-lot-add", |studio| studio.lots.push(Lot { id: LotId(label), ..Lot::default() }));
    }
    if let Some(at) = chosen {
        let lot = lots[at].clone();
        ui.add_space(2.0 * STEP);
        one(ui, cx, at, &lot);
        receipts::show(ui, cx, at, &lot);
        take_out(ui, cx, at, &lot);
    }
}

/// A label that no lot carries.
fn free_label(studio: &Studio) -> String {
    let taken = |name: &str| studio.lots.iter().any(|lot| lot.id.0 == name);
    (1..u32::MAX).map(|number| format!("L-{number}")).find(|name| !taken(name)).unwrap_or_default()
}

/// What a lot is, and whose.
fn about(cx: &Cx<'_>, lot: &Lot) -> String {
    let kind = kinds(cx).into_iter().find(|(kind, _)| *kind == lot.what).map(|(_, words)| words);
    let alloy = lot.alloy.as_ref().map(|id| crate::app::names::entry(cx, id));
    let parts = [kind, alloy, Some(lot.owner.trim().to_owned()).filter(|owner| !owner.is_empty())];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &Lot) {
    let tokens = cx.tokens;
    let label = cx.label("lot-label");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("lot-label", at)), &label, &lot.id.0, 132.0)) {
        // Two lots of one label would be one and the same to every melt.
        let taken = cx.studio.lots.iter().any(|other| other.id.0 == name);
        if !name.is_empty() && !taken {
            keep(ui, chosen_id(), name.clone());
            rename(cx, at, name);
        }
    }
    let label = cx.label("lot-what");
    let place = (Id::unique(("lot-what", at)), label.as_str(), WIDE);
    if let Some(Some(what)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&lot.what), &kinds(cx), false)) {
        edit(cx, at, move |lot| lot.what = what);
    }
    let label = cx.label("lot-alloy");
    let words = |alloy: &Alloy| (alloy.id.clone(), alloy.name.clone());
    let place = (Id::unique(("lot-alloy", at)), label.as_str(), WIDE);
    if let Some(alloy) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, lot.alloy.as_ref(), words)) {
        edit(cx, at, move |lot| lot.alloy = alloy);
    }
    let label = cx.label("lot-fineness");
    let field = Number::new(Id::unique(("lot-fineness", at)), &label, Kind::Fineness).now(lot.fineness_permille.map(Finite::get));
    if let Some(fineness) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        edit(cx, at, move |lot| lot.fineness_permille = fineness);
    }
    let label = cx.label("lot-melts");
    let field = Number::new(Id::unique(("lot-melts", at)), &label, Kind::Count).now(Some(f64::from(lot.melts))).width(70.0);
    if let Some(melts) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        edit(cx, at, move |lot| lot.melts = melts.unwrap_or(0));
    }
    words_of(ui, cx, at, lot);
}

/// Sets words of a lot.
type Words = fn(&mut Lot, String);

fn words_of(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &Lot) {
    let tokens = cx.tokens;
    let texts: [(&str, &String, f32, Words); 3] = [
        ("lot-owner", &lot.owner, 132.0, |lot, words| lot.owner = words),
        ("lot-metal", &lot.metal, 70.0, |lot, words| lot.metal = words),
        ("lot-assay", &lot.assay, WIDE, |lot, words| lot.assay = words),
    ];
    for (key, now, width, set) in texts {
        let label = cx.label(key);
        if let Some(words) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique((key, at)), &label, now, width)) {
            edit(cx, at, move |lot| set(lot, words));
        }
    }
    let mut soldered = lot.soldered;
    if ui.add(Checkbox::new(&mut soldered, cx.label("lot-soldered"))).changed() {
        edit(cx, at, move |lot| lot.soldered = soldered);
    }
    let label = cx.label("lot-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("lot-notes", at)), &label, &lot.notes, 320.0)) {
        edit(cx, at, move |lot| lot.notes = said);
    }
}

fn take_out(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &Lot) {
    // A lot that a melt of this batch draws on stays: the draw would point at nothing.
    let drawn = cx.job.melts.iter().any(|melt| melt.charge.iter().any(|draw| draw.lot == lot.id));
    let words = cx.label("lot-take-out");
    if button::outlined(ui, &words, &cx.tokens, !drawn).on_disabled_hover_text(cx.label("lot-drawn")).clicked() {
        cx.edit_studio("edit-lot-out", move |studio| {
            if at < studio.lots.len() {
                studio.lots.remove(at);
            }
        });
    }
}

/// Another label; melts of this batch that draw on the lot follow it.
fn rename(cx: &mut Cx<'_>, at: usize, name: String) {
    let Some(before) = cx.studio.lots.get(at).map(|lot| lot.id.clone()) else { return };
    cx.edit_both("edit-lot", move |job, studio| {
        let draws = job.melts.iter_mut().flat_map(|melt| melt.charge.iter_mut());
        draws.filter(|draw| draw.lot == before).for_each(|draw| draw.lot = LotId(name.clone()));
        if let Some(lot) = studio.lots.get_mut(at) {
            lot.id = LotId(name);
        }
    });
}

fn kinds(cx: &Cx<'_>) -> [(LotKind, String); 5] {
    [
        (LotKind::NewMetal, "lot-kind-new"),
        (LotKind::FineMetal, "lot-kind-fine"),
        (LotKind::MasterAlloy, "lot-kind-master"),
        (LotKind::Scrap, "lot-kind-scrap"),
        (LotKind::Refining, "lot-kind-refining"),
    ]
    .map(|(kind, key)| (kind, cx.label(key)))
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Lot) + 'static) {
    cx.edit_studio("edit-lot", move |studio| {
        if let Some(lot) = studio.lots.get_mut(at) {
            change(lot);
        }
    });
}
