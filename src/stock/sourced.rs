//! A number together with where it comes from and how far to trust it.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::quantity::Finite;

/// How far a number can be trusted, from the firmest to the least; what the studio measured itself stands apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Trust {
    /// Fixed by a standard or by definition.
    Standard,
    /// Printed in a handbook, a paper or a data page that was read.
    Published,
    /// Printed in a trade article or told by a named thread of casters.
    Article,
    /// Computed from stated inputs.
    Computed,
    /// What the trade does; no source to point at.
    CommonPractice,
    /// From memory; the work it would stand in was not opened.
    FromMemory,
    /// Measured or decided by the studio.
    Studio,
}

/// One number, its source (a key of `resources/stock/sources.ron`, or free text in a studio's own entries) and its trust.
/// In RON: `(10.36, "F3", Published)`. The unit stands in the name of the field that holds it.
#[derive(Debug, Clone, PartialEq)]
pub struct Sourced {
    /// The number, finite.
    pub value: f64,
    /// Key of a source, or free text.
    pub source: String,
    /// How far to trust it.
    pub trust: Trust,
}

impl Sourced {
    /// `None` where `value` is not finite.
    #[must_use]
    pub fn new(value: f64, source: impl Into<String>, trust: Trust) -> Option<Self> {
        Some(Self { value: Finite::new(value)?.get(), source: source.into(), trust })
    }
}

impl Serialize for Sourced {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        (self.value, &self.source, self.trust).serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Sourced {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (value, source, trust) = <(Finite, String, Trust)>::deserialize(deserializer)?;
        Ok(Self { value: value.get(), source, trust })
    }
}

/// A range, both ends included, `low ≤ high`. In RON: `(430, 480, "P", CommonPractice)`.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// Lower end.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// Key of a source, or free text.
    pub source: String,
    /// How far to trust it.
    pub trust: Trust,
}

impl Span {
    /// `None` where an end is not finite or the ends stand the wrong way round.
    #[must_use]
    pub fn new(low: f64, high: f64, source: impl Into<String>, trust: Trust) -> Option<Self> {
        let (low, high) = (Finite::new(low)?.get(), Finite::new(high)?.get());
        (low <= high).then(|| Self { low, high, source: source.into(), trust })
    }

    /// The middle of the range.
    #[must_use]
    pub fn middle(&self) -> f64 {
        f64::midpoint(self.low, self.high)
    }

    /// True from end to end, ends included.
    #[must_use]
    pub fn contains(&self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }
}

impl Serialize for Span {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        (self.low, self.high, &self.source, self.trust).serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Span {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (low, high, source, trust) = <(Finite, Finite, String, Trust)>::deserialize(deserializer)?;
        Self::new(low.get(), high.get(), source, trust)
            .ok_or_else(|| serde::de::Error::custom("the lower end of a range must not exceed its upper end"))
    }
}

/// The source and trust of a whole group of numbers (the sizes of a flask, a row of a table). In RON: `("F75", Article)`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Origin(pub String, pub Trust);

impl Origin {
    /// Key of a source, or free text.
    #[must_use]
    pub fn source(&self) -> &str {
        &self.0
    }

    /// How far to trust the group.
    #[must_use]
    pub fn trust(&self) -> Trust {
        self.1
    }
}

/// Points of a curve, straight in between, level beyond its ends; the first coordinate rises strictly.
/// In RON: `([(25, 0.85), (400, 1.1)], "C", Computed)`.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// At least one point; units stand in the name of the field that holds the curve.
    pub points: Vec<(f64, f64)>,
    /// Key of a source, or free text.
    pub source: String,
    /// How far to trust it.
    pub trust: Trust,
}

impl Curve {
    /// The value at `x`, level beyond the ends.
    #[must_use]
    pub fn at(&self, x: f64) -> f64 {
        let after = self.points.partition_point(|point| point.0 <= x);
        match (after.checked_sub(1).and_then(|before| self.points.get(before)), self.points.get(after)) {
            (Some(&(x0, y0)), Some(&(x1, y1))) => y0 + (y1 - y0) * (x - x0) / (x1 - x0),
            (Some(&(_, y)), None) | (None, Some(&(_, y))) => y,
            (None, None) => f64::NAN,
        }
    }
}

impl Serialize for Curve {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        (&self.points, &self.source, self.trust).serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Curve {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (points, source, trust) = <(Vec<(Finite, Finite)>, String, Trust)>::deserialize(deserializer)?;
        let points: Vec<(f64, f64)> = points.into_iter().map(|(x, y)| (x.get(), y.get())).collect();
        if points.is_empty() || !points.windows(2).all(|pair| pair[0].0 < pair[1].0) {
            return Err(serde::de::Error::custom("a curve needs at least one point, and its first coordinate must rise"));
        }
        Ok(Self { points, source, trust })
    }
}

/// Reads a bare number that must be finite, for fields whose source stands in the entry's [`Origin`].
pub(super) fn finite<'de, D: Deserializer<'de>>(deserializer: D) -> Result<f64, D::Error> {
    Finite::deserialize(deserializer).map(Finite::get)
}

/// Reads a list of bare numbers, each of which must be finite.
pub(super) fn finite_list<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Vec<f64>, D::Error> {
    Ok(Vec::<Finite>::deserialize(deserializer)?.into_iter().map(Finite::get).collect())
}
