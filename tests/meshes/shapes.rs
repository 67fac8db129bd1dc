//! Shapes made here: boxes, spheres and tori as triangles, and binary STL of them.

use pourbook::mesh::Triangle;
use std::f64::consts::PI;

pub fn stl(triangles: &[Triangle]) -> Vec<u8> {
    let mut bytes = vec![0; 80];
    bytes.extend((triangles.len() as u32).to_le_bytes());
    for triangle in triangles {
        bytes.extend([0; 12]);
        triangle.as_flattened().iter().for_each(|x| bytes.extend(x.to_le_bytes()));
        bytes.extend([0; 2]);
    }
    bytes
}

pub fn moved(triangles: &[Triangle], by: [f64; 3]) -> Vec<Triangle> {
    mapped(triangles, |p| std::array::from_fn(|axis| p[axis] + by[axis]))
}

pub fn mapped(triangles: &[Triangle], f: impl Fn([f64; 3]) -> [f64; 3]) -> Vec<Triangle> {
    triangles.iter().map(|t| t.map(|c| f(c.map(f64::from)).map(|x| x as f32))).collect()
}

pub fn turned(triangles: &[Triangle]) -> Vec<Triangle> {
    triangles.iter().map(|[a, b, c]| [*a, *c, *b]).collect()
}

/// A box from `low` to `high`, twelve triangles facing outward.
pub fn block(low: [f32; 3], high: [f32; 3]) -> Vec<Triangle> {
    let at = |k: usize| std::array::from_fn(|axis| if k >> axis & 1 == 1 { high[axis] } else { low[axis] });
    let quads = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
    quads.iter().flat_map(|q| [[at(q[0]), at(q[1]), at(q[2])], [at(q[0]), at(q[2]), at(q[3])]]).collect()
}

/// A ball of `rows` × `columns` round the origin, turned a little so that nothing lies along an axis.
pub fn ball(radius: f64, rows: usize, columns: usize) -> Vec<Triangle> {
    let at = |i: usize, j: usize| -> [f32; 3] {
        let (theta, phi) = (PI * i as f64 / rows as f64, 2.0 * PI * (j % columns) as f64 / columns as f64);
        let ring = if i == 0 || i == rows { 0.0 } else { radius * theta.sin() };
        [ring * phi.cos(), ring * phi.sin(), radius * theta.cos()].map(|x| x as f32)
    };
    let mut out = Vec::new();
    for i in 0..rows {
        for j in 0..columns {
            let (a, b, c, d) = (at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
            if i + 1 < rows {
                out.push([a, b, c]);
            }
            if i > 0 {
                out.push([a, c, d]);
            }
        }
    }
    out
}

/// A ring of round wire.
pub fn torus(big: f64, small: f64, n: usize, m: usize) -> Vec<Triangle> {
    let at = |i: usize, j: usize| -> [f32; 3] {
        let (u, v) = (2.0 * PI * (i % n) as f64 / n as f64, 2.0 * PI * (j % m) as f64 / m as f64);
        [(big + small * v.cos()) * u.cos(), (big + small * v.cos()) * u.sin(), small * v.sin()].map(|x| x as f32)
    };
    (0..n * m)
        .flat_map(|k| {
            let (i, j) = (k / m, k % m);
            [[at(i, j), at(i + 1, j), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i, j + 1)]]
        })
        .collect()
}
