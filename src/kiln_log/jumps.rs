//! Readings that jump away from the curve and come back: a loose or open thermocouple.

use super::rows::Row;

/// A jump of this many K at once, faster than this many K a minute, is none of a kiln's: the fastest heat some 50 K a minute (common practice,
/// no source).
const JUMP_K: f64 = 150.0;
const JUMP_K_MIN: f64 = 100.0;
/// Readings that may be off the curve while they move.
const MOST_MOVING: usize = 3;
/// Readings that stay within this many K stand still, as the number does that an instrument shows for a fault.
const STILL_K: f64 = 0.5;
/// What instruments show for an open thermocouple within the possible range: the end of type K (IEC 60584-1: 1372 °C).
const END_OF_RANGE_C: f64 = 1372.0;

/// Drops readings off the curve. `rows` are in order of time.
pub(super) fn drop_jumps(rows: &mut Vec<Row>, faults: &mut Vec<u32>) {
    let mut bad = vec![false; rows.len()];
    // A log that begins with the fault has no curve to jump from.
    let lead = rows.iter().take_while(|row| is_end_of_range(row)).count();
    if lead < rows.len() && lead > 0 && (rows[lead].temperature - END_OF_RANGE_C).abs() > JUMP_K {
        bad[..lead].fill(true);
    }
    let mut at = if bad.first() == Some(&true) { lead } else { 0 };
    while at + 1 < rows.len() {
        let length = if jumps(&rows[at], &rows[at + 1]) { off_curve(rows, at) } else { 0 };
        bad[at + 1..at + 1 + length].fill(true);
        at += length + 1;
    }
    let mut marks = bad.into_iter();
    rows.retain(|row| {
        let is_bad = marks.next() == Some(true);
        if is_bad {
            faults.push(row.line);
        }
        !is_bad
    });
}

fn is_end_of_range(row: &Row) -> bool {
    (row.temperature - END_OF_RANGE_C).abs() < 0.6
}

fn jumps(from: &Row, to: &Row) -> bool {
    let (change, minutes) = ((to.temperature - from.temperature).abs(), (to.time - from.time) / 60.0);
    change > JUMP_K && (change > JUMP_K_MIN * minutes || is_end_of_range(to) || is_end_of_range(from))
}

/// How many readings after `last` are off the curve; 0 where the curve itself moved.
fn off_curve(rows: &[Row], last: usize) -> usize {
    let first = rows[last + 1];
    let still = rows[last + 1..].iter().take_while(|row| (row.temperature - first.temperature).abs() <= STILL_K).count();
    let way = (first.temperature - rows[last].temperature).signum();
    // The longest run that can be off the curve is looked at: as long as it stands still, or a few readings.
    for length in [still, 1, 2, MOST_MOVING] {
        let Some(back) = rows.get(last + 1 + length) else { continue };
        let before = rows[last + length];
        let returns = jumps(&before, back) && (back.temperature - before.temperature).signum() != way;
        if returns && !jumps(&rows[last], back) {
            return length;
        }
    }
    // Nothing after it: only the number of an open thermocouple is sure.
    if last + 1 + still == rows.len() && is_end_of_range(&first) { still } else { 0 }
}
