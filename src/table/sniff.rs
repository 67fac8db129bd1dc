//! Finding what parts the cells of a table.

use super::quote::{Opened, blanks_from, opened};
use super::{Record, Separator};

/// Rows that are looked at.
const SAMPLE: usize = 300;

/// The separator that a first line like `sep=;` names, and the lines after it. A sign that parts no table is passed over with its line.
#[must_use]
pub fn named_separator<'a, 't>(records: &'a [Record<'t>]) -> (Option<Separator>, &'a [Record<'t>]) {
    let Some((first, rest)) = records.split_first() else { return (None, records) };
    match sign_said(first.text) {
        Some(sign) => (Separator::SIGNS.into_iter().find(|separator| separator.byte() == sign), rest),
        None => (None, records),
    }
}

/// The sign that a line like `sep=;` names. Programs that wrote the line as a row put more separators behind it.
pub(super) fn sign_said(line: &str) -> Option<u8> {
    let said = line.trim_matches([' ', '"']);
    let is_named = said.get(..4).is_some_and(|start| start.eq_ignore_ascii_case("sep="));
    let (&sign, more) = said.as_bytes().get(4..)?.split_first()?;
    (is_named && more.iter().all(|b| *b == sign || *b == b'"' || *b == b' ')).then_some(sign)
}

/// What a sign does in the sample.
struct Fit {
    separator: Separator,
    /// How often it stands in a row, as most rows have it.
    count: usize,
    /// The rows that have it so often.
    rows: usize,
    /// The lines it stands in.
    lines: usize,
}

/// What parts the cells. `records` are lines cut with all signs.
///
/// The sign that stands equally often in most rows, outside of quotes. A row that semicolons part holds at most one decimal comma a cell,
/// so of two signs that fit equally well the one believed first is right unless the other stands there more than twice as often. A sign
/// that is missing from most lines is one of a sentence: then there is one column, and a sign that stands nowhere is given.
#[must_use]
pub fn sniff(records: &[Record<'_>]) -> Separator {
    let counts: Vec<[usize; 4]> = records.iter().take(SAMPLE).map(|record| count_signs(record.text)).collect();
    let fits: Vec<Fit> = Separator::SIGNS.into_iter().enumerate().filter_map(|(at, separator)| fit(&counts, at, separator)).collect();
    let fitting = || fits.iter().filter(|fit| 2 * fit.lines >= counts.len());
    let best = fitting().map(|fit| fit.rows).max().unwrap_or(0);
    let good = || fitting().filter(|fit| 10 * fit.rows >= 9 * best);
    let widest = good().map(|fit| fit.count).max().unwrap_or(0);
    let unused = || Separator::SIGNS.into_iter().rev().find(|sign| fits.iter().all(|fit| fit.separator != *sign));
    good().find(|fit| 2 * fit.count >= widest).map(|fit| fit.separator).or_else(unused).unwrap_or(Separator::Comma)
}

/// What the sign at a place of [`Separator::SIGNS`] does; `None` where it stands nowhere.
fn fit(counts: &[[usize; 4]], at: usize, separator: Separator) -> Option<Fit> {
    let mut found: Vec<usize> = counts.iter().filter_map(|counts| counts.get(at).copied()).filter(|&count| count > 0).collect();
    found.sort_unstable();
    let same = found.chunk_by(|a, b| a == b).filter_map(|same| Some((*same.first()?, same.len())));
    let (count, rows) = same.max_by_key(|same| same.1)?;
    Some(Fit { separator, count, rows, lines: found.len() })
}

/// How often each sign stands in a line, outside of quotes.
fn count_signs(line: &str) -> [usize; 4] {
    let bytes = line.as_bytes();
    let (mut counts, mut at) = ([0; 4], 0);
    loop {
        let start = blanks_from(bytes, at);
        if bytes.get(start) == Some(&b'"')
            && let Opened::Cell(close) = opened(bytes, start, Separator::BYTES, usize::MAX)
        {
            at = close + 1;
        }
        let rest = bytes.get(at..).unwrap_or_default();
        let found = rest.iter().enumerate().find_map(|(length, b)| {
            let sign = Separator::BYTES.iter().position(|sign| sign == b)?;
            Some((length, sign))
        });
        let Some((length, sign)) = found else { return counts };
        if let Some(count) = counts.get_mut(sign) {
            *count += 1;
        }
        at += length + 1;
    }
}
