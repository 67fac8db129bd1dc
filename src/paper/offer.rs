//! What one client is offered: the lines with their metal and their work, and sums that agree to the cent.
//!
//! A draft is worked out from today's figures. One that was sent says what was sent, whatever has become of prices since.

use jiff::civil::Date;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;

use super::desk::Desk;
use crate::calc::{LineFigures, Value};
use crate::job::{Extra, FrozenLine, FrozenPrice, FrozenQuote, Job, Line, LineId, Order, Quote, QuoteId, QuoteState};
use crate::quantity::{Finite, Grams, Money};
use crate::stock::EntryId;

/// An offer. A sum that is not known is `None`, and so is every total it would go into.
#[derive(Debug, Clone, Default)]
pub(super) struct Offer {
    pub id: Option<QuoteId>,
    pub client: String,
    pub lines: Vec<OfferLine>,
    /// Sums for the whole quote.
    pub besides: Vec<Sum>,
    pub prices: Vec<OfferPrice>,
    pub net: Option<Money>,
    pub tax: Option<Money>,
    pub tax_share: Option<Finite>,
    pub total: Option<Money>,
    pub deposit: Option<Money>,
    /// What is left to pay after the deposit.
    pub rest: Option<Money>,
    pub currency: String,
    pub valid_until: Option<Date>,
    pub terms: String,
    pub sent: Option<Date>,
    pub accepted: Option<Date>,
    pub fixed: Option<Grams>,
}

/// One line of an offer.
#[derive(Debug, Clone)]
pub(super) struct OfferLine {
    pub line: LineId,
    pub text: String,
    pub quantity: u32,
    /// Not kept in what was sent.
    pub each: Option<Grams>,
    pub grams: Option<Grams>,
    pub per_gram: Option<Money>,
    pub metal: Option<Money>,
    pub work: Vec<Sum>,
    pub other: Option<Money>,
    pub sum: Option<Money>,
}

/// A sum with what it is for.
#[derive(Debug, Clone)]
pub(super) struct Sum {
    pub what: String,
    pub amount: Option<Money>,
}

/// A metal price as the offer rests on it.
#[derive(Debug, Clone)]
pub(super) struct OfferPrice {
    pub alloy: String,
    pub of: String,
    pub per_gram: Option<Money>,
    pub on: Option<Date>,
}

/// Every offer there is to print: per client the quotes that stand, or all their orders where nothing was quoted yet.
pub(super) fn offers(desk: &Desk<'_>) -> Vec<Offer> {
    let job = desk.input.job;
    let mut clients: Vec<&str> = job.orders.iter().map(|order| order.client.trim()).collect();
    clients.extend(job.quotes.iter().map(|quote| quote.client.trim()));
    clients.sort_unstable();
    clients.dedup();
    clients.into_iter().flat_map(|client| offers_to(desk, client)).collect()
}

fn offers_to(desk: &Desk<'_>, client: &str) -> Vec<Offer> {
    let quotes: Vec<&Quote> = desk.input.job.quotes.iter().filter(|quote| quote.client.trim() == client).collect();
    if quotes.is_empty() {
        let whole = Quote { client: client.to_owned(), ..Quote::default() };
        return Some(draft(desk, &whole, None)).filter(|offer| !offer.lines.is_empty()).into_iter().collect();
    }
    quotes.into_iter().filter_map(|quote| standing(desk, quote)).collect()
}

/// A quote as it stands; `None` for one that was declined or replaced.
pub(super) fn standing(desk: &Desk<'_>, quote: &Quote) -> Option<Offer> {
    match &quote.state {
        QuoteState::Draft => Some(draft(desk, quote, Some(quote.id))),
        QuoteState::Sent(sent) => Some(as_sent(desk, quote, sent)),
        QuoteState::Accepted { on, sent, fixed } => Some(Offer { accepted: Some(*on), fixed: *fixed, ..as_sent(desk, quote, sent) }),
        QuoteState::Superseded { .. } | QuoteState::Declined { .. } => None,
    }
}

