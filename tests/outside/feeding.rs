//! Freezing, feeding, filling and spinning, by the rules themselves, against textbooks' examples and tables made elsewhere.

use pourbook::calc::all_rules;
use pourbook::calc::rule::How;

use super::table::{Table, Within};
use super::world::{Outcome, World, said, spun};

/// A rule's own function at some terms.
fn by(id: &str, terms: &[f64]) -> f64 {
    let rule = all_rules().into_iter().find(|rule| rule.id == id).unwrap_or_else(|| panic!("no rule {id}"));
    assert_eq!(rule.terms.len(), terms.len(), "{id}");
    let (How::Formula { call, .. } | How::Lookup { call, .. }) = rule.how else { panic!("{id} is no formula") };
    call(terms)
}

fn physics() -> serde_json::Value {
    serde_json::from_str(&std::fs::read_to_string("tests/outside/physics/physics.json").unwrap()).unwrap()
}

/// Four digits.
const FOUR: Within = Within::Share(5e-5);
const GHOSH_MALLIK: &str = "A. Ghosh, A. K. Mallik, Manufacturing Science, ex. 2.5 (inputs read, answers worked from them)";
const GROOVER: &str = "M. P. Groover, casting chapter (from memory)";

#[test]
fn iron_in_sand_flat_and_round() {
    // Iron at 1540 °C, sand at 28 °C, no superheat: L 272 kJ/kg, 7850 kg/m³; sand 1.17 kJ/(kg·K), 0.8655 W/(m·K), 1600 kg/m³.
    let heat = by("freeze.heat", &[272.0, 0.8, 0.0]);
    let fall = by("freeze.fall", &[1540.0, 28.0]);
    let lambda = by("freeze.lambda", &[1.6, 1.17, fall, 7.85, heat]);
    let diffusivity = by("freeze.mould-diffusivity", &[0.8655, 1.6, 1.17]);
    let (flat, round) = (by("freeze.beta-flat", &[lambda]), by("freeze.beta-round", &[lambda]));
    let mut table = Table::default();
    table.row("λ", GHOSH_MALLIK, 1.3256, lambda, Within::Printed(4));
    table.row("β of the slab", GHOSH_MALLIK, 1.4958, flat, Within::Printed(4));
    table.row("β of the ball", GHOSH_MALLIK, 1.7485, round, Within::Printed(4));
    table.row("α of sand, mm²/s", GHOSH_MALLIK, 0.462, diffusivity, Within::Printed(3));
    let hours = |modulus: f64, beta: f64| by("freeze.time", &[modulus, beta, diffusivity]) / 3600.0;
    let ball = by("freeze.ball-modulus", &[100.0]);
    table.row("slab of 100 mm, h", GHOSH_MALLIK, 0.6713, hours(by("freeze.wall-modulus", &[100.0]), flat), Within::Printed(4));
    table.row("ball of 100 mm, h", GHOSH_MALLIK, 0.05459, hours(ball, round), Within::Printed(5));
    // The book's own answer is cut off after the fourth decimal.
    table.row("ball of 100 mm as it is printed, h", GHOSH_MALLIK, 0.0545, hours(ball, round), Within::Amount(1e-4));
    table.row("ball of 100 mm as if it were flat, h", GHOSH_MALLIK, 0.0746, hours(ball, flat), Within::Printed(4));
    // The curvature term is solved for, not approximated: β = λ(2/√π + 1/(3β)).
    let again = lambda * (2.0 / std::f64::consts::PI.sqrt() + 1.0 / (3.0 * round));
    table.row("β of the ball, put back into its own equation", GHOSH_MALLIK, round, again, Within::Share(1e-12));
    table.judge(1);
}

#[test]
fn the_flat_rule_is_the_expanded_form_of_chvorinovs() {
    // t = [ρ(L + cΔT)/(1.128·√(kρc)·ΔT_mould)]²·(V/A)² in SI, with superheat, in a hot mould.
    let (rho, latent, cp, over, k, mould, mould_cp, fall, modulus) = (9210.0, 118e3, 324.0, 118.0, 0.5, 1261.0, 1110.0, 340.0, 0.75e-3);
    let source = "lecture on feeder design, expanded form of N. Chvorinov's rule (read)";
    let root: f64 = k * mould * mould_cp;
    let term: f64 = rho * (latent + cp * over) / (1.128 * root.sqrt() * fall);
    let heat = by("freeze.heat", &[118.0, 0.324, over]);
    let lambda = by("freeze.lambda", &[1.261, 1.11, fall, 9.21, heat]);
    let ours = by("freeze.time", &[0.75, by("freeze.beta-flat", &[lambda]), by("freeze.mould-diffusivity", &[k, 1.261, 1.11])]);
    let mut table = Table::default();
    // Its 1.128 is 2/√π, 1.12838, rounded: 0.07 % on a square.
    table.row("a wall of 1.5 mm in silver, s", source, term * term * modulus * modulus, ours, Within::Share(7e-4));
    table.judge(1);
    assert!(by("freeze.heat", &[118.0, 0.324, -30.0]) == 118.0, "metal that is colder gives off no less than its latent heat");
}

