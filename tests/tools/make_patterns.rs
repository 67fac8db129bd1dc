//! Draws the pattern files of the sample studio: `sample-jobs/patterns/*.stl`.
//!
//! Every shape is a closed formula over a grid, so the files are ours alone and can be made again to the byte. Corners lie on a lattice
//! of 1/1024 of the file's unit: such numbers are exact in the file, and a volume can be summed without rounding.
//!
//! `cargo run --example make_patterns` writes the files; `-- --check` compares the files there with what it would write.

use std::f64::consts::TAU;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// A place in the file's unit.
type Point = [f64; 3];

/// Steps of the lattice in one unit.
const LATTICE: f64 = 1024.0;

/// A pattern file: its name, what is in it, and its shells.
pub struct Drawn {
    /// The file's name.
    pub name: &'static str,
    /// Its closed surfaces (one of them open where that is the lesson).
    pub shells: Vec<Shell>,
}

/// A surface of triangles.
pub struct Shell {
    points: Vec<Point>,
    triangles: Vec<[usize; 3]>,
}

impl Shell {
    /// A surface closed both ways round, like a band: `at(u, v)` with `u` and `v` from 0 up to 1.
    fn band(around: usize, profile: usize, at: impl Fn(f64, f64) -> Point) -> Self {
        let points = (0..around * profile).map(|i| at(share(i / profile, around), share(i % profile, profile))).collect();
        let index = |i: usize, j: usize| (i % around) * profile + j % profile;
        let mut shell = Self { points, triangles: Vec::new() };
        for i in 0..around {
            for j in 0..profile {
                shell.quad([index(i, j), index(i + 1, j), index(i + 1, j + 1), index(i, j + 1)]);
            }
        }
        shell.outward()
    }

    /// A surface that closes at two poles: rings `at(row, v)` with `v` from 0 up to 1, row by row from the first pole to the last.
    fn poles(first: Point, rows: usize, around: usize, last: Point, at: impl Fn(usize, f64) -> Point) -> Self {
        let mut points: Vec<Point> = (0..rows * around).map(|i| at(i / around, share(i % around, around))).collect();
        points.extend([first, last]);
        let (first, last) = (rows * around, rows * around + 1);
        let mut shell = Self { points, triangles: Vec::new() };
        for j in 0..around {
            let next = (j + 1) % around;
            for row in 0..rows - 1 {
                let (here, there) = (row * around, (row + 1) * around);
                shell.quad([here + j, here + next, there + next, there + j]);
            }
            shell.triangles.push([first, next, j]);
            shell.triangles.push([last, (rows - 1) * around + j, (rows - 1) * around + next]);
        }
        shell.outward()
    }

    /// A profile of (radius, height) turned round the z axis, its radius changed by `wave(row, angle)`.
    fn turned(first_z: f64, profile: &[[f64; 2]], last_z: f64, around: usize, wave: impl Fn(usize, f64) -> f64) -> Self {
        Self::poles([0.0, 0.0, first_z], profile.len(), around, [0.0, 0.0, last_z], |row, v| {
            let (sin, cos) = (TAU * v).sin_cos();
            let [radius, z] = profile[row];
            let radius = radius * wave(row, TAU * v);
            [radius * cos, radius * sin, z]
        })
    }

    fn quad(&mut self, [a, b, c, d]: [usize; 4]) {
        self.triangles.extend([[a, b, c], [a, c, d]]);
    }

    fn corners(&self, triangle: [usize; 3]) -> [[i64; 3]; 3] {
        triangle.map(|at| self.points[at].map(on_lattice))
    }

    /// Six times the signed volume in cubed steps of the lattice, without rounding.
    pub fn volume_6(&self) -> i128 {
        self.triangles.iter().map(|triangle| tetrahedron_6(self.corners(*triangle))).sum()
    }

    /// Turned so that the outside is outside.
    fn outward(mut self) -> Self {
        if self.volume_6() < 0 {
            self.turn();
        }
        self
    }

