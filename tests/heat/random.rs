//! What must hold of any mould, with materials and schedules drawn by lot.

use super::world::{Lot, worst};
use pourbook::calc::heat::{Fineness, Flask, LatentEvent, Material, Phase, Run, Shell, Surface, Surfaces, Surroundings, Watch};

const ROUNDS: u64 = 60;

fn table(lot: &mut Lot, low: f64, high: f64) -> Vec<[f64; 2]> {
    let mut t = lot.between(0.0, 100.0);
    let rows = 1 + (lot.draw() * 6.0) as usize;
    (0..rows)
        .map(|_| {
            t += lot.between(5.0, 300.0);
            [t, lot.between(low, high)]
        })
        .collect()
}

fn material(lot: &mut Lot) -> Material {
    let event = |lot: &mut Lot| {
        let from_c = lot.between(60.0, 300.0);
        let heat_j_kg = lot.between(0.0, 8e5);
        LatentEvent { from_c, to_c: from_c + lot.between(2.0, 60.0), heat_j_kg, releases_kg_kg: lot.between(0.0, 0.4) }
    };
    let events = (lot.draw() * 3.0) as usize;
    Material {
        density_kg_m3: lot.between(800.0, 2500.0),
        conductivity: table(lot, 0.1, 2.0),
        conductivity_dry: if lot.draw() < 0.5 { Some(table(lot, 0.1, 1.0)) } else { None },
        specific_heat: table(lot, 600.0, 1500.0),
        latent: (0..events).map(|_| event(lot)).collect(),
        reversible: lot.draw() < 0.3,
    }
}

fn surface(lot: &mut Lot) -> Surface {
    Surface { h_w_m2_k: lot.between(0.0, 60.0), emissivity: if lot.draw() < 0.5 { 0.0 } else { lot.draw() } }
}

fn surroundings(lot: &mut Lot) -> Surroundings {
    let mut time = 0.0;
    let mut temperature = vec![[0.0, lot.between(0.0, 300.0)]];
    for _ in 0..(1.0 + lot.draw() * 6.0) as usize {
        // Now and then a jump.
        time += if lot.draw() < 0.2 { 0.0 } else { lot.between(300.0, 9000.0) };
        temperature.push([time, lot.between(0.0, 900.0)]);
    }
    let ends = surface(lot);
    let first = Surfaces { side: surface(lot), top: ends, bottom: if lot.draw() < 0.5 { ends } else { surface(lot) } };
    let later = Phase { from_s: lot.between(1000.0, 9000.0), surfaces: Surfaces { side: surface(lot), ..first } };
    Surroundings { temperature, phases: vec![Phase { from_s: 0.0, surfaces: first }, later] }
}

fn flask(lot: &mut Lot) -> Flask {
    let shell = Shell { capacity_j_m2_k: lot.between(2000.0, 12_000.0), contact_w_m2_k: lot.between(5.0, 500.0) };
    Flask { radius_m: lot.between(0.02, 0.08), height_m: lot.between(0.04, 0.2), shell: if lot.draw() < 0.4 { Some(shell) } else { None } }
}

fn go(flask: &Flask, material: &Material, start_c: f64, surroundings: &Surroundings, fineness: &Fineness) -> Run {
    let (r, h) = (flask.radius_m, flask.height_m);
    let watch = Watch { probes: vec![[r / 3.0, h / 4.0], [r, h]], every_s: 120.0, until_s: 30_000.0 };
    let run = pourbook::calc::heat::run((flask, material, start_c), surroundings, &watch, fineness, &mut || false).unwrap();
    // What was not exchanged has no share of it.
    let near_nothing = 1e-9 * 1000.0 * material.density_kg_m3 * std::f64::consts::PI * r * r * h;
    assert!(run.energy.open() < 1e-9 || run.energy.exchanged_j < near_nothing, "open by {:e}", run.energy.open());
    run
}

