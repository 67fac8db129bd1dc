//! Numbers that make no sense, and numbers that make little: an error or an end, never a panic.

use super::world::{Lot, convection, flask, investment, kiln, plain, watch};
use pourbook::calc::heat::{
    Fineness, Flask, HeatError, LatentEvent, Material, Phase, Shell, Surface, Surfaces, Surroundings, Watch, first_at, run,
};

fn tried(flask: &Flask, material: &Material, start_c: f64, surroundings: &Surroundings, watch: &Watch, fineness: &Fineness) -> HeatError {
    run((flask, material, start_c), surroundings, watch, fineness, &mut || false).unwrap_err()
}

#[test]
fn sizes_and_tables() {
    let (good, kiln, hour) = (flask(76.0, 100.0), kiln(&[[0.0, 20.0], [1.0, 200.0]], convection(25.0)), watch(Vec::new(), 60.0, 3600.0));
    let bad_flask = |flask: Flask| tried(&flask, &investment(), 20.0, &kiln, &hour, &Fineness::PLAN);
    for bad in [f64::NAN, f64::INFINITY, -f64::INFINITY, 0.0, -0.05, 2.5] {
        let error = bad_flask(Flask { radius_m: bad, ..good });
        assert!(matches!(error, HeatError::OutOfRange { what, most: 2.0, .. } if what.contains("Radius")), "{error}");
        let error = bad_flask(Flask { height_m: bad, ..good });
        assert!(matches!(error, HeatError::OutOfRange { what, .. } if what.contains("Height")), "{error}");
        let shell = Shell { capacity_j_m2_k: 5000.0, contact_w_m2_k: if bad == 0.0 || bad == 2.5 { -1.0 } else { bad } };
        assert!(matches!(bad_flask(Flask { shell: Some(shell), ..good }), HeatError::OutOfRange { .. }));
    }
    let bad = |change: &dyn Fn(&mut Material)| {
        let mut material = investment();
        change(&mut material);
        tried(&good, &material, 20.0, &kiln, &hour, &Fineness::PLAN)
    };
    assert!(matches!(bad(&|m| m.density_kg_m3 = 0.0), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|m| m.conductivity.clear()), HeatError::Empty { .. }));
    assert!(matches!(bad(&|m| m.conductivity[1][1] = f64::NAN), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|m| m.conductivity[1][1] = -0.5), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|m| m.conductivity.swap(1, 2)), HeatError::Unsorted { .. }));
    assert!(matches!(bad(&|m| m.specific_heat[1][0] = 20.0), HeatError::Unsorted { .. }));
    assert!(matches!(bad(&|m| m.conductivity_dry = Some(Vec::new())), HeatError::Empty { .. }));
    assert!(matches!(bad(&|m| m.specific_heat = vec![[0.0, 1.0]; 5000]), HeatError::TooMany { .. }));
    assert!(matches!(bad(&|m| m.latent[0].to_c = 90.0), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|m| m.latent[0].heat_j_kg = f64::INFINITY), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|m| m.latent = vec![m.latent[0]; 50]), HeatError::TooMany { .. }));
    assert!(matches!(tried(&good, &investment(), f64::NAN, &kiln, &hour, &Fineness::PLAN), HeatError::OutOfRange { .. }));
}

