//! Where a model is heaviest: there it freezes last, so there it wants to be fed.
//!
//! A heavy place is the middle of a ball that fits in the material and cannot grow by moving. The search starts from the middles of the longest
//! chords of the walls. Sealed cavities are taken as drawn, empty; whoever pours them solid must leave their shells out first.

use super::Soup;
use super::faces::{Faces, Side, over};
use super::radial::minus;
use super::space::{along, nearest_in, square, unit};
use super::thickness::Walls;
use super::watch::Watch;
use std::f64::consts::TAU;

/// A place where much metal is together.
#[derive(Debug, Clone, PartialEq)]
pub struct Heavy {
    /// The middle of the ball, in the file's mm.
    pub centre_mm: [f64; 3],
    /// The ball's diameter in mm.
    pub diameter_mm: f64,
    /// The nearest place on the outside where a sprue may stand. Nothing where none may.
    pub foot: Option<Foot>,
    /// The local modulus in mm: the volume of material within a ball of twice the diameter in radius, over the surface within it. A ball of
    /// diameter d alone has d/6. A long wire's d/4 reads 2 % high and a wide plate's t/2 4 % high, since the ball cuts without surface. Sampling
    /// adds 2 % give or take. Nothing where there is no surface within.
    pub modulus_mm: Option<f64>,
}

/// A place on the surface for a sprue.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foot {
    /// In the file's mm.
    pub place_mm: [f64; 3],
    /// The triangle's number in the file, from 0.
    pub triangle: u32,
    /// The way out of the material, of length one.
    pub outward: [f64; 3],
}

/// Places offered at most.
const MOST: usize = 3;
/// Another place must be at least this share of the heaviest.
const WORTH: f64 = 0.6;

/// Up to three heavy places, well apart, the heaviest first. `may_stand` says whether a sprue may stand on a triangle at a place in mm; see
/// [`clear_of`]. `walls` are those of the same file. Nothing when `watch` stops the work.
#[must_use]
pub fn heaviest(soup: &Soup, walls: &Walls, may_stand: &dyn Fn(u32, [f64; 3]) -> bool, watch: &dyn Watch) -> Option<Vec<Heavy>> {
    if !watch.go_on(0.0) {
        return None;
    }
    let Some(faces) = Faces::new(soup, watch, 0.3) else { return watch.go_on(1.0).then(Vec::new) };
    let is_cavity = faces.cavities(soup);
    let mut found: Vec<Heavy> = Vec::new();
    for ball in balls(&faces, walls) {
        if !watch.go_on(0.4 + 0.2 * found.len() as f64) {
            return None;
        }
        found.push(Heavy {
            centre_mm: faces.space.place_mm(ball.centre),
            diameter_mm: 2.0 * ball.radius * faces.space.unit_mm,
            foot: foot(&faces, &is_cavity, ball.centre, may_stand),
            modulus_mm: modulus(&faces, &ball, watch)?,
        });
    }
    watch.go_on(1.0).then_some(found)
}

/// True for places outside all of these balls, each a middle and a radius in mm.
pub fn clear_of(balls: &[([f64; 3], f64)]) -> impl Fn(u32, [f64; 3]) -> bool + '_ {
    |_, place| balls.iter().all(|(middle, radius)| square(minus(place, *middle)) > radius * radius)
}

#[derive(Debug, Clone, Copy)]
struct Ball {
    centre: [f64; 3],
    radius: f64,
}

fn balls(faces: &Faces, walls: &Walls) -> Vec<Ball> {
    let starts = walls.middles_mm.iter().map(|(middle, _)| faces.space.in_units(*middle));
    let fitting = starts.filter_map(|centre| Some(Ball { centre, radius: faces.nearest(centre, f64::INFINITY)?.distance }));
    let mut waiting: Vec<Ball> = fitting.filter(|ball| faces.is_inside(ball.centre)).collect();
    waiting.sort_by(|a, b| b.radius.total_cmp(&a.radius));
    let mut found: Vec<Ball> = Vec::new();
    let apart = |a: &Ball, b: &Ball| square(minus(a.centre, b.centre)) > (a.radius + b.radius).powi(2);
    for start in waiting {
        let far = found.iter().all(|other| apart(&start, other));
        if found.len() == MOST || !far || found.first().is_some_and(|first| start.radius < WORTH * first.radius) {
            continue;
        }
        let grown = grow(faces, start);
        if found.iter().all(|other| apart(&grown, other)) {
            found.push(grown);
        }
    }
    found.sort_by(|a, b| b.radius.total_cmp(&a.radius));
    found
}

/// Steps tried at most.
const MOST_STEPS: usize = 120;

/// Moves a ball to where it can grow, until no small step helps.
fn grow(faces: &Faces, mut ball: Ball) -> Ball {
    let mut step = 0.3 * ball.radius;
    for _ in 0..MOST_STEPS {
        if step < 2e-4 * ball.radius {
            break;
        }
        // A step shorter than the radius stays within the ball, so within the material.
        let better = ways(faces, &ball).find_map(|way| {
            let centre = along(ball.centre, way, step);
            if faces.nearest(centre, ball.radius * (1.0 + 1e-9)).is_some() {
                return None;
            }
            Some(Ball { centre, radius: faces.nearest(centre, f64::INFINITY)?.distance })
        });
        match better {
            Some(better) => ball = better,
            None => step *= 0.5,
        }
    }
    ball
}

