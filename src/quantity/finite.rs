//! A number that is neither NaN nor infinite: RON text can say both, no figure may hold either.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A finite `f64`. Reading `NaN`, `inf` or `1e999` from a file is an error at that place.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Finite(f64);

impl Finite {
    /// `None` for NaN and for the infinities. Minus zero becomes zero, so that equal numbers print alike.
    #[must_use]
    pub fn new(number: f64) -> Option<Self> {
        number.is_finite().then_some(Self(number + 0.0))
    }

    /// The number itself.
    #[must_use]
    pub fn get(self) -> f64 {
        self.0
    }
}

impl Serialize for Finite {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.0)
    }
}

impl<'de> Deserialize<'de> for Finite {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let number = f64::deserialize(deserializer)?;
        Self::new(number).ok_or_else(|| serde::de::Error::custom("a number must be finite, not NaN or infinite"))
    }
}
