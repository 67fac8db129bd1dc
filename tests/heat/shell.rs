//! The steel around the mould.

use super::world::{convection, flask, plain, run, watch, worst};
use pourbook::calc::heat::{Fineness, Flask, Shell, Surface, Surfaces, Surroundings};

const TIGHT: Fineness = Fineness { radial: 8, axial: 6, grading: 0.2, tolerance_k: 0.01 };

fn by_the_wall() -> Surroundings {
    Surroundings::steady(600.0, Surfaces { side: convection(30.0), top: Surface::INSULATED, bottom: Surface::INSULATED })
}

#[test]
fn a_loose_shell_warms_by_itself() {
    // c dT/dt = h (T∞ − T): 1.5 mm of steel, 7900 kg/m³, 500 J/(kg·K).
    let shell = Shell { capacity_j_m2_k: 0.0015 * 7900.0 * 500.0, contact_w_m2_k: 0.0 };
    let flask = Flask { shell: Some(shell), ..flask(102.0, 152.0) };
    let run = run((&flask, &plain(0.5, 1240.0, 1000.0), 20.0), &by_the_wall(), &watch(Vec::new(), 10.0, 1200.0), &TIGHT);
    let exact = |time: &f64| 600.0 - 580.0 * (-30.0 * time / shell.capacity_j_m2_k).exp();
    let off = worst(run.shell_c.iter().zip(&run.times_s).map(|(ours, time)| ours - exact(time)));
    println!("loose shell against its exponential: worst {off:.4} K of 580");
    assert!(off < 0.1, "{off}");
    assert_eq!(run.core_c[120], 20.0);
}

#[test]
fn two_lumps_exchange_heat() {
    // A mould that conducts so well that it is one lump, C₁, in contact g with a shell, C₂, in surroundings by h, all by area of the wall:
    // C₁ T₁' = g (T₂ − T₁), C₂ T₂' = g (T₁ − T₂) + h (T∞ − T₂): two exponentials.
    let shell = Shell { capacity_j_m2_k: 6000.0, contact_w_m2_k: 80.0 };
    let flask = Flask { shell: Some(shell), ..flask(64.0, 64.0) };
    let (c1, c2, g, h) = (0.032 / 2.0 * 1240.0 * 1000.0, 6000.0, 80.0, 30.0);
    let (a, b, d): (f64, f64, f64) = (-g / c1, -(g + h) / c2, g * g / (c1 * c2));
    let root = ((a - b) * (a - b) / 4.0 + d).sqrt();
    let (fast, slow) = ((a + b) / 2.0 - root, (a + b) / 2.0 + root);
    // With x = T − T∞ both start at −580: T₁' = 0 at the start.
    let exact = |time: f64| {
        let (p, q) = (slow / (slow - fast), -fast / (slow - fast));
        600.0 - 580.0 * (p * (fast * time).exp() + q * (slow * time).exp())
    };
    let run = run((&flask, &plain(2000.0, 1240.0, 1000.0), 20.0), &by_the_wall(), &watch(Vec::new(), 20.0, 4000.0), &TIGHT);
    let off = worst(run.core_c.iter().zip(&run.times_s).map(|(ours, time)| ours - exact(*time)));
    println!("two lumps against two exponentials: worst {off:.4} K of 580");
    assert!(off < 0.3, "{off}");
    let taken = 2.0 * std::f64::consts::PI * 0.032 * 0.064 * (c1 * (run.core_c[200] - 20.0) + c2 * (run.shell_c[200] - 20.0));
    assert!((run.heat_j[200] - taken).abs() < 1e-3 * taken, "the shell's heat counts");
}

#[test]
fn a_thin_shell_in_good_contact_changes_nothing() {
    let thin = Flask { shell: Some(Shell { capacity_j_m2_k: 1.0, contact_w_m2_k: 1e6 }), ..flask(64.0, 64.0) };
    let material = plain(0.5, 1240.0, 1000.0);
    let with = run((&thin, &material, 20.0), &by_the_wall(), &watch(Vec::new(), 60.0, 7200.0), &TIGHT);
    let without = run((&flask(64.0, 64.0), &material, 20.0), &by_the_wall(), &watch(Vec::new(), 60.0, 7200.0), &TIGHT);
    assert!(worst(with.core_c.iter().zip(&without.core_c).map(|(a, b)| a - b)) < 0.1);
}
