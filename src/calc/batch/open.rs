//! The pieces that hang on no tree yet, with what a plan has to know of each; and why some cannot be planned.

use std::collections::{BTreeMap, BTreeSet};

use super::places::Body;
use crate::job::{Hung, Job, Line, LineId, Order, OrderId, PatternId, PieceId, PieceStage, stages};
use crate::stock::{EntryId, Section};

/// Why a piece is left out before anything is planned.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unknown {
    /// Its line has no alloy.
    NoAlloy,
    /// The alloy is not on the shelf.
    AlloyNotOnShelf(EntryId),
    /// It has no pattern.
    NoPattern,
    /// Its pattern's file is still being read.
    BeingRead,
    /// Its pattern has neither weight nor a file with a volume.
    NoVolume,
    /// Nothing says how large its pattern is.
    NoSize,
    /// The crucible that was chosen must not melt its alloy.
    CrucibleWrong {
        /// The crucible.
        crucible: EntryId,
        /// The alloy.
        alloy: EntryId,
    },
}

/// A piece that can be planned.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Which.
    pub id: PieceId,
    /// Its order.
    pub order: OrderId,
    /// The word its set is kept together by; empty where it belongs to none.
    pub set: String,
    /// Its pattern.
    pub pattern: PatternId,
    /// Its alloy, by its place among those of the plan.
    pub alloy: usize,
    /// Its box.
    pub body: Body,
    /// Its section, where it was said.
    pub section: Option<Section>,
    /// It cannot be made again.
    pub irreplaceable: bool,
    /// Its metal with its feed, in milligrams, rounded up.
    pub metal_mg: u64,
    /// The day it is due, counted from 1970; far off where none was said.
    pub due: i64,
}

/// Due after everything that has a date.
pub(super) const NO_DATE: i64 = i64::MAX / 4;

/// Every piece that hangs on no tree, is wanted and was not cast by the record, in the order of the job.
#[must_use]
pub fn open_pieces(job: &Job) -> Vec<(&Order, &Line, u32)> {
    let mut hung: BTreeMap<LineId, Vec<&Hung>> = BTreeMap::new();
    for row in job.trees.iter().flat_map(|tree| &tree.pieces) {
        hung.entry(row.line).or_default().push(row);
    }
    let stages = stages(job);
    let mut open = Vec::new();
    for (order, line) in job.lines() {
        let rows = hung.get(&line.id).map(Vec::as_slice).unwrap_or_default();
        if rows.iter().any(|row| row.numbers.is_empty()) {
            continue;
        }
        let taken: BTreeSet<u32> = rows.iter().flat_map(|row| row.numbers.iter().copied()).collect();
        let wanted = |number: &u32| {
            let cancelled = line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
            let piece = PieceId { line: line.id, number: *number };
            !cancelled && !taken.contains(number) && stages.get(&piece).is_none_or(|stage| *stage <= PieceStage::OnTree)
        };
        open.extend((1..=line.quantity).filter(wanted).map(|number| (order, line, number)));
    }
    open
}

/// Which pieces go together, by their places in the list: sets of an order, and the two of a pair. A flask holds one alloy, so what is of two
/// alloys is parted by them.
pub(super) fn together(job: &Job, pieces: &[Piece]) -> Vec<Vec<usize>> {
    let mut leader: Vec<usize> = (0..pieces.len()).collect();
    let mut join = |one: usize, other: usize| {
        let (one, other) = (leader[one], leader[other]);
        let (first, second) = (one.min(other), one.max(other));
        leader.iter_mut().filter(|of| **of == second).for_each(|of| *of = first);
    };
    let mut sets: BTreeMap<(OrderId, usize, &str), usize> = BTreeMap::new();
    for (at, piece) in pieces.iter().enumerate().filter(|(_, piece)| !piece.set.is_empty()) {
        let first = *sets.entry((piece.order, piece.alloy, piece.set.as_str())).or_insert(at);
        join(first, at);
    }
    for pattern in &job.patterns {
        let Some(with) = pattern.pair.as_ref().map(|pair| pair.with) else { continue };
        let mut sides: BTreeMap<(OrderId, usize), [Vec<usize>; 2]> = BTreeMap::new();
        for (at, piece) in pieces.iter().enumerate() {
            if let Some(side) = [pattern.id, with].iter().position(|id| *id == piece.pattern) {
                sides.entry((piece.order, piece.alloy)).or_default()[side].push(at);
            }
        }
        for [ones, others] in sides.into_values() {
            ones.into_iter().zip(others).for_each(|(one, other)| join(one, other));
        }
    }
    let mut groups: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    leader.iter().enumerate().for_each(|(at, of)| groups.entry(*of).or_default().push(at));
    groups.into_values().collect()
}
