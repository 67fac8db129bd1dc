//! How thick the walls of a model are.
//!
//! From the middle of every triangle a ray runs square into the material to where it comes out: a first chord. Across a wall that is the wall.
//! Along one, as from the rim of a plate, or to a tilted face, it is not; so from the middle of the chord rays go straight across it all round, and
//! where one of the triangles they meet, or the one at the chord's end, is nearer than the chord's ends, the chord is laid anew from its nearest
//! point through the middle, a few times at most. The wall at the triangle is the shortest of its chords. So a plate is as thick at its rim as at
//! its faces, and a wall reads hardly thicker than the ball that fits in there: a bar whose sides are nearly alike by a tenth at most, as the rays
//! across stand 45° apart. At a sharp edge the wall goes to nothing, as it does in the metal.

use super::Soup;
use super::faces::{Faces, over};
use super::radial::{cross, minus};
use super::space::{along, nearest_in, square, unit};
use super::watch::Watch;

/// Rays across a chord.
const PROBES: usize = 8;
/// How often a chord is laid anew.
const TRIES: usize = 4;
/// A chord stands when nothing is nearer to its middle than this share of its ends.
const FITS: f64 = 0.98;
/// Bins of the histogram.
const BINS: usize = 24;
/// The share of the surface that is at least as thin as what is told as thinnest.
const THIN_SHARE: f64 = 0.02;

/// The wall at one triangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// How thick, in mm.
    pub thickness_mm: f64,
    /// The middle of the triangle, in the file's mm.
    pub place_mm: [f64; 3],
    /// The triangle's number in the file, from 0.
    pub triangle: u32,
}

/// So much surface has walls of this thickness.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bin {
    /// From this thickness in mm.
    pub from_mm: f64,
    /// To this thickness in mm.
    pub to_mm: f64,
    /// Area in mm², both sides of a wall counted.
    pub area_mm2: f64,
}

/// Surface over walls that are too thin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Under {
    /// Area in mm².
    pub area_mm2: f64,
    /// That area as a share of all whose wall is known, 0 to 1.
    pub share: f64,
}

/// The walls of a model.
#[derive(Debug, Clone, PartialEq)]
pub struct Walls {
    /// The wall at every triangle of the file, in mm. Nothing where it is not known: at holes, where triangles do not tell what is outside, at
    /// triangles without area or that stand there again, and at parts of a surface that lie inside another solid.
    pub thickness_mm: Vec<Option<f32>>,
    /// A fiftieth of the surface, by area, has walls as thin as this or thinner. Nothing where no wall is known.
    pub thinnest: Option<Wall>,
    /// Half of the surface, by area, has thinner walls.
    pub typical: Option<Wall>,
    /// The thickest.
    pub heaviest: Option<Wall>,
    /// The share of the surface whose wall is known, 0 to 1.
    pub known_share: f64,
    /// Area by thickness, from 0 to the thickest.
    pub histogram: Vec<Bin>,
    /// Area of every triangle in mm², 0 where its wall is not known.
    areas_mm2: Vec<f32>,
    /// Middles and half lengths of some of the longest chords, in mm.
    pub(super) middles_mm: Vec<([f64; 3], f64)>,
}

/// Measures the walls at every triangle. Nothing when `watch` stops it.
///
/// Sealed cavities have walls like the outside. A file that is open or wound both ways is told as far as rays can tell inside from outside by
/// counting how often they cross the surface. Files of more than four million triangles have no wall that is known.
#[must_use]
pub fn thickness(soup: &Soup, watch: &dyn Watch) -> Option<Walls> {
    if !watch.go_on(0.0) {
        return None;
    }
    match Faces::new(soup, watch, 0.4) {
        Some(faces) => {
            let chords = over(faces.space.len(), watch, 0.4..1.0, |at| chord(&faces, at))?;
            Some(walls(soup.triangles.len(), &faces, &chords))
        }
        None => watch.go_on(1.0).then(|| Walls {
            thickness_mm: vec![None; soup.triangles.len()],
            thinnest: None,
            typical: None,
            heaviest: None,
            known_share: 0.0,
            histogram: Vec::new(),
            areas_mm2: vec![0.0; soup.triangles.len()],
            middles_mm: Vec::new(),
        }),
    }
}

/// A way through the material, in the space's unit.
#[derive(Debug, Clone, Copy)]
struct Chord {
    /// The shortest found.
    length: f64,
    /// The middle of the last, and half its length.
    middle: [f64; 3],
    half: f64,
}

fn chord(faces: &Faces, at: usize) -> Option<Chord> {
    let mut ray = faces.outward(at)?.map(|x| -x);
    let from = faces.space.middle(at);
    let mut end = faces.exit(from, ray, at, f64::INFINITY)?;
    let mut found = Chord { length: end.distance, middle: along(from, ray, 0.5 * end.distance), half: 0.5 * end.distance };
    for _ in 0..TRIES {
        let Some(near) = nearer(faces, &found, ray, end.at) else { break };
        let Some(back) = unit(minus(found.middle, near)) else { break };
        let Some(hit) = faces.exit(found.middle, back, usize::MAX, f64::INFINITY) else { break };
        let length = square(minus(found.middle, near)).sqrt() + hit.distance;
        found = Chord { length: found.length.min(length), middle: along(near, back, 0.5 * length), half: 0.5 * length };
        (ray, end) = (back, hit);
    }
    Some(found)
}