fn draft(desk: &Desk<'_>, quote: &Quote, id: Option<QuoteId>) -> Offer {
    let (studio, report) = (desk.input.studio, desk.input.report);
    let client = quote.client.trim();
    let margin = quote.margin.or(studio.money.margin);
    let orders = desk.input.job.orders.iter().filter(|order| order.client.trim() == client);
    let covered = orders.filter(|order| quote.orders.is_empty() || quote.orders.contains(&order.id));
    let pairs: Vec<(&Order, &Line)> = covered.flat_map(|order| order.lines.iter().map(move |line| (order, line))).collect();
    let live: Vec<&Line> = pairs.into_iter().map(|(_, line)| line).filter(|line| Job::pieces_of(line) > 0).collect();
    let price = |extra: &Extra| Sum { what: desk.text(&extra.what), amount: priced(extra, studio.money.hour, margin) };
    let lines: Vec<OfferLine> = live
        .iter()
        .map(|line| {
            let work = quote.extras.iter().filter(|extra| extra.line == Some(line.id)).map(price).collect();
            offer_line(desk, line, desk.line(line.id).and_then(|found| found.figures), work)
        })
        .collect();
    // What names a line that is not in the quote is still owed: it counts for the whole.
    let own = |extra: &&Extra| extra.line.is_none_or(|id| live.iter().all(|line| line.id != id));
    let besides: Vec<Sum> = quote.extras.iter().filter(own).map(price).collect();
    let net = add(lines.iter().map(|line| line.sum).chain(besides.iter().map(|sum| sum.amount)));
    // In the order of the client's own lines: that of the batch would tell of others.
    let mut alloys: Vec<&EntryId> = Vec::new();
    for alloy in live.iter().filter_map(|line| line.alloy.as_ref()) {
        if !alloys.contains(&alloy) {
            alloys.push(alloy);
        }
    }
    let priced = alloys.into_iter().filter_map(|alloy| report.prices.iter().find(|price| price.alloy == *alloy));
    let prices = priced.map(|price| OfferPrice {
        alloy: desk.entry(Some(&price.alloy)),
        of: super::costs::source(desk, price),
        per_gram: money_of(desk.input.book.value(price.per_gram)),
        on: price.on,
    });
    let offer = Offer {
        id,
        client: client.to_owned(),
        besides,
        prices: prices.collect(),
        net,
        currency: studio.money.currency.clone(),
        lines,
        ..Offer::default()
    };
    with_terms(desk, quote, offer)
}

/// Tax, total, deposit, validity and terms.
fn with_terms(desk: &Desk<'_>, quote: &Quote, offer: Offer) -> Offer {
    let studio = desk.input.studio;
    let tax_share = quote.tax.or(studio.money.tax);
    let tax = match tax_share {
        None => Some(Money::ZERO),
        Some(share) => offer.net.and_then(|net| part(net, share)),
    };
    let total = offer.net.zip(tax).and_then(|(net, tax)| net.checked_add(tax));
    dated(desk, quote, Offer { tax, tax_share, total, ..offer })
}

/// What a quote says beside its figures.
fn dated(desk: &Desk<'_>, quote: &Quote, offer: Offer) -> Offer {
    let money = &desk.input.studio.money;
    let deposit = quote.deposit.and_then(|deposit| Money::rounded(deposit.decimal(), 2));
    let rest = offer.total.zip(deposit).and_then(|(total, deposit)| total.checked_sub(deposit));
    let made = offer.sent.or(quote.made).unwrap_or(desk.input.setting.at);
    // Where the studio says nothing, a quote holds as long as the metal price in it.
    let days = money.quote_days.or(money.price_days).unwrap_or(crate::calc::PRICE_DAYS);
    let valid_until = quote.valid_until.or_else(|| made.checked_add(jiff::Span::new().try_days(i64::from(days)).ok()?).ok());
    let terms = if quote.terms.trim().is_empty() { &money.words } else { &quote.terms };
    Offer { deposit, rest, valid_until, terms: terms.clone(), ..offer }
}

fn offer_line(desk: &Desk<'_>, line: &Line, figures: Option<&LineFigures>, work: Vec<Sum>) -> OfferLine {
    let value = |id: Option<crate::calc::Id>| id.map_or(Value::Missing(crate::calc::Cause::NotSaid), |id| desk.input.book.value(id));
    let grams = |value: Value| value.decimal().and_then(|grams| Grams::new(round2(grams)));
    let metal = money_of(value(figures.map(|figures| figures.cost)));
    let other = add(work.iter().map(|sum| sum.amount));
    OfferLine {
        line: line.id,
        text: line_text(desk, line),
        quantity: Job::pieces_of(line),
        each: grams(value(figures.map(|figures| figures.rough))),
        grams: grams(value(figures.map(|figures| figures.rough_all))),
        per_gram: money_of(value(figures.map(|figures| figures.per_gram))),
        metal,
        work,
        other,
        sum: metal.zip(other).and_then(|(metal, other)| metal.checked_add(other)),
    }
}

