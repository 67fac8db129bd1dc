//! Fineness of mixtures, against exact fractions.

use pourbook::job::{Lot, LotId, Receipt};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;

use super::table::{Table, Within};
use super::world::{Outcome, World, draw, grams, said, some};

/// A number or a fraction such as `25/2`.
fn fraction(text: &str) -> f64 {
    match text.split_once('/') {
        Some((top, bottom)) => top.parse::<f64>().unwrap() / bottom.parse::<f64>().unwrap(),
        None => text.parse().unwrap(),
    }
}

/// Parts per thousand of `14k` or `585`.
fn permille(text: &str) -> f64 {
    text.strip_suffix('k').map_or_else(|| text.parse().unwrap(), |karat| fraction(karat) * 1000.0 / 24.0)
}

/// A melt of lots: (grams, parts per thousand).
fn melt(alloy: &str, lots: &[(f64, f64)]) -> Outcome {
    let mut world = World::sound();
    world.line().alloy = some(alloy);
    let metal = if alloy.starts_with("gold") { "Au" } else { "Ag" };
    world.studio.lots.clear();
    world.melt().charge.clear();
    for (index, (grams, fineness)) in lots.iter().enumerate() {
        let label = format!("L-{index}");
        world.studio.lots.push(Lot {
            id: LotId(label.clone()),
            fineness_permille: said(*fineness),
            metal: metal.to_owned(),
            ..Lot::default()
        });
        let grams = Decimal::from_f64(*grams).unwrap().round_dp(6).to_string();
        world.melt().charge.push(draw(&label, &grams));
    }
    world.recompute()
}

fn fineness(alloy: &str, lots: &[(f64, f64)]) -> f64 {
    let outcome = melt(alloy, lots);
    outcome.number(outcome.report.melts[0].fineness.unwrap())
}

const GOLD: &str = "gold-14k-yellow";

#[test]
fn exact_karat_problems() {
    let text = std::fs::read_to_string("tests/outside/metals/karat_exact.json").unwrap();
    let problems: serde_json::Value = serde_json::from_str(&text).unwrap();
    let mut table = Table::default();
    let mut seen = 0;
    for problem in problems.as_array().unwrap() {
        let (kind, question) = (problem["kind"].as_str().unwrap(), problem["question"].as_str().unwrap());
        let exact = |key: &str| fraction(problem["exact"][key].as_str().unwrap());
        let words: Vec<&str> = question.split_whitespace().collect();
        // "10 g of 14k to 18k": what is there, and what it is to become.
        let from_to = || ((fraction(words[0]), permille(words[3])), permille(words[5]));
        let (lots, target) = match kind {
            "raise karat with fine gold (24 k = 1)" | "raise fineness with fine gold 1000/1000" => {
                let (lot, target) = from_to();
                (vec![lot, (exact("fine_gold_g"), 1000.0)], target)
            }
            "raise fineness with 999.9 gold" => {
                let (lot, target) = from_to();
                (vec![lot, (exact("fine_gold_g"), 999.9)], target)
            }
            "lower karat with gold-free alloy" => {
                let (lot, target) = from_to();
                (vec![lot, (exact("alloy_g"), 0.0)], target)
            }
            "blend two scraps" if question.contains("18k") => (vec![(12.0, 375.0), (exact("x18k_g"), 750.0)], permille("14k")),
            "blend two scraps" => (vec![(30.0, 750.0), (exact("x375_g"), 375.0)], 585.0),
            "three lots" => (vec![(5.0, permille("9k")), (7.0, permille("14k")), (11.0, permille("18k"))], 1000.0 * exact("fineness")),
            "make up 18k 750 from fine gold, Ag:Cu = 1:1" => {
                (vec![(exact("gold_g"), 1000.0), (exact("silver_g"), 0.0), (exact("copper_g"), 0.0)], 750.0)
            }
            "make up 925 silver" => (vec![(exact("silver_g"), 1000.0), (exact("copper_g"), 0.0)], 925.0),
            "raise 800 silver to 925 with fine silver" => (vec![(50.0, 800.0), (exact("fine_silver_g"), 1000.0)], 925.0),
            _ => continue,
        };
        seen += 1;
        // Grams are kept to a millionth, so a third of a gram is off by less than that.
        table.row(format!("{kind}: {question}, ‰"), "metals/karat_exact.json", target, fineness(GOLD, &lots), Within::Amount(5e-5));
    }
    assert_eq!(seen, 20, "problems about fineness");
    let outcome = melt(GOLD, &[(23.7, 585.0)]);
    table.row(
        "fine gold in 23.7 g of 585, g",
        "27729/2000",
        13.8645,
        outcome.number(outcome.by_rule("melt.fine-in-draw")),
        Within::Amount(1e-12),
    );
    table.judge(1);
}

