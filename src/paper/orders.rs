//! The orders: what is open, for whom, until when.

use std::collections::BTreeSet;

use jiff::civil::Date;

use super::block::{Block, Side};
use super::desk::Desk;
use super::pieces::bore;
use crate::calc::LineFigures;
use crate::job::{Job, Line, Order, PieceId, PieceStage, stages};

/// Every line of which a piece is still with the studio, the one due first first.
pub(super) fn open_orders(desk: &Desk<'_>) -> Vec<Block> {
    let delivered = delivered(desk.input.job);
    let mut open: Vec<(Option<Date>, &Order, &Line)> = desk
        .input
        .job
        .lines()
        .filter(|(_, line)| open_pieces(line, &delivered) > 0)
        .map(|(order, line)| (line.due.or(order.due), order, line))
        .collect();
    if open.is_empty() {
        return vec![desk.heading("sheet-orders"), Block::Words(desk.label("sheet-no-orders"))];
    }
    // What has no date stands last.
    open.sort_by_key(|(due, order, line)| (due.is_none(), *due, order.client.clone(), line.id));
    let mut table = desk.table(&[
        ("column-due", Side::Left),
        ("column-client", Side::Left),
        ("column-design", Side::Left),
        ("column-size", Side::Left),
        ("column-bore", Side::Decimal),
        ("column-pieces", Side::Right),
        ("column-alloy", Side::Left),
        ("column-rough-each", Side::Decimal),
        ("column-rough-all", Side::Decimal),
    ]);
    for (due, order, line) in open {
        let figures = desk.line(line.id).and_then(|ordered| ordered.figures);
        let of = |pick: fn(&LineFigures) -> crate::calc::Id| figures.map_or_else(String::new, |figures| desk.figure(pick(figures)));
        table.row([
            desk.date(due),
            desk.text(&order.client),
            desk.text(&line.design),
            desk.size(line.size.as_ref()),
            figures.map_or_else(String::new, |figures| bore(desk, figures)),
            pieces_words(desk, open_pieces(line, &delivered), line),
            desk.entry(line.alloy.as_ref()),
            of(|figures| figures.rough),
            of(|figures| figures.rough_all),
        ]);
    }
    vec![desk.heading("sheet-orders"), Block::Table(table)]
}

/// How many are open, of how many where some are with the client already.
fn pieces_words(desk: &Desk<'_>, open: u32, line: &Line) -> String {
    let all = Job::pieces_of(line);
    if open == all {
        open.to_string()
    } else {
        desk.say("pieces-of", &[("open", open.to_string().into()), ("all", all.to_string().into())])
    }
}

fn open_pieces(line: &Line, delivered: &BTreeSet<PieceId>) -> u32 {
    let gone = delivered.range(PieceId { line: line.id, number: 0 }..=PieceId { line: line.id, number: line.quantity });
    let wanted = |piece: &&PieceId| !line.exceptions.get(&piece.number).is_some_and(|exception| exception.cancelled);
    Job::pieces_of(line).saturating_sub(u32::try_from(gone.filter(wanted).count()).unwrap_or(u32::MAX))
}

/// Pieces the record gives to their clients.
fn delivered(job: &Job) -> BTreeSet<PieceId> {
    stages(job).into_iter().filter(|(_, stage)| *stage == PieceStage::Delivered).map(|(piece, _)| piece).collect()
}
