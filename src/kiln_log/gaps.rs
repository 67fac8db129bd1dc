//! Stretches without readings.

use super::Remark;
use super::daylight::civil;
use super::rows::Row;
use jiff::civil::Weekday;

/// Gaps that are told one by one.
const MOST_TOLD: usize = 20;
/// A step is a gap from this many times the usual step on, and from this many s on (common practice, no source).
const TIMES_USUAL: f64 = 2.5;
const LEAST_S: f64 = 120.0;

/// Tells where readings are missing. `is_wall` is true for times of a clock on the wall whose zone is not known.
pub(super) fn tell_gaps(rows: &[Row], is_wall: bool, remarks: &mut Vec<Remark>) {
    let Some(origin) = rows.first().map(|row| row.time) else { return };
    let mut steps: Vec<f64> = rows.windows(2).map(|pair| pair[1].time - pair[0].time).collect();
    if steps.is_empty() {
        return;
    }
    let last = steps.len() - 1;
    let mut nth = |share: usize| *steps.select_nth_unstable_by(last * share / 100, f64::total_cmp).1;
    let (usual, long) = (nth(50), nth(90));
    let least = (TIMES_USUAL * usual).max(2.0 * long).max(LEAST_S);
    let mut told = 0;
    for pair in rows.windows(2).filter(|pair| pair[1].time - pair[0].time > least) {
        told += 1;
        if told <= MOST_TOLD {
            let minute = |row: &Row| (row.time - origin) / 60.0;
            remarks.push(Remark::Gap {
                from_line: pair[0].line,
                to_line: pair[1].line,
                from_min: minute(&pair[0]),
                to_min: minute(&pair[1]),
                clock_change: is_wall && is_skipped_hour(&pair[0], &pair[1], usual),
            });
        }
    }
    if told > MOST_TOLD {
        remarks.push(Remark::MoreGaps { count: told - MOST_TOLD });
    }
}

/// True where one hour and a usual step are missing early on a Sunday.
fn is_skipped_hour(from: &Row, to: &Row, usual: f64) -> bool {
    let Some(shown) = civil(from.shown) else { return false };
    let is_hour = (to.time - from.time - usual - 3600.0).abs() <= (2.0 * usual).max(60.0);
    is_hour && (0..3).contains(&shown.hour()) && shown.date().weekday() == Weekday::Sunday
}
