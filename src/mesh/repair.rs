//! What is left out or brought together before measuring: repeated triangles, triangles without area, hair-fine seams.

use super::edges::{Links, link};
use super::radial::{cross, dot, minus};
use super::union_find::UnionFind;
use super::weld::Welded;
use std::collections::HashMap;

/// A mesh ready to be measured, with what was done to it.
pub(super) struct Clean {
    pub mesh: Welded,
    pub links: Links,
    /// Triangles that repeat a corner or hung on an open edge without area, all left out.
    pub degenerate: u32,
    /// Repeated triangles that were left out.
    pub duplicates: u32,
    /// Corners brought together and the widest gap between them, in mm.
    pub seams: Option<(u32, f64)>,
}

/// Leaves out what only confuses, as little as possible, and matches the edges of the rest.
pub(super) fn clean(mut mesh: Welded, diagonal_mm: f64) -> Clean {
    let before = mesh.triangles.len();
    mesh.triangles.retain(|t| !repeats_corner(*t));
    let mut degenerate = (before - mesh.triangles.len()) as u32;
    let mut links = link(&mesh);
    let mut duplicates = 0;
    if links.may_repeat {
        duplicates = drop_repeated(&mut mesh);
        if duplicates > 0 {
            links = link(&mesh);
        }
    }
    while !links.open.is_empty() {
        let dropped = drop_hanging_slivers(&mut mesh, &links);
        if dropped == 0 {
            break;
        }
        degenerate += dropped;
        links = link(&mesh);
    }
    let mut seams = None;
    if !links.open.is_empty()
        && let Some((closed, closed_links, told)) = close_seams(&mesh, &links, SEAM_SHARE * diagonal_mm)
    {
        degenerate += (mesh.triangles.len() - closed.triangles.len()) as u32;
        (mesh, links, seams) = (closed, closed_links, Some(told));
    }
    Clean { mesh, links, degenerate, duplicates, seams }
}

/// A triangle's corners in the same sense, the lowest first: equal for triangles that stand in a file twice.
pub(super) fn lowest_first([a, b, c]: [u32; 3]) -> [u32; 3] {
    if a < b && a < c {
        [a, b, c]
    } else if b < c {
        [b, c, a]
    } else {
        [c, a, b]
    }
}

pub(super) fn repeats_corner([a, b, c]: [u32; 3]) -> bool {
    a == b || b == c || c == a
}

/// Keeps one of triangles with the same corners in the same sense. A pair of opposite sense is a wall of no thickness and stays.
fn drop_repeated(mesh: &mut Welded) -> u32 {
    let mut keyed: Vec<([u32; 3], u32)> = mesh.triangles.iter().zip(0..).map(|(t, at)| (lowest_first(*t), at)).collect();
    keyed.sort_unstable();
    let before = keyed.len();
    keyed.dedup_by_key(|(key, _)| *key);
    keyed.sort_unstable_by_key(|(_, at)| *at);
    mesh.triangles = keyed.iter().map(|(_, at)| mesh.triangles[*at as usize]).collect();
    (before - keyed.len()) as u32
}

/// Leaves out triangles without area that have an open edge. Others without area close a seam between their neighbours and must stay.
fn drop_hanging_slivers(mesh: &mut Welded, links: &Links) -> u32 {
    let mut hanging: Vec<u32> = links.open.iter().map(|(_, triangle)| *triangle).filter(|&t| has_no_area(mesh, t)).collect();
    hanging.sort_unstable();
    hanging.dedup();
    let mut at = 0;
    mesh.triangles.retain(|_| {
        at += 1;
        hanging.binary_search(&(at - 1)).is_err()
    });
    hanging.len() as u32
}

fn has_no_area(mesh: &Welded, triangle: u32) -> bool {
    let [a, b, c] = mesh.corners(mesh.triangles[triangle as usize]).map(|corner| corner.map(f64::from));
    let normal = cross(minus(b, a), minus(c, a));
    dot(normal, normal) == 0.0
}

/// Gaps up to this share of the model's diagonal are seams that some program rounded apart: 0.00002 mm in a model of 20 mm.
const SEAM_SHARE: f64 = 1e-6;

/// Brings corners on open edges together where they are that near. Gives nothing unless that closes the whole surface.
fn close_seams(mesh: &Welded, links: &Links, reach_mm: f64) -> Option<(Welded, Links, (u32, f64))> {
    let mut loose: Vec<u32> = links.open.iter().flat_map(|(points, _)| *points).collect();
    loose.sort_unstable();
    loose.dedup();
    let cell = |point: u32| mesh.points[point as usize].map(|x| (f64::from(x) / reach_mm).floor() as i64);
    let mut cells: HashMap<[i64; 3], Vec<u32>> = HashMap::new();
    for (at, &point) in loose.iter().enumerate() {
        cells.entry(cell(point)).or_default().push(at as u32);
    }
    let mut sets = UnionFind::new(loose.len());
    let mut widest_squared = 0.0_f64;
    for (at, &point) in loose.iter().enumerate() {
        let [x, y, z] = cell(point);
        for near in (0..27).map(|k| [x.saturating_add(k % 3 - 1), y.saturating_add(k / 3 % 3 - 1), z.saturating_add(k / 9 - 1)]) {
            for &other in cells.get(&near).into_iter().flatten().filter(|&&other| (other as usize) < at) {
                let away = minus(mesh.points[point as usize].map(f64::from), mesh.points[loose[other as usize] as usize].map(f64::from));
                let squared = dot(away, away);
                if squared <= reach_mm * reach_mm {
                    sets.unite(at as u32, other);
                    widest_squared = widest_squared.max(squared);
                }
            }
        }
    }
    let (group_of, groups) = sets.numbered();
    if groups == loose.len() {
        return None;
    }
    let joined = join_groups(mesh, &loose, &group_of, groups);
    let again = link(&joined);
    again.open.is_empty().then(|| (joined, again, ((loose.len() - groups) as u32, widest_squared.sqrt())))
}

/// Replaces each group of loose points by their mean.
fn join_groups(mesh: &Welded, loose: &[u32], group_of: &[u32], groups: usize) -> Welded {
    let mut means = vec![([0.0_f64; 3], 0.0_f64); groups];
    for (&point, &group) in loose.iter().zip(group_of) {
        let (sum, count) = &mut means[group as usize];
        for (axis, value) in sum.iter_mut().enumerate() {
            *value += f64::from(mesh.points[point as usize][axis]);
        }
        *count += 1.0;
    }
    let mut points = mesh.points.clone();
    let first_new = points.len() as u32;
    points.extend(means.iter().map(|(sum, count)| sum.map(|x| (x / count) as f32)));
    let mut renamed: Vec<u32> = (0..mesh.points.len() as u32).collect();
    for (&point, &group) in loose.iter().zip(group_of) {
        renamed[point as usize] = first_new + group;
    }
    let triangles = mesh.triangles.iter().map(|t| t.map(|p| renamed[p as usize])).filter(|t| !repeats_corner(*t)).collect();
    Welded { points, triangles }
}
