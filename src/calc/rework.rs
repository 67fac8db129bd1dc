//! Repairs and sizing of cast pieces: what a piece weighs and what fineness the whole of it has afterwards.

use std::collections::{BTreeMap, BTreeSet};

use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub};

use super::book::Id;
use super::finding::{self, Arg};
use super::melt::MeltFigures;
use super::pass::Pass;
use super::piece_weights::PieceWeights;
use super::rule::{givens, inputs, rules};
use super::value::Cause;
use crate::job::{Event, LotKind, PieceId, Place, RecordId, Rework, ReworkBy, pieces_in, standing};
use crate::quantity::Grams;
use crate::stock::{Alloy, Trust};

inputs! {
    /// What the piece weighed before.
    BEFORE "rework.before" Mass;
    /// Metal taken out.
    TAKEN "rework.taken" Mass;
    /// Metal added.
    ADDED "rework.added" Mass;
    /// Fineness of what was added.
    ADDED_FINENESS "rework.added-fineness" Fineness;
    /// Fineness of the piece as it was cast.
    PIECE_FINENESS "rework.piece-fineness" Fineness;
    /// The mark it carries.
    PIECE_MARK "rework.mark" Fineness;
}

givens! {
    /// Nothing taken out.
    NONE_TAKEN "rework.taken" Mass = 0.0; CommonPractice "nothing until it is said"
    /// Nothing added.
    NONE_ADDED "rework.added" Mass = 0.0; CommonPractice "nothing until it is said"
}

rules! {
    /// What a piece weighs after a repair or a sizing.
    AFTER "rework.after" (before: Mass, taken: Mass, added: Mass) -> Mass
        = Exact "before - taken + added" { before.checked_sub(&taken)?.checked_add(&added) };
        Computed "what was there, less what was taken out, and what was added"
    /// Fineness of the whole piece after it, as an assay of all of it would find it.
    FINENESS_AFTER "rework.fineness" (before: Mass, taken: Mass, fineness: Fineness, added: Mass, joined: Fineness) -> Fineness
        = Exact "((before - taken)*fineness + added*joined)/(before - taken + added)" {
            let kept = before.checked_sub(&taken)?;
            let fine: Ratio<i128> = kept.checked_mul(&fineness)?.checked_add(&added.checked_mul(&joined)?)?;
            fine.checked_div(&kept.checked_add(&added)?)
        };
        Computed "the mixing rule over the whole piece; an assay office looks at solder by rules of its own"
}

/// A repair or a sizing.
#[derive(Debug, Clone)]
pub struct ReworkFigures {
    /// The entry that tells it.
    pub entry: RecordId,
    /// The piece.
    pub piece: PieceId,
    /// What it weighs afterwards.
    pub after: Id,
    /// Fineness of the whole of it, where its alloy carries a mark and metal was added or taken.
    pub fineness: Option<Id>,
}

/// What is known of a piece while the record is gone through.
#[derive(Default, Clone, Copy)]
struct Known {
    weight: Option<Id>,
    fineness: Option<Id>,
}

