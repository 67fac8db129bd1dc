//! From a step to the next: which tolls carry over a wait, and back from the next to where the step begins.

use super::span::{TickSpan, merged};
use super::ticks::Ticks;
use super::tolls::{Piece, TAKEN, Toll, Tolls, WAIT};

/// A step's length and the wait after it, in ticks.
#[derive(Debug, Clone)]
pub(super) struct Way {
    pub length: Ticks,
    pub least: Ticks,
    pub most: Option<Ticks>,
    pub strict: bool,
    /// When something else has what the wait keeps; in order, apart from each other.
    taken: Vec<TickSpan>,
}

impl Way {
    /// A way whose wait keeps what others have in `taken`.
    pub fn new(length: Ticks, least: Ticks, most: Option<Ticks>, strict: bool, taken: Vec<TickSpan>) -> Self {
        Self { length, least, most, strict, taken: merged(taken) }
    }

    /// The first that something else has of a wait between two moments.
    pub fn taken_of(&self, from: Ticks, until: Ticks) -> Option<TickSpan> {
        let first = self.taken.get(self.taken.partition_point(|span| span.until <= from))?;
        (from < until && first.from < until).then(|| TickSpan { from: first.from.max(from), until: first.until.min(until) })
    }

    /// The least toll of what was before over the starts of what follows, none of them after `end`.
    pub fn onwards(&self, before: &Tolls, end: Ticks) -> Tolls {
        let mut pieces = Vec::with_capacity(2 * before.pieces().len());
        let always = TickSpan { from: Ticks::MIN, until: end };
        if self.taken.is_empty() {
            self.carry(before, always, 0, &mut pieces);
            return Tolls::least_of(pieces);
        }
        self.carry(before, always, TAKEN, &mut pieces);
        let begins = std::iter::once(Ticks::MIN).chain(self.taken.iter().map(|span| span.until));
        let ends = self.taken.iter().map(|span| span.from.min(end)).chain([end]);
        for (from, until) in begins.zip(ends) {
            self.carry(before, TickSpan { from, until }, 0, &mut pieces);
        }
        if self.least == 0 {
            // No wait keeps nothing.
            let at_once = before.pieces().iter();
            pieces.extend(
                at_once.map(|piece| Piece::new(piece.span.from + self.length, end.min(piece.span.until + self.length), piece.toll)),
            );
        }
        Tolls::least_of(pieces)
    }

    /// Carries over waits that begin and end within a stretch.
    fn carry(&self, before: &Tolls, stretch: TickSpan, extra: Toll, pieces: &mut Vec<Piece>) {
        let soonest = self.length + self.least;
        let first = before.pieces().partition_point(|piece| piece.span.until + self.length < stretch.from);
        let mut least_yet = Toll::MAX;
        for piece in before.pieces()[first..].iter().take_while(|piece| piece.span.from + soonest <= stretch.until) {
            let toll = piece.toll + extra;
            let from = (piece.span.from + self.length).max(stretch.from) + self.least;
            let overdue = match self.most {
                None => Some(toll),
                Some(most) => {
                    pieces.push(Piece::new(from, stretch.until.min(piece.span.until + self.length + most), toll));
                    (!self.strict).then_some(toll + WAIT)
                }
            };
            // What comes later and costs no less is never better: whoever waited since the earlier one gets there too.
            if let Some(toll) = overdue.filter(|toll| *toll < least_yet) {
                least_yet = toll;
                pieces.push(Piece::new(from, stretch.until, toll));
            }
        }
    }

    /// The least toll with which the step is in time for what follows, and the latest start that has it.
    pub fn back(&self, tolls: &Tolls, follows: Ticks) -> Option<(Toll, Ticks)> {
        let latest = follows - self.length - self.least;
        let in_time = self.most.map_or(Ticks::MIN, |most| follows - self.length - most);
        let begun = self.taken.partition_point(|span| span.from < follows);
        let kept = begun.checked_sub(1).map_or(Ticks::MIN, |last| self.taken[last].until.min(follows) - self.length);
        // From the latest starts to the earliest, so that of equal tolls the latest start is kept.
        let mut best: Option<(Toll, Ticks)> = None;
        let mut until = latest;
        for from in [in_time.max(kept), in_time.min(kept), Ticks::MIN] {
            let is_overdue = until < in_time;
            let extra = if is_overdue { WAIT } else { 0 } + if until < kept { TAKEN } else { 0 };
            if from <= until {
                if !(is_overdue && self.strict)
                    && let Some((toll, at)) = tolls.least_within(from, until)
                    && best.is_none_or(|(least, _)| toll + extra < least)
                {
                    best = Some((toll + extra, at));
                }
                until = from.saturating_sub(1);
            }
        }
        best
    }
}
