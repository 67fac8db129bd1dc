//! On which side of every triangle material lies.

use super::edges::{Links, link};
use super::radial::{cross, dot, minus};
use super::repair::{lowest_first, repeats_corner};
use super::soup::{Soup, Triangle};
use super::space::{Hit, LEAST, Near, Space, along, square, unit};
use super::survey::{REGION_TRIANGLES, on_threads, survey};
use super::watch::Watch;
use super::weld::weld;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

/// Triangles at most: the tree of so many takes some hundred megabytes.
pub(super) const MOST_TRIANGLES: usize = 4_000_000;

/// Where material lies as seen from a triangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// Behind it, as it should be.
    Behind,
    /// Before it: the triangle is wound the wrong way.
    Before,
    /// On both sides, on none, or not known.
    None,
}

/// The triangles of a file with what is known of their sides.
pub(super) struct Faces {
    pub space: Space,
    /// By the tree's order.
    pub sides: Vec<Side>,
    /// True when the file is closed and its triangles agree: then crossings of a ray can be added up with their signs.
    is_sound: bool,
    /// True when parts of the surface lie inside a solid.
    has_inner: bool,
}

impl Faces {
    /// Sorts the triangles and finds their sides. Tells `watch` shares up to `share`. Nothing when stopped, or when there is no triangle to
    /// stand on, or more than can be held.
    pub fn new(soup: &Soup, watch: &dyn Watch, share: f64) -> Option<Self> {
        let triangles = &soup.triangles[..];
        if triangles.len() > MOST_TRIANGLES {
            return None;
        }
        let shells = survey(triangles, REGION_TRIANGLES).ok()?.shells;
        let (numbers, is_sound) = match shells {
            Some(_) => ((0..triangles.len() as u32).collect(), true),
            None => once_each(triangles),
        };
        let space = Space::new(triangles, numbers)?;
        let mut faces = Self { sides: vec![Side::Behind; space.len()], space, is_sound, has_inner: false };
        // One sound shell needs no rays, unless it is wound inside out.
        if shells == Some(1) {
            if faces.signed_volume() < 0.0 {
                faces.sides.fill(Side::Before);
            }
            return watch.go_on(share).then_some(faces);
        }
        let sides = over(faces.space.len(), watch, 0.0..share, |at| faces.side(at))?;
        faces.has_inner = is_sound && sides.contains(&Side::None);
        faces.sides = sides;
        Some(faces)
    }

    /// In cubic units; meaningful only for a closed surface.
    fn signed_volume(&self) -> f64 {
        (0..self.space.len())
            .map(|at| {
                let [a, b, c] = self.space.corners(at);
                dot(a, cross(b, c)) / 6.0
            })
            .sum()
    }

    fn side(&self, at: usize) -> Side {
        let Some((normal, _)) = self.space.normal(at) else { return Side::None };
        let middle = self.space.middle(at);
        // A little off the normal: on a regular model the normal runs through edges.
        let tilted = |sign: f64| unit([0, 1, 2].map(|axis| sign * normal[axis] + [0.083, 0.061, -0.109][axis]));
        let (Some(out), Some(into)) = (tilted(1.0), tilted(-1.0)) else { return Side::None };
        if self.is_sound {
            // How many times over the place before the triangle is material; behind it is one more.
            return match self.winding(middle, out, at) {
                0 => Side::Behind,
                -1 => Side::Before,
                _ => Side::None,
            };
        }
        match (self.is_odd(middle, out, at), self.is_odd(middle, into, at)) {
            (false, true) => Side::Behind,
            (true, false) => Side::Before,
            _ => Side::None,
        }
    }

    fn winding(&self, from: [f64; 3], ray: [f64; 3], skip: usize) -> i32 {
        let mut winding = 0;
        self.space.each(from, ray, skip, |hit| winding += if hit.leaves { 1 } else { -1 });
        winding
    }

    fn is_odd(&self, from: [f64; 3], ray: [f64; 3], skip: usize) -> bool {
        let mut odd = false;
        self.space.each(from, ray, skip, |_| odd = !odd);
        odd
    }

    /// Whether a place, in the space's unit, lies in material.
    pub fn is_inside(&self, point: [f64; 3]) -> bool {
        const RAY: [f64; 3] = [0.290_473_51, -0.484_083_11, 0.825_402_71];
        if self.is_sound { self.winding(point, RAY, usize::MAX) != 0 } else { self.is_odd(point, RAY, usize::MAX) }
    }

    /// The way out of material at a triangle; nothing where its side is not known.
    pub fn outward(&self, at: usize) -> Option<[f64; 3]> {
        let (normal, _) = self.space.normal(at)?;
        match self.sides[at] {
            Side::Behind => Some(normal),
            Side::Before => Some(normal.map(|x| -x)),
            Side::None => None,
        }
    }

    /// The nearest point of the surface that is nearer than `within`; what lies inside another solid is no surface.
    pub fn nearest(&self, point: [f64; 3], within: f64) -> Option<Near> {
        let mut best = None;
        self.space.each_near(point, within, |at, near, limit| {
            if square(minus(near, point)) >= *limit {
                return;
            }
            if let Some((squared, near)) = self.outer_point(at, near, point)
                && squared < *limit
            {
                *limit = squared;
                best = Some(Near { distance: squared.sqrt(), point: near });
            }
        });
        best
    }

