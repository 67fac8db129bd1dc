//! What solids that pass through each other fill together.
//!
//! The sum of their volumes is exact; from it goes what is counted more than once, which is the sum of that over all plane cuts. Only the
//! heights at which two boxes have something in common are cut. Between the corners and crossings of flat faces the area of a cut is a
//! polynomial of second degree in its height, and without a jump in its slope there, so four points a panel come near very quickly.

use super::nesting::Nesting;
use super::radial::{dot, minus};
use super::slices::{Excess, Frame, Piece, Slicer, Work};
use super::soup::Triangle;
use super::sums::{Span, Sums};
use super::survey::on_threads;
use super::union_find::UnionFind;

/// What overlapping solids fill together, with how well that is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Union {
    /// The volume of everything inside at least one solid, in mm³, sealed cavities filled.
    pub volume_mm3: f64,
    /// How far the last two rounds of cuts were apart, in mm³: the volume is better known than that.
    pub doubt_mm3: f64,
    /// Plane cuts that were made.
    pub cuts: u32,
}

/// Two rounds of cuts must agree within this share of the volume.
const AGREE_SHARE: f64 = 2e-5;
/// When no further round can be paid for, this much must do, or nothing is said.
const ENOUGH_SHARE: f64 = 1e-4;
/// Solids that fill less together than this share of their sum were not told apart rightly: the cuts agree no better.
const LEAST_SHARE: f64 = 1e-3;
/// Panels in the first round; each round has twice as many.
const FIRST_PANELS: usize = 32;
/// Panels in the last round.
const MOST_PANELS: usize = 1024;
/// Segments cut and compared: some seconds.
const MOST_WORK: Work = 24_000_000;

/// Volumes of one group of shells in mm³.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Together {
    pub fills: f64,
    pub material: f64,
    pub doubt: f64,
    pub cuts: u32,
}

/// Shells that hang together by crossing or holding each other.
pub(super) struct Groups {
    of_shell: Vec<u32>,
    crosses: Vec<bool>,
}

impl Groups {
    pub fn new(shells: usize, nesting: &Nesting) -> Self {
        let mut sets = UnionFind::new(shells);
        nesting.crossing.iter().for_each(|&(a, b)| sets.unite(a, b));
        for (holders, at) in nesting.holders.iter().zip(0..) {
            holders.iter().for_each(|&holder| sets.unite(holder, at));
        }
        let (of_shell, count) = sets.numbered();
        let mut crosses = vec![false; count];
        nesting.crossing.iter().for_each(|&(a, _)| crosses[of_shell[a as usize] as usize] = true);
        Self { of_shell, crosses }
    }

    /// True for a shell in a group in which some pass through each other.
    pub fn crosses(&self, shell: usize) -> bool {
        self.crosses[self.of_shell[shell] as usize]
    }

    /// The groups in which shells pass through each other.
    fn crossing(&self) -> Vec<Vec<usize>> {
        let mut groups = vec![Vec::new(); self.crosses.len()];
        (0..self.of_shell.len()).filter(|&at| self.crosses(at)).for_each(|at| groups[self.of_shell[at] as usize].push(at));
        groups.retain(|group| !group.is_empty());
        groups
    }
}

/// Works out all groups in which shells cross. `ways` says for every shell whether it is a solid (1), a cavity (−1) or flat (0); `surface` gives
/// its triangles. Nothing where that would take too long.
pub(super) fn unite(
    sums: &[Sums],
    ways: &[i64],
    nesting: &Nesting,
    groups: &Groups,
    surface: &dyn Fn(usize) -> Vec<Triangle>,
) -> Option<Together> {
    let mut total = Together::default();
    let mut work = MOST_WORK;
    for group in groups.crossing() {
        let found = unite_group(sums, ways, nesting, &group, surface, &mut work)?;
        total.fills += found.fills;
        total.material += found.material;
        total.doubt += found.doubt;
        total.cuts = total.cuts.saturating_add(found.cuts);
    }
    Some(total)
}

