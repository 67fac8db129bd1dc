//! Triangles as they are gathered from a file, within its limits.

use super::polygon::Cutter;
use super::soup::{Soup, Triangle};
use super::{Format, Limits, Place, ReadError};

/// The triangles found so far.
pub(super) struct Gather {
    triangles: Vec<Triangle>,
    most: u32,
    cutter: Cutter,
}

impl Gather {
    pub fn new(limits: &Limits) -> Self {
        Self { triangles: Vec::new(), most: limits.triangles(), cutter: Cutter::default() }
    }

    /// Makes room at once for a count that is known to be within the limits.
    pub fn reserve(&mut self, triangles: usize) {
        self.triangles.reserve_exact(triangles.min(self.most as usize));
    }

    /// The most corners a single face may have.
    pub fn most_corners(&self) -> usize {
        self.most as usize + 2
    }

    /// The refusal of a file with too many triangles.
    pub fn too_many(&self) -> ReadError {
        ReadError::TooManyTriangles { most: self.most }
    }

    /// Takes a triangle. Zeros lose their sign, so that equal corners have equal bits.
    #[inline]
    pub fn push(&mut self, corners: Triangle) -> Result<(), ReadError> {
        if self.triangles.len() >= self.most as usize {
            return Err(self.too_many());
        }
        if !corners.as_flattened().iter().all(|x| x.is_finite()) {
            return Err(ReadError::NotFinite { triangle: self.triangles.len() as u32 + 1 });
        }
        self.triangles.push(corners.map(|corner| corner.map(|x| x + 0.0)));
        Ok(())
    }

    /// Takes a face of any number of corners, cut into triangles.
    pub fn face(&mut self, corners: &[[f32; 3]], place: Place) -> Result<(), ReadError> {
        match *corners {
            [a, b, c] => self.push([a, b, c]),
            [] | [_] | [_, _] => Err(ReadError::TooFewCorners { place, corners: corners.len() as u64 }),
            _ if !corners.as_flattened().iter().all(|x| x.is_finite()) => {
                Err(ReadError::NotFinite { triangle: self.triangles.len() as u32 + 1 })
            }
            _ if corners.len() > self.most_corners() => Err(self.too_many()),
            _ => {
                let mut cutter = std::mem::take(&mut self.cutter);
                let cut = cutter.cut(corners, |triangle| self.push(triangle));
                self.cutter = cutter;
                cut?.ok_or(ReadError::IntricateFace { place, corners: corners.len() as u64 })
            }
        }
    }

    pub fn finish(self, format: Format) -> Result<Soup, ReadError> {
        if self.triangles.is_empty() {
            return Err(ReadError::NoGeometry);
        }
        Ok(Soup::new(format, self.triangles, false))
    }
}
