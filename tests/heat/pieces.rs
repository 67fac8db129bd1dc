//! A run in pieces, one that is stopped, and what heat came in by another account.

use super::world::{convection, flask, investment, kiln, plain, run, watch, worst};
use pourbook::calc::heat::{Field, Fineness, Phase, Surface, Surfaces, Surroundings};

const SCHEDULE: [[f64; 2]; 6] = [[0.0, 20.0], [1.0, 150.0], [3.0, 150.0], [5.0, 600.0], [6.0, 600.0], [8.0, 500.0]];

#[test]
fn pieces_make_the_whole() {
    let kiln = kiln(&SCHEDULE, Surface { h_w_m2_k: 10.0, emissivity: 0.8 });
    let (flask, material) = (flask(76.0, 100.0), investment());
    let whole = run((&flask, &material, 20.0), &kiln, &watch(Vec::new(), 300.0, 8.0 * 3600.0), &Fineness::PLAN);
    // Cut where the schedule bends, nothing differs; cut anywhere, hardly anything does.
    for (cuts, within) in [(vec![3.0, 5.0, 8.0], 0.0), (vec![1.5, 2.25, 4.0, 4.25, 7.0, 8.0], 0.6)] {
        let mut field = Field::new(&flask, &material, 20.0, &Fineness::PLAN).unwrap();
        let mut core = vec![20.0];
        let mut heat = 0.0;
        for hours in cuts {
            let mut branch = field.clone();
            let part = field.advance(&kiln, &watch(Vec::new(), 300.0, hours * 3600.0), &mut || false).unwrap();
            core.extend(&part.core_c[1..]);
            heat += part.heat_j[part.heat_j.len() - 1];
            // A copy goes on by itself.
            let other = branch.advance(&kiln, &watch(Vec::new(), 300.0, hours * 3600.0), &mut || false).unwrap();
            assert_eq!(part, other);
        }
        let off = worst(core.iter().zip(&whole.core_c).map(|(a, b)| a - b));
        println!("in pieces: worst {off:.3} K");
        assert_eq!(core.len(), whole.core_c.len());
        assert!(off <= within, "{off}");
        let all = whole.heat_j[whole.heat_j.len() - 1];
        assert!((heat - all).abs() < 1e-3 * all);
    }
}

#[test]
fn out_of_the_kiln_onto_the_bench() {
    // The lower end stands on an insulating brick from then on, so that the upper half no longer stands for the whole.
    let skin = Surface { h_w_m2_k: 10.0, emissivity: 0.8 };
    let bench = Surfaces { bottom: Surface { h_w_m2_k: 1.0, emissivity: 0.0 }, ..Surfaces::all(skin) };
    let surroundings = Surroundings {
        temperature: vec![[0.0, 550.0], [600.0, 550.0], [600.0, 22.0]],
        phases: vec![Phase { from_s: 0.0, surfaces: Surfaces::all(skin) }, Phase { from_s: 600.0, surfaces: bench }],
    };
    let mut field = Field::new(&flask(102.0, 152.0), &investment(), 550.0, &Fineness::PLAN).unwrap();
    let kiln = Surroundings::steady(550.0, Surfaces::all(skin));
    let still = field.advance(&kiln, &watch(Vec::new(), 60.0, 300.0), &mut || false).unwrap();
    assert!(worst(still.coldest_c.iter().map(|c| c - 550.0)) < 1e-9);
    let probes = vec![[0.0, 0.006], [0.0, 0.146], [0.045, 0.076]];
    let run = field.advance(&surroundings, &watch(probes, 60.0, 1500.0), &mut || false).unwrap();
    assert!(run.energy.open() < 1e-9);
    assert_eq!(run.around_c[5], 550.0);
    assert_eq!(run.around_c[6], 22.0);
    let two_minutes = run.times_s.iter().position(|time| *time == 720.0).unwrap();
    println!("after 2 min: core {:.1}, 6 mm deep {:.1}", run.core_c[two_minutes], run.probes_c[2][two_minutes]);
    assert!(run.core_c[two_minutes] > 549.5, "the core has not moved");
    assert!((20.0..110.0).contains(&(550.0 - run.probes_c[2][two_minutes])), "6 mm under the skin it has");
    let last = run.times_s.len() - 1;
    assert!(run.probes_c[0][last] > run.probes_c[1][last] + 20.0, "warmer on the brick");
    assert!(run.coldest_c[last] < run.core_c[last] && run.hottest_c[last] >= run.core_c[last]);
    assert!(run.steepest_k_m[last] > 1000.0 && run.skin_c[last] < run.core_c[last]);
    assert!((field.core_c() - run.core_c[last]).abs() < 1e-9 && (field.coldest_c() - run.coldest_c[last]).abs() < 1e-9);
    assert!(field.mean_c() > field.coldest_c() && field.mean_c() < field.hottest_c());
    assert!((field.at([0.0, 0.006]) - run.probes_c[0][last]).abs() < 1e-9);
}

#[test]
fn a_stopped_run_says_so() {
    let kiln = kiln(&SCHEDULE, convection(25.0));
    let mut field = Field::new(&flask(76.0, 100.0), &investment(), 20.0, &Fineness::PLAN).unwrap();
    let mut asked = 0;
    let mut stop = || {
        asked += 1;
        asked > 3
    };
    let run = field.advance(&kiln, &watch(Vec::new(), 60.0, 8.0 * 3600.0), &mut stop).unwrap();
    assert!(run.stopped && field.time_s() < 8.0 * 3600.0 && run.steps > 0);
    let on = field.advance(&kiln, &watch(Vec::new(), 60.0, 8.0 * 3600.0), &mut || false).unwrap();
    assert!(!on.stopped && on.times_s[on.times_s.len() - 1] == 8.0 * 3600.0);
}

#[test]
fn heat_by_the_skins_temperature() {
    // What came in is also the integral of h (T∞ − T) over the wall, by Simpson's rule over samples.
    let surfaces = Surfaces { side: convection(25.0), top: Surface::INSULATED, bottom: Surface::INSULATED };
    let fineness = Fineness { tolerance_k: 0.01, ..Fineness::PLAN };
    let material = plain(0.5, 1240.0, 1000.0);
    let run =
        run((&flask(64.0, 64.0), &material, 20.0), &Surroundings::steady(400.0, surfaces), &watch(Vec::new(), 5.0, 7200.0), &fineness);
    let gain = |at: usize| 25.0 * (400.0 - run.skin_c[at]);
    let simpson: f64 =
        (0..run.skin_c.len() / 2).map(|pair| 5.0 / 3.0 * (gain(2 * pair) + 4.0 * gain(2 * pair + 1) + gain(2 * pair + 2))).sum();
    let wall = 2.0 * std::f64::consts::PI * 0.032 * 0.064;
    let ours = run.heat_j[run.heat_j.len() - 1];
    println!("heat {ours:.1} J, by the skin {:.1} J", simpson * wall);
    assert!((ours - simpson * wall).abs() < 2e-3 * ours);
}