fn unite_group(
    sums: &[Sums],
    ways: &[i64],
    nesting: &Nesting,
    group: &[usize],
    surface: &dyn Fn(usize) -> Vec<Triangle>,
    work: &mut Work,
) -> Option<Together> {
    let size = |at: usize| sums[at].volume_mm3().abs();
    let is_outermost = |at: usize| ways[at] > 0 && nesting.holders[at].is_empty();
    let outermost: f64 = group.iter().filter(|&&at| is_outermost(at)).map(|&at| size(at)).sum();
    let all: f64 = group.iter().map(|&at| ways[at] as f64 * size(at)).sum();
    let has_cavity = group.iter().any(|&at| ways[at] < 0);
    // Without cavities whatever another solid holds adds nothing, so only the outermost are cut.
    let cut: Vec<usize> = group.iter().copied().filter(|&at| if has_cavity { ways[at] != 0 } else { is_outermost(at) }).collect();
    if cut.len() < 2 {
        return Some(Together { fills: outermost, material: outermost, ..Together::default() });
    }
    let mut span = Span::NOTHING;
    cut.iter().for_each(|&at| span.join(&sums[at].span));
    let pieces: Vec<Piece> = cut.iter().map(|&at| piece(surface(at), &sums[at], ways[at], is_outermost(at))).collect();
    let frame = Frame::new();
    let slicer = Slicer::new(&frame, &pieces, &span);
    let ranges = ranges(sums, nesting, &cut, has_cavity, &frame, &span, slicer.unit_mm);
    let cube = slicer.unit_mm.powi(3);
    let (excess, doubt, cuts) = integrate(&slicer, &ranges, outermost / cube, work)?;
    let fills = outermost - excess.outermost * cube;
    let material = if has_cavity { all - excess.all * cube } else { fills };
    // A surface that is turned inside out in places covers less than nothing there: what it fills cannot be told.
    let least = LEAST_SHARE * outermost;
    (fills >= least && (0.0..=fills + least).contains(&material)).then_some(Together { fills, material, doubt: doubt * cube, cuts })
}

/// A surface wound as what it is taken for.
fn piece(mut triangles: Vec<Triangle>, sums: &Sums, way: i64, is_outermost: bool) -> Piece {
    if (way > 0) != (sums.volume_6 > 0.0) {
        triangles.iter_mut().for_each(|triangle| triangle.swap(1, 2));
    }
    Piece { triangles, is_outermost }
}

/// Ranges of heights kept apart at most.
const MOST_RANGES: usize = 16;

/// The heights, in the slicer's unit, at which the boxes of two pieces have something in common.
fn ranges(sums: &[Sums], nesting: &Nesting, cut: &[usize], has_cavity: bool, frame: &Frame, span: &Span, unit_mm: f64) -> Vec<[f64; 2]> {
    let is_cut = |at: u32| cut.binary_search(&(at as usize)).is_ok();
    let held = nesting.holders.iter().zip(0..).filter(|_| has_cavity).flat_map(|(holders, at)| holders.iter().map(move |&h| (h, at)));
    let pairs = nesting.crossing.iter().copied().chain(held).filter(|&(a, b)| is_cut(a) && is_cut(b));
    let mut found: Vec<[f64; 2]> = pairs
        .map(|(a, b)| {
            let (a, b) = (&sums[a as usize].span, &sums[b as usize].span);
            let low: [f64; 3] = std::array::from_fn(|axis| f64::from(a.low[axis].max(b.low[axis])));
            let high: [f64; 3] = std::array::from_fn(|axis| f64::from(a.high[axis].min(b.high[axis])));
            let middle = dot(minus(std::array::from_fn(|axis| 0.5 * (low[axis] + high[axis])), span.centre()), frame.along);
            let reach: f64 = (0..3).map(|axis| 0.5 * (high[axis] - low[axis]).max(0.0) * frame.along[axis].abs()).sum();
            [(middle - reach) / unit_mm, (middle + reach) / unit_mm]
        })
        .collect();
    found.sort_by(|a, b| a[0].total_cmp(&b[0]));
    found.dedup_by(|next, last| {
        let joins = next[0] <= last[1];
        if joins {
            last[1] = last[1].max(next[1]);
        }
        joins
    });
    if found.len() > MOST_RANGES
        && let (Some(first), Some(last)) = (found.first().copied(), found.last().copied())
    {
        return vec![[first[0], last[1]]];
    }
    found
}

