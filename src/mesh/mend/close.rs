//! Closing holes: each rim is filled with the triangles of least area that span it.

use std::collections::HashMap;

use super::Change;
use crate::mesh::radial::{cross, dot, minus};
use crate::mesh::weld::Welded;

/// Rims up to this length are filled with the least area, which takes the cube of it; longer ones from their middle.
const LONGEST_LEAST: usize = 120;

/// Closes every rim that comes back to where it began; `None` where there is none.
pub(super) fn holes(mesh: &mut Welded) -> Option<Change> {
    let rims = rims(mesh);
    let (mut added, mut area_mm2, mut holes) = (0, 0.0, 0);
    for rim in rims {
        let fresh = if rim.len() <= LONGEST_LEAST { least_area(mesh, &rim) } else { from_middle(mesh, &rim) };
        let before = mesh.triangles.len();
        for triangle in fresh {
            area_mm2 += area(mesh.corners(triangle).map(|corner| corner.map(f64::from)));
            mesh.triangles.push(triangle);
        }
        added += mesh.triangles.len() - before;
        holes += 1;
    }
    (holes > 0).then_some(Change::Closed { holes, triangles: added as u32, area_mm2 })
}

/// Rims of holes, each as its points in the sense a new triangle must run: against the triangles at its edge.
fn rims(mesh: &Welded) -> Vec<Vec<u32>> {
    let mut open: HashMap<[u32; 2], i32> = HashMap::with_capacity(mesh.triangles.len() * 3 / 2);
    for triangle in &mesh.triangles {
        for side in 0..3 {
            let (from, to) = (triangle[side], triangle[(side + 1) % 3]);
            *open.entry([from.min(to), from.max(to)]).or_default() += if from < to { 1 } else { -1 };
        }
    }
    let mut edges: Vec<[u32; 2]> = Vec::new();
    #[allow(clippy::iter_over_hash_type, reason = "sorted below")]
    for ([low, high], way) in open {
        match way {
            1 => edges.push([high, low]),
            -1 => edges.push([low, high]),
            _ => {}
        }
    }
    edges.sort_unstable();
    walks(&edges)
}

/// Parts sorted edges into rounds that pass no point twice. Where rims touch at a point, it is a matter of taste which is which.
fn walks(edges: &[[u32; 2]]) -> Vec<Vec<u32>> {
    let mut used = vec![false; edges.len()];
    let mut rims = Vec::new();
    let on = |from: u32, used: &[bool]| {
        let first = edges.partition_point(|edge| edge[0] < from);
        (first..edges.len()).take_while(|at| edges[*at][0] == from).find(|at| !used[*at])
    };
    for start in 0..edges.len() {
        if used[start] {
            continue;
        }
        let mut path = vec![edges[start][0]];
        let mut place: HashMap<u32, usize> = HashMap::from([(edges[start][0], 0)]);
        let mut at = edges[start][0];
        while let Some(edge) = on(at, &used) {
            used[edge] = true;
            at = edges[edge][1];
            match place.get(&at).copied() {
                Some(back) => {
                    // Round: what lies behind it on the path goes on.
                    let rim = path.split_off(back + 1);
                    rim.iter().for_each(|point| {
                        place.remove(point);
                    });
                    let round = [&[at][..], &rim].concat();
                    if round.len() >= 3 {
                        rims.push(round);
                    }
                }
                None => {
                    place.insert(at, path.len());
                    path.push(at);
                }
            }
        }
    }
    rims
}

fn area([a, b, c]: [[f64; 3]; 3]) -> f64 {
    let normal = cross(minus(b, a), minus(c, a));
    dot(normal, normal).sqrt() / 2.0
}

/// The triangles of least area over a rim (G. Barequet, M. Sharir 1995, by dynamic programming over its stretches).
fn least_area(mesh: &Welded, rim: &[u32]) -> Vec<[u32; 3]> {
    let count = rim.len();
    let at = |k: usize| mesh.points[rim[k] as usize].map(f64::from);
    let mut cost = vec![0.0_f64; count * count];
    let mut split = vec![0_usize; count * count];
    for stretch in 2..count {
        for from in 0..count - stretch {
            let to = from + stretch;
            let mut best = (f64::INFINITY, from + 1);
            for middle in from + 1..to {
                let whole = cost[from * count + middle] + cost[middle * count + to] + area([at(from), at(middle), at(to)]);
                if whole < best.0 {
                    best = (whole, middle);
                }
            }
            (cost[from * count + to], split[from * count + to]) = best;
        }
    }
    let mut triangles = Vec::with_capacity(count - 2);
    let mut waiting = vec![(0, count - 1)];
    while let Some((from, to)) = waiting.pop() {
        if to < from + 2 {
            continue;
        }
        let middle = split[from * count + to];
        triangles.push([rim[from], rim[middle], rim[to]]);
        waiting.extend([(from, middle), (middle, to)]);
    }
    triangles
}

/// Triangles from the middle of a long rim to each of its edges.
fn from_middle(mesh: &mut Welded, rim: &[u32]) -> Vec<[u32; 3]> {
    let mut sum = [0.0; 3];
    for &point in rim {
        for (axis, value) in sum.iter_mut().enumerate() {
            *value += f64::from(mesh.points[point as usize][axis]) / rim.len() as f64;
        }
    }
    let middle = mesh.points.len() as u32;
    mesh.points.push(sum.map(|value| value as f32));
    (0..rim.len()).map(|k| [middle, rim[k], rim[(k + 1) % rim.len()]]).collect()
}
