//! Where the eye is, and where a point of the pattern lands in the picture.

use super::Model;

/// Free at each side of a picture when the pattern fits it, as a share of the shorter side.
const MARGIN: f64 = 0.06;
/// How near and how far the eye may go.
const ZOOM: (f64, f64) = (0.2, 400.0);
/// Degrees that a drag across the shorter side turns.
const DRAG_DEG: f64 = 200.0;

/// Where the eye is. The file's z stays upright.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// Degrees that the eye went round to the right of the front, -180 to 180.
    pub yaw_deg: f64,
    /// Degrees that the eye stands above the middle, -90 to 90.
    pub pitch_deg: f64,
    /// 1 shows the whole pattern however it is turned; 2 shows it twice as large.
    pub zoom: f64,
    /// What lies in the middle of the picture, in mm to the right and upwards of the pattern's middle.
    pub pan_mm: [f64; 2],
}

/// Sides a pattern is looked at from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StandardView {
    /// Along y.
    Front,
    /// Against y.
    Back,
    /// Along x.
    Left,
    /// Against x.
    Right,
    /// Against z.
    Top,
    /// Along z.
    Bottom,
    /// From the front right and above.
    Corner,
}

impl StandardView {
    /// All of them, in the order of their keys.
    pub const ALL: [Self; 7] = [Self::Front, Self::Back, Self::Left, Self::Right, Self::Top, Self::Bottom, Self::Corner];

    const fn angles_deg(self) -> (f64, f64) {
        match self {
            Self::Front => (0.0, 0.0),
            Self::Back => (180.0, 0.0),
            Self::Left => (-90.0, 0.0),
            Self::Right => (90.0, 0.0),
            Self::Top => (0.0, 90.0),
            Self::Bottom => (0.0, -90.0),
            Self::Corner => (35.0, 25.0),
        }
    }
}

impl Default for Camera {
    fn default() -> Self {
        Self::from(StandardView::Corner)
    }
}

impl From<StandardView> for Camera {
    fn from(view: StandardView) -> Self {
        let (yaw_deg, pitch_deg) = view.angles_deg();
        Self { yaw_deg, pitch_deg, zoom: 1.0, pan_mm: [0.0; 2] }
    }
}

impl Camera {
    /// The same place and size from a standard side.
    #[must_use]
    pub fn seen_from(self, view: StandardView) -> Self {
        let (yaw_deg, pitch_deg) = view.angles_deg();
        Self { yaw_deg, pitch_deg, ..self }
    }

    /// The whole pattern, as it is turned now.
    #[must_use]
    pub fn fitted(self) -> Self {
        Self { zoom: 1.0, pan_mm: [0.0; 2], ..self }
    }

    /// Turned by degrees: the eye goes to the right, and up.
    #[must_use]
    pub fn turned(self, right_deg: f64, up_deg: f64) -> Self {
        let yaw_deg = (self.yaw_deg + right_deg + 180.0).rem_euclid(360.0) - 180.0;
        Self { yaw_deg, pitch_deg: (self.pitch_deg + up_deg).clamp(-90.0, 90.0), ..self }
    }

    /// Turned by a drag of so many pixels right and down in a picture of this size: the pattern follows the hand.
    #[must_use]
    pub fn dragged(self, by_px: [f64; 2], size_px: [u32; 2]) -> Self {
        let deg = DRAG_DEG / f64::from(size_px[0].min(size_px[1]).max(1));
        self.turned(-by_px[0] * deg, by_px[1] * deg)
    }

    /// Moved by so many pixels right and down: the pattern stays under the hand.
    #[must_use]
    pub fn panned(self, by_px: [f64; 2], model: &Model, size_px: [u32; 2]) -> Self {
        let mm = 1.0 / self.px_per_mm(model, size_px);
        // Never so far that nothing is left in sight.
        let within = |pan: f64| pan.clamp(-1.2 * model.radius_mm(), 1.2 * model.radius_mm());
        Self { pan_mm: [within(self.pan_mm[0] - by_px[0] * mm), within(self.pan_mm[1] + by_px[1] * mm)], ..self }
    }

    /// Nearer by a factor; what lies at `at_px` stays there.
    #[must_use]
    pub fn zoomed(self, factor: f64, at_px: [f64; 2], model: &Model, size_px: [u32; 2]) -> Self {
        let zoom = (self.zoom * factor).clamp(ZOOM.0, ZOOM.1);
        if !zoom.is_finite() {
            return self;
        }
        let off = [at_px[0] - f64::from(size_px[0]) / 2.0, at_px[1] - f64::from(size_px[1]) / 2.0];
        let nearer = Self { zoom, ..self };
        let (before, after) = (self.px_per_mm(model, size_px), nearer.px_per_mm(model, size_px));
        let moved = 1.0 / before - 1.0 / after;
        nearer.panned([-off[0] * moved * after, -off[1] * moved * after], model, size_px)
    }

