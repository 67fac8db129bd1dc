//! What a client was told: it stands as it was, whatever prices do since. None of it is a figure any more.

use eframe::egui::{Align, Label, Layout, RichText, Ui, vec2};

use super::{Chosen, choose, next_id};
use crate::app::cx::Cx;
use crate::app::page::settings::sections::heads;
use crate::app::theme::{ROW, STEP, bold, size};
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::row;
use crate::app::widget::{button, heading};
use crate::job::{FrozenLine, FrozenQuote, Quote, QuoteId, QuoteState};
use crate::paper::words::{clean, date_words, with_currency};
use crate::quantity::{Kind, Money, Style, print};

/// Shows it, and what can become of it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote) {
    let tokens = cx.tokens;
    let frozen = match &quote.state {
        QuoteState::Sent(sent) | QuoteState::Accepted { sent, .. } | QuoteState::Superseded { sent: Some(sent), .. } => Some(sent),
        _ => None,
    };
    what_became(ui, cx, quote);
    if let Some(sent) = frozen {
        told(ui, cx, sent);
        rest(ui, cx, quote);
    } else {
        heading::says(ui, &cx.label("quote-no-figures"), &tokens);
    }
    ui.add_space(2.0 * STEP);
    buttons(ui, cx, quote);
}

fn what_became(ui: &mut Ui, cx: &Cx<'_>, quote: &Quote) {
    let tokens = cx.tokens;
    let words = |key: &str, on| cx.say(key, &[("on", date_words(on, cx.texts).into())]);
    let said = match &quote.state {
        QuoteState::Sent(_) => quote.valid_until.map(|on| words("quote-holds-until", on)),
        QuoteState::Accepted { on, .. } => Some(words("quote-accepted-on", *on)),
        QuoteState::Declined { on } => Some(words("quote-declined-on", *on)),
        QuoteState::Superseded { by, .. } => Some(cx.say("quote-superseded-by", &[("number", by.to_string().into())])),
        QuoteState::Draft => None,
    };
    if let Some(said) = said {
        heading::says(ui, &said, &tokens);
    }
}

/// What was told, as text.
fn told(ui: &mut Ui, cx: &Cx<'_>, sent: &FrozenQuote) {
    let tokens = cx.tokens;
    let on = sent.on.map_or_else(|| cx.label("undated"), |on| date_words(on, cx.texts));
    heading::group(ui, &cx.say("quote-as-sent", &[("on", on.into())]), &tokens);
    heads(ui, &COLUMNS.map(|(key, width)| (cx.label(key), width)), &tokens);
    for line in &sent.lines {
        one(ui, cx, line);
    }
    ui.add_space(STEP);
    for price in &sent.prices {
        let gram = print(price.per_gram.to_f64(), Kind::PricePerGram, &Style { ..cx.style.finer() });
        let on = price.on.map_or_else(|| cx.label("undated"), |on| date_words(on, cx.texts));
        let of = cx.computed.shelves.job.entry(&price.of).map_or_else(|| clean(&price.of, cx.texts), |entry| entry.name().to_owned());
        let gram = with_currency(gram.number, gram.unit, &sent.currency);
        heading::says(ui, &cx.say("quote-sent-price", &[("of", of.into()), ("price", gram.into()), ("on", on.into())]), &tokens);
    }
    ui.add_space(STEP);
    let besides = (sent.besides != Money::default()).then_some(("offer-besides", sent.besides));
    let sums = [("offer-net", sent.net), ("offer-tax", sent.tax), ("offer-total", sent.total)];
    for (key, sum) in besides.into_iter().chain(sums) {
        row(ui, &cx.label(key), &tokens, |ui| {
            let words = RichText::new(with_currency(amount(cx, sum), "", &sent.currency)).color(tokens.ink);
            let words = if key == "offer-total" { words.family(bold()).size(size::FIGURE) } else { words };
            ui.label(words);
        });
    }
}

