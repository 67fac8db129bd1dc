//! A tree to scale with its real shapes: main sprue, sprues and pieces, from the side at any turn, or from above.

use super::primitive::{Picture, Point, Role, at};
use crate::calc::solid::{Block, Solid};
use crate::calc::stand::Trunk;

/// A place in the flask in mm; the axis of the main sprue is the third way, upwards from the base's rim.
pub type Place = [f64; 3];

/// A piece on its sprue.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// The place of its order in the key.
    pub order: usize,
    /// Its surface.
    pub facets: Vec<[Place; 3]>,
    /// The two ends of its sprue's middle line.
    pub feed: [Place; 2],
    /// The sprue's diameter.
    pub feed_diameter_mm: f64,
    /// The sprue freezes before the piece it should feed.
    pub starved: bool,
    /// It is the one that is looked at.
    pub chosen: bool,
}

impl Shown {
    /// The middle of what it takes up.
    #[must_use]
    pub fn middle(&self) -> Place {
        let corners = || self.facets.iter().flatten();
        [0, 1, 2].map(|k| {
            let low = corners().map(|corner| corner[k]).fold(f64::INFINITY, f64::min);
            let high = corners().map(|corner| corner[k]).fold(f64::NEG_INFINITY, f64::max);
            if low <= high { f64::midpoint(low, high) } else { self.feed[1][k] }
        })
    }
}

/// The surface of a box or of anything else that is kept clear of; a rod and a hull have none to be drawn.
#[must_use]
pub fn facets_of(solid: &Solid) -> Vec<[Place; 3]> {
    match solid {
        Solid::Block(block) => box_facets(block),
        Solid::Rod(_) | Solid::Hull(_) => Vec::new(),
    }
}

fn box_facets(block: &Block) -> Vec<[Place; 3]> {
    let corners = block.corners();
    // Corners are numbered by their signs along the three axes; each side outwards.
    const SIDES: [[usize; 4]; 6] = [[0, 4, 6, 2], [1, 3, 7, 5], [0, 1, 5, 4], [2, 6, 7, 3], [0, 2, 3, 1], [4, 5, 7, 6]];
    let [a, b, c] = block.axes;
    let turning = a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
    let facets = SIDES.iter().flat_map(|[a, b, c, d]| [[*a, *b, *c], [*a, *c, *d]]);
    facets.map(|[a, b, c]| if turning < 0.0 { [a, c, b] } else { [a, b, c] }.map(|at| corners[at])).collect()
}

/// From where a tree is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Sight {
    /// From the side, turned about its axis by so many degrees.
    Side(f64),
    /// From above, the side that the first sight shows at the foot, turned alike.
    Above(f64),
}

impl Sight {
    /// Where a place is seen, and how near to the eye it lies.
    #[must_use]
    pub fn see(self, [x, y, z]: Place) -> (Point, f64) {
        let (Self::Side(turn) | Self::Above(turn)) = self;
        let (sin, cos) = turn.to_radians().sin_cos();
        let (right, near) = (x * cos - y * sin, x * sin + y * cos);
        match self {
            Self::Side(_) => (at(right, z), near),
            Self::Above(_) => (at(right, -near), z),
        }
    }
}

/// Draws a tree, what is farther from the eye first.
/// A main sprue that freezes before what it should feed is marked.
pub fn tree(picture: &mut Picture, (trunk, starves): (&Trunk, bool), pieces: &[Shown], sight: Sight) {
    let role = if starves { Role::Caution } else { Role::Sprue };
    let mut sorted: Vec<(f64, &Shown)> = pieces.iter().map(|piece| (sight.see(piece.middle()).1, piece)).collect();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0));
    match sight {
        Sight::Side(_) => {
            let behind = sorted.partition_point(|(depth, _)| *depth < 0.0);
            hung(picture, &sorted[..behind], sight);
            let half = trunk.diameter_mm / 2.0;
            picture.block(at(-half, trunk.dome_mm), at(half, trunk.dome_mm + trunk.length_mm), role);
            hung(picture, &sorted[behind..], sight);
        }
        Sight::Above(_) => {
            // What stands above the main sprue's end hides it.
            let below = sorted.partition_point(|(depth, _)| *depth < trunk.dome_mm + trunk.length_mm);
            hung(picture, &sorted[..below], sight);
            picture.circle(at(0.0, 0.0), trunk.diameter_mm / 2.0, Some(role), Some(Role::Ground));
            hung(picture, &sorted[below..], sight);
        }
    }
}

