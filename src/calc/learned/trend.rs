//! Change over time.

use super::job_mean::{JobMean, mean};
use super::quantile::t_within;
use super::{Interval, LEVEL, theil_sen};

/// Jobs below which no trend is called certain.
pub const TREND_JOBS: usize = 8;

/// The days over which a slope is told.
const DAYS: f64 = 30.0;

/// How a quantity changes, per 30 days, each job counted once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trend {
    /// Slope by ordinary least squares, in the unit of the quantity per 30 days.
    pub per_30_days: f64,
    /// 95 % interval of that slope (Student's t, n − 2 degrees of freedom).
    pub interval: Interval,
    /// The robust check: median of the slopes of all pairs of jobs (Theil 1950, Sen 1968), per 30 days. A few wild jobs do not move it.
    pub theil_sen_per_30_days: f64,
    /// True only where the interval excludes nought and there are at least [`TREND_JOBS`] jobs.
    pub certain: bool,
}

impl Trend {
    /// True where the robust slope lies in the interval of the other: no few jobs alone make the trend.
    #[must_use]
    pub fn robust_agrees(&self) -> bool {
        self.interval.contains(self.theil_sen_per_30_days)
    }
}

/// The trend of jobs; `None` below three or where all are of one day.
#[allow(clippy::cast_precision_loss)]
pub(crate) fn trend<J>(jobs: &[JobMean<'_, J>]) -> Option<Trend> {
    if jobs.len() < 3 {
        return None;
    }
    let (day, value) = (mean(jobs.iter().map(|job| job.day)), mean(jobs.iter().map(|job| job.value)));
    let points: Vec<(f64, f64)> = jobs.iter().map(|job| ((job.day - day) / DAYS, job.value - value)).collect();
    let xx: f64 = points.iter().map(|(x, _)| x * x).sum();
    let robust = theil_sen(&points)?;
    let slope = points.iter().map(|(x, y)| x * y).sum::<f64>() / xx;
    let squares: f64 = points.iter().map(|(x, y)| (y - slope * x).powi(2)).sum();
    let freedom = jobs.len() as f64 - 2.0;
    let interval = Interval::around(slope, t_within(LEVEL, freedom) * (squares / freedom / xx).sqrt());
    let certain = jobs.len() >= TREND_JOBS && !interval.contains(0.0);
    Some(Trend { per_30_days: slope, interval, theil_sen_per_30_days: robust, certain })
}
