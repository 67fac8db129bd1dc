//! Volume and area of a set of triangles.

use super::radial::{cross, dot, minus};
use super::soup::{Soup, Triangle};

/// A box along the axes, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Span {
    pub low: [f32; 3],
    pub high: [f32; 3],
}

impl Span {
    pub const NOTHING: Self = Self { low: [f32::INFINITY; 3], high: [f32::NEG_INFINITY; 3] };

    #[inline(always)]
    pub fn take(&mut self, point: [f32; 3]) {
        self.join(&Self { low: point, high: point });
    }

    #[inline(always)]
    pub fn join(&mut self, other: &Self) {
        for axis in 0..3 {
            // Comparing by hand is quicker than `min`, which cares about what is no number; corners are finite.
            self.low[axis] = if other.low[axis] < self.low[axis] { other.low[axis] } else { self.low[axis] };
            self.high[axis] = if other.high[axis] > self.high[axis] { other.high[axis] } else { self.high[axis] };
        }
    }

    pub fn meets(&self, other: &Self) -> bool {
        (0..3).all(|axis| self.low[axis] <= other.high[axis] && other.low[axis] <= self.high[axis])
    }

    pub fn holds(&self, other: &Self) -> bool {
        (0..3).all(|axis| self.low[axis] <= other.low[axis] && other.high[axis] <= self.high[axis])
    }

    pub fn size(&self) -> [f64; 3] {
        std::array::from_fn(|axis| f64::from(self.high[axis]) - f64::from(self.low[axis]))
    }

    pub fn centre(&self) -> [f64; 3] {
        std::array::from_fn(|axis| 0.5 * (f64::from(self.low[axis]) + f64::from(self.high[axis])))
    }

    pub fn diagonal(&self) -> f64 {
        dot(self.size(), self.size()).sqrt()
    }
}

/// A corner in 64 bits. Written out: this is the innermost of all loops.
#[inline(always)]
fn wide(corner: [f32; 3]) -> [f64; 3] {
    [f64::from(corner[0]), f64::from(corner[1]), f64::from(corner[2])]
}

/// Sums over the triangles of one shell.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sums {
    pub triangles: u32,
    pub no_area: u32,
    /// Six times the signed volume, in mm³. Meaningful only where the shell is closed.
    pub volume_6: f64,
    /// Twice the area, in mm².
    pub area_2: f64,
    pub span: Span,
}

impl Sums {
    pub const NOTHING: Self = Self { triangles: 0, no_area: 0, volume_6: 0.0, area_2: 0.0, span: Span::NOTHING };

    /// Adds a triangle. `centre` is the point tetrahedra are raised from: the box's centre, so that distance from the origin costs no digits.
    #[inline(always)]
    pub fn add(&mut self, triangle: &Triangle, centre: [f64; 3]) {
        let (a, b, c) = (wide(triangle[0]), wide(triangle[1]), wide(triangle[2]));
        let normal = cross(minus(b, a), minus(c, a));
        let squared = dot(normal, normal);
        self.triangles += 1;
        self.no_area += u32::from(squared == 0.0);
        self.area_2 += squared.sqrt();
        self.volume_6 += dot(minus(a, centre), normal);
        for corner in triangle {
            self.span.take(*corner);
        }
    }

    pub fn join(&mut self, other: &Self) {
        self.triangles += other.triangles;
        self.no_area += other.no_area;
        self.volume_6 += other.volume_6;
        self.area_2 += other.area_2;
        self.span.join(&other.span);
    }

    pub fn volume_mm3(&self) -> f64 {
        self.volume_6 / 6.0
    }

    pub fn area_mm2(&self) -> f64 {
        self.area_2 / 2.0
    }
}

/// Sums over a file's triangles as they stand, closed or not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlainSums {
    /// The signed volume in mm³; it means something where the surface is closed and wound one way.
    pub signed_volume_mm3: f64,
    /// The area in mm², repeated triangles each time.
    pub area_mm2: f64,
    /// The box's sides in mm.
    pub size_mm: [f64; 3],
}

/// Sums alone, for whoever asks nothing of a file but that: [`super::measure`] says whether they mean anything.
#[must_use]
pub fn plain_sums(soup: &Soup) -> PlainSums {
    let span = span_of(soup.triangles());
    let sums = sums_of(soup.triangles(), span.centre());
    PlainSums { signed_volume_mm3: sums.volume_mm3(), area_mm2: sums.area_mm2(), size_mm: span.size() }
}

/// The box round all triangles.
pub(super) fn span_of(triangles: &[Triangle]) -> Span {
    let mut span = Span::NOTHING;
    for corner in triangles.as_flattened() {
        span.take(*corner);
    }
    span
}

/// Sums of a block of triangles.
pub(super) fn sums_of(block: &[Triangle], centre: [f64; 3]) -> Sums {
    let mut sums = Sums::NOTHING;
    block.iter().for_each(|triangle| sums.add(triangle, centre));
    sums
}
