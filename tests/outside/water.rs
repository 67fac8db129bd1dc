//! Densities by weighing in water.

use pourbook::calc::water_density_g_cm3;

use super::table::{Table, Within};
use super::world::{World, grams, in_water};

#[test]
fn water_at_every_temperature_of_the_table() {
    // The table of M. Tanaka et al. 2001 (Metrologia 38, 301–309), kg/m³: 15, 20 and 25 °C as it is commonly cited, the others from memory.
    let mut table = Table::default();
    for (water_c, kg_m3) in [
        (0.0, 999.8428),
        (4.0, 999.9749),
        (10.0, 999.7027),
        (15.0, 999.1026),
        (20.0, 998.2067),
        (25.0, 997.0470),
        (30.0, 995.6488),
        (40.0, 992.2152),
    ] {
        let ours = 1000.0 * water_density_g_cm3(water_c);
        table.row(format!("water at {water_c} °C, kg/m³"), "Tanaka et al. 2001", kg_m3, ours, Within::Printed(4));
    }
    // IAPWS-95 at 101.325 kPa by a general library of water and steam (iapws 1.5.5 in python), kg/m³.
    for (water_c, kg_m3) in [
        (4.0, 999.974_869),
        (10.0, 999.702_470),
        (15.0, 999.102_621),
        (20.0, 998.207_150),
        (25.0, 997.047_637),
        (30.0, 995.649_454),
        (40.0, 992.216_353),
    ] {
        let ours = 1000.0 * water_density_g_cm3(water_c);
        table.row(format!("water at {water_c} °C, kg/m³"), "IAPWS-95", kg_m3, ours, Within::Amount(0.0015));
    }
    table.judge(1);
    // An older formula of another author (G. S. Kell 1975, on the temperature scale of 1968, from memory) agrees to 0.005 kg/m³.
    for step in 0..=40 {
        let t = f64::from(step);
        let above = 999.839_52 + 16.945_176 * t - 7.987_040_1e-3 * t.powi(2) - 46.170_461e-6 * t.powi(3) + 105.563_02e-9 * t.powi(4)
            - 280.542_53e-12 * t.powi(5);
        let kell = above / (1.0 + 16.879_850e-3 * t);
        let ours = 1000.0 * water_density_g_cm3(t);
        assert!((kell - ours).abs() < 0.005, "{t} °C: {kell}, ours {ours}");
    }
    assert!(water_density_g_cm3(-0.1).is_nan() && water_density_g_cm3(40.1).is_nan() && water_density_g_cm3(f64::NAN).is_nan());
}

#[test]
fn a_block_of_resin_and_a_small_print() {
    // By hand: 10.00 g dry, sinker 20.00 g and both 21.09 g in water of 20 °C: 8.91 g of water pushed aside, so 10/8.91 × 0.998207.
    // Half a step of 0.01 g in each reading, all to the bad side: 10.005 over 8.905 (readings of sinker and both), and so on.
    let weighed = |dry: &str, both: &str| {
        let mut world = World::sound();
        world.studio.balance_step = Some(grams("0.01"));
        world.studio.water_weighings = vec![in_water("resin-castable", dry, both)];
        let outcome = world.recompute();
        let found = outcome.report.weighings[0];
        [found.density, found.within, found.share].map(|id| outcome.number(id))
    };
    let worst = |dry: f64, both: f64| {
        let density = |dry: f64, sinker: f64, both: f64| dry * 0.998_206_7 / (dry + sinker - both);
        let signs = [-0.005, 0.005];
        let mut most = 0.0_f64;
        for a in signs {
            for b in signs {
                for c in signs {
                    most = most.max((density(dry + a, 20.0 + b, both + c) - density(dry, 20.0, both)).abs());
                }
            }
        }
        (density(dry, 20.0, both), most)
    };
    let mut table = Table::default();
    for (dry, both) in [("10", "21.09"), ("1", "20.11")] {
        let [density, within, share] = weighed(dry, both);
        let (by_hand, most) = worst(dry.parse().unwrap(), both.parse().unwrap());
        table.row(format!("{dry} g of resin, g/cm³"), "Archimedes, by hand", by_hand, density, Within::Share(1e-7));
        // The rule goes by slopes, the hand by the worst of eight corners: they part by the square of a step.
        table.row(format!("{dry} g of resin, ± g/cm³"), "the worst of eight corners", most, within, Within::Share(0.02));
        assert_eq!(share > 0.01, dry == "1", "a block is sure to 1 %, a print of 1 g is not: {share}");
    }
    table.judge(1);
}
