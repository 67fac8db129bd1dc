//! One number as a person types it: comma or point, groups of three, ½.

use std::ops::Range;

use num_rational::BigRational;

use super::entry_error::{EntryError, EntryErrorKind};

/// A number and, where its one separator may be either, what else it could be.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Literal {
    pub(super) at: Range<usize>,
    /// With the separator as decimal mark.
    pub(super) value: BigRational,
    /// With the separator between thousands, where that is possible too, and the separator's place.
    pub(super) grouped: Option<(BigRational, usize)>,
    /// Digits alone, so that a fraction may follow.
    pub(super) whole: bool,
    /// A fraction in one sign: ½.
    pub(super) vulgar: bool,
}

const VULGAR: [(char, i64, i64); 15] = [
    ('½', 1, 2),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
];

/// Spaces and apostrophes between groups of three. The plain space is among them: `1 250` has no other meaning.
const GROUPS: [char; 7] = [' ', '\u{A0}', '\u{2007}', '\u{2009}', '\u{202F}', '\'', '’'];

/// The number that starts at byte `start` of `text`; `None` where none does.
pub(super) fn number_at(text: &str, start: usize) -> Option<Result<Literal, EntryError>> {
    let rest = &text[start..];
    let first = rest.chars().next()?;
    if let Some((_, num, den)) = VULGAR.iter().find(|(sign, ..)| *sign == first) {
        let value = BigRational::new((*num).into(), (*den).into());
        let at = start..start + first.len_utf8();
        return Some(Ok(Literal { at, value, grouped: None, whole: false, vulgar: true }));
    }
    let decimal_first = matches!(first, '.' | ',') && rest[1..].starts_with(|next: char| next.is_ascii_digit());
    if !first.is_ascii_digit() && !decimal_first {
        return None;
    }
    let parts = split(rest);
    let length = parts.iter().map(|part| part.separator.map_or(0, char::len_utf8) + part.digits.len()).sum::<usize>();
    let at = start..start + length;
    Some(read(&parts, at.clone()).ok_or_else(|| EntryError::new(EntryErrorKind::BadNumber(text[at.clone()].to_owned()), at)))
}

/// Digits and the separator before them.
struct Part<'a> {
    separator: Option<char>,
    digits: &'a str,
}

fn digits(text: &str) -> &str {
    &text[..text.find(|sign: char| !sign.is_ascii_digit()).unwrap_or(text.len())]
}

fn split(text: &str) -> Vec<Part<'_>> {
    let lead = digits(text);
    let mut parts = vec![Part { separator: None, digits: lead }];
    let mut rest = &text[lead.len()..];
    while let Some(separator) = rest.chars().next() {
        let after = &rest[separator.len_utf8()..];
        let next = digits(after);
        let mark = matches!(separator, '.' | ',');
        let ends_here = mark && next.is_empty() && !parts.iter().any(|part| part.separator == Some(separator));
        if !(ends_here || mark && !next.is_empty() || GROUPS.contains(&separator) && is_group(&parts, next, &after[next.len()..])) {
            break;
        }
        parts.push(Part { separator: Some(separator), digits: next });
        rest = &after[next.len()..];
    }
    parts
}

/// Whether three digits behind a space or apostrophe go on the number: not behind a decimal mark, and not the numerator of a fraction.
fn is_group(parts: &[Part<'_>], next: &str, beyond: &str) -> bool {
    let marked = parts.iter().any(|part| part.separator.is_some_and(|sign| matches!(sign, '.' | ',')));
    let fraction = beyond.starts_with(['/', '\u{2044}']);
    next.len() == 3 && !marked && !fraction && leads(parts[0].digits)
}

/// Whether `digits` can stand before the first group.
fn leads(digits: &str) -> bool {
    (1..=3).contains(&digits.len()) && !digits.starts_with('0')
}

fn value(whole: &str, decimals: &str) -> Option<BigRational> {
    format!("0{whole}{decimals}/1{}", "0".repeat(decimals.len())).parse().ok()
}

fn read(parts: &[Part<'_>], at: Range<usize>) -> Option<Literal> {
    let separators: Vec<char> = parts.iter().filter_map(|part| part.separator).collect();
    let all: String = parts.iter().map(|part| part.digits).collect();
    let last = parts.last()?;
    let before_last = &all[..all.len() - last.digits.len()];
    let plain = |value: BigRational| Literal { at: at.clone(), value, grouped: None, whole: separators.is_empty(), vulgar: false };
    let is_mark = |sign: char| matches!(sign, '.' | ',');
    let Some(closing) = separators.last().copied() else {
        return Some(plain(value(&all, "")?));
    };
    if separators.len() == 1 && is_mark(closing) {
        let as_decimal = plain(value(before_last, last.digits)?);
        let ambiguous = last.digits.len() == 3 && leads(before_last);
        let grouped = if ambiguous { Some((value(&all, "")?, at.start + before_last.len())) } else { None };
        return Some(Literal { grouped, ..as_decimal });
    }
    // Of several separators all but the last are one sign; the last is the decimal mark where it is another.
    let group = separators[0];
    let alike = separators[..separators.len() - 1].iter().all(|sign| *sign == group);
    let closes = closing != group && is_mark(closing);
    let groups = if closes { &parts[1..parts.len() - 1] } else { &parts[1..] };
    if !alike || (!closes && closing != group) || !leads(parts[0].digits) || groups.iter().any(|part| part.digits.len() != 3) {
        return None;
    }
    Some(plain(if closes { value(before_last, last.digits)? } else { value(&all, "")? }))
}