#[test]
fn schedules_and_watches() {
    let (good, material, hour) = (flask(76.0, 100.0), investment(), watch(Vec::new(), 60.0, 3600.0));
    let fine = kiln(&[[0.0, 20.0], [1.0, 200.0]], convection(25.0));
    let bad = |change: &dyn Fn(&mut Surroundings)| {
        let mut surroundings = fine.clone();
        change(&mut surroundings);
        tried(&good, &material, 20.0, &surroundings, &hour, &Fineness::PLAN)
    };
    assert!(matches!(bad(&|s| s.temperature.clear()), HeatError::Empty { .. }));
    assert!(matches!(bad(&|s| s.phases.clear()), HeatError::Empty { .. }));
    assert!(matches!(bad(&|s| s.temperature.swap(0, 1)), HeatError::BackInTime { .. }));
    assert!(matches!(bad(&|s| s.temperature[1][1] = f64::NAN), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|s| s.temperature[1][0] = f64::NAN), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|s| s.phases.push(s.phases[0])), HeatError::BackInTime { .. }));
    assert!(matches!(bad(&|s| s.phases[0].surfaces.top.emissivity = 1.5), HeatError::OutOfRange { .. }));
    assert!(matches!(bad(&|s| s.phases[0].surfaces.side.h_w_m2_k = -1.0), HeatError::OutOfRange { .. }));
    let badly = |watch: Watch| tried(&good, &material, 20.0, &fine, &watch, &Fineness::PLAN);
    assert!(matches!(badly(Watch { until_s: 0.0, ..hour.clone() }), HeatError::BackInTime { .. }));
    assert!(matches!(badly(Watch { until_s: f64::NAN, ..hour.clone() }), HeatError::OutOfRange { .. }));
    assert!(matches!(badly(Watch { every_s: 0.0, ..hour.clone() }), HeatError::OutOfRange { .. }));
    assert!(matches!(badly(Watch { every_s: 0.001, ..hour.clone() }), HeatError::TooMany { .. }));
    assert!(matches!(badly(Watch { probes: vec![[0.2, 0.0]], ..hour.clone() }), HeatError::OutOfRange { .. }));
    assert!(matches!(badly(Watch { probes: vec![[0.0, f64::NAN]], ..hour.clone() }), HeatError::OutOfRange { .. }));
    let coarse = |fineness: Fineness| tried(&good, &material, 20.0, &fine, &hour, &fineness);
    assert!(matches!(coarse(Fineness { radial: 1, ..Fineness::PLAN }), HeatError::OutOfRange { .. }));
    assert!(matches!(coarse(Fineness { axial: 5000, ..Fineness::PLAN }), HeatError::TooMany { .. }));
    assert!(matches!(coarse(Fineness { grading: 1.0, ..Fineness::PLAN }), HeatError::OutOfRange { .. }));
    assert!(matches!(coarse(Fineness { tolerance_k: 0.0, ..Fineness::PLAN }), HeatError::OutOfRange { .. }));
    assert!(!badly(Watch { until_s: 0.0, ..hour.clone() }).to_string().is_empty());
    assert_eq!(first_at(&[], &[], 5.0), None);
    assert_eq!(first_at(&[0.0, 10.0], &[0.0, 10.0], 5.0), Some(5.0));
    assert_eq!(first_at(&[0.0, 10.0], &[0.0, 4.0], 5.0), None);
}

/// A number anywhere between two, by its size.
fn any(lot: &mut Lot, low: f64, high: f64) -> f64 {
    (lot.between(low.ln(), high.ln())).exp()
}

#[test]
fn the_far_ends_of_what_is_taken_come_to_an_end() {
    let (mut most, mut given_up) = (0, 0);
    for round in 0..40 {
        let mut lot = Lot(3000 + round);
        let from_c = lot.between(-270.0, 1000.0);
        let event =
            LatentEvent { from_c, to_c: from_c + any(&mut lot, 0.011, 500.0), heat_j_kg: any(&mut lot, 1.0, 1e8), releases_kg_kg: 0.1 };
        let mut material = plain(any(&mut lot, 1e-3, 1e5), any(&mut lot, 1.0, 30_000.0), any(&mut lot, 1.0, 1e6));
        material.latent = vec![event];
        material.conductivity_dry = Some(vec![[-100.0, any(&mut lot, 1e-3, 1e5)], [200.0, any(&mut lot, 1e-3, 1e5)]]);
        let shell = Shell { capacity_j_m2_k: any(&mut lot, 1.0, 1e7), contact_w_m2_k: any(&mut lot, 1e-3, 1e6) };
        let shell = if lot.draw() < 0.5 { Some(shell) } else { None };
        let flask = Flask { radius_m: any(&mut lot, 0.001, 2.0), height_m: any(&mut lot, 0.001, 2.0), shell };
        let surface = Surface { h_w_m2_k: any(&mut lot, 1e-3, 1e6), emissivity: lot.draw() };
        let surroundings = Surroundings {
            temperature: vec![[0.0, lot.between(-273.0, 3000.0)], [any(&mut lot, 1.0, 1e5), lot.between(-273.0, 3000.0)]],
            phases: vec![Phase { from_s: 0.0, surfaces: Surfaces::all(surface) }],
        };
        let fineness = Fineness {
            radial: 2 + (round % 5) as usize,
            axial: 2 + (round % 3) as usize,
            grading: 0.5,
            tolerance_k: any(&mut lot, 0.05, 5.0),
        };
        let until_s = any(&mut lot, 10.0, 1e6);
        let run = run(
            (&flask, &material, lot.between(-273.0, 3000.0)),
            &surroundings,
            &watch(Vec::new(), until_s / 7.0, until_s),
            &fineness,
            &mut || false,
        );
        match run {
            Ok(run) => {
                most = most.max(run.steps + run.retries);
                assert!(run.hottest_c.iter().chain(&run.coldest_c).all(|c| c.is_finite()), "round {round}");
                assert_eq!(run.times_s[run.times_s.len() - 1], until_s);
            }
            Err(error) => {
                given_up += 1;
                assert!(matches!(error, HeatError::GivenUp { .. }), "round {round}: {error}");
            }
        }
    }
    println!("most steps {most}, given up {given_up} of 40");
    assert!(given_up < 4, "{given_up}");
}
