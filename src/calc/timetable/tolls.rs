//! What a start costs, over a stretch of time, piece by piece.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::span::TickSpan;
use super::ticks::Ticks;

/// A toll: what is worse by kind outweighs any number of what is less bad, as far as there are at most [`super::check::MOST_STEPS`] of
/// each.
pub(super) type Toll = u32;

/// A wait that is longer than allowed.
pub(super) const WAIT: Toll = 1;
/// A step outside working hours.
pub(super) const HOURS: Toll = 1 << 8;
/// A step that uses what is taken.
pub(super) const TAKEN: Toll = 1 << 16;

/// A toll over a span.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Piece {
    pub span: TickSpan,
    pub toll: Toll,
}

impl Piece {
    pub const fn new(from: Ticks, until: Ticks, toll: Toll) -> Self {
        Self { span: TickSpan { from, until }, toll }
    }
}

/// Tolls over time: pieces in order and apart from each other; between them no start is possible at all.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Tolls {
    pieces: Vec<Piece>,
}

impl Tolls {
    /// One moment, free of toll.
    pub fn at_one_moment(at: Ticks) -> Self {
        Self { pieces: vec![Piece::new(at, at, 0)] }
    }

    /// At every moment the least toll of the pieces it lies in.
    pub fn least_of(mut pieces: Vec<Piece>) -> Self {
        pieces.retain(|piece| piece.span.from <= piece.span.until);
        pieces.sort_unstable_by_key(|piece| piece.span);
        let mut out = Self { pieces: Vec::with_capacity(pieces.len()) };
        let mut begun: BinaryHeap<Reverse<(Toll, Ticks)>> = BinaryHeap::new();
        let mut coming = pieces.iter().peekable();
        let Some(mut at) = coming.peek().map(|piece| piece.span.from) else { return out };
        loop {
            while let Some(piece) = coming.next_if(|piece| piece.span.from <= at) {
                begun.push(Reverse((piece.toll, piece.span.until)));
            }
            while begun.peek().is_some_and(|Reverse((_, until))| *until < at) {
                begun.pop();
            }
            let next = coming.peek().map(|piece| piece.span.from);
            match (begun.peek(), next) {
                (None, None) => return out,
                (None, Some(next)) => at = next,
                (Some(Reverse((toll, until))), next) => {
                    let until = next.map_or(*until, |next| (*until).min(next - 1));
                    out.push(Piece::new(at, until, *toll));
                    at = until + 1;
                }
            }
        }
    }

    fn push(&mut self, piece: Piece) {
        match self.pieces.last_mut() {
            Some(last) if last.toll == piece.toll && last.span.until + 1 == piece.span.from => last.span.until = piece.span.until,
            _ => self.pieces.push(piece),
        }
    }

    /// Both tolls together, where both are possible.
    pub fn plus(&self, other: &Self) -> Self {
        let (mut a, mut b, mut out) = (0, 0, Self::default());
        while let (Some(x), Some(y)) = (self.pieces.get(a), other.pieces.get(b)) {
            let (from, until) = (x.span.from.max(y.span.from), x.span.until.min(y.span.until));
            if from <= until {
                out.push(Piece::new(from, until, x.toll + y.toll));
            }
            if x.span.until < y.span.until {
                a += 1;
            } else {
                b += 1;
            }
        }
        out
    }

    /// The part that is not before a moment.
    pub fn not_before(&self, at: Ticks) -> Self {
        let later = self.pieces.iter().filter(|piece| piece.span.until >= at);
        Self { pieces: later.map(|piece| Piece::new(piece.span.from.max(at), piece.span.until, piece.toll)).collect() }
    }

    /// Its pieces.
    pub fn pieces(&self) -> &[Piece] {
        &self.pieces
    }

    /// The spans that are free of toll.
    pub fn free(&self) -> impl DoubleEndedIterator<Item = TickSpan> {
        self.pieces.iter().filter(|piece| piece.toll == 0).map(|piece| piece.span)
    }

    /// The least toll between two moments, both included, and the latest moment that has it.
    pub fn least_within(&self, from: Ticks, until: Ticks) -> Option<(Toll, Ticks)> {
        let end = self.pieces.partition_point(|piece| piece.span.from <= until);
        let within = self.pieces[..end].iter().rev().take_while(|piece| piece.span.until >= from);
        // Of equal ones the first is kept, which is the latest.
        within.map(|piece| (piece.toll, piece.span.until.min(until))).min_by_key(|(toll, _)| *toll)
    }
}
