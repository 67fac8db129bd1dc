//! How the numbers and dates of the chosen columns are written, from all their rows.

use super::behind::without_unit;
use super::choose::TimeSource;
use super::cut::{Separator, cut};
use super::log_error::shortened;
use super::records::Record;
use super::{DayOrderBy, Decimal, LogError, Options, Remark};
use crate::table::stamp;
use crate::table::{Shape, shape};
use crate::table::{WrittenDate, leading_date};

/// The way a table is written.
#[derive(Debug, Clone, Copy)]
pub(super) struct Marks {
    pub time_decimal: Decimal,
    pub temperature_decimal: Decimal,
    pub day_first: bool,
    /// True where a clock of two parts shows minutes and seconds.
    pub minutes_and_seconds: bool,
}

/// The rows and where to look in them.
pub(super) struct Table<'r, 't> {
    pub rows: &'r [Record<'t>],
    pub separator: Separator,
    pub time: TimeSource,
    pub temperature: usize,
}

/// What the numbers of a column say about their decimal sign; pairs are for point and comma.
#[derive(Default)]
struct Evidence {
    sure: [usize; 2],
    first_sure: [u32; 2],
    open: [Option<(u32, String)>; 2],
    whole: usize,
    /// Whole numbers of four digits and more: their writer does not part thousands.
    long: usize,
}

/// What the dates say about their order.
#[derive(Default)]
struct Dates {
    has_open: bool,
    /// Rows that can only be read with the day first, and only with the month first.
    only: [usize; 2],
    /// Least and greatest day in either reading.
    spans: [Option<[i32; 2]>; 2],
    dotted: bool,
    last: Option<WrittenDate>,
}

impl Marks {
    /// Looks through all rows.
    ///
    /// # Errors
    /// [`LogError::TwoReadings`] where a number can be read in two ways and nothing decides.
    pub fn find(table: &Table<'_, '_>, options: &Options, remarks: &mut Vec<Remark>) -> Result<Self, LogError> {
        let (mut time, mut temperature, mut others) = (Evidence::default(), Evidence::default(), Evidence::default());
        let mut dates = Dates::default();
        let (mut cells, mut minutes_and_seconds) = (Vec::new(), false);
        for (at, record) in table.rows.iter().enumerate().filter(|(_, record)| !record.comment) {
            cut(record.text, table.separator, &mut cells);
            let cell = |at: usize| cells.get(at).copied().unwrap_or_default();
            temperature.take(cell(table.temperature), record.line);
            match table.time {
                TimeSource::Number(at) => time.take(cell(at), record.line),
                TimeSource::Clock(at) => minutes_and_seconds |= stamp(cell(at)).and_then(|s| s.clock).is_some_and(|clock| clock.is_minutes),
                TimeSource::Moment(at) | TimeSource::Split { date: at, .. } => dates.take(cell(at)),
            }
            // Columns that are not taken are asked too, as far as a few rows can tell.
            if at < 300 {
                cells.iter().for_each(|cell| others.take(cell, record.line));
            }
        }
        Ok(Self {
            time_decimal: time.decide(&[&temperature, &others], options, remarks)?,
            temperature_decimal: temperature.decide(&[&time, &others], options, remarks)?,
            day_first: dates.decide(options, remarks),
            minutes_and_seconds,
        })
    }
}

const SIGNS: [Decimal; 2] = [Decimal::Point, Decimal::Comma];

impl Evidence {
    fn take(&mut self, cell: &str, line: u32) {
        let bare = without_unit(cell).0;
        match shape(bare) {
            Some(Shape::Whole) => {
                self.whole += 1;
                self.long += usize::from(bare.bytes().take_while(u8::is_ascii_digit).count() > 3);
            }
            Some(Shape::Sure(sign)) => {
                let at = usize::from(sign == Decimal::Comma);
                self.sure[at] += 1;
                if self.sure[at] == 1 {
                    self.first_sure[at] = line;
                }
            }
            Some(Shape::Open(sign)) => {
                self.open[usize::from(sign == Decimal::Comma)].get_or_insert_with(|| (line, shortened(cell)));
            }
            None => {}
        }
    }

    /// The sign that all sure numbers have.
    fn agreed(&self) -> Option<Decimal> {
        match self.sure {
            [0, 0] => None,
            [_, 0] => Some(Decimal::Point),
            [0, _] => Some(Decimal::Comma),
            _ => None,
        }
    }

    fn decide(&self, beside: &[&Self], options: &Options, remarks: &mut Vec<Remark>) -> Result<Decimal, LogError> {
        let open = self.open.iter().flatten().min_by_key(|open| open.0);
        if let Some(decimal) = options.decimal {
            return Ok(decimal);
        }
        if let Some(decimal) = self.agreed() {
            return Ok(decimal);
        }
        if self.sure[0] > 0 {
            let rarer = usize::from(self.sure[1] < self.sure[0]);
            remarks.push(Remark::MixedDecimals { line: self.first_sure[rarer] });
        }
        let Some((line, found)) = open else { return Ok(SIGNS[usize::from(self.sure[1] > self.sure[0])]) };
        let two_readings = || LogError::TwoReadings { line: *line, found: found.clone() };
        if self.sure[0] > 0 {
            return Err(two_readings());
        }
        if let Some(decimal) = beside.iter().find_map(|evidence| evidence.agreed()) {
            return Ok(decimal);
        }
        match &self.open {
            [Some(_), Some(_)] => Err(two_readings()),
            // Three places everywhere are decimals: thousands would be parted in the greater numbers alone.
            open if self.whole == 0 || self.long > 0 => Ok(SIGNS[usize::from(open[1].is_some())]),
            _ => Err(two_readings()),
        }
    }
}

impl Dates {
    fn take(&mut self, cell: &str) {
        let leading = leading_date(cell).map(|(date, _)| date);
        let Some(date) = leading.or_else(|| stamp(cell)?.date) else { return };
        if self.last.replace(date) == Some(date) {
            return;
        }
        if date.open().is_none() {
            return;
        }
        self.has_open = true;
        self.dotted |= matches!(date, WrittenDate::Dotted { .. });
        let readings = [true, false].map(|day_first| date.date(day_first));
        match readings {
            [Some(_), None] => self.only[0] += 1,
            [None, Some(_)] => self.only[1] += 1,
            _ => {}
        }
        for (span, reading) in self.spans.iter_mut().zip(readings) {
            let Some(reading) = reading else { continue };
            // Months of 31 days are exact enough to tell a day from a month.
            let day = i32::from(reading.year()) * 372 + i32::from(reading.month()) * 31 + i32::from(reading.day());
            let [least, most] = span.unwrap_or([day, day]);
            *span = Some([least.min(day), most.max(day)]);
        }
    }

    fn decide(&self, options: &Options, remarks: &mut Vec<Remark>) -> bool {
        if !self.has_open {
            return true;
        }
        if self.only[0] != self.only[1] {
            return self.only[0] > self.only[1];
        }
        let width = |span: Option<[i32; 2]>| span.map_or(i32::MAX, |[least, most]| most - least);
        let (day_first, month_first) = (width(self.spans[0]), width(self.spans[1]));
        let (day_first, by) = match options.day_first {
            Some(day_first) => (day_first, DayOrderBy::Option),
            None if self.dotted => return true,
            None if day_first != month_first => (day_first < month_first, DayOrderBy::Span),
            None => (true, DayOrderBy::Nothing),
        };
        remarks.push(Remark::DayOrder { day_first, by });
        day_first
    }
}
