//! Whether two solids keep so much room, mostly settled by a look along one way.
//!
//! After E. G. Gilbert, "An iterative procedure for computing the minimum of a quadratic form on a convex set" (1966, from memory): the nearest
//! point so far and the next corner make a line, and the nearest point of it is next. Where that does not settle it soon, the distance is
//! found as it is elsewhere.

use super::super::solid::{Point, Solid, apart, farthest};

/// Looks along this way before the distance itself is asked for.
const LOOKS: u32 = 12;

/// The corners of a solid and how thick it is around them.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Body {
    pub corners: Vec<Point>,
    pub round: f64,
}

impl Body {
    pub fn of(solid: &Solid) -> Self {
        match solid {
            Solid::Block(block) => Self { corners: block.corners().to_vec(), round: 0.0 },
            Solid::Rod(rod) => Self { corners: rod.ends.to_vec(), round: rod.radius },
            Solid::Hull(points) => Self { corners: points.clone(), round: 0.0 },
        }
    }

    /// The lowest and the highest of it.
    pub fn heights(&self) -> [f64; 2] {
        let z = |pick: fn(f64, f64) -> f64, start: f64| self.corners.iter().map(|corner| corner[2]).fold(start, pick);
        [z(f64::min, f64::INFINITY) - self.round, z(f64::max, f64::NEG_INFINITY) + self.round]
    }

    /// Its mirror image in the flat through the axis and the first way.
    pub fn mirrored(&self) -> Self {
        Self { corners: self.corners.iter().map(|[x, y, z]| [*x, -y, *z]).collect(), round: self.round }
    }
}

/// Room that is proven between two solids, where it is as much as needed; else something less. `way` is where to look first, and is kept.
pub(super) fn room(one: &Body, other: &Body, needs: f64, way: &mut Point) -> f64 {
    let round = one.round + other.round;
    // The first way is only a way; from then on `at` is a point of the difference of the two.
    let (mut at, mut is_point) = (*way, false);
    for _ in 0..LOOKS {
        let long = dot(at, at).sqrt();
        if is_point && long < needs + round {
            return 0.0;
        }
        let (near, far) = (farthest(&one.corners, at.map(|part| -part)), farthest(&other.corners, at));
        let corner = minus(near, far);
        let proven = dot(at, corner) / long - round;
        if proven >= needs {
            *way = at;
            return proven;
        }
        if is_point {
            // The nearest point to the origin on the line from here to that corner.
            let line = minus(corner, at);
            let share = -dot(at, line) / dot(line, line);
            if !share.is_finite() || share <= 0.0 {
                break;
            }
            at = [0, 1, 2].map(|k| at[k] + share.min(1.0) * line[k]);
        } else {
            (at, is_point) = (corner, true);
        }
    }
    settled(one, other)
}

fn settled(one: &Body, other: &Body) -> f64 {
    let [a, b] = [one, other].map(|body| Solid::Hull(body.corners.clone()));
    apart(&a, &b).at_least_mm - one.round - other.round
}

fn minus(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