#[test]
fn fourteen_karat_is_not_585() {
    // 20 g of 10 k and 8 g of fine gold are 14/24 = 583.33 ‰: right as a karat, under a mark of 585, which needs 8.112 g.
    let ten = permille("10k");
    let mut table = Table::default();
    table.row("20 g 10 k + 8 g fine, ‰", "14/24", 583.333, fineness(GOLD, &[(20.0, ten), (8.0, 1000.0)]), Within::Printed(3));
    table.row(
        "25 dwt 14 k + 10 dwt alloy, karat",
        "trade article on reducing karats",
        10.0,
        fineness(GOLD, &[(25.0, permille("14k")), (10.0, 0.0)]) * 0.024,
        Within::Amount(1e-9),
    );
    let short = melt(GOLD, &[(20.0, ten), (8.0, 1000.0)]);
    assert_eq!(short.findings("under-mark").len(), 1);
    assert!(short.findings("under-mark")[0].stands());
    let holds = melt(GOLD, &[(20.0, ten), (8.1125, 1000.0)]);
    assert!(holds.findings("under-mark").is_empty());
    table.judge(1);
}

#[test]
fn a_published_reducing_factor_is_under_the_mark() {
    // 24 k to 9 k: total 1 + 1.6667 gives 375 ‰; a published 1.700 gives 370.4 ‰ and another's 1.677 gives 373.6.
    let mut table = Table::default();
    let nine = |factor: f64| fineness("gold-9k-yellow", &[(1000.0, 1000.0), (factor * 1000.0, 0.0)]);
    table.row("24 k with 1.6667 of alloy, ‰", "5/3", 375.0, nine(5.0 / 3.0), Within::Amount(1e-6));
    table.row("24 k with 1.700 of alloy, ‰", "published factor, under the mark", 370.4, nine(1.700), Within::Printed(1));
    table.row("24 k with 1.677 of alloy, ‰", "another's, under the mark", 373.6, nine(1.677), Within::Printed(1));
    for (factor, under) in [(1.666, false), (1.677, true), (1.700, true)] {
        let found = melt("gold-9k-yellow", &[(1000.0, 1000.0), (factor * 1000.0, 0.0)]);
        assert_eq!(!found.findings("under-mark").is_empty(), under, "{factor}");
    }
    table.judge(1);
}

/// ISO 9202:2019 (by its public summary) counts fineness in thousandths by mass: 18 karat is 750, 22 karat 916 of them.
#[test]
fn a_client_s_metal_holds_its_thousandths() {
    let mut world = World::sound();
    world.studio.lots.clear();
    let brought = |label: &str, weights: &[&str], fineness| Lot {
        id: LotId(label.to_owned()),
        owner: "C".to_owned(),
        metal: "Au".to_owned(),
        fineness_permille: said(fineness),
        receipts: weights.iter().map(|weight| Receipt { grams: grams(weight), ..Receipt::default() }).collect(),
        ..Lot::default()
    };
    world.studio.lots.push(brought("C-1", &["10"], 750.0));
    world.studio.lots.push(brought("C-2", &["2.5", "0.75"], 916.0));
    let outcome = world.recompute();
    let fine: Vec<f64> = outcome.report.client_lots.iter().map(|lot| outcome.number(lot.fine.unwrap())).collect();
    assert_eq!(fine, [7.5, 2.977]);
    assert_eq!(outcome.report.client_lots[1].owner, "C");
}
