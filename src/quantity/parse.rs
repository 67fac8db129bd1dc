//! Parsing what a person types, exactly: every number is a ratio of whole numbers until the end, so `0.1 + 0.2` is `0.3`.
//!
//! Start at [`parse`]. An entry that can mean two things is evaluated both ways; where the values differ it is refused and both are
//! offered. A meaning whose value is impossible for the kind is no meaning: `10.357` in a density field is not ten thousand.

use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive};
use rust_decimal::Decimal;

use super::entry_error::{EntryError, EntryErrorKind, Reading};
use super::evaluate::{check, evaluate};
use super::expression::expression;
use super::meaning::{Meanings, meanings};
use super::node::{Node, What};
use super::token::tokens;
use super::unit::{Meaning, Mistake, Unit};
use super::{Grams, Kind, Money, Style, Units, moment, print};

/// What a field takes for granted.
#[derive(Debug, Clone)]
pub struct Habits {
    /// The unit of a bare number, by kind.
    pub units: Units,
    /// The zone of a time of day without `UTC` behind it. UTC by default.
    pub zone: jiff::tz::TimeZone,
    /// Values below zero are taken too, as far as values above: an offset, a correction.
    pub signed: bool,
}

impl Default for Habits {
    fn default() -> Self {
        Self { units: Units::METRIC, zone: jiff::tz::TimeZone::UTC, signed: false }
    }
}

/// A value a person typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Parsed {
    /// In the unit of the kind.
    pub value: f64,
    /// The unit named last, where one is named: a field may show the value in it again.
    pub unit: Option<&'static Unit>,
    /// The value lies outside what a small casting studio meets: worth a caution.
    pub unusual: bool,
}

/// Bytes of an entry that are still read.
const LONGEST: usize = 200;

/// The value of `text` in a field of `kind`, in the kind's unit.
///
/// # Errors
/// Says why and where, with what the entry could mean where it can mean something.
pub fn parse(text: &str, kind: Kind, habits: &Habits) -> Result<Parsed, EntryError> {
    let (value, unit) = exact_value(text, kind, habits)?;
    let value = nearest(&value);
    let (least, most) = kind.sensible();
    Ok(Parsed { value, unit, unusual: !(least..=most).contains(&value) })
}

/// The weight in `text`, rounded to a millionth of a gram, half away from zero.
///
/// # Errors
/// As [`parse`] for [`Kind::Mass`].
pub fn parse_grams(text: &str, habits: &Habits) -> Result<Grams, EntryError> {
    let (value, _) = exact_value(text, Kind::Mass, habits)?;
    decimal(&value, 6).and_then(Grams::new).ok_or_else(|| too_large(text, Kind::Mass))
}

/// The amount in `text`, rounded to a ten-thousandth, half away from zero.
///
/// # Errors
/// As [`parse`] for [`Kind::Money`].
pub fn parse_money(text: &str, habits: &Habits) -> Result<Money, EntryError> {
    let (value, _) = exact_value(text, Kind::Money, habits)?;
    decimal(&value, 4).and_then(Money::new).ok_or_else(|| too_large(text, Kind::Money))
}

fn too_large(text: &str, kind: Kind) -> EntryError {
    EntryError::new(EntryErrorKind::TooLarge { asked: kind, most: kind.possible().1 }, 0..text.len())
}

fn decimal(value: &BigRational, places: u32) -> Option<Decimal> {
    let steps = (value * BigRational::from_integer(10_i64.pow(places).into())).round().to_integer().to_i128()?;
    Decimal::try_from_i128_with_scale(steps, places).ok()
}

/// The nearest binary number; zero without a sign.
fn nearest(value: &BigRational) -> f64 {
    value.to_f64().unwrap_or(f64::INFINITY) + 0.0
}

/// The exact value of `text` in the unit of `kind`, and the unit named last.
fn exact_value(text: &str, kind: Kind, habits: &Habits) -> Result<(BigRational, Option<&'static Unit>), EntryError> {
    if text.len() > LONGEST {
        return Err(EntryError::new(EntryErrorKind::TooLong, text.floor_char_boundary(LONGEST)..text.len()));
    }
    if text.trim().is_empty() {
        return Err(EntryError::new(EntryErrorKind::Empty, 0..text.len()));
    }
    if kind == Kind::Moment {
        let minutes = moment::parse_moment(text, &habits.zone)?;
        return Ok((BigRational::from_integer(minutes.into()), None));
    }
    let node = expression(&tokens(text, kind), kind, text.trim_end().len()).map_err(|error| with_karats(error, text, kind, habits))?;
    let known = meanings(&node, kind, habits);
    let outcomes = outcomes(&node, kind, habits, &known);
    let values = distinct(&outcomes);
    let failed = outcomes.iter().find_map(|outcome| outcome.as_ref().err());
    match (values.as_slice(), failed) {
        ([], Some(error)) => Err(with_opposite(error.clone(), &node, kind, habits, &known)),
        ([], None) => Err(EntryError::new(EntryErrorKind::MissingNumber, 0..text.len())),
        ([only], _) if is_settled(&outcomes, *only, kind, &known) => {
            let value = outcomes[*only].clone()?;
            Ok((value, last_unit(&node, &known, *only)))
        }
        _ => Err(ambiguous(text, kind, habits, &known, &outcomes, &values)),
    }
}

type Outcomes = Vec<Result<BigRational, EntryError>>;

