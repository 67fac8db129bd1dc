//! That numbers make sense before anything is computed from them.

use crate::calc::heat::HeatError;

/// Longest time taken in minutes: two weeks.
pub(super) const MOST_MIN: f64 = 60.0 * 24.0 * 14.0;
/// Coldest and hottest temperature of a kiln, in °C.
pub(super) const COLDEST_C: f64 = -50.0;
pub(super) const HOTTEST_C: f64 = 2000.0;

/// A number within bounds.
pub(super) fn within(what: &'static str, value: f64, least: f64, most: f64) -> Result<(), HeatError> {
    if (least..=most).contains(&value) { Ok(()) } else { Err(HeatError::OutOfRange { what, value, least, most }) }
}

/// A temperature of a kiln.
pub(super) fn celsius(what: &'static str, value: f64) -> Result<(), HeatError> {
    within(what, value, COLDEST_C, HOTTEST_C)
}

/// Two temperatures in order.
pub(super) fn between(what: &'static str, [from_c, to_c]: [f64; 2]) -> Result<(), HeatError> {
    celsius(what, from_c)?;
    within(what, to_c, from_c, HOTTEST_C)
}

/// A list that is not too long.
pub(super) fn at_most(what: &'static str, len: usize, most: usize) -> Result<(), HeatError> {
    if len > most { Err(HeatError::TooMany { what, most }) } else { Ok(()) }
}
