//! What came in of a lot: when, how much, what was paid, on which paper.

use eframe::egui::{Id, Ui};

use super::edit;
use crate::app::cx::Cx;
use crate::app::page::settings::sections::heads;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, grams, money};
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::job::{Lot, Receipt};
use crate::quantity::{Grams, Kind, Money};

/// Widths of the columns.
const COLUMNS: [(&str, f32); 4] = [("receipt-on", 98.0), ("receipt-grams", 92.0), ("receipt-paid", 88.0), ("receipt-paper", 132.0)];

/// Shows its rows.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &Lot) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("lot-receipts"), &tokens);
    if !lot.receipts.is_empty() {
        heads(ui, &COLUMNS.map(|(key, width)| (cx.label(key), width)), &tokens);
    }
    for (row, receipt) in lot.receipts.iter().enumerate() {
        ui.horizontal(|ui| one(ui, cx, (at, row), receipt));
    }
    if button::plain(ui, &cx.label("lot-receipt-add"), &tokens).clicked() {
        let on = Some(cx.setting.at);
        edit(cx, at, move |lot| lot.receipts.push(Receipt { on, ..Receipt::default() }));
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, (at, row): (usize, usize), receipt: &Receipt) {
    let [(on_key, on_width), (grams_key, grams_width), (paid_key, paid_width), (paper_key, paper_width)] = COLUMNS;
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), row);
    if let Some(on) = day(ui, cx, Id::unique((on_key, at, row)), &named(cx, on_key), receipt.on, on_width) {
        change(cx, at, row, move |receipt| receipt.on = on);
    }
    let name = named(cx, grams_key);
    let field = Number::new(Id::unique((grams_key, at, row)), &name, Kind::Mass).now(Some(receipt.grams.to_f64())).width(grams_width);
    if let Some(mass) = grams(ui, cx, &field) {
        change(cx, at, row, move |receipt| receipt.grams = mass.unwrap_or(Grams::ZERO));
    }
    let name = named(cx, paid_key);
    let field = Number::new(Id::unique((paid_key, at, row)), &name, Kind::Money).now(receipt.paid.map(Money::to_f64)).width(paid_width);
    if let Some(paid) = money(ui, cx, &field) {
        change(cx, at, row, move |receipt| receipt.paid = paid);
    }
    if let Some(paper) = text(ui, cx, Id::unique((paper_key, at, row)), &named(cx, paper_key), &receipt.paper, paper_width) {
        change(cx, at, row, move |receipt| receipt.paper = paper);
    }
    let name = numbered(&cx.label("row-take-out"), row);
    if button::link(ui, &cx.label("row-take-out"), &cx.tokens.clone()).accessible_name(name).clicked() {
        edit(cx, at, move |lot| {
            if row < lot.receipts.len() {
                lot.receipts.remove(row);
            }
        });
    }
}

fn change(cx: &mut Cx<'_>, at: usize, row: usize, change: impl FnOnce(&mut Receipt) + 'static) {
    edit(cx, at, move |lot| {
        if let Some(receipt) = lot.receipts.get_mut(row) {
            change(receipt);
        }
    });
}