/// Away from the nearest point first, then every way round.
fn ways(faces: &Faces, ball: &Ball) -> impl Iterator<Item = [f64; 3]> {
    let away = faces.nearest(ball.centre, f64::INFINITY).and_then(|near| unit(minus(ball.centre, near.point)));
    let round = (0..26).filter_map(|k| {
        let k = if k < 13 { k } else { k + 1 };
        unit([k % 3, k / 3 % 3, k / 9].map(|digit| f64::from(digit) - 1.0))
    });
    away.into_iter().chain(round)
}

/// Places tried along each side of a triangle whose nearest point is no place for a sprue.
const LATTICE: u32 = 8;

fn foot(faces: &Faces, is_cavity: &[bool], centre: [f64; 3], may_stand: &dyn Fn(u32, [f64; 3]) -> bool) -> Option<Foot> {
    let space = &faces.space;
    let mut best: Option<([f64; 3], usize)> = None;
    space.each_near(centre, f64::INFINITY, |at, near, limit| {
        if is_cavity[at] || faces.sides[at] == Side::None {
            return;
        }
        let mut take = |point: [f64; 3]| {
            let squared = square(minus(point, centre));
            let is_taken = squared < *limit && may_stand(space.numbers[at], space.place_mm(point));
            if is_taken {
                *limit = squared;
                best = Some((point, at));
            }
            is_taken
        };
        if square(minus(near, centre)) >= f64::MAX || take(near) {
            return;
        }
        let [a, b, c] = space.corners(at);
        for i in 0..=LATTICE {
            for j in 0..=LATTICE - i {
                let (s, t) = (f64::from(i) / f64::from(LATTICE), f64::from(j) / f64::from(LATTICE));
                take(along(along(a, minus(b, a), s), minus(c, a), t));
            }
        }
    });
    let (point, at) = best?;
    Some(Foot { place_mm: space.place_mm(point), triangle: space.numbers[at], outward: faces.outward(at)? })
}

/// The radius of the ball a modulus is taken in, in radii of the ball that fits.
const REACH: f64 = 4.0;
/// Places looked at for the volume.
const SAMPLES: usize = 16_384;

/// The local modulus; the outer nothing when stopped.
#[allow(clippy::option_option, reason = "stopped, or without a surface")]
fn modulus(faces: &Faces, ball: &Ball, watch: &dyn Watch) -> Option<Option<f64>> {
    let reach = REACH * ball.radius;
    // Shares of three numbers that fill space evenly: powers of the root of x⁴ = x + 1 (Roberts 2018, "The unreasonable effectiveness of
    // quasirandom sequences").
    const STEPS: [f64; 3] = [0.819_172_513_396_164_4, 0.671_043_606_703_789_3, 0.549_700_477_901_970_2];
    let inside = over(SAMPLES, watch, 0.5..0.9, |k| {
        let [u, v, w] = STEPS.map(|step| (0.5 + step * (k + 1) as f64).fract());
        let (up, out) = (1.0 - 2.0 * v, 2.0 * (v * (1.0 - v)).max(0.0).sqrt());
        let (s, c) = (TAU * w).sin_cos();
        faces.is_inside(along(ball.centre, [out * c, out * s, up], reach * u.cbrt()))
    })?;
    let share = inside.iter().filter(|inside| **inside).count() as f64 / SAMPLES as f64;
    let volume = share * 2.0 / 3.0 * TAU * reach.powi(3);
    let mut area = 0.0;
    faces.space.each_near(ball.centre, reach, |at, near, _| {
        if faces.sides[at] != Side::None && square(minus(near, ball.centre)) < reach * reach {
            area += area_within(faces.space.corners(at), ball.centre, reach, 0);
        }
    });
    Some((area > 0.0).then(|| volume / area * faces.space.unit_mm))
}

/// The area of the part of a triangle that lies in a ball: cut in four until it lies wholly within or hardly matters.
fn area_within(corners: [[f64; 3]; 3], centre: [f64; 3], reach: f64, depth: u32) -> f64 {
    const DEEPEST: u32 = 9;
    let [a, b, c] = corners;
    let squares = corners.map(|corner| square(minus(corner, centre)));
    let area = || 0.5 * square(super::radial::cross(minus(b, a), minus(c, a))).sqrt();
    if squares.iter().all(|&squared| squared <= reach * reach) {
        return area();
    }
    if square(minus(nearest_in(corners, centre), centre)) >= reach * reach {
        return 0.0;
    }
    let longest = square(minus(b, a)).max(square(minus(c, b))).max(square(minus(a, c)));
    if depth == DEEPEST || longest < (reach / 48.0).powi(2) {
        let middle = std::array::from_fn(|axis| (a[axis] + b[axis] + c[axis]) / 3.0);
        return if square(minus(middle, centre)) <= reach * reach { area() } else { 0.0 };
    }
    let half = |p: [f64; 3], q: [f64; 3]| std::array::from_fn(|axis| 0.5 * (p[axis] + q[axis]));
    let (ab, bc, ca) = (half(a, b), half(b, c), half(c, a));
    [[a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]].iter().map(|part| area_within(*part, centre, reach, depth + 1)).sum()
}