/// Freezing time in min by a mould constant in min/cm², for a body in cm³ and cm².
fn minutes(constant: f64, volume_cm3: f64, area_cm2: f64) -> f64 {
    let modulus = by("pattern.modulus", &[volume_cm3, area_cm2 * 100.0]);
    // β 1 and a diffusivity of 1/C mm²/min: the rule gives C·M².
    by("freeze.time", &[modulus, 1.0, 100.0 / constant])
}

#[test]
fn bodies_by_their_modulus() {
    use std::f64::consts::PI;
    let mut table = Table::default();
    let kalpakjian = "S. Kalpakjian, Manufacturing Processes, ex. 10.1 (answers from memory, 0.043, 0.028, 0.033; recomputed)";
    let sphere = (3.0 / (4.0 * PI)).cbrt();
    let cylinder = (4.0 / PI).cbrt();
    table.row("ball of 1 cm³", kalpakjian, 0.0428, minutes(1.0, 1.0, 4.0 * PI * sphere * sphere), Within::Printed(4));
    table.row("cube of 1 cm³", kalpakjian, 0.0278, minutes(1.0, 1.0, 6.0), Within::Printed(4));
    table.row("cylinder of 1 cm³, h = d", kalpakjian, 0.0326, minutes(1.0, 1.0, 1.5 * PI * cylinder * cylinder), Within::Printed(4));
    let question = "M. P. Groover, casting chapter (question read, answer worked)";
    for (body, volume, area) in
        [("ball Ø10", PI / 6.0 * 1000.0, PI * 100.0), ("cylinder 10×10", PI / 4.0 * 1000.0, 1.5 * PI * 100.0), ("cube 10", 1000.0, 600.0)]
    {
        table.row(format!("{body} cm at 3.5 min/cm², min"), question, 9.72, minutes(3.5, volume, area), Within::Printed(2));
    }
    let plate = minutes(4.0, 600.0, 2.0 * (300.0 + 60.0 + 20.0));
    table.row("plate 30×10×2 cm at 4 min/cm², min", GROOVER, 2.49, plate, Within::Printed(2));
    table.judge(1);
}

#[test]
fn the_riser_of_a_plate() {
    // A plate of 7.5×12.5×2 cm is solid after 1.6 min; the riser, as high as wide, shall be after 2.0: times go with the square.
    let plate = by("pattern.modulus", &[187.5, 26_750.0]);
    let needed = by("feed.modulus-needed", &[(2.0_f64 / 1.6).sqrt(), plate]);
    let mm = by("feed.lump-diameter", &[needed]);
    let json = physics();
    let design = &json["riser_design"];
    let mut table = Table::default();
    table.row("modulus of the plate, mm", "physics/make_physics.py", design["V_over_A_mm"].as_f64().unwrap(), plate, Within::Share(1e-8));
    table.row("riser, D = H, mm", "physics/make_physics.py", design["D_mm"].as_f64().unwrap(), mm, Within::Share(1e-8));
    table.row("riser, D = H, cm", GROOVER, 4.70, mm / 10.0, Within::Printed(2));
    // A rod of modulus M is 4 M thick; a button as high as wide 6 M.
    table.row(
        "rod of that modulus, mm",
        "closed form: V/A of a long rod is d/4",
        needed,
        by("feed.rod-modulus", &[by("feed.rod-needed", &[needed])]),
        FOUR,
    );
    let button = by("feed.lump-volume", &[mm]);
    let area = 1.5 * std::f64::consts::PI * mm * mm;
    table.row("button of that modulus", "closed form: V/A of a cylinder, h = d", needed, by("pattern.modulus", &[button, area]), FOUR);
    table.judge(1);
}

