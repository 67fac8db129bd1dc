//! The unit of the temperature where the file names none.

use super::Unit;
use super::rows::Row;

/// Hotter than this no mould is burned out in °C, and as °F it is an ordinary top (common practice, no source).
const TOP_C: f64 = 1150.0;

/// The likeliest unit, from the first reading and the highest ones. `rows` are in order of time and in the unit of the file.
pub(super) fn likeliest_unit(rows: &[Row]) -> Unit {
    let within = |row: &&Row| (-60.0..2800.0).contains(&row.temperature);
    let mut sorted: Vec<f64> = rows.iter().filter(within).map(|row| row.temperature).collect();
    let Some(first) = rows.iter().find(within).map(|row| row.temperature) else { return Unit::Celsius };
    // The very highest may be a fault of the sensor.
    let high = sorted.len().saturating_sub(1) * 95 / 100;
    let top = *sorted.select_nth_unstable_by(high, f64::total_cmp).1;
    let low = (sorted.len() - 1) * 5 / 100;
    let bottom = *sorted.select_nth_unstable_by(low, f64::total_cmp).1;
    // A room is at 10 to 40 °C when the kiln is lit, and nothing in it gets colder; a log in °C that begins so hot ends lower.
    if (283.0..313.5).contains(&first) && bottom > first - 5.0 && top > first + 600.0 {
        Unit::Kelvin
    } else if top > TOP_C {
        Unit::Fahrenheit
    } else {
        Unit::Celsius
    }
}
