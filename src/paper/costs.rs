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
    let head = |key, side| (desk.label(key), side);
    let mut table = Table::new(vec![
        head("column-alloy", Side::Left),
        head("column-per-gram", Side::Decimal),
        head("column-price-of", Side::Left),
        head("column-price-on", Side::Left),
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
    let head = |key, side| (desk.label(key), side);
    let mut table = Table::new(vec![
        head("column-client", Side::Left),
        head("column-design", Side::Left),
        head("column-pieces", Side::Right),
        head("column-alloy", Side::Left),
        head("column-rough-all", Side::Decimal),
        head("column-per-gram", Side::Decimal),
        head("column-metal-cost", Side::Decimal),
    ]);
    for figures in &desk.input.report.lines {
        let Some(Ordered { order, line, .. }) = desk.line(figures.line) else { continue };
        table.row([
            desk.text(&order.client),
            desk.text(&line.design),
            Job::pieces_of(line).to_string(),
            desk.entry(line.alloy.as_ref()),
            desk.figure(figures.rough_all),
            desk.figure(figures.per_gram),
            desk.figure(figures.cost),
        ]);
    }
    table
}
