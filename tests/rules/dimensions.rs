//! The text of every rule over dimensions: what values cannot show, an inverted density for one, dimensions do.

use std::str::FromStr;

use pourbook::calc::all_rules;
use pourbook::calc::rule::{How, Term};
use pourbook::quantity::{Dimension, Kind};

use super::grammar::{Operand, Unary, evaluate};

/// What a text comes to over dimensions.
#[derive(Debug, Clone, PartialEq)]
enum Meaning {
    Of {
        exponents: [i8; 5],
        absolute: bool,
        /// The number, for a literal: exponents of powers, and a zero that is zero in any unit.
        literal: Option<f64>,
    },
    Refused(String),
}

use Meaning::{Of, Refused};

impl Meaning {
    fn of(Dimension { exponents, absolute }: Dimension) -> Self {
        Of { exponents, absolute, literal: None }
    }

    fn plain() -> Self {
        Of { exponents: [0; 5], absolute: false, literal: None }
    }

    fn is_zero(&self) -> bool {
        matches!(self, Of { literal: Some(number), .. } if *number == 0.0)
    }
}

impl Default for Meaning {
    fn default() -> Self {
        Self::plain()
    }
}

impl FromStr for Meaning {
    type Err = std::num::ParseFloatError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        text.parse().map(|number| Of { exponents: [0; 5], absolute: false, literal: Some(number) })
    }
}

/// Both sides understood, or the first refusal.
fn both(one: Meaning, other: Meaning, then: impl Fn([i8; 5], bool, [i8; 5], bool) -> Meaning) -> Meaning {
    match (one, other) {
        (Refused(why), _) | (_, Refused(why)) => Refused(why),
        (Of { exponents: a, absolute: p, .. }, Of { exponents: b, absolute: q, .. }) => then(a, p, b, q),
    }
}

/// Products and quotients: nothing that counts from a zero of its own takes part.
fn product(one: Meaning, other: Meaning, sign: i8) -> Meaning {
    both(one, other, |a, p, b, q| {
        if p || q {
            return Refused("a temperature or a moment is multiplied or divided".to_owned());
        }
        Of { exponents: std::array::from_fn(|i| a[i] + sign * b[i]), absolute: false, literal: None }
    })
}

/// Sums, differences, the larger and the smaller: of one kind, and zero is of any.
fn alike(one: Meaning, other: Meaning, absolute: impl Fn(bool, bool) -> Result<bool, &'static str>) -> Meaning {
    if one.is_zero() {
        return other;
    }
    if other.is_zero() {
        return one;
    }
    both(one, other, |a, p, b, q| {
        if a != b {
            return Refused(format!("{a:?} and {b:?} are put together"));
        }
        match absolute(p, q) {
            Ok(absolute) => Of { exponents: a, absolute, literal: None },
            Err(why) => Refused(why.to_owned()),
        }
    })
}

impl Operand for Meaning {
    fn pi() -> Self {
        Self::plain()
    }
    fn add(self, other: Self) -> Self {
        alike(self, other, |p, q| if p && q { Err("two temperatures or two moments are added") } else { Ok(p || q) })
    }
    fn sub(self, other: Self) -> Self {
        alike(self, other, |p, q| if q && !p { Err("a temperature is taken from a difference") } else { Ok(p && !q) })
    }
    fn mul(self, other: Self) -> Self {
        product(self, other, 1)
    }
    fn div(self, other: Self) -> Self {
        product(self, other, -1)
    }
    fn pow(self, other: Self) -> Self {
        let Of { literal: Some(power), .. } = other else { return Refused("a power that is no plain number".to_owned()) };
        match self {
            Refused(why) => Refused(why),
            Of { absolute: true, .. } => Refused("a power of a temperature or a moment".to_owned()),
            Of { exponents, .. } if power.fract() == 0.0 && power.abs() < 10.0 => {
                let power: i8 = format!("{power:.0}").parse().unwrap();
                Of { exponents: exponents.map(|exponent| exponent * power), absolute: false, literal: None }
            }
            Of { exponents: [0, 0, 0, 0, 0], .. } => Self::plain(),
            Of { .. } => Refused("a broken power of something with a unit".to_owned()),
        }
    }
    fn max(self, other: Self) -> Self {
        alike(self, other, |p, q| if p == q { Ok(p) } else { Err("a temperature is compared with a difference") })
    }
    fn min(self, other: Self) -> Self {
        self.max(other)
    }
    fn ceilto(self, step: Self) -> Self {
        self.max(step)
    }
    fn unary(self, name: Unary) -> Self {
        let Of { exponents, absolute, .. } = self else { return self };
        if absolute {
            return Refused(format!("{name:?} of a temperature or a moment"));
        }
        match name {
            Unary::Abs | Unary::Round2 | Unary::Round4 => Of { exponents, absolute, literal: None },
            Unary::Sqrt if exponents.iter().all(|exponent| exponent % 2 == 0) => {
                Of { exponents: exponents.map(|exponent| exponent / 2), absolute, literal: None }
            }
            _ if exponents == [0; 5] => Self::plain(),
            _ => Refused(format!("{name:?} of something with a unit")),
        }
    }
}

