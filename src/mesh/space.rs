//! Triangles in a tree of boxes, for rays and nearest points.
//!
//! Everything here is in units of the model's diagonal about the middle of its box, so that neither a far place nor an absurd unit costs digits.

use super::radial::{cross, dot, minus};
use super::soup::Triangle;
use super::sums::{Span, span_of};
use obvhs::BvhBuildParams;
use obvhs::aabb::Aabb;
use obvhs::bvh2::Bvh2;
use obvhs::bvh2::builder::build_bvh2;
use obvhs::ray::{Ray, RayHit};
use std::time::Duration;

/// The triangles of a mesh, in the tree's order.
pub(super) struct Space {
    bvh: Bvh2,
    corners: Vec<Triangle>,
    /// The number each triangle has in the file.
    pub numbers: Vec<u32>,
    centre: [f64; 3],
    /// How many mm a unit is.
    pub unit_mm: f64,
}

/// Where a ray meets a triangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Hit {
    pub distance: f64,
    /// The triangle's place in the tree's order.
    pub at: usize,
    /// True where the ray leaves through the side the triangle faces.
    pub leaves: bool,
}

/// A point of the surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Near {
    pub distance: f64,
    pub point: [f64; 3],
}

/// What boxes are widened by: more than their 32 bits can round off.
const PAD: f32 = 1e-6;
/// How far from its start a ray must be to meet anything.
pub(super) const LEAST: f64 = 2e-6;

impl Space {
    /// A tree over the triangles with these numbers; nothing where there are none, or all lie in one point.
    pub fn new(triangles: &[Triangle], numbers: Vec<u32>) -> Option<Self> {
        let span = span_of(triangles);
        let unit_mm = span.diagonal();
        if numbers.is_empty() || unit_mm <= 0.0 || !unit_mm.is_finite() {
            return None;
        }
        let centre = span.centre();
        let scaled = |number: u32| -> Triangle {
            triangles[number as usize].map(|corner| std::array::from_fn(|axis| ((f64::from(corner[axis]) - centre[axis]) / unit_mm) as f32))
        };
        let boxes: Vec<Aabb> = numbers.iter().map(|&number| box_of(&scaled(number))).collect();
        let bvh = build_bvh2(&boxes, BvhBuildParams::very_fast_build(), &mut Duration::default());
        let numbers: Vec<u32> = bvh.primitive_indices.iter().map(|&at| numbers[at as usize]).collect();
        let corners = numbers.iter().map(|&number| scaled(number)).collect();
        Some(Self { bvh, corners, numbers, centre, unit_mm })
    }

    pub fn len(&self) -> usize {
        self.corners.len()
    }

    /// The corners of a triangle.
    pub fn corners(&self, at: usize) -> [[f64; 3]; 3] {
        self.corners[at].map(|corner| corner.map(f64::from))
    }

    /// The normal on the side a triangle faces, and its area; nothing where it has none.
    pub fn normal(&self, at: usize) -> Option<([f64; 3], f64)> {
        let [a, b, c] = self.corners(at);
        let normal = cross(minus(b, a), minus(c, a));
        let length = dot(normal, normal).sqrt();
        (length > 0.0).then(|| (normal.map(|x| x / length), 0.5 * length))
    }

    /// The middle of a triangle.
    pub fn middle(&self, at: usize) -> [f64; 3] {
        let [a, b, c] = self.corners(at);
        std::array::from_fn(|axis| (a[axis] + b[axis] + c[axis]) / 3.0)
    }

    /// A place in the file's mm.
    pub fn place_mm(&self, point: [f64; 3]) -> [f64; 3] {
        std::array::from_fn(|axis| self.centre[axis] + self.unit_mm * point[axis])
    }

    /// A place of the file, given in mm.
    pub fn in_units(&self, place: [f64; 3]) -> [f64; 3] {
        std::array::from_fn(|axis| (place[axis] - self.centre[axis]) / self.unit_mm)
    }

    /// The first triangle along a ray of length one and not farther than `within`, but for `skip`.
    pub fn first(&self, from: [f64; 3], ray: [f64; 3], skip: usize, within: f64) -> Option<Hit> {
        let mut best: Option<Hit> = None;
        self.bvh.ray_traverse(as_ray(from, ray, within), &mut RayHit::none(), |_, at| match self.meet(at, from, ray) {
            Some(hit)
                if at != skip && hit.distance > LEAST && hit.distance <= within && best.is_none_or(|best| hit.distance < best.distance) =>
            {
                best = Some(hit);
                hit.distance as f32
            }
            _ => f32::INFINITY,
        });
        best
    }

    /// Everything along a ray, in no order, but for `skip`.
    pub fn each(&self, from: [f64; 3], ray: [f64; 3], skip: usize, mut take: impl FnMut(Hit)) {
        self.bvh.ray_traverse_anyhit(as_ray(from, ray, f64::INFINITY), |_, at| {
            if at != skip
                && let Some(hit) = self.meet(at, from, ray)
                && hit.distance > LEAST
            {
                take(hit);
            }
        });
    }

