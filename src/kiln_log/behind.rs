//! Units that stand behind a number.

use super::Unit;

/// Parts a unit from behind a number: `20.5 °C`.
pub(super) fn without_unit(cell: &str) -> (&str, Option<Unit>) {
    let Some(last) = cell.chars().next_back().filter(|c| !c.is_ascii_digit()) else { return (cell, None) };
    let (unit, rest) = match last {
        'C' | 'c' => (Some(Unit::Celsius), &cell[..cell.len() - 1]),
        'F' | 'f' => (Some(Unit::Fahrenheit), &cell[..cell.len() - 1]),
        'K' | 'k' => (Some(Unit::Kelvin), &cell[..cell.len() - 1]),
        '℃' => (Some(Unit::Celsius), &cell[..cell.len() - last.len_utf8()]),
        '℉' => (Some(Unit::Fahrenheit), &cell[..cell.len() - last.len_utf8()]),
        '°' | 'º' | '˚' => (None, cell),
        _ => return (cell, None),
    };
    let bare = rest.trim_end_matches(|c: char| matches!(c, '°' | 'º' | '˚' | 'ø' | '\u{fffd}') || c.is_whitespace());
    let bare = bare.strip_suffix("deg").map_or(bare, str::trim_end);
    if bare.ends_with(|c: char| c.is_ascii_digit() || c == '.') { (bare, unit) } else { (cell, None) }
}
