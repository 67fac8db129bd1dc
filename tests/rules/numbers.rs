//! The text of every rule against its function, on a thousand random term vectors each.

use std::fmt;
use std::str::FromStr;

use num_rational::{BigRational, Ratio};
use num_traits::{Signed, ToPrimitive};
use pourbook::calc::rule::{How, Rule};
use pourbook::calc::{Book, Id, all_rules};
use pourbook::job::Place;
use rust_decimal::Decimal;

use super::door::{entered, own_input};
use super::grammar::{Operand, Unary, evaluate};
use super::random::Random;
use super::world::new_book;

const VECTORS: usize = 1000;

/// An exact fraction, for rules over decimals and fractions.
#[derive(Clone, PartialEq, PartialOrd)]
pub struct Exact(pub BigRational);

impl Exact {
    pub fn of(decimal: Decimal) -> Self {
        Self(BigRational::new(decimal.mantissa().into(), 10_i128.pow(decimal.scale()).into()))
    }

    fn rounded(self, places: u32) -> Self {
        // Half away from zero, as `Ratio::round` does.
        let scale = BigRational::from_integer(10_i128.pow(places).into());
        Self((self.0 * &scale).round() / scale)
    }
}

impl Default for Exact {
    fn default() -> Self {
        Self(BigRational::from_integer(0.into()))
    }
}

impl fmt::Debug for Exact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

impl FromStr for Exact {
    type Err = rust_decimal::Error;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        text.parse().map(Self::of)
    }
}

impl Operand for Exact {
    fn pi() -> Self {
        // No exact rule uses it; a wrong number would be seen.
        Self(BigRational::from_integer((-1).into()))
    }
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
    fn mul(self, other: Self) -> Self {
        Self(self.0 * other.0)
    }
    fn div(self, other: Self) -> Self {
        Self(self.0 / other.0)
    }
    fn pow(self, other: Self) -> Self {
        Self(num_traits::pow(self.0, other.0.to_integer().to_usize().unwrap()))
    }
    fn max(self, other: Self) -> Self {
        if self > other { self } else { other }
    }
    fn min(self, other: Self) -> Self {
        if self < other { self } else { other }
    }
    fn ceilto(self, step: Self) -> Self {
        // A hair above a step, half a millionth of it, is binary noise.
        let hair = BigRational::new(1.into(), 2_000_000.into());
        let steps = (self.0 / &step.0 - hair).ceil();
        Self(steps * step.0)
    }
    fn unary(self, name: Unary) -> Self {
        match name {
            Unary::Abs => Self(self.0.abs()),
            Unary::Ceil => Self(self.0.ceil()),
            Unary::Floor => Self(self.0.floor()),
            Unary::Round2 => self.rounded(2),
            Unary::Round4 => self.rounded(4),
            other => panic!("{other:?} has no exact value"),
        }
    }
}

fn named<T: Clone>(rule: &Rule, values: &[T]) -> Vec<(&'static str, T)> {
    rule.terms.iter().map(|term| term.symbol).zip(values.iter().cloned()).collect()
}

#[test]
fn every_formula_is_its_function() {
    let mut seen = 0;
    for rule in all_rules() {
        let How::Formula { text, call } = rule.how else { continue };
        let mut random = Random::of(rule);
        for _ in 0..VECTORS {
            let terms = random.values(rule);
            let (by_text, by_call) = (evaluate(text, &named(rule, &terms)).unwrap(), call(&terms));
            let scale = by_text.abs().max(by_call.abs()).max(1e-9);
            assert!((by_text - by_call).abs() <= 1e-12 * scale, "{}: {text} at {terms:?}: {by_text}, function {by_call}", rule.id);
        }
        seen += 1;
    }
    assert!(seen > 40, "only {seen} formulas were looked at");
}

