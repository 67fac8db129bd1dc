//! Barometer, water's vapour pressure, and the lowest reading of a gauge.

use pourbook::calc::site::saturation_kpa;
use pourbook::job::{Flask, FlaskId};
use pourbook::quantity::Kind;

use super::table::{Csv, Table, Within};
use super::world::{Outcome, World, said};

/// A studio at a height with water of a temperature, and a flask that asks for the gauge.
fn at(altitude_m: f64, water_c: f64) -> Outcome {
    let mut world = World::empty();
    world.job.site.altitude_m = said(altitude_m);
    world.job.site.water_c = said(water_c);
    world.job.flasks = vec![Flask { id: FlaskId(1), ..Flask::default() }];
    world.recompute()
}

/// The table has the exponent g·M/(R·L) = 5.25587611…, the program the standard's 5.255876: a hundred-millionth at 4000 m.
const EXPONENT: Within = Within::Share(2e-8);

fn in_hg(kpa: f64) -> f64 {
    Kind::Vacuum.unit_named("inHg").unwrap().from_base(kpa)
}

#[test]
fn barometer_at_every_height() {
    let mut table = Table::default();
    for row in Csv::read("vapour/isa.csv").rows() {
        let altitude = row.number("altitude_m");
        let outcome = at(altitude, 20.0);
        let kpa = outcome.number(outcome.report.site.barometer);
        table.row(format!("barometer at {altitude} m, kPa"), "ISO 2533, made by vapour/make_vapour.py", row.number("p_kPa"), kpa, EXPONENT);
        table.row(
            format!("the same in inHg, {altitude} m"),
            "the same, with the conventional inch",
            row.number("p_inHg"),
            in_hg(kpa),
            Within::Share(2e-7),
        );
    }
    for (altitude, pa) in [(1000.0, 89874.6), (2000.0, 79495.2), (3000.0, 70108.5), (4000.0, 61640.2)] {
        let outcome = at(altitude, 20.0);
        let ours = outcome.number(outcome.report.site.barometer) * 1000.0;
        table.row(format!("barometer at {altitude} m, Pa"), "table of ISO 2533, from memory", pa, ours, Within::Printed(1));
    }
    table.judge(10);
}

#[test]
fn saturation_at_every_degree() {
    let mut table = Table::default();
    for row in Csv::read("vapour/psat.csv").rows() {
        let water = row.number("t_C");
        let outcome = at(0.0, water);
        let pa = outcome.number(outcome.by_rule("vacuum.saturation")) * 1000.0;
        let figure = format!("saturation at {water} °C, Pa");
        table.row(figure.clone(), "IAPWS-95 by another library", row.number("p_IAPWS95_CoolProp_Pa"), pa, Within::Share(1e-4));
        table.row(figure, "IAPWS-IF97 by another library, printed to 0.0001 Pa", row.number("p_IF97_iapws_Pa"), pa, Within::Printed(4));
    }
    // Verification values of the formulation itself, table 35, printed to nine digits (from memory).
    for (kelvin, pa) in [(300.0, 3536.58941), (500.0, 2_638_897.76), (600.0, 12_344_314.6)] {
        let ours = saturation_kpa(kelvin - 273.15) * 1000.0;
        table.row(format!("saturation at {kelvin} K, Pa"), "IAPWS-IF97 table 35, from memory", pa, ours, Within::Share(2e-9));
    }
    assert!(saturation_kpa(-0.1).is_nan() && saturation_kpa(370.1).is_nan(), "outside the equation there is no number");
    table.judge(10);
}

#[test]
fn gauge_at_every_height_and_temperature() {
    let mut table = Table::default();
    for row in Csv::read("vapour/gauge_limit.csv").rows() {
        let (altitude, water) = (row.number("altitude_m"), row.number("slurry_temp_C"));
        let outcome = at(altitude, water);
        let kpa = outcome.number(outcome.flask().mix.gauge);
        let figure = format!("gauge at {altitude} m, {water} °C");
        // The table takes water from IAPWS-95: within 1e-4 of its pressure, and the last printed digit.
        let off = 1e-4 * row.number("p_sat_kPa") + 3e-6;
        table.row(format!("{figure}, kPa"), "vapour/make_vapour.py", -row.number("lowest_gauge_kPa"), kpa, Within::Amount(off));
        table.row(
            format!("{figure}, inHg"),
            "vapour/make_vapour.py",
            -row.number("lowest_gauge_inHg"),
            in_hg(kpa),
            Within::Amount(off / 3.386 + 5e-6),
        );
    }
    table.judge(40);
}

#[test]
fn what_casters_look_up() {
    let mut table = Table::default();
    for (altitude, inches) in [(0.0, 29.14), (1609.0, 23.86)] {
        let outcome = at(altitude, 22.0);
        let ours = in_hg(outcome.number(outcome.flask().mix.gauge));
        table.row(
            format!("22 °C water boils at inHg, {altitude} m"),
            "ISO 2533 less IAPWS-IF97, worked apart",
            inches,
            ours,
            Within::Printed(2),
        );
    }
    // A barometer that was read goes before the height.
    let mut world = World::empty();
    world.job.site.altitude_m = said(1609.0);
    world.job.site.barometer_kpa = said(101.325);
    world.job.site.water_c = said(22.0);
    world.job.flasks = vec![Flask { id: FlaskId(1), ..Flask::default() }];
    let outcome = world.recompute();
    table.row(
        "the same with a barometer read",
        "the reading rules",
        29.14,
        in_hg(outcome.number(outcome.flask().mix.gauge)),
        Within::Printed(2),
    );
    table.judge(1);
}
