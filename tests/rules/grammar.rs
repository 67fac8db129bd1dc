//! The house grammar of formula texts, read by a general expression crate with an operator table of our own.
//!
//! The crate's ways that matter here: a unary operator binds tighter than `^`, so `-x^2` would be `(-x)^2`; this table has no unary minus
//! at all, and a text that uses one is refused. Variables come back in alphabetical order, so they are handed over by name. `E` would be
//! a constant in the crate's own table; here only `pi` is one. A name that begins like an operator (`minutes`) is taken for the operator,
//! and `max(a, b)` within another call does not parse: [`spelled_out`] puts names into braces and calls into the middle of their arguments.

use std::fmt::Debug;
use std::marker::PhantomData;
use std::str::FromStr;

use exmex::prelude::*;
use exmex::{BinOp, MakeOperators, Operator};

/// What a text can be evaluated over.
pub trait Operand: Clone + Default + Debug + FromStr + 'static {
    fn pi() -> Self;
    fn add(self, other: Self) -> Self;
    fn sub(self, other: Self) -> Self;
    fn mul(self, other: Self) -> Self;
    fn div(self, other: Self) -> Self;
    fn pow(self, other: Self) -> Self;
    fn max(self, other: Self) -> Self;
    fn min(self, other: Self) -> Self;
    fn ceilto(self, step: Self) -> Self;
    fn unary(self, name: Unary) -> Self;
}

/// The functions of one argument.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unary {
    Sqrt,
    Abs,
    Exp,
    Ceil,
    Floor,
    Sind,
    Cosd,
    Round2,
    Round4,
}

/// The operator table.
#[derive(Debug, Clone)]
pub struct House<T>(PhantomData<T>);

impl<T: Operand> MakeOperators<T> for House<T> {
    fn make<'a>() -> Vec<Operator<'a, T>> {
        let binary = |repr, apply, prio| Operator::make_bin(repr, BinOp { apply, prio, is_commutative: false });
        vec![
            binary("+", T::add, 0),
            binary("-", T::sub, 0),
            binary("*", T::mul, 1),
            binary("/", T::div, 1),
            binary("^", T::pow, 2),
            binary("max", T::max, 3),
            binary("min", T::min, 3),
            binary("ceilto", T::ceilto, 3),
            Operator::make_unary("sqrt", |x: T| x.unary(Unary::Sqrt)),
            Operator::make_unary("abs", |x: T| x.unary(Unary::Abs)),
            Operator::make_unary("exp", |x: T| x.unary(Unary::Exp)),
            Operator::make_unary("ceil", |x: T| x.unary(Unary::Ceil)),
            Operator::make_unary("floor", |x: T| x.unary(Unary::Floor)),
            Operator::make_unary("sind", |x: T| x.unary(Unary::Sind)),
            Operator::make_unary("cosd", |x: T| x.unary(Unary::Cosd)),
            Operator::make_unary("round2", |x: T| x.unary(Unary::Round2)),
            Operator::make_unary("round4", |x: T| x.unary(Unary::Round4)),
            Operator::make_constant("pi", T::pi()),
        ]
    }
}

const OF_TWO: [&str; 3] = ["max", "min", "ceilto"];
const OF_ONE: [&str; 9] = ["sqrt", "abs", "exp", "ceil", "floor", "sind", "cosd", "round2", "round4"];

/// The text with every symbol in braces and every call of two arguments as `((a) max (b))`.
fn spelled_out(text: &str) -> Result<String, String> {
    let mut out = String::new();
    // One entry an open bracket: the function of two arguments it belongs to, or none.
    let mut open: Vec<Option<&str>> = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        if first.is_ascii_alphabetic() {
            let end = rest.find(|c: char| !c.is_ascii_alphanumeric() && c != '_').unwrap_or(rest.len());
            let (word, after) = rest.split_at(end);
            rest = after;
            if OF_TWO.contains(&word) {
                rest = after.strip_prefix('(').ok_or_else(|| format!("“{text}”: {word} without its arguments"))?;
                open.push(Some(word));
                out.push_str("((");
            } else if OF_ONE.contains(&word) {
                if !after.starts_with('(') {
                    return Err(format!("“{text}”: {word} without its argument"));
                }
                out.push_str(word);
            } else if word == "pi" {
                out.push_str("pi");
            } else {
                out.push_str(&format!("{{{word}}}"));
            }
            continue;
        }
        rest = &rest[first.len_utf8()..];
        match first {
            '(' => {
                open.push(None);
                out.push('(');
            }
            ',' => {
                // A comma belongs to the innermost call, and a call has one.
                let function = open.last_mut().and_then(Option::take).ok_or_else(|| format!("“{text}”: a comma too many"))?;
                *open.last_mut().expect("it was just looked at") = Some("))");
                out.push_str(&format!(") {function} ("));
            }
            ')' => match open.pop() {
                None => return Err(format!("“{text}”: a bracket too many")),
                Some(None) => out.push(')'),
                Some(Some("))")) => out.push_str("))"),
                Some(Some(function)) => return Err(format!("“{text}”: {function} of one argument")),
            },
            other => out.push(other),
        }
    }
    if open.is_empty() { Ok(out) } else { Err(format!("“{text}”: a bracket is not closed")) }
}

