//! Times as they stand in a cell: a clock, a date, or both, with or without offset.

use super::written_date::{WrittenDate, leading_date, leading_digits, named_date};

/// What a cell says of the time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stamp {
    /// The date, where one stands there.
    pub date: Option<WrittenDate>,
    /// The time of day, where one stands there.
    pub clock: Option<Clock>,
    /// Offset from UTC in s, where it is told.
    pub offset_s: Option<i32>,
}

/// A time of day, or one that has passed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clock {
    /// Seconds, where the first number counts hours.
    pub seconds: f64,
    /// True where only two numbers stand there, which may be minutes and seconds.
    pub has_two_parts: bool,
    /// True where it must be minutes and seconds: 12:30.5.
    pub is_minutes: bool,
}

/// Reads a cell; `None` where it is no time.
#[must_use]
pub fn stamp(cell: &str) -> Option<Stamp> {
    let first = cell.chars().next()?;
    if !first.is_ascii_digit() {
        return first.is_alphabetic().then(|| with_name(cell)).flatten();
    }
    if let Some((date, rest)) = leading_date(cell) {
        return behind_date(date, rest);
    }
    if let Some((date, rest)) = compact(cell) {
        return behind_date(date, rest);
    }
    if let Some((clock, rest)) = leading_clock(cell) {
        let rest = rest.trim_start();
        if let Some((date, after)) = leading_date(rest) {
            return after.is_empty().then_some(Stamp { date: Some(date), clock: Some(clock), offset_s: None });
        }
        let offset_s = if rest.is_empty() { None } else { Some(offset(rest)?) };
        return Some(Stamp { date: None, clock: Some(clock), offset_s });
    }
    with_name(cell)
}

fn with_name(cell: &str) -> Option<Stamp> {
    if !cell.bytes().any(|b| b.is_ascii_alphabetic()) || cell.len() > 60 {
        return None;
    }
    let (date, rest) = named_date(cell)?;
    behind_date(date, rest)
}

fn behind_date(date: WrittenDate, rest: &str) -> Option<Stamp> {
    let rest = rest.trim_start_matches([' ', ',', '_', '\u{a0}']);
    let rest = rest.strip_prefix(['T', 't', '-']).unwrap_or(rest).trim_start();
    if rest.is_empty() {
        return Some(Stamp { date: Some(date), clock: None, offset_s: None });
    }
    let (clock, rest) = leading_clock(rest).or_else(|| compact_clock(rest))?;
    // A day has no more hours, whatever has passed.
    if clock.seconds > 86_400.0 || clock.is_minutes {
        return None;
    }
    let rest = rest.trim_start();
    let offset_s = if rest.is_empty() || rest.eq_ignore_ascii_case("uhr") { None } else { Some(offset(rest)?) };
    Some(Stamp { date: Some(date), clock: Some(clock), offset_s })
}

/// `20260304T143000`, as ISO 8601 allows.
fn compact(cell: &str) -> Option<(WrittenDate, &str)> {
    let (digits, rest) = leading_digits(cell)?;
    if digits.len() != 8 || !rest.starts_with(['T', 't']) {
        return None;
    }
    let part = |from: usize, to: usize| digits[from..to].parse::<i16>().ok();
    let small = |number: i16| i8::try_from(number).ok();
    Some((WrittenDate::Known { year: part(0, 4)?, month: small(part(4, 6)?)?, day: small(part(6, 8)?)? }, rest))
}

fn compact_clock(text: &str) -> Option<(Clock, &str)> {
    let (digits, rest) = leading_digits(text)?;
    let part = |from: usize| digits.get(from..from + 2).and_then(|part| part.parse::<u32>().ok());
    let seconds = if digits.len() == 6 { part(4)? } else { 0 };
    if !matches!(digits.len(), 4 | 6) || part(2)? > 59 || seconds > 59 {
        return None;
    }
    let (fraction, rest) = leading_fraction(rest);
    let seconds = f64::from(part(0)? * 3600 + part(2)? * 60 + seconds) + fraction;
    Some((Clock { seconds, has_two_parts: false, is_minutes: false }, rest))
}

/// Parts a clock from the front of a text.
fn leading_clock(text: &str) -> Option<(Clock, &str)> {
    let (first, rest) = leading_digits(text)?;
    let (minutes, rest) = sixty(rest)?;
    let (seconds, rest) = sixty(rest).map_or((None, rest), |(seconds, rest)| (Some(seconds), rest));
    let (fraction, rest) = leading_fraction(rest);
    let has_two_parts = seconds.is_none();
    let is_minutes = has_two_parts && fraction > 0.0;
    let (hours, rest) = half_day(first.parse().ok()?, rest)?;
    let fraction = if has_two_parts { fraction * 60.0 } else { fraction };
    let seconds = f64::from(hours) * 3600.0 + f64::from(minutes * 60 + seconds.unwrap_or(0)) + fraction;
    Some((Clock { seconds, has_two_parts, is_minutes }, rest))
}

/// A colon and two digits below sixty.
fn sixty(text: &str) -> Option<(u32, &str)> {
    let (digits, rest) = leading_digits(text.strip_prefix(':')?)?;
    let number = digits.parse().ok().filter(|&number: &u32| number < 60)?;
    (digits.len() <= 2).then_some((number, rest))
}

fn leading_fraction(text: &str) -> (f64, &str) {
    let digits = text.strip_prefix(['.', ',']).and_then(leading_digits);
    digits.map_or((0.0, text), |(digits, rest)| {
        let number = digits.parse().unwrap_or(0.0);
        (number / 10_f64.powi(digits.len() as i32), rest)
    })
}

/// Hours of the day from those of a half, where AM or PM stands behind them.
fn half_day(hours: u32, rest: &str) -> Option<(u32, &str)> {
    let behind = rest.trim_start();
    let starts = |half: &str| behind.get(..half.len()).is_some_and(|start| start.eq_ignore_ascii_case(half));
    for (half, later) in [("a.m.", 0), ("p.m.", 12), ("am", 0), ("pm", 12)] {
        if starts(half) {
            return (1..=12).contains(&hours).then(|| (hours % 12 + later, &behind[half.len()..]));
        }
    }
    Some((hours, rest))
}

/// An offset from UTC in s: `Z`, `+02:00`, `+0200`, `+02`, or a name whose offset is the same everywhere it is used here.
fn offset(text: &str) -> Option<i32> {
    // Behind the offset may stand the zone in brackets, as RFC 9557 has it.
    let text = text.split('[').next().unwrap_or_default().trim_end();
    match text {
        "Z" | "z" | "UTC" | "GMT" => return Some(0),
        "CET" | "MEZ" => return Some(3600),
        "CEST" | "MESZ" => return Some(7200),
        _ => {}
    }
    let text = text.strip_prefix("UTC").or_else(|| text.strip_prefix("GMT")).unwrap_or(text);
    let (sign, digits) = match text.chars().next()? {
        '+' => (1, &text[1..]),
        '-' => (-1, &text[1..]),
        '−' => (-1, &text['−'.len_utf8()..]),
        _ => return None,
    };
    let (hours, minutes) = match (digits.split_once(':'), digits.len()) {
        (Some(parts), _) => parts,
        (None, 4) => digits.split_at_checked(2)?,
        (None, 1 | 2) => (digits, "0"),
        _ => return None,
    };
    let number = |digits: &str| if digits.bytes().all(|b| b.is_ascii_digit()) { digits.parse::<i32>().ok() } else { None };
    let (hours, minutes) = (number(hours)?, number(minutes)?);
    (hours <= 18 && minutes < 60).then_some(sign * (hours * 3600 + minutes * 60))
}
