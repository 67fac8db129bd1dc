//! Ring sizes, and other sizes, as people write them.

use super::letters::tidy;
use super::{CellAt, Reason};

/// Words before a size, in small letters: a scale or the word itself.
const BEFORE: [&str; 24] = [
    "ring size",
    "ringsize",
    "ringgröße",
    "ringgrösse",
    "ringweite",
    "größe",
    "grösse",
    "size",
    "gr.",
    "gr",
    "rw",
    "rg",
    "sz",
    "us",
    "uk",
    "eu",
    "iso",
    "fr",
    "de",
    "it",
    "jp",
    "ch",
    "umfang",
    "ø",
];
/// Words behind a size.
const BEHIND: [&str; 12] = ["mm", "cm", "in", "inch", "\"", "us", "uk", "eu", "iso", "fr", "de", "ø"];
/// Sizes in letters that are no ring size.
const LETTERED: [&str; 9] = ["xxs", "xs", "xl", "xxl", "xxxl", "one size", "onesize", "os", "free"];
/// The largest number that is still a size, in mm.
const MOST: f64 = 1000.0;

/// A size as it was written, tidied: `54`, `6 1/2`, `6½`, `6.25`, `N`, `N½`, `Z+2`, `US 7`, `54 mm`, `45x30 mm`, `XL`. Which scale it is on
/// is for a person to say.
pub(super) fn size(cell: &str, column: usize) -> Result<String, Reason> {
    let tidied = tidy(cell);
    if is_number(&tidied) {
        return Ok(tidied);
    }
    let lower = tidied.to_lowercase();
    let bare = without_words(&lower);
    let is_size = LETTERED.contains(&bare) || is_number(bare) || is_lettered(bare) || is_measured(bare);
    if is_size { Ok(tidied) } else { Err(Reason::SizeUnreadable(CellAt::new(column, cell))) }
}

/// True for what is a ring size rather than any number: within the scales of circumference, with a fraction, in letters, or named so.
pub(super) fn is_likely_ring(cell: &str) -> bool {
    let lower = tidy(cell).to_lowercase();
    let bare = without_words(&lower);
    let number = number(bare);
    let within = number
        .is_some_and(|number| (41.0..=76.0).contains(&number) || (number < 16.0 && number.fract() != 0.0 && (number * 4.0).fract() == 0.0));
    within || (is_lettered(bare) && bare.len() < 6) || (bare.len() < lower.len() && number.is_some())
}

fn without_words(lower: &str) -> &str {
    let mut bare = lower.trim();
    for _ in 0..2 {
        let behind = |rest: &str| rest.starts_with(|c: char| !c.is_alphabetic());
        bare = BEFORE.iter().find_map(|word| bare.strip_prefix(word).filter(|rest| behind(rest))).unwrap_or(bare);
        bare = bare.trim_start_matches([' ', ':', '.']);
    }
    let before = |rest: &str| rest.ends_with(|c: char| c.is_ascii_digit() || matches!(c, ' ' | '½' | '¼' | '¾'));
    BEHIND.iter().find_map(|word| bare.strip_suffix(word).filter(|rest| before(rest))).unwrap_or(bare).trim()
}

fn is_number(text: &str) -> bool {
    number(text).is_some()
}

/// `54`, `54.5`, `54,5`, `6 1/4`, `6¼`, `6-1/4`; above 0, except that US sizes begin at 0.
fn number(text: &str) -> Option<f64> {
    let (whole, fraction) = split_fraction(text);
    let whole = if fraction > 0.0 { whole.trim_end_matches(['-', ' ']) } else { whole };
    let plain = !whole.is_empty() && whole.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b',')) && whole.len() <= 8;
    let number: f64 = plain.then(|| whole.replace(',', "."))?.parse().ok()?;
    (number <= MOST && (fraction == 0.0 || number.fract() == 0.0)).then_some(number + fraction)
}

/// The fraction a text ends with, and what stands before it.
fn split_fraction(text: &str) -> (&str, f64) {
    const FRACTIONS: [(&str, f64); 9] =
        [("1/4", 0.25), ("1/2", 0.5), ("3/4", 0.75), ("1/8", 0.125), ("3/8", 0.375), ("5/8", 0.625), ("¼", 0.25), ("½", 0.5), ("¾", 0.75)];
    // "61/4" could mean 6 1/4 or 61/4: not guessed.
    let parted = |rest: &str| !rest.ends_with(|c: char| c.is_ascii_digit());
    FRACTIONS
        .iter()
        .find_map(|&(sign, value)| {
            text.strip_suffix(sign).filter(|rest| !sign.is_ascii() || parted(rest)).map(|rest| (rest.trim_end(), value))
        })
        .unwrap_or((text, 0.0))
}

/// `n`, `n½`, `n 1/2`, `z+2`.
fn is_lettered(text: &str) -> bool {
    let mut letters = text.chars();
    if !letters.next().is_some_and(|first| first.is_ascii_lowercase()) {
        return false;
    }
    let rest = letters.as_str().trim_start();
    match rest.strip_prefix('+') {
        Some(beyond) => text.starts_with('z') && is_number(beyond.trim_start()),
        None => rest.is_empty() || matches!(rest, "½" | "1/2" | ".5" | "¼" | "1/4" | "¾" | "3/4"),
    }
}

/// `45x30`, `45 × 30 × 2`.
fn is_measured(text: &str) -> bool {
    let sides: Vec<&str> = text.split(['x', '×', '*']).map(str::trim).collect();
    (2..=3).contains(&sides.len()) && sides.iter().all(|side| is_number(without_words(side)))
}
