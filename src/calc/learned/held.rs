//! How past predictions held.

use super::clumping::Clump;
use super::error::checked;
use super::job_mean::{job_means, mean};
use super::quantile::t_two_sided;
use super::summary::summary;
use super::verdict::{Evidence, verdict};
use super::{Interval, LEVEL, Observation, RecordError, Summary, Trend, Verdict, clopper_pearson};
use std::collections::BTreeMap;

/// What was predicted with the constants frozen then, and what came.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held<J> {
    /// The job.
    pub job: J,
    /// Days since any fixed day.
    pub day: i32,
    /// The predicted value.
    pub predicted: f64,
    /// Lower end of the band stated with it.
    pub lower: f64,
    /// Upper end of that band.
    pub upper: f64,
    /// What was measured.
    pub actual: f64,
}

impl<J> Held<J> {
    /// True where the band held; `shift` moves the band.
    pub(crate) fn within(&self, shift: f64) -> bool {
        self.lower + shift <= self.actual && self.actual <= self.upper + shift
    }
}

/// How predictions of one quantity held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judgement {
    /// Predictions.
    pub count: usize,
    /// Distinct jobs they come from.
    pub jobs: usize,
    /// Mean of actual − predicted, a job counted once.
    pub bias: f64,
    /// Its 95 % interval (Student); needs two jobs.
    pub bias_interval: Option<Interval>,
    /// Bias over the mean prediction; `None` where that is nought.
    pub relative_bias: Option<f64>,
    /// Root of the mean square of actual − predicted, a job counted once.
    pub rms: f64,
    /// Predictions whose band held.
    pub within: usize,
    /// 95 % interval of the share that holds (Clopper & Pearson), counts divided by the clumping of predictions within jobs, which is 1 where
    /// each job has one.
    pub within_interval: Interval,
    /// How the errors change over time: a scale that drifts shows here first.
    pub error_trend: Option<Trend>,
    /// What it comes to.
    pub verdict: Verdict,
}

impl Judgement {
    /// Share of predictions whose band held, 0 to 1.
    #[must_use]
    #[allow(clippy::cast_precision_loss)]
    pub fn share(&self) -> f64 {
        self.within as f64 / self.count as f64
    }
}

/// Judges predictions whose bands promised to hold the share `promised`.
///
/// # Errors
/// Nothing to judge, a value that is not finite or out of reach, a band upside down (the job is named), or a promise not between 0 and 1.
#[allow(clippy::cast_precision_loss)]
pub fn judge<J: Ord + Clone>(held: &[Held<J>], promised: f64) -> Result<Judgement, RecordError<J>> {
    if !(promised > 0.0 && promised < 1.0) {
        return Err(RecordError::Promise { share: promised });
    }
    for one in held {
        checked(&one.job, &[one.predicted, one.lower, one.upper, one.actual])?;
        if one.lower > one.upper {
            return Err(RecordError::BandUpsideDown { job: one.job.clone() });
        }
    }
    let errors = values(held, |one| one.actual - one.predicted);
    let errors = summary(&job_means(&errors)?).ok_or(RecordError::Nothing)?;
    let predicted = mean_of(&values(held, |one| one.predicted))?;
    let square = mean_of(&values(held, |one| (one.actual - one.predicted).powi(2) / SQUARE))? * SQUARE;
    let within = held.iter().filter(|one| one.within(0.0)).count();
    let clumping = clumping(held);
    let (hits, of) = (within as f64 / clumping, held.len() as f64 / clumping);
    let within_interval = clopper_pearson(hits, of, LEVEL).ok_or(RecordError::Nothing)?;
    let shifted = held.iter().filter(|one| one.within(errors.mean)).count() as f64 / clumping;
    let evidence = Evidence { jobs: errors.jobs, bias: errors.mean, bias_p: bias_p(&errors), hits, shifted, of, promised };
    Ok(Judgement {
        count: held.len(),
        jobs: errors.jobs,
        bias: errors.mean,
        bias_interval: errors.mean_interval,
        relative_bias: (predicted != 0.0).then(|| errors.mean / predicted),
        rms: square.sqrt(),
        within,
        within_interval,
        error_trend: errors.trend,
        verdict: verdict(&evidence),
    })
}

/// One value of each prediction.
fn values<J: Clone>(held: &[Held<J>], value: fn(&Held<J>) -> f64) -> Vec<Observation<J>> {
    held.iter().map(|one| Observation { job: one.job.clone(), day: one.day, value: value(one) }).collect()
}

/// The mean, a job counted once.
fn mean_of<J: Ord + Clone>(values: &[Observation<J>]) -> Result<f64, RecordError<J>> {
    Ok(mean(job_means(values)?.iter().map(|job| job.value)))
}

/// Squares are told in this unit, so that they stay within reach.
const SQUARE: f64 = 1e102;

/// The chance of such a bias if there were none.
#[allow(clippy::cast_precision_loss)]
fn bias_p(errors: &Summary) -> f64 {
    let n = errors.jobs as f64;
    match errors.deviation {
        Some(deviation) if deviation > 0.0 => t_two_sided(errors.mean * n.sqrt() / deviation, n - 1.0),
        Some(_) if errors.mean != 0.0 => 0.0,
        _ => 1.0,
    }
}

/// How many predictions of one job are worth one.
fn clumping<J: Ord>(held: &[Held<J>]) -> f64 {
    let mut jobs: BTreeMap<&J, (u64, u64)> = BTreeMap::new();
    for one in held {
        let job = jobs.entry(&one.job).or_default();
        *job = (job.0 + u64::from(!one.within(0.0)), job.1 + 1);
    }
    Clump::of(&jobs.into_values().collect::<Vec<_>>()).effect()
}
