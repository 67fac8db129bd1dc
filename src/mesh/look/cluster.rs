//! A lighter stand-in for a large pattern: corners that lie in one small cube and look the same way become one.
//!
//! The two sides of a thin wall look different ways, so that they never fall together: nothing vanishes, however thin it is. The corner that
//! stands for many lies in their middle, but as far out as the outermost of them, so that the outline stays.

use std::collections::{HashMap, HashSet};

use super::model::{BLOCK, Extent};
use crate::mesh::weld::{Welded, weld};
use crate::mesh::{Triangle, Watch};

/// Fewer triangles, each with the number of one that it stands for.
#[derive(Debug)]
pub(super) struct StandIn {
    pub triangles: Vec<Triangle>,
    pub of: Vec<u32>,
}

/// Cubes along a side at most: a place in one fits nineteen bits.
const MOST_CUBES: f32 = 524_287.0;
/// A normal looks along an axis where it has more than so much of it: midway between an edge of a cube and its side, roughly.
const LEAST_PART: f32 = 0.42;

/// A stand-in of at most `most` triangles; none when asked to stop.
pub(super) fn stand_in(triangles: &[Triangle], most: usize, extent: &Extent, watch: &dyn Watch) -> Option<StandIn> {
    let mesh = weld(triangles);
    if !watch.go_on(0.4) {
        return None;
    }
    // Everything is done in units of the radius, so that a tiny pattern and a huge one are alike.
    let points: Vec<[f32; 3]> = mesh.points.iter().map(|point| shrunk(*point, extent)).collect();
    let (ways, area) = ways(&mesh, &points);
    // A surface that lies anyhow crosses about 1.5 cubes for its area in sides of cubes, and each has two triangles.
    let mut side = ((3.0 * area / most as f64).sqrt() as f32).clamp(2.0 / MOST_CUBES, 1.0);
    for round in 0..24 {
        if !watch.go_on((0.5 + 0.1 * f64::from(round)).min(0.95)) {
            return None;
        }
        let clusters = Clusters::new(&points, &ways, side);
        match clusters.triangles(&mesh, most, watch)? {
            Ok(kept) => return Some(clusters.stand_in(&mesh, &points, &ways, &kept, extent)),
            // So many there would have been.
            Err(expected) => side = (side * ((expected / most as f64).sqrt() as f32 * 1.04).clamp(1.05, 8.0)).min(4.0),
        }
    }
    // Nothing but scattered bits: some of them, evenly.
    let step = triangles.len().div_ceil(most);
    let of: Vec<u32> = (0..triangles.len()).step_by(step).map(|at| at as u32).collect();
    Some(StandIn { triangles: of.iter().map(|at| triangles[*at as usize]).collect(), of })
}

#[allow(clippy::cast_possible_truncation, reason = "a stand-in is rough")]
fn shrunk(point: [f32; 3], extent: &Extent) -> [f32; 3] {
    [0, 1, 2].map(|axis| {
        let part = ((f64::from(point[axis]) - extent.centre[axis]) / extent.radius) as f32;
        if part.is_finite() { part.clamp(-1.0, 1.0) } else { 0.0 }
    })
}

/// Where a point looks to, and how much the surface bends there.
#[derive(Debug, Clone, Copy, Default)]
struct Way {
    /// The sum of the normals round it, each as long as twice its triangle's area.
    normal: [f32; 3],
    /// The sum of their lengths.
    length: f32,
}

impl Way {
    /// How much the point counts where many become one: on an edge far more than on a flat, and on a corner most, so that edges stay.
    fn weight(&self) -> f32 {
        let bend = 1.0 - (dot(self.normal, self.normal).sqrt() / self.length.max(f32::MIN_POSITIVE)).min(1.0);
        1e-4 + bend * bend
    }
}