    fn turn(&mut self) {
        self.triangles.iter_mut().for_each(|triangle| triangle.swap(1, 2));
    }

    /// Turned so that it is the wall of a hollow.
    fn inward(mut self) -> Self {
        self.turn();
        self
    }
}

fn share(part: usize, of: usize) -> f64 {
    part as f64 / of as f64
}

/// The nearest step of the lattice.
fn on_lattice(coordinate: f64) -> i64 {
    (coordinate * LATTICE).round() as i64
}

fn tetrahedron_6([a, b, c]: [[i64; 3]; 3]) -> i128 {
    let [a, b, c] = [a, b, c].map(|corner| corner.map(i128::from));
    a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])
}

/// A power that keeps the sign: what makes a circle's section squarer.
fn signed_power(number: f64, power: f64) -> f64 {
    number.abs().powf(power).copysign(number)
}

/// A ring with flat flanks: `half_width(u)` and `thickness(u)` along it, `relief(u, z)` on its outside.
fn ring(
    around: usize,
    profile: usize,
    bore_mm: f64,
    half_width: impl Fn(f64) -> f64,
    thickness: impl Fn(f64) -> f64,
    relief: impl Fn(f64, f64) -> f64,
) -> Shell {
    Shell::band(around, profile, |u, v| {
        let (sin, cos) = (TAU * v).sin_cos();
        let (out, side) = (signed_power(cos, 0.6), signed_power(sin, 0.8));
        let z = half_width(u) * side;
        let radius = bore_mm / 2.0 + thickness(u) / 2.0 * (1.0 + out) + out.max(0.0) * relief(u, z);
        [radius * (TAU * u).cos(), radius * (TAU * u).sin(), z]
    })
}

/// A band of bore 17.2 mm that widens under a limpet with fourteen ribs.
fn limpet_ring() -> Vec<Shell> {
    // Arc from the middle of the limpet, in mm.
    let arc = |u: f64| 9.4 * TAU * if u > 0.5 { u - 1.0 } else { u };
    let spread = |u: f64| (-(arc(u) / 4.2).powi(2)).exp();
    let relief = |u: f64, z: f64| {
        let inside = (1.0 - (arc(u).powi(2) + z * z) / 19.4).max(0.0);
        let ribs = 1.0 + 0.08 * (14.0 * z.atan2(arc(u))).cos() * (1.0 - inside);
        3.4 * inside.powf(0.8) * ribs
    };
    vec![ring(80, 22, 17.2, |u| 1.6 + 2.6 * spread(u), |u| 1.5 + 0.3 * spread(u), relief)]
}

/// A band of bore 18.2 mm with three rows of eighteen knobs.
fn bramble_band() -> Vec<Shell> {
    let relief = |u: f64, z: f64| 0.9 * ((4.5 * 2.0 * TAU * u).sin() * (TAU / 3.4 * z).cos()).abs().sqrt();
    vec![ring(108, 16, 18.2, |_| 2.4, |_| 1.4, relief)]
}

/// A whelk of 26 mm: a spire with a helical groove. A helix that comes round once a turn closes on itself.
fn whelk_pendant() -> Vec<Shell> {
    const ROWS: usize = 46;
    let profile: Vec<[f64; 2]> = (0..ROWS)
        .map(|row| {
            let v = 0.015 + 0.965 * share(row, ROWS - 1);
            let nose = (1.0 - (1.0 - (v / 0.25).min(1.0)).powi(2)).sqrt();
            [6.4 * (1.0 - v).powf(0.85) * nose, 26.0 * v]
        })
        .collect();
    let groove = |row: usize, angle: f64| 0.9 + 0.1 * (TAU / 2.0 * (4.5 * share(row, ROWS - 1)) + angle / 2.0).sin().abs().powf(0.7);
    vec![Shell::turned(0.0, &profile, 26.0, 36, groove)]
}

