//! The exact value of an entry under one choice of what its ambiguous parts mean.

use std::ops::Range;

use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive, Zero};

use super::Kind;
use super::entry_error::{EntryError, EntryErrorKind};
use super::node::{Node, What};
use super::unit::{Meaning, Unit};
use super::unit_table::{FINE, KARAT};

/// What the ambiguous parts of an entry mean. The same for all parts of one sort.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Choice {
    /// A lone separator before three digits parts the thousands.
    pub(super) grouped: bool,
    /// For each word of two units met in the entry: the pair, and which of it is meant.
    pub(super) words: Vec<([&'static Unit; 2], usize)>,
    /// `1-1/2` is one and a half.
    pub(super) mixed: bool,
    /// `14 k` is the mark 585.
    pub(super) mark: bool,
    /// The unit of numbers without one.
    pub(super) bare: Meaning,
}

impl Choice {
    /// The unit that `meaning` stands for.
    pub(super) fn unit(&self, meaning: Meaning) -> Option<&'static Unit> {
        match meaning {
            Meaning::Unit(unit) => Some(unit),
            Meaning::Either(pair) => self.words.iter().find(|(known, _)| *known == pair).map(|(pair, index)| pair[*index]),
            Meaning::Refused(_) => None,
        }
    }
}

/// Marks of gold by karat, in parts per thousand: the list of ISO 9202, from memory, and the two statutory lists below 9 and at 10 karat.
const MARKS: [(i64, i64); 7] = [(8, 333), (9, 375), (10, 417), (14, 585), (18, 750), (22, 916), (24, 999)];

/// The mark named after `karats`.
pub(super) fn mark(karats: &BigRational) -> Option<i64> {
    MARKS.iter().find(|(name, _)| *karats == BigRational::from_integer((*name).into())).map(|(_, mark)| *mark)
}

/// A value on the way: bare numbers, amounts, and absolute temperatures, kept apart until the end.
#[derive(Debug, Clone)]
struct Mixed {
    /// Sum of numbers without a unit.
    plain: BigRational,
    /// Sum of amounts, in the kind's unit; for a temperature, steps and kelvins.
    amount: BigRational,
    /// Sum of temperatures in °C, and how many there are net of those taken away.
    point: BigRational,
    points: i32,
    /// A unit was met.
    has_unit: bool,
    /// An absolute temperature was met.
    has_point: bool,
}

impl Mixed {
    fn plain(plain: BigRational) -> Self {
        Self { plain, amount: BigRational::zero(), point: BigRational::zero(), points: 0, has_unit: false, has_point: false }
    }

    fn amount(amount: BigRational) -> Self {
        Self { amount, has_unit: true, ..Self::plain(BigRational::zero()) }
    }

    fn scaled(self, by: &BigRational) -> Self {
        Self { plain: self.plain * by, amount: self.amount * by, ..self }
    }

    fn negative(self) -> Self {
        Self { plain: -self.plain, amount: -self.amount, point: -self.point, points: -self.points, ..self }
    }

    fn plus(self, other: Self) -> Self {
        Self {
            plain: self.plain + other.plain,
            amount: self.amount + other.amount,
            point: self.point + other.point,
            points: self.points + other.points,
            has_unit: self.has_unit || other.has_unit,
            has_point: self.has_point || other.has_point,
        }
    }
}

/// The exact value of `node` in the unit of `kind`.
pub(super) fn evaluate(node: &Node, kind: Kind, choice: &Choice) -> Result<BigRational, EntryError> {
    let mixed = walk(node, kind, choice)?;
    let bare = choice.unit(choice.bare).unwrap_or(&kind.units()[0]);
    let steps = &mixed.plain * bare.factor() + &mixed.amount;
    if kind != Kind::Temperature {
        return Ok(steps);
    }
    match (mixed.points, mixed.has_point) {
        (1, _) => Ok(mixed.point + steps),
        (0, false) if !mixed.has_unit || has_bare(node) => Ok(bare.zero() + steps),
        (0, false) => Ok(kelvin().zero() + steps),
        _ => Err(fault(EntryErrorKind::OnlyADifference, &node.at)),
    }
}

fn kelvin() -> &'static Unit {
    &Kind::Temperature.units()[2]
}

fn fault(why: EntryErrorKind, at: &Range<usize>) -> EntryError {
    EntryError::new(why, at.clone())
}

