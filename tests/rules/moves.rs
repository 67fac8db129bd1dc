//! Every term of every rule moves its value.

use num_rational::Ratio;
use pourbook::calc::all_rules;
use pourbook::calc::rule::{How, Rule};
use rust_decimal::Decimal;

use super::random::Random;

/// The value at some terms, as something to compare.
fn value(rule: &Rule, terms: &[Decimal]) -> Option<String> {
    use num_traits::ToPrimitive;
    let numbers: Vec<f64> = terms.iter().map(|term| term.to_f64().unwrap()).collect();
    match rule.how {
        How::Formula { call, .. } | How::Lookup { call, .. } => {
            Some(call(&numbers)).filter(|value| value.is_finite()).map(|value| value.to_string())
        }
        How::Decimal { call, .. } => call(terms).map(|value| value.normalize().to_string()),
        How::Exact { call, .. } => {
            let terms: Vec<Ratio<i128>> = terms.iter().map(|term| Ratio::new(term.mantissa(), 10_i128.pow(term.scale()))).collect();
            call(&terms).map(|value| value.to_string())
        }
        How::Sum | How::Most => None,
    }
}

#[test]
fn every_term_moves_the_value() {
    for rule in all_rules().into_iter().filter(|rule| !matches!(rule.how, How::Sum | How::Most)) {
        let mut random = Random::of(rule);
        for (index, term) in rule.terms.iter().enumerate() {
            // Many, because some rules hold in a narrow range only; the first that moves is enough.
            let moved = (0..50_000).any(|_| {
                let mut terms = random.decimals(rule);
                let before = value(rule, &terms);
                terms[index] = random.decimal(term.kind);
                matches!((before, value(rule, &terms)), (Some(before), Some(after)) if before != after)
            });
            assert!(moved, "{}: {} changes nothing", rule.id, term.symbol);
        }
    }
}
