//! Which triangles belong together where more than two meet at an edge.
//!
//! Going round the edge, material lies between a triangle whose inside is ahead and the next whose inside is behind. Those two belong to
//! one solid. So two cubes that touch along an edge, or share a face that stands there twice, come apart as two.

use super::weld::Welded;

/// A triangle seen along an edge: a hand of a clock.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wing {
    angle: f64,
    /// True when material lies ahead, towards greater angles.
    starts: bool,
    triangle: u32,
}

/// Hands closer than this (radians) point the same way: coordinates of seven digits cannot tell.
const SAME_ANGLE: f64 = 1e-6;

/// The hand of one triangle at the edge from point `low` to point `high`.
pub(super) fn wing(mesh: &Welded, low: u32, high: u32, triangle: u32, is_forward: bool) -> Wing {
    let at = |point: u32| mesh.points[point as usize].map(f64::from);
    let corners = mesh.triangles[triangle as usize];
    let apex = corners.into_iter().find(|&c| c != low && c != high).unwrap_or(low);
    let from = at(low);
    let axis = minus(at(high), from);
    let out = minus(at(apex), from);
    // Any vector across the axis serves as twelve o'clock, as long as all wings of the edge take the same.
    let least = (0..3).min_by(|&a, &b| axis[a].abs().total_cmp(&axis[b].abs())).unwrap_or(0);
    let mut help = [0.0; 3];
    help[least] = 1.0;
    let across = cross(axis, help);
    let third = cross(axis, across);
    let length = dot(axis, axis).sqrt().max(f64::MIN_POSITIVE);
    let angle = (dot(out, third) / length).atan2(dot(out, across));
    // The normal of a triangle that runs along the axis points towards greater angles, so its material lies behind it.
    Wing { angle, starts: !is_forward, triangle }
}

/// Pairs the triangles round one edge; there must be as many that start material as end it.
pub(super) fn partners(mut wings: Vec<Wing>) -> Vec<(u32, u32)> {
    wings.sort_by(|a, b| a.angle.total_cmp(&b.angle).then(a.triangle.cmp(&b.triangle)));
    // Where one solid ends and another starts in the same direction, the end comes first.
    for _ in 0..wings.len() {
        for at in 1..wings.len() {
            if wings[at - 1].starts && !wings[at].starts && wings[at].angle - wings[at - 1].angle < SAME_ANGLE {
                wings.swap(at - 1, at);
            }
        }
    }
    let mut depth = 0_i64;
    let mut lowest = (0, 0);
    for (at, wing) in wings.iter().enumerate() {
        depth += if wing.starts { 1 } else { -1 };
        if depth < lowest.0 {
            lowest = (depth, at + 1);
        }
    }
    let first = lowest.1 % wings.len();
    wings.rotate_left(first);
    let mut open = Vec::new();
    let mut pairs = Vec::new();
    for wing in wings {
        if wing.starts {
            open.push(wing.triangle);
        } else if let Some(start) = open.pop() {
            pairs.push((start, wing.triangle));
        }
    }
    pairs
}

#[inline(always)]
pub(super) fn minus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

#[inline(always)]
pub(super) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

#[inline(always)]
pub(super) fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}
