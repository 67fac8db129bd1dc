//! Where a surface is at fault, as lines to be drawn on it.

use super::Soup;
use super::edges::faults;
use super::repair::clean;
use super::sums::span_of;
use super::weld::weld;

/// A line between two points, in mm.
pub type Segment = [[f32; 3]; 2];

/// The edges at fault of a file.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct FaultyEdges {
    /// Edges where the surface ends.
    pub open: Vec<Segment>,
    /// Edges whose two sides disagree about what is outside.
    pub mixed: Vec<Segment>,
}

/// Finds the edges at fault: the very ones that [`super::Problem::Open`] and [`super::Problem::MixedWinding`] count.
#[must_use]
pub fn faulty_edges(soup: &Soup) -> FaultyEdges {
    let mesh = clean(weld(soup.triangles()), span_of(soup.triangles()).diagonal()).mesh;
    let segment = |edge: &[u32; 2]| edge.map(|point| mesh.points[point as usize]);
    let [open, mixed] = faults(&mesh).map(|edges| edges.iter().map(segment).collect());
    FaultyEdges { open, mixed }
}