impl Pass<'_> {
    /// Every repair and sizing, in the order of the record.
    pub(super) fn reworks(&mut self, melts: &[MeltFigures]) -> Vec<ReworkFigures> {
        let job = self.job;
        let (mut known, mut all, mut soldered) = (BTreeMap::<PieceId, Known>::new(), Vec::new(), BTreeSet::new());
        let reworked: BTreeSet<PieceId> = standing(&job.record)
            .filter_map(|entry| match &entry.event {
                Event::Reworked { piece, .. } => Some(*piece),
                _ => None,
            })
            .collect();
        if reworked.is_empty() {
            return all;
        }
        for entry in standing(&job.record) {
            match &entry.event {
                Event::PieceWeighed { piece, grams, .. } if reworked.contains(piece) => {
                    known.entry(*piece).or_default().weight = Some(self.book.weighed(&BEFORE, Place::Piece(*piece), *grams));
                }
                Event::Reworked { piece, rework } => {
                    let now = known.entry(*piece).or_default();
                    let figures = self.rework(entry.id, *piece, rework, *now, melts);
                    *now = Known { weight: Some(figures.after), fineness: figures.fineness.or(now.fineness) };
                    soldered.extend((rework.by == ReworkBy::Solder).then_some(*piece));
                    all.push(figures);
                }
                _ => {}
            }
        }
        self.soldered_to_clean(&soldered);
        all
    }

    fn rework(&mut self, entry: RecordId, piece: PieceId, rework: &Rework, known: Known, melts: &[MeltFigures]) -> ReworkFigures {
        let place = Place::Piece(piece);
        let before = known.weight.unwrap_or_else(|| self.book.absent(&BEFORE, place, Cause::NotSaid));
        let mut moved_by = |input, grams: Option<Grams>, none| match grams {
            Some(grams) => self.book.weighed(input, place, grams),
            None => self.book.constant(none),
        };
        let taken = moved_by(&TAKEN, rework.taken, &NONE_TAKEN);
        let added = moved_by(&ADDED, rework.added, &NONE_ADDED);
        let after = self.book.derive(&AFTER, place, [before, taken, added]);
        let moved = rework.taken.is_some() || rework.added.is_some();
        let own = known.fineness.or_else(|| self.own_fineness(piece, melts)).filter(|_| moved);
        let fineness = own.map(|own| {
            let joined = match (rework.added_permille, rework.by) {
                (Some(permille), _) => self.book.entered(&ADDED_FINENESS, place, permille.get()),
                // A weld is made with wire of the piece's own alloy; where nothing was added its fineness weighs nothing.
                (None, ReworkBy::Laser | ReworkBy::Stretch) => own,
                (None, ReworkBy::Solder) if rework.added.is_none() => own,
                (None, ReworkBy::Solder) => self.book.absent(&ADDED_FINENESS, place, Cause::NotSaid),
            };
            let fineness = self.book.derive(&FINENESS_AFTER, place, [before, taken, own, added, joined]);
            self.under_its_mark(piece, fineness);
            fineness
        });
        ReworkFigures { entry, piece, after, fineness }
    }

    /// By the melt it was cast from, or by its alloy.
    fn own_fineness(&mut self, piece: PieceId, melts: &[MeltFigures]) -> Option<Id> {
        let (_, line) = self.job.lines().find(|(_, line)| line.id == piece.line)?;
        let alloy = self.shelf.get::<Alloy>(line.alloy.as_ref()?.as_str())?;
        let metal = alloy.fineness?.metal;
        let hangs = |melt: &&MeltFigures| melt.flasks.iter().any(|flask| pieces_in(self.job, *flask).any(|one| one == piece));
        if let Some(of_melt) = melts.iter().find(hangs).and_then(|melt| melt.fineness) {
            return Some(of_melt);
        }
        let permille = alloy.composition.of(metal).get();
        Some(self.book.shelf_number(&PIECE_FINENESS, &alloy.id, permille, "a typical composition of its kind", Trust::Computed))
    }

    fn under_its_mark(&mut self, piece: PieceId, fineness: Id) {
        let Some((_, line)) = self.job.lines().find(|(_, line)| line.id == piece.line) else { return };
        let place = Place::Piece(piece);
        let alloy = line.alloy.as_ref().and_then(|id| self.shelf.get::<Alloy>(id.as_str()));
        let mark = match (line.mark_permille, alloy.and_then(|alloy| alloy.fineness.map(|mark| (alloy, mark)))) {
            (Some(mark), _) => self.book.entered(&PIECE_MARK, place, mark.get()),
            (None, Some((alloy, mark))) => {
                self.book.shelf_number(&PIECE_MARK, &alloy.id, mark.permille.get(), "the alloy's mark", Trust::Standard)
            }
            (None, None) => return,
        };
        if let (Some(has), Some(needs)) = (self.book.number(fineness), self.book.number(mark))
            && has < needs
        {
            let args = vec![Arg::Text(piece.to_string()), Arg::Figure(fineness), Arg::Figure(mark)];
            self.find_on(&finding::REWORK_UNDER_MARK, place, fineness, args);
        }
    }

    /// Scrap of this batch went into a lot that is kept clean, while pieces with solder in them were rejected.
    fn soldered_to_clean(&mut self, soldered: &BTreeSet<PieceId>) {
        let (job, studio) = (self.job, self.studio);
        let weights = PieceWeights::of(job);
        let Some(piece) = soldered.iter().copied().find(|piece| weights.is_rejected(*piece)) else { return };
        for lot in studio.lots.iter().filter(|lot| lot.what == LotKind::Scrap && !lot.soldered) {
            if lot.receipts.iter().any(|receipt| receipt.from_job == Some(job.job_id)) {
                let args = vec![Arg::Text(piece.to_string()), Arg::Text(lot.id.to_string())];
                self.find(&finding::SOLDERED_TO_CLEAN, Place::Piece(piece), args);
            }
        }
    }
}
