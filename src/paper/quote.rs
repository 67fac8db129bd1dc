//! Quotes on paper: one document a client, with nothing of another client in it.

use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;

use super::block::{Block, Field, Page, Paper, Side, Table};
use super::desk::{Desk, SheetInput};
use super::offer::{Offer, Sum, freeze, offers, standing};
use super::words::{one_line, with_currency};
use crate::job::{FrozenQuote, QuoteId};
use crate::quantity::{Finite, Grams, Kind, Money, Style, THIN, Units, print};

/// One client's paper.
#[derive(Debug, Clone, PartialEq)]
pub struct ClientPaper {
    /// The client, by letter code.
    pub client: String,
    /// The quote; none where they were quoted nothing yet.
    pub quote: Option<QuoteId>,
    /// What they are given.
    pub paper: Paper,
}

/// The quotes of a batch, by client: those that stand, or all orders of a client who was quoted nothing yet. What was declined or replaced
/// is left out.
#[must_use]
pub fn quote_papers(input: &SheetInput<'_>) -> Vec<ClientPaper> {
    let desk = Desk::new(input);
    offers(&desk)
        .iter()
        .map(|offer| ClientPaper { client: offer.client.clone(), quote: offer.id, paper: quote_paper(&desk, offer) })
        .collect()
}

/// The figures of a draft as they are frozen when it is sent today; `None` where there is no such draft or a sum in it is not known.
#[must_use]
pub fn frozen_quote(input: &SheetInput<'_>, id: QuoteId) -> Option<FrozenQuote> {
    let quote = input.job.quotes.iter().find(|quote| quote.id == id && quote.state == crate::job::QuoteState::Draft)?;
    let desk = Desk::new(input);
    let figures = input.report.offers.iter().find(|offer| offer.quote == Some(quote.id))?;
    freeze(&desk, &standing(&desk, figures), input.setting.at)
}

fn quote_paper(desk: &Desk<'_>, offer: &Offer) -> Paper {
    // The batch may be called by whom it is for.
    let mut paper = desk.paper_for(&offer.client, desk.label("quote-foot"));
    paper.title = desk.title(super::Sort::Quote, &offer.client);
    paper.letterhead = Some(desk.letterhead());
    let client = desk.text(&offer.client);
    let title = match offer.id {
        Some(id) => desk.say("quote-title-number", &[("number", id.to_string().into()), ("client", client.into())]),
        None => desk.say("quote-title", &[("client", client.into())]),
    };
    let mut blocks = vec![Block::Fields(dates(desk, offer)), desk.heading("quote-pieces"), Block::Table(lines(desk, offer))];
    blocks.push(Block::Words(desk.label("quote-tolerance")));
    blocks.extend([desk.heading("quote-metal"), Block::Table(prices(desk, offer))]);
    blocks.extend([desk.heading("quote-sums"), Block::Table(sums(desk, offer))]);
    let work = offer.lines.iter().any(|line| line.other.is_some_and(|other| other != Money::ZERO)) || !offer.besides.is_empty();
    if !work {
        blocks.push(Block::Words(desk.label("quote-metal-only")));
    }
    if offer.total.is_none() {
        blocks.push(Block::Words(desk.label("quote-no-total")));
    }
    let terms: Vec<String> = offer.terms.lines().map(one_line).filter(|line| !line.is_empty()).collect();
    if !terms.is_empty() {
        blocks.push(desk.heading("quote-terms"));
        blocks.extend(terms.into_iter().map(Block::Words));
    }
    if offer.total.is_some() {
        blocks.extend([desk.heading("quote-accept"), Block::Words(desk.label("quote-accept-words"))]);
        blocks.push(Block::Sign(vec![desk.label("sign-date"), desk.label("sign-name")]));
    }
    paper.pages = vec![Page { title, blocks, ..Page::default() }];
    paper
}

fn dates(desk: &Desk<'_>, offer: &Offer) -> Vec<Field> {
    let mut fields = Vec::new();
    fields.extend(offer.sent.map(|on| desk.field("quote-sent", desk.date(Some(on)))));
    fields.push(desk.field("quote-valid", desk.date(offer.valid_until)));
    fields.extend(offer.accepted.map(|on| desk.field("quote-accepted", desk.date(Some(on)))));
    fields.extend(offer.fixed.map(|grams| desk.field("quote-fixed", weight(desk, grams))));
    fields
}

