//! How long a million triangles take to read and measure, beside a general mesh library on the same files in the same run.
//!
//! `cargo bench --bench mesh` makes two binary STL files of a knurled torus, one in the order of the torus and one shuffled, in a temporary
//! folder. Every timing is the median of fresh processes with the file in the system's cache; starting a process is not counted on either side.
//! The peer is `tests/bench/mesh_peer.py` run by `python3`, or by the interpreter named in `PEER_PYTHON`. Without it only our times are printed.
//! The walls of a fifth as many triangles are timed in this process.
//! `--smoke`, and any run that is not `cargo bench`, takes a small file once.
#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and may stop where it stands")]

use pourbook::mesh::{Limits, Triangle, Unwatched, measure_file, read_file, thickness};
use std::f64::consts::TAU;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    if let [one, path] = &arguments[..]
        && one == "--one"
    {
        return time_once(Path::new(path));
    }
    let smoke = arguments.iter().any(|a| a == "--smoke") || !arguments.iter().any(|a| a == "--bench");
    let (around, across, ours_runs, peer_runs) = if smoke { (100, 50, 1, 1) } else { (1000, 500, 9, 3) };
    let folder = tempfile::tempdir().unwrap();
    let in_order = torus(around, across);
    let mut shuffled = in_order.clone();
    shuffle(&mut shuffled);
    println!("{} triangles; median of {ours_runs} (ours) and {peer_runs} (peer) fresh processes, file in cache", in_order.len());
    for (name, triangles) in [("in order", in_order), ("shuffled", shuffled)] {
        let path = folder.path().join("torus.stl");
        write_stl(&path, &triangles);
        let ours = median((0..ours_runs).map(|_| fresh(&path)).collect());
        println!("{name}: ours {:.1} ms", 1000.0 * ours);
        match peer(&path, peer_runs) {
            Some((version, plain, with_bodies)) => println!(
                "{name}: peer {version} {:.1} ms, with bodies counted {:.1} ms; ratio {:.1}, with bodies {:.1}",
                1000.0 * plain,
                1000.0 * with_bodies,
                plain / ours,
                with_bodies / ours
            ),
            None => println!("{name}: peer not installed"),
        }
    }
    time_walls(folder.path(), if smoke { (50, 20) } else { (500, 200) }, ours_runs);
}

/// Walls, with the file already read. The wire is 2.2 mm give or take two hundredths either side.
fn time_walls(folder: &Path, (around, across): (usize, usize), runs: usize) {
    let path = folder.join("walls.stl");
    write_stl(&path, &torus(around, across));
    let soup = read_file(&path, &Limits::default()).unwrap();
    let seconds = median(
        (0..runs)
            .map(|_| {
                let start = Instant::now();
                let typical = thickness(&soup, &Unwatched).unwrap().typical.unwrap().thickness_mm;
                assert!((typical - 2.2).abs() < 0.07, "{typical}");
                start.elapsed().as_secs_f64()
            })
            .collect(),
    );
    println!("walls of {} triangles: {:.1} ms, median of {runs}", soup.triangles().len(), 1000.0 * seconds);
}

/// Measures once and prints the seconds; stops unless the answer is right.
fn time_once(path: &Path) {
    let start = Instant::now();
    let found = measure_file(path, &Limits::default()).unwrap();
    let seconds = start.elapsed().as_secs_f64();
    let volume = found.volume_mm3.expect("the torus is closed");
    assert!(found.watertight && found.winding_agrees && found.shells.len() == 1 && found.problems.is_empty());
    // Exact sums of the million-triangle file, by Python's math.fsum: 229.30572967461 mm³, 418.07391563362 mm².
    if found.triangles == 1_000_000 {
        assert!((volume - 229.305_729_674_61).abs() < 1e-8, "{volume}");
        assert!((found.area_mm2 - 418.073_915_633_62).abs() < 1e-8, "{}", found.area_mm2);
    }
    println!("{seconds}");
}

fn fresh(path: &Path) -> f64 {
    let output = Command::new(std::env::current_exe().unwrap()).arg("--one").arg(path).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap().trim().parse().unwrap()
}

fn peer(path: &Path, runs: usize) -> Option<(String, f64, f64)> {
    let script = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/bench/mesh_peer.py");
    let python = std::env::var("PEER_PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let mut answers = Vec::new();
    for _ in 0..runs {
        let output = Command::new(&python).arg(&script).arg(path).output().ok().filter(|o| o.status.success())?;
        answers.push(serde_json::from_slice::<serde_json::Value>(&output.stdout).ok()?);
    }
    assert!(answers.iter().all(|a| a["watertight"] == true && a["bodies"] == 1), "the peer disagrees: {answers:?}");
    let median_of = |key: &str| median(answers.iter().map(|a| a[key].as_f64().unwrap()).collect());
    Some((format!("trimesh {}", answers[0]["version"].as_str().unwrap()), median_of("seconds"), median_of("seconds_with_bodies")))
}

fn median(mut list: Vec<f64>) -> f64 {
    list.sort_by(f64::total_cmp);
    list[list.len() / 2]
}

/// A band of round wire with a knurl: centre line 9.6 mm, wire 1.1 mm give or take two hundredths of it.
fn torus(around: usize, across: usize) -> Vec<Triangle> {
    let at = |i: usize, j: usize| -> [f32; 3] {
        let (u, v) = (TAU * (i % around) as f64 / around as f64, TAU * (j % across) as f64 / across as f64);
        let wire = 1.1 * (1.0 + 0.02 * (40.0 * u).sin() * (6.0 * v).cos());
        let out = 9.6 + wire * v.cos();
        [out * u.cos(), out * u.sin(), wire * v.sin()].map(|x| x as f32)
    };
    let quads = || (0..around * across).map(|k| (k / across, k % across));
    let first = quads().map(|(i, j)| [at(i, j), at(i + 1, j), at(i + 1, j + 1)]);
    let second = quads().map(|(i, j)| [at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
    first.chain(second).collect()
}

/// A fixed shuffle.
fn shuffle(triangles: &mut [Triangle]) {
    let mut seed = 20_u64;
    for at in (1..triangles.len()).rev() {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        triangles.swap(at, (seed >> 33) as usize % (at + 1));
    }
}

fn write_stl(path: &Path, triangles: &[Triangle]) {
    let mut bytes = vec![0; 80];
    bytes.extend((triangles.len() as u32).to_le_bytes());
    for triangle in triangles {
        bytes.extend([0; 12]);
        triangle.as_flattened().iter().for_each(|x| bytes.extend(x.to_le_bytes()));
        bytes.extend([0; 2]);
    }
    std::fs::write(path, bytes).unwrap();
}
