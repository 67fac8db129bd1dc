//! Defects per casting.

use super::quantile::beta_quantile;
use super::{Interval, LEVEL};

/// How many castings of a group had a defect.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// Castings with a defect.
    pub defects: u64,
    /// Castings; at least one.
    pub of: u64,
    /// Distinct jobs they come from.
    pub jobs: usize,
    /// 95 % interval of the share of defects (Clopper & Pearson 1934), each casting taken for an independent experience.
    pub interval: Interval,
}

impl Rate {
    /// The rate with its interval; `None` where nothing was cast or more is defect than was cast.
    #[must_use]
    #[allow(clippy::cast_precision_loss)]
    pub fn of(defects: u64, of: u64, jobs: usize) -> Option<Self> {
        let interval = clopper_pearson(defects as f64, of as f64, LEVEL)?;
        Some(Self { defects, of, jobs, interval })
    }

    /// Share of defects, 0 to 1.
    #[must_use]
    #[allow(clippy::cast_precision_loss)]
    pub fn share(&self) -> f64 {
        self.defects as f64 / self.of as f64
    }
}

/// The exact interval of a share at `level`, from `hits` in `of` (Clopper & Pearson 1934); `None` where `of` is nought, `hits` exceed it, or the
/// level is not between 0 and 1.
///
/// Counts may be fractions, as effective counts are (Korn & Graubard 1998).
#[must_use]
pub fn clopper_pearson(hits: f64, of: f64, level: f64) -> Option<Interval> {
    let sound = of > 0.0 && hits >= 0.0 && hits <= of && of.is_finite() && level > 0.0 && level < 1.0;
    if !sound {
        return None;
    }
    let tail = 0.5 * (1.0 - level);
    let lower = if hits > 0.0 { beta_quantile(tail, hits, of - hits + 1.0) } else { 0.0 };
    let upper = if hits < of { beta_quantile(1.0 - tail, hits + 1.0, of - hits) } else { 1.0 };
    Some(Interval { lower, upper })
}
