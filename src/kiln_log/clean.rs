//! Taking out readings that cannot be, and rows that say a thing twice.

use super::rows::Row;
use super::{Lines, Remark};

/// What a kiln or a furnace for metal can show, in °C (common practice, no source): beyond it a reading is a fault of the sensor.
pub const POSSIBLE_C: std::ops::RangeInclusive<f64> = -50.0..=1500.0;

/// Drops temperatures beyond the possible ones.
pub(super) fn drop_impossible(rows: &mut Vec<Row>, faults: &mut Vec<u32>) {
    rows.retain(|row| {
        let possible = POSSIBLE_C.contains(&row.temperature);
        if !possible {
            faults.push(row.line);
        }
        possible
    });
}

/// Keeps one row a time: the last. `rows` are in order of time, and rows of one time in the order of the file.
pub(super) fn drop_repeated(rows: &mut Vec<Row>, remarks: &mut Vec<Remark>) {
    let (mut repeated, mut overruled) = (Vec::new(), Vec::new());
    let mut kept: Vec<Row> = Vec::with_capacity(rows.len());
    for row in rows.iter() {
        match kept.last_mut() {
            Some(last) if last.time >= row.time && last.temperature.total_cmp(&row.temperature).is_eq() => repeated.push(row.line),
            Some(last) if last.time >= row.time => {
                overruled.push(last.line);
                *last = *row;
            }
            _ => kept.push(*row),
        }
    }
    *rows = kept;
    let mut told = |lines: Vec<u32>, remark: fn(Lines) -> Remark| {
        if !lines.is_empty() {
            remarks.push(remark(sorted(lines)));
        }
    };
    told(repeated, |lines| Remark::Repeated { lines });
    told(overruled, |lines| Remark::TwoValues { lines });
}

/// Lines in the order of the file.
pub(super) fn sorted(mut lines: Vec<u32>) -> Lines {
    lines.sort_unstable();
    lines.into_iter().collect()
}