#[test]
fn never_hotter_or_colder_than_what_it_has_met() {
    let mut beyond_plan: f64 = 0.0;
    let mut beyond_fine: f64 = 0.0;
    for round in 0..ROUNDS {
        let mut lot = Lot(round + 1);
        let (flask, material, surroundings) = (flask(&mut lot), material(&mut lot), surroundings(&mut lot));
        let start_c = lot.between(10.0, 400.0);
        let met = surroundings.temperature.iter().map(|row| row[1]).chain([start_c]);
        let (low, high) = met.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), c| (low.min(c), high.max(c)));
        for (fineness, beyond) in [(Fineness::PLAN, &mut beyond_plan), (Fineness { tolerance_k: 0.01, ..Fineness::PLAN }, &mut beyond_fine)]
        {
            let run = go(&flask, &material, start_c, &surroundings, &fineness);
            let all = run.coldest_c.iter().chain(&run.hottest_c).chain(&run.shell_c).chain(&run.probes_c[0]);
            *beyond = beyond.max(worst(all.map(|c| c - c.clamp(low, high))));
            for held in &run.held_kg_kg {
                assert!(material.reversible || held.is_sorted_by(|a, b| a >= b), "round {round}: water came back");
            }
        }
    }
    println!("beyond what it has met: {beyond_plan:.3} K as planned, {beyond_fine:.4} K at a twentieth of the tolerance");
    // Steps of second order may pass a bound by what they may be off; with shorter steps that goes away.
    assert!(beyond_plan < 1.0 && beyond_fine < 0.05, "{beyond_plan} {beyond_fine}");
}

#[test]
fn half_and_whole_agree() {
    let (mut off, mut smooth): (f64, f64) = (0.0, 0.0);
    for round in 0..ROUNDS / 3 {
        let mut lot = Lot(1000 + round);
        let (flask, material, mut around) = (flask(&mut lot), material(&mut lot), surroundings(&mut lot));
        let start_c = lot.between(10.0, 400.0);
        for phase in &mut around.phases {
            phase.surfaces.bottom = phase.surfaces.top;
        }
        // Where latent heat begins or ends, rounding decides now and then whether a step is taken anew: shorter steps, less of it.
        let tight = Fineness { tolerance_k: 0.03, ..Fineness::PLAN };
        let half = go(&flask, &material, start_c, &around, &tight);
        // An end that differs by nothing that counts, so that the whole is computed.
        around.phases[0].surfaces.bottom.h_w_m2_k += 1e-12;
        let whole = go(&flask, &material, start_c, &around, &tight);
        let differs = worst(half.core_c.iter().zip(&whole.core_c).map(|(a, b)| a - b));
        let bound = if material.latent.is_empty() { &mut smooth } else { &mut off };
        *bound = bound.max(differs);
        let heat = worst(half.heat_j.iter().copied());
        let share = worst(half.heat_j.iter().zip(&whole.heat_j).map(|(a, b)| a - b)) / heat;
        assert!(share < if material.latent.is_empty() { 1e-9 } else { 1e-4 }, "round {round}: {share:e}");
        // Whether steps of the whole are mirror images.
        let mut field = pourbook::calc::heat::Field::new(&flask, &material, start_c, &Fineness::PLAN).unwrap();
        field.advance(&around, &Watch { probes: Vec::new(), every_s: 600.0, until_s: 9000.0 }, &mut || false).unwrap();
        let h = flask.height_m;
        for z in [0.0, 0.1, 0.3, 0.45] {
            let pair = [0.0, 0.7, 1.0].map(|r| field.at([r * flask.radius_m, z * h]) - field.at([r * flask.radius_m, (1.0 - z) * h]));
            assert!(worst(pair) < 1e-6, "round {round}: {pair:?}");
        }
    }
    println!("half against whole: worst {smooth:.1e} K, with latent heat {off:.1e} K");
    assert!(smooth < 1e-6 && off < 0.1, "{smooth} {off}");
}

#[test]
fn all_at_one_temperature_stays_there() {
    for round in 0..ROUNDS / 3 {
        let mut lot = Lot(2000 + round);
        let (flask, material, mut around) = (flask(&mut lot), material(&mut lot), surroundings(&mut lot));
        let c = lot.between(10.0, 700.0);
        around.temperature.iter_mut().for_each(|row| row[1] = c);
        let run = go(&flask, &material, c, &around, &Fineness::PLAN);
        assert!(worst(run.coldest_c.iter().chain(&run.hottest_c).map(|each| each - c)) < 1e-6, "round {round}");
    }
}
