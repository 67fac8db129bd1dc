//! A draft: recomputed with the batch until it is sent.

use eframe::egui::{Id, Ui};

use super::{extras, figures};
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::paper_desk::PaperView;
use crate::app::theme::STEP;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, money, number};
use crate::app::widget::row::row;
use crate::app::widget::text::notes;
use crate::app::widget::{button, heading};
use crate::job::{OrderId, Quote, QuoteId, QuoteState};
use crate::paper::words::date_words;
use crate::paper::{Sort, document_name, frozen_quote};
use crate::quantity::{Finite, Kind, Money};

/// Shows its fields, its figures and what can become of it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote) {
    let tokens = cx.tokens;
    terms(ui, cx, quote);
    orders(ui, cx, quote);
    extras::show(ui, cx, quote);
    let offer = cx.computed.report.offers.iter().find(|offer| offer.quote == Some(quote.id)).cloned();
    match &offer {
        Some(offer) => figures::show(ui, cx, offer),
        None => {
            heading::says(ui, &cx.label("quote-left-out"), &tokens);
        }
    }
    ui.add_space(2.0 * STEP);
    let label = cx.label("quote-notes");
    row(ui, &label, &tokens, |ui| {
        if let Some(words) = notes(ui, cx, Id::unique(("quote-notes", quote.id.0)), &label, &quote.notes, 320.0) {
            edit(cx, quote.id, move |quote| quote.notes = words);
        }
    });
    ui.add_space(2.0 * STEP);
    send(ui, cx, quote.id);
}

/// Changes a quote.
pub fn edit(cx: &mut Cx<'_>, id: QuoteId, change: impl FnOnce(&mut Quote) + 'static) {
    cx.edit("edit-quote", move |job| {
        if let Some(quote) = job.quotes.iter_mut().find(|quote| quote.id == id) {
            change(quote);
        }
    });
}

fn terms(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote) {
    let tokens = cx.tokens;
    let id = quote.id;
    let label = cx.label("quote-valid-until");
    row(ui, &label, &tokens, |ui| {
        if let Some(until) = day(ui, cx, Id::unique(("quote-until", id.0)), &label, quote.valid_until, 132.0) {
            edit(cx, id, move |quote| quote.valid_until = until);
        }
    });
    let label = cx.label("quote-margin");
    let default = cx.studio.money.margin.map(Finite::get);
    let field = Number::new(Id::unique(("quote-margin", id.0)), &label, Kind::Ratio).now(quote.margin.map(Finite::get)).default(default);
    if let Some(margin) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        edit(cx, id, move |quote| quote.margin = margin);
    }
    let label = cx.label("quote-tax-field");
    let default = cx.studio.money.tax.map(Finite::get);
    let field = Number::new(Id::unique(("quote-tax", id.0)), &label, Kind::Ratio).now(quote.tax.map(Finite::get)).default(default);
    if let Some(tax) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        edit(cx, id, move |quote| quote.tax = tax);
    }
    let label = cx.label("quote-deposit-field");
    let now = quote.deposit.map(Money::to_f64);
    let field = Number::new(Id::unique(("quote-deposit", id.0)), &label, Kind::Money).now(now);
    if let Some(deposit) = row(ui, &label, &tokens, |ui| money(ui, cx, &field)) {
        edit(cx, id, move |quote| quote.deposit = deposit);
    }
    let label = cx.label("quote-terms-field");
    row(ui, &label, &tokens, |ui| {
        if let Some(words) = notes(ui, cx, Id::unique(("quote-terms", id.0)), &label, &quote.terms, 320.0) {
            edit(cx, id, move |quote| quote.terms = words);
        }
    });
}

/// The client's orders that the quote covers. None named means all of them, and so does every one of them.
fn orders(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote) {
    let client = quote.client.trim();
    let all: Vec<(OrderId, String)> = cx
        .job
        .orders
        .iter()
        .filter(|order| order.client.trim() == client)
        .map(|order| {
            let taken = order.taken.map_or_else(|| cx.label("undated"), |taken| date_words(taken, cx.texts));
            (order.id, cx.say("quote-order", &[("number", order.id.to_string().into()), ("taken", taken.into())]))
        })
        .collect();
    if all.is_empty() {
        return;
    }
    let label = cx.label("quote-orders");
    row(ui, &label, &cx.tokens.clone(), |ui| {
        ui.horizontal_wrapped(|ui| {
            let every: Vec<OrderId> = all.iter().map(|(id, _)| *id).collect();
            let covered: Vec<OrderId> = if quote.orders.is_empty() { every.clone() } else { quote.orders.clone() };
            for (order, words) in all {
                let mut on = covered.contains(&order);
                // The last one stays: no order at all would mean every order.
                let last = on && covered.len() == 1;
                if ui.add_enabled(!last, eframe::egui::Checkbox::new(&mut on, words)).changed() {
                    let mut orders: Vec<OrderId> = covered.iter().copied().filter(|id| *id != order).collect();
                    orders.extend(on.then_some(order));
                    orders.sort();
                    if orders == every {
                        orders.clear();
                    }
                    edit(cx, quote.id, move |quote| quote.orders = orders);
                }
            }
        });
    });
}

/// What can become of a draft.
fn send(ui: &mut Ui, cx: &mut Cx<'_>, id: QuoteId) {
    let tokens = cx.tokens;
    let offer = cx.computed.report.offers.iter().find(|offer| offer.quote == Some(id));
    let total = offer.and_then(|offer| offer.sums).is_some_and(|[_, _, total]| cx.computed.book.number(total).is_some());
    let mut send = false;
    ui.horizontal_wrapped(|ui| {
        send = if total {
            button::main(ui, &cx.label("quote-send"), &tokens).clicked()
        } else {
            button::outlined(ui, &cx.label("quote-send"), &tokens, false).clicked()
        };
        if button::plain(ui, &cx.label("quote-write"), &tokens).clicked() {
            let client = cx.job.quotes.iter().find(|quote| quote.id == id).map_or("", |quote| quote.client.trim());
            let name = document_name(client, &id.to_string());
            cx.look(move |view| {
                view.paper = PaperView { sort: Sort::Quote, name, ..PaperView::default() };
                view.page = Page::Paper;
            });
        }
        if button::plain(ui, &cx.label("quote-decline"), &tokens).clicked() {
            let on = cx.setting.at;
            cx.edit("edit-quote-decline", move |job| {
                if let Some(quote) = job.quotes.iter_mut().find(|quote| quote.id == id) {
                    quote.state = QuoteState::Declined { on };
                }
            });
        }
        if button::plain(ui, &cx.label("quote-take-out"), &tokens).clicked() {
            // A quote that this one replaced points at it, and stays for that.
            cx.edit("edit-quote-out", move |job| {
                let named = job.quotes.iter().any(|quote| matches!(quote.state, QuoteState::Superseded { by, .. } if by == id));
                if !named {
                    job.quotes.retain(|quote| quote.id != id);
                }
            });
        }
    });
    heading::says(ui, &cx.label(if total { "quote-send-says" } else { "quote-send-cannot" }), &tokens);
    if send {
        freeze(cx, id);
    }
}

/// The figures as they stand today become what the client was told.
fn freeze(cx: &mut Cx<'_>, id: QuoteId) {
    let input = cx.sheet_input();
    let Some(sent) = frozen_quote(&input, id) else { return };
    cx.edit("edit-quote-send", move |job| {
        if let Some(quote) = job.quotes.iter_mut().find(|quote| quote.id == id && quote.state == QuoteState::Draft) {
            quote.state = QuoteState::Sent(sent);
        }
    });
}
