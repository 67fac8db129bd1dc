//! What a studio learns from its own record: means, spreads and trends of measured quantities, rates of defects, and how past predictions held.
//!
//! Pure functions. Days are whole days since any fixed day; jobs and groups are opaque ordered keys. The unit of evidence is the *job*, not the
//! single value: values of one flask share their melt, their burnout and their hands, so ten of them are not ten experiences.

mod clumping;
mod error;
mod fisher;
mod groups;
mod held;
mod holm;
mod interval;
mod job_mean;
mod learn;
mod observation;
mod offer;
mod outlier;
mod quantile;
mod rate;
mod summary;
mod theil_sen;
mod trend;
mod verdict;

pub use error::RecordError;
pub use fisher::fisher_two_sided;
pub use groups::{GROUP_JOBS, GroupRate, Said, Tally, rates_by};
pub use held::{Held, Judgement, judge};
pub use holm::holm;
pub use interval::{Interval, LEVEL};
pub use learn::{Learned, learn, learn_by};
pub use observation::Observation;
pub use offer::{DefaultNotFinite, OFFER_JOBS, Offer};
pub use outlier::{OUTLIER_JOBS, OUTLIER_SCORE, Outlier};
pub use rate::{Rate, clopper_pearson};
pub use summary::Summary;
pub use theil_sen::theil_sen;
pub use trend::{TREND_JOBS, Trend};
pub use verdict::{HELD_JOBS, Verdict};
