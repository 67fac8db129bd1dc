//! Writing a table for spreadsheets.

use super::Separator;
use super::harmless::harmless;
use std::borrow::Cow;

/// How a table is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Style {
    /// What parts the cells; blanks cannot, and a comma does in their place.
    pub separator: Separator,
    /// Numbers have a decimal comma.
    pub decimal_comma: bool,
    /// A byte order mark stands first: some spreadsheets know UTF-8 by nothing else.
    pub bom: bool,
    /// Rows end with CRLF, as RFC 4180 has it, else with LF.
    pub crlf: bool,
}

impl Default for Style {
    /// RFC 4180: commas, decimal points, no mark, CRLF.
    fn default() -> Self {
        Self { separator: Separator::Comma, decimal_comma: false, bom: false, crlf: true }
    }
}

/// A cell to be written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OutCell<'a> {
    /// Somebody's own words. Those that a spreadsheet would take for a formula get an apostrophe before them; signs that stand in no text
    /// become blanks.
    Words(Cow<'a, str>),
    /// A number with a decimal point and no grouping, such as `-1250.5`; a minus before it means what it says. Anything else is words.
    Number(Cow<'a, str>),
}

impl<'a> OutCell<'a> {
    /// Somebody's own words.
    pub fn words(text: impl Into<Cow<'a, str>>) -> Self {
        Self::Words(text.into())
    }

    /// A number with a decimal point and no grouping.
    pub fn number(text: impl Into<Cow<'a, str>>) -> Self {
        Self::Number(text.into())
    }
}

/// Writes a table in UTF-8. Rows shorter than the longest are filled up with empty cells. [`super::read`] gives the same cells back, but
/// for empty ones at the end of a row and rows of nothing else; numbers have the sign of the style.
pub fn write<'a, R>(rows: impl IntoIterator<Item = R>, style: &Style) -> Vec<u8>
where
    R: IntoIterator<Item = OutCell<'a>>,
{
    let rows: Vec<Vec<String>> =
        rows.into_iter().map(|row| row.into_iter().map(|cell| text_of(&cell, style.decimal_comma)).collect()).collect();
    let width = rows.iter().map(Vec::len).max().unwrap_or(0);
    let sign = match style.separator {
        Separator::Blanks => ',',
        separator => char::from(separator.byte()),
    };
    let mut text = String::from(if style.bom { "\u{feff}" } else { "" });
    for row in &rows {
        for column in 0..width {
            if column > 0 {
                text.push(sign);
            }
            push_cell(&mut text, row.get(column).map_or("", String::as_str), sign, width);
        }
        text.push_str(if style.crlf { "\r\n" } else { "\n" });
    }
    text.into_bytes()
}

fn text_of(cell: &OutCell<'_>, decimal_comma: bool) -> String {
    match cell {
        OutCell::Number(number) if is_plain_number(number) => {
            if decimal_comma {
                number.replace('.', ",")
            } else {
                number.to_string()
            }
        }
        OutCell::Words(words) | OutCell::Number(words) => {
            let is_odd = |c: char| c.is_ascii_control() && !matches!(c, '\t' | '\n' | '\r');
            harmless(&words.replace(is_odd, " ")).into_owned()
        }
    }
}

fn is_plain_number(text: &str) -> bool {
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
    let unsigned = text.strip_prefix('-').unwrap_or(text);
    unsigned.split_once('.').map_or_else(|| digits(unsigned), |(whole, part)| digits(whole) && digits(part))
}

/// Quotes stand where a sign that could part cells or end lines does, where programs would drop blanks, and where a mark would be taken for
/// a byte order mark. A lone decimal comma needs none between other signs, unless nothing but commas could part the table.
fn push_cell(text: &mut String, cell: &str, sign: char, width: usize) {
    let is_number = width > 1 && sign != ',' && is_plain_number(&cell.replacen(',', ".", 1));
    let parts = cell.contains([',', ';', '\t', '|', '"', '\n', '\r', sign]) && !is_number;
    let edges = cell.starts_with(|c: char| c.is_whitespace() || c == '\u{feff}') || cell.ends_with(char::is_whitespace);
    if parts || edges {
        text.push('"');
        text.push_str(&cell.replace('"', "\"\""));
        text.push('"');
    } else {
        text.push_str(cell);
    }
}
