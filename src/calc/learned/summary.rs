//! Mean, spread and trend over jobs.

use super::job_mean::{JobMean, mean, median};
use super::quantile::t_within;
use super::trend::trend;
use super::{Interval, LEVEL, Trend};

/// What a set of jobs says of one quantity, each job counted once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Summary {
    /// Jobs counted; at least one.
    pub jobs: usize,
    /// Mean of the jobs.
    pub mean: f64,
    /// Median of the jobs.
    pub median: f64,
    /// Sample standard deviation between jobs (n − 1 below the line); needs two.
    pub deviation: Option<f64>,
    /// Where the true mean lies, at 95 %: mean ± t·s/√n (Student); needs two jobs.
    pub mean_interval: Option<Interval>,
    /// Where the next job will lie, at 95 %: mean ± t·s·√(1 + 1/n); needs two jobs. Good for jobs that scatter as a bell curve does.
    pub next_job: Option<Interval>,
    /// Change over time; needs three jobs, not all of one day.
    pub trend: Option<Trend>,
}

/// Sums up jobs; `None` of nothing.
#[allow(clippy::cast_precision_loss)]
pub(crate) fn summary<J>(jobs: &[JobMean<'_, J>]) -> Option<Summary> {
    if jobs.is_empty() {
        return None;
    }
    let n = jobs.len() as f64;
    let centre = mean(jobs.iter().map(|job| job.value));
    let mut values: Vec<f64> = jobs.iter().map(|job| job.value).collect();
    let middle = median(&mut values);
    let mut summary = Summary {
        jobs: jobs.len(),
        mean: centre,
        median: middle,
        deviation: None,
        mean_interval: None,
        next_job: None,
        trend: trend(jobs),
    };
    if jobs.len() >= 2 {
        let squares: f64 = jobs.iter().map(|job| (job.value - centre).powi(2)).sum();
        let deviation = (squares / (n - 1.0)).sqrt();
        let t = t_within(LEVEL, n - 1.0);
        summary.deviation = Some(deviation);
        summary.mean_interval = Some(Interval::around(centre, t * deviation / n.sqrt()));
        summary.next_job = Some(Interval::around(centre, t * deviation * (1.0 + 1.0 / n).sqrt()));
    }
    Some(summary)
}
