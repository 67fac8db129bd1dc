//! What a figure's value can be: a number, weighed grams, money, or missing with its cause.

use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};

use crate::quantity::{Grams, Kind, Money, half_up};

/// Why a value is missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cause {
    /// Nobody said it yet.
    NotSaid,
    /// What it comes from was not chosen yet.
    NotChosen,
    /// The shelf has no such entry, or the entry does not say it.
    NotOnShelf,
    /// The pattern's file is not there or cannot be read.
    NoFile,
    /// The file has no such number (it is open, or wound both ways).
    NoSuchNumber,
    /// Fewer rows than a line can be laid through.
    TooFew,
    /// A long run has not come back yet: not known yet, and never shown as safe.
    Pending,
    /// The rule gave no finite number for these terms.
    NotFinite,
    /// It means nothing here.
    DoesNotApply,
    /// One of its terms is missing.
    Term,
}

/// A value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value {
    /// A binary number in the unit of its kind.
    Number(f64),
    /// Weighed or accounted mass.
    Grams(Grams),
    /// Money, or money per gram.
    Money(Money),
    /// Missing.
    Missing(Cause),
}

impl Value {
    /// The number, whatever it is kept in.
    #[must_use]
    pub fn number(self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(number),
            Self::Grams(grams) => Some(grams.to_f64()),
            Self::Money(money) => money.decimal().to_f64(),
            Self::Missing(_) => None,
        }
    }

    /// The decimal, whatever it is kept in.
    #[must_use]
    pub fn decimal(self) -> Option<Decimal> {
        match self {
            Self::Number(number) => decimal_of(number),
            Self::Grams(grams) => Some(grams.decimal()),
            Self::Money(money) => Some(money.decimal()),
            Self::Missing(_) => None,
        }
    }

    /// Why it is missing, where it is.
    #[must_use]
    pub fn cause(self) -> Option<Cause> {
        match self {
            Self::Missing(cause) => Some(cause),
            _ => None,
        }
    }

    /// A binary number; the one check against NaN and infinity.
    pub(super) fn finite(number: f64) -> Self {
        if number.is_finite() { Self::Number(number) } else { Self::Missing(Cause::NotFinite) }
    }

    /// A decimal as grams or money by its kind.
    pub(super) fn from_decimal(decimal: Option<Decimal>, kind: Kind) -> Self {
        let value = decimal.and_then(|decimal| match kind {
            Kind::Mass => Grams::new(half_up(decimal, 6)).map(Self::Grams),
            Kind::Money | Kind::PricePerGram => Money::new(half_up(decimal, 4)).map(Self::Money),
            _ => decimal.to_f64().map(Self::Number),
        });
        value.unwrap_or(Self::Missing(Cause::NotFinite))
    }
}

/// The decimal nearest to a binary number: to nine places where it is below a million, which is quick and finer than any scale; to the
/// number's own digits beyond.
fn decimal_of(number: f64) -> Option<Decimal> {
    if number.abs() < 1e6 {
        // Below 10¹⁵, so both the product and the integer are exact enough.
        #[allow(clippy::cast_possible_truncation)]
        let billionths = (number * 1e9).round() as i64;
        Some(Decimal::new(billionths, 9))
    } else {
        Decimal::from_f64(number)
    }
}
