//! What is drawn from the studio's lots, and whose metal may be blended.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, grams};
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::job::{Consent, Draw, Lot, LotId, LotKind, Melt};
use crate::quantity::{Grams, Kind};

/// Shows the draws and the consents.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, melt: &Melt) {
    let (tokens, id) = (cx.tokens, melt.id);
    heading::group(ui, &cx.label("melt-draws"), &tokens);
    let lots: Vec<(LotId, String)> = cx.studio.lots.iter().map(|lot| (lot.id.clone(), lot_words(cx, lot))).collect();
    for (place, draw) in melt.charge.iter().enumerate() {
        ui.horizontal(|ui| {
            let name = numbered(&cx.label("melt-lot"), place);
            let at = (Id::unique(("draw-lot", id.0, place)), name.as_str(), 206.0);
            if let Some(Some(lot)) = choice(ui, cx, at, Some(&draw.lot), &lots, false) {
                draws(cx, melt, move |charge| charge[place].lot = lot, place);
            }
            let name = numbered(&cx.label("melt-grams"), place);
            let field = Number::new(Id::unique(("draw-grams", id.0, place)), &name, Kind::Mass).now(Some(draw.grams.to_f64())).width(96.0);
            if let Some(weight) = grams(ui, cx, &field) {
                draws(cx, melt, move |charge| charge[place].grams = weight.unwrap_or(Grams::ZERO), place);
            }
            let name = numbered(&cx.label("melt-draw-notes"), place);
            if let Some(said) = text(ui, cx, Id::unique(("draw-notes", id.0, place)), &name, &draw.notes, 110.0) {
                draws(cx, melt, move |charge| charge[place].notes = said, place);
            }
            let name = numbered(&cx.label("melt-draw-drop"), place);
            if button::link(ui, &cx.label("melt-drop"), &tokens).accessible_name(name).clicked() {
                draws(cx, melt, move |charge| drop(charge.remove(place)), place);
            }
        });
    }
    if lots.is_empty() {
        heading::says(ui, &cx.label("melt-no-lots"), &tokens);
    } else if button::plain(ui, &cx.label("melt-draw"), &tokens).clicked() {
        let lot = lots[0].0.clone();
        change(cx, "edit-melt-draw", id, move |melt| melt.charge.push(Draw { lot, grams: Grams::ZERO, notes: String::new() }));
    }
    consents(ui, cx, melt);
}

/// A lot by its label, what it is, and whose.
fn lot_words(cx: &Cx<'_>, lot: &Lot) -> String {
    let kind = cx.label(match lot.what {
        LotKind::NewMetal => "lot-new-metal",
        LotKind::FineMetal => "lot-fine-metal",
        LotKind::MasterAlloy => "lot-master-alloy",
        LotKind::Scrap => "lot-scrap",
        LotKind::Refining => "lot-refining",
    });
    let alloy = lot.alloy.as_ref().map_or(kind.clone(), |id| format!("{kind}, {}", crate::app::names::entry(cx, id)));
    let owner = lot.owner.trim();
    let whose = if owner.is_empty() { alloy } else { cx.say("melt-lot-of", &[("what", alloy.into()), ("owner", owner.into())]) };
    cx.say("melt-lot-words", &[("lot", lot.id.to_string().into()), ("what", whose.into())])
}

fn draws(cx: &mut Cx<'_>, melt: &Melt, with: impl FnOnce(&mut Vec<Draw>) + 'static, place: usize) {
    change(cx, "edit-melt-draw", melt.id, move |melt| {
        if place < melt.charge.len() {
            with(&mut melt.charge);
        }
    });
}

/// Clients whose metal may be blended, and where they agreed to it.
fn consents(ui: &mut Ui, cx: &mut Cx<'_>, melt: &Melt) {
    let (tokens, id) = (cx.tokens, melt.id);
    for (place, consent) in melt.consents.iter().enumerate() {
        ui.horizontal(|ui| {
            let name = numbered(&cx.label("melt-client"), place);
            if let Some(client) = text(ui, cx, Id::unique(("consent-client", id.0, place)), &name, &consent.client, 80.0) {
                one(cx, melt, place, move |consent| consent.client = client);
            }
            let name = numbered(&cx.label("melt-paper"), place);
            if let Some(paper) = text(ui, cx, Id::unique(("consent-paper", id.0, place)), &name, &consent.paper, 220.0) {
                one(cx, melt, place, move |consent| consent.paper = paper);
            }
            let name = numbered(&cx.label("melt-consent-drop"), place);
            if button::link(ui, &cx.label("melt-drop"), &tokens).accessible_name(name).clicked() {
                change(cx, "edit-melt-consent", id, move |melt| {
                    if place < melt.consents.len() {
                        melt.consents.remove(place);
                    }
                });
            }
        });
    }
    if button::plain(ui, &cx.label("melt-consent"), &tokens).clicked() {
        change(cx, "edit-melt-consent", id, |melt| melt.consents.push(Consent::default()));
    }
}

fn one(cx: &mut Cx<'_>, melt: &Melt, place: usize, with: impl FnOnce(&mut Consent) + 'static) {
    change(cx, "edit-melt-consent", melt.id, move |melt| {
        if let Some(consent) = melt.consents.get_mut(place) {
            with(consent);
        }
    });
}
