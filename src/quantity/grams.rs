//! Mass that is weighed or accounted for, on decimals, so that no gram is lost to binary rounding.

use std::fmt;

use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Grams, kept to a millionth of a gram and below a hundred tonnes: such a number survives its way through RON text exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Grams(Decimal);

const MOST: Decimal = Decimal::from_parts(100_000_000, 0, 0, false, 0);

impl Grams {
    /// No mass.
    pub const ZERO: Self = Self(Decimal::ZERO);

    /// `None` where `grams` has more than six decimals or reaches a hundred tonnes.
    #[must_use]
    pub fn new(grams: Decimal) -> Option<Self> {
        let grams = grams.normalize();
        (grams.scale() <= 6 && grams.abs() < MOST).then_some(Self(grams))
    }

    /// The nearest millionth of a gram; `None` for what is not finite or out of range.
    #[must_use]
    pub fn from_f64(grams: f64) -> Option<Self> {
        Self::new(Decimal::from_f64(grams)?.round_dp(6))
    }

    /// The decimal number of grams.
    #[must_use]
    pub fn decimal(self) -> Decimal {
        self.0
    }

    /// Grams as a binary number, for physics.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        self.0.to_f64().unwrap_or_default()
    }

    /// `None` on overflow.
    #[must_use]
    pub fn checked_add(self, other: Self) -> Option<Self> {
        Self::new(self.0.checked_add(other.0)?)
    }

    /// `None` on overflow.
    #[must_use]
    pub fn checked_sub(self, other: Self) -> Option<Self> {
        Self::new(self.0.checked_sub(other.0)?)
    }
}

impl fmt::Display for Grams {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl Serialize for Grams {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.to_f64())
    }
}

impl<'de> Deserialize<'de> for Grams {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        decimal_from_number(f64::deserialize(deserializer)?, 6)
            .and_then(|decimal| Self::new(decimal).ok_or("a weight must stay below a hundred tonnes"))
            .map_err(serde::de::Error::custom)
    }
}

/// The decimal that was written as `number`; an error where it is not finite or has more than `places` decimals.
pub(super) fn decimal_from_number(number: f64, places: u32) -> Result<Decimal, &'static str> {
    if !number.is_finite() {
        return Err("a number must be finite, not NaN or infinite");
    }
    let decimal = Decimal::from_f64(number).ok_or("this number is too large")?.normalize();
    if decimal.scale() > places {
        return Err("this number has more decimals than are kept here");
    }
    Ok(decimal)
}
