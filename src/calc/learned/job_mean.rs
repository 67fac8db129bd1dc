//! Several values of one job made one.

use super::{Observation, RecordError, error::checked};
use std::collections::BTreeMap;

/// The mean of one job's values, at the mean of their days.
#[derive(Debug, Clone, Copy)]
pub(crate) struct JobMean<'a, J> {
    pub job: &'a J,
    pub day: f64,
    pub value: f64,
}

/// Averages the values of each job first; jobs in the order of their keys.
///
/// # Errors
/// Nothing to learn from, or a value that is not finite or out of reach, named by its job.
pub(crate) fn job_means<J: Ord + Clone>(observations: &[Observation<J>]) -> Result<Vec<JobMean<'_, J>>, RecordError<J>> {
    if observations.is_empty() {
        return Err(RecordError::Nothing);
    }
    let mut jobs: BTreeMap<&J, Vec<&Observation<J>>> = BTreeMap::new();
    for observation in observations {
        checked(&observation.job, &[observation.value])?;
        jobs.entry(&observation.job).or_default().push(observation);
    }
    let one = |(job, of): (_, Vec<&Observation<J>>)| JobMean {
        job,
        day: mean(of.iter().map(|o| f64::from(o.day))),
        value: mean(of.iter().map(|o| o.value)),
    };
    Ok(jobs.into_iter().map(one).collect())
}

/// Arithmetic mean, as the first value plus the mean difference from it: equal values give exactly that value. Nought of nothing.
#[allow(clippy::cast_precision_loss)]
pub(crate) fn mean(mut values: impl Iterator<Item = f64>) -> f64 {
    let Some(first) = values.next() else { return 0.0 };
    let (count, sum) = values.fold((1_usize, 0.0), |(count, sum), value| (count + 1, sum + (value - first)));
    first + sum / count as f64
}

/// The middle value, or the mean of the two middle ones; nought of nothing. Reorders `values`.
pub(crate) fn median(values: &mut [f64]) -> f64 {
    let half = values.len() / 2;
    if half >= values.len() {
        return 0.0;
    }
    let even = values.len().is_multiple_of(2);
    let (below, &mut upper, _) = values.select_nth_unstable_by(half, f64::total_cmp);
    if !even {
        return upper;
    }
    let lower = below.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    lower + 0.5 * (upper - lower)
}
