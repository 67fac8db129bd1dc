//! Whether the record may replace a default.

use super::Summary;
use std::fmt;

/// Jobs below which the record never replaces a default.
pub const OFFER_JOBS: usize = 5;

/// What the record has to offer in place of a default.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Offer {
    /// Not enough jobs.
    TooFew {
        /// Jobs there are.
        has: usize,
        /// Jobs needed.
        needs: usize,
    },
    /// The default lies inside the 95 % interval of the mean: nothing to gain.
    Agrees,
    /// The default lies outside.
    Differs {
        /// The default.
        default: f64,
        /// The mean, rounded to the digits that its interval carries.
        learned: f64,
        /// Lower end of the interval of the mean, rounded down.
        lower: f64,
        /// Upper end of it, rounded up.
        upper: f64,
    },
}

/// The default to compare with is no finite number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DefaultNotFinite;

impl fmt::Display for DefaultNotFinite {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the default is no finite number")
    }
}

impl std::error::Error for DefaultNotFinite {}

impl Offer {
    /// Compares the mean of the jobs with a default.
    ///
    /// Rounding: the step is the decimal place of the first digit of the interval's half width, one place finer where that digit is 1 or 2
    /// (so the step is between a thirtieth and a third of the half width). The mean is rounded to the nearest step, the ends outwards, so the
    /// interval shown is never narrower than the true one. Should an end rounded so reach the default, the step is made finer until it does not:
    /// what is shown never contradicts the answer. Where jobs agree exactly, twelve digits are shown.
    ///
    /// A quantity that drifts has no one mean: look at [`Summary::trend`] before an offer is accepted.
    ///
    /// # Errors
    /// The default is not finite.
    pub fn of(summary: &Summary, default: f64) -> Result<Self, DefaultNotFinite> {
        if !default.is_finite() {
            return Err(DefaultNotFinite);
        }
        let interval = match summary.mean_interval {
            Some(interval) if summary.jobs >= OFFER_JOBS => interval,
            _ => return Ok(Self::TooFew { has: summary.jobs, needs: OFFER_JOBS }),
        };
        // Equal but for the last bits is equal.
        let same = (default - summary.mean).abs() <= 1e-12 * summary.mean.abs();
        if interval.contains(default) || same {
            return Ok(Self::Agrees);
        }
        let mut places = places(interval.half_width(), summary.mean);
        loop {
            let (lower, upper) = (scaled(interval.lower, places, f64::floor), scaled(interval.upper, places, f64::ceil));
            if default < lower || default > upper {
                return Ok(Self::Differs { default, learned: scaled(summary.mean, places, f64::round), lower, upper });
            }
            places += 1;
            if places > MOST_PLACES {
                return Ok(Self::Differs { default, learned: summary.mean, lower: interval.lower, upper: interval.upper });
            }
        }
    }
}

/// Decimal places beyond which nothing is rounded.
const MOST_PLACES: i32 = 60;

/// Decimal places that a half width carries; negative for tens, hundreds.
#[allow(clippy::cast_possible_truncation)]
fn places(half: f64, mean: f64) -> i32 {
    let magnitude = |value: f64| value.log10().floor() as i32;
    let most = if mean.abs() > f64::MIN_POSITIVE { 11 - magnitude(mean.abs()) } else { MOST_PLACES };
    if half <= f64::MIN_POSITIVE {
        return most;
    }
    let first = magnitude(half);
    let wanted = if half / 10_f64.powi(first) < 3.0 { 1 - first } else { -first };
    wanted.min(most)
}

/// `value` rounded by `how` at a decimal place. One that lies on a step but for the last bits is on it, and is not pushed to the next.
fn scaled(value: f64, places: i32, how: fn(f64) -> f64) -> f64 {
    let power = 10_f64.powi(places.abs());
    let steps = if places >= 0 { value * power } else { value / power };
    let nearest = steps.round();
    let whole = if (steps - nearest).abs() <= 4.0 * f64::EPSILON * nearest.abs() { nearest } else { how(steps) };
    let rounded = if places >= 0 { whole / power } else { whole * power };
    if rounded.is_finite() { rounded } else { value }
}
