//! Parting space into regions that hold about as many triangles each, so that what is near in space is near in memory whatever the order of
//! the file, and several threads can work without waiting for each other.
//!
//! The regions come from a sample of the triangles. They decide how fast the work goes, never what comes out.

use super::soup::Triangle;
use super::source::{Source, Stop};
use super::sums::Span;

/// Cells along each axis.
const CELLS: usize = 32;
/// Triangles looked at to draw the regions.
const SAMPLES: usize = 16_384;
/// Regions at most.
const MOST: usize = 4096;

/// A division of space.
pub(super) struct Regions {
    low: [f32; 3],
    centre: [f64; 3],
    cells_per_mm: [f32; 3],
    region_of_cell: Vec<u16>,
    count: usize,
}

impl Regions {
    /// Draws regions of about `wanted` triangles.
    pub fn new<S: Source + ?Sized>(source: &S, wanted: usize) -> Result<Self, Stop> {
        let sample = source.sample(SAMPLES)?;
        // How many triangles one of the sample stands for.
        let step = (source.count() / sample.len().max(1)).max(1);
        let mut span = Span::NOTHING;
        sample.iter().for_each(|point| span.take(*point));
        let cells_per_mm = span.size().map(|side| {
            let cells = (CELLS as f64 / side) as f32;
            if cells.is_finite() { cells } else { 0.0 }
        });
        let mut regions =
            Self { low: span.low, centre: span.centre(), cells_per_mm, region_of_cell: vec![0; CELLS * CELLS * CELLS], count: 1 };
        let mut held = vec![0_usize; regions.region_of_cell.len()];
        sample.iter().for_each(|point| held[regions.cell(*point)] += 1);
        let wanted = wanted.max(source.count() / MOST + 1);
        let (mut region, mut filled) = (0_u16, 0);
        for cell in winding_order() {
            if filled * step >= wanted && held[cell] > 0 && usize::from(region) + 1 < MOST {
                region += 1;
                filled = 0;
            }
            filled += held[cell];
            regions.region_of_cell[cell] = region;
        }
        regions.count = usize::from(region) + 1;
        Ok(regions)
    }

    /// A point amid the triangles: the middle of the box of the sample.
    pub fn centre(&self) -> [f64; 3] {
        self.centre
    }

    /// How many regions there are.
    pub fn count(&self) -> usize {
        self.count
    }

    /// The region a point is in; points outside the sampled box count to its rim.
    #[inline(always)]
    pub fn of(&self, point: [f32; 3]) -> u16 {
        self.region_of_cell[self.cell(point)]
    }

    #[inline(always)]
    fn cell(&self, point: [f32; 3]) -> usize {
        // Adding 2^23 leaves the nearest whole number in the lowest bits: quicker than converting.
        let along = |axis: usize| {
            let cells = ((point[axis] - self.low[axis]) * self.cells_per_mm[axis]).max(0.0).min((CELLS - 1) as f32);
            (cells + 8_388_608.0).to_bits() as usize & (CELLS - 1)
        };
        (along(0) * CELLS + along(1)) * CELLS + along(2)
    }
}

/// The triangles in an order in which those near each other in space are near each other in the list.
pub(super) fn near_together(triangles: &[Triangle], wanted: usize) -> Result<Vec<Triangle>, Stop> {
    let regions = Regions::new(triangles, wanted)?;
    let region_of: Vec<u16> = triangles.iter().map(|triangle| regions.of(triangle[0])).collect();
    let mut next = vec![0_usize; regions.count() + 1];
    region_of.iter().for_each(|&region| next[usize::from(region) + 1] += 1);
    (1..next.len()).for_each(|at| next[at] += next[at - 1]);
    let mut sorted = vec![[[0.0; 3]; 3]; triangles.len()];
    for (triangle, &region) in triangles.iter().zip(&region_of) {
        let place = &mut next[usize::from(region)];
        sorted[*place] = *triangle;
        *place += 1;
    }
    Ok(sorted)
}

/// All cells in an order in which neighbours in the list are mostly neighbours in space: the bits of the three places interleaved.
fn winding_order() -> impl Iterator<Item = usize> {
    (0..CELLS * CELLS * CELLS).map(|code| {
        let along = |axis: usize| (0..5).map(|bit| (code >> (3 * bit + axis) & 1) << bit).sum::<usize>();
        (along(2) * CELLS + along(1)) * CELLS + along(0)
    })
}
