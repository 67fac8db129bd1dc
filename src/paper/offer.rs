//! What one client is offered: the lines with their metal and their work, and sums that agree to the cent.
//!
//! A draft is worked out from today's figures. One that was sent says what was sent, whatever has become of prices since.

use jiff::civil::Date;

use super::desk::Desk;
use crate::calc::{Id, OfferFigures, OfferLineFigures, Value, WorkFor};
use crate::job::{FrozenLine, FrozenPrice, FrozenQuote, Job, Line, LineId, Quote, QuoteId, QuoteState};
use crate::quantity::{Finite, Grams, Money, half_up};
use crate::stock::EntryId;

/// An offer. A sum that is not known is `None`, and so is every total it would go into.
#[derive(Debug, Clone, Default)]
pub(super) struct Offer {
    pub id: Option<QuoteId>,
    pub client: String,
    pub lines: Vec<OfferLine>,
    /// Sums for the whole quote.
    pub besides: Vec<Sum>,
    /// All of them together.
    pub besides_all: Option<Money>,
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

/// Every offer there is to print, as it was computed: per client the quotes that stand, or all their orders where nothing was quoted yet.
pub(super) fn offers(desk: &Desk<'_>) -> Vec<Offer> {
    let all = desk.input.report.offers.iter();
    // A client all of whose pieces were cancelled is offered nothing.
    all.filter(|offer| offer.quote.is_some() || !offer.lines.is_empty()).map(|offer| standing(desk, offer)).collect()
}

/// An offer in words, from its figures or from what was sent.
pub(super) fn standing(desk: &Desk<'_>, figures: &OfferFigures) -> Offer {
    let none = Quote::default();
    let quote = figures.quote.and_then(|id| desk.input.job.quotes.iter().find(|quote| quote.id == id)).unwrap_or(&none);
    match &quote.state {
        QuoteState::Sent(sent) => as_sent(desk, quote, sent, figures),
        QuoteState::Accepted { on, sent, fixed } => Offer { accepted: Some(*on), fixed: *fixed, ..as_sent(desk, quote, sent, figures) },
        _ => draft(desk, quote, figures),
    }
}

fn draft(desk: &Desk<'_>, quote: &Quote, figures: &OfferFigures) -> Offer {
    let (studio, report) = (desk.input.studio, desk.input.report);
    let work = |(what, amount): &(WorkFor, Id)| Sum { what: work_for(desk, what), amount: money(desk, *amount) };
    let lines: Vec<&OfferLineFigures> = figures.lines.iter().collect();
    // In the order of the client's own lines: that of the batch would tell of others.
    let mut alloys: Vec<&EntryId> = Vec::new();
    for alloy in lines.iter().filter_map(|line| desk.line(line.line)?.line.alloy.as_ref()) {
        if !alloys.contains(&alloy) {
            alloys.push(alloy);
        }
    }
    let priced = alloys.into_iter().filter_map(|alloy| report.prices.iter().find(|price| price.alloy == *alloy));
    let prices = priced.map(|price| OfferPrice {
        alloy: desk.entry(Some(&price.alloy)),
        of: super::costs::source(desk, price),
        per_gram: money(desk, price.per_gram),
        on: price.on,
    });
    let [net, tax, total] = figures.sums.map_or([None; 3], |sums| sums.map(|sum| money(desk, sum)));
    let offer = Offer {
        id: figures.quote,
        client: figures.client.clone(),
        besides: figures.besides.iter().map(work).collect(),
        besides_all: figures.besides_all.map_or(Some(Money::ZERO), |all| money(desk, all)),
        prices: prices.collect(),
        net,
        tax,
        tax_share: quote.tax.or(studio.money.tax),
        total,
        currency: studio.money.currency.clone(),
        lines: lines.iter().filter_map(|line| offer_line(desk, line, line.work.iter().map(work).collect())).collect(),
        ..Offer::default()
    };
    dated(desk, quote, figures, offer)
}

/// What a sum is for, in the client's words.
fn work_for(desk: &Desk<'_>, what: &WorkFor) -> String {
    match what {
        WorkFor::Extra(words) => desk.text(words),
        WorkFor::Finishing => desk.label("quote-finishing"),
        WorkFor::Making => desk.label("quote-making"),
    }
}

/// What a quote says beside its figures.
fn dated(desk: &Desk<'_>, quote: &Quote, figures: &OfferFigures, offer: Offer) -> Offer {
    let terms_of = &desk.input.studio.money;
    let deposit = quote.deposit.map(|deposit| Money::rounded(deposit.decimal(), 2).unwrap_or(deposit));
    let rest = figures.rest.and_then(|rest| money(desk, rest));
    let made = offer.sent.or(quote.made).unwrap_or(desk.input.setting.at);
    // Where the studio says nothing, a quote holds as long as the metal price in it.
    let days = terms_of.quote_days.or(terms_of.price_days).unwrap_or(crate::calc::PRICE_DAYS);
    let valid_until = quote.valid_until.or_else(|| made.checked_add(jiff::Span::new().try_days(i64::from(days)).ok()?).ok());
    let terms = if quote.terms.trim().is_empty() { &terms_of.words } else { &quote.terms };
    Offer { deposit, rest, valid_until, terms: terms.clone(), ..offer }
}

fn offer_line(desk: &Desk<'_>, offered: &OfferLineFigures, work: Vec<Sum>) -> Option<OfferLine> {
    let line = desk.line(offered.line)?.line;
    let figures = desk.input.report.lines.get(offered.index)?;
    let grams = |id: Id| desk.input.book.value(id).decimal().and_then(|grams| Grams::new(half_up(grams, 2)));
    Some(OfferLine {
        line: line.id,
        text: line_text(desk, line),
        quantity: Job::charged_pieces_of(line),
        each: grams(figures.rough),
        grams: grams(figures.rough_paid),
        per_gram: money(desk, figures.per_gram),
        metal: money(desk, figures.cost),
        work,
        other: offered.other.map_or(Some(Money::ZERO), |other| money(desk, other)),
        sum: money(desk, offered.sum),
    })
}

/// Design, size and alloy of a line, as a client reads them.
fn line_text(desk: &Desk<'_>, line: &Line) -> String {
    let alloy = line.alloy.as_ref().map_or_else(String::new, |alloy| desk.entry(Some(alloy)));
    let parts = [desk.text(&line.design), desk.size(line.size.as_ref()), alloy];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// An offer as it was sent.
fn as_sent(desk: &Desk<'_>, quote: &Quote, sent: &FrozenQuote, figures: &OfferFigures) -> Offer {
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
    let besides = Some(sent.besides).filter(|sum| *sum != Money::ZERO);
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
    dated(desk, quote, figures, offer)
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
        besides: offer.besides_all?,
        net: offer.net?,
        tax: offer.tax?,
        total: offer.total?,
        currency: offer.currency.clone(),
    })
}

/// The money of a figure, to print; `None` where it is not known.
fn money(desk: &Desk<'_>, figure: Id) -> Option<Money> {
    match desk.input.book.value(figure) {
        Value::Money(money) => Some(money),
        _ => None,
    }
}
