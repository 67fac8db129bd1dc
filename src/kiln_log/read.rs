//! From the bytes of a log to its curve.

use super::choose::{Choice, TimeSource, choose, named};
use super::class::Class;
use super::clean::{drop_impossible, drop_repeated, sorted};
use super::cut::Separator;
use super::daylight::civil;
use super::gaps::tell_gaps;
use super::header::Header;
use super::jumps::drop_jumps;
use super::kelvin::likeliest_unit;
use super::layout::Layout;
use super::marks::{Marks, Table};
use super::meaning::{Role, unit_in_prose};
use super::records::{Record, records};
use super::rows::{Row, Rows, has_time, read_rows};
use super::scale::{time_unit, to_seconds};
use super::text::decode;
use super::timeline::{Basis, arrange};
use super::{Lines, LogError, Options, Remark, Taken, TimeUnit, Unit};
use jiff::Timestamp;
use jiff::civil::{DateTime, Time};
use std::ops::Range;

/// The curve of a firing, read from a log.
#[derive(Debug, Clone, PartialEq)]
pub struct KilnLog {
    /// Minutes from the first point, and °C. At least two points, minutes rising.
    pub points: Vec<[f64; 2]>,
    /// Date and time of the first point by the clock on the wall, where the file tells both.
    pub start: Option<DateTime>,
    /// Time of day of the first point, where the file tells it, with or without a date.
    pub start_clock: Option<Time>,
    /// What had to be decided or left out.
    pub remarks: Vec<Remark>,
    /// How the file was understood.
    pub taken: Taken,
}

/// Reads the log of a kiln: a table in text with a column of times and one of temperatures.
///
/// # Errors
/// Where there is no such table, where something else stands where a time or a temperature was expected, or where the file can be read in two
/// ways that differ. Takes time in proportion to the length of the file.
pub fn read(bytes: &[u8], options: &Options) -> Result<KilnLog, LogError> {
    if bytes.len() > options.limits.max_bytes {
        return Err(LogError::TooLarge { bytes: bytes.len(), most: options.limits.max_bytes });
    }
    let text = decode(bytes).ok_or(LogError::NotText)?;
    let all = records(&text, options.limits.max_rows)?;
    let (forced, records) = named_separator(&all);
    let line = records.first().ok_or(LogError::Empty)?.line;
    let layout = Layout::find(records, forced).ok_or(LogError::NoTable { line })?;
    let header = Header::find(records, &layout);
    if header.is_half {
        return Err(LogError::CommaTwice { line: records[layout.first].line });
    }
    let choice = choose(records, &layout, &header, options)?;
    let mut remarks = Vec::new();
    let whole = Table { rows: &records[layout.first..], separator: layout.separator, time: choice.time, temperature: choice.temperature };
    let last = whole.rows.iter().rposition(|record| !record.comment && has_time(record, &whole));
    let last = last.ok_or(LogError::NoTime { line: header.line.unwrap_or(line) })?;
    tell_surroundings(records, layout.first - header.records, layout.first + last + 1, &mut remarks);
    tell_columns(&layout, &header, &choice, options, &mut remarks);
    let table = Table { rows: &whole.rows[..=last], ..whole };
    let mut marks = Marks::find(&table, options, &mut remarks)?;
    marks.minutes_and_seconds |= matches!(table.time, TimeSource::Clock(at) if header.meanings[at].minutes_and_seconds);
    let mut found = read_rows(&table, marks)?;
    let (basis, time_unit) = time_in_seconds(&mut found, choice.time, &header, marks, options, &mut remarks);
    arrange(&mut found.rows, basis, options.zone.as_ref(), &mut remarks)?;
    let unit = in_celsius(&mut found, &records[..layout.first], &header, choice.temperature, options, &mut remarks);
    clean(&mut found, &mut remarks)?;
    tell_gaps(&found.rows, basis == Basis::Wall && options.zone.is_none(), &mut remarks);
    let (start, start_clock) = start(&found, basis, options, &mut remarks);
    let origin = found.rows[0].time;
    let taken = Taken {
        separator: layout.separator,
        header_line: header.line,
        time: named(&header, &choice.time.columns()),
        time_unit,
        temperature: named(&header, &[choice.temperature]).swap_remove(0),
        unit,
        decimal: marks.temperature_decimal,
        others: named(&header, &choice.others),
    };
    let points = found.rows.iter().map(|row| [(row.time - origin) / 60.0, row.temperature]).collect();
    Ok(KilnLog { points, start, start_clock, remarks, taken })
}

/// The separator that a first line like `sep=;` names, and the lines after it.
fn named_separator<'a, 't>(records: &'a [Record<'t>]) -> (Option<Separator>, &'a [Record<'t>]) {
    let Some((first, rest)) = records.split_first() else { return (None, records) };
    let said = first.text.trim_matches([' ', '"']);
    let sign = said.get(..4).filter(|start| start.eq_ignore_ascii_case("sep=")).map(|_| &said.as_bytes()[4..]);
    match sign {
        Some([sign]) => (Separator::ALL.into_iter().find(|separator| separator.byte() == *sign), rest),
        _ => (None, records),
    }
}

