//! What a record of predictions comes to.

use super::LEVEL;
use super::quantile::beta_tails;

/// Jobs below which predictions are not judged.
pub const HELD_JOBS: usize = 8;

/// Whether predictions hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Verdict {
    /// Too few jobs to say.
    TooFew {
        /// Jobs there are.
        has: usize,
        /// Jobs needed.
        needs: usize,
    },
    /// Nothing speaks against them.
    Holds,
    /// The band held significantly less often than promised, and not for bias alone.
    TooNarrow,
    /// The band held significantly more often than promised.
    TooWide,
    /// What comes lies beside what is predicted, on one side.
    Biased {
        /// Mean of actual − predicted.
        by: f64,
    },
}

/// What a verdict rests on. Counts may be fractions.
pub(crate) struct Evidence {
    pub jobs: usize,
    pub bias: f64,
    /// Chance of such a bias without one.
    pub bias_p: f64,
    /// Bands that held, and those that would have held had the bias been taken off.
    pub hits: f64,
    pub shifted: f64,
    pub of: f64,
    pub promised: f64,
}

/// Two questions, bias and band, answered together by Holm's rule: predictions that are right are called wrong at most once in twenty.
///
/// Where both fail and the band would hold with the bias taken off, bias is the cause; otherwise the band is too narrow as well, which is told first.
pub(crate) fn verdict(evidence: &Evidence) -> Verdict {
    let Evidence { jobs, bias, bias_p, hits, shifted, of, promised } = *evidence;
    if jobs < HELD_JOBS {
        return Verdict::TooFew { has: jobs, needs: HELD_JOBS };
    }
    let error = 1.0 - LEVEL;
    let (less, more) = tails(hits, of, promised);
    let band_p = (2.0 * less.min(more)).min(1.0);
    let (small, large) = (bias_p.min(band_p), bias_p.max(band_p));
    if small > 0.5 * error {
        return Verdict::Holds;
    }
    let both = large <= error;
    let (biased, off) = (both || bias_p < band_p, both || band_p <= bias_p);
    let narrow = off && less < more;
    let by_bias_alone = biased && 2.0 * tails(shifted, of, promised).0 > error;
    match (biased, narrow) {
        (_, true) if !by_bias_alone => Verdict::TooNarrow,
        (true, _) => Verdict::Biased { by: bias },
        (false, _) => Verdict::TooWide,
    }
}

/// The chances of at most, and of at least, `hits` in `of` where each has the chance `share`.
fn tails(hits: f64, of: f64, share: f64) -> (f64, f64) {
    let less = if hits < of { beta_tails(hits + 1.0, of - hits, share, 1.0 - share).1 } else { 1.0 };
    let more = if hits > 0.0 { beta_tails(hits, of - hits + 1.0, share, 1.0 - share).0 } else { 1.0 };
    (less, more)
}
