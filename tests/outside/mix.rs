//! Slurry, powder and water.

use pourbook::calc::all_rules;
use pourbook::calc::rule::How;
use pourbook::job::{Flask, FlaskId, Tree, TreeId};
use pourbook::stock::{Entry, OverlayItem, Powder, Shelf};

use super::table::{Table, Within};
use super::world::{Outcome, World, said, some, weighed};

/// The table says that its water is of 0.998 g/cm³, but every one of its digits is that of 0.9977 (water at 22 °C) and a third are not
/// those of 0.998: it is met to the last digit with the one, and to 0.0008 with the other, which the shelf has.
const SHEET: &str = "trade table worked apart: volumes of powder and water add up (computed)";
const WATER_OF_THE_TABLE: f64 = 0.9977;
const WATER_OF_THE_SHELF: f64 = 0.998;

/// A flask of a size, mixed with a powder of a density at a ratio, nothing spilt, and as good as no tree in it.
fn mixed(vessel: &str, density: f64, ratio: f64, water: f64) -> Outcome {
    let mut world = World::empty();
    let shipped = Shelf::shipped().entry("powder-gypsum").unwrap();
    let mut entry = Entry::clone(shipped);
    let Entry::Powder(Powder { density_g_cm3, ratio_range, liquid_density_g_cm3, .. }) = &mut entry else { panic!("a powder") };
    (density_g_cm3.value, liquid_density_g_cm3.value) = (density, water);
    ratio_range.high = 0.6;
    world.studio.shelf = vec![OverlayItem::Replace { base_hash: shipped.hash(), entry }];
    world.job.trees = vec![Tree { id: TreeId(1), weighed: vec![weighed("wax-injection", "0.000001")], ..Tree::default() }];
    world.job.flasks = vec![Flask {
        id: FlaskId(1),
        vessel: some(vessel),
        tree: Some(TreeId(1)),
        powder: some("powder-gypsum"),
        ratio: said(ratio),
        spill_share: said(0.0),
        ..Flask::default()
    }];
    world.recompute()
}

#[test]
fn slurry_and_powder_of_the_whole_table() {
    let printed = [
        (0.36, [(1.769, 1.300), (1.806, 1.328), (1.842, 1.355)]),
        (0.38, [(1.749, 1.267), (1.785, 1.294), (1.820, 1.319)]),
        (0.40, [(1.730, 1.236), (1.765, 1.261), (1.799, 1.285)]),
        (0.42, [(1.713, 1.206), (1.746, 1.230), (1.779, 1.253)]),
        (0.45, [(1.688, 1.164), (1.720, 1.186), (1.750, 1.207)]),
        (0.50, [(1.650, 1.100), (1.679, 1.119), (1.707, 1.138)]),
    ];
    let mut table = Table::default();
    for (ratio, row) in printed {
        for (density, (slurry, powder)) in [2.45, 2.55, 2.65].into_iter().zip(row) {
            for (water, within) in [(WATER_OF_THE_TABLE, Within::Printed(3)), (WATER_OF_THE_SHELF, Within::Amount(8e-4))] {
                let outcome = mixed("flask-89x102", density, ratio, water);
                let figure = format!("at {ratio} with powder of {density} and water of {water} g/cm³");
                table.row(format!("slurry {figure}"), SHEET, slurry, outcome.number(outcome.flask().mix.slurry_density), within);
                let ours = outcome.number(outcome.by_rule("mix.powder-in-slurry"));
                table.row(format!("powder in a cm³ {figure}"), SHEET, powder, ours, within);
            }
        }
    }
    table.judge(5);
}