#[test]
fn filling_through_a_choke() {
    let json = physics();
    let mut table = Table::default();
    let gravity = 9.80665;
    // A liquid of 1 g/cm³: the density cancels.
    let speed = |discharge: f64, gravity: f64, mm: f64| by("fill.velocity", &[discharge, by("fill.head", &[1.0, gravity, mm]), 1.0]);
    let sprue = &json["sprue_fill_constant_head"];
    let made = "physics/make_physics.py";
    let v = speed(1.0, gravity, 200.0);
    table.row("sprue of 20 cm, cm/s", made, sprue["velocity_cm_s"].as_f64().unwrap(), 100.0 * v, Within::Share(1e-8));
    table.row(
        "1560 cm³ through 2.5 cm², s",
        made,
        sprue["fill_time_s"].as_f64().unwrap(),
        by("fill.time", &[1560.0, 250.0, v]),
        Within::Share(1e-8),
    );
    table.row("1560 cm³ through 2.5 cm², s", GROOVER, 3.15, by("fill.time", &[1560.0, 250.0, speed(1.0, 9.81, 200.0)]), Within::Printed(2));
    let homework = "homework answer, downsprue of 175 mm (read)";
    let v = speed(1.0, 9.81, 175.0);
    table.row("sprue of 175 mm, m/s", homework, 1.853, v, Within::Printed(3));
    table.row("1376 cm³ through 444 mm², s", homework, 1.67, by("fill.time", &[1376.0, 444.0, v]), Within::Printed(2));
    let section = by("fill.rod-section", &[10.0, 1.0]);
    let second = by("fill.time", &[1.0, section, speed(1.0, 9.81, 250.0)]);
    table.row("sprue Ø10 of 250 mm, mm³/s", "homework answer, sprue 10 mm × 250 mm (read)", 1.739e5, 1000.0 / second, Within::Amount(50.0));
    let gates = "A. Ghosh, A. K. Mallik, Manufacturing Science, ex. 2.1 (read in full)";
    let (start, end) = (speed(1.0, 9.81, 150.0), speed(1.0, 9.81, 0.0));
    table.row("50×25×15 cm through 5 cm², top gate, s", gates, 21.86, by("fill.time", &[18_750.0, 500.0, start]), Within::Printed(2));
    let mean = by("fill.mean-velocity", &[start, end]);
    table.row("the same, bottom gate, s", gates, 43.72, by("fill.time", &[18_750.0, 500.0, mean]), Within::Printed(2));
    // Head 25 cm, mould 15 cm high, fifty times as wide as its gate; by formula and by quadrature.
    let both = &json["bottom_vs_top_gating"];
    let (start, end) = (speed(1.0, gravity, 250.0), speed(1.0, gravity, 100.0));
    let time = |v: f64| by("fill.time", &[50.0 * 0.15, 1.0, v]);
    table.row("top gate, s", made, both["top_gate_s"].as_f64().unwrap(), time(start), Within::Share(1e-8));
    let mean = by("fill.mean-velocity", &[start, end]);
    table.row("bottom gate, s", made, both["bottom_gate_by_quadrature_s"].as_f64().unwrap(), time(mean), Within::Share(1e-8));
    for ring in ["ring_fill_Cd_1.0", "ring_fill_Cd_0.7"] {
        let ring = &json[ring];
        let number = |key: &str| ring[key].as_f64().unwrap();
        let v = speed(number("Cd"), gravity, number("head_mm"));
        let choke = by("fill.rod-section", &[number("sprue_diameter_mm"), 1.0]);
        let ours = by("fill.time", &[number("mass_g") / number("rho_g_cm3"), choke, v]);
        table.row("12 g of silver through Ø2.5, s", made, number("fill_time_s"), ours, Within::Share(1e-8));
    }
    table.judge(1);
}

