//! Date and time of day as a person types them: `2026-03-04 14:30`, in the studio's zone or, with `UTC` behind it, in UTC.

use jiff::Timestamp;
use jiff::civil::{Date, DateTime, Time};
use jiff::tz::{AmbiguousOffset, Offset, TimeZone};

use super::entry_error::{EntryError, EntryErrorKind, Reading};
use super::{Kind, Style, print};

/// Minutes since the Unix epoch.
///
/// # Errors
/// Where the form is another, the date is none, or the clocks of `zone` skip or repeat that time of day.
pub(super) fn parse_moment(text: &str, zone: &TimeZone) -> Result<i64, EntryError> {
    let trimmed = text.trim();
    let start = text.len() - text.trim_start().len();
    let at = start..start + trimmed.len();
    let fault = |why: EntryErrorKind| EntryError::new(why, at.clone());
    let (local, in_utc) = civil(trimmed).ok_or_else(|| fault(EntryErrorKind::MomentForm))?;
    let zone = if in_utc { &TimeZone::UTC } else { zone };
    let minute = |offset: Offset| offset.to_timestamp(local).ok().map(minutes);
    let (least, most) = Kind::Moment.possible();
    let possible = |found: Option<i64>| match found {
        Some(found) if (found as f64) < least => Err(fault(EntryErrorKind::TooSmall { asked: Kind::Moment, least })),
        Some(found) if (found as f64) <= most => Ok(found),
        _ => Err(fault(EntryErrorKind::TooLarge { asked: Kind::Moment, most })),
    };
    match zone.to_ambiguous_timestamp(local).offset() {
        AmbiguousOffset::Unambiguous { offset } => possible(minute(offset)),
        AmbiguousOffset::Gap { .. } => Err(fault(EntryErrorKind::MomentSkipped)),
        AmbiguousOffset::Fold { before, after } => {
            let (first, second) = (possible(minute(before)), possible(minute(after)));
            // Nothing impossible is offered.
            if let (Err(why), Err(_)) = (&first, &second) {
                return Err(why.clone());
            }
            let readings = [(first, "the first time, before the clocks go back"), (second, "the second time, after the clocks went back")];
            let readings = readings.into_iter().filter_map(|(found, says)| found.ok().map(|minutes| reading(minutes, says))).collect();
            Err(EntryError { readings, ..fault(EntryErrorKind::MomentTwice) })
        }
    }
}

fn minutes(moment: Timestamp) -> i64 {
    moment.as_second().div_euclid(60)
}

fn reading(minutes: i64, says: &str) -> Reading {
    let printed = print(minutes as f64, Kind::Moment, &Style::METRIC);
    Reading { text: format!("{} {}", printed.number, printed.unit), value: minutes as f64, says: format!("{printed}: {says}") }
}

/// Year, month, day, hour and minute, and whether UTC is named.
fn civil(text: &str) -> Option<(DateTime, bool)> {
    let bare = text.strip_suffix("UTC").or_else(|| text.strip_suffix('Z'));
    let (date, time) = bare.unwrap_or(text).trim_end().split_once(|sign: char| sign == 'T' || sign.is_whitespace())?;
    let [year, month, day] = numbers(date, '-', [4, 2, 2])?;
    let [hour, minute] = numbers(time.trim_start(), ':', [2, 2])?;
    let narrow = |number: i16| i8::try_from(number).ok();
    let date = Date::new(year, narrow(month)?, narrow(day)?).ok()?;
    let time = Time::new(narrow(hour)?, narrow(minute)?, 0, 0).ok()?;
    Some((date.to_datetime(time), bare.is_some()))
}

/// Numbers of at most so many digits, the first of exactly so many, between separators.
fn numbers<const N: usize>(text: &str, separator: char, widths: [usize; N]) -> Option<[i16; N]> {
    let mut parts = text.split(separator);
    let mut found = [0; N];
    for (place, width) in widths.into_iter().enumerate() {
        let digits = parts.next()?;
        let fits = if width == 4 { digits.len() == 4 } else { (1..=width).contains(&digits.len()) };
        if !fits || !digits.bytes().all(|digit| digit.is_ascii_digit()) {
            return None;
        }
        found[place] = digits.parse().ok()?;
    }
    parts.next().is_none().then_some(found)
}
