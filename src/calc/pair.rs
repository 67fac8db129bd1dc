//! Patterns that belong together: are left and right mirror images, are two alike, and do they weigh the same?

use super::book::Id;
use super::finding::{self, Arg};
use super::pass::Pass;
use super::pattern::PatternFigures;
use super::rule::{givens, inputs, rules};
use crate::job::{PairKind, Pattern, PatternId, Place};

inputs! {
    /// How far two surfaces are apart at most.
    APART "pair.apart" Length;
}

/// Surfaces closer than this everywhere are the same shape, in mm.
pub const PAIR_TOLERANCE_MM: f64 = 0.05;

/// A share of weight by which the two of a pair may differ.
const WEIGHTS_DIFFER: f64 = 0.03;

givens! {
    /// Surfaces closer than this everywhere are the same shape.
    TOLERANCE "pair.tolerance" Length = PAIR_TOLERANCE_MM; CommonPractice "about one layer of a print; finishing takes away more"
}

rules! {
    /// How far the two of a pair disagree in weight.
    WEIGHTS_APART "pair.weight-difference" (one: Mass, other: Mass) -> Ratio
        = Formula "abs(one - other)/max(one, other)" { (one - other).abs() / one.max(other) };
        Computed "share by which the lighter one is lighter"
}

/// Two patterns that belong together.
#[derive(Debug, Clone, Copy)]
pub struct PairFigures {
    /// The one that names the other, and the other.
    pub patterns: [PatternId; 2],
    /// What they should be to each other.
    pub like: PairKind,
    /// How far they disagree in weight.
    pub weights_apart: Id,
    /// How far their surfaces are apart at most, laid as they should lie; none where their files were not compared (yet).
    pub apart: Option<Id>,
}

impl Pass<'_> {
    /// The pairs of the job, in its order.
    pub(super) fn pairs(&mut self, patterns: &[PatternFigures]) -> Vec<PairFigures> {
        let job = self.job;
        job.patterns.iter().filter_map(|pattern| self.pair(pattern, patterns)).collect()
    }

    fn pair(&mut self, pattern: &Pattern, patterns: &[PatternFigures]) -> Option<PairFigures> {
        let pair = pattern.pair.as_ref()?;
        let ids = [pattern.id, pair.with];
        let weights = ids.map(|id| patterns.binary_search_by_key(&id, |found| found.id).ok().map(|at| patterns[at].weight));
        let [Some(weight), Some(other_weight)] = weights else { return None };
        let place = Place::Pattern(pattern.id);
        let weights_apart = self.book.derive(&WEIGHTS_APART, place, [weight, other_weight]);
        let names = self.pair_names(ids);
        if self.book.number(weights_apart).is_some_and(|share| share > WEIGHTS_DIFFER) {
            let args = names.iter().cloned().chain([weight, other_weight].map(Arg::Figure)).collect();
            self.find_on(&finding::PAIR_WEIGHTS, place, weights_apart, args);
        }
        let apart = self.runs.pairs.get(&pattern.id).map(|run| {
            let [wanted, otherwise] = match pair.like {
                PairKind::MirrorImages => [run.mirrored_mm, run.as_it_is_mm],
                PairKind::Alike => [run.as_it_is_mm, run.mirrored_mm],
            };
            let apart = self.book.measured(&APART, place, wanted);
            if wanted > PAIR_TOLERANCE_MM {
                self.no_pair(pair.like, place, apart, otherwise, names.clone());
            }
            apart
        });
        Some(PairFigures { patterns: ids, like: pair.like, weights_apart, apart })
    }

    /// The shapes are not what they should be to each other; `otherwise` is how far they are apart the other way round.
    fn no_pair(&mut self, like: PairKind, place: Place, apart: Id, otherwise: f64, names: [Arg; 2]) {
        if otherwise <= PAIR_TOLERANCE_MM {
            let kind = match like {
                PairKind::MirrorImages => &finding::PAIR_SAME_SIDE,
                PairKind::Alike => &finding::PAIR_MIRRORED,
            };
            self.find(kind, place, names.into());
        } else {
            let tolerance = self.book.constant(&TOLERANCE);
            let args = names.into_iter().chain([apart, tolerance].map(Arg::Figure)).collect();
            self.find_on(&finding::PAIR_DIFFERS, place, apart, args);
        }
    }

    fn pair_names(&self, ids: [PatternId; 2]) -> [Arg; 2] {
        let name = |id| self.job.patterns.iter().find(|pattern| pattern.id == id).map(|pattern| pattern.name.clone());
        ids.map(|id| Arg::Text(name(id).unwrap_or_default()))
    }
}