fn tell_surroundings(records: &[Record<'_>], first: usize, end: usize, remarks: &mut Vec<Remark>) {
    let lines =
        |range: Range<usize>| -> Lines { records[range].iter().filter(|record| !record.comment).map(|record| record.line).collect() };
    let (before, after) = (lines(0..first), lines(end..records.len()));
    if !before.is_empty() {
        remarks.push(Remark::LinesBefore { lines: before });
    }
    if !after.is_empty() {
        remarks.push(Remark::LinesAfter { lines: after });
    }
}

fn tell_columns(layout: &Layout, header: &Header, choice: &Choice, options: &Options, remarks: &mut Vec<Remark>) {
    if options.temperature_column.is_some() {
        return;
    }
    let column = || named(header, &[choice.temperature]).swap_remove(0);
    if header.meanings[choice.temperature].role == Role::SetPoint {
        remarks.push(Remark::OnlySetPoint { column: column() });
    }
    let others = named(header, &choice.others);
    if !others.is_empty() && layout.classes[choice.temperature] == Class::Number {
        remarks.push(Remark::ColumnChosen { taken: column(), others });
    }
}

/// Turns the times into s, and tells what they count from.
fn time_in_seconds(
    found: &mut Rows,
    source: TimeSource,
    header: &Header,
    marks: Marks,
    options: &Options,
    remarks: &mut Vec<Remark>,
) -> (Basis, Option<TimeUnit>) {
    match source {
        TimeSource::Moment(_) | TimeSource::Split { .. } if found.offset_s.is_some() => (Basis::Utc, None),
        TimeSource::Moment(_) | TimeSource::Split { .. } => (Basis::Wall, None),
        TimeSource::Clock(at) => {
            let passed = header.meanings[at].elapsed || marks.minutes_and_seconds || counts_from_zero(&found.rows);
            (if passed { Basis::Beginning } else { Basis::Midnight }, None)
        }
        TimeSource::Number(at) => {
            let (unit, inferred) = time_unit(&found.rows, &header.meanings[at], options.time_unit);
            to_seconds(&mut found.rows, unit);
            if inferred {
                remarks.push(Remark::TimeUnitInferred { unit });
            }
            let basis = match unit {
                TimeUnit::UnixSecond | TimeUnit::UnixMillisecond => Basis::Utc,
                TimeUnit::SerialDay => Basis::Wall,
                _ => Basis::Beginning,
            };
            (basis, Some(unit))
        }
    }
}

/// True where no clock shows such times: beyond a day, or from nothing on without a midnight.
fn counts_from_zero(rows: &[Row]) -> bool {
    let least = rows.iter().map(|row| row.time).fold(f64::INFINITY, f64::min);
    let back = |pair: &[Row]| pair[1].time - pair[0].time < -12.0 * 3600.0;
    let begins = rows.first().is_some_and(|row| row.time < 60.0 && row.time <= least);
    rows.iter().any(|row| row.time > 86_400.0) || (begins && !rows.windows(2).any(back))
}

/// Turns the temperatures into °C. The unit is the one asked for, or stands over the column, behind the numbers, over another column of
/// temperatures, or in the lines above the table, in this order; else it is inferred.
fn in_celsius(
    found: &mut Rows,
    above: &[Record<'_>],
    header: &Header,
    column: usize,
    options: &Options,
    remarks: &mut Vec<Remark>,
) -> Unit {
    let beside = || header.meanings.iter().find_map(|meaning| meaning.unit);
    let told = options.unit.or(header.meanings[column].unit).or(found.unit).or_else(beside);
    let told = told.or_else(|| above.iter().find_map(|record| unit_in_prose(record.text)));
    let unit = told.unwrap_or_else(|| likeliest_unit(&found.rows));
    if told.is_none() {
        remarks.push(Remark::UnitInferred { unit });
    }
    for row in &mut found.rows {
        row.temperature = unit.to_celsius(row.temperature);
    }
    unit
}

/// Takes out faults and repetitions.
fn clean(found: &mut Rows, remarks: &mut Vec<Remark>) -> Result<(), LogError> {
    let mut faults = Vec::new();
    drop_impossible(&mut found.rows, &mut faults);
    drop_repeated(&mut found.rows, remarks);
    drop_jumps(&mut found.rows, &mut faults);
    let dropped = faults.len() + found.faults.count;
    let written: Vec<u32> = found.faults.ranges.iter().flat_map(|&[first, last]| first..=last).collect();
    let lines = if faults.is_empty() { found.faults.clone() } else { sorted([faults, written].concat()).counted(dropped) };
    if !found.no_reading.is_empty() {
        remarks.push(Remark::NoReading { lines: found.no_reading.clone() });
    }
    if !found.passed_over.is_empty() {
        remarks.push(Remark::PassedOver { lines: found.passed_over.clone() });
    }
    if found.rows.is_empty() && dropped > 0 {
        return Err(LogError::OnlyFaults { count: dropped });
    }
    if dropped > 0 {
        remarks.push(Remark::SensorFaults { lines });
    }
    if found.rows.len() < 2 { Err(LogError::TooFewPoints { count: found.rows.len() }) } else { Ok(()) }
}

/// Date and time of the first point by the clock on the wall.
fn start(found: &Rows, basis: Basis, options: &Options, remarks: &mut Vec<Remark>) -> (Option<DateTime>, Option<Time>) {
    let Some(first) = found.rows.first() else { return (None, None) };
    let start = match (basis, &options.zone) {
        (Basis::Beginning, _) => return (None, None),
        (Basis::Midnight, _) => return (None, civil(first.shown).map(|shown| shown.time())),
        (Basis::Wall, _) => civil(first.shown),
        (Basis::Utc, Some(zone)) => {
            Timestamp::from_millisecond((first.time * 1000.0).round() as i64).ok().map(|moment| zone.to_datetime(moment))
        }
        (Basis::Utc, None) => {
            let offset_s = found.offset_s.unwrap_or(0);
            if offset_s == 0 {
                remarks.push(Remark::StartInUtc);
            }
            civil(first.time + f64::from(offset_s))
        }
    };
    (start, start.map(|start| start.time()))
}