fn walk(node: &Node, kind: Kind, choice: &Choice) -> Result<Mixed, EntryError> {
    Ok(match &node.what {
        What::Number(literal) => Mixed::plain(match &literal.grouped {
            Some((grouped, _)) if choice.grouped => grouped.clone(),
            _ => literal.value.clone(),
        }),
        What::Constant(value) => Mixed::plain(value.clone()),
        What::Dashed(whole, fraction, _) => Mixed::plain(if choice.mixed { whole + fraction } else { whole - fraction }),
        What::Amount(inner, meaning, word) => {
            let number = walk(inner, kind, choice)?;
            let unit = choice.unit(*meaning).ok_or_else(|| fault(EntryErrorKind::TwoUnits, word))?;
            amount(number.plain, unit, kind, choice)
        }
        What::Negative(inner) => walk(inner, kind, choice)?.negative(),
        What::Sum { left, right, minus } => {
            let (left, right) = (walk(left, kind, choice)?, walk(right, kind, choice)?);
            let sum = left.plus(if *minus { right.negative() } else { right });
            if sum.points > 1 {
                return Err(fault(EntryErrorKind::TwoTemperatures, &node.at));
            }
            sum
        }
        What::Product { left, right, over } => {
            let (first, second) = (walk(left, kind, choice)?, walk(right, kind, choice)?);
            product(first, second, *over).map_err(|why| fault(why, &right.at))?
        }
    })
}

fn amount(number: BigRational, unit: &'static Unit, kind: Kind, choice: &Choice) -> Mixed {
    if kind == Kind::Temperature && *unit != *kelvin() {
        let point = unit.zero() + number * unit.factor();
        return Mixed { point, points: 1, has_point: true, ..Mixed::amount(BigRational::zero()) };
    }
    if kind == Kind::Fineness {
        let units = kind.units();
        if *unit == units[KARAT]
            && choice.mark
            && let Some(mark) = mark(&number)
        {
            return Mixed::amount(BigRational::from_integer(mark.into()));
        }
        // `0.999 fine` and `999 fine` are the same metal.
        let one = BigRational::from_integer(1.into());
        if *unit == units[FINE] && number <= one {
            return Mixed::amount(number * BigRational::from_integer(1000.into()));
        }
    }
    Mixed::amount(number * unit.factor())
}

fn product(first: Mixed, second: Mixed, over: bool) -> Result<Mixed, EntryErrorKind> {
    if first.has_unit && second.has_unit {
        return Err(if over { EntryErrorKind::DividedByAmount } else { EntryErrorKind::AmountTimesAmount });
    }
    if first.has_point || second.has_point {
        return Err(EntryErrorKind::ScaledTemperature);
    }
    if over {
        if second.has_unit {
            return Err(EntryErrorKind::DividedByAmount);
        }
        if second.plain.is_zero() {
            return Err(EntryErrorKind::DivisionByZero);
        }
        return Ok(first.scaled(&second.plain.recip()));
    }
    Ok(if second.has_unit { second.scaled(&first.plain) } else { first.scaled(&second.plain) })
}

/// The terms of a sum that have no unit, where others have one; from left to right.
pub(super) fn bare_terms(node: &Node) -> Vec<Range<usize>> {
    let mut terms = Vec::new();
    if node.has_unit() {
        collect_bare(node, &mut terms);
    }
    terms
}

fn has_bare(node: &Node) -> bool {
    !bare_terms(node).is_empty()
}

fn collect_bare(node: &Node, terms: &mut Vec<Range<usize>>) {
    if !node.has_unit() {
        terms.push(node.at.clone());
        return;
    }
    match &node.what {
        What::Negative(inner) => collect_bare(inner, terms),
        What::Sum { left, right, .. } => {
            collect_bare(left, terms);
            collect_bare(right, terms);
        }
        What::Product { left, right, .. } => collect_bare(if left.has_unit() { left } else { right }, terms),
        What::Number(_) | What::Constant(_) | What::Dashed(..) | What::Amount(..) => {}
    }
}

/// Whether the exact `value` may stand in a field of `kind`, and if not, why.
pub(super) fn check(value: &BigRational, kind: Kind, signed: bool) -> Result<(), EntryErrorKind> {
    let (least, most) = kind.possible();
    let least = if signed && least == 0.0 { -most } else { least };
    let number = value.to_f64().unwrap_or(f64::NAN);
    // Compared exactly: the nearest binary number of a value a hair outside may lie on the bound.
    if super::round::exact(least).is_none_or(|least| *value < least) {
        return Err(EntryErrorKind::TooSmall { asked: kind, least });
    }
    if super::round::exact(most).is_none_or(|most| *value > most) || !number.is_finite() {
        return Err(EntryErrorKind::TooLarge { asked: kind, most });
    }
    if kind == Kind::Count && !value.is_integer() {
        return Err(EntryErrorKind::NotWhole);
    }
    debug_assert!(!value.is_negative() || least < 0.0);
    Ok(())
}
