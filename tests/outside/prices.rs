//! Money, by hand on decimals.

use pourbook::calc::Value;
use pourbook::job::{PriceUnit, Weighing};
use pourbook::quantity::Money;

use super::world::{World, grams, money, price, said};

/// A printed amount; the sheet of paper it was worked on stands in the test.
fn is(outcome: &super::world::Outcome, id: pourbook::calc::Id, by_hand: &str) {
    assert_eq!(outcome.value(id), Value::Money(money(by_hand)), "{:?}", outcome.book.figure(id));
}

#[test]
fn a_troy_ounce_is_31_1034768_g_exactly() {
    // International yard and pound agreement of 1959: 480 grains of 64.79891 mg.
    let ounce: rust_decimal::Decimal = "0.06479891".parse().unwrap();
    assert_eq!((ounce * rust_decimal::Decimal::from(480)).normalize().to_string(), "31.1034768");
    let outcome = World::sound().with(|world| world.studio.prices = vec![price("Ag", "311034.7680", PriceUnit::TroyOunce)]).recompute();
    is(&outcome, outcome.by_rule("price.per-gram"), "10000");
}

#[test]
fn silver_by_the_ounce() {
    // 28.00 / 31.1034768 = 0.90022…, kept as 0.9002; × 925/1000 = 0.832685 → 0.8327 a gram.
    // Four bands of 0.8 g of wax at 0.95, silver 10.36, shrunk 1 %: 0.8/0.95·10.36·0.99³ = 8.4651… g → 8.47 g, × 4 = 33.88 g.
    // 33.88 × 0.8327 = 28.211876 → 28.21.
    let outcome = World::sound().recompute();
    is(&outcome, outcome.by_rule("price.per-gram"), "0.9002");
    is(&outcome, outcome.line().per_gram, "0.8327");
    assert!((outcome.number(outcome.line().rough) - 8.465_1).abs() < 1e-3, "{}", outcome.number(outcome.line().rough));
    assert_eq!(outcome.value(outcome.line().rough_all), Value::Grams(grams("33.88")));
    is(&outcome, outcome.line().cost, "28.21");
}

#[test]
fn a_premium_and_halves_go_up() {
    // 0.90 a gram, premium 5 %: 0.90 × 0.925 × 1.05 = 0.874125 → 0.8741.
    let outcome = World::sound()
        .with(|world| {
            world.studio.prices = vec![price("Ag", "0.90", PriceUnit::Gram)];
            world.studio.money.metal_premium = said(0.05);
        })
        .recompute();
    is(&outcome, outcome.line().per_gram, "0.8741");
    // Half a ten-thousandth goes up: 0.50 × 0.925 × 1 = 0.4625; 0.3334 × 0.925 = 0.308395 → 0.3084; 0.9002 × 0.925 = 0.832685 → 0.8327.
    for (amount, by_hand) in [("0.5", "0.4625"), ("0.3334", "0.3084"), ("0.9002", "0.8327"), ("0.3338", "0.3088"), ("0.0002", "0.0002")] {
        let outcome = World::sound().with(|world| world.studio.prices = vec![price("Ag", amount, PriceUnit::Gram)]).recompute();
        is(&outcome, outcome.line().per_gram, by_hand);
    }
}

#[test]
fn base_metal_by_the_kilogram_and_an_alloys_own_price() {
    // 12.40 a kilogram is 0.0124 a gram; with 10 % premium 0.01364 → 0.0136.
    let world = World::sound().with(|world| {
        world.line().alloy = super::world::some("bronze-silicon");
        world.studio.prices = vec![price("bronze-silicon", "12.40", PriceUnit::Kilogram)];
    });
    let outcome = world.recompute();
    is(&outcome, outcome.line().per_gram, "0.0124");
    let outcome = world.with(|world| world.studio.money.metal_premium = said(0.10)).recompute();
    is(&outcome, outcome.line().per_gram, "0.0136");
    // A price for the alloy itself goes before its metal's.
    let outcome = World::sound().with(|world| world.studio.prices.push(price("silver-925", "1.05", PriceUnit::Gram))).recompute();
    is(&outcome, outcome.line().per_gram, "1.05");
}

#[test]
fn the_newest_price_counts() {
    let outcome = World::sound()
        .with(|world| {
            let mut old = price("Ag", "20", PriceUnit::Gram);
            old.on = Some(jiff::civil::date(2026, 2, 1));
            world.studio.prices.insert(0, old.clone());
            world.studio.prices.push(old);
        })
        .recompute();
    is(&outcome, outcome.by_rule("price.per-gram"), "0.9002");
}

#[test]
fn no_amount_ever_leaves_the_decimals() {
    let outcome = World::full().recompute();
    for line in outcome.book.figures().filter(|line| line.origin.key().starts_with("price.") || line.origin.key() == "line.metal-cost") {
        assert!(matches!(line.value, Value::Money(_)), "{}", line.origin.key());
    }
    assert_eq!(Money::ZERO, money("0"));
    let huge = World::sound()
        .with(|world| {
            world.studio.prices = vec![price("Ag", "99999999999", PriceUnit::Gram)];
            world.pattern().weighed = Some(Weighing::Net(grams("100")));
        })
        .recompute();
    assert!(huge.value(huge.line().cost).cause().is_some(), "too large to be money: no figure rather than a wrong one");
}
