//! Entries: what a person types into a field.

use std::sync::OnceLock;

use jiff::tz::TimeZone;
use pourbook::quantity::{EntryError, Habits, Kind, Style, Units, parse, parse_grams, parse_money, print};

/// Weights in a unit that no seed has: each is a word away from some seed, and chance alone should not decide whether one is found in time.
const PLANTED: [&str; 5] = ["dwt", "grain", "mg", "lb", "kg"];

/// The first byte picks the kind and the habits, the rest is the entry.
///
/// # Panics
/// Where a parsed value is not finite or not possible, where an error points outside the entry or between the bytes of a character, and
/// where a reading it offers is not read as what it promises.
pub fn check(bytes: &[u8]) {
    let Some((first, rest)) = bytes.split_first() else { return };
    let Ok(text) = std::str::from_utf8(rest) else { return };
    let kind = Kind::ALL[usize::from(*first) % Kind::ALL.len()];
    let habits = habits(kind, usize::from(*first) / Kind::ALL.len());
    match parse(text, kind, &habits) {
        Ok(parsed) => {
            check_value(parsed.value, kind, &habits);
            let _ = print(parsed.value, kind, &Style { units: habits.units, ..Style::METRIC }).to_string();
            crate::planted(kind == Kind::Mass && parsed.unit.is_some_and(|unit| PLANTED.contains(&unit.symbol)));
        }
        Err(error) => check_error(&error, text, kind, &habits),
    }
    check_decimals(text, kind, &habits);
}

/// Metric or trade units, values below zero or not, a zone with summer time or UTC; the last choices go through the other units.
fn habits(kind: Kind, choice: usize) -> Habits {
    static DUBLIN: OnceLock<TimeZone> = OnceLock::new();
    let unit = choice.checked_sub(8).and_then(|place| kind.units().get(place));
    let set = if choice & 1 == 0 { Units::METRIC } else { Units::TRADE };
    let zone = if choice & 4 == 0 {
        TimeZone::UTC
    } else {
        DUBLIN.get_or_init(|| TimeZone::get("Europe/Dublin").expect("the zones are built in")).clone()
    };
    Habits { units: unit.and_then(|unit| set.with(kind, unit.symbol)).unwrap_or(set), zone, signed: choice & 2 != 0 }
}

fn check_value(value: f64, kind: Kind, habits: &Habits) {
    let (least, most) = kind.possible();
    let least = if habits.signed { least.min(-most) } else { least };
    assert!(value.is_finite() && (least..=most).contains(&value), "{value} is no {}", kind.name());
    assert!(value != 0.0 || value.is_sign_positive(), "zero has no sign");
}

fn check_error(error: &EntryError, text: &str, kind: Kind, habits: &Habits) {
    assert!(text.get(error.at.clone()).is_some(), "{:?} is no part of the entry", error.at);
    let characters = error.characters(text);
    assert!(characters.start <= characters.end && characters.end <= text.chars().count());
    assert!(error.to_string().ends_with('.'), "a sentence");
    assert!(EntryError::KEYS.contains(&error.key()));
    let _ = error.args();
    for (place, reading) in error.readings.iter().enumerate() {
        check_value(reading.value, kind, habits);
        let earlier = &error.readings[..place];
        assert!(earlier.iter().all(|other| other.value != reading.value), "{:?} offers {} twice", error.kind, reading.value);
        let again = parse(&reading.text, kind, habits).map(|parsed| parsed.value);
        assert_eq!(again, Ok(reading.value), "{:?} is offered", reading.text);
    }
    assert!(!error.key().starts_with("entry-ambiguous") || !error.readings.is_empty(), "nothing is offered");
}

/// Weights and money on decimals go with the same entry as a binary number.
fn check_decimals(text: &str, kind: Kind, habits: &Habits) {
    let (binary, decimal, step) = match kind {
        Kind::Mass => (parse(text, kind, habits), parse_grams(text, habits).map(|grams| grams.to_f64()), 1e-6),
        Kind::Money => (parse(text, kind, habits), parse_money(text, habits).map(|money| money.to_f64()), 1e-4),
        _ => return,
    };
    match (binary, decimal) {
        (Ok(binary), Ok(decimal)) => {
            assert!((binary.value - decimal).abs() <= step * 0.500_001 + binary.value.abs() * 1e-15, "{} and {decimal}", binary.value);
        }
        (Err(one), Err(other)) => assert_eq!(one, other),
        (one, other) => panic!("{one:?} and {other:?}"),
    }
}
