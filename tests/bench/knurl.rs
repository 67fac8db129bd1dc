//! What benches measure: a band of round wire with a knurl, its centre line 9.6 mm, its wire 1.1 mm give or take two hundredths of it.

use std::f64::consts::TAU;
use std::path::Path;

use pourbook::mesh::{Triangle, as_stl};

/// The band, of twice `around` times `across` triangles.
pub fn band(around: usize, across: usize) -> Vec<Triangle> {
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

/// Writes triangles as a binary STL file.
#[allow(dead_code, reason = "not every bench writes one")]
pub fn write(path: &Path, triangles: &[Triangle]) {
    std::fs::write(path, as_stl(triangles)).unwrap();
}