/// What is wrong with a text over dimensions; `None` where it gives what it should.
fn wrong(text: &str, terms: &[Term], result: Kind) -> Option<String> {
    let named: Vec<(&str, Meaning)> = terms.iter().map(|term| (term.symbol, Meaning::of(term.kind.dimension()))).collect();
    match evaluate(text, &named) {
        Err(why) | Ok(Refused(why)) => Some(why),
        Ok(Of { exponents, absolute, .. }) => {
            let gives = Dimension { exponents, absolute };
            (gives != result.dimension()).then(|| format!("gives {gives:?}, not {result:?}"))
        }
    }
}

#[test]
fn every_rule_gives_its_kind() {
    let mut seen = 0;
    for rule in all_rules() {
        let (How::Formula { text, .. } | How::Decimal { text, .. } | How::Exact { text, .. }) = rule.how else { continue };
        assert_eq!(wrong(text, rule.terms, rule.result), None, "{}: {text}", rule.id);
        seen += 1;
    }
    assert!(seen > 50, "only {seen} texts were looked at");
}

#[test]
fn sums_and_largest_keep_their_kind() {
    for rule in all_rules() {
        let row = rule.terms[0].kind.dimension();
        match rule.how {
            How::Sum => {
                assert_eq!(row, rule.result.dimension(), "{}", rule.id);
                assert!(!row.absolute, "{}: temperatures or moments are summed", rule.id);
            }
            How::Most => assert_eq!(row, rule.result.dimension(), "{}", rule.id),
            _ => {}
        }
    }
}

const fn term(symbol: &'static str, kind: Kind) -> Term {
    Term { symbol, kind }
}

#[test]
fn an_inverted_density_is_seen() {
    let terms = [term("weight", Kind::Mass), term("density", Kind::Density)];
    assert_eq!(wrong("weight/density", &terms, Kind::Volume), None);
    let planted = wrong("weight*density", &terms, Kind::Volume).expect("the planted slip must be seen");
    assert!(planted.contains("not Volume"), "{planted}");
    assert!(wrong("density/weight", &terms, Kind::Volume).is_some());
    // Two densities the wrong way round have the right dimension; the worked examples from outside see that one.
    let terms = [term("weight", Kind::Mass), term("density", Kind::Density), term("alloy", Kind::Density)];
    assert_eq!(wrong("weight*density/alloy", &terms, Kind::Mass), None);
}

#[test]
fn slips_with_temperatures_and_moments_are_seen() {
    let terms = [term("low", Kind::Temperature), term("high", Kind::Temperature)];
    assert_eq!(wrong("low + (high - low)/2", &terms, Kind::Temperature), None);
    assert_eq!(wrong("high - low", &terms, Kind::TemperatureDifference), None);
    assert!(wrong("(low + high)/2", &terms, Kind::Temperature).is_some(), "the sum of two temperatures means nothing");
    assert!(wrong("high - low", &terms, Kind::Temperature).is_some());
    assert!(wrong("2*high - low", &terms, Kind::TemperatureDifference).is_some());
    let terms = [term("pour", Kind::Moment), term("total", Kind::Duration)];
    assert_eq!(wrong("pour - total", &terms, Kind::Moment), None);
    assert!(wrong("total - pour", &terms, Kind::Moment).is_some());
    assert!(wrong("pour + total", &terms, Kind::Duration).is_some());
    let terms = [term("a", Kind::Length), term("b", Kind::Length)];
    assert!(wrong("exp(a/b)*a", &terms, Kind::Length).is_none());
    for slip in ["exp(a)*b", "a*b", "sqrt(a)*b", "a + b^2", "a + b + 1", "max(a, 1) + b", "a^b"] {
        assert!(wrong(slip, &terms, Kind::Length).is_some(), "{slip}");
    }
}
