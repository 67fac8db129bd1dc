//! Metal lots with what came in. What goes out is written in the batch that draws it.

use eframe::egui::{Id, Ui};

use super::sections::{above, heads};
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::job::{Lot, LotId, LotKind, Receipt};
use crate::quantity::{Finite, Grams, Kind};
use crate::stock::Alloy;

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("lots-says"), &tokens);
    for at in 0..cx.studio.lots.len() {
        let lot = cx.studio.lots[at].clone();
        ui.add_space(2.0 * STEP);
        ui.push_id(("lot", at), |ui| one(ui, cx, at, &lot));
        ui.separator();
    }
    if button::plain(ui, &cx.label("lot-add"), &tokens).clicked() {
        cx.edit_studio("edit-lot-add", |studio| {
            let taken = |name: &str| studio.lots.iter().any(|lot| lot.id.0 == name);
            let label = (1..u32::MAX).map(|number| format!("L-{number}")).find(|name| !taken(name)).unwrap_or_default();
            studio.lots.push(Lot { id: LotId(label), ..Lot::default() });
        });
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &Lot) {
    let tokens = cx.tokens;
    ui.horizontal_wrapped(|ui| {
        let label = cx.label("lot-label");
        above(ui, &label, 92.0, &tokens, |ui| {
            if let Some(name) = text(ui, cx, Id::unique(("lot-label", at)), &label, &lot.id.0, 92.0) {
                rename(cx, at, name);
            }
        });
        let label = cx.label("lot-what");
        above(ui, &label, 150.0, &tokens, |ui| {
            let place = (Id::unique(("lot-what", at)), label.as_str(), 150.0);
            if let Some(Some(what)) = choice(ui, cx, place, Some(&lot.what), &kinds(cx), false) {
                edit(cx, at, move |lot| lot.what = what);
            }
        });
        let label = cx.label("lot-alloy");
        above(ui, &label, 200.0, &tokens, |ui| {
            let words = |alloy: &Alloy| (alloy.id.clone(), alloy.name.clone());
            let place = (Id::unique(("lot-alloy", at)), label.as_str(), 200.0);
            if let Some(alloy) = entry_of(ui, cx, place, lot.alloy.as_ref(), words) {
                edit(cx, at, move |lot| lot.alloy = alloy);
            }
        });
    });
    ui.horizontal_wrapped(|ui| metal(ui, cx, at, lot));
    receipts(ui, cx, at, lot);
    ui.horizontal(|ui| {
        if button::plain(ui, &cx.label("lot-receipt-add"), &tokens).clicked() {
            let on = Some(cx.setting.at);
            edit(cx, at, move |lot| lot.receipts.push(Receipt { on, ..Receipt::default() }));
        }
        // A lot that a melt of this batch draws on stays: the draw would point at nothing.
        let drawn = cx.job.melts.iter().any(|melt| melt.charge.iter().any(|draw| draw.lot == lot.id));
        let words = cx.label("lot-take-out");
        if button::outlined(ui, &words, &tokens, !drawn).on_disabled_hover_text(cx.label("lot-drawn")).clicked() {
            cx.edit_studio("edit-lot-out", move |studio| {
                if at < studio.lots.len() {
                    studio.lots.remove(at);
                }
            });
        }
    });
}

/// Owner, metal and fineness.
fn metal(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &Lot) {
    let tokens = cx.tokens;
    let label = cx.label("lot-owner");
    above(ui, &label, 92.0, &tokens, |ui| {
        if let Some(owner) = text(ui, cx, Id::unique(("lot-owner", at)), &label, &lot.owner, 92.0) {
            edit(cx, at, move |lot| lot.owner = owner);
        }
    });
    let label = cx.label("lot-metal");
    above(ui, &label, 72.0, &tokens, |ui| {
        if let Some(metal) = text(ui, cx, Id::unique(("lot-metal", at)), &label, &lot.metal, 72.0) {
            edit(cx, at, move |lot| lot.metal = metal);
        }
    });
    let label = cx.label("lot-fineness");
    above(ui, &label, 110.0, &tokens, |ui| {
        let now = lot.fineness_permille.map(Finite::get);
        let field = Number::new(Id::unique(("lot-fineness", at)), &label, Kind::Fineness).now(now).width(110.0);
        if let Some(fineness) = number(ui, cx, &field) {
            edit(cx, at, move |lot| lot.fineness_permille = fineness);
        }
    });
}

fn receipts(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &Lot) {
    let tokens = cx.tokens;
    let (on, mass) = (cx.label("receipt-on"), cx.label("receipt-grams"));
    if !lot.receipts.is_empty() {
        heads(ui, &[(on.clone(), 110.0), (mass.clone(), 120.0)], &tokens);
    }
    for (row, receipt) in lot.receipts.iter().enumerate() {
        ui.horizontal(|ui| {
            if let Some(on) = day(ui, cx, Id::unique(("receipt-on", at, row)), &on, receipt.on, 110.0) {
                edit_receipt(cx, at, row, move |receipt| receipt.on = on);
            }
            let now = Some(receipt.grams.to_f64());
            let field = Number::new(Id::unique(("receipt-grams", at, row)), &mass, Kind::Mass).now(now).width(120.0);
            if let Some(mass) = grams(ui, cx, &field) {
                edit_receipt(cx, at, row, move |receipt| receipt.grams = mass.unwrap_or(Grams::ZERO));
            }
            if button::plain(ui, &cx.label("row-take-out"), &tokens).clicked() {
                edit(cx, at, move |lot| {
                    if row < lot.receipts.len() {
                        lot.receipts.remove(row);
                    }
                });
            }
        });
    }
}

/// Another label; melts of this batch that draw on the lot follow it.
fn rename(cx: &mut Cx<'_>, at: usize, name: String) {
    let Some(before) = cx.studio.lots.get(at).map(|lot| lot.id.clone()) else { return };
    let name = LotId(name);
    if cx.job.melts.iter().any(|melt| melt.charge.iter().any(|draw| draw.lot == before)) {
        let (before, name) = (before, name.clone());
        cx.edit("edit-lot", move |job| {
            let draws = job.melts.iter_mut().flat_map(|melt| melt.charge.iter_mut());
            draws.filter(|draw| draw.lot == before).for_each(|draw| draw.lot = name.clone());
        });
    }
    edit(cx, at, move |lot| lot.id = name);
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

fn edit_receipt(cx: &mut Cx<'_>, at: usize, row: usize, change: impl FnOnce(&mut Receipt) + 'static) {
    edit(cx, at, move |lot| {
        if let Some(receipt) = lot.receipts.get_mut(row) {
            change(receipt);
        }
    });
}