fn hung(picture: &mut Picture, pieces: &[(f64, &Shown)], sight: Sight) {
    for (_, piece) in pieces {
        let [from, to] = piece.feed.map(|end| sight.see(end).0);
        rod(picture, from, to, piece.feed_diameter_mm, if piece.starved { Role::Caution } else { Role::Sprue });
    }
    for (_, piece) in pieces {
        body(picture, piece, sight);
    }
}

/// A rod as wide as it is.
fn rod(picture: &mut Picture, from: Point, to: Point, diameter: f64, role: Role) {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let length = dx.hypot(dy);
    if length < 1e-9 || diameter <= 0.0 {
        return;
    }
    let (nx, ny) = (-dy / length * diameter / 2.0, dx / length * diameter / 2.0);
    let corners = vec![at(from.x + nx, from.y + ny), at(from.x - nx, from.y - ny), at(to.x - nx, to.y - ny), at(to.x + nx, to.y + ny)];
    picture.area(corners, role);
}

/// A piece: the sides of it that face the eye, lit from above at the left, and its number.
fn body(picture: &mut Picture, piece: &Shown, sight: Sight) {
    let mut seen: Vec<(f64, [Point; 3], f32)> = Vec::new();
    for facet in &piece.facets {
        let corners = facet.map(|corner| sight.see(corner));
        let [a, b, c] = corners.map(|(point, _)| point);
        let twice = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        if twice > 0.0 {
            let depth = corners.iter().map(|(_, near)| near).sum::<f64>();
            seen.push((depth, [a, b, c], light(corners)));
        }
    }
    seen.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (corners, light): (Vec<[Point; 3]>, Vec<f32>) = seen.into_iter().map(|(_, corners, light)| (corners, light)).unzip();
    let ends = |pick: fn(&Point) -> f64| {
        let values = corners.iter().flatten().map(pick);
        values.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], value| [low.min(value), high.max(value)])
    };
    let ([left, right], [low, high]) = (ends(|point| point.x), ends(|point| point.y));
    if corners.is_empty() {
        return;
    }
    let middle = at(f64::midpoint(left, right), f64::midpoint(low, high));
    // The middle of a ring is nothing but mould.
    let number = if corners.iter().any(|facet| holds(*facet, middle)) { Role::OnPiece } else { Role::Ink };
    picture.facets(corners, light, Role::Piece(piece.order));
    if piece.chosen {
        for (from, to) in [
            (at(left, low), at(right, low)),
            (at(right, low), at(right, high)),
            (at(right, high), at(left, high)),
            (at(left, high), at(left, low)),
        ] {
            picture.line(from, to, 1.6, Role::Ink);
        }
    }
    picture.text_within(middle, (piece.order + 1).to_string(), (right - left).min(high - low) / 2.0, number);
}

/// Does a triangle hold a place, whichever way it turns?
#[must_use]
pub fn holds([a, b, c]: [Point; 3], at: Point) -> bool {
    let side = |p: Point, q: Point| (q.x - p.x) * (at.y - p.y) - (q.y - p.y) * (at.x - p.x);
    let sides = [side(a, b), side(b, c), side(c, a)];
    sides.iter().all(|side| *side >= 0.0) || sides.iter().all(|side| *side <= 0.0)
}

