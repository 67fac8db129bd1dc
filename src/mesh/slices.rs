//! Plane cuts through closed surfaces that lie in each other, and the area they share.
//!
//! The cuts stand square on a direction no model is likely to have, so that a cut runs along no face and the area goes smoothly with its height.

use super::radial::{cross, dot};
use super::soup::Triangle;
use super::sums::Span;
use super::weld::weld;
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::overlay::FloatOverlay;

/// One closed surface, wound so that material lies inside a solid and outside a cavity.
pub(super) struct Piece {
    pub triangles: Vec<Triangle>,
    /// True where nothing holds it.
    pub is_outermost: bool,
}

/// The direction cuts are stacked along, and two across it.
pub(super) struct Frame {
    across: [[f64; 3]; 2],
    pub along: [f64; 3],
}

impl Frame {
    pub fn new() -> Self {
        // Any direction serves that is no axis, diagonal or plane of a model.
        let unit = |v: [f64; 3]| v.map(|x| x / dot(v, v).sqrt());
        let along = unit([0.290_473_51, -0.484_083_11, 0.825_402_71]);
        let first = unit(cross(along, [0.618_033_98, 0.577_215_66, 0.123_456_78]));
        Self { across: [first, cross(along, first)], along }
    }
}

/// Surfaces ready to be cut. Lengths are shares of `unit_mm`.
pub(super) struct Slicer {
    points: Vec<[f64; 3]>,
    /// Lowest and highest place along the direction, corners, piece; sorted by the lowest place.
    triangles: Vec<Slab>,
    outermost: Vec<bool>,
    pub unit_mm: f64,
}

struct Slab {
    low: f64,
    high: f64,
    corners: [u32; 3],
    piece: u32,
}

/// What is counted more than once in a cut, as areas in square units.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Excess {
    /// The outermost pieces added up, less what they cover together.
    pub outermost: f64,
    /// All pieces added up, cavities negative, less what is covered at least once.
    pub all: f64,
}

/// Work left, in segments and comparisons. Nothing is ever computed beyond it.
pub(super) type Work = u64;

impl Slicer {
    /// Turns and scales the pieces; `span` is the box round them.
    pub fn new(frame: &Frame, pieces: &[Piece], span: &Span) -> Self {
        let (centre, unit_mm) = (span.centre(), span.diagonal().max(f64::MIN_POSITIVE));
        let mut slicer = Self { points: Vec::new(), triangles: Vec::new(), outermost: Vec::new(), unit_mm };
        for (piece, number) in pieces.iter().zip(0..) {
            // Each by itself: two pieces may touch at a corner.
            let mesh = weld(&piece.triangles);
            let first = slicer.points.len() as u32;
            slicer.points.extend(mesh.points.iter().map(|point| {
                let from: [f64; 3] = std::array::from_fn(|axis| (f64::from(point[axis]) - centre[axis]) / unit_mm);
                [dot(from, frame.across[0]), dot(from, frame.across[1]), dot(from, frame.along)]
            }));
            slicer.outermost.push(piece.is_outermost);
            for corners in mesh.triangles {
                let corners = corners.map(|at| first + at);
                let heights = corners.map(|at| slicer.points[at as usize][2]);
                let low = heights.into_iter().fold(f64::INFINITY, f64::min);
                let high = heights.into_iter().fold(f64::NEG_INFINITY, f64::max);
                slicer.triangles.push(Slab { low, high, corners, piece: number });
            }
        }
        slicer.triangles.sort_by(|a, b| a.low.total_cmp(&b.low));
        slicer
    }

    /// The excess at rising heights; nothing when a cut does not close or the work is used up.
    pub fn cut(&self, heights: &[f64], work: &mut Work) -> Option<Vec<Excess>> {
        let mut next = 0;
        let mut here: Vec<usize> = Vec::new();
        let mut found = Vec::with_capacity(heights.len());
        for &height in heights {
            here.retain(|&at| self.triangles[at].high > height);
            while self.triangles.get(next).is_some_and(|slab| slab.low <= height) {
                if self.triangles[next].high > height {
                    here.push(next);
                }
                next += 1;
            }
            *work = work.checked_sub(here.len() as u64)?;
            let mut steps: Vec<Step> = here.iter().filter_map(|&at| self.step(at, height)).collect();
            found.push(self.excess(&contours(&mut steps, work)?, work)?);
        }
        Some(found)
    }

    /// Where a triangle crosses a height: from the edge that goes down to the edge that goes up, so that material lies to the left.
    fn step(&self, at: usize, height: f64) -> Option<Step> {
        let Slab { corners, piece, .. } = self.triangles[at];
        // A corner at the very height counts as above it: then every edge is either crossed or not.
        let above = corners.map(|corner| self.points[corner as usize][2] >= height);
        let edge = |k: usize| (corners[k], corners[(k + 1) % 3]);
        let down = (0..3).find(|&k| above[k] && !above[(k + 1) % 3])?;
        let up = (0..3).find(|&k| !above[k] && above[(k + 1) % 3])?;
        let key = |(a, b): (u32, u32)| u64::from(a.min(b)) << 32 | u64::from(a.max(b));
        let (high, low) = edge(down);
        Some(Step { from: key(edge(down)), to: key(edge(up)), at: self.crossing(low, high, height), piece, is_used: false })
    }

    /// The same for both triangles of an edge, to the last bit: reckoned from its lower end.
    fn crossing(&self, low: u32, high: u32, height: f64) -> [f64; 2] {
        let (low, high) = (self.points[low as usize], self.points[high as usize]);
        let share = ((height - low[2]) / (high[2] - low[2])).clamp(0.0, 1.0);
        std::array::from_fn(|axis| low[axis] + share * (high[axis] - low[axis]))
    }

