//! How long a million triangles take to read and measure, beside a general mesh library on the same files in the same run.
//!
//! `cargo bench --bench mesh` makes two binary STL files of a knurled torus, one in the order of the torus and one shuffled, in a temporary
//! folder. Every timing is the median of fresh processes with the file in the system's cache; starting a process is not counted on either side.
//! The peer is `tests/bench/mesh_peer.py` run by `python3`, or by the interpreter named in `PEER_PYTHON`. Without it only our times are printed.
//! The sums alone and the walls of a fifth as many triangles are timed in this process; the memory of five times as many is weighed in another.
//! `--smoke`, and any run that is not `cargo bench`, takes a small file once.
#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and may stop where it stands")]

use pourbook::mesh::{Limits, Triangle, Unwatched, measure_file, plain_sums, read_file, thickness};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

mod knurl;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    if let [one, path] = &arguments[..]
        && one == "--one"
    {
        return time_once(Path::new(path));
    }
    if let [one, path] = &arguments[..]
        && one == "--memory"
    {
        return memory_once(Path::new(path));
    }
    let smoke = arguments.iter().any(|a| a == "--smoke") || !arguments.iter().any(|a| a == "--bench");
    let (around, across, ours_runs, peer_runs) = if smoke { (100, 50, 1, 1) } else { (1000, 500, 9, 3) };
    let folder = tempfile::tempdir().unwrap();
    let in_order = knurl::band(around, across);
    let mut shuffled = in_order.clone();
    shuffle(&mut shuffled);
    println!("{} triangles; median of {ours_runs} (ours) and {peer_runs} (peer) fresh processes, file in cache", in_order.len());
    for (name, triangles) in [("in order", in_order), ("shuffled", shuffled)] {
        let path = folder.path().join("torus.stl");
        knurl::write(&path, &triangles);
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
    time_sums(folder.path(), (around, across), ours_runs);
    time_walls(folder.path(), if smoke { (50, 20) } else { (500, 200) }, ours_runs);
    weigh_memory(folder.path(), if smoke { (100, 50) } else { (2500, 1000) });
}

/// Sums alone beside reading: volume and area of triangles that are in memory already, each in turn so that both meet the same machine.
fn time_sums(folder: &Path, (around, across): (usize, usize), runs: usize) {
    let path = folder.join("sums.stl");
    knurl::write(&path, &knurl::band(around, across));
    let (mut reading, mut summing) = (Vec::new(), Vec::new());
    for _ in 0..runs {
        let start = Instant::now();
        let soup = read_file(&path, &Limits::default()).unwrap();
        reading.push(start.elapsed().as_secs_f64());
        let start = Instant::now();
        let sums = plain_sums(&soup);
        summing.push(start.elapsed().as_secs_f64());
        assert!((sums.signed_volume_mm3 - 229.3).abs() < 1.0, "{sums:?}");
    }
    let (reading, summing) = (median(reading), median(summing));
    println!(
        "{} triangles: reading {:.1} ms, sums alone {:.1} ms, {:.2} of reading; may be 1.2",
        2 * around * across,
        1000.0 * reading,
        1000.0 * summing,
        summing / reading
    );
}

/// The most memory a process of its own takes to measure a file, as the system counts it; Linux only.
fn weigh_memory(folder: &Path, (around, across): (usize, usize)) {
    let path = folder.join("large.stl");
    knurl::write(&path, &knurl::band(around, across));
    let triangles = (2 * around * across) as f64;
    let told = |what: &str, path: &Path| -> Option<(f64, f64)> {
        let output = Command::new(std::env::current_exe().unwrap()).arg(what).arg(path).output().unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        let words = String::from_utf8(output.stdout).unwrap();
        let mut words = words.split_whitespace().map(|word| word.parse().unwrap());
        Some((words.next()?, words.next()?))
    };
    let (Some((seconds, bytes)), Some((_, start))) = (told("--memory", &path), told("--memory", Path::new(""))) else {
        return println!("memory: not told by this system");
    };
    println!(
        "{triangles:.0} triangles: measured in {seconds:.2} s, at most {:.0} MiB more than an empty process, {:.0} bytes a triangle; may be 150",
        (bytes - start) / f64::from(1 << 20),
        (bytes - start) / triangles
    );
}

/// Measures a file, or nothing, and prints the seconds and the most bytes this process held at once.
fn memory_once(path: &Path) {
    let start = Instant::now();
    if path != Path::new("") {
        assert!(measure_file(path, &Limits::default()).unwrap().volume_mm3.is_some());
    }
    let seconds = start.elapsed().as_secs_f64();
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let most = status.lines().find_map(|line| line.strip_prefix("VmHWM:")?.trim().strip_suffix(" kB")?.parse::<f64>().ok());
    if let Some(most) = most {
        println!("{seconds} {}", most * 1024.0);
    }
}

/// Walls, with the file already read. The wire is 2.2 mm give or take two hundredths either side.
fn time_walls(folder: &Path, (around, across): (usize, usize), runs: usize) {
    let path = folder.join("walls.stl");
    knurl::write(&path, &knurl::band(around, across));
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

/// A fixed shuffle.
fn shuffle(triangles: &mut [Triangle]) {
    let mut seed = 20_u64;
    for at in (1..triangles.len()).rev() {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        triangles.swap(at, (seed >> 33) as usize % (at + 1));
    }
}
