//! Metal prices, written down by hand with their day.

use eframe::egui::{Align, Id, Label, Layout, RichText, Ui, vec2};

use super::sections::heads;
use crate::app::cx::Cx;
use crate::app::theme::{ROW, STEP, size};
use crate::app::widget::choice::choice;
use crate::app::widget::mark::mark;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, money};
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::calc::{Arg, Weight};
use crate::job::{Price, PriceUnit};
use crate::paper::words::metal_name;
use crate::quantity::{Kind, Money};

/// Widths of the columns.
const OF: f32 = 116.0;
const AMOUNT: f32 = 92.0;
const PER: f32 = 104.0;
const ON: f32 = 96.0;

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("prices-says"), &tokens);
    if !cx.studio.prices.is_empty() {
        let columns = [("price-of", OF), ("price-amount", AMOUNT), ("price-per", PER), ("price-on", ON)];
        heads(ui, &columns.map(|(key, width)| (cx.label(key), width)), &tokens);
    }
    // What the calculation finds stale is marked here; the page judges no day itself.
    let stale: Vec<String> = cx
        .computed
        .report
        .findings
        .iter()
        .filter(|finding| finding.kind.key == "price-stale")
        .filter_map(|finding| match finding.args.first() {
            Some(Arg::Text(of)) => Some(of.clone()),
            _ => None,
        })
        .collect();
    for (at, price) in cx.studio.prices.iter().enumerate() {
        let newer = cx.studio.prices.iter().any(|other| other.of == price.of && other.on > price.on);
        ui.horizontal(|ui| one(ui, cx, at, price));
        ui.horizontal(|ui| about(ui, cx, at, price, !newer && stale.contains(&price.of)));
        ui.add_space(STEP);
    }
    if button::plain(ui, &cx.label("price-add"), &tokens).clicked() {
        let on = Some(cx.setting.at);
        cx.edit_studio("edit-price-add", move |studio| studio.prices.push(Price { on, ..Price::default() }));
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, price: &Price) {
    let tokens = cx.tokens;
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), at);
    if let Some(of) = text(ui, cx, Id::unique(("price-of", at)), &named(cx, "price-of"), &price.of, OF) {
        edit(cx, at, move |price| price.of = of);
    }
    let label = named(cx, "price-amount");
    let field = Number::new(Id::unique(("price-amount", at)), &label, Kind::Money).now(Some(price.amount.to_f64())).width(AMOUNT);
    if let Some(Some(amount)) = money(ui, cx, &field) {
        edit(cx, at, move |price: &mut Price| price.amount = amount);
    }
    let units = [(PriceUnit::TroyOunce, "price-ozt"), (PriceUnit::Gram, "price-g"), (PriceUnit::Kilogram, "price-kg")];
    let units = units.map(|(unit, key)| (unit, cx.label(key)));
    let place = (Id::unique(("price-per", at)), &*named(cx, "price-per"), PER);
    if let Some(Some(per)) = choice(ui, cx, place, Some(&price.per), &units, false) {
        edit(cx, at, move |price| price.per = per);
    }
    if let Some(on) = day(ui, cx, Id::unique(("price-on", at)), &named(cx, "price-on"), price.on, ON) {
        edit(cx, at, move |price| price.on = on);
    }
    let name = numbered(&cx.label("row-take-out"), at);
    if button::plain(ui, &cx.label("row-take-out"), &tokens).accessible_name(name).clicked() {
        cx.edit_studio("edit-price-out", move |studio| {
            if at < studio.prices.len() {
                studio.prices.remove(at);
            }
        });
    }
}

/// The second row of a price: where it was read, what it is of, whether it is out of date.
fn about(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, price: &Price, stale: bool) {
    let tokens = cx.tokens;
    let name = numbered(&cx.label("price-note"), at);
    ui.allocate_ui_with_layout(vec2(OF, ROW), Layout::right_to_left(Align::Center), |ui| {
        ui.set_min_width(OF);
        ui.label(RichText::new(cx.label("price-note")).size(size::SMALL).color(tokens.ink2));
    });
    if let Some(note) = text(ui, cx, Id::unique(("price-note", at)), &name, &price.note, AMOUNT + PER + ON + 16.0) {
        edit(cx, at, move |price| price.note = note);
    }
    if stale {
        let words = cx.label("price-stale");
        mark(ui, Weight::Caution, 14.0, &words, &tokens);
        ui.label(RichText::new(words).size(size::SMALL).color(tokens.caution));
    } else if price.amount != Money::default() {
        let name = metal_name(&price.of, cx.texts);
        let name = cx.computed.shelves.today.entry(&price.of).map_or(name, |entry| entry.name().to_owned());
        ui.add(Label::new(RichText::new(name).size(size::SMALL).color(tokens.ink2)).truncate());
    }
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Price) + 'static) {
    cx.edit_studio("edit-price", move |studio| {
        if let Some(price) = studio.prices.get_mut(at) {
            change(price);
        }
    });
}
