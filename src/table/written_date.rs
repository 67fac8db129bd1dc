//! Dates as they are written, before it is known whether day or month stands first.

use jiff::civil::Date;

/// A date as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WrittenDate {
    /// Year, month and day are told apart by their places or by a name.
    Known {
        /// Year.
        year: i16,
        /// Month, as written.
        month: i8,
        /// Day, as written.
        day: i8,
    },
    /// Day and month are the first two numbers, in whichever order.
    Either {
        /// First number.
        first: i8,
        /// Second number.
        second: i8,
        /// Year.
        year: i16,
    },
    /// The same with dots between, which nobody writes with the month first unless its numbers say so.
    Dotted {
        /// First number.
        first: i8,
        /// Second number.
        second: i8,
        /// Year.
        year: i16,
    },
}

impl WrittenDate {
    /// The date, where there is one in that order.
    #[must_use]
    pub fn date(self, day_first: bool) -> Option<Date> {
        match self {
            Self::Known { year, month, day } => Date::new(year, month, day).ok(),
            Self::Either { first, second, year } | Self::Dotted { first, second, year } => {
                let (day, month) = if day_first { (first, second) } else { (second, first) };
                Date::new(year, month, day).ok()
            }
        }
    }

    /// The first two numbers, where their order is open.
    #[must_use]
    pub fn open(self) -> Option<(i8, i8)> {
        match self {
            Self::Known { .. } => None,
            Self::Either { first, second, .. } | Self::Dotted { first, second, .. } => Some((first, second)),
        }
    }
}

/// Parts a date in numbers from the front of a text.
#[must_use]
pub fn leading_date(text: &str) -> Option<(WrittenDate, &str)> {
    let (first, rest) = leading_digits(text)?;
    let sign = rest.chars().next().filter(|c| matches!(c, '-' | '/' | '.'))?;
    let (second, rest) = leading_digits(&rest[1..])?;
    let (third, rest) = leading_digits(rest.strip_prefix(sign)?)?;
    let small = |digits: &str| if digits.len() <= 2 { digits.parse::<i8>().ok() } else { None };
    if first.len() == 4 {
        let date = WrittenDate::Known { year: first.parse().ok()?, month: small(second)?, day: small(third)? };
        return Some((date, rest));
    }
    let (first, second, year) = (small(first)?, small(second)?, full_year(third)?);
    let date = if sign == '.' { WrittenDate::Dotted { first, second, year } } else { WrittenDate::Either { first, second, year } };
    Some((date, rest))
}

/// Years of two digits are those from 1970 to 2069: the usual pivot of Unix (POSIX `strptime` has 1969).
fn full_year(digits: &str) -> Option<i16> {
    let year: i16 = digits.parse().ok()?;
    match digits.len() {
        2 => Some(if year < 70 { 2000 + year } else { 1900 + year }),
        4 => Some(year),
        _ => None,
    }
}

/// The digits a text begins with.
#[must_use]
pub fn leading_digits(text: &str) -> Option<(&str, &str)> {
    let length = text.bytes().take_while(u8::is_ascii_digit).count();
    (1..=9).contains(&length).then(|| text.split_at(length))
}

/// The first letters of the months in English and German.
const MONTHS: [&[&str]; 12] = [
    &["jan", "jän"],
    &["feb"],
    &["mar", "mär", "mrz", "maer"],
    &["apr"],
    &["may", "mai"],
    &["jun"],
    &["jul"],
    &["aug"],
    &["sep"],
    &["oct", "okt"],
    &["nov"],
    &["dec", "dez"],
];

/// A date with the name of its month, and the time behind it: `3. März 2026 14:00`, `Tue Mar 3, 2026 2:00 PM`.
#[must_use]
pub fn named_date(text: &str) -> Option<(WrittenDate, &str)> {
    let (mut month, mut numbers, mut rest) = (None, Vec::new(), text);
    for _ in 0..8 {
        rest = rest.trim_start_matches([' ', ',', '.', '-', '/']);
        if month.is_some() && numbers.len() == 2 {
            break;
        }
        if let Some((digits, after)) = leading_digits(rest) {
            numbers.push(digits);
            rest = after;
            continue;
        }
        let length = rest.find(|c: char| !c.is_alphabetic()).unwrap_or(rest.len());
        let word = rest[..length].to_lowercase();
        let named = MONTHS.iter().position(|names| names.iter().any(|name| word.starts_with(name)));
        // A word that is no month may be a day of the week.
        if length < 2 || (named.is_none() && length > 10) {
            return None;
        }
        month = month.or(named);
        rest = &rest[length..];
    }
    let (month, [one, other]) = (i8::try_from(month? + 1).ok()?, numbers.try_into().ok()?);
    let (day, year) = if one.len() == 4 { (other, one) } else { (one, other) };
    Some((WrittenDate::Known { year: full_year(year)?, month, day: day.parse().ok()? }, rest))
}
