//! Rules over rows: sums, and the largest.

use pourbook::calc::rule::{How, Input, Rule, Term, Trust};
use pourbook::calc::{Cause, Id, Value, all_rules};
use pourbook::job::Place;
use pourbook::quantity::{Grams, Kind, Money};
use rust_decimal::Decimal;

use super::door::{entered, own_input};
use super::random::Random;
use super::world::new_book;

#[test]
fn sums_are_plain_sums_and_the_largest_is_the_largest() {
    let mut seen = 0;
    for rule in all_rules().into_iter().filter(|rule| matches!(rule.how, How::Sum | How::Most)) {
        seen += 1;
        assert_eq!(rule.terms.len(), 1, "{}", rule.id);
        let mut random = Random::of(rule);
        for count in 1..30 {
            // Money is kept to four decimals.
            let kept = |value: f64| if rule.result == Kind::Money { (value * 100.0).round() / 100.0 } else { value };
            let rows: Vec<f64> = (0..count).map(|_| kept(random.value(rule.terms[0].kind))).collect();
            let mut book = new_book();
            let ids: Vec<Id> = rows.iter().map(|row| entered(&mut book, own_input(rule.terms[0].kind), *row)).collect();
            let id = book.derive_over(rule, Place::Job, &ids);
            let value = book.number(id).unwrap();
            let mut by_hand = f64::NEG_INFINITY;
            if matches!(rule.how, How::Sum) {
                by_hand = rows.iter().sum();
            } else {
                rows.iter().for_each(|row| by_hand = if *row > by_hand { *row } else { by_hand });
            }
            assert!((value - by_hand).abs() <= 1e-12 * by_hand.abs(), "{}: {value}, by hand {by_hand}", rule.id);
            assert_eq!(book.figure(id).terms, ids);
        }
    }
    assert!(seen >= 10, "only {seen} rules over rows");
}

fn rule(id: &str) -> &'static Rule {
    all_rules().into_iter().find(|rule| rule.id == id).unwrap()
}

static DRAW: Input = Input { key: "test.draw", kind: Kind::Mass };
static AMOUNT: Input = Input { key: "test.amount", kind: Kind::Money };
static TOTAL: Rule = Rule {
    id: "test.total",
    result: Kind::Money,
    terms: &[Term { symbol: "amount", kind: Kind::Money }],
    how: How::Sum,
    source: "a test",
    trust: Trust::Computed,
};

#[test]
fn weighed_grams_and_money_are_summed_on_decimals() {
    // Ten times 0.1 is 0.9999999999999999 in binary.
    let mut book = new_book();
    let tenth = Grams::new(Decimal::new(1, 1)).unwrap();
    let rows: Vec<Id> = (0..10).map(|_| book.weighed(&DRAW, Place::Job, tenth)).collect();
    let sum = book.derive_over(rule("melt.drawn"), Place::Job, &rows);
    assert_eq!(book.value(sum), Value::Grams(Grams::new(Decimal::ONE).unwrap()));
    let cents: Vec<Id> = (0..10).map(|_| book.studio_money(&AMOUNT, Money::new(Decimal::new(10, 2)).unwrap())).collect();
    let sum = book.derive_over(&TOTAL, Place::Job, &cents);
    assert_eq!(book.value(sum), Value::Money(Money::new(Decimal::ONE).unwrap()));
    // An empty bill is nothing to pay, and is money.
    let sum = book.derive_over(&TOTAL, Place::Job, &[]);
    assert_eq!(book.value(sum), Value::Money(Money::ZERO));
}

#[test]
fn a_missing_row_leaves_the_sum_missing_and_no_rows_sum_to_nothing() {
    let mut book = new_book();
    let weighed = entered(&mut book, own_input(Kind::Mass), 5.0);
    let absent = book.absent(own_input(Kind::Mass), Place::Job, Cause::NotSaid);
    let pending = book.absent(own_input(Kind::Mass), Place::Job, Cause::Pending);
    let sum = rule("flask.tree-metal");
    let over = book.derive_over(sum, Place::Job, &[weighed, absent]);
    assert_eq!(book.value(over), Value::Missing(Cause::Term));
    assert_eq!(book.root_causes(over), [absent]);
    let over = book.derive_over(sum, Place::Job, &[pending, weighed]);
    assert_eq!(book.value(over), Value::Missing(Cause::Pending), "not known yet is not missing");
    let over = book.derive_over(sum, Place::Job, &[]);
    assert_eq!(book.number(over), Some(0.0));
    let most = rule("burnout.top");
    let none = book.derive_over(most, Place::Job, &[]);
    assert_eq!(book.value(none), Value::Missing(Cause::NotSaid));
    assert_eq!(book.root_causes(none), [none]);
}

#[test]
#[should_panic(expected = "over rows of another kind")]
fn rows_of_another_kind_are_a_slip() {
    let mut book = new_book();
    let length = entered(&mut book, own_input(Kind::Length), 1.0);
    book.derive_over(rule("flask.tree-metal"), Place::Job, &[length]);
}
