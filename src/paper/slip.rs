//! The order slip: what goes through the shop with an order's pieces, each by its code.

use super::block::{Block, Field, Page, Side, Table, Thumbnail};
use super::desk::{Desk, Ordered};
use super::pieces::bore;
use super::words::one_line;
use crate::job::{Job, Line, Order, PieceId};

/// The page of an order.
pub(super) fn slip_page(desk: &Desk<'_>, order: &Order) -> Page {
    let title = desk.say("slip-title", &[("order", order.id.to_string().into()), ("client", desk.text(&order.client).into())]);
    let mut blocks = vec![Block::Fields(fields(desk, order)), desk.heading("slip-lines"), Block::Table(lines(desk, order))];
    blocks.extend(remarks(desk, order).into_iter().map(Block::Words));
    let seen = thumbnails(desk, &order.lines);
    if !seen.is_empty() {
        blocks.push(Block::Thumbnails(seen));
    }
    blocks.extend([desk.heading("slip-pieces"), Block::Table(pieces(desk, order))]);
    let more: u32 = order.lines.iter().map(|line| line.quantity.saturating_sub(MOST)).fold(0, u32::saturating_add);
    if more > 0 {
        blocks.push(Block::Words(desk.say("slip-more", &[("count", u64::from(more).into())])));
    }
    blocks.push(Block::Words(desk.label("slip-code-why")));
    Page { title, blocks, ..Page::default() }
}

fn fields(desk: &Desk<'_>, order: &Order) -> Vec<Field> {
    let count: u32 = order.lines.iter().map(Job::pieces_of).fold(0, u32::saturating_add);
    vec![
        desk.field("slip-taken", desk.date(order.taken)),
        desk.field("slip-due", desk.date(order.due)),
        desk.field("column-pieces", count.to_string()),
    ]
}

fn lines(desk: &Desk<'_>, order: &Order) -> Table {
    let mut table = desk
        .table(&[
            ("column-line", Side::Right),
            ("column-design", Side::Left),
            ("column-size", Side::Left),
            ("column-bore", Side::Decimal),
            ("column-pieces", Side::Right),
            ("column-alloy", Side::Left),
            ("column-mark", Side::Left),
            ("column-rough-each", Side::Decimal),
            ("column-due", Side::Left),
            ("column-set", Side::Left),
            ("column-finish", Side::Left),
        ])
        .across();
    for line in &order.lines {
        let figures = desk.line(line.id).and_then(|Ordered { figures, .. }| figures);
        let due = line.due.filter(|due| Some(*due) != order.due);
        table.row([
            line.id.to_string(),
            desk.text(&line.design),
            desk.size(line.size.as_ref()),
            figures.map_or_else(String::new, |figures| bore(desk, figures)),
            Job::pieces_of(line).to_string(),
            desk.entry(line.alloy.as_ref()),
            line.mark_permille.map_or_else(String::new, |mark| desk.fineness(mark.get())),
            figures.map_or_else(String::new, |figures| desk.figure(figures.rough)),
            due.map_or_else(String::new, |due| desk.date(Some(due))),
            one_line(&line.set),
            one_line(&line.finish),
        ]);
    }
    table
}

/// What was written down about the order and its lines. The slip stays in the house.
fn remarks(desk: &Desk<'_>, order: &Order) -> Vec<String> {
    let own = (!order.notes.trim().is_empty()).then(|| one_line(&order.notes));
    let of_line = |line: &Line| {
        let notes = one_line(&line.notes);
        (!notes.is_empty()).then(|| desk.say("slip-remark", &[("line", line.id.to_string().into()), ("words", notes.into())]))
    };
    own.into_iter().chain(order.lines.iter().filter_map(of_line)).collect()
}

/// One picture a pattern, named by its design.
pub(super) fn thumbnails<'l>(desk: &Desk<'_>, lines: impl IntoIterator<Item = &'l Line>) -> Vec<Thumbnail> {
    let mut seen = std::collections::BTreeSet::new();
    let mut all = Vec::new();
    for line in lines {
        let own = line.exceptions.values().filter_map(|exception| exception.pattern);
        for pattern in line.pattern.into_iter().chain(own) {
            let Some(picture) = desk.input.pictures.patterns.get(&pattern) else { continue };
            // A file that several patterns share looks the same at every scale.
            if seen.insert((std::sync::Arc::as_ptr(picture), &line.design)) {
                all.push(Thumbnail { picture: Some(std::sync::Arc::clone(picture)), label: desk.text(&line.design) });
            }
        }
    }
    all
}

/// A row a piece, with a box for each step it goes through.
fn pieces(desk: &Desk<'_>, order: &Order) -> Table {
    let head = |key, side| (desk.label(key), side);
    let ticks = ["slip-made", "slip-cleaned", "slip-on-tree", "slip-cast", "slip-cut"].map(|key| head(key, Side::Tick));
    let mut columns = vec![
        head("column-code", Side::Left),
        head("column-design", Side::Left),
        head("column-size", Side::Left),
        head("column-tree-flask", Side::Left),
    ];
    columns.extend(ticks);
    columns.extend([head("slip-weight", Side::Write), head("slip-finished", Side::Tick), head("slip-delivered", Side::Tick)]);
    let mut table = Table::new(columns);
    for line in &order.lines {
        for number in 1..=line.quantity.min(MOST) {
            let exception = line.exceptions.get(&number);
            if exception.is_some_and(|exception| exception.cancelled) {
                continue;
            }
            let size = exception.and_then(|exception| exception.size.as_ref()).or(line.size.as_ref());
            let piece = PieceId { line: line.id, number };
            let mut row = vec![piece.to_string(), desk.text(&line.design), desk.size(size), where_hung(desk, piece, &order.client)];
            row.resize(table.columns.len(), String::new());
            table.rows.push(row);
        }
    }
    table
}

/// More pieces of one line than any slip can follow one by one.
const MOST: u32 = 400;

/// The tree a piece hangs on, and what is scratched into its flask.
fn where_hung(desk: &Desk<'_>, piece: PieceId, client: &str) -> String {
    let hangs = |hung: &crate::job::Hung| hung.line == piece.line && (hung.numbers.is_empty() || hung.numbers.contains(&piece.number));
    let Some(tree) = desk.input.job.trees.iter().find(|tree| tree.pieces.iter().any(hangs)) else { return String::new() };
    // A tree may be called by whom else it is for.
    let name = if desk.tells(&tree.name, client) { tree.id.to_string() } else { desk.text(&tree.name) };
    match desk.input.job.flasks.iter().find(|flask| flask.tree == Some(tree.id)) {
        Some(flask) => desk.say("tree-in-flask", &[("tree", name.into()), ("flask", desk.scratch(flask.id).into())]),
        None => name,
    }
}