/// A barnacle with six plates, its crater open, on a post of 0.9 mm.
fn barnacle_stud() -> Vec<Shell> {
    let corners = [[0.45, -9.0], [0.45, -0.5], [4.6, 0.0], [4.4, 0.8], [3.6, 3.0], [2.6, 5.2], [2.1, 5.2], [1.6, 3.6], [0.8, 3.0]];
    let steps = [4, 6, 2, 6, 6, 2, 5, 3];
    let mut profile = vec![corners[0]];
    for (pair, count) in corners.windows(2).zip(steps) {
        let step = |at: usize| [0, 1].map(|axis| pair[0][axis] + (pair[1][axis] - pair[0][axis]) * share(at, count));
        profile.extend((1..=count).map(step));
    }
    let post = steps[0] + steps[1];
    vec![Shell::turned(-9.0, &profile, 2.9, 36, |row, angle| {
        // The post is round; the plates grow out of it row by row.
        let plates = (row.saturating_sub(post - 3) as f64 / 3.0).min(1.0);
        1.0 + 0.07 * plates * (6.0 * angle).cos()
    })]
}

/// A haw of 8 mm with the five points of its crown around a pit.
fn hawthorn_berry() -> Vec<Shell> {
    const ROWS: usize = 27;
    let angle = |row: usize| TAU / 4.0 * (-0.97 + 1.93 * share(row, ROWS - 1));
    let crown = |row: usize| ((angle(row) - 1.0) / 0.55).clamp(0.0, 1.0);
    let profile: Vec<[f64; 2]> = (0..ROWS).map(|row| [4.0 * angle(row).cos(), 4.2 * angle(row).sin() - 1.1 * crown(row).powi(2)]).collect();
    vec![Shell::turned(-4.2, &profile, 2.95, 24, |row, around| 1.0 + 0.09 * crown(row) * (5.0 * around).cos())]
}

fn ball(rows: usize, around: usize, radius: impl Fn(f64, f64) -> f64) -> Shell {
    let tilt = |row: usize| TAU / 4.0 * (-1.0 + 2.0 * share(row + 1, rows + 1));
    let end = |sign: f64| [0.0, 0.0, sign * radius(sign * TAU / 4.0, 0.0)];
    Shell::poles(end(-1.0), rows, around, end(1.0), |row, v| {
        let (tilt, angle) = (tilt(row), TAU * v);
        let r = radius(tilt, angle);
        [r * tilt.cos() * angle.cos(), r * tilt.cos() * angle.sin(), r * tilt.sin()]
    })
}

/// A sea urchin's test as a bead of 12 mm, hollow and sealed: the wall is 1.8 mm, and no investment gets in.
fn urchin_bead() -> Vec<Shell> {
    let outside = ball(21, 40, |tilt, angle| 6.0 * (1.0 + 0.05 * tilt.cos().powi(2) * (10.0 * angle).cos()));
    vec![outside, ball(13, 24, |_, _| 4.0).inward()]
}

/// A rose hip and its stalk, drawn as two bodies that were never joined: they overlap where the stalk goes in.
fn hip_drop() -> Vec<Shell> {
    let body = ball(19, 28, |tilt, _| 5.0 + 2.2 * tilt.sin().abs().powi(3));
    let stalk = [[0.9, 5.5], [0.9, 7.5], [0.8, 10.0], [0.8, 13.0]];
    vec![body, Shell::turned(5.5, &stalk, 13.0, 16, |_, _| 1.0)]
}

