//! Whether two models are the same shape, or left and right of each other.
//!
//! Both are laid with the middle of their surface at one point and the axes of its second moments along each other, in every way the axes
//! allow, as they are and mirrored. Where two moments are nearly alike the axes say little, so turns between are tried too. The best few are
//! brought closer step by step, each place pulled to the plane of the nearest triangle, and the best of all is measured both ways.

use super::faces::MOST_TRIANGLES;
use super::matrix::{Matrix, determinant, flipped, principal, product, solve, times, turn};
use super::radial::{cross, dot, minus};
use super::space::{Space, square};
use super::watch::Watch;
use super::{Soup, measure};
use std::f64::consts::PI;

/// How two shapes are to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Likeness {
    /// The same shape, moved or turned.
    Same,
    /// Mirror images, as of a left and a right ear.
    Mirrored,
    /// The same and mirrored too: a shape that is its own mirror image.
    Both,
    /// Neither.
    Different,
}

/// What comparing two shapes found. Deviations are distances of places on either surface to the other, laid as well as they go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Twin {
    /// How they are to each other, within the tolerance asked for.
    pub likeness: Likeness,
    /// The largest deviation in mm in the better of both ways.
    pub deviation_mm: f64,
    /// The largest and the 95th percentile in mm as they are.
    pub as_they_are_mm: [f64; 2],
    /// The largest and the 95th percentile in mm with the second mirrored.
    pub mirrored_mm: [f64; 2],
    /// How much larger the second's volume is, as a share of the first's. Nothing where one has no volume.
    pub volume_difference: Option<f64>,
}

/// Places looked at on each surface.
const SAMPLES: usize = 2000;
/// Places the many ways of laying them are first told apart by.
const FEW: usize = 120;
/// Ways that are brought closer.
const BEST: usize = 6;
/// Steps of bringing closer at most.
const STEPS: usize = 20;
/// Moments closer than this share are nearly alike.
const ALIKE: f64 = 0.08;

/// Compares two models; deviations up to `tolerance_mm` count as none. Nothing when `watch` stops it, and where one has no surface or more
/// triangles than can be held.
#[must_use]
pub fn twin(one: &Soup, other: &Soup, tolerance_mm: f64, watch: &dyn Watch) -> Option<Twin> {
    let (first, second) = (Surface::new(one)?, Surface::new(other)?);
    let mut best = [[f64::INFINITY; 2]; 2];
    for (at, mirrored) in [false, true].into_iter().enumerate() {
        let laid = lay(&first, &second, mirrored, watch, 0.5 * at as f64)?;
        best[at] = laid;
    }
    let fits = best.map(|[largest, _]| largest <= tolerance_mm);
    let likeness = match fits {
        [true, true] => Likeness::Both,
        [true, false] => Likeness::Same,
        [false, true] => Likeness::Mirrored,
        [false, false] => Likeness::Different,
    };
    let volumes = [one, other].map(|soup| measure(soup).volume_mm3);
    let volume_difference = match volumes {
        [Some(a), Some(b)] if a > 0.0 => Some(b / a - 1.0),
        _ => None,
    };
    watch.go_on(1.0).then_some(Twin {
        likeness,
        deviation_mm: best[0][0].min(best[1][0]),
        as_they_are_mm: best[0],
        mirrored_mm: best[1],
        volume_difference,
    })
}

/// A surface with places on it, in mm about the middle of its area.
struct Surface {
    space: Space,
    middle_mm: [f64; 3],
    places: Vec<[f64; 3]>,
    /// Second moments, largest first, and their axes.
    moments: [f64; 3],
    axes: Matrix,
}

