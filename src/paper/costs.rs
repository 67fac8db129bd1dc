//! What the metal costs, for the studio only: it stands on the last page, which stays in the house.

use super::block::{Block, Side, Table};
use super::desk::{Desk, Ordered};
use super::words::metal_name;
use crate::calc::AlloyPrice;
use crate::job::Job;

/// Prices of the day, and the metal of every line by them.
pub(super) fn costs(desk: &Desk<'_>) -> Vec<Block> {
    let report = desk.input.report;
    if report.prices.is_empty() && report.lines.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![desk.heading("sheet-costs"), Block::Words(desk.label("costs-why"))];
    if !report.prices.is_empty() {
        blocks.push(Block::Table(prices(desk)));
    }
    if !report.lines.is_empty() {
        blocks.extend([Block::Words(String::new()), Block::Table(lines(desk))]);
    }
    blocks
}

fn prices(desk: &Desk<'_>) -> Table {
    let mut table = desk.table(&[
        ("column-alloy", Side::Left),
        ("column-per-gram", Side::Decimal),
        ("column-price-of", Side::Left),
        ("column-price-on", Side::Left),
    ]);
    for price in &desk.input.report.prices {
        table.row([desk.entry(Some(&price.alloy)), desk.figure(price.per_gram), source(desk, price), desk.date(price.on)]);
    }
    table
}

/// What the price was written down for: a fine metal, or the alloy itself.
pub(super) fn source(desk: &Desk<'_>, price: &AlloyPrice) -> String {
    if price.of.is_empty() {
        return desk.label("cause-not-said");
    }
    if price.of == price.alloy.as_str() { desk.entry(Some(&price.alloy)) } else { metal_name(&price.of, desk.words.texts) }
}

fn lines(desk: &Desk<'_>) -> Table {
    let mut table = desk.table(&[
        ("column-client", Side::Left),
        ("column-design", Side::Left),
        ("column-pieces", Side::Right),
        ("column-alloy", Side::Left),
        ("column-rough-all", Side::Decimal),
        ("column-per-gram", Side::Decimal),
        ("column-metal-cost", Side::Decimal),
    ]);
    for figures in &desk.input.report.lines {
        let Some(Ordered { order, line, .. }) = desk.line(figures.line) else { continue };
        table.row([
            desk.text(&order.client),
            desk.text(&line.design),
            Job::charged_pieces_of(line).to_string(),
            desk.entry(line.alloy.as_ref()),
            desk.figure(figures.rough_paid),
            desk.figure(figures.per_gram),
            desk.figure(figures.cost),
        ]);
    }
    table
}