/// An open cuff of kelp, 300° of it, with a waved edge.
fn kelp_cuff() -> Vec<Shell> {
    const ROWS: usize = 90;
    let along = |row: usize| share(row, ROWS - 1);
    let ground = |row: f64| {
        let angle = TAU * (1.0 / 12.0 + 10.0 / 12.0 * row);
        (angle, 29.0 + 0.6 * (5.0 * angle).sin(), 1.5 * (3.0 * angle).sin())
    };
    let end = |row: f64, past: f64| {
        let (angle, radius, z) = ground(row);
        [radius * (angle + past).cos(), radius * (angle + past).sin(), z]
    };
    vec![Shell::poles(end(0.0, -0.02), ROWS, 16, end(1.0, 0.02), |row, v| {
        let (angle, radius, z) = ground(along(row));
        let taper = (1.0 - (2.0 * along(row) - 1.0).powi(6)).max(0.04).sqrt();
        let (sin, cos) = (TAU * v).sin_cos();
        let radius = radius + 0.9 * taper.max(0.6) * signed_power(cos, 0.6);
        [radius * angle.cos(), radius * angle.sin(), z + taper * (7.0 + 2.0 * (7.0 * angle + 1.0).sin()) * signed_power(sin, 0.8)]
    })]
}

/// How far a ray from the origin runs inside an ellipsoid that holds the origin.
fn through_ellipsoid(ray: Point, centre: Point, axes: Point) -> f64 {
    let scaled = |point: Point| [point[0] / axes[0], point[1] / axes[1], point[2] / axes[2]];
    let dot = |a: Point, b: Point| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let (ray, centre) = (scaled(ray), scaled(centre));
    let (a, b, c) = (dot(ray, ray), dot(ray, centre), dot(centre, centre) - 1.0);
    (b + (b * b - a * c).sqrt()) / a
}

/// A garden snail for bronze, about 53 mm long. Foot, head and shell all hold the origin, so the farthest of the three along every ray is
/// their true union: one closed shell.
fn snail() -> Vec<Shell> {
    let radius = |tilt: f64, angle: f64| {
        let ray = [tilt.sin(), tilt.cos() * angle.cos(), tilt.cos() * angle.sin()];
        let foot = through_ellipsoid(ray, [3.0, 0.0, -6.0], [26.0, 8.5, 7.0]);
        let head = through_ellipsoid(ray, [14.0, 0.0, 2.0], [16.0, 6.0, 7.0]);
        let shell = through_ellipsoid(ray, [-4.0, 0.0, 8.0], [15.0, 11.0, 15.0]);
        let whorl = 1.0 - 0.06 * (1.5 * ray[2].atan2(ray[0]) + 5.0 * ray[1]).cos().powi(2);
        let ground = if ray[2] < 0.0 { 10.0 / -ray[2] } else { f64::INFINITY };
        foot.max(head).max(shell * whorl).min(ground)
    };
    // The poles lie along the snail: turn z to x.
    let mut shell = ball(35, 48, radius);
    shell.points.iter_mut().for_each(|point| point.rotate_right(1));
    vec![shell.outward()]
}

/// A hedge leaf of 24 mm, exported with a hole in it.
fn torn_leaf() -> Vec<Shell> {
    let end = |x: f64| [x, 0.0, 0.0];
    let mut leaf = Shell::poles(end(-0.4), 24, 14, end(24.4), |row, v| {
        let along = share(row, 23);
        let half = 0.5 + 6.0 * (TAU / 2.0 * along).sin() * (1.0 + 0.1 * (9.0 * TAU * along).sin());
        let (sin, cos) = (TAU * v).sin_cos();
        let y = half * signed_power(cos, 0.9);
        [24.0 * along, y, 0.6 * sin + 0.04 * y * y]
    });
    leaf.triangles.drain(300..304);
    vec![leaf]
}

/// A blackthorn of 9 mm, drawn in inches by somebody who did not say so.
fn thorn_inches() -> Vec<Shell> {
    let profile: Vec<[f64; 2]> = (0..16).map(|row| share(row, 15)).map(|v| [0.075 * (1.0 - v).powf(0.8) + 0.012, 0.35 * v]).collect();
    vec![Shell::turned(-0.01, &profile, 0.37, 18, |_, _| 1.0)]
}

