//! The rough shape of a pattern: corners of a simple solid around it, and few triangles that look like it.

use super::Triangle;
use super::look::stand_in_of;

/// A shape to draw a pattern by, and to keep clear of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Rough {
    /// The corners of a convex solid that holds the whole pattern: what is left between planes that touch it, square to the thirteen ways
    /// through the middle of a cube and its faces, edges and corners.
    pub around: Vec<[f64; 3]>,
    /// Triangles that look like it from some way off.
    pub triangles: Vec<Triangle>,
}

/// Triangles of a rough shape at most.
const MOST: usize = 320;

/// The rough shape of some triangles; none where they have no extent at all.
#[must_use]
pub fn rough(triangles: &[Triangle]) -> Option<Rough> {
    let around = around(triangles)?;
    Some(Rough { around, triangles: stand_in_of(triangles, MOST)? })
}

/// One of every two opposite ways.
const WAYS: [[f64; 3]; 13] = [
    [1.0, 0.0, 0.0],
    [0.0, 1.0, 0.0],
    [0.0, 0.0, 1.0],
    [1.0, 1.0, 0.0],
    [1.0, -1.0, 0.0],
    [1.0, 0.0, 1.0],
    [1.0, 0.0, -1.0],
    [0.0, 1.0, 1.0],
    [0.0, 1.0, -1.0],
    [1.0, 1.0, 1.0],
    [1.0, 1.0, -1.0],
    [1.0, -1.0, 1.0],
    [1.0, -1.0, -1.0],
];

/// A plane that all of it lies on one side of: `way · point ≤ far`.
struct Plane {
    way: [f64; 3],
    far: f64,
}

fn around(triangles: &[Triangle]) -> Option<Vec<[f64; 3]>> {
    let mut ends = [[f64::INFINITY, f64::NEG_INFINITY]; WAYS.len()];
    for corner in triangles.iter().flatten() {
        let corner = corner.map(f64::from);
        for (way, [low, high]) in WAYS.iter().zip(&mut ends) {
            let along = dot(*way, corner);
            (*low, *high) = (low.min(along), high.max(along));
        }
    }
    let size = ends[..3].iter().map(|[low, high]| high - low).fold(0.0, f64::max);
    let far = ends.iter().flatten().fold(0.0_f64, |most, end| most.max(end.abs()));
    if !(size > 0.0 && far.is_finite()) {
        return None;
    }
    // A hair's breadth more, so that no rounding leaves a corner outside.
    let more = 1e-7 * size + 1e-12 * far;
    let planes: Vec<Plane> = (WAYS.iter().zip(&ends))
        .flat_map(|(way, [low, high])| [Plane { way: *way, far: high + more }, Plane { way: way.map(|part| -part), far: more - low }])
        .collect();
    Some(corners(&planes, 1e-9 * far + more * 0.01, 1e-6 * size))
}

/// The corners of what lies inside all planes: where three meet and no other cuts it off. Corners nearer than `same` are one.
fn corners(planes: &[Plane], slack: f64, same: f64) -> Vec<[f64; 3]> {
    let mut found: Vec<[f64; 3]> = Vec::new();
    for (i, a) in planes.iter().enumerate() {
        for (j, b) in planes.iter().enumerate().skip(i + 1) {
            for c in &planes[j + 1..] {
                let Some(point) = meeting(a, b, c) else { continue };
                let inside = planes.iter().all(|plane| dot(plane.way, point) <= plane.far + slack);
                let new = inside && found.iter().all(|other| (0..3).any(|axis| (other[axis] - point[axis]).abs() > same));
                if new {
                    found.push(point);
                }
            }
        }
    }
    found
}

fn meeting(a: &Plane, b: &Plane, c: &Plane) -> Option<[f64; 3]> {
    let (bc, ca, ab) = (cross(b.way, c.way), cross(c.way, a.way), cross(a.way, b.way));
    let volume = dot(a.way, bc);
    (volume.abs() > 0.5).then(|| [0, 1, 2].map(|axis| (a.far * bc[axis] + b.far * ca[axis] + c.far * ab[axis]) / volume))
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ball(radius: f32, rings: u16) -> Vec<Triangle> {
        let point = |u: u16, v: u16| {
            let (a, b) = (std::f32::consts::PI * f32::from(u) / f32::from(rings), std::f32::consts::PI * f32::from(v) / f32::from(rings));
            [radius * a.sin() * b.cos() + 3.0, radius * a.sin() * b.sin(), radius * a.cos()]
        };
        let mut triangles = Vec::new();
        for u in 0..rings {
            for v in 0..2 * rings {
                triangles.push([point(u, v), point(u + 1, v), point(u + 1, v + 1)]);
                triangles.push([point(u, v), point(u + 1, v + 1), point(u, v + 1)]);
            }
        }
        triangles
    }

    #[test]
    fn a_box_has_its_eight_corners() {
        let [l, w, h] = [4.0_f32, 2.0, 1.0];
        let corner = |n: u8| [if n & 1 == 1 { l } else { 0.0 }, if n & 2 == 2 { w } else { 0.0 }, if n & 4 == 4 { h } else { 0.0 }];
        let triangles: Vec<Triangle> = (0..8).map(|n| [corner(n), corner((n + 1) % 8), corner((n + 3) % 8)]).collect();
        let around = rough(&triangles).unwrap().around;
        assert_eq!(around.len(), 8, "{around:?}");
        for n in 0..8 {
            let is = corner(n).map(f64::from);
            assert!(around.iter().any(|point| (0..3).all(|k| (point[k] - is[k]).abs() < 1e-5)), "{is:?}");
        }
    }

    #[test]
    fn a_ball_is_held_closely_and_wholly() {
        let triangles = ball(10.0, 60);
        let shape = rough(&triangles).unwrap();
        assert!(shape.triangles.len() <= MOST && shape.triangles.len() > 60, "{}", shape.triangles.len());
        for point in &shape.around {
            let off = ((point[0] - 3.0).powi(2) + point[1].powi(2) + point[2].powi(2)).sqrt();
            assert!((10.0..11.6).contains(&off), "{off}");
        }
        // In every way the solid goes at least as far as the ball.
        for n in 0..500_u16 {
            let (a, b) = (f64::from(n) * 2.399, f64::from(n % 50) / 25.0 - 1.0);
            let way = [(1.0 - b * b).sqrt() * a.cos(), (1.0 - b * b).sqrt() * a.sin(), b];
            let most = shape.around.iter().map(|point| dot(way, *point)).fold(f64::NEG_INFINITY, f64::max);
            let ball = triangles.iter().flatten().map(|corner| dot(way, corner.map(f64::from))).fold(f64::NEG_INFINITY, f64::max);
            assert!(most >= ball, "{most} {ball}");
        }
    }

    #[test]
    fn a_flat_thing_has_corners_and_a_point_none() {
        let flat = [[[0.0, 0.0, 0.0], [5.0, 0.0, 0.0], [0.0, 5.0, 0.0]]];
        assert!(rough(&flat).unwrap().around.len() >= 3);
        assert_eq!(rough(&[[[1.0; 3]; 3]]), None);
    }
}
