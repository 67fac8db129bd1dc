//! An interval and the level at which all intervals here are given.

/// The level of every interval: 19 in 20.
pub const LEVEL: f64 = 0.95;

/// A closed interval in the unit of its quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Lower end.
    pub lower: f64,
    /// Upper end.
    pub upper: f64,
}

impl Interval {
    /// The interval `half` to both sides of `centre`.
    #[must_use]
    pub(crate) fn around(centre: f64, half: f64) -> Self {
        Self { lower: centre - half, upper: centre + half }
    }

    /// True where `value` lies inside or on an end.
    #[must_use]
    pub fn contains(&self, value: f64) -> bool {
        self.lower <= value && value <= self.upper
    }

    /// Half its width.
    #[must_use]
    pub fn half_width(&self) -> f64 {
        0.5 * (self.upper - self.lower)
    }
}