const COLUMNS: [(&str, f32); 5] =
    [("offer-line", 168.0), ("quote-sent-grams", 80.0), ("offer-metal", 74.0), ("offer-other", 74.0), ("offer-sum", 74.0)];

fn one(ui: &mut Ui, cx: &Cx<'_>, line: &FrozenLine) {
    let tokens = cx.tokens;
    let args = [("pieces", u64::from(line.quantity).into()), ("design", clean(&line.text, cx.texts).into())];
    let words = [
        cx.say("offer-design", &args),
        print(line.grams.to_f64(), Kind::Mass, cx.style).to_string(),
        amount(cx, line.metal),
        amount(cx, line.other),
        amount(cx, line.sum),
    ];
    ui.horizontal(|ui| {
        for (place, (words, (_, width))) in words.into_iter().zip(COLUMNS).enumerate() {
            let layout = if place == 0 { Layout::left_to_right(Align::Center) } else { Layout::right_to_left(Align::Center) };
            ui.allocate_ui_with_layout(vec2(width, ROW), layout, |ui| {
                ui.set_min_width(width);
                ui.add(Label::new(RichText::new(words).color(tokens.ink)).truncate());
            });
        }
    });
}

fn amount(cx: &Cx<'_>, sum: Money) -> String {
    print(sum.to_f64(), Kind::Money, cx.style).number
}

/// What is left after the deposit, where one was asked for.
fn rest(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote) {
    let tokens = cx.tokens;
    let rest = cx.computed.report.offers.iter().find(|offer| offer.quote == Some(quote.id)).and_then(|offer| offer.rest);
    if let Some(rest) = rest {
        row(ui, &cx.label("offer-rest"), &tokens, |ui| figure(ui, cx, rest, Look::ROW));
    }
}

fn buttons(ui: &mut Ui, cx: &mut Cx<'_>, quote: &Quote) {
    let tokens = cx.tokens;
    let (id, on) = (quote.id, cx.setting.at);
    ui.horizontal_wrapped(|ui| {
        if matches!(quote.state, QuoteState::Sent(_)) {
            if button::main(ui, &cx.label("quote-accept-do"), &tokens).clicked() {
                become_of(cx, "edit-quote-accept", id, move |state| match state {
                    QuoteState::Sent(sent) => QuoteState::Accepted { on, sent, fixed: None },
                    other => other,
                });
            }
            if button::plain(ui, &cx.label("quote-decline"), &tokens).clicked() {
                become_of(cx, "edit-quote-decline", id, move |_| QuoteState::Declined { on });
            }
        }
        let replaced = matches!(quote.state, QuoteState::Superseded { .. });
        if !replaced && button::plain(ui, &cx.label("quote-replace"), &tokens).clicked() {
            let new = next_id(cx.job);
            replace(cx, quote, new);
            choose(ui, cx, Chosen::Quote(new));
        }
    });
}

fn become_of(cx: &mut Cx<'_>, key: &str, id: QuoteId, change: impl FnOnce(QuoteState) -> QuoteState + 'static) {
    cx.edit(key, move |job| {
        if let Some(quote) = job.quotes.iter_mut().find(|quote| quote.id == id) {
            quote.state = change(std::mem::take(&mut quote.state));
        }
    });
}

/// A new draft with the same terms. What was sent stays as it was; what was declined stays declined.
fn replace(cx: &mut Cx<'_>, quote: &Quote, new: QuoteId) {
    let (id, made) = (quote.id, Some(cx.setting.at));
    let draft = Quote { id: new, made, valid_until: None, state: QuoteState::Draft, ..quote.clone() };
    cx.edit("edit-quote-replace", move |job| {
        if let Some(quote) = job.quotes.iter_mut().find(|quote| quote.id == id) {
            quote.state = match std::mem::take(&mut quote.state) {
                QuoteState::Sent(sent) | QuoteState::Accepted { sent, .. } => QuoteState::Superseded { by: new, sent: Some(sent) },
                other => other,
            };
        }
        job.quotes.push(draft);
    });
}
