//! Triangles by number, whether they stand in a list or still in a file's records.

use super::soup::Triangle;
use super::stl_binary::RECORD_BYTES;

/// Triangles that can be asked for one by one, from several threads.
pub(super) trait Source: Sync {
    /// How many there are.
    fn count(&self) -> usize;
    /// One of them. Zeros are positive, so that equal corners have equal bits.
    fn triangle(&self, at: usize) -> Triangle;
}

impl Source for [Triangle] {
    fn count(&self) -> usize {
        self.len()
    }

    #[inline(always)]
    fn triangle(&self, at: usize) -> Triangle {
        self[at]
    }
}

/// Records of a binary STL file.
pub(super) struct Records<'a>(pub &'a [[u8; RECORD_BYTES]]);

impl Source for Records<'_> {
    fn count(&self) -> usize {
        self.0.len()
    }

    #[inline(always)]
    fn triangle(&self, at: usize) -> Triangle {
        corners(&self.0[at])
    }
}

/// The corners in a record: little-endian numbers behind the normal.
#[inline(always)]
pub(super) fn corners(record: &[u8; RECORD_BYTES]) -> Triangle {
    let number = |from: usize| f32::from_le_bytes([record[from], record[from + 1], record[from + 2], record[from + 3]]) + 0.0;
    [[number(12), number(16), number(20)], [number(24), number(28), number(32)], [number(36), number(40), number(44)]]
}

/// True when no coordinate is infinite or no number.
#[inline(always)]
pub(super) fn is_finite(triangle: &Triangle) -> bool {
    // The bits of the exponent are all set in an infinity and in what is no number.
    triangle.as_flattened().iter().fold(true, |sound, x| sound & (x.to_bits() & 0x7f80_0000 != 0x7f80_0000))
}