/// The value of `text` where each symbol stands for its term; an error where the text does not parse, names a symbol that is no term, or
/// leaves a term out.
pub fn evaluate<T: Operand>(text: &str, terms: &[(&str, T)]) -> Result<T, String>
where
    <T as FromStr>::Err: Debug,
{
    let spelled = spelled_out(text)?;
    let parsed = FlatEx::<T, House<T>>::parse(&spelled).map_err(|error| format!("“{text}”: {error}"))?;
    if let Some((unused, _)) = terms.iter().find(|(symbol, _)| !parsed.var_names().iter().any(|name| name == symbol)) {
        return Err(format!("“{text}” leaves out its term {unused}"));
    }
    let named = |name: &String| terms.iter().find(|(symbol, _)| symbol == name).map(|(_, value)| value.clone());
    let values: Option<Vec<T>> = parsed.var_names().iter().map(named).collect();
    let values = values.ok_or_else(|| format!("“{text}” names a symbol that is no term"))?;
    parsed.eval(&values).map_err(|error| format!("“{text}”: {error}"))
}

impl Operand for f64 {
    fn pi() -> Self {
        std::f64::consts::PI
    }
    fn add(self, other: Self) -> Self {
        self + other
    }
    fn sub(self, other: Self) -> Self {
        self - other
    }
    fn mul(self, other: Self) -> Self {
        self * other
    }
    fn div(self, other: Self) -> Self {
        self / other
    }
    fn pow(self, other: Self) -> Self {
        self.powf(other)
    }
    fn max(self, other: Self) -> Self {
        if self > other { self } else { other }
    }
    fn min(self, other: Self) -> Self {
        if self < other { self } else { other }
    }
    fn ceilto(self, step: Self) -> Self {
        (self / step).ceil() * step
    }
    fn unary(self, name: Unary) -> Self {
        match name {
            Unary::Sqrt => self.sqrt(),
            Unary::Abs => self.abs(),
            Unary::Exp => self.exp(),
            Unary::Ceil => self.ceil(),
            Unary::Floor => self.floor(),
            Unary::Sind => self.to_radians().sin(),
            Unary::Cosd => self.to_radians().cos(),
            Unary::Round2 => (self * 100.0).round() / 100.0,
            Unary::Round4 => (self * 10_000.0).round() / 10_000.0,
        }
    }
}

fn number(text: &str, terms: &[(&str, f64)]) -> f64 {
    evaluate(text, terms).unwrap()
}

#[test]
fn the_grammar_reads_as_a_person_does() {
    // By hand, from the rules of school algebra.
    for (text, by_hand) in [
        ("2 + 3*4", 14.0),
        ("(2 + 3)*4", 20.0),
        ("20 - 3 - 4", 13.0),
        ("20/5/2", 2.0),
        ("20/5*2", 8.0),
        ("2*3^2", 18.0),
        ("8 - 2^2", 4.0),
        ("100/2^2", 25.0),
        ("2^3*2", 16.0),
        ("min(1, max(2, 3))", 1.0),
        ("min(9, max(2, 3))", 3.0),
        ("max(min(7, 5), min(4, 6))", 5.0),
        ("2*max(3, 4) + 1", 9.0),
        ("2*max(3, 4)^2", 32.0),
        ("24/min(2, 4)/3", 4.0),
        ("max(1 + 1, 2*3)", 6.0),
        ("max(5 - 9, 0)", 0.0),
        ("10 - max(1, 2)*3", 4.0),
        ("sqrt(9)*2", 6.0),
        ("sqrt(3^2 + 4^2)", 5.0),
        ("2*abs(3 - 5)/4", 1.0),
        ("abs(3 - 5)^2", 4.0),
        ("ceil(7/2) + floor(7/2)", 7.0),
        ("60*sind(30)", 30.0),
        ("60*cosd(60)", 30.0),
        ("round2(2.675*100)/100", 2.675),
        ("round2(0.125)", 0.13),
        ("round4(1.00005)", 1.0001),
        ("ceilto(10.1, 4)", 12.0),
        ("ceilto(12, 4)", 12.0),
        ("exp(0) + 1", 2.0),
        ("pi/4*2^2*1000/1000", std::f64::consts::PI),
        ("1/(1/2 + 1/2)", 1.0),
        (".5 + 0.25", 0.75),
    ] {
        let value = number(text, &[]);
        assert!((value - by_hand).abs() < 1e-12, "{text} = {value}, by hand {by_hand}");
    }
}

#[test]
fn symbols_are_handed_over_by_name() {
    // The crate hands variables over in alphabetical order; the terms come in the rule's.
    let value = number("zinc - alloy/mass", &[("zinc", 10.0), ("mass", 2.0), ("alloy", 6.0)]);
    assert!((value - 7.0).abs() < 1e-12);
    // `e` is a symbol like any other, and so is `E`.
    assert!((number("e*2", &[("e", 3.0)]) - 6.0).abs() < 1e-12);
    assert!((number("E*2", &[("E", 3.0)]) - 6.0).abs() < 1e-12);
    for name in ["max_wall", "minutes", "pit", "expand", "absent", "ceiling", "round"] {
        assert!((number(&format!("2*{name} + 1"), &[(name, 3.0)]) - 7.0).abs() < 1e-12, "{name} begins like a function");
    }
}

#[test]
fn what_could_be_read_in_two_ways_is_refused() {
    for text in [
        "-2^2",
        "-a^2",
        "3*-2",
        "2 +",
        "sin(1)",
        "log(2)",
        "a b",
        "max(1 2 3)",
        "max(1, 2, 3)",
        "max(1)",
        "max 1",
        "(1 + 2",
        "1 + 2)",
        "1, 2",
        "sqrt 4",
    ] {
        assert!(evaluate::<f64>(text, &[("a", 2.0), ("b", 1.0)]).is_err(), "{text}");
    }
    assert!(evaluate::<f64>("a + 1", &[("a", 1.0), ("b", 1.0)]).is_err(), "a term is left out");
    assert!(evaluate::<f64>("a + c", &[("a", 1.0)]).is_err(), "a symbol is no term");
}
