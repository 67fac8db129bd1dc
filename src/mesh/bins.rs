//! Sorting a stretch of the file by region.

use super::regions::Regions;
use super::soup::Triangle;
use super::source::{Source, Stop, check_finite};
use super::sums::{Sums, sums_of};
use std::ops::Range;

/// A stretch of the file, sorted.
pub(super) struct Sorted {
    pub sums: Sums,
    /// One bin a region.
    pub bins: Vec<Bin>,
}

/// Triangles of one region. They are copied: a file in no order would otherwise cost a wait for memory at every triangle.
pub(super) struct Bin {
    pub triangles: Vec<Triangle>,
    /// Triangles another region got too: their number in the file and their place in this bin.
    pub shared: Vec<(u32, u32)>,
}

impl Bin {
    fn with_room(triangles: usize) -> Self {
        Self { triangles: Vec::with_capacity(triangles), shared: Vec::new() }
    }

    fn push_shared(&mut self, triangle: Triangle, at: usize) {
        self.shared.push((at as u32, self.triangles.len() as u32));
        self.triangles.push(triangle);
    }
}

/// Gives each region of a stretch the triangles that have an edge of its own, and adds the stretch up.
pub(super) fn sort<S: Source + ?Sized>(source: &S, regions: &Regions, range: Range<usize>) -> Result<Sorted, Stop> {
    let mut sums = Sums::NOTHING;
    let mut bins: Vec<Bin> = Vec::new();
    // Twice the mean: in a file in order a thread fills only some of the bins. What is not filled costs nothing.
    bins.resize_with(regions.count(), || Bin::with_room(2 * range.len() / regions.count()));
    source.walk(range, |first, block| {
        check_finite(first, block)?;
        // Blocks are added up by themselves: keeps rounding from growing with their number.
        sums.join(&sums_of(block, regions.centre()));
        for (triangle, at) in block.iter().zip(first..) {
            let (a, b, c) = (regions.of(triangle[0]), regions.of(triangle[1]), regions.of(triangle[2]));
            // An edge belongs to the lower region of its ends: the lowest region owns two edges, the middle one the third.
            let (low, high) = (a.min(b), a.max(b));
            let (lowest, middle) = (low.min(c), high.min(low.max(c)));
            if lowest == middle {
                bins[usize::from(lowest)].triangles.push(*triangle);
            } else {
                bins[usize::from(lowest)].push_shared(*triangle, at);
                bins[usize::from(middle)].push_shared(*triangle, at);
            }
        }
        Ok(())
    })?;
    Ok(Sorted { sums, bins })
}
