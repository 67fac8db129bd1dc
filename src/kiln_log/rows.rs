//! Reading the rows: times still as they are written, temperatures in the unit of the file.

use super::behind::without_unit;
use super::choose::TimeSource;
use super::class::is_fault;
use super::cut::cut;
use super::log_error::shortened;
use super::marks::{Marks, Table};
use super::records::Record;
use super::{Lines, LogError, Unit};
use crate::table::WrittenDate;
use crate::table::{Stamp, stamp};
use crate::table::{number, shape};
use jiff::civil::Time;
use jiff::tz::Offset;

/// A row with a reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Row {
    pub line: u32,
    /// First as the file counts, later in s.
    pub time: f64,
    /// The time as the clock showed it, in s; the same unless a zone moves it.
    pub shown: f64,
    /// First in the unit of the file, later in °C.
    pub temperature: f64,
}

/// What the rows hold.
#[derive(Debug, Default)]
pub(super) struct Rows {
    pub rows: Vec<Row>,
    pub faults: Lines,
    pub no_reading: Lines,
    pub passed_over: Lines,
    /// The unit written behind the numbers.
    pub unit: Option<Unit>,
    /// Offset from UTC of the first row in s, where the times have one.
    pub offset_s: Option<i32>,
}

/// Reads times of one source.
struct TimeReader {
    source: TimeSource,
    marks: Marks,
    /// Whether the times have an offset, once one was read, and the first of them.
    offset: Option<Option<i32>>,
    /// The last date and its midnight in s since 1970: most rows have the date of the row before.
    last_date: Option<(WrittenDate, f64)>,
}

enum Found {
    Temperature(f64),
    Fault,
    Nothing,
    Text,
}

/// True where the cells of the time hold something that can be one.
pub(super) fn has_time(record: &Record<'_>, table: &Table<'_, '_>) -> bool {
    let mut cells = Vec::new();
    cut(record.text, table.separator, &mut cells);
    let cell = |at: usize| cells.get(at).copied().unwrap_or_default();
    let date = |at: usize| stamp(cell(at)).is_some_and(|stamp| stamp.date.is_some());
    let clock = |at: usize| stamp(cell(at)).is_some_and(|stamp| stamp.clock.is_some());
    match table.time {
        TimeSource::Number(at) => shape(cell(at)).is_some(),
        TimeSource::Clock(at) => clock(at),
        TimeSource::Moment(at) => date(at),
        TimeSource::Split { date: at, clock: beside } => date(at) && clock(beside),
    }
}

/// Reads all rows of a table.
///
/// # Errors
/// [`LogError::NotATime`] and [`LogError::NotATemperature`].
pub(super) fn read_rows(table: &Table<'_, '_>, marks: Marks) -> Result<Rows, LogError> {
    let mut found = Rows { rows: Vec::with_capacity(table.rows.len()), ..Rows::default() };
    let mut times = TimeReader { source: table.time, marks, offset: None, last_date: None };
    let mut cells = Vec::new();
    for record in table.rows.iter().filter(|record| !record.comment) {
        cut(record.text, table.separator, &mut cells);
        let line = record.line;
        let cell = cells.get(table.temperature).copied().unwrap_or_default();
        match (times.read(&cells), temperature(cell, marks, &mut found.unit)) {
            (Some(time), Found::Temperature(temperature)) => found.rows.push(Row { line, time, shown: time, temperature }),
            (Some(_), Found::Fault) => found.faults.push(line),
            (Some(_), Found::Nothing) => found.no_reading.push(line),
            (Some(_), Found::Text) => return Err(LogError::NotATemperature { line, found: shortened(cell) }),
            (None, Found::Temperature(_)) => return Err(LogError::NotATime { line, found: times.said(&cells) }),
            (None, _) if cells.iter().all(|cell| cell.is_empty()) => {}
            (None, _) => found.passed_over.push(line),
        }
    }
    found.offset_s = times.offset.flatten();
    Ok(found)
}

fn temperature(cell: &str, marks: Marks, unit: &mut Option<Unit>) -> Found {
    if cell.is_empty() {
        return Found::Nothing;
    }
    let (bare, found) = without_unit(cell);
    match number(bare, marks.temperature_decimal) {
        Some(number) => {
            *unit = unit.or(found);
            Found::Temperature(number)
        }
        None if is_fault(cell) => Found::Fault,
        None => Found::Text,
    }
}

impl TimeReader {
    /// The time of a row: of a number as it stands, of a clock in s, of a date in s since 1970 in its own zone or, with an offset, in UTC.
    fn read(&mut self, cells: &[&str]) -> Option<f64> {
        let cell = |at: usize| cells.get(at).copied().unwrap_or_default();
        match self.source {
            TimeSource::Number(at) => number(cell(at), self.marks.time_decimal),
            TimeSource::Clock(at) => {
                let found = stamp(cell(at)).filter(|stamp| stamp.date.is_none())?;
                self.clock(found)
            }
            TimeSource::Moment(at) => {
                let found = stamp(cell(at))?;
                let midnight = self.midnight(found.date?)?;
                // Spreadsheets leave out the clock at midnight.
                let clock = found.clock.map_or(0.0, |clock| clock.seconds);
                Some(midnight + clock - self.offset(found.offset_s)?)
            }
            TimeSource::Split { date, clock } => {
                let midnight = self.midnight(stamp(cell(date))?.date?)?;
                let found = stamp(cell(clock))?;
                let seconds = found.clock.map(|clock| clock.seconds).filter(|&seconds| seconds <= 86_400.0)?;
                Some(midnight + seconds - self.offset(found.offset_s)?)
            }
        }
    }

    fn clock(&self, found: Stamp) -> Option<f64> {
        let clock = found.clock?;
        let is_minutes = clock.is_minutes || (clock.has_two_parts && self.marks.minutes_and_seconds);
        Some(if is_minutes { clock.seconds / 60.0 } else { clock.seconds })
    }

    /// The offset in s; all rows have one, or none has.
    fn offset(&mut self, told: Option<i32>) -> Option<f64> {
        let first = *self.offset.get_or_insert(told);
        (first.is_some() == told.is_some()).then_some(f64::from(told.unwrap_or(0)))
    }

    fn midnight(&mut self, written: WrittenDate) -> Option<f64> {
        if let Some((last, midnight)) = self.last_date
            && last == written
        {
            return Some(midnight);
        }
        let date = written.date(self.marks.day_first)?;
        let midnight = Offset::UTC.to_timestamp(date.to_datetime(Time::midnight())).ok()?.as_second() as f64;
        self.last_date = Some((written, midnight));
        Some(midnight)
    }

    /// What stands where the time was expected.
    fn said(&self, cells: &[&str]) -> String {
        let said: Vec<&str> =
            self.source.columns().into_iter().filter_map(|at| cells.get(at).copied()).filter(|said| !said.is_empty()).collect();
        shortened(&said.join(" "))
    }
}