#[test]
fn every_flask_of_the_table() {
    let printed = [
        ("flask-51x64", 129.0, 162.0, 65.0),
        ("flask-64x64", 201.0, 254.0, 101.0),
        ("flask-64x76", 241.0, 304.0, 122.0),
        ("flask-64x102", 322.0, 406.0, 162.0),
        ("flask-76x76", 348.0, 438.0, 175.0),
        ("flask-76x102", 463.0, 584.0, 234.0),
        ("flask-89x76", 473.0, 596.0, 239.0),
        ("flask-89x102", 631.0, 795.0, 318.0),
        ("flask-89x127", 788.0, 994.0, 398.0),
        ("flask-102x102", 824.0, 1039.0, 415.0),
        ("flask-102x152", 1236.0, 1558.0, 623.0),
        ("flask-102x203", 1647.0, 2077.0, 831.0),
        ("flask-127x203", 2574.0, 3246.0, 1298.0),
        ("flask-152x203", 3707.0, 4674.0, 1870.0),
    ];
    let mut table = Table::default();
    for (vessel, volume, powder, water) in printed {
        let outcome = mixed(vessel, 2.55, 0.40, WATER_OF_THE_TABLE);
        let mix = outcome.flask().mix;
        // 3×3 in is 347.49999 cm³, which the table rounds up.
        let within = if vessel == "flask-76x76" { Within::Amount(0.500_02) } else { Within::Printed(0) };
        table.row(format!("{vessel}, cm³"), SHEET, volume, outcome.number(mix.flask_volume), within);
        let exact = outcome.number(outcome.by_rule("mix.powder"));
        table.row(format!("{vessel}, powder g before it is weighed"), SHEET, powder, exact, Within::Printed(0));
        table.row(
            format!("{vessel}, powder g, up to the gram"),
            "the same, rounded up",
            exact.ceil(),
            outcome.number(mix.powder),
            Within::Amount(1e-9),
        );
        // Water is for the powder as it is weighed out: at most 0.4 of a gram more than the table's.
        table.row(format!("{vessel}, water g"), SHEET, water, outcome.number(mix.water), Within::Amount(0.9));
        table.row(
            format!("{vessel}, water of the weighed powder"),
            "40 per 100",
            exact.ceil() * 0.4,
            outcome.number(mix.water),
            Within::Share(1e-12),
        );
    }
    table.judge(5);
}

#[test]
fn four_pounds_of_powder() {
    let rule = all_rules().into_iter().find(|rule| rule.id == "mix.water").unwrap();
    let How::Formula { call, .. } = rule.how else { panic!("a formula") };
    let mut table = Table::default();
    table.row(
        "4 lb (1814.4 g) at 0.40, water g",
        "a powder maker's technician, casters' forum, recomputed",
        725.8,
        call(&[1814.4, 0.40]),
        Within::Printed(1),
    );
    table.rejected("4 lb at 0.40, water g", "the same, printed from 1816 g", 726.4, call(&[1814.4, 0.40]), 0.5);
    table.judge(1);
}

#[test]
fn water_of_the_ordinary_and_the_fast_mix() {
    // 36 to 40 per 100: common practice, no source. Both must pass without a word from the general powder.
    let mut table = Table::default();
    let shipped = Shelf::shipped().get::<Powder>("powder-gypsum").unwrap();
    let mut plain = World::sound();
    plain.flask().ratio = None;
    let outcome = plain.recompute();
    table.row(
        "water per 100 where none is said",
        "common practice, no source",
        40.0,
        100.0 * outcome.number(outcome.flask().mix.ratio),
        Within::Amount(1e-9),
    );
    table.row(
        "water per 100, fast burnout",
        "common practice, no source",
        36.0,
        100.0 * shipped.ratio_fast.as_ref().unwrap().value,
        Within::Amount(1e-9),
    );
    for ratio in [0.36, 0.38, 0.40] {
        let outcome = World::sound().with(|world| world.flask().ratio = said(ratio)).recompute();
        assert!(outcome.findings("ratio-outside").is_empty(), "{ratio}");
    }
    table.judge(1);
}

#[test]
fn flask_that_a_caster_fills() {
    // Hand-worked: a 3×4 in flask, 76.2² π/4 · 101.6 = 463.33 cm³; less a 6 cm³ tree and a 12.8 cm³ dome, a tenth for spill: 488.98 cm³;
    // at 0.40 and 2.55: 1.26131 g/cm³ gives 616.8 g, weighed as 617 g, with 246.8 g of water.
    let mut world = World::sound();
    // 6 cm³ of wax at 0.95.
    world.tree().weighed = vec![weighed("wax-injection", "5.7")];
    let outcome = world.recompute();
    let mix = outcome.flask().mix;
    let mut table = Table::default();
    table.row("flask, cm³", "hand-worked", 463.33, outcome.number(mix.flask_volume), Within::Printed(2));
    table.row("slurry, cm³", "hand-worked", 488.98, outcome.number(mix.slurry), Within::Amount(0.02));
    table.row("powder, g", "hand-worked", 617.0, outcome.number(mix.powder), Within::Amount(1e-9));
    table.row("water, g", "hand-worked", 246.8, outcome.number(mix.water), Within::Amount(1e-9));
    table.judge(1);
}
