//! Between true temperatures and what a controller shows.

use super::{Controller, Ramp, RampBy, Unit};

/// Differences smaller than this are rounding of the arithmetic: a rate of 99.999 999 999 9 is 100.
pub(super) const HAIR: f64 = 1e-9;

impl Controller {
    /// Degrees of its unit in a kelvin.
    pub(super) fn degrees(&self) -> f64 {
        match self.unit {
            Unit::Celsius => 1.0,
            Unit::Fahrenheit => 1.8,
        }
    }

    fn zero(&self) -> f64 {
        match self.unit {
            Unit::Celsius => 0.0,
            Unit::Fahrenheit => 32.0,
        }
    }

    /// True temperature of a set point in steps, in °C.
    pub(super) fn true_c(&self, set: i64) -> f64 {
        self.true_of(set as f64 * f64::from(self.step))
    }

    /// True temperature of a set point in its degrees, in °C.
    pub(super) fn true_of(&self, shown: f64) -> f64 {
        (shown - self.zero()) / self.degrees() + self.offset_k
    }

    /// The set point of a true temperature, in steps and parts of a step.
    pub(super) fn steps(&self, true_c: f64) -> f64 {
        ((true_c - self.offset_k) * self.degrees() + self.zero()) / f64::from(self.step)
    }

    /// Its fastest ramp.
    pub(super) fn fastest(&self) -> Ramp {
        match self.ramp {
            _ if self.full_speed => Ramp::Full,
            RampBy::Rate { most, .. } => Ramp::Rate(most),
            RampBy::Minutes { least, .. } => Ramp::Minutes(least),
        }
    }

    /// How long a ramp takes by its clock, in min; nothing for one as fast as it can.
    pub(super) fn ramp_min(&self, ramp: Ramp, by_k: f64) -> Option<f64> {
        match ramp {
            Ramp::Full => None,
            Ramp::Rate(rate) => Some(60.0 * by_k.abs() * self.degrees() / f64::from(rate)),
            Ramp::Minutes(minutes) => Some(f64::from(minutes)),
        }
    }
}