    /// Pixels that a millimetre has in a picture of this size.
    #[must_use]
    pub fn px_per_mm(&self, model: &Model, size_px: [u32; 2]) -> f64 {
        let shorter = f64::from(size_px[0].min(size_px[1]).max(1));
        self.zoom * shorter * (1.0 - 2.0 * MARGIN) / (2.0 * model.radius_mm())
    }

    /// Unit vectors to the right, upwards and towards the eye, in the file's axes.
    #[must_use]
    pub fn axes(&self) -> [[f64; 3]; 3] {
        let (sin_yaw, cos_yaw) = sin_cos_deg(self.yaw_deg);
        let (sin_pitch, cos_pitch) = sin_cos_deg(self.pitch_deg);
        [
            [cos_yaw, sin_yaw, 0.0],
            [-sin_yaw * sin_pitch, cos_yaw * sin_pitch, cos_pitch],
            [sin_yaw * cos_pitch, -cos_yaw * cos_pitch, sin_pitch],
        ]
    }
}

/// Exact at right angles: a face seen from its edge is not seen at all.
fn sin_cos_deg(deg: f64) -> (f64, f64) {
    let quarter = (deg / 90.0).round();
    let (sin, cos) = (deg - 90.0 * quarter).to_radians().sin_cos();
    match quarter.rem_euclid(4.0) {
        q if q < 0.5 => (sin, cos),
        q if q < 1.5 => (cos, -sin),
        q if q < 2.5 => (-sin, -cos),
        _ => (-cos, sin),
    }
}

/// From the file's mm to pixels right, pixels down, and how near in pixels; and back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Projection {
    axes: [[f64; 3]; 3],
    centre_mm: [f64; 3],
    px_per_mm: f64,
    /// Where the pattern's middle lies in the picture.
    middle_px: [f64; 2],
}

impl Projection {
    /// Of a picture of this size.
    #[must_use]
    pub fn new(camera: &Camera, model: &Model, size_px: [u32; 2]) -> Self {
        let px_per_mm = camera.px_per_mm(model, size_px);
        let middle_px =
            [f64::from(size_px[0]) / 2.0 - camera.pan_mm[0] * px_per_mm, f64::from(size_px[1]) / 2.0 + camera.pan_mm[1] * px_per_mm];
        Self { axes: camera.axes(), centre_mm: model.centre_mm(), px_per_mm, middle_px }
    }

    /// The same with the picture's upper left moved to here.
    pub(super) fn moved(self, to_px: [f64; 2]) -> Self {
        Self { middle_px: [self.middle_px[0] - to_px[0], self.middle_px[1] - to_px[1]], ..self }
    }

    /// Pixels a millimetre.
    #[must_use]
    pub fn px_per_mm(&self) -> f64 {
        self.px_per_mm
    }

    /// Pixels right and down of the picture's upper left, and how near in pixels.
    #[must_use]
    pub fn place(&self, point_mm: [f64; 3]) -> [f64; 3] {
        let off = [0, 1, 2].map(|axis| (point_mm[axis] - self.centre_mm[axis]) * self.px_per_mm);
        let along = |axis: [f64; 3]| axis[0] * off[0] + axis[1] * off[1] + axis[2] * off[2];
        [self.middle_px[0] + along(self.axes[0]), self.middle_px[1] - along(self.axes[1]), along(self.axes[2])]
    }

    /// The point in mm that [`Self::place`] puts here.
    #[must_use]
    pub fn point_mm(&self, [x, y, near]: [f64; 3]) -> [f64; 3] {
        let seen = [x - self.middle_px[0], self.middle_px[1] - y, near].map(|part| part / self.px_per_mm);
        [0, 1, 2].map(|axis| self.centre_mm[axis] + (0..3).map(|of| self.axes[of][axis] * seen[of]).sum::<f64>())
    }

    /// How the axes of the file lie in the picture: right, up and towards the eye, for x, y and z.
    #[must_use]
    pub fn axes_seen(&self) -> [[f64; 3]; 3] {
        [0, 1, 2].map(|axis| [self.axes[0][axis], self.axes[1][axis], self.axes[2][axis]])
    }

    /// Only how far down a point lies: most points of a large file need no more.
    #[inline(always)]
    pub(super) fn down(&self, point_mm: [f32; 3]) -> f64 {
        let up = self.axes[1];
        let off = |axis: usize| (f64::from(point_mm[axis]) - self.centre_mm[axis]) * self.px_per_mm;
        self.middle_px[1] - (up[0] * off(0) + up[1] * off(1) + up[2] * off(2))
    }

    #[inline(always)]
    pub(super) fn place_corner(&self, corner: [f32; 3]) -> [f64; 3] {
        self.place(corner.map(f64::from))
    }
}
