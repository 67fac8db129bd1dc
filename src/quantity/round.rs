//! Rounding for print: half away from zero, decided on the decimal a person would write and not on its binary neighbour.

use num_rational::BigRational;
use num_traits::Signed;

use super::unit::Unit;

/// A rounded number: its sign, its whole digits and its decimals.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rounded {
    pub(super) negative: bool,
    pub(super) whole: String,
    pub(super) decimals: String,
}

impl Rounded {
    /// The rounded number again, for choosing digits. Not for arithmetic.
    pub(super) fn magnitude(&self) -> f64 {
        format!("{}.{}", self.whole, self.decimals).parse().unwrap_or(f64::INFINITY)
    }
}

/// The ratio that the shortest decimal of `number` stands for: 0.1 is a tenth. `None` where `number` is not finite.
pub(super) fn exact(number: f64) -> Option<BigRational> {
    let text = number.is_finite().then(|| number.to_string())?;
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, ""));
    format!("{whole}{decimals}/1{}", "0".repeat(decimals.len())).parse().ok()
}

/// `value` (in the unit of the kind) as a number of `unit`, rounded to `places`. `value` must be finite.
pub(super) fn round_in(value: f64, unit: &Unit, places: usize) -> Rounded {
    let same = unit.ratio() == (1, 1) && unit.zero_num == 0;
    if same {
        return round(value, places);
    }
    let shown = unit.from_base(value);
    // The quotient carries a few rounding errors; where they could tip a tie, the ratio decides.
    let steps = shown.abs() * 10_f64.powi(i32::try_from(places).unwrap_or(i32::MAX));
    let from_tie = (steps - steps.floor() - 0.5).abs();
    if from_tie > 1e-14 * (steps + value.abs() + 1000.0) * 16.0 {
        return round(shown, places);
    }
    exact(value).map_or_else(|| round(shown, places), |value| round_exact(&unit.exact_from_base(&value), places))
}

fn round_exact(number: &BigRational, places: usize) -> Rounded {
    let ten: BigRational = BigRational::from_integer(10.into());
    let scaled = (number.abs() * num_traits::pow(ten, places)).round().to_integer().to_string();
    let digits = format!("{scaled:0>width$}", width = places + 1);
    let (whole, decimals) = digits.split_at(digits.len() - places);
    signed(number.is_negative(), whole.to_owned(), decimals.to_owned())
}

/// Rounds the shortest decimal of `number` to `places`.
fn round(number: f64, places: usize) -> Rounded {
    let text = number.abs().to_string();
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, ""));
    let mut digits: Vec<u8> = whole.bytes().chain(decimals.bytes().chain(std::iter::repeat(b'0')).take(places)).collect();
    if decimals.as_bytes().get(places).is_some_and(|next| *next >= b'5') {
        let kept = digits.iter().rposition(|digit| *digit != b'9');
        for digit in &mut digits[kept.map_or(0, |kept| kept + 1)..] {
            *digit = b'0';
        }
        match kept {
            Some(kept) => digits[kept] += 1,
            None => digits.insert(0, b'1'),
        }
    }
    let digits: String = digits.into_iter().map(char::from).collect();
    let (whole, decimals) = digits.split_at(digits.len() - places);
    signed(number < 0.0, whole.to_owned(), decimals.to_owned())
}

/// Nothing is negative that prints as zero.
fn signed(negative: bool, whole: String, decimals: String) -> Rounded {
    let nothing = whole.bytes().chain(decimals.bytes()).all(|digit| digit == b'0');
    Rounded { negative: negative && !nothing, whole, decimals }
}
