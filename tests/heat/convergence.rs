//! How the error falls with finer rings and shorter steps.

use super::world::{convection, flask, investment, kiln, mean, plain, rows, run, watch, worst};
use pourbook::calc::heat::{Fineness, Material, Surface, Surfaces, Surroundings};

/// Orders from errors of grids or steps that are finer by these factors.
fn orders(errors: &[f64], finer: impl Fn(usize) -> f64) -> Vec<f64> {
    (1..errors.len()).map(|at| (errors[at - 1] / errors[at]).ln() / finer(at).ln()).collect()
}

/// Worst differences from the series from Fo 0.1 to 1, as shares of the step: centre, side, end and corner of a finite cylinder H/D = 1.
fn off_the_series(table: &[Vec<f64>], biot: f64, cells: usize, grading: f64) -> [f64; 4] {
    let surroundings = Surroundings::steady(1.0, Surfaces::all(convection(biot * 20.0)));
    let (r, h) = (0.05, 0.1);
    let probes = vec![[0.0, h / 2.0], [r, h / 2.0], [0.0, h], [r, h]];
    let tick = 0.05 * r * r * 1e6;
    let fineness = Fineness { radial: cells, axial: cells, grading, tolerance_k: 1e-5 };
    let run = run((&flask(100.0, 100.0), &plain(1.0, 1000.0, 1000.0), 0.0), &surroundings, &watch(probes, tick, 20.0 * tick), &fineness);
    let rows: Vec<&Vec<f64>> = table.iter().filter(|row| row[0] == 1.0 && row[1] == biot && (0.1..=1.0).contains(&row[2])).collect();
    assert_eq!(rows.len(), 8);
    let left = |probe: usize, fourier: f64| 1.0 - run.probes_c[probe][(fourier / 0.05).round() as usize];
    [0, 1, 2, 3].map(|probe| worst(rows.iter().map(|row| left(probe, row[2]) - row[3 + probe])))
}

#[test]
fn in_space_against_the_series() {
    let table = rows("analytic_finite.csv");
    println!("order in space, constant properties, 8, 16, 32 rings: worst error from Fo 0.1 to 1 as a share of the step");
    for biot in [1.0, 10.0] {
        for grading in [0.0, 0.2] {
            let errors = [8, 16, 32].map(|cells| off_the_series(&table, biot, cells, grading));
            for (probe, name) in ["centre", "side", "end", "corner"].into_iter().enumerate() {
                let errors = errors.map(|each| each[probe]);
                let orders = orders(&errors, |_| 2.0);
                println!("  Bi {biot} grading {grading} {name}: {errors:.6?}, orders {orders:.2?}");
                assert!(orders.iter().all(|order| *order > 1.7), "Bi {biot}, grading {grading}, {name}: {orders:?}");
            }
        }
    }
}

#[test]
fn in_space_with_latent_heat() {
    // The centre of the 64×64 flask against the independent solver, extrapolated: where the boil closes on the centre, order is lost.
    let table = rows("flask_64x64_bcA.csv");
    let schedule =
        [[0.0, 20.0], [1.0, 150.0], [2.5, 150.0], [3.5, 370.0], [4.5, 370.0], [6.0, 730.0], [8.0, 730.0], [9.0, 540.0], [10.5, 540.0]];
    let kiln = kiln(&schedule, convection(25.0));
    let errors: Vec<[f64; 2]> = [8, 16, 32]
        .map(|cells| {
            let fineness = Fineness { radial: cells, axial: cells, grading: 0.0, tolerance_k: 0.01 };
            let run = run((&flask(64.0, 64.0), &investment(), 20.0), &kiln, &watch(Vec::new(), 300.0, 10.5 * 3600.0), &fineness);
            let off: Vec<f64> = run.core_c.iter().zip(&table).map(|(ours, row)| ours - row[8]).collect();
            [mean(off.iter().copied()), worst(off)]
        })
        .to_vec();
    let means: Vec<f64> = errors.iter().map(|each| each[0]).collect();
    let order = orders(&means, |_| 2.0);
    println!("order in space, investment, 8, 16, 32 rings: mean and worst {errors:.4?}, orders of the mean {order:.2?}");
    assert!(order.iter().all(|order| *order > 1.5), "{order:?}");
}

#[test]
fn in_time() {
    // Properties that go with temperature, and radiation: a smooth problem on a given grid, against the same with far shorter steps.
    let material = Material {
        conductivity: vec![[20.0, 0.8], [1000.0, 0.3]],
        specific_heat: vec![[20.0, 800.0], [1000.0, 1400.0]],
        ..plain(1.0, 1300.0, 1.0)
    };
    let kiln = kiln(&[[0.0, 20.0], [4.0, 730.0]], Surface { h_w_m2_k: 10.0, emissivity: 0.8 });
    let at = |tolerance_k: f64| {
        let fineness = Fineness { radial: 12, axial: 12, grading: 0.2, tolerance_k };
        let run = run((&flask(64.0, 64.0), &material, 20.0), &kiln, &watch(vec![[0.032, 0.064]], 1800.0, 4.0 * 3600.0), &fineness);
        ([run.core_c, run.probes_c[0].clone()].concat(), run.steps)
    };
    let (exact, _) = at(1e-5);
    let tolerances = [0.5, 0.1, 0.02, 0.004];
    let found: Vec<(f64, usize)> = tolerances
        .map(|tolerance| {
            let (series, steps) = at(tolerance);
            (worst(series.iter().zip(&exact).map(|(ours, exact)| ours - exact)), steps)
        })
        .to_vec();
    let errors: Vec<f64> = found.iter().map(|each| each.0).collect();
    let orders = orders(&errors, |at| found[at].1 as f64 / found[at - 1].1 as f64);
    println!("order in time: worst error in K and steps {found:.5?}, orders {orders:.2?}");
    let steps = found[3].1 as f64 / found[0].1 as f64;
    let overall = (errors[0] / errors[3]).ln() / steps.ln();
    println!("  over all {overall:.2}");
    assert!(overall > 1.7, "{overall}");
    assert!(errors.iter().zip(tolerances).all(|(error, tolerance)| *error < 3.0 * tolerance), "{errors:?}");
}
