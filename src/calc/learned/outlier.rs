//! Jobs that do not look like the others.

use super::Observation;
use super::job_mean::{JobMean, mean, median};

/// A job is named where its modified z-score is beyond this (Iglewicz & Hoaglin 1993, How to Detect and Handle Outliers).
///
/// A good record of five jobs names one by chance in one case of five, of ten to fifty jobs in one of ten: a named job is a question, no answer.
pub const OUTLIER_SCORE: f64 = 3.5;

/// Jobs below which none is named: of three or four, one always stands apart.
pub const OUTLIER_JOBS: usize = 5;

/// Median absolute deviation of a bell curve, in standard deviations.
const MEDIAN_DEVIATION: f64 = 0.6745;

/// Mean absolute deviation of a bell curve, √(2/π), turned over.
const MEAN_DEVIATION: f64 = 1.253_314;

/// A job that stands apart. It is shown, never silently dropped.
#[derive(Debug, Clone, PartialEq)]
pub struct Outlier<J> {
    /// The job.
    pub job: J,
    /// Mean day of its values.
    pub day: f64,
    /// Mean of its values.
    pub value: f64,
    /// Its modified z-score, with sign.
    pub score: f64,
}

/// How the distance of a job from the median is told in scores.
struct Yardstick {
    middle: f64,
    per_score: f64,
    /// Distances up to this are never an outlier.
    least: f64,
}

/// The jobs that stand apart, in the order of `jobs`, as a flag each and the list.
pub(crate) fn outliers<J: Clone>(jobs: &[JobMean<'_, J>], observations: &[Observation<J>]) -> (Vec<bool>, Vec<Outlier<J>>) {
    let Some(yardstick) = yardstick(jobs, observations) else { return (vec![false; jobs.len()], Vec::new()) };
    let score = |job: &JobMean<'_, J>| (job.value - yardstick.middle) / yardstick.per_score;
    let apart = |job: &JobMean<'_, J>| score(job).abs() > OUTLIER_SCORE && (job.value - yardstick.middle).abs() > yardstick.least;
    let flags = jobs.iter().map(apart).collect();
    let named = jobs.iter().filter(|job| apart(job));
    let list = named.map(|job| Outlier { job: job.job.clone(), day: job.day, value: job.value, score: score(job) }).collect();
    (flags, list)
}

/// By the median absolute deviation; where half the jobs or more agree exactly that is nought, and the mean absolute deviation stands in.
///
/// A nought comes mostly from values rounded to a step, and says then only that the true deviation is at most half a step: so a job is named
/// only if it would be with half a step too. `None` where nothing can stand apart.
fn yardstick<J>(jobs: &[JobMean<'_, J>], observations: &[Observation<J>]) -> Option<Yardstick> {
    if jobs.len() < OUTLIER_JOBS {
        return None;
    }
    let mut values: Vec<f64> = jobs.iter().map(|job| job.value).collect();
    let middle = median(&mut values);
    let mut distances: Vec<f64> = jobs.iter().map(|job| (job.value - middle).abs()).collect();
    let typical = median(&mut distances);
    // Averages of equal values may differ in their last bits.
    let noise = 1e-12 * jobs.iter().map(|job| job.value.abs()).fold(0.0, f64::max);
    if typical > noise {
        return Some(Yardstick { middle, per_score: typical / MEDIAN_DEVIATION, least: 0.0 });
    }
    let average = mean(distances.into_iter());
    let half_step = 0.5 * recorded_step(observations);
    let least = (OUTLIER_SCORE * half_step / MEDIAN_DEVIATION).max(noise);
    (average > 0.0).then_some(Yardstick { middle, per_score: average * MEAN_DEVIATION, least })
}

/// The decimal step in which values were written down: that of the value with most decimals, nought if one has more than nine.
fn recorded_step<J>(observations: &[Observation<J>]) -> f64 {
    let mut digits = 0;
    for observation in observations {
        let fits = |digits: i32| {
            let scale = 10_f64.powi(digits);
            ((observation.value * scale).round() / scale).total_cmp(&observation.value).is_eq()
        };
        match (digits..=9).find(|&digits| fits(digits)) {
            Some(needed) => digits = needed,
            None => return 0.0,
        }
    }
    10_f64.powi(-digits)
}