/// Design, size and alloy of a line, as a client reads them.
fn line_text(desk: &Desk<'_>, line: &Line) -> String {
    let alloy = line.alloy.as_ref().map_or_else(String::new, |alloy| desk.entry(Some(alloy)));
    let parts = [desk.text(&line.design), desk.size(line.size.as_ref()), alloy];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// An offer as it was sent.
fn as_sent(desk: &Desk<'_>, quote: &Quote, sent: &FrozenQuote) -> Offer {
    let line = |line: &FrozenLine| OfferLine {
        line: line.line,
        text: desk.text(&line.text),
        quantity: line.quantity,
        each: None,
        grams: Some(line.grams),
        per_gram: Some(line.per_gram),
        metal: Some(line.metal),
        work: Vec::new(),
        other: Some(line.other),
        sum: Some(line.sum),
    };
    let price = |price: &FrozenPrice| OfferPrice {
        alloy: String::new(),
        of: super::words::metal_name(&price.of, desk.words.texts),
        per_gram: Some(price.per_gram),
        on: price.on,
    };
    // What was asked for the whole quote was sent as part of its total only.
    let lines = add(sent.lines.iter().map(|line| Some(line.sum)));
    let besides = lines.and_then(|lines| sent.net.checked_sub(lines)).filter(|sum| *sum != Money::ZERO);
    let offer = Offer {
        id: Some(quote.id),
        client: quote.client.trim().to_owned(),
        lines: sent.lines.iter().map(line).collect(),
        besides: besides.map(|amount| Sum { what: desk.label("quote-besides"), amount: Some(amount) }).into_iter().collect(),
        prices: sent.prices.iter().map(price).collect(),
        net: Some(sent.net),
        tax: Some(sent.tax),
        tax_share: None,
        total: Some(sent.total),
        currency: sent.currency.clone(),
        sent: sent.on,
        ..Offer::default()
    };
    dated(desk, quote, offer)
}

/// A draft's figures as they are frozen when it is sent on `on`; `None` where a sum in it is not known.
pub(super) fn freeze(desk: &Desk<'_>, offer: &Offer, on: Date) -> Option<FrozenQuote> {
    let line = |line: &OfferLine| {
        Some(FrozenLine {
            line: line.line,
            text: line.text.clone(),
            quantity: line.quantity,
            grams: line.grams?,
            per_gram: line.per_gram?,
            metal: line.metal?,
            other: line.other?,
            sum: line.sum?,
        })
    };
    let price = |price: &OfferPrice| {
        let args = [("alloy", (&price.alloy).into()), ("of", (&price.of).into())];
        let of = if price.alloy == price.of { price.alloy.clone() } else { desk.say("quote-price-of", &args) };
        Some(FrozenPrice { of, per_gram: price.per_gram?, on: price.on })
    };
    Some(FrozenQuote {
        on: Some(on),
        lines: offer.lines.iter().map(line).collect::<Option<_>>()?,
        prices: offer.prices.iter().map(price).collect::<Option<_>>()?,
        net: offer.net?,
        tax: offer.tax?,
        total: offer.total?,
        currency: offer.currency.clone(),
    })
}

/// Minutes at the studio's rate and a fixed amount, with the margin, to the cent.
fn priced(extra: &Extra, hour: Option<Money>, margin: Option<Finite>) -> Option<Money> {
    let time = match extra.minutes {
        None => Decimal::ZERO,
        Some(minutes) => hour?.decimal().checked_mul(Decimal::from_f64(minutes.get())?)?.checked_div(Decimal::from(60))?,
    };
    let base = time.checked_add(extra.amount.unwrap_or(Money::ZERO).decimal())?;
    let factor = Decimal::ONE.checked_add(margin.map_or(Some(Decimal::ZERO), |margin| Decimal::from_f64(margin.get()))?)?;
    Money::rounded(base.checked_mul(factor)?, 2)
}

/// A share of a sum, to the cent.
fn part(of: Money, share: Finite) -> Option<Money> {
    Money::rounded(of.decimal().checked_mul(Decimal::from_f64(share.get())?)?, 2)
}

/// `None` where one of them is not known, or the sum is too large.
fn add(mut sums: impl Iterator<Item = Option<Money>>) -> Option<Money> {
    sums.try_fold(Money::ZERO, |sum, next| sum.checked_add(next?))
}

fn money_of(value: Value) -> Option<Money> {
    match value {
        Value::Money(money) => Some(money),
        _ => None,
    }
}

fn round2(number: Decimal) -> Decimal {
    number.round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero)
}
