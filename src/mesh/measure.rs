//! The figures of a mesh: volume, what metal fills, area, size, shells, and what is wrong with it.

use super::edges::Links;
use super::nesting::nest;
use super::problem::FileUnit;
use super::regions::near_together;
use super::repair::{Clean, clean};
use super::shells::{is_flat, judge};
use super::soup::Triangle;
use super::sums::{Span, Sums, span_of};
use super::survey::{REGION_TRIANGLES, Survey, survey};
use super::weld::{Welded, weld};
use super::{Problem, Shell, Soup};

/// What a pattern file measures.
#[derive(Debug, Clone, PartialEq)]
pub struct Measure {
    /// Triangles in the file, repeated and empty ones too.
    pub triangles: u32,
    /// The signed volume of the file's material in mm³: solids less cavities, what lies in two solids counted once. Nothing where the file has
    /// no such number; a problem then says why.
    pub volume_mm3: Option<f64>,
    /// The plain sum of signed tetrahedra in mm³, for comparison with other programs: counts overlaps twice. Nothing where the surface is open
    /// or its triangles disagree.
    pub plain_sum_mm3: Option<f64>,
    /// What metal fills in mm³: the outermost shells, sealed cavities filled, what overlaps counted once. Nothing where that is not known. Exact
    /// but for overlaps, whose problem says how well they are known.
    pub fills_mm3: Option<f64>,
    /// What metal fills at most, in mm³: known for every closed file, also where it is too intricate to say how much shells overlap.
    pub fills_at_most_mm3: Option<f64>,
    /// The area of all triangles in mm², repeated ones once.
    pub area_mm2: f64,
    /// The box's sides in mm.
    pub size_mm: [f64; 3],
    /// The lowest x, y, z in mm.
    pub low_mm: [f64; 3],
    /// The highest x, y, z in mm.
    pub high_mm: [f64; 3],
    /// True when no edge is open.
    pub watertight: bool,
    /// True when neighbours agree everywhere about what is outside.
    pub winding_agrees: bool,
    /// The pieces, those with most triangles first.
    pub shells: Vec<Shell>,
    /// What is wrong or worth knowing.
    pub problems: Vec<Problem>,
}

/// Measures the triangles of a file. Never fails: a file without a volume says why among its problems.
#[must_use]
pub fn measure(soup: &Soup) -> Measure {
    let quick = survey(&soup.triangles[..], REGION_TRIANGLES).ok().and_then(|survey| measure_sound(&survey));
    match quick {
        Some(mut found) => {
            push_if(&mut found.problems, soup.last_line_looks_cut(), Problem::LastLineCut);
            found
        }
        None => measure_any(soup),
    }
}

/// The figures of a file whose triangles form one sound shell; nothing for any other.
pub(super) fn measure_sound(survey: &Survey) -> Option<Measure> {
    let sums = survey.sums;
    if survey.shells != Some(1) {
        return None;
    }
    let shells = vec![Shell::new(&sums, true)];
    let mut found = start(sums.triangles, &sums, shells);
    settle(&mut found, &[sums], &|_| Vec::new());
    push_if(&mut found.problems, sums.no_area > 0, Problem::Degenerate { triangles: sums.no_area });
    push_size_problems(&mut found.problems, &sums.span);
    Some(found)
}

/// The figures of any file, faults named.
pub(super) fn measure_any(soup: &Soup) -> Measure {
    let span = span_of(&soup.triangles);
    let Clean { mesh, links, degenerate, duplicates, seams } = clean(welded(&soup.triangles), span.diagonal());
    let (shell_of, sums) = sums_by_shell(&mesh, &links, span.centre());
    let mut total = Sums::NOTHING;
    sums.iter().for_each(|part| total.join(part));
    let mut spoilt = vec![false; sums.len()];
    links.open.iter().map(|(_, t)| t).chain(&links.mixed).for_each(|&t| spoilt[shell_of[t as usize] as usize] = true);
    let shells = sums.iter().zip(&spoilt).map(|(s, spoilt)| Shell::new(s, !spoilt)).collect();
    let mut found = start(soup.triangles.len() as u32, &Sums { span, ..total }, shells);
    let (open, mixed) = (links.open.len() as u32, links.mixed.len() as u32);
    push_if(&mut found.problems, open > 0, Problem::Open { edges: open });
    push_if(&mut found.problems, mixed > 0, Problem::MixedWinding { edges: mixed });
    // Where nothing is left but triangles that repeat a corner, nothing is closed either.
    (found.watertight, found.winding_agrees) = (open == 0 && !sums.is_empty(), mixed == 0);
    if links.encloses() && !sums.is_empty() {
        let groups = Groups::new(&shell_of, sums.len());
        settle(&mut found, &sums, &|shell| groups.of(shell).iter().map(|&t| mesh.corners(mesh.triangles[t as usize])).collect());
    } else {
        found.plain_sum_mm3 = None;
    }
    push_if(&mut found.problems, duplicates > 0, Problem::DuplicateTriangles { triangles: duplicates });
    let degenerate = degenerate + total.no_area;
    push_if(&mut found.problems, degenerate > 0, Problem::Degenerate { triangles: degenerate });
    push_if(&mut found.problems, links.non_manifold > 0, Problem::NonManifoldEdges { edges: links.non_manifold });
    if let Some((corners, widest_gap_mm)) = seams {
        found.problems.push(Problem::SeamsClosed { corners, widest_gap_mm });
    }
    push_size_problems(&mut found.problems, &span);
    push_if(&mut found.problems, soup.last_line_looks_cut(), Problem::LastLineCut);
    found
}

/// Welds the triangles in an order that spares waiting for memory. Nothing below depends on the order of the file.
fn welded(triangles: &[Triangle]) -> Welded {
    match near_together(triangles, REGION_TRIANGLES) {
        Ok(sorted) => weld(&sorted),
        Err(_) => weld(triangles),
    }
}