/// Where every point looks to, and the area of all, in units of the radius.
fn ways(mesh: &Welded, points: &[[f32; 3]]) -> (Vec<Way>, f64) {
    let mut ways = vec![Way::default(); points.len()];
    let mut area = 0.0;
    for triangle in &mesh.triangles {
        let [a, b, c] = triangle.map(|point| points[point as usize]);
        let (u, v) = ([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);
        let n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
        let length = dot(n, n).sqrt();
        area += f64::from(length) / 2.0;
        for point in triangle {
            let way = &mut ways[*point as usize];
            way.length += length;
            way.normal = [0, 1, 2].map(|axis| way.normal[axis] + n[axis]);
        }
    }
    (ways, area)
}

/// Which of a cube's six sides, twelve edges and eight corners a normal looks out of, 0 to 26. The edges of a thin bar look different ways,
/// as its sides do.
fn look_of(normal: [f32; 3]) -> u64 {
    let length = dot(normal, normal).sqrt();
    normal.iter().fold(0, |look, part| 3 * look + if *part > LEAST_PART * length { 2 } else { u64::from(*part >= -LEAST_PART * length) })
}

/// Which points become one.
struct Clusters {
    cluster_of: Vec<u32>,
    count: usize,
}

impl Clusters {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a place within the cubes")]
    fn new(points: &[[f32; 3]], ways: &[Way], side: f32) -> Self {
        let mut numbers: HashMap<u64, u32> = HashMap::new();
        let mut cluster_of = Vec::with_capacity(points.len());
        for (point, way) in points.iter().zip(ways) {
            let cube = point.map(|part| ((part + 1.0) / side).min(MOST_CUBES) as u64);
            let key = look_of(way.normal) << 57 | cube[0] << 38 | cube[1] << 19 | cube[2];
            let new = numbers.len() as u32;
            cluster_of.push(*numbers.entry(key).or_insert(new));
        }
        Self { cluster_of, count: numbers.len() }
    }

    /// The triangles whose corners stay three, each once; or how many there would be, roughly, where they are more than `most`.
    fn triangles(&self, mesh: &Welded, most: usize, watch: &dyn Watch) -> Option<Result<Vec<u32>, f64>> {
        let mut seen = HashSet::new();
        let mut kept = Vec::new();
        for (at, triangle) in mesh.triangles.iter().enumerate() {
            if at % BLOCK == 0 && !watch.go_on(0.7) {
                return None;
            }
            let [a, b, c] = triangle.map(|point| self.cluster_of[point as usize]);
            if a == b || b == c || c == a {
                continue;
            }
            // The same three the same way round are one triangle wherever it begins.
            let first = if a < b && a < c {
                [a, b, c]
            } else if b < c {
                [b, c, a]
            } else {
                [c, a, b]
            };
            if seen.insert(first) {
                kept.push(at as u32);
                if kept.len() > most {
                    // The rest of the file is taken to be like the part that was looked at.
                    return Some(Err(most as f64 * (mesh.triangles.len() as f64 / (at + 1) as f64).clamp(1.0, 64.0)));
                }
            }
        }
        Some(Ok(kept))
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "a stand-in is rough")]
    fn stand_in(&self, mesh: &Welded, points: &[[f32; 3]], ways: &[Way], kept: &[u32], extent: &Extent) -> StandIn {
        let mut sums = vec![([0.0_f64; 3], 0.0_f64, [0.0_f32; 3]); self.count];
        for ((point, way), cluster) in points.iter().zip(ways).zip(&self.cluster_of) {
            let (middle, weight, normal) = &mut sums[*cluster as usize];
            let counts = way.weight();
            let share = counts / dot(way.normal, way.normal).sqrt().max(f32::MIN_POSITIVE);
            *weight += f64::from(counts);
            for axis in 0..3 {
                middle[axis] += f64::from(counts * point[axis]);
                normal[axis] += share * way.normal[axis];
            }
        }
        let mut corners: Vec<[f32; 3]> = sums.iter().map(|(sum, weight, _)| sum.map(|part| (part / weight) as f32)).collect();
        let outward = |normal: &[f32; 3]| normal.map(|part| part / dot(*normal, *normal).sqrt().max(f32::MIN_POSITIVE));
        let outward: Vec<[f32; 3]> = sums.iter().map(|(_, _, normal)| outward(normal)).collect();
        let mut out = vec![0.0_f32; self.count];
        for (point, cluster) in points.iter().zip(&self.cluster_of) {
            let at = *cluster as usize;
            let off = [0, 1, 2].map(|axis| point[axis] - corners[at][axis]);
            out[at] = out[at].max(dot(off, outward[at]));
        }
        for ((corner, way), out) in corners.iter_mut().zip(&outward).zip(&out) {
            *corner = [0, 1, 2].map(|axis| (f64::from(way[axis].mul_add(*out, corner[axis])) * extent.radius + extent.centre[axis]) as f32);
        }
        let corner_of = |point: u32| corners[self.cluster_of[point as usize] as usize];
        let triangles = kept.iter().map(|at| mesh.triangles[*at as usize].map(corner_of)).collect();
        StandIn { triangles, of: kept.to_vec() }
    }
}

fn dot(a: [f32; 3], b: [f32; 3]) -> f32 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