impl Surface {
    fn new(soup: &Soup) -> Option<Self> {
        if soup.triangles.len() > MOST_TRIANGLES {
            return None;
        }
        let space = Space::new(&soup.triangles, (0..soup.triangles.len() as u32).collect())?;
        let areas: Vec<f64> = (0..space.len()).map(|at| space.normal(at).map_or(0.0, |(_, area)| area)).collect();
        let whole: f64 = areas.iter().sum();
        if whole <= 0.0 {
            return None;
        }
        let mut middle = [0.0; 3];
        for (at, area) in areas.iter().enumerate() {
            let here = space.middle(at);
            (0..3).for_each(|axis| middle[axis] += here[axis] * area / whole);
        }
        let mut second = [[0.0; 3]; 3];
        for (at, area) in areas.iter().enumerate() {
            let corners = space.corners(at).map(|corner| minus(corner, middle));
            let sum: [f64; 3] = std::array::from_fn(|axis| corners.iter().map(|corner| corner[axis]).sum());
            for i in 0..3 {
                for j in 0..3 {
                    // Over a triangle the mean of x y is the sum over its corners and of the sum of corners, through twelve.
                    let own: f64 = corners.iter().map(|corner| corner[i] * corner[j]).sum();
                    second[i][j] += area / whole * (own + sum[i] * sum[j]) / 12.0;
                }
            }
        }
        let (moments, axes) = principal(second);
        let middle_mm = space.place_mm(middle);
        let places = scattered(&space, &areas, whole).into_iter().map(|place| minus(space.place_mm(place), middle_mm)).collect();
        Some(Self { space, middle_mm, places, moments, axes })
    }

    /// The distance in mm of a place, in mm about the middle, to the surface, the nearest point, and the normal there.
    fn nearest(&self, place: [f64; 3]) -> (f64, [f64; 3], [f64; 3]) {
        let from = self.space.in_units(std::array::from_fn(|axis| place[axis] + self.middle_mm[axis]));
        let mut best = (f64::INFINITY, from, 0);
        self.space.each_near(from, f64::INFINITY, |at, near, limit| {
            let squared = square(minus(near, from));
            if squared < *limit {
                *limit = squared;
                best = (squared, near, at);
            }
        });
        let normal = self.space.normal(best.2).map_or([0.0; 3], |(normal, _)| normal);
        (best.0.sqrt() * self.space.unit_mm, minus(self.space.place_mm(best.1), self.middle_mm), normal)
    }
}

/// Places spread evenly by area.
fn scattered(space: &Space, areas: &[f64], whole: f64) -> Vec<[f64; 3]> {
    let (mut at, mut sum) = (0, areas.first().copied().unwrap_or(0.0));
    (0..SAMPLES)
        .map(|k| {
            let wanted = (k as f64 + 0.5) / SAMPLES as f64 * whole;
            while sum < wanted && at + 1 < areas.len() {
                at += 1;
                sum += areas[at];
            }
            // Powers of the root of x³ = x + 1 fill a square evenly.
            let [mut s, mut t] = [0.754_877_666_246_692_8, 0.569_840_290_998_053_3].map(|step: f64| (0.5 + step * (k + 1) as f64).fract());
            if s + t > 1.0 {
                (s, t) = (1.0 - s, 1.0 - t);
            }
            let [a, b, c] = space.corners(at);
            std::array::from_fn(|axis| a[axis] + s * (b[axis] - a[axis]) + t * (c[axis] - a[axis]))
        })
        .collect()
}

/// Ways to turn the second so that its axes lie along those of the first.
fn ways(first: &Surface, second: &Surface, mirrored: bool) -> Vec<Matrix> {
    let alike = |a: usize, b: usize| [first, second].iter().any(|s| s.moments[a] - s.moments[b] <= ALIKE * s.moments[0]);
    let (upper, lower) = (alike(0, 1), alike(1, 2));
    let orders: &[[usize; 3]] = match (upper, lower) {
        (false, false) => &[[0, 1, 2]],
        (true, false) => &[[0, 1, 2], [1, 0, 2]],
        (false, true) => &[[0, 1, 2], [0, 2, 1]],
        (true, true) => &[[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]],
    };
    let mut between = vec![turn([1.0, 0.0, 0.0], 0.0)];
    if upper != lower {
        let axis = first.axes[if upper { 2 } else { 0 }];
        between.extend((1..9).map(|k| turn(axis, 0.5 * PI * f64::from(k) / 9.0)));
    } else if upper {
        // Nothing to hold on to: turns about all three axes, a third of a right angle apart.
        let steps = |axis: usize| (0..3).map(move |k| (axis, PI / 6.0 * f64::from(k)));
        between.clear();
        for (a, u) in steps(0) {
            for (b, v) in steps(1) {
                for (c, w) in steps(2) {
                    between.push(product(&turn(first.axes[a], u), &product(&turn(first.axes[b], v), &turn(first.axes[c], w))));
                }
            }
        }
    }
    let mut found = Vec::new();
    for order in orders {
        for signs in 0..8 {
            let rows: Matrix = std::array::from_fn(|k| {
                let sign = if signs >> k & 1 == 1 { -1.0 } else { 1.0 };
                second.axes[order[k]].map(|x| sign * x)
            });
            let way = product(&flipped(&first.axes), &rows);
            if (determinant(&way) < 0.0) == mirrored {
                found.extend(between.iter().map(|turn| product(turn, &way)));
            }
        }
    }
    found
}

