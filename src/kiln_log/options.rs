//! What a person can say about a log that its file does not tell, and how much a file may cost.

use jiff::tz::TimeZone;

use super::Decimal;

/// What may be said about a log. `None` leaves it to the file.
#[derive(Debug, Clone, Default)]
pub struct Options {
    /// The column of the temperature, from 0.
    pub temperature_column: Option<usize>,
    /// The column of the time, or of the date where the clock stands beside it, from 0.
    pub time_column: Option<usize>,
    /// The unit of the temperature, whatever the header says.
    pub unit: Option<Unit>,
    /// The unit of a time that is a plain number, whatever the header says.
    pub time_unit: Option<TimeUnit>,
    /// Whether dates like 03/04/2026 have the day first. Dates that can be read in one way only overrule it.
    pub day_first: Option<bool>,
    /// The decimal sign, where numbers like 1.250 leave it open.
    pub decimal: Option<Decimal>,
    /// The zone whose local time the clock showed; for times in UTC, the zone to show the start in.
    pub zone: Option<TimeZone>,
    /// How much the file may cost.
    pub limits: Limits,
}

/// A unit of temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Kelvin.
    Kelvin,
}

impl Unit {
    /// The temperature in °C. The scales are exact by definition (ITS-90; 0 °C = 273.15 K, 1 °F = 5/9 K).
    #[must_use]
    pub fn to_celsius(self, value: f64) -> f64 {
        match self {
            Self::Celsius => value,
            Self::Fahrenheit => (value - 32.0) * 5.0 / 9.0,
            Self::Kelvin => value - 273.15,
        }
    }

    /// As it is written behind a number.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
            Self::Kelvin => "K",
        }
    }
}

/// What a time written as a plain number counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TimeUnit {
    /// Milliseconds from the beginning.
    Millisecond,
    /// Seconds from the beginning.
    Second,
    /// Minutes from the beginning.
    Minute,
    /// Hours from the beginning.
    Hour,
    /// Days from the beginning.
    Day,
    /// Seconds since 1970 in UTC.
    UnixSecond,
    /// Milliseconds since 1970 in UTC.
    UnixMillisecond,
    /// Days of a spreadsheet, counted so that 1970-01-01 is day 25569 (1 January 1900 system).
    SerialDay,
}

impl TimeUnit {
    /// Its length in s.
    #[must_use]
    pub fn seconds(self) -> f64 {
        match self {
            Self::Millisecond | Self::UnixMillisecond => 0.001,
            Self::Second | Self::UnixSecond => 1.0,
            Self::Minute => 60.0,
            Self::Hour => 3600.0,
            Self::Day | Self::SerialDay => 86_400.0,
        }
    }

    /// Its name in the plural.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Millisecond => "milliseconds",
            Self::Second => "seconds",
            Self::Minute => "minutes",
            Self::Hour => "hours",
            Self::Day => "days",
            Self::UnixSecond => "seconds since 1970",
            Self::UnixMillisecond => "milliseconds since 1970",
            Self::SerialDay => "days of a spreadsheet",
        }
    }
}

/// The most a log may cost before it is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// The longest file that is read, in bytes.
    pub max_bytes: usize,
    /// The most lines that are kept, blank ones not counted.
    pub max_rows: usize,
}

impl Default for Limits {
    /// 64 MB and 2 million rows: three weeks at a reading a second.
    fn default() -> Self {
        Self { max_bytes: 64_000_000, max_rows: 2_000_000 }
    }
}
