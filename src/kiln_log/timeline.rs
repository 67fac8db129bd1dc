//! Putting the rows in order of time.

use super::daylight;
use super::rows::Row;
use super::{Lines, LogError, Remark};
use jiff::tz::TimeZone;

const DAY_S: f64 = 86_400.0;
const HOUR_S: f64 = 3600.0;

/// What the times count from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Basis {
    /// The beginning of the log.
    Beginning,
    /// A midnight nobody told.
    Midnight,
    /// 1970, by the clock on the wall.
    Wall,
    /// 1970, in UTC.
    Utc,
}

/// Puts rows with times in s in order.
///
/// # Errors
/// [`LogError::GoesBack`] where sorting would mix two logs.
pub(super) fn arrange(rows: &mut Vec<Row>, basis: Basis, zone: Option<&TimeZone>, remarks: &mut Vec<Remark>) -> Result<(), LogError> {
    if falls(rows, basis) {
        rows.reverse();
        remarks.push(Remark::TurnedRound);
    }
    if basis == Basis::Midnight {
        pass_midnights(rows, remarks);
    }
    match zone {
        Some(zone) if basis == Basis::Wall => daylight::by_zone(rows, zone, remarks),
        _ if matches!(basis, Basis::Wall | Basis::Midnight) => daylight::by_jump(rows, basis == Basis::Wall, remarks),
        _ => {}
    }
    sort(rows, remarks)
}

/// True where nearly all steps go back.
fn falls(rows: &[Row], basis: Basis) -> bool {
    let (mut up, mut down) = (0_usize, 0_usize);
    for pair in rows.windows(2) {
        let step = pair[1].time - pair[0].time;
        // Around midnight the shorter way is meant.
        let step = if basis == Basis::Midnight { step - DAY_S * (step / DAY_S).round() } else { step };
        up += usize::from(step > 0.0);
        down += usize::from(step < 0.0);
    }
    down > 10 * up
}

/// Adds the days that a clock without date does not show: each step goes back at most an hour and forward less than a day.
fn pass_midnights(rows: &mut [Row], remarks: &mut Vec<Remark>) {
    let mut lines = Lines::default();
    let (mut days, mut latest) = (0.0, 0.0);
    let mut last: Option<f64> = None;
    for row in rows {
        if let Some(last) = last {
            let step = row.time + days * DAY_S - last;
            let passed = ((-HOUR_S - step) / DAY_S).ceil();
            days += passed;
            if passed > 0.0 && days > latest {
                latest = days;
                lines.push(row.line);
            }
        }
        row.time += days * DAY_S;
        last = Some(row.time);
    }
    if !lines.is_empty() {
        remarks.push(Remark::Midnight { lines });
    }
}

/// Sorts rows that came late. Rows of one time keep their order.
fn sort(rows: &mut Vec<Row>, remarks: &mut Vec<Remark>) -> Result<(), LogError> {
    let mut latest = f64::NEG_INFINITY;
    let mut late = Lines::default();
    for row in rows.iter() {
        if row.time < latest {
            late.push(row.line);
        }
        latest = latest.max(row.time);
    }
    let Some(line) = late.first() else { return Ok(()) };
    let mut order: Vec<u32> = (0..rows.len() as u32).collect();
    order.sort_by(|&a, &b| rows[a as usize].time.total_cmp(&rows[b as usize].time));
    // Rows that are merely out of place leave most neighbours together; two logs over one another do not.
    let parted = order.windows(2).filter(|pair| pair[1] != pair[0] + 1).count();
    if parted > (rows.len() / 10).max(rows.len().min(20) * 3 / 4) {
        return Err(LogError::GoesBack { line });
    }
    *rows = order.into_iter().map(|at| rows[at as usize]).collect();
    remarks.push(Remark::Sorted { lines: late });
    Ok(())
}
