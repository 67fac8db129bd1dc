//! Why a record cannot be learned from.

use std::fmt;

/// What is wrong with a record, and in which job.
#[derive(Debug, Clone, PartialEq)]
pub enum RecordError<J> {
    /// There is no record.
    Nothing,
    /// A value is infinite or not a number.
    NotFinite {
        /// The job that holds it.
        job: J,
    },
    /// A value is beyond ±10¹⁰⁰, where its square can no longer be held.
    OutOfReach {
        /// The job that holds it.
        job: J,
    },
    /// More castings with a defect than castings.
    MoreDefectsThanCastings {
        /// The job that says so.
        job: J,
        /// Castings with a defect.
        defects: u32,
        /// Castings.
        of: u32,
    },
    /// The lower end of a stated band lies above its upper end.
    BandUpsideDown {
        /// The job that says so.
        job: J,
    },
    /// The share that a band promises to hold must lie between 0 and 1.
    Promise {
        /// The share given.
        share: f64,
    },
}

impl<J: fmt::Display> fmt::Display for RecordError<J> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Nothing => write!(f, "there is no record to learn from"),
            Self::NotFinite { job } => write!(f, "job {job} holds a value that is no finite number"),
            Self::OutOfReach { job } => write!(f, "job {job} holds a value beyond all reach"),
            Self::MoreDefectsThanCastings { job, defects, of } => write!(f, "job {job} counts {defects} defects in {of} castings"),
            Self::BandUpsideDown { job } => write!(f, "the band of job {job} ends below its start"),
            Self::Promise { share } => write!(f, "a band cannot promise to hold a share of {share}"),
        }
    }
}

impl<J: fmt::Debug + fmt::Display> std::error::Error for RecordError<J> {}

/// The largest magnitude taken: squares and their sums stay finite.
const REACH: f64 = 1e100;

/// Refuses what cannot be reckoned with, naming the job.
pub(crate) fn checked<J: Clone>(job: &J, values: &[f64]) -> Result<(), RecordError<J>> {
    if values.iter().any(|value| !value.is_finite()) {
        return Err(RecordError::NotFinite { job: job.clone() });
    }
    if values.iter().any(|value| value.abs() > REACH) {
        return Err(RecordError::OutOfReach { job: job.clone() });
    }
    Ok(())
}
