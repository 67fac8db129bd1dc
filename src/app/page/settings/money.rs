//! Money matters: currency, the price of an hour, margin, premium, tax, how long a price and a quote hold, and the terms that print.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::widget::number::{Number, count, money, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::calc::PRICE_DAYS;
use crate::job::Terms;
use crate::quantity::{Finite, Kind, Money};

type Part<T> = (&'static str, fn(&mut Terms) -> &mut Option<T>);

const SUMS: [Part<Money>; 2] = [("money-hour", |terms| &mut terms.hour), ("money-kwh", |terms| &mut terms.kwh)];
const SHARES: [Part<Finite>; 3] = [
    ("money-margin", |terms| &mut terms.margin),
    ("money-premium", |terms| &mut terms.metal_premium),
    ("money-tax", |terms| &mut terms.tax),
];
const DAYS: [Part<u32>; 2] = [("money-price-days", |terms| &mut terms.price_days), ("money-quote-days", |terms| &mut terms.quote_days)];

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let terms = cx.studio.money.clone();
    let label = cx.label("money-currency");
    row(ui, &label, &tokens, |ui| {
        if let Some(currency) = text(ui, cx, Id::unique("money-currency"), &label, &terms.currency, 80.0) {
            cx.edit_studio("edit-money", move |studio| studio.money.currency = currency);
        }
    });
    for (key, part) in SUMS {
        let label = cx.label(key);
        let field = Number::new(Id::unique(key), &label, Kind::Money).now(part(&mut terms.clone()).map(Money::to_f64));
        if let Some(sum) = row(ui, &label, &tokens, |ui| money(ui, cx, &field)) {
            cx.edit_studio("edit-money", move |studio| *part(&mut studio.money) = sum);
        }
    }
    for (key, part) in SHARES {
        let label = cx.label(key);
        let field = Number::new(Id::unique(key), &label, Kind::Ratio).now(part(&mut terms.clone()).map(Finite::get));
        if let Some(share) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            cx.edit_studio("edit-money", move |studio| *part(&mut studio.money) = share);
        }
    }
    for (key, part) in DAYS {
        let label = cx.label(key);
        let default = f64::from(terms.price_days.filter(|_| key == "money-quote-days").unwrap_or(PRICE_DAYS));
        let now = part(&mut terms.clone()).map(f64::from);
        let field = Number::new(Id::unique(key), &label, Kind::Count).now(now).default(Some(default));
        if let Some(days) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
            cx.edit_studio("edit-money", move |studio| *part(&mut studio.money) = days);
        }
    }
    let label = cx.label("money-words");
    row(ui, &label, &tokens, |ui| {
        if let Some(words) = notes(ui, cx, Id::unique("money-words"), &label, &terms.words, 320.0) {
            cx.edit_studio("edit-money", move |studio| studio.money.words = words);
        }
    });
}
