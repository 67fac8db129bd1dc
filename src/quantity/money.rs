//! Money on decimals, with checked operations only: the operators of the decimal crate panic on overflow.

use std::fmt;

use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::decimal_round::{half_up, plain};
use super::grams::{decimal_from_number, nearest_binary};

/// An amount in the studio's currency, kept to a ten-thousandth and below a hundred thousand million.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Money(Decimal);

const MOST: Decimal = Decimal::from_parts(1_215_752_192, 23, 0, false, 0);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(Decimal::ZERO);

    /// `None` where the amount has more than four decimals or reaches a hundred thousand million.
    #[must_use]
    pub fn new(amount: Decimal) -> Option<Self> {
        let amount = plain(amount);
        (amount.scale() <= 4 && amount.abs() < MOST).then_some(Self(amount))
    }

    /// Rounds half up (away from zero) to `places` decimals; `None` on overflow.
    #[must_use]
    pub fn rounded(amount: Decimal, places: u32) -> Option<Self> {
        Self::new(half_up(amount, places))
    }

    /// The decimal amount.
    #[must_use]
    pub fn decimal(self) -> Decimal {
        self.0
    }

    /// The amount as a binary number, for printing: the one nearest to the decimal. Never for sums.
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

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl Serialize for Money {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.to_f64())
    }
}

impl<'de> Deserialize<'de> for Money {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        decimal_from_number(f64::deserialize(deserializer)?, 4)
            .and_then(|decimal| Self::new(decimal).ok_or("this amount is too large"))
            .map_err(serde::de::Error::custom)
    }
}