#[test]
fn every_decimal_rule_is_exact() {
    let mut seen = 0;
    for rule in all_rules() {
        let How::Decimal { text, call } = rule.how else { continue };
        let mut random = Random::of(rule);
        for _ in 0..VECTORS {
            let terms = random.decimals(rule);
            let exact: Vec<Exact> = terms.iter().map(|term| Exact::of(*term)).collect();
            let by_text = evaluate(text, &named(rule, &exact)).unwrap();
            let by_call = Exact::of(call(&terms).unwrap());
            // A quotient that never ends is cut after 28 digits; whatever ends or is rounded must agree to the last.
            let off = (by_text.0.clone() - by_call.0.clone()).abs();
            let allowed = if text.contains('/') && !text.contains("round") {
                BigRational::new(1.into(), 10_i128.pow(20).into())
            } else {
                Exact::default().0
            };
            assert!(off <= allowed, "{}: {text} at {terms:?}: {by_text:?}, function {by_call:?}", rule.id);
        }
        seen += 1;
    }
    assert!(seen >= 6, "only {seen} decimal rules were looked at");
}

#[test]
fn every_rule_over_fractions_is_exact() {
    let mut seen = 0;
    for rule in all_rules() {
        let How::Exact { text, call } = rule.how else { continue };
        let mut random = Random::of(rule);
        for _ in 0..VECTORS {
            let terms = random.decimals(rule);
            let exact: Vec<Exact> = terms.iter().map(|term| Exact::of(*term)).collect();
            let fractions: Vec<Ratio<i128>> = terms.iter().map(|term| Ratio::new(term.mantissa(), 10_i128.pow(term.scale()))).collect();
            let by_text = evaluate(text, &named(rule, &exact)).unwrap();
            let by_call = call(&fractions).unwrap();
            let by_call = BigRational::new((*by_call.numer()).into(), (*by_call.denom()).into());
            assert_eq!(by_text.0, by_call, "{}: {text} at {terms:?}", rule.id);
        }
        seen += 1;
    }
    assert!(seen >= 2, "only {seen} exact rules were looked at");
}

#[test]
fn the_book_calls_the_function_on_the_terms_it_stores() {
    for rule in all_rules() {
        let (How::Formula { call, .. } | How::Lookup { call, .. }) = rule.how else { continue };
        let mut random = Random::of(rule);
        for _ in 0..20 {
            let terms = random.values(rule);
            let mut book = new_book();
            let ids: Vec<Id> =
                rule.terms.iter().zip(&terms).map(|(term, value)| entered(&mut book, own_input(term.kind), *value)).collect();
            let id = derive(&mut book, rule, &ids);
            let figure = book.figure(id);
            assert_eq!(figure.terms, ids, "{}", rule.id);
            assert_eq!(figure.rule(), Some(rule));
            let by_call = call(&terms);
            assert_eq!(figure.value.number(), by_call.is_finite().then_some(by_call), "{} at {terms:?}", rule.id);
        }
    }
}

/// `derive` for as many terms as there are.
pub fn derive(book: &mut Book, rule: &'static Rule, ids: &[Id]) -> Id {
    match *ids {
        [a] => book.derive(rule, Place::Job, [a]),
        [a, b] => book.derive(rule, Place::Job, [a, b]),
        [a, b, c] => book.derive(rule, Place::Job, [a, b, c]),
        [a, b, c, d] => book.derive(rule, Place::Job, [a, b, c, d]),
        [a, b, c, d, e] => book.derive(rule, Place::Job, [a, b, c, d, e]),
        [a, b, c, d, e, f] => book.derive(rule, Place::Job, [a, b, c, d, e, f]),
        [a, b, c, d, e, f, g, h] => book.derive(rule, Place::Job, [a, b, c, d, e, f, g, h]),
        _ => panic!("{} has {} terms", rule.id, ids.len()),
    }
}

#[test]
fn lookups_are_known_to_the_tests_of_tables() {
    // A lookup is held against its table in the tests against the world outside; one that is new must be added there, and then here.
    let lookups: Vec<&str> = all_rules().iter().filter(|rule| matches!(rule.how, How::Lookup { .. })).map(|rule| rule.id).collect();
    assert_eq!(lookups, ["vacuum.barometer", "vacuum.saturation", "weighing.water-density", "quench.button-depth", "quench.no-glow"]);
}
