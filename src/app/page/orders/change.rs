//! What is changed on the page of orders, by id.

use crate::app::cx::Cx;
use crate::job::carry::{Copied, named_entries};
use crate::job::{From, Job, Line, LineId, Order, OrderId, PatternId, PieceException, PieceId};

/// Changes an order.
pub fn order(cx: &mut Cx<'_>, key: &str, id: OrderId, change: impl FnOnce(&mut Order) + 'static) {
    cx.edit(key, move |job| {
        if let Some(order) = job.orders.iter_mut().find(|order| order.id == id) {
            change(order);
        }
    });
}

/// Changes a line.
pub fn line(cx: &mut Cx<'_>, key: &str, id: LineId, change: impl FnOnce(&mut Line) + 'static) {
    cx.edit(key, move |job| {
        if let Some(line) = job.orders.iter_mut().flat_map(|order| &mut order.lines).find(|line| line.id == id) {
            change(line);
        }
    });
}

/// Changes what differs for one piece; a piece that is like the others is not kept.
pub fn piece(cx: &mut Cx<'_>, key: &str, (id, number): (LineId, u32), change: impl FnOnce(&mut PieceException) + 'static) {
    line(cx, key, id, move |line| {
        let mut own = line.exceptions.remove(&number).unwrap_or_default();
        change(&mut own);
        if own != PieceException::default() {
            line.exceptions.insert(number, own);
        }
    });
}

/// The id the next order gets.
pub fn next_order(job: &Job) -> OrderId {
    OrderId(job.orders.iter().map(|order| order.id.0).max().unwrap_or(0) + 1)
}

/// A new order with its first line.
pub fn add_order(job: &mut Job) {
    let id = next_order(job);
    let line = Line { id: next_line(job), quantity: 1, ..Line::default() };
    job.orders.push(Order { id, taken: job.made, lines: vec![line], ..Order::default() });
}

/// A new line of an order; like another where one is named.
pub fn add_line(job: &mut Job, order: OrderId, like: Option<LineId>) {
    let id = next_line(job);
    let like = job.lines().find(|(_, line)| Some(line.id) == like).map(|(_, line)| line.clone());
    let line = Line { id, quantity: 1, ..like.unwrap_or_default() };
    // What was taken on, and what differs for single pieces, belongs to the other line's pieces.
    let line = Line { exceptions: std::collections::BTreeMap::new(), ..line };
    if let Some(order) = job.orders.iter_mut().find(|other| other.id == order) {
        order.lines.push(line);
    }
}

/// The id the next line gets.
pub fn next_line(job: &Job) -> LineId {
    LineId(job.lines().map(|(_, line)| line.id.0).max().unwrap_or(0) + 1)
}

/// So many pieces of a line, and nothing left that is said of more.
pub fn quantity(job: &mut Job, id: LineId, pieces: u32) {
    let beyond = |number: &u32| *number > pieces;
    for line in job.orders.iter_mut().flat_map(|order| &mut order.lines) {
        if line.id == id {
            line.quantity = pieces;
            line.exceptions.retain(|number, _| !beyond(number));
        }
        for exception in line.exceptions.values_mut() {
            exception.remake_of = exception.remake_of.filter(|piece| piece.line != id || !beyond(&piece.number));
        }
    }
    for tree in &mut job.trees {
        tree.pieces.retain_mut(|hung| {
            let some = hung.line == id && !hung.numbers.is_empty();
            if some {
                hung.numbers.retain(|number| !beyond(number));
            }
            // No number at all would mean all of them.
            !some || !hung.numbers.is_empty()
        });
    }
    crate::job::check::let_go(job);
}

/// Takes a line out, off the trees too.
pub fn remove_line(job: &mut Job, id: LineId) {
    for order in &mut job.orders {
        order.lines.retain(|line| line.id != id);
    }
    for tree in &mut job.trees {
        tree.pieces.retain(|hung| hung.line != id);
    }
    for exception in job.orders.iter_mut().flat_map(|order| &mut order.lines).flat_map(|line| line.exceptions.values_mut()) {
        exception.remake_of = exception.remake_of.filter(|piece| piece.line != id);
    }
}

/// Takes an order out with its lines.
pub fn remove_order(job: &mut Job, id: OrderId) {
    let lines: Vec<LineId> = job.orders.iter().filter(|order| order.id == id).flat_map(|order| &order.lines).map(|line| line.id).collect();
    for line in lines {
        remove_line(job, line);
    }
    job.orders.retain(|order| order.id != id);
}

/// Takes pieces of a line of another job on: under an order of the same client and date, each piece with where it came from.
pub fn take_on(job: &mut Job, from: &Job, order: &Order, line: &Line, numbers: &[u32]) {
    let pattern = line.pattern.and_then(|id| carry_pattern(job, from, id));
    let id = next_line(job);
    let mut exceptions = std::collections::BTreeMap::new();
    for (number, there) in (1_u32..).zip(numbers) {
        let own = line.exceptions.get(there).cloned().unwrap_or_default();
        let piece = PieceId { line: line.id, number: *there };
        // A remake names a piece by the other job's lines, which say something else here.
        let own_pattern = own.pattern.and_then(|id| carry_pattern(job, from, id));
        exceptions
            .insert(number, PieceException { from: Some(From { job: from.job_id, piece }), pattern: own_pattern, remake_of: None, ..own });
    }
    let quantity = u32::try_from(numbers.len()).unwrap_or(u32::MAX);
    let taken = Line { id, quantity, pattern, exceptions, due: line.due, ..line.clone() };
    let same = |other: &&mut Order| other.client.trim() == order.client.trim() && other.due == order.due;
    if let Some(here) = job.orders.iter_mut().find(same) {
        here.lines.push(taken);
    } else {
        let id = next_order(job);
        job.orders.push(Order { id, lines: vec![taken], ..order.clone() });
    }
}

/// Copies of shelf entries that came with what was taken on, where the studio's own shelf has none of that name.
pub fn carry_copies(job: &mut Job, copies: &[Copied]) {
    let named = named_entries(job);
    for copied in copies {
        let id = copied.entry.id();
        if named.contains(id) && job.shelf.iter().all(|other| other.entry.id() != id) {
            job.shelf.push(copied.clone());
        }
    }
}

/// The pattern of another job here: the same one where it was carried over before.
fn carry_pattern(job: &mut Job, from: &Job, id: PatternId) -> Option<PatternId> {
    let pattern = from.patterns.iter().find(|pattern| pattern.id == id)?;
    let same = |other: &&crate::job::Pattern| crate::job::Pattern { id, ..(*other).clone() } == *pattern;
    if let Some(here) = job.patterns.iter().find(same) {
        return Some(here.id);
    }
    let next = crate::app::page::next_pattern(job);
    job.patterns.push(crate::job::Pattern { id: next, ..pattern.clone() });
    Some(next)
}
