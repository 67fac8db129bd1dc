//! How a printer is set for each resin: layer, light, moving, supports, price.

use eframe::egui::{Id, Ui};

use super::edit;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::entry_of;
use crate::app::widget::number::{Number, count, money, number, seconds};
use crate::app::widget::row::row;
use crate::app::widget::rows::numbered;
use crate::app::widget::text::notes;
use crate::app::widget::{button, heading};
use crate::job::{PrintSetting, Printer};
use crate::quantity::{Finite, Kind, Money};
use crate::stock::PatternMaterial;

/// Shows the settings of one printer.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, printer: &Printer) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("printer-resins"), &tokens);
    for (place, setting) in printer.settings.iter().enumerate() {
        one(ui, cx, (at, place), setting);
        ui.add_space(STEP);
    }
    if button::plain(ui, &cx.label("printer-resin-add"), &tokens).clicked() {
        edit(cx, at, |printer| printer.settings.push(PrintSetting::default()));
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, (at, place): (usize, usize), setting: &PrintSetting) {
    let tokens = cx.tokens;
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), place);
    let label = named(cx, "resin-material");
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    let field = (Id::unique(("resin-material", at, place)), label.as_str(), 240.0);
    if let Some(material) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, field, setting.material.as_ref(), words)) {
        change(cx, at, place, move |setting| setting.material = material);
    }
    let label = named(cx, "resin-layer");
    let field = Number::new(Id::unique(("resin-layer", at, place)), &label, Kind::Length).now(setting.layer_mm.map(Finite::get));
    if let Some(layer) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, at, place, move |setting| setting.layer_mm = layer);
    }
    let label = named(cx, "resin-base-layers");
    let field = Number::new(Id::unique(("resin-base-layers", at, place)), &label, Kind::Count).now(setting.base_layers.map(f64::from));
    if let Some(layers) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        change(cx, at, place, move |setting| setting.base_layers = layers);
    }
    lights(ui, cx, (at, place), setting);
    let label = named(cx, "resin-supports");
    let field = Number::new(Id::unique(("resin-supports", at, place)), &label, Kind::Ratio).now(setting.supports_share.map(Finite::get));
    if let Some(share) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, at, place, move |setting| setting.supports_share = share);
    }
    let label = named(cx, "resin-price");
    let field = Number::new(Id::unique(("resin-price", at, place)), &label, Kind::Money).now(setting.price_per_kg.map(Money::to_f64));
    if let Some(price) = row(ui, &label, &tokens, |ui| money(ui, cx, &field)) {
        change(cx, at, place, move |setting| setting.price_per_kg = price);
    }
    let label = named(cx, "resin-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("resin-notes", at, place)), &label, &setting.notes, 320.0))
    {
        change(cx, at, place, move |setting| setting.notes = said);
    }
    let words = named(cx, "resin-take-out");
    if button::link(ui, &words, &tokens).clicked() {
        edit(cx, at, move |printer| {
            if place < printer.settings.len() {
                printer.settings.remove(place);
            }
        });
    }
}

/// Sets seconds of a setting.
type Seconds = fn(&mut PrintSetting, Option<Finite>);

fn lights(ui: &mut Ui, cx: &mut Cx<'_>, (at, place): (usize, usize), setting: &PrintSetting) {
    let tokens = cx.tokens;
    let all: [(&str, Option<Finite>, Seconds); 3] = [
        ("resin-base-exposure", setting.base_exposure_s, |setting, seconds| setting.base_exposure_s = seconds),
        ("resin-exposure", setting.exposure_s, |setting, seconds| setting.exposure_s = seconds),
        ("resin-move", setting.move_s, |setting, seconds| setting.move_s = seconds),
    ];
    for (key, now, set) in all {
        let label = numbered(&cx.label(key), place);
        let field = Number::new(Id::unique((key, at, place)), &label, Kind::Duration).now(now.map(Finite::get));
        if let Some(found) = row(ui, &label, &tokens, |ui| seconds(ui, cx, &field)) {
            change(cx, at, place, move |setting| set(setting, found));
        }
    }
}

fn change(cx: &mut Cx<'_>, at: usize, place: usize, change: impl FnOnce(&mut PrintSetting) + 'static) {
    edit(cx, at, move |printer| {
        if let Some(setting) = printer.settings.get_mut(place) {
            change(setting);
        }
    });
}