/// The value under each choice.
fn outcomes(node: &Node, kind: Kind, habits: &Habits, known: &Meanings) -> Outcomes {
    let value = |choice| {
        let value = evaluate(node, kind, choice)?;
        check(&value, kind, habits.signed).map_err(|why| EntryError::new(why, node.at.clone()))?;
        Ok(value)
    };
    known.choices.iter().map(value).collect()
}

/// The first choice for each value that differs from those before.
fn distinct(outcomes: &Outcomes) -> Vec<usize> {
    let mut found: Vec<usize> = Vec::new();
    for (index, outcome) in outcomes.iter().enumerate() {
        if let Ok(value) = outcome
            && !found.iter().any(|earlier| outcomes[*earlier].as_ref().is_ok_and(|known| nearest(known) == nearest(value)))
        {
            found.push(index);
        }
    }
    found
}

/// Whether the only value, that of choice `only`, may be taken although others were possible to think of: where none of them fails, where
/// the value is a usual one, or where all that fails is its thousandfold.
fn is_settled(outcomes: &Outcomes, only: usize, kind: Kind, known: &Meanings) -> bool {
    let (least, most) = kind.sensible();
    let usual = outcomes[only].as_ref().is_ok_and(|value| (least..=most).contains(&nearest(value)));
    usual || outcomes.iter().all(Result::is_ok) || (known.only_separators() && !known.choices[only].grouped)
}

fn last_unit(node: &Node, known: &Meanings, choice: usize) -> Option<&'static Unit> {
    let mut last = None;
    node.visit(&mut |part| {
        if let What::Amount(_, meaning, word) = &part.what
            && last.is_none_or(|(_, end)| word.end >= end)
        {
            last = Some((*meaning, word.end));
        }
    });
    last.and_then(|(meaning, _)| known.choices[choice].unit(meaning))
}

fn ambiguous(text: &str, kind: Kind, habits: &Habits, known: &Meanings, outcomes: &Outcomes, values: &[usize]) -> EntryError {
    let (why, at) = known.doubt(text, outcomes);
    let mut error = EntryError::new(why, at);
    for index in values {
        let Ok(value) = &outcomes[*index] else { continue };
        let rewritten = Some(known.rewrite(text, *index)).filter(|entry| means(entry, value, kind, habits));
        let says = format!("{}: {}", printed(value, kind, habits), known.explain(*index).join("; "));
        error.readings.push(Reading { text: rewritten.unwrap_or_else(|| plain_entry(value, kind)), value: nearest(value), says });
    }
    error
}

/// Whether `entry` means `value` and nothing else. It is evaluated without offering readings, so this goes no deeper.
fn means(entry: &str, value: &BigRational, kind: Kind, habits: &Habits) -> bool {
    if entry.len() > LONGEST {
        return false;
    }
    let Ok(node) = expression(&tokens(entry, kind), kind, entry.len()) else { return false };
    let known = meanings(&node, kind, habits);
    let outcomes = outcomes(&node, kind, habits, &known);
    let values = distinct(&outcomes);
    matches!(values.as_slice(), [only] if is_settled(&outcomes, *only, kind, &known) && outcomes[*only].as_ref().is_ok_and(|found| nearest(found) == nearest(value)))
}

/// `value` as an entry in the unit of the kind, with as many digits as it takes and none that could be taken for a group.
fn plain_entry(value: &BigRational, kind: Kind) -> String {
    let mut number = nearest(value).to_string();
    if number.split_once('.').is_some_and(|(_, decimals)| decimals.len() == 3) {
        number.push('0');
    }
    match kind.units()[0].symbol {
        "" => number,
        symbol => format!("{number} {symbol}"),
    }
}

fn printed(value: &BigRational, kind: Kind, habits: &Habits) -> String {
    print(nearest(value), kind, &Style { units: habits.units, ..Style::METRIC }).to_string()
}

/// `9 ct` in a field for fineness: offers what `9 k` means.
fn with_karats(error: EntryError, text: &str, kind: Kind, habits: &Habits) -> EntryError {
    if error.kind != EntryErrorKind::Mistaken(Mistake::CaratForFineness) {
        return error;
    }
    let entry = format!("{}k", &text[..error.at.start]);
    let readings = match parse(&entry, kind, habits) {
        Ok(parsed) => {
            let value = super::round::exact(parsed.value);
            let says = value.map(|value| printed(&value, kind, habits)).unwrap_or_default();
            vec![Reading { text: entry, value: parsed.value, says: format!("{says}: karats, parts of 24") }]
        }
        Err(other) => other.readings,
    };
    EntryError { readings, ..error }
}

/// A vacuum typed as the gauge shows it, below zero: offers the same without the sign.
fn with_opposite(error: EntryError, node: &Node, kind: Kind, habits: &Habits, known: &Meanings) -> EntryError {
    if kind != Kind::Vacuum || !matches!(error.kind, EntryErrorKind::TooSmall { .. }) {
        return error;
    }
    let values = known.choices.iter().filter_map(|choice| evaluate(node, kind, choice).ok());
    let mut readings: Vec<Reading> = Vec::new();
    for value in values.map(|value| value.abs()).filter(|value| check(value, kind, false).is_ok()) {
        let reading = Reading {
            text: plain_entry(&value, kind),
            value: nearest(&value),
            says: format!("{}: as much below the barometer", printed(&value, kind, habits)),
        };
        if readings.iter().all(|known| known.value != reading.value) {
            readings.push(reading);
        }
    }
    EntryError { readings, ..error }
}

impl Meaning {
    /// The unit a bare number has in a field of `kind`.
    pub(super) fn of_field(kind: Kind, habits: &Habits) -> Self {
        Self::Unit(habits.units.of(kind))
    }
}