/// A point of the surface that is nearer to the middle of a chord than its ends: on the triangle it ends at, or on one of those straight
/// across from it.
fn nearer(faces: &Faces, chord: &Chord, ray: [f64; 3], end: usize) -> Option<[f64; 3]> {
    let within = FITS * chord.half;
    let mut best = (within * within, None);
    let mut take = |at: usize| {
        let near = nearest_in(faces.space.corners(at), chord.middle);
        let squared = square(minus(near, chord.middle));
        if squared < best.0 {
            best = (squared, Some(near));
        }
    };
    take(end);
    let least = (0..3).min_by(|&a, &b| ray[a].abs().total_cmp(&ray[b].abs())).unwrap_or(0);
    let mut help = [0.0; 3];
    help[least] = 1.0;
    let first = unit(cross(ray, help))?;
    let second = cross(ray, first);
    for k in 0..PROBES {
        let (s, c) = (std::f64::consts::TAU * k as f64 / PROBES as f64).sin_cos();
        let across = std::array::from_fn(|axis| c * first[axis] + s * second[axis]);
        if let Some(hit) = faces.exit(chord.middle, across, usize::MAX, within) {
            take(hit.at);
        }
    }
    best.1
}

fn walls(triangles: usize, faces: &Faces, chords: &[Option<Chord>]) -> Walls {
    let space = &faces.space;
    let mut thickness_mm = vec![None; triangles];
    let mut areas_mm2 = vec![0.0; triangles];
    let mut sorted: Vec<(f64, f64, usize)> = Vec::with_capacity(chords.len());
    let mut whole = 0.0;
    for (at, chord) in chords.iter().enumerate() {
        let area = space.normal(at).map_or(0.0, |(_, area)| area) * space.unit_mm * space.unit_mm;
        whole += area;
        if let Some(chord) = chord {
            let number = space.numbers[at] as usize;
            thickness_mm[number] = Some((chord.length * space.unit_mm) as f32);
            areas_mm2[number] = area as f32;
            sorted.push((chord.length * space.unit_mm, area, at));
        }
    }
    sorted.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(space.numbers[a.2].cmp(&space.numbers[b.2])));
    let known: f64 = sorted.iter().map(|(_, area, _)| area).sum();
    let wall = |&(thickness_mm, _, at): &(f64, f64, usize)| Wall {
        thickness_mm,
        place_mm: space.place_mm(space.middle(at)),
        triangle: space.numbers[at],
    };
    let after = |share: f64| {
        let mut sum = 0.0;
        let reached = |(_, area, _): &&(f64, f64, usize)| {
            sum += area;
            sum >= share * known
        };
        sorted.iter().find(reached).or(sorted.last()).map(wall)
    };
    Walls {
        thickness_mm,
        thinnest: after(THIN_SHARE),
        typical: after(0.5),
        heaviest: sorted.last().map(wall),
        known_share: if whole > 0.0 { known / whole } else { 0.0 },
        histogram: histogram(&sorted),
        areas_mm2,
        middles_mm: middles(faces, chords),
    }
}

fn histogram(sorted: &[(f64, f64, usize)]) -> Vec<Bin> {
    let Some(&(most, _, _)) = sorted.last() else { return Vec::new() };
    let width = most / BINS as f64;
    let mut bins: Vec<Bin> =
        (0..BINS).map(|bin| Bin { from_mm: bin as f64 * width, to_mm: (bin + 1) as f64 * width, area_mm2: 0.0 }).collect();
    for (thickness, area, _) in sorted {
        // The thickest belongs to the last bin.
        bins[((thickness / width) as usize).min(BINS - 1)].area_mm2 += area;
    }
    bins
}

/// Chords whose middles are kept.
const MIDDLES: usize = 256;

fn middles(faces: &Faces, chords: &[Option<Chord>]) -> Vec<([f64; 3], f64)> {
    let mut all: Vec<Chord> = chords.iter().flatten().copied().collect();
    let order = |a: &Chord, b: &Chord| b.half.min(0.5 * b.length).total_cmp(&a.half.min(0.5 * a.length));
    // One in so many of the thicker half: the thickest place is seldom alone, and those near it lead to it.
    all.sort_unstable_by(order);
    let step = (all.len() / 2 / MIDDLES).max(1);
    let few = all.iter().take(MIDDLES / 2).chain(all.iter().step_by(step).take(MIDDLES));
    few.map(|chord| (faces.space.place_mm(chord.middle), chord.half * faces.space.unit_mm)).collect()
}

impl Walls {
    /// The surface over walls thinner than `least_mm`.
    #[must_use]
    pub fn under(&self, least_mm: f64) -> Under {
        let (mut thin, mut known) = (0.0, 0.0);
        for (thickness, area) in self.thickness_mm.iter().zip(&self.areas_mm2) {
            let Some(thickness) = thickness else { continue };
            known += f64::from(*area);
            if f64::from(*thickness) < least_mm {
                thin += f64::from(*area);
            }
        }
        Under { area_mm2: thin, share: if known > 0.0 { thin / known } else { 0.0 } }
    }
}