/// Figures that need no more than sums, as of a sound file; volumes are still to be settled.
fn start(triangles: u32, total: &Sums, shells: Vec<Shell>) -> Measure {
    Measure {
        triangles,
        volume_mm3: None,
        plain_sum_mm3: Some(total.volume_mm3()),
        fills_mm3: None,
        fills_at_most_mm3: None,
        area_mm2: total.area_mm2(),
        size_mm: total.span.size(),
        low_mm: total.span.low.map(f64::from),
        high_mm: total.span.high.map(f64::from),
        watertight: true,
        winding_agrees: true,
        shells,
        problems: Vec::new(),
    }
}

fn push_if(problems: &mut Vec<Problem>, holds: bool, problem: Problem) {
    if holds {
        problems.push(problem);
    }
}

/// Adds up each shell and puts the shells in an order that does not depend on the order of the file's triangles.
fn sums_by_shell(mesh: &Welded, links: &Links, centre: [f64; 3]) -> (Vec<u32>, Vec<Sums>) {
    let Links { shell_of, shells, .. } = links;
    let shells = *shells;
    let mut sums = vec![Sums::NOTHING; shells];
    for (triangle, &at) in mesh.triangles.iter().zip(shell_of) {
        sums[at as usize].add(&mesh.corners(*triangle), centre);
    }
    let mut order: Vec<u32> = (0..shells as u32).collect();
    let corner = |at: u32| sums[at as usize].span.low.into_iter().chain(sums[at as usize].span.high);
    order.sort_by(|&a, &b| {
        let by_count = sums[b as usize].triangles.cmp(&sums[a as usize].triangles);
        by_count
            .then_with(|| corner(a).map(ordered).cmp(corner(b).map(ordered)))
            .then(sums[b as usize].volume_6.total_cmp(&sums[a as usize].volume_6))
    });
    let mut place = vec![0; shells];
    order.iter().zip(0..).for_each(|(&old, new)| place[old as usize] = new);
    (shell_of.iter().map(|&old| place[old as usize]).collect(), order.iter().map(|&old| sums[old as usize]).collect())
}

/// Triangles sorted by shell.
struct Groups {
    starts: Vec<u32>,
    triangles: Vec<u32>,
}

impl Groups {
    fn new(shell_of: &[u32], shells: usize) -> Self {
        let mut starts = vec![0; shells + 1];
        // One shell has nothing to be compared with, so nobody will ask for its triangles.
        if shells < 2 {
            return Self { starts, triangles: Vec::new() };
        }
        shell_of.iter().for_each(|&at| starts[at as usize + 1] += 1);
        (1..=shells).for_each(|at| starts[at] += starts[at - 1]);
        let mut next = starts.clone();
        let mut triangles = vec![0; shell_of.len()];
        for (&at, triangle) in shell_of.iter().zip(0..) {
            triangles[next[at as usize] as usize] = triangle;
            next[at as usize] += 1;
        }
        Self { starts, triangles }
    }

    fn of(&self, shell: usize) -> &[u32] {
        &self.triangles[self.starts[shell] as usize..self.starts[shell + 1] as usize]
    }
}

/// A number with the order of the float, for comparing lists.
fn ordered(value: f32) -> i32 {
    let bits = value.to_bits() as i32;
    bits ^ (((bits >> 31) as u32) >> 1) as i32
}

/// Works out the volumes of a file whose shells are all closed. `surface` gives the triangles of a shell.
fn settle(found: &mut Measure, sums: &[Sums], surface: &dyn Fn(usize) -> Vec<Triangle>) {
    let flat = sums.iter().filter(|s| is_flat(s)).count();
    push_if(&mut found.problems, flat > 0, Problem::Flat { shells: flat as u32 });
    let nesting = nest(sums, surface);
    let volumes = judge(sums, &nesting, surface, &mut found.shells, &mut found.problems);
    found.fills_at_most_mm3 = Some(volumes.fills_at_most);
    // A file of flat sheets alone has no volume to speak of.
    if flat < sums.len() {
        (found.volume_mm3, found.fills_mm3) = (volumes.material, volumes.fills);
    }
}

/// Sides a casting of this trade has, in mm: common practice, no source. Smaller than a bead or larger than a flask is a wrong unit.
const PLAUSIBLE_MM: std::ops::RangeInclusive<f64> = 1.5..=600.0;
/// Sides a wrong unit must lead to before it is named.
const LIKELY_MM: std::ops::RangeInclusive<f64> = 4.0..=300.0;
/// The step between neighbouring numbers, as a share of the model's size, from which it is worth a word.
const COARSE_SHARE: f64 = 1e-4;

fn push_size_problems(problems: &mut Vec<Problem>, span: &Span) {
    let largest_mm = span.size().into_iter().fold(0.0, f64::max);
    if !PLAUSIBLE_MM.contains(&largest_mm) {
        use FileUnit::{Centimetre, Inch, Metre, Micrometre, Mil};
        let units = [Inch, Metre, Centimetre, Mil, Micrometre];
        let probable_unit = units.into_iter().find(|unit| LIKELY_MM.contains(&(largest_mm * unit.mm())));
        problems.push(Problem::AbsurdSize { largest_mm, probable_unit });
    }
    let farthest = span.low.into_iter().chain(span.high).map(f32::abs).fold(0.0, f32::max);
    // The largest number has no neighbour above; the step below it is the same.
    let here = farthest.min(f32::MAX.next_down());
    let step_mm = f64::from(here.next_up()) - f64::from(here);
    push_if(problems, step_mm > COARSE_SHARE * largest_mm, Problem::FarFromOrigin { step_mm });
}
