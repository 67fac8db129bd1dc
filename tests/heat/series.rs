//! Constant properties against the series of Carslaw & Jaeger.

use super::world::{convection, flask, plain, rows, run, watch, worst};
use pourbook::calc::heat::{Fineness, Surface, Surfaces, Surroundings};

const BIOT: [f64; 4] = [0.1, 1.0, 10.0, 1000.0];
/// Ways to compute with how far off they may be, as shares of the step. That of planning is good to half a percent; from 16 rings on it is a
/// fifth of one.
const MODES: [(&str, Fineness, f64); 3] = [
    ("plan", Fineness::PLAN, 0.005),
    ("16x20", Fineness { radial: 16, axial: 20, grading: 0.2, tolerance_k: 0.2 }, 0.002),
    ("fine", Fineness::FINE, 0.001),
];
const RADIUS_M: f64 = 0.051;
const K: f64 = 0.5;
const RHO_CP: f64 = 1240.0 * 1000.0;
const START_C: f64 = 20.0;
const STEP_K: f64 = 680.0;

/// What part of the step is left after each row's Fourier number, at some places, and how far that is from the row's columns.
fn compare(aspect: f64, biot: f64, ends: bool, fineness: &Fineness, table: &[(f64, Vec<f64>)]) -> Vec<f64> {
    let flask = flask(2000.0 * RADIUS_M, 2000.0 * RADIUS_M * aspect);
    let side = convection(biot * K / RADIUS_M);
    let end = if ends { side } else { Surface::INSULATED };
    let surroundings = Surroundings::steady(START_C + STEP_K, Surfaces { side, top: end, bottom: end });
    let tick = 0.05 * RADIUS_M * RADIUS_M * RHO_CP / K;
    let last = table.iter().map(|row| row.0).fold(0.0, f64::max);
    let middle = flask.height_m / 2.0;
    let mut probes = vec![[0.0, middle], [RADIUS_M, middle]];
    probes.extend(if ends { [[0.0, flask.height_m], [RADIUS_M, flask.height_m]] } else { [[RADIUS_M / 2.0, middle]; 2] });
    let run = run((&flask, &plain(K, 1240.0, 1000.0), START_C), &surroundings, &watch(probes, tick, last / 0.05 * tick), fineness);
    let left = |probe: usize, fourier: f64| (START_C + STEP_K - run.probes_c[probe][(fourier / 0.05).round() as usize]) / STEP_K;
    let off = |probe: usize| worst(table.iter().map(|(fourier, thetas)| left(probe, *fourier) - thetas[probe]));
    (0..4).map(off).collect()
}

#[test]
fn infinite_cylinder() {
    let rows = rows("analytic_infinite.csv");
    println!("infinite cylinder, share of the step: centre, surface, half radius");
    for biot in BIOT {
        let table: Vec<(f64, Vec<f64>)> =
            rows.iter().filter(|row| row[0] == biot && row[1] >= 0.1).map(|row| (row[1], vec![row[2], row[4], row[3], row[3]])).collect();
        assert!(table.len() > 10, "Bi {biot}: {} rows", table.len());
        for (name, fineness, within) in MODES {
            let off = compare(1.0, biot, false, &fineness, &table);
            println!("  Bi {biot:6} {name}: {:.5} {:.5} {:.5}", off[0], off[1], off[2]);
            assert!(off.iter().all(|off| *off < within), "Bi {biot} {name}: {off:?}");
        }
    }
}

#[test]
fn finite_cylinder() {
    let rows = rows("analytic_finite.csv");
    println!("finite cylinder, share of the step: centre, side, end, corner");
    let mut aspects: Vec<f64> = rows.iter().map(|row| row[0]).collect();
    aspects.dedup();
    assert_eq!(aspects.len(), 3);
    for aspect in aspects {
        for biot in BIOT {
            let table: Vec<(f64, Vec<f64>)> = rows
                .iter()
                .filter(|row| row[0] == aspect && row[1] == biot && row[2] >= 0.1)
                .map(|row| (row[2], row[3..7].to_vec()))
                .collect();
            assert!(table.len() > 10, "H/D {aspect}, Bi {biot}: {} rows", table.len());
            for (name, fineness, within) in MODES {
                let off = compare(aspect, biot, true, &fineness, &table);
                println!("  H/D {aspect:.3} Bi {biot:6} {name}: {:.5} {:.5} {:.5} {:.5}", off[0], off[1], off[2], off[3]);
                assert!(off.iter().all(|off| *off < within), "H/D {aspect}, Bi {biot}, {name}: {off:?}");
            }
        }
    }
}