/// Where a place of the second comes to lie: turned, then moved.
#[derive(Clone, Copy)]
struct Laid {
    turn: Matrix,
    by: [f64; 3],
}

impl Laid {
    fn of(&self, place: [f64; 3]) -> [f64; 3] {
        let turned = times(&self.turn, place);
        std::array::from_fn(|axis| turned[axis] + self.by[axis])
    }

    fn back(&self, place: [f64; 3]) -> [f64; 3] {
        times(&flipped(&self.turn), minus(place, self.by))
    }
}

/// The largest deviation and the 95th percentile of the best way found.
fn lay(first: &Surface, second: &Surface, mirrored: bool, watch: &dyn Watch, done: f64) -> Option<[f64; 2]> {
    let few: Vec<[f64; 3]> = second.places.iter().step_by(SAMPLES / FEW).copied().collect();
    let back: Vec<[f64; 3]> = first.places.iter().step_by(SAMPLES / FEW).copied().collect();
    let rough = |laid: &Laid| -> f64 {
        let there: f64 = few.iter().map(|place| first.nearest(laid.of(*place)).0.powi(2)).sum();
        let here: f64 = back.iter().map(|place| second.nearest(laid.back(*place)).0.powi(2)).sum();
        there + here
    };
    let mut laid = Vec::new();
    for turn in ways(first, second, mirrored) {
        if !watch.go_on(done) {
            return None;
        }
        let one = Laid { turn, by: [0.0; 3] };
        laid.push((rough(&one), one));
    }
    laid.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut best = [f64::INFINITY; 2];
    for (_, mut one) in laid.into_iter().take(BEST) {
        if !watch.go_on(done + 0.2) {
            return None;
        }
        closer(first, second, &mut one);
        let found = deviation(first, second, &one);
        if found[0] < best[0] {
            best = found;
        }
    }
    Some(best)
}

fn deviation(first: &Surface, second: &Surface, laid: &Laid) -> [f64; 2] {
    let there = second.places.iter().map(|place| first.nearest(laid.of(*place)).0);
    let mut all: Vec<f64> = there.chain(first.places.iter().map(|place| second.nearest(laid.back(*place)).0)).collect();
    all.sort_by(f64::total_cmp);
    [all[all.len() - 1], all[all.len() * 95 / 100]]
}

/// Brings the second closer: each step is the small turn and move that takes its places nearest to the planes of their nearest triangles.
fn closer(first: &Surface, second: &Surface, laid: &mut Laid) {
    let size = first.moments.iter().sum::<f64>().sqrt() * first.space.unit_mm;
    for _ in 0..STEPS {
        let (mut left, mut right) = ([[0.0; 6]; 6], [0.0; 6]);
        for place in second.places.iter().step_by(4) {
            let here = laid.of(*place);
            let (_, near, normal) = first.nearest(here);
            let arm = cross(here, normal).map(|x| x / size);
            let row = [arm[0], arm[1], arm[2], normal[0], normal[1], normal[2]];
            let gap = dot(minus(near, here), normal);
            for i in 0..6 {
                right[i] += row[i] * gap;
                (0..6).for_each(|j| left[i][j] += row[i] * row[j]);
            }
        }
        // A shape that can turn in itself is not held against that: a little weight keeps it where it is.
        let weight = 1e-6 * (0..6).map(|k| left[k][k]).sum::<f64>().max(f64::MIN_POSITIVE);
        (0..6).for_each(|k| left[k][k] += weight);
        let Some(step) = solve(left, right) else { return };
        let by = [step[3], step[4], step[5]];
        let angles = [step[0], step[1], step[2]].map(|x| x / size);
        let angle = square(angles).sqrt();
        if angle > 0.0 {
            let small = turn(angles.map(|x| x / angle), angle.min(0.3));
            laid.turn = product(&small, &laid.turn);
            laid.by = times(&small, laid.by);
        }
        laid.by = std::array::from_fn(|axis| laid.by[axis] + by[axis]);
        if angle < 1e-10 && square(by).sqrt() < 1e-10 * size {
            return;
        }
    }
}