    fn meet(&self, at: usize, from: [f64; 3], ray: [f64; 3]) -> Option<Hit> {
        let [a, b, c] = self.corners(at).map(|corner| minus(corner, from));
        let turns = [dot(ray, cross(b, c)), dot(ray, cross(c, a)), dot(ray, cross(a, b))];
        // An edge belongs to both its triangles, so nothing slips through between them.
        if !(turns.iter().all(|&turn| turn >= 0.0) || turns.iter().all(|&turn| turn <= 0.0)) {
            return None;
        }
        let normal = cross(minus(b, a), minus(c, a));
        let across = dot(ray, normal);
        (across != 0.0).then(|| Hit { distance: dot(a, normal) / across, at, leaves: across > 0.0 })
    }

    /// Gives `take` the triangles about a point, near boxes first, each with its nearest point. `take` may lower the limit, a squared distance,
    /// beyond which nothing is looked at; it starts at `within`.
    pub fn each_near(&self, point: [f64; 3], within: f64, mut take: impl FnMut(usize, [f64; 3], &mut f64)) {
        let mut limit = within * within;
        let away = |node: usize| -> f64 {
            let aabb = self.bvh.nodes[node].aabb();
            let (low, high) = (aabb.min.to_array(), aabb.max.to_array());
            let out = |axis: usize| (f64::from(low[axis]) - point[axis]).max(point[axis] - f64::from(high[axis])).max(0.0);
            out(0) * out(0) + out(1) * out(1) + out(2) * out(2)
        };
        let mut waiting = vec![(away(0), 0_usize)];
        while let Some((distance, node)) = waiting.pop() {
            if distance >= limit {
                continue;
            }
            let node = &self.bvh.nodes[node];
            let first = node.first_index as usize;
            if node.prim_count > 0 {
                for at in first..first + node.prim_count as usize {
                    take(at, nearest_in(self.corners(at), point), &mut limit);
                }
                continue;
            }
            let (one, other) = ((away(first), first), (away(first + 1), first + 1));
            // The last in is the first out.
            waiting.extend(if one.0 < other.0 { [other, one] } else { [one, other] });
        }
    }
}

fn box_of(triangle: &Triangle) -> Aabb {
    let mut span = Span::NOTHING;
    triangle.iter().for_each(|corner| span.take(*corner));
    Aabb::new(span.low.map(|x| x - PAD).into(), span.high.map(|x| x + PAD).into())
}

fn as_ray(from: [f64; 3], ray: [f64; 3], within: f64) -> Ray {
    Ray::new(from.map(|x| x as f32).into(), ray.map(|x| x as f32).into(), 0.0, within as f32)
}

pub(super) fn square(v: [f64; 3]) -> f64 {
    dot(v, v)
}

/// A place so far along a ray.
pub(super) fn along(from: [f64; 3], ray: [f64; 3], distance: f64) -> [f64; 3] {
    std::array::from_fn(|axis| from[axis] + distance * ray[axis])
}

/// A vector of length one; nothing for one of no length.
pub(super) fn unit(v: [f64; 3]) -> Option<[f64; 3]> {
    let length = square(v).sqrt();
    (length > 0.0).then(|| v.map(|x| x / length))
}

/// The point of a triangle nearest to another point, by the region of its corners and edges the point stands before (after Ericson,
/// Real-Time Collision Detection, 5.1.5).
pub(super) fn nearest_in([a, b, c]: [[f64; 3]; 3], point: [f64; 3]) -> [f64; 3] {
    let (ab, ac) = (minus(b, a), minus(c, a));
    let from = |corner: [f64; 3]| (dot(ab, minus(point, corner)), dot(ac, minus(point, corner)));
    let ((d1, d2), (d3, d4), (d5, d6)) = (from(a), from(b), from(c));
    if d1 <= 0.0 && d2 <= 0.0 {
        return a;
    }
    if d3 >= 0.0 && d4 <= d3 {
        return b;
    }
    let vc = d1 * d4 - d3 * d2;
    if vc <= 0.0 && d1 >= 0.0 && d3 <= 0.0 {
        return along(a, ab, d1 / (d1 - d3));
    }
    if d6 >= 0.0 && d5 <= d6 {
        return c;
    }
    let vb = d5 * d2 - d1 * d6;
    if vb <= 0.0 && d2 >= 0.0 && d6 <= 0.0 {
        return along(a, ac, d2 / (d2 - d6));
    }
    let va = d3 * d6 - d5 * d4;
    if va <= 0.0 && d4 - d3 >= 0.0 && d5 - d6 >= 0.0 {
        return along(b, minus(c, b), (d4 - d3) / ((d4 - d3) + (d5 - d6)));
    }
    let sum = va + vb + vc;
    if sum == 0.0 {
        return a;
    }
    along(along(a, ab, vb / sum), ac, vc / sum)
}
