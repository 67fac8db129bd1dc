//! Clocks that are put back an hour in autumn and forward in spring.

use super::Remark;
use super::rows::Row;
use super::scale::median_step;
use jiff::Timestamp;
use jiff::civil::{DateTime, Weekday};
use jiff::tz::{AmbiguousOffset, Offset, TimeZone};

const HOUR_S: f64 = 3600.0;

/// The date and time that s since 1970 are without regard to any zone.
pub(super) fn civil(seconds: f64) -> Option<DateTime> {
    let moment = Timestamp::from_millisecond((seconds * 1000.0).round() as i64).ok()?;
    Some(TimeZone::UTC.to_datetime(moment))
}

/// Turns times on the wall into times in UTC. Where the clock shows an hour twice, the order of the rows decides. A log whose clock shows the
/// hour that is skipped, or runs on over the change, does not follow the zone and is taken as it stands.
pub(super) fn by_zone(rows: &mut [Row], zone: &TimeZone, remarks: &mut Vec<Remark>) {
    let step = median_step(rows).unwrap_or(0.0);
    match moments(rows, zone, step) {
        Some(moments) if follows(rows, &moments, step) => {
            let mut before: Option<f64> = None;
            for (row, moment) in rows.iter_mut().zip(moments) {
                let offset = row.shown - moment;
                match before {
                    Some(before) if offset < before => remarks.push(Remark::ClockBack { line: row.line, by_zone: true }),
                    Some(before) if offset > before => remarks.push(Remark::ClockForward { line: row.line }),
                    _ => {}
                }
                before = Some(offset);
                row.time = moment;
            }
        }
        _ => {
            remarks.push(Remark::ClockIgnoresZone);
            by_jump(rows, true, remarks);
        }
    }
}

/// The moments in UTC, in s; `None` where a row shows a time that the zone skips.
fn moments(rows: &[Row], zone: &TimeZone, step: f64) -> Option<Vec<f64>> {
    let mut found: Vec<f64> = Vec::with_capacity(rows.len());
    for row in rows {
        let shown = civil(row.shown)?;
        let at = |offset: Offset| row.shown - f64::from(offset.seconds());
        found.push(match zone.to_ambiguous_timestamp(shown).offset() {
            AmbiguousOffset::Unambiguous { offset } => at(offset),
            AmbiguousOffset::Gap { .. } => return None,
            AmbiguousOffset::Fold { before, after } => match found.last() {
                // Whichever is nearer to where the next row was to be expected.
                Some(last) if (at(after) - last - step).abs() < (at(before) - last - step).abs() => at(after),
                _ => at(before),
            },
        });
    }
    Some(found)
}

/// False where the clock runs evenly over a change that the zone has.
fn follows(rows: &[Row], moments: &[f64], step: f64) -> bool {
    let mut pairs = rows.windows(2).zip(moments.windows(2));
    !pairs.any(|(rows, moments)| {
        let (shown, passed) = (rows[1].shown - rows[0].shown, moments[1] - moments[0]);
        (passed - shown).abs() > 1.0 && shown > 0.0 && shown <= 2.0 * step && passed > shown
    })
}

/// Takes a step back of one hour in the early morning, on a Sunday where there is a date, as the end of summer time: what follows goes on from
/// where it was.
pub(super) fn by_jump(rows: &mut [Row], is_dated: bool, remarks: &mut Vec<Remark>) {
    let step = median_step(rows).unwrap_or(0.0);
    let slack = (3.0 * step).clamp(120.0, 1500.0);
    let mut shift = 0.0;
    for at in 0..rows.len() {
        if let Some(before) = at.checked_sub(1).map(|at| rows[at]) {
            let this = rows[at].time + shift;
            let is_hour = (this - before.time - step + HOUR_S).abs() <= slack && this < before.time;
            // A row merely out of place is followed by one that goes on from the row before it.
            let stays = rows.get(at + 1).is_none_or(|next| next.time + shift < before.time || next.time + shift - this > HOUR_S);
            if is_hour && stays && is_plausible(&before, is_dated) {
                shift += HOUR_S;
                remarks.push(Remark::ClockBack { line: rows[at].line, by_zone: false });
            }
        }
        rows[at].time += shift;
    }
}

/// Between half past midnight and half past four, when clocks are changed (European Union: 01:00 UTC; United States: 02:00; both on Sundays).
fn is_plausible(before: &Row, is_dated: bool) -> bool {
    let Some(shown) = civil(before.shown) else { return false };
    let minute = i32::from(shown.hour()) * 60 + i32::from(shown.minute());
    (30..270).contains(&minute) && (!is_dated || shown.date().weekday() == Weekday::Sunday)
}