#[test]
fn what_drives_the_metal_and_what_holds_it_back() {
    let json = physics();
    let mut table = Table::default();
    let made = "physics/make_physics.py";
    let cases = |key: &str| json[key]["cases"].as_array().unwrap().clone();
    for case in cases("static_head") {
        let number = |key: &str| case[key].as_f64().unwrap();
        let ours = by("fill.head", &[number("rho_g_cm3"), 9.80665, number("head_mm")]);
        table.row("head, kPa", made, number("pressure_kPa"), ours, Within::Share(1e-8));
    }
    for case in cases("vacuum_assist") {
        let number = |key: &str| case[key].as_f64().unwrap();
        let head = by("fill.head", &[number("rho_g_cm3"), 9.80665, number("head_mm")]);
        let pressure = by("fill.pressure", &[head, by("fill.vacuum", &[number("gauge_vacuum_kPa"), 101.325, 1.0])]);
        table.row("head and vacuum, kPa", made, number("driving_pressure_kPa"), pressure, Within::Share(1e-8));
        let ours = by("fill.velocity", &[1.0, pressure, number("rho_g_cm3")]);
        table.row("speed under vacuum, m/s", made, number("ideal_velocity_m_s"), ours, Within::Share(1e-8));
    }
    for case in cases("centrifugal_pressure") {
        let number = |key: &str| case[key].as_f64().unwrap();
        let ours = by("fill.spin-pressure", &[number("rho_g_cm3"), number("rpm"), number("r2_mm"), number("r1_mm")]);
        table.row("spin, kPa", made, number("pressure_kPa"), ours, Within::Share(1e-8));
    }
    for case in cases("capillary") {
        let number = |key: &str| case[key].as_f64().unwrap();
        let ours = by("fill.detail-pressure", &[number("gamma_N_m"), number("radius_mm")]);
        table.row("capillary, kPa", made, number("pressure_kPa"), ours, Within::Share(1e-8));
        let back = by("fill.detail", &[number("gamma_N_m"), number("pressure_kPa")]);
        table.row("radius of that pressure, mm", made, number("radius_mm"), back, Within::Share(1e-8));
    }
    // The table of the trade's own notes: silver 925, 18 karat, silicon bronze, platinum; r 0.12 m, R 0.25 m.
    let trade = "table worked apart from the program (computed; densities and surface tensions from memory)";
    let metals = [(9.1, 216.0, 864.0, 8.9), (13.5, 320.0, 1282.0, 13.2), (7.6, 180.0, 722.0, 7.5), (19.0, 451.0, 1804.0, 18.6)];
    for (density, at_300, at_600, head) in metals {
        for (rpm, kpa) in [(300.0, at_300), (600.0, at_600)] {
            let ours = by("fill.spin-pressure", &[density, rpm, 250.0, 120.0]);
            table.row(format!("{density} g/cm³ at {rpm} rpm, kPa"), trade, kpa, ours, Within::Printed(0));
        }
        table.row(format!("100 mm of {density} g/cm³, kPa"), trade, head, by("fill.head", &[density, 9.80665, 100.0]), Within::Printed(1));
    }
    // Printed to the digits it has: 12, 14.7, 17.3, 24 and 3.6, 4.4, 5.2, 7.2 kPa.
    for (tension, fine, coarse) in [(0.9, 12.0, 3.6), (1.1, 14.7, 4.4), (1.3, 17.3, 5.2), (1.8, 24.0, 7.2)] {
        for (radius, kpa) in [(0.15, fine), (0.5, coarse)] {
            let ours = by("fill.detail-pressure", &[tension, radius]);
            table.row(format!("{tension} N/m into {radius} mm, kPa"), trade, kpa, ours, Within::Printed(1));
        }
    }
    table.row(
        "1.1 N/m into 0.15 mm, kPa, four digits",
        "2γ/r by hand",
        14.67,
        by("fill.detail-pressure", &[1.1, 0.15]),
        Within::Printed(2),
    );
    table.judge(1);
}

#[test]
fn the_arm_is_balanced_with_its_load() {
    // By hand: a flask of 1000 g at 230 mm and its cradle of 250 g, a crucible of 180 g and 80 g of metal at 110 mm; counterweight at 200 mm:
    // (1250 × 230 + 260 × 110)/200 = 1580.5 g.
    let carried = [(1000.0, 230.0), (250.0, 230.0), (180.0, 110.0), (80.0, 110.0)];
    let sum: f64 = carried.iter().map(|(mass, radius)| by("spin.at-counterweight", &[*mass, *radius, 200.0])).sum();
    let mut table = Table::default();
    let hand = "Σ m·r the same on both sides, by hand (the rule: common practice, no source)";
    table.row("counterweight, g", hand, 1580.5, sum, Within::Share(1e-12));
    // The same through a job: whatever flask and charge come to, the sum of m·r is the counterweight's.
    let outcome: Outcome = World::sound()
        .with(|w| {
            spun(w, 0);
            w.flask().spin.loaded = Some(super::world::grams("1000"));
            w.flask().spin.counterweight = None;
            w.flask().spin.rpm = said(450.0);
        })
        .recompute();
    let charge = outcome.number(outcome.flask().metal.on_balance);
    let spin = outcome.flask().spin.unwrap();
    let by_hand = (1250.0 * 230.0 + (180.0 + charge) * 110.0) / 200.0;
    table.row("counterweight of a job, g", hand, by_hand, outcome.number(spin.counterweight), Within::Share(1e-12));
    // Silver 925 of 9.21 g/cm³ at 450 rpm between 120 and 250 mm.
    let omega: f64 = 450.0 * std::f64::consts::TAU / 60.0;
    let kpa = 0.5 * 9210.0 * omega * omega * (0.0625 - 0.0144) / 1000.0;
    table.row(
        "pressure of a job, kPa",
        "½ρω²(R² − r²) in SI, by hand",
        kpa,
        outcome.number(outcome.flask().fill.pressure),
        Within::Share(1e-12),
    );
    table.judge(1);
}
