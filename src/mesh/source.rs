//! Triangles one after the other, whether they stand in a list, in bytes, or still in a file.

use super::soup::Triangle;
use super::stl_binary::{HEADER_BYTES, RECORD_BYTES};
use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::ops::Range;
use std::path::Path;

/// Triangles that several threads can walk through at once.
pub(super) trait Source: Sync {
    /// How many there are.
    fn count(&self) -> usize;

    /// Hands over the triangles of a range in blocks of at most [`BLOCK`], each with the number of its first, until the end or the first
    /// refusal. Zeros are positive, so that equal corners have equal bits.
    fn walk(&self, range: Range<usize>, each: impl FnMut(usize, &[Triangle]) -> Result<(), Stop>) -> Result<(), Stop>;

    /// The first corners of about `wanted` triangles from all over the file.
    fn sample(&self, wanted: usize) -> Result<Vec<[f32; 3]>, Stop> {
        let runs = (wanted / SAMPLE_RUN).min(self.count() / SAMPLE_RUN).max(1);
        let mut sample = Vec::with_capacity(wanted);
        for run in 0..runs {
            let start = run * self.count() / runs;
            let end = (start + SAMPLE_RUN).min(self.count());
            self.walk(start..end, |_, block| {
                sample.extend(block.iter().map(|triangle| triangle[0]));
                Ok(())
            })?;
        }
        Ok(sample)
    }
}

/// Triangles handed over at once: they fit the fastest cache.
pub(super) const BLOCK: usize = 256;

/// Neighbouring triangles taken together in a sample.
const SAMPLE_RUN: usize = 32;

/// Why a walk ended early.
#[derive(Debug)]
pub(super) enum Stop {
    /// A triangle, counted from 0, has a corner that is not finite.
    NotFinite(usize),
    /// The file could not be read.
    CannotRead(std::io::Error),
}

impl Source for [Triangle] {
    fn count(&self) -> usize {
        self.len()
    }

    fn walk(&self, range: Range<usize>, mut each: impl FnMut(usize, &[Triangle]) -> Result<(), Stop>) -> Result<(), Stop> {
        range.clone().step_by(BLOCK).zip(self[range].chunks(BLOCK)).try_for_each(|(at, block)| each(at, block))
    }
}

/// Records of a binary STL file.
pub(super) struct Records<'a>(pub &'a [[u8; RECORD_BYTES]]);

impl Source for Records<'_> {
    fn count(&self) -> usize {
        self.0.len()
    }

    fn walk(&self, range: Range<usize>, mut each: impl FnMut(usize, &[Triangle]) -> Result<(), Stop>) -> Result<(), Stop> {
        in_blocks(range.start, &self.0[range], &mut each)
    }
}

/// A binary STL file that stays on the disk: every walk reads through a buffer that fits the cache.
pub(super) struct OnDisk<'a> {
    pub path: &'a Path,
    pub count: usize,
}

/// Records in the buffer of a walk.
const BUFFER_RECORDS: usize = 2048;

impl Source for OnDisk<'_> {
    fn count(&self) -> usize {
        self.count
    }

    fn walk(&self, range: Range<usize>, mut each: impl FnMut(usize, &[Triangle]) -> Result<(), Stop>) -> Result<(), Stop> {
        let mut file = File::open(self.path).map_err(Stop::CannotRead)?;
        file.seek(SeekFrom::Start((HEADER_BYTES + RECORD_BYTES * range.start) as u64)).map_err(Stop::CannotRead)?;
        let mut buffer = vec![0; RECORD_BYTES * BUFFER_RECORDS.min(range.len())];
        for start in range.clone().step_by(BUFFER_RECORDS) {
            let part = &mut buffer[..RECORD_BYTES * (range.end - start).min(BUFFER_RECORDS)];
            file.read_exact(part).map_err(Stop::CannotRead)?;
            in_blocks(start, part.as_chunks::<RECORD_BYTES>().0, &mut each)?;
        }
        Ok(())
    }
}

/// Hands over records that start with number `first`.
#[inline(always)]
fn in_blocks(
    first: usize,
    records: &[[u8; RECORD_BYTES]],
    each: &mut impl FnMut(usize, &[Triangle]) -> Result<(), Stop>,
) -> Result<(), Stop> {
    let mut block = [[[0.0; 3]; 3]; BLOCK];
    for (at, records) in (first..).step_by(BLOCK).zip(records.chunks(BLOCK)) {
        for (triangle, record) in block.iter_mut().zip(records) {
            *triangle = corners(record);
        }
        each(at, &block[..records.len()])?;
    }
    Ok(())
}

/// The corners in a record: little-endian numbers behind the normal.
#[inline(always)]
fn corners(record: &[u8; RECORD_BYTES]) -> Triangle {
    let number = |from: usize| f32::from_le_bytes([record[from], record[from + 1], record[from + 2], record[from + 3]]) + 0.0;
    [[number(12), number(16), number(20)], [number(24), number(28), number(32)], [number(36), number(40), number(44)]]
}

/// Stops at the first triangle of a block with a corner that is infinite or no number.
#[inline(always)]
pub(super) fn check_finite(first: usize, block: &[Triangle]) -> Result<(), Stop> {
    // The bits of the exponent are all set in an infinity and in what is no number.
    let is_finite =
        |triangle: &Triangle| triangle.as_flattened().iter().fold(true, |sound, x| sound & (x.to_bits() & 0x7f80_0000 != 0x7f80_0000));
    if block.iter().fold(true, |sound, triangle| sound & is_finite(triangle)) {
        return Ok(());
    }
    let at = block.iter().position(|triangle| !is_finite(triangle)).unwrap_or(0);
    Err(Stop::NotFinite(first + at))
}
