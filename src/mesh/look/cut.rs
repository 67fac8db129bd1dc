//! A plane that a pattern is cut along.

use super::{Model, Projection};

/// The direction a cut is made across.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Axis {
    /// Across x.
    X,
    /// Across y.
    Y,
    /// Across z.
    Z,
}

impl Axis {
    /// All three.
    pub const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];

    /// Its place among coordinates.
    #[must_use]
    pub const fn index(self) -> usize {
        self as usize
    }
}

/// The side of a cut that stays.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Keep {
    /// Where the coordinate is less.
    Below,
    /// Where it is more.
    Above,
}

/// A cut across an axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// What it is made across.
    pub axis: Axis,
    /// Where, from 0 at the pattern's least coordinate to 1 at its greatest.
    pub at: f64,
    /// What stays.
    pub keep: Keep,
}

impl Cut {
    /// The coordinate of the cut in mm.
    #[must_use]
    pub fn at_mm(&self, model: &Model) -> f64 {
        let (low, high) = model.bounds_mm();
        let axis = self.axis.index();
        low[axis] + (high[axis] - low[axis]) * self.at.clamp(0.0, 1.0)
    }

    pub(super) fn plane(&self, model: &Model, onto: &Projection) -> Plane {
        let sign = if self.keep == Keep::Below { -1.0 } else { 1.0 };
        let axis = self.axis.index();
        let [right, up, near] = onto.axes_seen()[axis].map(|part| part * sign);
        let mut on_plane = model.centre_mm();
        on_plane[axis] = self.at_mm(model);
        let [x, y, depth] = onto.place(on_plane);
        // A face that lies in the cut goes with what is cut away, whichever way its places are rounded.
        let hair_px = 1e-3 + 1e-6 * onto.px_per_mm() * model.radius_mm();
        Plane { right, down: -up, near, rest: -(right * x - up * y + near * depth) - hair_px }
    }
}

/// A cut in the picture: how far in pixels a place lies on the side that stays.
#[derive(Debug, Clone, Copy)]
pub(super) struct Plane {
    right: f64,
    down: f64,
    near: f64,
    rest: f64,
}

impl Plane {
    #[inline(always)]
    pub fn kept(&self, [x, y, near]: [f64; 3]) -> f64 {
        self.right * x + self.down * y + self.near * near + self.rest
    }

    /// How near the cut face is at a pixel; none where the cut is seen from behind or from its edge.
    #[allow(clippy::cast_possible_truncation, reason = "a picture has few digits")]
    pub fn face(&self, x: f64, y: f64) -> Option<f32> {
        // What stays lies behind a plane whose kept side points away from the eye.
        (self.near < -1e-9).then(|| (-(self.right * x + self.down * y + self.rest) / self.near) as f32)
    }
}
