//! The book: missing terms, root causes, and the one check against NaN and infinity.

use pourbook::calc::rule::{How, Input, Rule, Term, Trust};
use pourbook::calc::{Book, Cause, Id, Value};
use pourbook::job::Place;
use pourbook::quantity::{Grams, Kind, Money};
use rust_decimal::Decimal;

use super::world::new_book;

/// An input of any kind.
pub fn own_input(kind: Kind) -> &'static Input {
    macro_rules! inputs {
        ($($kind:ident)+) => { match kind { $(Kind::$kind => { static INPUT: Input = Input { key: "test.input", kind: Kind::$kind }; &INPUT })+ } };
    }
    inputs!(Length Altitude Area Volume Mass Density Temperature TemperatureDifference TemperatureRate Duration Moment Pressure Vacuum Ratio
        Fineness Count Angle Money PricePerGram Seconds Velocity Acceleration Rotation SurfaceTension HeatByMass Energy
        SpecificHeat Conductivity Diffusivity)
}

pub fn entered(book: &mut Book, input: &'static Input, value: f64) -> Id {
    book.entered(input, Place::Job, value)
}

const MASS: Term = Term { symbol: "mass", kind: Kind::Mass };
const VOLUME: Term = Term { symbol: "volume", kind: Kind::Volume };

static QUOTIENT: Rule = Rule {
    id: "test.quotient",
    result: Kind::Density,
    terms: &[MASS, VOLUME],
    how: How::Formula { text: "mass/volume", call: |terms| terms[0] / terms[1] },
    source: "a test",
    trust: Trust::Computed,
};

static HUGE: Rule = Rule {
    id: "test.huge",
    result: Kind::Mass,
    terms: &[MASS],
    how: How::Formula { text: "exp(mass)", call: |terms| terms[0].exp() },
    source: "a test",
    trust: Trust::Computed,
};

static PRICE: Rule = Rule {
    id: "test.price",
    result: Kind::PricePerGram,
    terms: &[Term { symbol: "price", kind: Kind::Money }, MASS],
    how: How::Decimal { text: "price/mass", call: |terms| terms[0].checked_div(terms[1]) },
    source: "a test",
    trust: Trust::Computed,
};

static TIMES: Rule = Rule {
    id: "test.times",
    result: Kind::Money,
    terms: &[Term { symbol: "price", kind: Kind::Money }, MASS],
    how: How::Decimal { text: "price*mass", call: |terms| terms[0].checked_mul(terms[1]) },
    source: "a test",
    trust: Trust::Computed,
};

#[test]
fn nothing_that_is_not_finite_gets_in() {
    let mut book = new_book();
    let thousand = entered(&mut book, own_input(Kind::Mass), 1000.0);
    let huge = book.derive(&HUGE, Place::Job, [thousand]);
    assert_eq!(book.value(huge), Value::Missing(Cause::NotFinite));
    let nothing = entered(&mut book, own_input(Kind::Volume), 0.0);
    let zero = entered(&mut book, own_input(Kind::Mass), 0.0);
    let undefined = book.derive(&QUOTIENT, Place::Job, [zero, nothing]);
    assert_eq!(book.value(undefined), Value::Missing(Cause::NotFinite), "nought by nought");
    let infinite = book.derive(&QUOTIENT, Place::Job, [thousand, nothing]);
    assert_eq!(book.value(infinite), Value::Missing(Cause::NotFinite));
    for number in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let typed = entered(&mut book, own_input(Kind::Mass), number);
        assert_eq!(book.value(typed), Value::Missing(Cause::NotFinite));
        let measured = book.measured(own_input(Kind::Volume), Place::Job, number);
        assert_eq!(book.value(measured), Value::Missing(Cause::NotFinite));
    }
    // The figure that overflowed is the root cause, not its terms, which are fine.
    let onward = book.derive(&HUGE, Place::Job, [huge]);
    assert_eq!(book.value(onward), Value::Missing(Cause::Term));
    assert_eq!(book.root_causes(onward), [huge]);
}

#[test]
fn money_and_fractions_overflow_into_a_missing_figure() {
    let mut book = new_book();
    let price = book.studio_money(own_input(Kind::Money), Money::new(Decimal::from(90_000_000_000_i64)).unwrap());
    let none = book.weighed(own_input(Kind::Mass), Place::Job, Grams::ZERO);
    let much = book.weighed(own_input(Kind::Mass), Place::Job, Grams::new(Decimal::from(90_000_000)).unwrap());
    let by_nothing = book.derive(&PRICE, Place::Job, [price, none]);
    assert_eq!(book.value(by_nothing), Value::Missing(Cause::NotFinite));
    let too_much = book.derive(&TIMES, Place::Job, [price, much]);
    assert_eq!(book.value(too_much), Value::Missing(Cause::NotFinite));
}

#[test]
fn a_missing_term_leaves_the_figure_missing_and_names_its_root() {
    let mut book = new_book();
    let mass = entered(&mut book, own_input(Kind::Mass), 10.0);
    let unsaid = book.absent(own_input(Kind::Volume), Place::Job, Cause::NotSaid);
    let waits = book.absent(own_input(Kind::Volume), Place::Job, Cause::Pending);
    let first = book.derive(&QUOTIENT, Place::Job, [mass, unsaid]);
    assert_eq!(book.value(first), Value::Missing(Cause::Term));
    assert_eq!(book.root_causes(first), [unsaid]);
    let second = book.derive(&QUOTIENT, Place::Job, [mass, waits]);
    assert_eq!(book.value(second), Value::Missing(Cause::Pending), "what waits is not known yet");
    assert_eq!(book.root_causes(second), [waits]);
    assert!(book.root_causes(mass).is_empty());
}

#[test]
#[should_panic(expected = "test.quotient: volume is given test.input")]
fn terms_of_another_kind_are_a_slip() {
    let mut book = new_book();
    let mass = entered(&mut book, own_input(Kind::Mass), 10.0);
    book.derive(&QUOTIENT, Place::Job, [mass, mass]);
}

#[test]
#[should_panic(expected = "test.quotient takes 2 terms")]
fn too_few_terms_are_a_slip() {
    let mut book = new_book();
    let mass = entered(&mut book, own_input(Kind::Mass), 10.0);
    book.derive(&QUOTIENT, Place::Job, [mass]);
}
