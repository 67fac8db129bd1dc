//! Rounding of decimals, quick where the digits fit a machine word: every order line of a job is rounded several times.

use rust_decimal::{Decimal, RoundingStrategy};

/// Rounds half up (away from zero) to `places` decimals.
#[must_use]
pub fn half_up(decimal: Decimal, places: u32) -> Decimal {
    let extra = decimal.scale().saturating_sub(places);
    if extra == 0 {
        return decimal;
    }
    match (i64::try_from(decimal.mantissa()), 10_i64.checked_pow(extra)) {
        (Ok(digits), Some(step)) => {
            let (whole, rest) = (digits / step, digits % step);
            // Half of a power of ten from ten up is whole, so this is exact.
            let up = if rest.abs() >= step / 2 { digits.signum() } else { 0 };
            Decimal::new(whole + up, places)
        }
        _ => decimal.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero),
    }
}

/// Without trailing zeros, and without a minus before nothing.
#[must_use]
pub(super) fn plain(decimal: Decimal) -> Decimal {
    let Ok(mut digits) = i64::try_from(decimal.mantissa()) else { return decimal.normalize() };
    if digits == 0 {
        return Decimal::ZERO;
    }
    let mut scale = decimal.scale();
    while scale > 0 && digits % 10 == 0 {
        digits /= 10;
        scale -= 1;
    }
    Decimal::new(digits, scale)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn halves_go_away_from_zero() {
        let cases = [
            ("2.675", 2, "2.68"),
            ("-2.675", 2, "-2.68"),
            ("2.6749999", 2, "2.67"),
            ("0.005", 2, "0.01"),
            ("1.2", 2, "1.2"),
            ("9.995", 2, "10.00"),
        ];
        for (number, places, expected) in cases {
            assert_eq!(half_up(number.parse().unwrap(), places), expected.parse().unwrap(), "{number}");
        }
    }

    proptest! {
        #[test]
        fn rounds_like_the_decimal_crate(digits in any::<i128>(), scale in 0_u32..=28, places in 0_u32..=9) {
            let decimal = Decimal::from_i128_with_scale(digits % (1 << 95), scale);
            prop_assert_eq!(half_up(decimal, places), decimal.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero));
        }

        #[test]
        fn small_numbers_round_like_the_decimal_crate(digits in any::<i64>(), scale in 0_u32..=18, places in 0_u32..=9) {
            let decimal = Decimal::new(digits, scale);
            prop_assert_eq!(half_up(decimal, places), decimal.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero));
            prop_assert_eq!(plain(decimal).to_string(), decimal.normalize().to_string());
        }
    }
}
