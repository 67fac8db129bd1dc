//! Whether two closed surfaces pass through each other. Decided with exact signs, so rounding can neither hide a crossing nor invent one.

use super::soup::Triangle;
use super::sums::Span;
use super::tree::Tree;
use robust::{Coord3D, orient3d};

/// How two surfaces lie to each other.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Contact {
    /// They share no point.
    Apart,
    /// They touch or nearly touch, without one edge passing clean through a triangle. Holds some of the triangles involved.
    Touch { ours: Vec<Triangle>, theirs: Vec<Triangle> },
    /// They pass through each other.
    Cross,
    /// The work allowed was used up first.
    Unsettled,
}

/// Touching triangles kept as witnesses.
const WITNESSES: usize = 48;

/// Compares two surfaces. `work` is what is left of the pairs of triangles that may be compared.
pub(super) fn contact(ours: &Tree, theirs: &Tree, work: &mut u64) -> Contact {
    let mut touching = (Vec::new(), Vec::new());
    let mut waiting = vec![(0_u32, 0_u32)];
    while let Some((a, b)) = waiting.pop() {
        let (one, other) = (&ours.nodes[a as usize], &theirs.nodes[b as usize]);
        if !one.span.meets(&other.span) {
            continue;
        }
        if *work == 0 {
            return Contact::Unsettled;
        }
        *work -= 1;
        match (one.count > 0, other.count > 0) {
            (true, true) => {
                for s in ours.leaf(one) {
                    for t in theirs.leaf(other) {
                        match pair(s, t) {
                            Meeting::Apart => {}
                            Meeting::Touch if touching.0.len() + touching.1.len() < 2 * WITNESSES => {
                                push_new(&mut touching.0, s);
                                push_new(&mut touching.1, t);
                            }
                            Meeting::Touch => {}
                            Meeting::Cross => return Contact::Cross,
                        }
                    }
                }
            }
            (true, false) => waiting.extend([(a, other.first), (a, other.first + 1)]),
            (false, true) => waiting.extend([(one.first, b), (one.first + 1, b)]),
            (false, false) if one.span.diagonal() > other.span.diagonal() => waiting.extend([(one.first, b), (one.first + 1, b)]),
            (false, false) => waiting.extend([(a, other.first), (a, other.first + 1)]),
        }
    }
    if touching.0.is_empty() { Contact::Apart } else { Contact::Touch { ours: touching.0, theirs: touching.1 } }
}

fn push_new(list: &mut Vec<Triangle>, triangle: &Triangle) {
    if list.last() != Some(triangle) {
        list.push(*triangle);
    }
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Meeting {
    Apart,
    Touch,
    Cross,
}

/// Which side of the plane through `a`, `b`, `c` a point is on: −1, 0 or 1, exactly.
fn side(a: [f32; 3], b: [f32; 3], c: [f32; 3], point: [f32; 3]) -> i8 {
    let coord = |p: [f32; 3]| Coord3D { x: f64::from(p[0]), y: f64::from(p[1]), z: f64::from(p[2]) };
    let sign = orient3d(coord(a), coord(b), coord(c), coord(point));
    i8::from(sign > 0.0) - i8::from(sign < 0.0)
}

fn pair(s: &Triangle, t: &Triangle) -> Meeting {
    if !span(s).meets(&span(t)) {
        return Meeting::Apart;
    }
    let s_sides = s.map(|corner| side(t[0], t[1], t[2], corner));
    if one_sided(s_sides) {
        return Meeting::Apart;
    }
    let t_sides = t.map(|corner| side(s[0], s[1], s[2], corner));
    if one_sided(t_sides) {
        return Meeting::Apart;
    }
    match (pierce(s, s_sides, t), pierce(t, t_sides, s)) {
        (Meeting::Cross, _) | (_, Meeting::Cross) => Meeting::Cross,
        (Meeting::Apart, Meeting::Apart) => Meeting::Apart,
        _ => Meeting::Touch,
    }
}

fn span(triangle: &Triangle) -> Span {
    let mut span = Span::NOTHING;
    triangle.iter().for_each(|corner| span.take(*corner));
    span
}

fn one_sided(sides: [i8; 3]) -> bool {
    sides == [1, 1, 1] || sides == [-1, -1, -1]
}

/// Whether an edge of `s` passes through `t`; `sides` are the sides of the corners of `s`.
fn pierce(s: &Triangle, sides: [i8; 3], t: &Triangle) -> Meeting {
    let mut found = Meeting::Apart;
    for k in 0..3 {
        let (from, to) = (k, (k + 1) % 3);
        if sides[from] * sides[to] > 0 {
            continue;
        }
        if sides[from] == 0 && sides[to] == 0 {
            // An edge in the plane of the other triangle: near enough to look closer by other means.
            found = Meeting::Touch;
            continue;
        }
        let turns: [i8; 3] = std::array::from_fn(|j| side(s[from], s[to], t[j], t[(j + 1) % 3]));
        let within = !(turns.contains(&1) && turns.contains(&-1));
        if within && !turns.contains(&0) && sides[from] * sides[to] < 0 {
            return Meeting::Cross;
        }
        if within {
            found = Meeting::Touch;
        }
    }
    found
}
