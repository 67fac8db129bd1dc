//! What could be mended in a file: triangles that stand in it twice, seams, triangles turned the wrong way, holes. The file itself is never
//! changed; a mended one is another file, and its volume is measured beside the old one's, so that a person can decide.

mod close;
mod turn;

use super::edges::link;
use super::repair::{Clean, clean};
use super::sums::span_of;
use super::weld::{Welded, weld};
use super::{Format, Measure, Soup, Triangle, measure};

/// One thing that mending changed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Change {
    /// Triangles that stood there again were left out.
    Repeats {
        /// How many.
        triangles: u32,
    },
    /// Triangles without area were left out.
    NoArea {
        /// How many.
        triangles: u32,
    },
    /// Corners that did not quite meet were brought together.
    Seams {
        /// How many.
        corners: u32,
        /// The widest gap, in mm.
        widest_gap_mm: f64,
    },
    /// Triangles were turned, so that neighbours agree about what is outside.
    Turned {
        /// How many.
        triangles: u32,
    },
    /// Solids that were inside out were turned.
    InsideOut {
        /// How many triangles they have.
        triangles: u32,
    },
    /// Holes were closed with new triangles: whoever drew them may have meant an opening.
    Closed {
        /// How many holes.
        holes: u32,
        /// Triangles that were added.
        triangles: u32,
        /// Their area in mm².
        area_mm2: f64,
    },
}

/// A mended mesh.
#[derive(Debug, Clone)]
pub struct Mended {
    /// Its triangles, in mm.
    pub soup: Soup,
    /// What was changed, in the order it was done.
    pub changes: Vec<Change>,
    /// What it measures.
    pub measure: Measure,
}

/// Mends what can be mended without guessing at a form. `None` where nothing is to be mended, and where a file has no volume even then.
#[must_use]
pub fn mend(soup: &Soup) -> Option<Mended> {
    let mut changes = Vec::new();
    let span = span_of(soup.triangles());
    let Clean { mut mesh, degenerate, duplicates, seams, .. } = clean(weld(soup.triangles()), span.diagonal());
    if duplicates > 0 {
        changes.push(Change::Repeats { triangles: duplicates });
    }
    if degenerate > 0 {
        changes.push(Change::NoArea { triangles: degenerate });
    }
    if let Some((corners, widest_gap_mm)) = seams {
        changes.push(Change::Seams { corners, widest_gap_mm });
    }
    let turned = turn::agree(&mut mesh);
    if turned > 0 {
        changes.push(Change::Turned { triangles: turned });
    }
    if !link(&mesh).open.is_empty()
        && let Some(closed) = close::holes(&mut mesh)
    {
        changes.push(closed);
    }
    let outward = turn::outward(&mut mesh, span.centre());
    if outward > 0 {
        changes.push(Change::InsideOut { triangles: outward });
    }
    if changes.is_empty() || mesh.triangles.is_empty() {
        return None;
    }
    let soup = Soup::new(Format::StlBinary, triangles_of(&mesh), false);
    let measure = measure(&soup);
    measure.fills_mm3.is_some().then_some(Mended { soup, changes, measure })
}

fn triangles_of(mesh: &Welded) -> Vec<Triangle> {
    mesh.triangles.iter().map(|triangle| mesh.corners(*triangle)).collect()
}
