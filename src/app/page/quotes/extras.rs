//! Sums beside the metal: minutes of work and fixed sums, for one line or for the whole.

use eframe::egui::{Id, Ui};

use super::draft::edit;
use crate::app::cx::Cx;
use crate::app::page::settings::sections::heads;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, money, number};
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::job::{Extra, LineId, Quote};
use crate::paper::words::clean;
use crate::quantity::{Finite, Kind, Money};

/// Widths of the columns.
const WHAT: f32 = 130.0;
const LINE: f32 = 130.0;
const MINUTES: f32 = 70.0;
const AMOUNT: f32 = 84.0;

/// Shows the rows.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote) {
    let tokens = cx.tokens;
    let id = quote.id;
    heading::group(ui, &cx.label("quote-extras"), &tokens);
    if !quote.extras.is_empty() {
        let columns = [("extra-what", WHAT), ("extra-line", LINE), ("extra-minutes", MINUTES), ("extra-amount", AMOUNT)];
        heads(ui, &columns.map(|(key, width)| (cx.label(key), width)), &tokens);
    }
    let client = quote.client.trim();
    // Lines of this client alone.
    let lines: Vec<(LineId, String)> = cx
        .job
        .orders
        .iter()
        .filter(|order| order.client.trim() == client && (quote.orders.is_empty() || quote.orders.contains(&order.id)))
        .flat_map(|order| order.lines.iter().map(|line| (line.id, clean(&line.design, cx.texts))))
        .collect();
    for (at, extra) in quote.extras.iter().enumerate() {
        ui.horizontal_wrapped(|ui| one(ui, cx, quote, (at, extra), &lines));
    }
    if button::plain(ui, &cx.label("extra-add"), &tokens).clicked() {
        edit(cx, id, |quote| quote.extras.push(Extra::default()));
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote, (at, extra): (usize, &Extra), lines: &[(LineId, String)]) {
    let id = quote.id;
    let name = |part: &str| Id::unique((part.to_owned(), id.0, at));
    if let Some(what) = text(ui, cx, name("extra-what"), &numbered(&cx.label("extra-what"), at), &extra.what, WHAT) {
        change(cx, quote, at, move |extra| extra.what = what);
    }
    let mut options: Vec<(Option<LineId>, String)> = vec![(None, cx.label("extra-whole"))];
    options.extend(lines.iter().map(|(line, words)| (Some(*line), words.clone())));
    let place = (name("extra-line"), &*numbered(&cx.label("extra-line"), at), LINE);
    if let Some(Some(line)) = choice(ui, cx, place, Some(&extra.line), &options, false) {
        change(cx, quote, at, move |extra| extra.line = line);
    }
    let label = numbered(&cx.label("extra-minutes"), at);
    let field = Number::new(name("extra-minutes"), &label, Kind::Count).now(extra.minutes.map(Finite::get)).width(MINUTES);
    if let Some(minutes) = number(ui, cx, &field) {
        change(cx, quote, at, move |extra| extra.minutes = minutes);
    }
    let label = numbered(&cx.label("extra-amount"), at);
    let field = Number::new(name("extra-amount"), &label, Kind::Money).now(extra.amount.map(Money::to_f64)).width(AMOUNT);
    if let Some(amount) = money(ui, cx, &field) {
        change(cx, quote, at, move |extra| extra.amount = amount);
    }
    let name = numbered(&cx.label("row-take-out"), at);
    if button::plain(ui, &cx.label("row-take-out"), &cx.tokens.clone()).accessible_name(name).clicked() {
        edit(cx, id, move |quote| {
            if at < quote.extras.len() {
                quote.extras.remove(at);
            }
        });
    }
}

fn change(cx: &mut Cx<'_>, quote: &Quote, at: usize, change: impl FnOnce(&mut Extra) + 'static) {
    edit(cx, quote.id, move |quote| {
        if let Some(extra) = quote.extras.get_mut(at) {
            change(extra);
        }
    });
}
