//! What single pieces weigh by the record.

use std::collections::{BTreeMap, BTreeSet};

use crate::job::{Entry, Event, Job, PieceId, RecordId, standing};
use crate::quantity::Grams;

/// Weights of pieces by entries nobody withdrew.
#[derive(Debug, Clone, Default)]
pub struct PieceWeights {
    cast: BTreeMap<PieceId, Grams>,
    now: BTreeMap<PieceId, Grams>,
    rejected: BTreeSet<PieceId>,
}

impl PieceWeights {
    /// Reads them off the record.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        Self::read(standing(&job.record))
    }

    /// As they were when an entry was written.
    #[must_use]
    pub fn before(job: &Job, id: RecordId) -> Self {
        Self::read(standing(&job.record).take_while(|entry| entry.id != id))
    }

    fn read<'j>(entries: impl Iterator<Item = &'j Entry>) -> Self {
        let (mut weights, mut reworked) = (Self::default(), BTreeSet::new());
        for entry in entries {
            match &entry.event {
                Event::PieceWeighed { piece, grams, .. } => {
                    weights.now.insert(*piece, *grams);
                    if !reworked.contains(piece) {
                        weights.cast.insert(*piece, *grams);
                    }
                }
                Event::Reworked { piece, rework } if rework.added.is_some() || rework.taken.is_some() => {
                    reworked.insert(*piece);
                    // It has to be weighed again.
                    weights.now.remove(piece);
                }
                Event::Rejected { piece, .. } => {
                    weights.rejected.insert(*piece);
                }
                _ => {}
            }
        }
        weights
    }

    /// What a piece weighed last; nothing where metal was added or taken since.
    #[must_use]
    pub fn now(&self, piece: PieceId) -> Option<Grams> {
        self.now.get(&piece).copied()
    }

    /// What it weighed last before anything was added to it by a repair or a sizing.
    #[must_use]
    pub fn cast(&self, piece: PieceId) -> Option<Grams> {
        self.cast.get(&piece).copied()
    }

    /// Was it rejected?
    #[must_use]
    pub fn is_rejected(&self, piece: PieceId) -> bool {
        self.rejected.contains(&piece)
    }
}
