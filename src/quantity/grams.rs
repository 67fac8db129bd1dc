//! Mass that is weighed or accounted for, on decimals, so that no gram is lost to binary rounding.

use std::fmt;

use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::decimal_round::{half_up, plain};

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
        let grams = plain(grams);
        (grams.scale() <= 6 && grams.abs() < MOST).then_some(Self(grams))
    }

    /// The nearest millionth of a gram, half away from zero; `None` for what is not finite or out of range.
    #[must_use]
    pub fn from_f64(grams: f64) -> Option<Self> {
        Self::new(half_up(shortest_decimal(grams)?, 6))
    }

    /// The decimal number of grams.
    #[must_use]
    pub fn decimal(self) -> Decimal {
        self.0
    }

    /// Grams as a binary number, for physics: the one nearest to the decimal.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        nearest_binary(self.0)
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
    let decimal = plain(shortest_decimal(number).ok_or("this number is too large")?);
    if decimal.scale() > places {
        return Err("this number has more decimals than are kept here");
    }
    Ok(decimal)
}

/// The shortest decimal that reads back as `number`: what a person wrote. `None` where it is not finite or out of a decimal's range.
pub(super) fn shortest_decimal(number: f64) -> Option<Decimal> {
    number.is_finite().then(|| number.to_string().parse().ok())?
}

/// The binary number nearest to `decimal`. One division of whole numbers, both below 2⁵³ for grams and money, so it rounds once; the
/// conversion of the decimal crate rounds several times.
pub(super) fn nearest_binary(decimal: Decimal) -> f64 {
    decimal.mantissa() as f64 / 10_f64.powi(i32::try_from(decimal.scale()).unwrap_or(0))
}
