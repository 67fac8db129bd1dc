//! What grams and money share: a decimal kept to so many places and below a limit, that survives its way through RON text exactly.

use rust_decimal::Decimal;

use super::decimal_round::plain;

/// Declares a number kept on a decimal: to `$places` places, below `$most`.
macro_rules! kept {
    ($(#[$doc:meta])* $name:ident, $places:literal places, below $most:expr, $too_large:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
        pub struct $name(rust_decimal::Decimal);

        impl $name {
            /// Nothing.
            pub const ZERO: Self = Self(rust_decimal::Decimal::ZERO);

            /// `None` where `decimal` has more places than are kept or reaches the limit.
            #[must_use]
            pub fn new(decimal: rust_decimal::Decimal) -> Option<Self> {
                let decimal = super::decimal_round::plain(decimal);
                (decimal.scale() <= $places && decimal.abs() < $most).then_some(Self(decimal))
            }

            /// The decimal.
            #[must_use]
            pub fn decimal(self) -> rust_decimal::Decimal {
                self.0
            }

            /// The binary number nearest to it, for physics and for printing; never for sums.
            #[must_use]
            pub fn to_f64(self) -> f64 {
                super::kept::nearest_binary(self.0)
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

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                self.0.fmt(f)
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_f64(self.to_f64())
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                super::kept::decimal_from_number(f64::deserialize(deserializer)?, $places)
                    .and_then(|decimal| Self::new(decimal).ok_or($too_large))
                    .map_err(serde::de::Error::custom)
            }
        }
    };
}

pub(super) use kept;

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