/// Every pattern of the sample studio.
#[must_use]
pub fn all() -> Vec<Drawn> {
    let drawn = |name, shells| Drawn { name, shells };
    vec![
        drawn("barnacle-stud.stl", barnacle_stud()),
        drawn("bramble-band.stl", bramble_band()),
        drawn("hawthorn-berry.stl", hawthorn_berry()),
        drawn("hip-drop.stl", hip_drop()),
        drawn("kelp-cuff.stl", kelp_cuff()),
        drawn("limpet-ring.stl", limpet_ring()),
        drawn("snail.stl", snail()),
        drawn("thorn-inches.stl", thorn_inches()),
        drawn("torn-leaf.stl", torn_leaf()),
        drawn("urchin-bead.stl", urchin_bead()),
        drawn("whelk-pendant.stl", whelk_pendant()),
    ]
}

/// The file as bytes: binary STL.
#[must_use]
pub fn stl(drawn: &Drawn) -> Vec<u8> {
    let triangles: Vec<[[i64; 3]; 3]> =
        drawn.shells.iter().flat_map(|shell| shell.triangles.iter().map(|triangle| shell.corners(*triangle))).collect();
    let mut bytes = vec![b' '; 80];
    let header = format!("Sample pattern {}, drawn by tests/tools/make_patterns.rs", drawn.name);
    bytes[..header.len()].copy_from_slice(header.as_bytes());
    bytes.extend(u32::try_from(triangles.len()).expect("a few thousand triangles").to_le_bytes());
    for triangle in triangles {
        let corners = triangle.map(|corner| corner.map(|steps| steps as f64 / LATTICE));
        for point in std::iter::once(normal(corners)).chain(corners) {
            point.iter().for_each(|number| bytes.extend((*number as f32).to_le_bytes()));
        }
        bytes.extend([0, 0]);
    }
    bytes
}

fn normal([a, b, c]: [Point; 3]) -> Point {
    let side = |to: Point| [to[0] - a[0], to[1] - a[1], to[2] - a[2]];
    let (p, q) = (side(b), side(c));
    let cross = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
    let length = (cross[0] * cross[0] + cross[1] * cross[1] + cross[2] * cross[2]).sqrt();
    // A minus before nothing would be another byte for the same number.
    cross.map(|number| number / length + 0.0)
}

/// Where the files lie.
#[must_use]
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/patterns")
}

/// Writes every file.
///
/// # Errors
/// What the disk says.
pub fn write_all() -> Result<(), String> {
    std::fs::create_dir_all(folder()).map_err(|error| error.to_string())?;
    for drawn in all() {
        let path = folder().join(drawn.name);
        std::fs::write(&path, stl(&drawn)).map_err(|error| format!("{}: {error}", path.display()))?;
    }
    Ok(())
}

/// Compares the files with what would be written; the names of those that differ, are missing or are not ours.
///
/// # Errors
/// What the disk says about the folder.
pub fn differing() -> Result<Vec<String>, String> {
    let drawn = all();
    let differs = |drawn: &&Drawn| std::fs::read(folder().join(drawn.name)).ok().is_none_or(|bytes| bytes != stl(drawn));
    let mut names: Vec<String> = drawn.iter().filter(differs).map(|drawn| drawn.name.to_owned()).collect();
    for file in std::fs::read_dir(folder()).map_err(|error| error.to_string())? {
        let name = file.map_err(|error| error.to_string())?.file_name().to_string_lossy().into_owned();
        if drawn.iter().all(|drawn| drawn.name != name) {
            names.push(name);
        }
    }
    Ok(names)
}

/// Writes, or checks with `--check`.
pub fn main() -> ExitCode {
    let done = match std::env::args().nth(1).as_deref() {
        None => write_all(),
        Some("--check") => differing().and_then(|names| if names.is_empty() { Ok(()) } else { Err(names.join(", ") + " differ") }),
        Some(other) => Err(format!("{other}: only --check is known")),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            let _ = writeln!(std::io::stderr(), "{why}");
            ExitCode::FAILURE
        }
    }
}