    /// The squared distance and place of the nearest point of a triangle that lies inside no other solid, known to be `near` but for that.
    fn outer_point(&self, at: usize, near: [f64; 3], point: [f64; 3]) -> Option<(f64, [f64; 3])> {
        let found = |place: [f64; 3]| (square(minus(place, point)), place);
        if !self.has_inner {
            return Some(found(near));
        }
        let outward = self.outward(at)?;
        let is_outer = |place: [f64; 3]| !self.is_inside(along(place, outward, 4.0 * LEAST));
        if is_outer(near) {
            return Some(found(near));
        }
        // Only a part of it lies inside: the rest is looked at here and there.
        let [a, b, c] = self.space.corners(at);
        let shares = (0..=LATTICE).flat_map(|i| (0..=LATTICE - i).map(move |j| [i, j].map(|k| f64::from(k) / f64::from(LATTICE))));
        let places = shares.map(|[s, t]| along(along(a, minus(b, a), s), minus(c, a), t));
        places.filter(|place| is_outer(*place)).map(found).min_by(|a, b| a.0.total_cmp(&b.0))
    }

    /// Which triangles, by the tree's order, wall a sealed cavity.
    pub fn cavities(&self, soup: &Soup) -> Vec<bool> {
        let triangles: Vec<Triangle> = self.space.numbers.iter().map(|&number| soup.triangles[number as usize]).collect();
        let Links { shell_of, shells, .. } = link(&weld(&triangles));
        let mut volumes = vec![0.0; shells];
        for (at, &shell) in shell_of.iter().enumerate() {
            let [a, b, c] = self.space.corners(at);
            let volume = dot(a, cross(b, c));
            volumes[shell as usize] += match self.sides[at] {
                Side::Behind => volume,
                Side::Before => -volume,
                Side::None => 0.0,
            };
        }
        shell_of.iter().map(|&shell| volumes[shell as usize] < 0.0).collect()
    }

    /// Where a ray that runs in material comes out of it, past what lies inside another solid; nothing when that is farther than `within`.
    pub fn exit(&self, from: [f64; 3], ray: [f64; 3], skip: usize, within: f64) -> Option<Hit> {
        let (mut start, mut skip, mut gone) = (from, skip, 0.0);
        for _ in 0..MOST_INNER {
            let hit = self.space.first(start, ray, skip, within - gone)?;
            gone += hit.distance;
            let beyond = along(start, ray, hit.distance + 4.0 * LEAST);
            if !self.has_inner || !self.is_inside(beyond) {
                return Some(Hit { distance: gone, ..hit });
            }
            start = along(start, ray, hit.distance);
            skip = hit.at;
        }
        None
    }
}

/// Places looked at along each side of a triangle that lies partly inside another solid.
const LATTICE: u32 = 8;

/// Surfaces inside other solids that a ray is led through.
const MOST_INNER: usize = 8;

/// The numbers of the triangles but for those that stand there again or repeat a corner, and whether what is left is sound.
fn once_each(triangles: &[Triangle]) -> (Vec<u32>, bool) {
    let mut mesh = weld(triangles);
    let mut keyed: Vec<([u32; 3], u32)> = mesh.triangles.iter().zip(0..).map(|(corners, at)| (lowest_first(*corners), at)).collect();
    keyed.retain(|(corners, _)| !repeats_corner(*corners));
    keyed.sort_unstable();
    keyed.dedup_by_key(|(key, _)| *key);
    let mut numbers: Vec<u32> = keyed.into_iter().map(|(_, at)| at).collect();
    numbers.sort_unstable();
    mesh.triangles = numbers.iter().map(|&at| mesh.triangles[at as usize]).collect();
    (numbers, link(&mesh).encloses())
}

/// Triangles looked at between two words to who waits.
const CHUNK: usize = 2048;

/// Looks at every one of `count` on all cores and gives the answers in order; `watch` is told shares of `shares`. Nothing when stopped.
pub(super) fn over<T: Send + Sync + Clone>(
    count: usize,
    watch: &dyn Watch,
    shares: std::ops::Range<f64>,
    look: impl Fn(usize) -> T + Sync,
) -> Option<Vec<T>> {
    let (next, is_stopped) = (AtomicUsize::new(0), AtomicBool::new(false));
    let chunks = count.div_ceil(CHUNK);
    let work = || {
        let mut done = Vec::new();
        loop {
            let chunk = next.fetch_add(1, Ordering::Relaxed);
            if chunk >= chunks || is_stopped.load(Ordering::Relaxed) {
                return done;
            }
            let range = chunk * CHUNK..((chunk + 1) * CHUNK).min(count);
            done.push((chunk, range.map(&look).collect::<Vec<T>>()));
            let share = shares.start + (shares.end - shares.start) * (chunk + 1) as f64 / chunks as f64;
            if !watch.go_on(share) {
                is_stopped.store(true, Ordering::Relaxed);
            }
        }
    };
    let threads = std::thread::available_parallelism().map_or(1, usize::from).min(8).min(chunks.max(1));
    let mut parts: Vec<(usize, Vec<T>)> = on_threads((0..threads).map(|_| work)).into_iter().flatten().collect();
    if is_stopped.into_inner() {
        return None;
    }
    parts.sort_unstable_by_key(|(chunk, _)| *chunk);
    Some(parts.into_iter().flat_map(|(_, part)| part).collect())
}
