//! Numbers as they stand in a cell, with either decimal sign.

use super::Decimal;

/// What a number says about the decimal sign of its file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// Nothing.
    Whole,
    /// It is this one.
    Sure(Decimal),
    /// Either this one is the decimal sign, or it parts thousands: 1.250.
    Open(Decimal),
}

/// The longest number that is read.
const MOST_DIGITS: usize = 40;
const MOST_GROUPS: usize = 8;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sign {
    Point,
    Comma,
    /// Parts thousands and nothing else.
    Thousands,
}

/// A number taken apart: its groups of digits and the signs between them.
struct Parts<'a> {
    negative: bool,
    /// Digits in each group.
    lengths: [usize; MOST_GROUPS],
    /// The sign behind each group but the last.
    signs: [Sign; MOST_GROUPS],
    groups: usize,
    digits: [u8; MOST_DIGITS],
    count: usize,
    exponent: &'a str,
}

impl<'a> Parts<'a> {
    fn of(cell: &'a str) -> Option<Self> {
        let unsigned = cell.strip_prefix(['-', '−', '–']);
        let (negative, rest) = (unsigned.is_some(), unsigned.or(cell.strip_prefix('+')).unwrap_or(cell));
        if rest.starts_with(' ') {
            return None;
        }
        let mut parts = Self {
            negative,
            lengths: [0; MOST_GROUPS],
            signs: [Sign::Point; MOST_GROUPS],
            groups: 1,
            digits: [b'0'; MOST_DIGITS],
            count: 0,
            exponent: "",
        };
        for (at, c) in rest.char_indices() {
            match c {
                '0'..='9' => parts.digit(c)?,
                '.' => parts.sign(Sign::Point)?,
                ',' => parts.sign(Sign::Comma)?,
                ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}' | '\'' | '’' => parts.sign(Sign::Thousands)?,
                'e' | 'E' => {
                    parts.exponent = &rest[at + 1..];
                    break;
                }
                _ => return None,
            }
        }
        (parts.count > 0 && parts.has_sound_exponent(rest) && parts.has_sound_groups()).then_some(parts)
    }

    fn digit(&mut self, c: char) -> Option<()> {
        *self.digits.get_mut(self.count)? = c as u8;
        self.count += 1;
        self.lengths[self.groups - 1] += 1;
        Some(())
    }

    fn sign(&mut self, sign: Sign) -> Option<()> {
        if self.groups == MOST_GROUPS {
            return None;
        }
        self.signs[self.groups - 1] = sign;
        self.groups += 1;
        Some(())
    }

    fn has_sound_exponent(&self, rest: &str) -> bool {
        let digits = self.exponent.strip_prefix(['-', '+']).unwrap_or(self.exponent);
        (self.exponent.is_empty() && !rest.ends_with(['e', 'E']))
            || ((1..=3).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit()))
    }

    fn signs(&self) -> &[Sign] {
        &self.signs[..self.groups - 1]
    }

    /// True where the first `groups` can be thousands: one to three digits, then threes.
    fn is_in_threes(&self, groups: usize) -> bool {
        (1..=3).contains(&self.lengths[0]) && self.lengths[1..groups].iter().all(|&length| length == 3)
    }

    fn has_sound_groups(&self) -> bool {
        match self.signs() {
            [] => true,
            [Sign::Thousands] => self.is_in_threes(2),
            [_] => true,
            [first, middle @ .., last] => {
                let same = middle.iter().all(|sign| sign == first);
                let all = if last == first { self.groups } else { self.groups - 1 };
                same && (last == first || *last != Sign::Thousands) && self.is_in_threes(all)
            }
        }
    }

    fn shape(&self) -> Shape {
        let named = |sign: Sign| if sign == Sign::Comma { Decimal::Comma } else { Decimal::Point };
        match self.signs() {
            [] | [Sign::Thousands] => Shape::Whole,
            [sign] if self.is_in_threes(2) && self.digits[0] != b'0' && self.exponent.is_empty() => Shape::Open(named(*sign)),
            [sign] => Shape::Sure(named(*sign)),
            [first, .., last] if first != last => Shape::Sure(named(*last)),
            [Sign::Thousands, ..] => Shape::Whole,
            [Sign::Point, ..] => Shape::Sure(Decimal::Comma),
            [Sign::Comma, ..] => Shape::Sure(Decimal::Point),
        }
    }

    /// Digits behind the decimal sign.
    fn places(&self, decimal: Decimal) -> usize {
        let last = self.lengths[self.groups - 1];
        match (self.signs(), self.shape()) {
            (_, Shape::Whole) => 0,
            (_, Shape::Open(sign)) => last * usize::from(sign == decimal),
            ([_], Shape::Sure(_)) => last,
            ([first, .., sign], Shape::Sure(_)) => last * usize::from(first != sign),
            ([], Shape::Sure(_)) => 0,
        }
    }

    /// The number with a decimal point, without exponent.
    fn plain(&self, decimal: Decimal) -> String {
        let places = self.places(decimal);
        let mut text = String::with_capacity(MOST_DIGITS + 8);
        text.push_str(if self.negative { "-" } else { "" });
        for (at, &digit) in self.digits[..self.count].iter().enumerate() {
            if at + places == self.count {
                text.push('.');
            }
            text.push(char::from(digit));
        }
        text
    }

    fn value(&self, decimal: Decimal) -> Option<f64> {
        let mut text = self.plain(decimal);
        if !self.exponent.is_empty() {
            text.push('e');
            text.push_str(self.exponent);
        }
        text.parse().ok().filter(|value: &f64| value.is_finite())
    }
}

/// What the number in a cell says about decimal signs; `None` where it is no number.
#[must_use]
pub fn shape(cell: &str) -> Option<Shape> {
    if cell.bytes().all(|b| b.is_ascii_digit()) && (1..=MOST_DIGITS).contains(&cell.len()) {
        return Some(Shape::Whole);
    }
    Parts::of(cell).map(|parts| parts.shape())
}

/// The number in a cell; `decimal` decides only what the cell leaves open.
#[must_use]
pub fn number(cell: &str, decimal: Decimal) -> Option<f64> {
    quick(cell, decimal).or_else(|| Parts::of(cell)?.value(decimal))
}

/// Plain numbers with at most one point, which most are.
fn quick(cell: &str, decimal: Decimal) -> Option<f64> {
    let bytes = cell.as_bytes();
    let plain = bytes.len() <= 18 && bytes.first()?.is_ascii_digit() && bytes.last()?.is_ascii_digit();
    let mut points = 0;
    let known = plain
        && bytes.iter().all(|&b| {
            b.is_ascii_digit()
                || (b == b'.' && {
                    points += 1;
                    points
                } == 1)
        });
    (known && (points == 0 || decimal == Decimal::Point)).then(|| cell.parse().ok()).flatten()
}

/// The number in a cell with all its digits: a decimal point, no grouping, no zeros or point at either end that say nothing, such as
/// `-1250.50`. `decimal` decides only what the cell leaves open. `None` for what is no number and for numbers with an exponent, whose
/// digits are lost.
#[must_use]
pub fn exact(cell: &str, decimal: Decimal) -> Option<String> {
    let parts = Parts::of(cell).filter(|parts| parts.exponent.is_empty())?;
    let plain = parts.plain(decimal);
    let (sign, digits) = plain.strip_prefix('-').map_or(("", plain.as_str()), |digits| ("-", digits));
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let whole = whole.trim_start_matches('0');
    let whole = if whole.is_empty() { "0" } else { whole };
    Some(if part.is_empty() { format!("{sign}{whole}") } else { format!("{sign}{whole}.{part}") })
}
