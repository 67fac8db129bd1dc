//! What a time counts that is a plain number.

use super::TimeUnit;
use super::meaning::Meaning;
use super::rows::Row;

/// Years 2001 to 2100 in seconds since 1970.
const UNIX: std::ops::Range<f64> = 978_307_200.0..4_102_444_800.0;
/// Years 2000 to 2100 in days of a spreadsheet.
const SERIAL: std::ops::Range<f64> = 36_526.0..73_051.0;
/// Day of a spreadsheet on which 1970 begins.
const SERIAL_1970: f64 = 25_569.0;

/// The unit, and whether it had to be inferred from the spacing.
pub(super) fn time_unit(rows: &[Row], header: &Meaning, asked: Option<TimeUnit>) -> (TimeUnit, bool) {
    if let Some(unit) = asked {
        return (unit, false);
    }
    let (least, most) =
        rows.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), row| (least.min(row.time), most.max(row.time)));
    let within = |range: &std::ops::Range<f64>, factor: f64| range.contains(&(least / factor)) && range.contains(&(most / factor));
    if within(&UNIX, 1.0) {
        return (TimeUnit::UnixSecond, false);
    }
    if within(&UNIX, 1000.0) {
        return (TimeUnit::UnixMillisecond, false);
    }
    let has_parts = rows.iter().any(|row| row.time.fract() != 0.0);
    if within(&SERIAL, 1.0) && has_parts && most - least < 60.0 && matches!(header.time_unit, None | Some(TimeUnit::Day)) {
        return (TimeUnit::SerialDay, false);
    }
    header.time_unit.map_or_else(|| (likeliest(rows, most - least), true), |unit| (unit, false))
}

/// The unit in which the log is most like a firing of ten hours read once a minute (common practice, no source).
fn likeliest(rows: &[Row], span: f64) -> TimeUnit {
    let step = median_step(rows).unwrap_or(span);
    let oddness = |unit: TimeUnit| {
        let rare = if unit == TimeUnit::Day { 1.0 } else { 0.0 };
        (span * unit.seconds() / 36_000.0).ln().abs() + 0.5 * (step * unit.seconds() / 60.0).ln().abs() + rare
    };
    let units = [TimeUnit::Minute, TimeUnit::Second, TimeUnit::Hour, TimeUnit::Day];
    units.into_iter().min_by(|&a, &b| oddness(a).total_cmp(&oddness(b))).unwrap_or(TimeUnit::Minute)
}

/// The middle one of the steps between neighbours that have different times, whichever way they go.
pub(super) fn median_step(rows: &[Row]) -> Option<f64> {
    let mut steps: Vec<f64> = rows.windows(2).map(|pair| (pair[1].time - pair[0].time).abs()).filter(|&step| step > 0.0).collect();
    let middle = steps.len().checked_sub(1)? / 2;
    Some(*steps.select_nth_unstable_by(middle, f64::total_cmp).1)
}

/// Turns numbers into s: from the beginning, or since 1970.
pub(super) fn to_seconds(rows: &mut [Row], unit: TimeUnit) {
    let origin = if unit == TimeUnit::SerialDay { SERIAL_1970 } else { 0.0 };
    for row in rows {
        let seconds = (row.time - origin) * unit.seconds();
        // A serial day has some eleven digits: what is less than a millisecond is rounding.
        row.time = if unit == TimeUnit::SerialDay { (seconds * 1000.0).round() / 1000.0 } else { seconds };
        row.shown = row.time;
    }
}