/// How much light falls on a facet, from 0 to 1.
#[allow(clippy::cast_possible_truncation, reason = "a shade has few digits")]
fn light([a, b, c]: [(Point, f64); 3]) -> f32 {
    // To the right, up, and to the eye.
    let way = |(p, near): (Point, f64), (q, far): (Point, f64)| [p.x - q.x, p.y - q.y, near - far];
    let (u, v) = (way(b, a), way(c, a));
    let n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    let length = n.iter().map(|part| part * part).sum::<f64>().sqrt().max(1e-12);
    let lit = (-0.45 * n[0] + 0.6 * n[1] + 0.66 * n[2]) / length;
    lit.clamp(0.0, 1.0) as f32
}

#[cfg(test)]
mod tests {
    use super::super::primitive::Primitive;
    use super::*;

    fn piece() -> Shown {
        let half = [5.0, 2.0, 3.0];
        let axes = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        let facets = facets_of(&Solid::Block(Block { centre: [20.0, 0.0, 40.0], axes, half }));
        Shown { order: 0, facets, feed: [[4.0, 0.0, 30.0], [15.0, 0.0, 40.0]], feed_diameter_mm: 2.0, starved: false, chosen: false }
    }

    #[test]
    fn every_side_of_a_box_faces_outwards() {
        let piece = piece();
        let middle = piece.middle();
        assert_eq!((piece.facets.len(), middle), (12, [20.0, 0.0, 40.0]));
        for [a, b, c] in &piece.facets {
            let (u, v) = ([0, 1, 2].map(|k| b[k] - a[k]), [0, 1, 2].map(|k| c[k] - a[k]));
            let n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
            assert!((0..3).map(|k| n[k] * (a[k] - middle[k])).sum::<f64>() > 0.0);
        }
    }

    #[test]
    fn a_turn_brings_the_right_hand_side_to_the_eye() {
        let see = |turn| Sight::Side(turn).see([10.0, 0.0, 7.0]);
        let near = |(point, depth): (Point, f64), x: f64, y: f64, is: f64| {
            assert!((point.x - x).abs() < 1e-9 && (point.y - y).abs() < 1e-9 && (depth - is).abs() < 1e-9, "{point:?} {depth}");
        };
        near(see(0.0), 10.0, 7.0, 0.0);
        near(see(90.0), 0.0, 7.0, 10.0);
        near(see(180.0), -10.0, 7.0, 0.0);
        near(Sight::Above(90.0).see([10.0, 0.0, 7.0]), 0.0, -10.0, 7.0);
    }

    #[test]
    fn what_freezes_too_soon_is_marked() {
        let marked = |starved: bool, starves: bool| {
            let mut picture = Picture::new(at(0.0, 0.0), at(1.0, 1.0));
            let trunk = Trunk { diameter_mm: 8.0, length_mm: 50.0, dome_mm: 10.0 };
            tree(&mut picture, (&trunk, starves), &[Shown { starved, ..piece() }], Sight::Side(0.0));
            let caution = |one: &&Primitive| matches!(one, Primitive::Polygon { fill: Role::Caution, .. });
            picture.primitives.iter().filter(caution).count()
        };
        assert_eq!([marked(false, false), marked(true, false), marked(false, true), marked(true, true)], [0, 1, 1, 2]);
    }

    #[test]
    fn seen_from_the_side_a_box_is_as_large_as_it_is() {
        let mut picture = Picture::new(at(0.0, 0.0), at(1.0, 1.0));
        let trunk = Trunk { diameter_mm: 8.0, length_mm: 50.0, dome_mm: 10.0 };
        tree(&mut picture, (&trunk, false), &[piece()], Sight::Side(0.0));
        picture.embrace();
        assert!((picture.to.x - 25.0).abs() < 1e-9 && (picture.to.y - 60.0).abs() < 1e-9, "{:?}", picture.to);
    }
}
