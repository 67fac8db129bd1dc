//! How long the heat of moulds takes to compute, on one core.
//!
//! `cargo bench --bench heat` prints medians; any run that is not `cargo bench` computes each once. `-- --beside FILE` computes the 19 h programme
//! of the 102×152 mm flask and writes the core's temperature every 5 min to a file, for `heat_beside_scipy.py`.
#![allow(missing_docs, dead_code, clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and may stop where it stands")]

#[path = "../heat/world.rs"]
mod world;

use pourbook::calc::heat::{Fineness, Flask, Material, Run, Shell, Surface, Surroundings, Watch, run};
use pourbook::calc::labour::{Cores, Labour, OneCore};
use pourbook::cores::AllCores;
use std::fmt::Write as _;
use std::hint::black_box;
use std::time::Instant;

const LARGE: &[[f64; 2]] =
    &[[0.0, 20.0], [1.0, 150.0], [4.0, 150.0], [6.0, 370.0], [8.0, 370.0], [10.5, 730.0], [14.5, 730.0], [16.0, 540.0], [19.0, 540.0]];
/// Eight hours for a 102×152 mm flask: 149, 371, 732 °C, and down to 538.
const EIGHT: &[[f64; 2]] =
    &[[0.0, 20.0], [0.5, 149.0], [2.0, 149.0], [3.0, 371.0], [4.0, 371.0], [5.0, 732.0], [7.0, 732.0], [7.5, 538.0], [8.0, 538.0]];

/// With its conductivity this many times as high.
fn conducting(times: f64) -> Material {
    let mut material = world::investment();
    material.conductivity.iter_mut().for_each(|row| row[1] *= times);
    material
}

fn compute(flask: &Flask, material: &Material, kiln: &Surroundings, hours: f64, every_s: f64) -> Run {
    let watch = Watch { probes: vec![[0.8 * flask.radius_m, 0.15 * flask.height_m]], every_s, until_s: hours * 3600.0 };
    run((flask, material, 20.0), kiln, &watch, &Fineness::PLAN, &mut || false).unwrap()
}

/// Seconds this process was on a core, where the system says so.
fn on_a_core() -> Option<f64> {
    let text = std::fs::read_to_string("/proc/self/schedstat").ok()?;
    Some(text.split(' ').next()?.parse::<f64>().ok()? * 1e-9)
}

/// Seconds by the clock, sorted.
fn times(rounds: usize, mut task: impl FnMut()) -> Vec<f64> {
    let once = |_| {
        let begun = Instant::now();
        task();
        begun.elapsed().as_secs_f64()
    };
    let mut times: Vec<f64> = (0..rounds).map(once).collect();
    times.sort_by(f64::total_cmp);
    times
}

/// By the clock, and how much of it was spent on a core: less where other processes want it too.
fn report(name: &str, rounds: usize, task: impl FnMut()) {
    let before = on_a_core();
    let times = times(rounds, task);
    let core =
        before.zip(on_a_core()).map_or(String::new(), |(from, to)| format!("; on a core {:.2} ms", 1e3 * (to - from) / rounds as f64));
    println!("{name}: {:.2} ms, {:.2} to {:.2}{core}", 1e3 * times[times.len() / 2], 1e3 * times[0], 1e3 * times[times.len() - 1]);
}

fn beside(file: &str) {
    let (flask, kiln, material) = (world::flask(102.0, 152.0), world::kiln(LARGE, world::convection(25.0)), world::investment());
    let mut last = None;
    let times = times(21, || last = Some(compute(&flask, &material, &kiln, 19.0, 300.0)));
    let mut text = format!("{:.9}\n", times[times.len() / 2]);
    for c in &last.unwrap().core_c {
        writeln!(text, "{c:.6}").unwrap();
    }
    std::fs::write(file, text).unwrap();
}

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    if let Some(at) = arguments.iter().position(|a| a == "--beside") {
        return beside(&arguments[at + 1]);
    }
    let rounds = if arguments.iter().any(|a| a == "--bench") { 41 } else { 1 };
    let radiating = Surface { h_w_m2_k: 10.0, emissivity: 0.8 };
    let eight = world::kiln(EIGHT, radiating);
    let (large, material) = (world::flask(102.0, 152.0), conducting(1.0));
    let steel = Flask { shell: Some(Shell { capacity_j_m2_k: 7900.0, contact_w_m2_k: 200.0 }), ..large };
    let kiln_19 = world::kiln(LARGE, world::convection(25.0));
    report("102x152 mm, 8 h, every minute", rounds, || drop(black_box(compute(&large, &material, &eight, 8.0, 60.0))));
    report("the first 8 h of the 19 h programme", rounds, || drop(black_box(compute(&large, &material, &kiln_19, 8.0, 300.0))));
    report("102x152 mm in steel, 8 h", rounds, || drop(black_box(compute(&steel, &material, &eight, 8.0, 60.0))));
    let three = [0.7, 1.0, 1.4].map(conducting);
    let all = |flask: &Flask| three.iter().for_each(|material| drop(black_box(compute(flask, material, &eight, 8.0, 60.0))));
    report("102x152 mm, 8 h, three conductivities", rounds, || all(&large));
    let sizes = [[51.0, 64.0], [64.0, 64.0], [76.0, 102.0], [89.0, 127.0], [102.0, 102.0], [102.0, 152.0]];
    let load: Vec<Flask> = sizes.iter().cycle().take(12).map(|[d, h]| world::flask(*d, *h)).collect();
    let runs: Vec<(&Flask, &Material)> = load.iter().flat_map(|flask| three.iter().map(move |material| (flask, material))).collect();
    let on = |cores: &dyn Cores| {
        let labour = Labour { cores, ..Labour::ALONE };
        drop(black_box(labour.each(&runs, |(flask, material)| Ok::<_, ()>(compute(flask, material, &eight, 8.0, 60.0)))));
    };
    report("12 flasks, 8 h, three conductivities, on one core", rounds.min(9), || on(&OneCore));
    report("the same on all cores, as the window does it", rounds.min(9), || on(&AllCores));
}