/// Places and weights of the rule of four points that is exact up to the seventh degree (Gauss and Legendre), over −1 to 1.
const RULE: [(f64, f64); 4] = [
    (-0.861_136_311_594_052_6, 0.347_854_845_137_453_8),
    (-0.339_981_043_584_856_3, 0.652_145_154_862_546_1),
    (0.339_981_043_584_856_3, 0.652_145_154_862_546_1),
    (0.861_136_311_594_052_6, 0.347_854_845_137_453_8),
];

/// The excess over all heights, how far the last two rounds were apart, and the cuts made. `scale` is the volume it is taken from.
fn integrate(slicer: &Slicer, ranges: &[[f64; 2]], scale: f64, work: &mut Work) -> Option<(Excess, f64, u32)> {
    let mut last: Option<Excess> = None;
    let (mut panels, mut cuts) = (FIRST_PANELS, 0_u32);
    loop {
        let before = *work;
        let (found, made) = round(slicer, ranges, panels, work)?;
        cuts = cuts.saturating_add(made);
        if let Some(last) = last {
            let apart = (found.outermost - last.outermost).abs().max((found.all - last.all).abs());
            // What is left when the excess goes off, never less than a part of what it is taken from.
            let left = (scale - found.outermost).max(LEAST_SHARE * scale);
            let is_last = panels >= MOST_PANELS || 2 * (before - *work) > *work;
            if apart <= AGREE_SHARE * left || is_last && apart <= ENOUGH_SHARE * left {
                return Some((found, apart, cuts));
            }
            if is_last {
                return None;
            }
        }
        last = Some(found);
        panels *= 2;
    }
}

/// One round of cuts, shared out over the cores.
fn round(slicer: &Slicer, ranges: &[[f64; 2]], panels: usize, work: &mut Work) -> Option<(Excess, u32)> {
    let length: f64 = ranges.iter().map(|[low, high]| high - low).sum();
    let mut points: Vec<(f64, f64)> = Vec::new();
    for [low, high] in ranges {
        let share = (high - low) / length.max(f64::MIN_POSITIVE);
        let here = ((panels as f64 * share).ceil() as usize).clamp(panels / 8, panels);
        let half = 0.5 * (high - low) / here as f64;
        for panel in 0..here {
            let middle = low + (2 * panel + 1) as f64 * half;
            points.extend(RULE.iter().map(|(place, weight)| (middle + place * half, weight * half)));
        }
    }
    let threads = std::thread::available_parallelism().map_or(1, usize::from).min(8);
    let chunks: Vec<&[(f64, f64)]> = points.chunks(points.len().div_ceil(threads).max(1)).collect();
    let allowance = *work / chunks.len().max(1) as u64;
    let tasks = chunks.iter().map(|chunk| {
        move || {
            let mut left = allowance;
            let heights: Vec<f64> = chunk.iter().map(|(height, _)| *height).collect();
            slicer.cut(&heights, &mut left).map(|cuts| (cuts, allowance - left))
        }
    });
    let mut total = Excess::default();
    for (answer, chunk) in on_threads(tasks).into_iter().zip(&chunks) {
        let (cuts, used) = answer?;
        *work -= used.min(*work);
        for (cut, (_, weight)) in cuts.iter().zip(*chunk) {
            total.outermost += weight * cut.outermost;
            total.all += weight * cut.all;
        }
    }
    Some((total, points.len() as u32))
}
