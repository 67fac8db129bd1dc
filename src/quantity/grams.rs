//! Mass that is weighed or accounted for, on decimals, so that no gram is lost to binary rounding.

use rust_decimal::Decimal;

use super::decimal_round::half_up;
use super::kept::{kept, shortest_decimal};

kept! {
    /// Grams, kept to a millionth of a gram and below a hundred tonnes.
    Grams, 6 places, below Decimal::from_parts(100_000_000, 0, 0, false, 0), "a weight must stay below a hundred tonnes"
}

impl Grams {
    /// The nearest millionth of a gram, half away from zero; `None` for what is not finite or out of range.
    #[must_use]
    pub fn from_f64(grams: f64) -> Option<Self> {
        Self::new(half_up(shortest_decimal(grams)?, 6))
    }
}
