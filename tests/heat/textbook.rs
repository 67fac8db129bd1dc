//! Worked examples of textbooks, against their exact values rather than what was read off charts.
//!
//! J. P. Holman, *Heat Transfer*, ch. 4, data read in published companion scripts; exact values by the series.

use super::world::{convection, flask, mean, plain, run, watch};
use pourbook::calc::heat::{Fineness, Flask, Material, Surface, Surfaces, Surroundings, first_at};

const FINE: Fineness = Fineness { radial: 24, axial: 40, grading: 0.0, tolerance_k: 0.005 };

/// Holman's aluminium: k 215 W/(m·K), α 8.4e-5 m²/s, which is what its density and specific heat are taken from here.
fn aluminium() -> Material {
    plain(215.0, 2700.0, 215.0 / 8.4e-5 / 2700.0)
}

/// Aluminium from 200 °C in 70 °C with h 525: temperatures after 60 s.
fn after_a_minute(flask: &Flask, surfaces: Surfaces, probes: Vec<[f64; 2]>) -> (Vec<f64>, f64) {
    let run = run((flask, &aluminium(), 200.0), &Surroundings::steady(70.0, surfaces), &watch(probes, 60.0, 60.0), &FINE);
    let all = std::f64::consts::PI * flask.radius_m.powi(2) * flask.height_m * 215.0 / 8.4e-5 * 130.0;
    (run.probes_c.iter().map(|series| series[1]).collect(), -run.heat_j[1] / all)
}

fn check(what: &str, found: f64, exact: f64, within: f64) {
    println!("{what}: {found:.4}, exact {exact}");
    assert!((found - exact).abs() <= within, "{what}: {found}, exact {exact}");
}

#[test]
fn holman_4_1_a_steel_ball() {
    // A cylinder as high as it is wide has the ball's volume over surface. It conducts so well that it is of one temperature, as the example has it.
    let material = plain(1e4, 7800.0, 460.0);
    let surroundings = Surroundings::steady(100.0, Surfaces::all(convection(10.0)));
    let fineness = Fineness { radial: 8, axial: 8, grading: 0.0, tolerance_k: 0.005 };
    let run = run((&flask(50.0, 50.0), &material, 450.0), &surroundings, &watch(Vec::new(), 1.0, 6000.0), &fineness);
    let fallen: Vec<f64> = run.core_c.iter().map(|c| -c).collect();
    check("4.1, seconds to 150 °C", first_at(&run.times_s, &fallen, -150.0).unwrap(), 5818.0, 1.0);
}

#[test]
fn holman_4_7_a_long_cylinder() {
    let insulated = Surface::INSULATED;
    let surfaces = Surfaces { side: convection(525.0), top: insulated, bottom: insulated };
    let (c, share) = after_a_minute(&flask(50.0, 50.0), surfaces, vec![[0.0, 0.025], [0.0125, 0.025]]);
    check("4.7, axis as share", (c[0] - 70.0) / 130.0, 0.38493, 0.0001);
    check("4.7, °C at 12.5 mm", c[1], 119.67, 0.03);
    check("4.7, share of the heat", share, 0.62083, 0.0002);
}

#[test]
fn holman_4_8_a_cylinder_without_end() {
    // So long that the far end does not matter in a minute; it is insulated.
    let surfaces = Surfaces { side: convection(525.0), top: Surface::INSULATED, bottom: convection(525.0) };
    let (c, _) = after_a_minute(&flask(50.0, 500.0), surfaces, vec![[0.0, 0.1], [0.025, 0.1]]);
    check("4.8, °C on the axis", c[0], 118.19, 0.03);
    check("4.8, °C on the surface", c[1], 116.75, 0.03);
}

#[test]
fn holman_4_9_a_short_cylinder() {
    // The chart's 104.5 °C is a reading error.
    let (c, _) = after_a_minute(&flask(50.0, 100.0), Surfaces::all(convection(525.0)), vec![[0.0125, 0.00625], [0.0125, 0.09375]]);
    check("4.9, °C at 12.5 mm, 6.25 mm from the end", c[0], 108.19, 0.03);
    check("4.9, °C as far from the other end", c[1], 108.19, 0.03);
}

#[test]
fn a_steel_cylinder_in_oil() {
    // Incropera & DeWitt, short cylinder (data from memory); exact by the series: 402.746, 370.544, 362.427 and 342.862 K.
    let steel = plain(17.4, 7900.0, 526.0);
    let surroundings = Surroundings::steady(300.0, Surfaces::all(convection(500.0)));
    let probes = vec![[0.0, 0.03], [0.0, 0.06], [0.04, 0.03], [0.04, 0.06]];
    let run = run((&flask(80.0, 60.0), &steel, 600.0), &surroundings, &watch(probes, 180.0, 180.0), &FINE);
    let exact = [402.7462473, 370.5442975, 362.4271343, 342.8616952];
    for (series, exact) in run.probes_c.iter().zip(exact) {
        check("steel in oil after 3 min, K", series[1], exact, 0.05);
    }
}

#[test]
fn drying_front_takes_about_as_long_as_a_conduction_estimate() {
    // ρ_w L R²/(4 k ΔT) for the front to come to the axis of a long 102 mm flask, k 0.5, at 260 °C: 2.2 h, of 441 kg water in a m³.
    let mut wet = plain(0.5, 1240.0, 1.0);
    wet.latent =
        vec![pourbook::calc::heat::LatentEvent { from_c: 99.0, to_c: 101.0, heat_j_kg: 441.0 * 2.257e6 / 1240.0, releases_kg_kg: 0.36 }];
    let surfaces = Surfaces { side: convection(1e5), top: Surface::INSULATED, bottom: Surface::INSULATED };
    let fineness = Fineness { radial: 40, axial: 2, grading: 0.0, tolerance_k: 0.1 };
    let run = run((&flask(102.0, 60.0), &wet, 99.0), &Surroundings::steady(260.0, surfaces), &watch(Vec::new(), 30.0, 12000.0), &fineness);
    let estimate_s = 441.0 * 2.257e6 * 0.051_f64.powi(2) / (4.0 * 0.5 * (260.0 - 100.0));
    let dry_s = first_at(&run.times_s, &run.core_c, 101.0).unwrap();
    check("hours until the axis is dry", dry_s / 3600.0, estimate_s / 3600.0, 0.02 * estimate_s / 3600.0);
    assert!(mean(run.held_kg_kg[0].last().copied()) < 1e-6);
}
