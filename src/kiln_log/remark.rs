//! What had to be decided or left out when a log was read.

use super::{Column, Lines, TimeUnit, Unit};
use std::fmt;

/// Something a person should know about how a log was read. Lines are counted from 1, minutes from the first point.
#[derive(Debug, Clone, PartialEq)]
pub enum Remark {
    /// Lines before the table that are neither header nor data.
    LinesBefore {
        /// Those lines.
        lines: Lines,
    },
    /// Lines after the last row.
    LinesAfter {
        /// Those lines.
        lines: Lines,
    },
    /// Lines among the rows that hold neither time nor temperature.
    PassedOver {
        /// Those lines.
        lines: Lines,
    },
    /// One of several columns of temperature was taken.
    ColumnChosen {
        /// The one that was taken.
        taken: Column,
        /// The others.
        others: Vec<Column>,
    },
    /// The only column of temperature holds what was asked for, not what was measured.
    OnlySetPoint {
        /// The column.
        column: Column,
    },
    /// The file does not name the unit of the temperature; it was inferred from the values.
    UnitInferred {
        /// The unit that was taken.
        unit: Unit,
    },
    /// The file does not name the unit of the time; it was inferred from the spacing.
    TimeUnitInferred {
        /// The unit that was taken.
        unit: TimeUnit,
    },
    /// The dates can be read with day or month first.
    DayOrder {
        /// True where the day was taken first.
        day_first: bool,
        /// What decided.
        by: DayOrderBy,
    },
    /// A column has decimal points and decimal commas.
    MixedDecimals {
        /// The first line with the rarer sign.
        line: u32,
    },
    /// A clock without date went past midnight.
    Midnight {
        /// The first line after midnight, for each.
        lines: Lines,
    },
    /// The newest row stood first: all were turned round.
    TurnedRound,
    /// Rows out of order were put in their place.
    Sorted {
        /// The rows that came late.
        lines: Lines,
    },
    /// Rows that repeat time and temperature were dropped.
    Repeated {
        /// Those lines.
        lines: Lines,
    },
    /// Rows have the same time and another temperature: the last was kept.
    TwoValues {
        /// The lines that were dropped.
        lines: Lines,
    },
    /// Readings that no kiln has: an open thermocouple, a number beyond the range, a jump and back.
    SensorFaults {
        /// The lines that were dropped.
        lines: Lines,
    },
    /// Rows with a time and no temperature.
    NoReading {
        /// Those lines.
        lines: Lines,
    },
    /// No readings for a while. Nothing is filled in.
    Gap {
        /// Line of the last reading before it.
        from_line: u32,
        /// Line of the first reading after it.
        to_line: u32,
        /// Minute of the last reading before it.
        from_min: f64,
        /// Minute of the first reading after it.
        to_min: f64,
        /// True where it may be an hour that the clocks skipped, and no time at all.
        clock_change: bool,
    },
    /// There are more gaps than are told one by one.
    MoreGaps {
        /// How many more.
        count: usize,
    },
    /// The clocks went back an hour; the curve goes on.
    ClockBack {
        /// First line after it.
        line: u32,
        /// True where the zone says so; false where only the file does.
        by_zone: bool,
    },
    /// The clocks went forward an hour, as the zone says; the curve goes on.
    ClockForward {
        /// First line after it.
        line: u32,
    },
    /// The clock of the log did not follow the change of clocks in the zone.
    ClockIgnoresZone,
    /// The start is given in UTC, for want of a zone.
    StartInUtc,
}

/// What decided the order of day and month.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayOrderBy {
    /// The other order would tear the log apart.
    Span,
    /// The person who asked.
    Option,
    /// Nothing: the day was taken first.
    Nothing,
}

impl fmt::Display for Remark {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::LinesBefore { lines } => write!(f, "{lines}: before the table, passed over"),
            Self::LinesAfter { lines } => write!(f, "{lines}: after the table, passed over"),
            Self::PassedOver { lines } => write!(f, "{lines}: neither time nor temperature, passed over"),
            Self::ColumnChosen { taken, others } => {
                write!(f, "temperature taken from {taken}; the file also has ")?;
                others.iter().enumerate().try_for_each(|(at, column)| write!(f, "{}{column}", if at == 0 { "" } else { ", " }))
            }
            Self::OnlySetPoint { column } => write!(f, "{column} seems to be the set point; no measured temperature was found"),
            Self::UnitInferred { unit } => write!(f, "the file names no unit of temperature; taken as {}", unit.symbol()),
            Self::TimeUnitInferred { unit } => write!(f, "the file names no unit of time; taken as {}", unit.name()),
            Self::DayOrder { day_first, by } => {
                let order = if *day_first { "day before month" } else { "month before day" };
                let why = match by {
                    DayOrderBy::Span => "the other order would tear the log apart",
                    DayOrderBy::Option => "as asked",
                    DayOrderBy::Nothing => "nothing in the file decides it",
                };
                write!(f, "dates read {order}: {why}")
            }
            Self::MixedDecimals { line } => write!(f, "line {line}: decimal points and decimal commas in one column"),
            Self::Midnight { lines } => write!(f, "{lines}: the clock passed midnight"),
            Self::TurnedRound => f.write_str("the newest row stood first; turned round"),
            Self::Sorted { lines } => write!(f, "{lines}: out of order, put in place"),
            Self::Repeated { lines } => write!(f, "{lines}: repeated, dropped"),
            Self::TwoValues { lines } => write!(f, "{lines}: another temperature follows for the same time; dropped"),
            Self::SensorFaults { lines } => write!(f, "{lines}: sensor fault, dropped"),
            Self::NoReading { lines } => write!(f, "{lines}: no temperature, dropped"),
            Self::Gap { from_line, to_line, from_min, to_min, clock_change } => {
                write!(f, "no readings from minute {from_min:.1} (line {from_line}) to minute {to_min:.1} (line {to_line})")?;
                f.write_str(if *clock_change { "; it may be the hour that the clocks skip" } else { "" })
            }
            Self::MoreGaps { count } => write!(f, "{count} more gaps"),
            Self::ClockBack { line, by_zone: true } => write!(f, "line {line}: the clocks went back an hour"),
            Self::ClockBack { line, by_zone: false } => {
                write!(f, "line {line}: the clock went back an hour; taken as the end of summer time")
            }
            Self::ClockForward { line } => write!(f, "line {line}: the clocks went forward an hour"),
            Self::ClockIgnoresZone => f.write_str("the clock of the log did not follow the change of clocks in the zone"),
            Self::StartInUtc => f.write_str("the start is in UTC"),
        }
    }
}