/// Pieces with their weights and sums. A line's work stands below it.
fn lines(desk: &Desk<'_>, offer: &Offer) -> Table {
    let mut table = desk
        .table(&[
            ("column-piece", Side::Left),
            ("column-pieces", Side::Right),
            ("column-rough-each", Side::Decimal),
            ("column-rough-all", Side::Decimal),
            ("column-per-gram", Side::Decimal),
            ("column-metal-cost", Side::Decimal),
            ("column-work", Side::Decimal),
            ("column-sum", Side::Decimal),
        ])
        .across();
    for line in &offer.lines {
        let grams = |grams: Option<Grams>| grams.map_or_else(|| desk.label("dash"), |grams| weight(desk, grams));
        let bare = |sum: Option<Money>| sum.map_or_else(|| desk.label("dash"), |sum| number(desk, sum));
        table.row([
            line.text.clone(),
            line.quantity.to_string(),
            grams(line.each),
            grams(line.grams),
            line.per_gram.map_or_else(|| desk.label("dash"), |price| per_gram(desk, price, "")),
            bare(line.metal),
            bare(line.other),
            bare(line.sum),
        ]);
        for Sum { what, amount } in &line.work {
            let what = desk.say("quote-work", &[("what", what.clone().into())]);
            let none = String::new;
            table.row([what, none(), none(), none(), none(), none(), bare(*amount), none()]);
        }
    }
    table
}

fn prices(desk: &Desk<'_>, offer: &Offer) -> Table {
    let mut table = desk.table(&[
        ("column-alloy", Side::Left),
        ("column-per-gram", Side::Decimal),
        ("column-price-of", Side::Left),
        ("column-price-on", Side::Left),
    ]);
    for price in &offer.prices {
        let gram = price.per_gram.map_or_else(|| desk.label("quote-no-price"), |gram| per_gram(desk, gram, &offer.currency));
        let (alloy, of) = if price.alloy.is_empty() { (price.of.clone(), String::new()) } else { (price.alloy.clone(), price.of.clone()) };
        table.row([alloy, gram, of, desk.date(price.on)]);
    }
    table
}

/// Everything that is added up, down to what is to be paid.
fn sums(desk: &Desk<'_>, offer: &Offer) -> Table {
    let mut table = Table::new(vec![(desk.label("column-what"), Side::Left), (desk.label("column-amount"), Side::Decimal)]).across();
    let amount = |sum: Option<Money>| match sum {
        Some(sum) => with_currency(number(desk, sum), "", &offer.currency),
        None => desk.label("cause-not-known"),
    };
    for line in &offer.lines {
        let what = desk.say("quote-line", &[("quantity", line.quantity.to_string().into()), ("what", line.text.clone().into())]);
        table.row([what, amount(line.sum)]);
    }
    for Sum { what, amount: sum } in &offer.besides {
        table.row([what.clone(), amount(*sum)]);
    }
    let tax = offer.tax.filter(|tax| *tax != Money::ZERO || offer.tax_share.is_some());
    if tax.is_some() || offer.net.is_none() {
        table.row([desk.label("quote-net"), amount(offer.net)]);
    }
    if let Some(tax) = tax {
        let label = match offer.tax_share {
            Some(share) => desk.say("quote-tax-share", &[("share", percent(desk, share).into())]),
            None => desk.label("quote-tax"),
        };
        table.row([label, amount(Some(tax))]);
    }
    let before = table.rows.len();
    if offer.total.is_some() {
        table.row([desk.label("quote-total"), amount(offer.total)]);
    }
    if let Some(deposit) = offer.deposit {
        table.row([desk.label("quote-deposit"), amount(Some(deposit))]);
        if offer.rest.is_some() {
            table.row([desk.label("quote-rest"), amount(offer.rest)]);
        }
    }
    table.sums = table.rows.len() - before;
    table
}

/// An amount to the cent.
fn number(desk: &Desk<'_>, amount: Money) -> String {
    print(amount.to_f64(), Kind::Money, desk.words.style).number
}

/// A weight to the hundredth of a gram: rounded there it is multiplied, so a client can follow it. Money has the same two decimals.
fn weight(desk: &Desk<'_>, grams: Grams) -> String {
    format!("{}{THIN}{}", print(grams.to_f64(), Kind::Money, desk.words.style).number, Kind::Mass.unit())
}

/// The price of a gram with the four decimals it is multiplied with.
fn per_gram(desk: &Desk<'_>, price: Money, currency: &str) -> String {
    let style = Style { units: Units::METRIC, ..desk.words.style.finer() };
    let printed = print(price.to_f64(), Kind::PricePerGram, &style);
    if currency.is_empty() { printed.number } else { with_currency(printed.number, printed.unit, currency) }
}

/// A share in per cent, with the digits it was typed with.
fn percent(desk: &Desk<'_>, share: Finite) -> String {
    let typed = Decimal::from_f64(share.get()).and_then(|share| share.checked_mul(Decimal::ONE_HUNDRED));
    let number = typed.map_or_else(|| desk.label("dash"), |share| share.normalize().to_string());
    let number = if desk.words.style.comma { number.replace('.', ",") } else { number };
    format!("{number}{THIN}%")
}