    fn excess(&self, contours: &[Contour], work: &mut Work) -> Option<Excess> {
        let shared = shared(contours, work)?;
        let outermost: Vec<&Contour> = shared.iter().copied().filter(|contour| self.outermost[contour.piece as usize]).collect();
        let first = counted_again(&outermost, work)?;
        let all = if outermost.len() == shared.len() { first } else { counted_again(&shared, work)? };
        Some(Excess { outermost: first, all })
    }
}

/// One triangle's part of a contour.
struct Step {
    from: u64,
    to: u64,
    at: [f64; 2],
    piece: u32,
    is_used: bool,
}

/// A closed line in a cut, round material where it runs left, with its box.
struct Contour {
    piece: u32,
    points: Vec<[f64; 2]>,
    low: [f64; 2],
    high: [f64; 2],
}

/// Chains steps to contours by the edges they cross. Which way they are chained where several triangles meet at an edge does not matter to
/// how often a place is covered.
fn contours(steps: &mut [Step], work: &mut Work) -> Option<Vec<Contour>> {
    steps.sort_by_key(|step| step.from);
    let mut found = Vec::new();
    for start in 0..steps.len() {
        if steps[start].is_used {
            continue;
        }
        let (piece, first) = (steps[start].piece, steps[start].from);
        let mut contour = Contour { piece, points: Vec::new(), low: [f64::INFINITY; 2], high: [f64::NEG_INFINITY; 2] };
        let mut at = start;
        loop {
            let step = &mut steps[at];
            step.is_used = true;
            contour.points.push(step.at);
            for axis in 0..2 {
                contour.low[axis] = contour.low[axis].min(step.at[axis]);
                contour.high[axis] = contour.high[axis].max(step.at[axis]);
            }
            let wanted = step.to;
            if wanted == first {
                break;
            }
            at = steps.partition_point(|step| step.from < wanted);
            while steps.get(at).is_some_and(|step| step.from == wanted && step.is_used) {
                *work = work.checked_sub(1)?;
                at += 1;
            }
            if steps.get(at).is_none_or(|step| step.from != wanted) {
                return None;
            }
        }
        found.push(contour);
    }
    Some(found)
}

/// The contours whose box meets one of another piece. In the box of any other contour its own piece is alone, so nothing there is counted twice.
fn shared<'a>(contours: &'a [Contour], work: &mut Work) -> Option<Vec<&'a Contour>> {
    let mut order: Vec<usize> = (0..contours.len()).collect();
    order.sort_by(|&a, &b| contours[a].low[0].total_cmp(&contours[b].low[0]));
    let mut is_shared = vec![false; contours.len()];
    let mut open: Vec<usize> = Vec::new();
    for &at in &order {
        let one = &contours[at];
        open.retain(|&other| contours[other].high[0] >= one.low[0]);
        *work = work.checked_sub(open.len() as u64 / 8)?;
        for &other_at in &open {
            let other = &contours[other_at];
            if other.piece != one.piece && other.low[1] <= one.high[1] && one.low[1] <= other.high[1] {
                is_shared[at] = true;
                is_shared[other_at] = true;
            }
        }
        open.push(at);
    }
    Some(contours.iter().zip(&is_shared).filter(|(_, is_shared)| **is_shared).map(|(contour, _)| contour).collect())
}

/// The areas of contours added up, less the area covered at least once.
fn counted_again(contours: &[&Contour], work: &mut Work) -> Option<f64> {
    if contours.len() < 2 {
        return Some(0.0);
    }
    // Crossings can be as many as pairs of segments: counted first, so that a hostile file cannot fill the memory.
    *work = work.checked_sub(meeting_segments(contours, (*work).min(MOST_MEETINGS))?)?;
    let paths: Vec<Vec<[f64; 2]>> = contours.iter().map(|contour| contour.points.clone()).collect();
    let sum: f64 = paths.iter().map(|path| area(path)).sum();
    let covered = FloatOverlay::<[f64; 2]>::from_subj(&paths).overlay(OverlayRule::Subject, FillRule::Positive);
    Some(sum - covered.iter().flatten().map(|path| area(path)).sum::<f64>())
}

/// Pairs of segments whose boxes meet, in one cut.
const MOST_MEETINGS: u64 = 2_000_000;

fn meeting_segments(contours: &[&Contour], most: u64) -> Option<u64> {
    let mut boxes: Vec<[f64; 4]> = Vec::new();
    for contour in contours {
        let points = &contour.points;
        boxes.extend((0..points.len()).map(|at| {
            let (a, b) = (points[at], points[(at + 1) % points.len()]);
            [a[0].min(b[0]), a[0].max(b[0]), a[1].min(b[1]), a[1].max(b[1])]
        }));
    }
    boxes.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut open: Vec<[f64; 4]> = Vec::new();
    let (mut looked, mut met) = (0, 0);
    for one in boxes {
        open.retain(|other| other[1] >= one[0]);
        looked += open.len() as u64;
        met += open.iter().filter(|other| other[2] <= one[3] && one[2] <= other[3]).count() as u64;
        if met > most || looked > 16 * most {
            return None;
        }
        open.push(one);
    }
    Some(met + looked / 16)
}

/// Signed: positive where the material lies to the left.
fn area(path: &[[f64; 2]]) -> f64 {
    let Some(&from) = path.first() else { return 0.0 };
    let out = |at: usize| [path[at][0] - from[0], path[at][1] - from[1]];
    0.5 * (1..path.len().saturating_sub(1)).map(|at| out(at)[0] * out(at + 1)[1] - out(at)[1] * out(at + 1)[0]).sum::<f64>()
}
