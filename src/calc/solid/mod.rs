//! Convex solids and how far they are apart: patterns as boxes or hulls, sprues as rods. Never farther than they really are.
//!
//! The distance of two solids is found step by step after E. G. Gilbert, D. W. Johnson, S. S. Keerthi, "A fast procedure for computing the
//! distance between complex objects in three-dimensional space" (1988, from memory): the point of their difference that is nearest to the
//! origin. What is given out is not the length that was found but what it proves: along its direction one solid ends before the other begins,
//! and nothing that is so far apart in one direction is nearer in any.

mod nearest;

use crate::quantity::Finite;
pub(super) use nearest::farthest;
use nearest::nearest;

/// A point or a way in mm.
pub type Point = [f64; 3];

/// A convex solid, in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum Solid {
    /// A box that may stand askew.
    Block(Block),
    /// A round rod with round ends, such as a sprue with its welds.
    Rod(Rod),
    /// The hull of these points, of which there is at least one.
    Hull(Vec<Point>),
}

/// A box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// Its middle.
    pub centre: Point,
    /// Its three ways, of length one and square to each other.
    pub axes: [Point; 3],
    /// Half its sides along them.
    pub half: Point,
}

/// A rod.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rod {
    /// The middles of its round ends.
    pub ends: [Point; 2],
    /// Its radius.
    pub radius: f64,
}

impl Block {
    /// The eight corners.
    #[must_use]
    pub fn corners(&self) -> [Point; 8] {
        std::array::from_fn(|corner| {
            let signs = [0, 1, 2].map(|axis| if corner >> axis & 1 == 1 { self.half[axis] } else { -self.half[axis] });
            std::array::from_fn(|k| self.centre[k] + (0..3).map(|axis| signs[axis] * self.axes[axis][k]).sum::<f64>())
        })
    }
}

impl Solid {
    /// How thick it is around its corners: what a rod has around its middle line.
    fn round(&self) -> f64 {
        match self {
            Self::Rod(rod) => rod.radius,
            Self::Block(_) | Self::Hull(_) => 0.0,
        }
    }

    /// Its corners; of a rod, the ends of its middle line.
    fn corners(&self) -> std::borrow::Cow<'_, [Point]> {
        match self {
            Self::Block(block) => block.corners().to_vec().into(),
            Self::Rod(rod) => (&rod.ends[..]).into(),
            Self::Hull(points) => points.as_slice().into(),
        }
    }

    /// The farthest it reaches from the axis z.
    #[must_use]
    pub fn reach(&self) -> f64 {
        self.round() + self.corners().iter().map(|[x, y, _]| x.hypot(*y)).fold(0.0, f64::max)
    }

    /// The lowest and the highest of it.
    #[must_use]
    pub fn heights(&self) -> [f64; 2] {
        let corners = self.corners();
        let z = |pick: fn(f64, f64) -> f64, start: f64| corners.iter().map(|corner| corner[2]).fold(start, pick);
        [z(f64::min, f64::INFINITY) - self.round(), z(f64::max, f64::NEG_INFINITY) + self.round()]
    }

    /// The box along the axes round its corners, lowest and highest, and how thick it is around them.
    #[must_use]
    pub fn box_around(&self) -> ([Point; 2], f64) {
        let corners = self.corners();
        let side = |pick: fn(f64, f64) -> f64, start: f64| [0, 1, 2].map(|k| corners.iter().map(|corner| corner[k]).fold(start, pick));
        ([side(f64::min, f64::INFINITY), side(f64::max, f64::NEG_INFINITY)], self.round())
    }

    /// Are all its numbers finite, and has it a corner at all?
    #[must_use]
    pub fn is_sound(&self) -> bool {
        let corners = self.corners();
        !corners.is_empty()
            && corners.iter().flatten().chain([&self.round()]).all(|number| Finite::new(*number).is_some())
            && self.round() >= 0.0
    }
}

/// How far two solids are apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Apart {
    /// They are at least so far apart in mm. Nought or less where they touch or lie in each other: then it says by how little they may have to
    /// be moved, and no more than that.
    pub at_least_mm: f64,
    /// They are no farther apart than this, in mm; nought where they touch.
    pub at_most_mm: f64,
    /// Where they are nearest: a place on the first and one on the second.
    pub places: [Point; 2],
}

/// A length is well proven where the proof is no shorter than this share of it.
const PROVEN: f64 = 1.0 - 1e-9;

/// How far two solids are apart.
#[must_use]
pub fn apart(one: &Solid, other: &Solid) -> Apart {
    let (a, b) = (one.corners(), other.corners());
    let round = one.round() + other.round();
    let found = nearest(&a, &b);
    let length = length(minus(found.places[0], found.places[1]));
    let mut at_least = found.proven;
    if at_least < length * PROVEN || at_least <= 0.0 {
        // In each other, or so near that the way between them is not known well: a box is pushed out of another, and parted from it, along the
        // ways of its faces and of pairs of edges.
        at_least = ways(one).into_iter().chain(ways(other)).chain(crossed(one, other)).map(|way| gap(&a, &b, way)).fold(at_least, f64::max);
    }
    // From the middle lines out to the surfaces, where that leaves anything between them.
    let out = |from: Point, to: Point, by: f64| if length > 0.0 { along(from, minus(to, from), by / length) } else { from };
    let places = [out(found.places[0], found.places[1], one.round()), out(found.places[1], found.places[0], other.round())];
    let at_most_mm = if at_least < 0.0 { 0.0 } else { (length - round).max(0.0) };
    Apart { at_least_mm: at_least - round, at_most_mm, places }
}

/// The ways of a solid's faces, where they are known.
fn ways(solid: &Solid) -> Vec<Point> {
    match solid {
        Solid::Block(block) => block.axes.into_iter().flat_map(|axis| [axis, axis.map(|x| -x)]).collect(),
        Solid::Rod(_) | Solid::Hull(_) => Vec::new(),
    }
}

/// The ways square to an edge of each.
fn crossed(one: &Solid, other: &Solid) -> Vec<Point> {
    let edges = |solid: &Solid| match solid {
        Solid::Block(block) => block.axes.to_vec(),
        Solid::Rod(rod) => vec![minus(rod.ends[1], rod.ends[0])],
        Solid::Hull(_) => Vec::new(),
    };
    let (first, second) = (edges(one), edges(other));
    let pairs = first.iter().flat_map(|a| second.iter().map(move |b| cross(*a, *b)));
    pairs.filter(|way| length(*way) > 1e-9).flat_map(|way| [way, way.map(|x| -x)]).collect()
}

/// How far the first ends before the second begins, along a way that leads from the second to the first; what rounding may have added is off.
fn gap(a: &[Point], b: &[Point], way: Point) -> f64 {
    let long = length(way);
    if long.is_nan() || long <= 0.0 {
        return f64::NEG_INFINITY;
    }
    let way = way.map(|x| x / long);
    let least = a.iter().map(|point| dot(*point, way)).fold(f64::INFINITY, f64::min);
    let most = b.iter().map(|point| dot(*point, way)).fold(f64::NEG_INFINITY, f64::max);
    // Three products and two sums of numbers of this size, and a way whose length is one but for its last digit.
    let size = a.iter().chain(b).flatten().fold(0.0_f64, |size, x| size.max(x.abs()));
    least - most - 16.0 * f64::EPSILON * size
}

fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn minus(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn along(from: Point, way: Point, by: f64) -> Point {
    [0, 1, 2].map(|k| from[k] + by * way[k])
}

fn cross(a: Point, b: Point) -> Point {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn length(a: Point) -> f64 {
    dot(a, a).sqrt()
}
