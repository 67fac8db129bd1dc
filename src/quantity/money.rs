//! Money on decimals, with checked operations only: the operators of the decimal crate panic on overflow.

use rust_decimal::Decimal;

use super::decimal_round::half_up;
use super::kept::kept;

kept! {
    /// An amount in the studio's currency, kept to a ten-thousandth and below a hundred thousand million.
    Money, 4 places, below Decimal::from_parts(1_215_752_192, 23, 0, false, 0), "this amount is too large"
}

impl Money {
    /// Rounds half up (away from zero) to `places` decimals; `None` on overflow.
    #[must_use]
    pub fn rounded(amount: Decimal, places: u32) -> Option<Self> {
        Self::new(half_up(amount, places))
    }
}
