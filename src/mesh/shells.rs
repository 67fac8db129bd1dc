//! The closed pieces of a mesh and what each of them means: solid, cavity, solid inside a solid.

use super::Problem;
use super::nesting::Nesting;
use super::soup::Triangle;
use super::sums::Sums;
use super::united::{Groups, Union, unite};

/// One piece of surface that hangs together along its edges.
#[derive(Debug, Clone, PartialEq)]
pub struct Shell {
    /// Triangles, without repeated ones and without those that repeat a corner.
    pub triangles: u32,
    /// The volume inside in mm³, negative where the surface faces inward. Nothing where the shell is open or its triangles disagree.
    pub signed_volume_mm3: Option<f64>,
    /// Area in mm².
    pub area_mm2: f64,
    /// The lowest x, y, z in mm.
    pub low_mm: [f64; 3],
    /// The highest x, y, z in mm.
    pub high_mm: [f64; 3],
    /// The smallest shell this one lies in, by its place in the list.
    pub nested_in: Option<usize>,
    /// True when the shell is the wall of a sealed cavity.
    pub is_void: bool,
}

impl Shell {
    pub(super) fn new(sums: &Sums, encloses: bool) -> Self {
        Self {
            triangles: sums.triangles,
            signed_volume_mm3: encloses.then(|| sums.volume_mm3()),
            area_mm2: sums.area_mm2(),
            low_mm: sums.span.low.map(f64::from),
            high_mm: sums.span.high.map(f64::from),
            nested_in: None,
            is_void: false,
        }
    }
}

/// Volumes of a file whose shells are all closed, in mm³.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Volumes {
    /// The file's material.
    pub material: Option<f64>,
    /// What metal fills.
    pub fills: Option<f64>,
    /// What metal fills at most.
    pub fills_at_most: f64,
}

/// True for a shell that encloses nothing worth the name: less than rounding can produce.
pub(super) fn is_flat(sums: &Sums) -> bool {
    sums.volume_mm3().abs() <= 1e-12 * sums.area_mm2() * sums.span.diagonal()
}

/// Reads volumes off closed shells, marks cavities and parents in `shells`, and reports. `surface` gives the triangles of a shell.
pub(super) fn judge(
    sums: &[Sums],
    nesting: &Nesting,
    surface: &dyn Fn(usize) -> Vec<Triangle>,
    shells: &mut [Shell],
    problems: &mut Vec<Problem>,
) -> Volumes {
    let ways = ways(sums, nesting, problems);
    let size = |at: usize| sums[at].volume_mm3().abs();
    let at_most: f64 = (0..sums.len()).filter(|&at| ways[at] > 0).map(size).sum();
    for (at, holders) in nesting.holders.iter().enumerate() {
        shells[at].nested_in = holders.iter().map(|&h| h as usize).min_by(|&a, &b| size(a).total_cmp(&size(b)));
    }
    if nesting.unsettled {
        problems.push(Problem::OverlapNotSettled { at_most_mm3: at_most });
        return Volumes { material: None, fills: None, fills_at_most: at_most };
    }
    let groups = Groups::new(sums.len(), nesting);
    let mut told = Told::default();
    let (mut material, mut fills) = (0.0, 0.0);
    for at in 0..sums.len() {
        // How many times over the places just outside and just inside the shell are material.
        let outside: i64 = nesting.holders[at].iter().map(|&h| ways[h as usize]).sum();
        let inside = outside + ways[at];
        // Where shells cross, holders do not tell all: what those enclose comes from their union.
        let own = if groups.crosses(at) { 0.0 } else { size(at) };
        match (outside >= 1, inside >= 1) {
            (false, true) => material += own,
            (true, false) => {
                material -= own;
                shells[at].is_void = true;
                told.voids += 1;
                told.void_mm3 += size(at);
            }
            (true, true) if ways[at] > 0 => {
                told.nested += 1;
                told.twice_mm3 += size(at);
            }
            _ => {}
        }
        let in_void = nesting.holders[at].iter().any(|&h| ways[h as usize] < 0);
        if (outside, inside) == (0, 1) && in_void {
            told.void_mm3 -= size(at);
        }
        if nesting.holders[at].is_empty() && ways[at] > 0 {
            fills += own;
        }
    }
    if nesting.crossing.is_empty() {
        told.report(problems);
        return Volumes { material: Some(material), fills: Some(fills), fills_at_most: fills };
    }
    let together = unite(sums, &ways, nesting, &groups, surface);
    if let Some(found) = together {
        (material, fills) = (material + found.material, fills + found.fills);
        if told.voids > 0 {
            // Another solid may reach into a cavity.
            told.void_mm3 = (fills - material).max(0.0);
        }
    }
    told.report(problems);
    let at_least_mm3 = (0..sums.len()).filter(|&at| ways[at] > 0).map(size).fold(0.0, f64::max);
    let union = together.map(|found| Union { volume_mm3: fills, doubt_mm3: found.doubt, cuts: found.cuts });
    problems.push(Problem::OverlappingShells { pairs: nesting.crossing.len() as u32, at_least_mm3, at_most_mm3: at_most, union });
    match union {
        Some(_) => Volumes { material: Some(material), fills: Some(fills), fills_at_most: fills },
        None => Volumes { material: None, fills: None, fills_at_most: at_most },
    }
}

#[derive(Default)]
struct Told {
    voids: u32,
    void_mm3: f64,
    nested: u32,
    twice_mm3: f64,
}

impl Told {
    fn report(&self, problems: &mut Vec<Problem>) {
        if self.voids > 0 {
            problems.push(Problem::SealedVoid { voids: self.voids, void_mm3: self.void_mm3 });
        }
        if self.nested > 0 {
            problems.push(Problem::NestedSameWinding { shells: self.nested, counted_twice_mm3: self.twice_mm3 });
        }
    }
}

/// Which way each shell faces: 1 outward, −1 inward, 0 flat. An outermost shell that faces inward is turned, with all that lies in it.
fn ways(sums: &[Sums], nesting: &Nesting, problems: &mut Vec<Problem>) -> Vec<i64> {
    let faces: Vec<i64> = sums
        .iter()
        .map(|s| {
            if is_flat(s) {
                0
            } else if s.volume_6 > 0.0 {
                1
            } else {
                -1
            }
        })
        .collect();
    let turned = |at: usize| nesting.holders[at].is_empty() && faces[at] < 0;
    let inside_out = (0..sums.len()).filter(|&at| turned(at)).count() as u32;
    if inside_out > 0 {
        problems.push(Problem::InsideOut { shells: inside_out });
    }
    (0..sums.len())
        .map(|at| {
            let turn = turned(at) || nesting.holders[at].iter().any(|&h| turned(h as usize));
            if turn { -faces[at] } else { faces[at] }
        })
        .collect()
}
