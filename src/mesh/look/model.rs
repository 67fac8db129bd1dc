//! A pattern made ready to be looked at.

use std::sync::Arc;

use super::cluster::{self, StandIn};
use super::light::normal;
use crate::mesh::{Soup, Triangle, Watch};

/// A pattern with more triangles than this is turned as a stand-in of at most so many.
pub const STAND_IN_TRIANGLES: usize = 60_000;

/// Triangles between two looks at whether to go on.
pub(super) const BLOCK: usize = 1 << 16;

/// A pattern made ready to be looked at: its triangles, their extent, and a lighter stand-in that is shown while it turns.
#[derive(Debug)]
pub struct Model {
    held: Held,
    extent: Extent,
    stand_in: Option<StandIn>,
    inside_out: bool,
}

#[derive(Debug)]
enum Held {
    Soup(Arc<Soup>),
    Own(Box<[Triangle]>),
}

/// Where a pattern lies, in mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Extent {
    pub low: [f64; 3],
    pub high: [f64; 3],
    pub centre: [f64; 3],
    pub radius: f64,
}

impl Model {
    /// Prepares a copy of some triangles, corners in mm. `None` where nothing could be seen of them, or when asked to stop.
    #[must_use]
    pub fn new(triangles: &[Triangle], watch: &dyn Watch) -> Option<Self> {
        Self::with_stand_in(triangles, STAND_IN_TRIANGLES, watch)
    }

    /// The same with a stand-in of at most `most` triangles.
    #[must_use]
    pub fn with_stand_in(triangles: &[Triangle], most: usize, watch: &dyn Watch) -> Option<Self> {
        Self::hold(Held::Own(triangles.into()), most, watch)
    }

    /// Prepares a file that was read, and shares its triangles.
    #[must_use]
    pub fn of(soup: Arc<Soup>, watch: &dyn Watch) -> Option<Self> {
        Self::hold(Held::Soup(soup), STAND_IN_TRIANGLES, watch)
    }

    fn hold(held: Held, most: usize, watch: &dyn Watch) -> Option<Self> {
        let triangles = held.triangles();
        let extent = Extent::of(triangles)?;
        if !watch.go_on(0.1) {
            return None;
        }
        let inside_out = six_volumes(triangles, extent.centre) < 0.0;
        let stand_in = if triangles.len() > most { Some(cluster::stand_in(triangles, most.max(100), &extent, watch)?) } else { None };
        Some(Self { held, extent, stand_in, inside_out })
    }

    /// The triangles in the file's order, in mm.
    #[must_use]
    pub fn triangles(&self) -> &[Triangle] {
        self.held.triangles()
    }

    /// What is drawn while the pattern turns: its triangles, with the number in the file of one that each stands for.
    pub(super) fn light(&self) -> (&[Triangle], Option<&[u32]>) {
        self.stand_in.as_ref().map_or((self.triangles(), None), |light| (&light.triangles, Some(&light.of)))
    }

    /// How many triangles are drawn while the pattern turns.
    #[must_use]
    pub fn light_triangles(&self) -> usize {
        self.light().0.len()
    }

    /// Is the whole of it drawn while it turns?
    #[must_use]
    pub fn is_light(&self) -> bool {
        self.stand_in.is_none()
    }

    /// The middle of its extent, in mm.
    #[must_use]
    pub fn centre_mm(&self) -> [f64; 3] {
        self.extent.centre
    }

    /// How far its farthest corner lies from the middle, in mm; more than 0.
    #[must_use]
    pub fn radius_mm(&self) -> f64 {
        self.extent.radius
    }

    /// Least and greatest coordinates, in mm.
    #[must_use]
    pub fn bounds_mm(&self) -> ([f64; 3], [f64; 3]) {
        (self.extent.low, self.extent.high)
    }

    /// Do its triangles face inwards, taken all in all?
    pub(super) fn is_inside_out(&self) -> bool {
        self.inside_out
    }
}

impl Held {
    fn triangles(&self) -> &[Triangle] {
        match self {
            Self::Soup(soup) => soup.triangles(),
            Self::Own(triangles) => triangles,
        }
    }
}

/// At most about `most` triangles that look like these from some way off, and face outwards.
pub fn stand_in_of(triangles: &[Triangle], most: usize) -> Option<Vec<Triangle>> {
    let model = Model::with_stand_in(triangles, most, &crate::mesh::Unwatched)?;
    let turned = |[a, b, c]: Triangle| if model.inside_out { [a, c, b] } else { [a, b, c] };
    Some(model.light().0.iter().copied().map(turned).collect())
}

impl Extent {
    fn of(triangles: &[Triangle]) -> Option<Self> {
        let (mut low, mut high) = ([f32::INFINITY; 3], [f32::NEG_INFINITY; 3]);
        for corner in corners(triangles) {
            for axis in 0..3 {
                low[axis] = low[axis].min(corner[axis]);
                high[axis] = high[axis].max(corner[axis]);
            }
        }
        let (low, high) = (low.map(f64::from), high.map(f64::from));
        let centre = [0, 1, 2].map(|axis| f64::midpoint(low[axis], high[axis]));
        let apart2 = |corner: &[f32; 3]| (0..3).map(|axis| (f64::from(corner[axis]) - centre[axis]).powi(2)).sum::<f64>();
        let radius = corners(triangles).map(apart2).fold(0.0, f64::max).sqrt();
        (radius.is_finite() && radius > 0.0).then_some(Self { low, high, centre, radius })
    }
}

/// Corners that are numbers.
fn corners(triangles: &[Triangle]) -> impl Iterator<Item = &[f32; 3]> {
    triangles.iter().flatten().filter(|corner| corner.iter().all(|part| part.is_finite()))
}

/// Six times the volume that the triangles enclose, with its sign; of any size where they enclose none.
fn six_volumes(triangles: &[Triangle], centre: [f64; 3]) -> f64 {
    let off = |corner: [f32; 3]| [0, 1, 2].map(|axis| f64::from(corner[axis]) - centre[axis]);
    let wedge = |triangle: &Triangle| {
        let corners = triangle.map(off);
        let [n, a] = [normal(corners), corners[0]];
        n[0] * a[0] + n[1] * a[1] + n[2] * a[2]
    };
    triangles.iter().map(wedge).filter(|volume| volume.is_finite()).sum()
}
