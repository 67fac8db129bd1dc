//! Defects that come by the flask.

/// Sums over the jobs of one group, from which clumping is told.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Clump {
    /// Variance between jobs of the defects, summed.
    between: f64,
    /// The same if each casting failed by itself.
    alone: f64,
}

impl Clump {
    /// Of one group, as `(defects, castings)` a job.
    #[allow(clippy::cast_precision_loss)]
    pub fn of(jobs: &[(u64, u64)]) -> Self {
        let count = jobs.len() as f64;
        let (defects, of) = jobs.iter().fold((0, 0), |sum, job| (sum.0 + job.0, sum.1 + job.1));
        if jobs.len() < 2 || of < 2 {
            return Self::default();
        }
        let (share, all) = (defects as f64 / of as f64, of as f64);
        let squares: f64 = jobs.iter().map(|(defects, of)| (*defects as f64 - *of as f64 * share).powi(2)).sum();
        Self { between: squares * count / (count - 1.0), alone: all * share * (1.0 - share) * all / (all - 1.0) }
    }

    /// Two groups pooled, each around its own share.
    pub fn and(self, other: Self) -> Self {
        Self { between: self.between + other.between, alone: self.alone + other.alone }
    }

    /// By how much castings of one job fail together: how many of them are worth one independent casting, at least 1.
    ///
    /// The design effect of a ratio over clusters (Kish 1965; Rao & Scott 1992, A simple method for the analysis of clustered binary data).
    /// One where each job holds one casting, or where nothing is known.
    pub fn effect(self) -> f64 {
        if self.alone > 0.0 { (self.between / self.alone).max(1.0) } else { 1.0 }
    }
}
