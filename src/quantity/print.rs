//! Printing what a person reads: sensible digits, thin spaces, a true minus sign, and never a minus zero.
//!
//! Start at [`print()`]. What is printed can be typed again and gives the same number within the printed digits.

use std::fmt;

use super::Kind;
use super::round::{Rounded, round_in};
use super::style::{Style, digits};

/// The thin space between groups of digits and before a unit: the narrow one that no line is broken at.
pub const THIN: char = '\u{202F}';
/// The true minus sign.
pub const MINUS: char = '\u{2212}';
/// A space as wide as a digit, for columns.
const FIGURE: char = '\u{2007}';
/// A space as wide as a point, for columns.
const POINT: char = '\u{2008}';

/// A number as text, apart from its unit so that the unit can stand in lighter ink.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Printed {
    /// The number. A duration has its inner units here: `3 h 20` of `3 h 20 min`.
    pub number: String,
    /// The unit, empty for plain numbers, counts and money.
    pub unit: &'static str,
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.number)?;
        match self.unit {
            "" => Ok(()),
            unit if unit == "°" || unit.starts_with('/') => f.write_str(unit),
            unit => write!(f, "{THIN}{unit}"),
        }
    }
}

/// `value`, in the unit of stored values of `kind`, as `style` prints it. What is not finite prints as a dash: no figure may be that.
/// Weights and money on decimals go through their `to_f64`, whose shortest decimal is the decimal itself. A moment prints in UTC: see
/// [`print_moment`] for the studio's clock.
#[must_use]
pub fn print(value: f64, kind: Kind, style: &Style) -> Printed {
    if !value.is_finite() {
        return Printed { number: "–".to_owned(), unit: "" };
    }
    match kind {
        Kind::Duration => print_duration(value, style),
        Kind::Moment => Printed { number: print_moment(value, &jiff::tz::TimeZone::UTC), unit: "UTC" },
        _ => {
            let unit = style.unit(kind);
            let mut rounded = rounded(value, unit, digits(kind, unit, style));
            if kind == Kind::Fineness && rounded.decimals == "0" {
                rounded.decimals.clear();
            }
            Printed { number: written(&rounded, style.comma), unit: unit.symbol }
        }
    }
}

/// The first step of `digits` whose bound the rounded number stays under.
fn rounded(value: f64, unit: &super::Unit, digits: super::style::Digits) -> Rounded {
    let last = digits.last().map_or(0, |step| step.1);
    let fitting = digits.iter().map(|(below, places)| (below, round_in(value, unit, *places)));
    fitting.into_iter().find(|(below, rounded)| rounded.magnitude() < **below).map_or_else(|| round_in(value, unit, last), |found| found.1)
}

/// Sign, whole digits in groups of three, decimals.
fn written(rounded: &Rounded, comma: bool) -> String {
    let mut text = String::with_capacity(rounded.whole.len() * 2 + rounded.decimals.len() + 4);
    if rounded.negative {
        text.push(MINUS);
    }
    for (place, digit) in rounded.whole.chars().enumerate() {
        if place > 0 && (rounded.whole.len() - place).is_multiple_of(3) {
            text.push(THIN);
        }
        text.push(digit);
    }
    if !rounded.decimals.is_empty() {
        text.push(if comma { ',' } else { '.' });
        text.push_str(&rounded.decimals);
    }
    text
}

/// Seconds below a minute, minutes and seconds below ten minutes, then hours and minutes.
fn print_duration(value_min: f64, style: &Style) -> Printed {
    let units = Kind::Duration.units();
    let (minute, second) = (&units[0], &units[2]);
    let seconds = rounded(value_min, second, &[(10.0, 1), (f64::INFINITY, 0)]);
    let in_seconds = seconds.magnitude() < 600.0 && seconds.magnitude() > 0.0;
    let total = if in_seconds { seconds } else { round_in(value_min, minute, 0) };
    if in_seconds && total.magnitude() < 60.0 {
        return Printed { number: written(&total, style.comma), unit: "s" };
    }
    let (large, small) = if in_seconds { ("min", "s") } else { ("h", "min") };
    let Ok(count) = total.whole.parse::<u128>() else {
        return Printed { number: written(&total, style.comma), unit: small };
    };
    let part = |number: u128| written(&Rounded { negative: false, whole: number.to_string(), decimals: String::new() }, style.comma);
    let sign = if total.negative { MINUS.to_string() } else { String::new() };
    match (count / 60, count % 60) {
        (0, rest) => Printed { number: format!("{sign}{}", part(rest)), unit: small },
        (whole, 0) => Printed { number: format!("{sign}{}", part(whole)), unit: large },
        (whole, rest) => Printed { number: format!("{sign}{}{THIN}{large}{THIN}{}", part(whole), part(rest)), unit: small },
    }
}

/// Date and time of day in `zone`, to the minute, as [`super::parse`] takes it with that zone: `2026-03-04 14:30`. `value_min` counts from
/// the Unix epoch. A dash where there is no such date.
#[must_use]
pub fn print_moment(value_min: f64, zone: &jiff::tz::TimeZone) -> String {
    let seconds = (value_min.round() * 60.0) as i64;
    jiff::Timestamp::from_second(seconds)
        .map_or_else(|_| "–".to_owned(), |moment| zone.to_datetime(moment).strftime("%Y-%m-%d %H:%M").to_string())
}

/// Numbers of one column padded with spaces of a digit's width so that their decimal marks stand below each other.
#[must_use]
pub fn align(column: &[Printed]) -> Vec<String> {
    let parts: Vec<(&str, &str)> = column
        .iter()
        .map(|printed| {
            let mark = printed.number.find(['.', ',']).unwrap_or(printed.number.len());
            printed.number.split_at(mark)
        })
        .collect();
    let before = parts.iter().map(|(whole, _)| whole.chars().count()).max().unwrap_or(0);
    let after = parts.iter().map(|(_, decimals)| decimals.chars().count()).max().unwrap_or(0);
    let pad = |space: char, count: usize| std::iter::repeat_n(space, count);
    parts
        .iter()
        .map(|(whole, decimals)| {
            let mut text: String = pad(FIGURE, before - whole.chars().count()).collect();
            text.push_str(whole);
            text.push_str(decimals);
            let lacking = after - decimals.chars().count();
            if lacking > 0 && decimals.is_empty() {
                text.push(POINT);
                text.extend(pad(FIGURE, lacking - 1));
            } else {
                text.extend(pad(FIGURE, lacking));
            }
            text
        })
        .collect()
}
