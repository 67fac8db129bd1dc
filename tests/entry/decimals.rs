//! Weights and money on decimals: nothing is lost between what is typed, what is kept and what is written to a file.

use pourbook::quantity::{Grams, Habits, Money, Units, parse_grams, parse_money};
use proptest::prelude::*;
use rust_decimal::Decimal;

fn grams(text: &str) -> String {
    parse_grams(text, &Habits::default()).map_or_else(|error| error.key().to_owned(), |grams| grams.to_string())
}

#[test]
fn no_weight_is_lost_to_binary_rounding() {
    assert_eq!(grams("0.1+0.2"), "0.3");
    assert_eq!(grams("4.20*6"), "25.2");
    assert_eq!(grams("4.2*6+1.1"), "26.3");
    assert_eq!(grams("1.1*1.1"), "1.21");
    assert_eq!(grams("0.7+0.1-0.8"), "0");
    assert_eq!(grams("1 ozt"), "31.103477");
    assert_eq!(grams("10000 ozt/1000"), "311.034768");
    assert_eq!(grams("20 dwt - 1 ozt"), "0");
    assert_eq!(grams("480 grains - 1 ozt"), "0");
    assert_eq!(grams("16 oz av - 1 lb"), "0");
    assert_eq!(grams("7000 grains - 1 lb"), "0");
    assert_eq!(grams("1/3"), "0.333333");
    assert_eq!(grams("2/3"), "0.666667");
    assert_eq!(grams("0.0000005"), "0.000001");
    assert_eq!(grams("0.0000015"), "0.000002");
    assert_eq!(grams("0.00000049"), "0");
    assert_eq!(grams("1,250"), "entry-ambiguous-separator");
    assert_eq!(grams("-1"), "entry-too-small");
    let trade = Habits { units: Units::TRADE, ..Habits::default() };
    assert_eq!(parse_grams("1000/50", &trade).map(|grams| grams.to_string()).ok().as_deref(), Some("31.103477"));
}

#[test]
fn money_is_typed_exactly() {
    let money = |text: &str| parse_money(text, &Habits::default()).map_or_else(|error| error.key().to_owned(), |money| money.to_string());
    assert_eq!(money("0.1+0.2"), "0.3");
    assert_eq!(money("1,250.50*3"), "3751.5");
    assert_eq!(money("-12.5"), "-12.5");
    assert_eq!(money("1/8"), "0.125");
    assert_eq!(money("1/32"), "0.0313");
    assert_eq!(money("99999999999*2"), "entry-too-large");
}

#[test]
fn nothing_has_no_sign_and_halves_go_away_from_zero() {
    assert_eq!(Grams::new(-Decimal::ZERO).unwrap().to_string(), "0");
    assert_eq!(Grams::from_f64(-0.0).unwrap().to_string(), "0");
    assert_eq!(Grams::from_f64(0.000_000_5).unwrap().to_string(), "0.000001");
    assert_eq!(Grams::from_f64(-0.000_000_5).unwrap().to_string(), "-0.000001");
    assert_eq!(Grams::from_f64(f64::NAN), None);
    assert_eq!(Grams::from_f64(1e300), None);
    assert_eq!(ron::from_str::<Grams>("-0.0").unwrap().to_string(), "0");
    assert!(ron::from_str::<Grams>("NaN").is_err());
    assert!(ron::from_str::<Grams>("1e999").is_err());
    assert!(ron::from_str::<Grams>("0.0000001").is_err());
    assert!(ron::from_str::<Money>("0.00001").is_err());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4000.max(ProptestConfig::default().cases), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn weights_and_money_survive_a_file(micro in -99_999_999_999_999_i64..=99_999_999_999_999, scale in 0_u32..=6) {
        let number = Decimal::new(micro, 6) / Decimal::from(10_u64.pow(6 - scale));
        if let Some(grams) = Grams::new(number.round_dp(6)) {
            prop_assert_eq!(ron::from_str::<Grams>(&ron::to_string(&grams).unwrap()).unwrap(), grams);
            prop_assert_eq!(grams.to_f64(), grams.to_string().parse::<f64>().unwrap());
            prop_assert_eq!(Grams::from_f64(grams.to_f64()), Some(grams));
        }
        let money = Money::new(Decimal::new(micro, 4)).unwrap();
        prop_assert_eq!(ron::from_str::<Money>(&ron::to_string(&money).unwrap()).unwrap(), money);
        prop_assert_eq!(money.to_f64(), money.to_string().parse::<f64>().unwrap());
    }
}
