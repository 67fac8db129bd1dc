//! A finished picture, and what was hit in it.

use super::Projection;

/// No triangle here.
pub(super) const NOTHING: u32 = u32::MAX;
/// The face of a cut.
pub(super) const CUT: u32 = u32::MAX - 1;
/// The face of a cut through two solids at once.
pub(super) const CUT_TWICE: u32 = u32::MAX - 2;

/// A place on a pattern.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hit {
    /// The triangle by its number in the file; none on the face of a cut.
    pub triangle: Option<u32>,
    /// The point in the file's mm.
    pub point_mm: [f64; 3],
}

/// A view of a pattern, row by row from the top.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// Pixels across and down.
    pub size_px: [u32; 2],
    /// Red, green, blue and cover of every pixel, not multiplied; outside the pattern it is clear.
    pub rgba: Vec<u8>,
    pub(super) ids: Vec<u32>,
    pub(super) near: Vec<f32>,
    pub(super) onto: Projection,
}

impl Picture {
    /// The triangle whose middle of a pixel this is.
    #[must_use]
    pub fn triangle_at(&self, x: u32, y: u32) -> Option<u32> {
        self.hit_at(x, y)?.triangle
    }

    /// What is seen in a pixel.
    #[must_use]
    pub fn hit_at(&self, x: u32, y: u32) -> Option<Hit> {
        if x >= self.size_px[0] || y >= self.size_px[1] {
            return None;
        }
        let at = y as usize * self.size_px[0] as usize + x as usize;
        let id = self.ids[at];
        let place = [f64::from(x) + 0.5, f64::from(y) + 0.5, f64::from(self.near[at])];
        (id != NOTHING).then(|| Hit { triangle: (id < CUT_TWICE).then_some(id), point_mm: self.onto.point_mm(place) })
    }

    /// Does the pattern lie before this point by more than `within_mm`?
    #[must_use]
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a pixel of a picture, looked for within it")]
    pub fn hides(&self, point_mm: [f64; 3], within_mm: f64) -> bool {
        let [x, y, near] = self.onto.place(point_mm);
        let inside = |at: f64, size: u32| (0.0..f64::from(size)).contains(&at);
        if !(inside(x, self.size_px[0]) && inside(y, self.size_px[1])) {
            return false;
        }
        let at = y as usize * self.size_px[0] as usize + x as usize;
        self.ids[at] != NOTHING && f64::from(self.near[at]) > near + within_mm * self.onto.px_per_mm()
    }

    /// Where points of the pattern lie in this picture.
    #[must_use]
    pub fn projection(&self) -> &Projection {
        &self.onto
    }
}
