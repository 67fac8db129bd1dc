//! What is read off a mould's run.

use super::load::{Inversion, Needs};
use crate::calc::heat::first_at;
use crate::calc::mould_heat::Conductivity;

/// Above this in °C the core holds no free water.
pub const DRY_C: f64 = 105.0;
/// How near an edge of an inversion counts as at it, in K.
const AT_EDGE_K: f64 = 1e-9;
/// Halvings of a range of temperatures: to a thousandth of a kelvin.
const HALVINGS: usize = 20;
/// Parts in which a segment is looked at.
pub(super) const PARTS: usize = 5;

/// How far wall and core are apart at most while either crosses an inversion, in K; 0 where neither does.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Apart {
    /// Until the core is hottest.
    pub up_k: f64,
    /// From then on.
    pub down_k: f64,
    /// The most it may be.
    pub most_k: f64,
}

/// What was found of one mould at one conductivity.
#[derive(Debug, Clone, PartialEq)]
pub struct Values {
    /// Which mould of the load.
    pub mould: usize,
    /// At which conductivity.
    pub of: Conductivity,
    /// Minutes that the core is at or above the temperature that burns the carbon; at least [`Needs::above_min`] are asked for.
    pub above_min: f64,
    /// The hottest the core becomes, in °C.
    pub core_top_c: f64,
    /// Inversion by inversion.
    pub apart: Vec<Apart>,
    /// When the core is dry, in minutes; nothing where it never is.
    pub dry_min: Option<f64>,
    /// The core at the pour, in °C; [`super::Soak::within_k`] is how far off the soak it may be.
    pub core_at_pour_c: f64,
    /// The outermost cavity at the pour, in °C.
    pub cavity_at_pour_c: f64,
    /// The corner at the pour, in °C.
    pub corner_at_pour_c: f64,
}

/// Wall and core through a run.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Series {
    pub times_min: Vec<f64>,
    pub wall_c: Vec<f64>,
    pub core_c: Vec<f64>,
}

impl Series {
    /// Goes on with another that begins where this one ends.
    pub fn extend(&mut self, next: &Self) {
        let skip = usize::from(!self.times_min.is_empty());
        self.times_min.extend(next.times_min.iter().skip(skip));
        self.wall_c.extend(next.wall_c.iter().skip(skip));
        self.core_c.extend(next.core_c.iter().skip(skip));
    }

    pub fn core_top_c(&self) -> f64 {
        self.core_c.iter().copied().fold(f64::NEG_INFINITY, f64::max)
    }

    /// The place of the hottest core.
    pub fn top(&self) -> usize {
        let top = self.core_top_c();
        self.core_c.iter().position(|core| *core >= top).unwrap_or(0)
    }

    /// Minutes that the core is at or above a temperature.
    pub fn above_min(&self, c: f64) -> f64 {
        let part = |(times, cores): (&[f64], &[f64])| {
            let (from, to, minutes) = (cores[0] - c, cores[1] - c, times[1] - times[0]);
            match (from >= 0.0, to >= 0.0) {
                (true, true) => minutes,
                (false, false) => 0.0,
                (true, false) => minutes * from / (from - to),
                (false, true) => minutes * to / (to - from),
            }
        };
        self.times_min.windows(2).zip(self.core_c.windows(2)).map(part).sum()
    }

    /// The temperature that the core keeps, all told, for so many minutes: the highest that it is at or above for as long.
    pub fn kept_c(&self, minutes: f64) -> f64 {
        let (mut low, mut high) = (self.core_c.iter().copied().fold(f64::INFINITY, f64::min), self.core_top_c());
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(low, high);
            if self.above_min(middle) >= minutes {
                low = middle;
            } else {
                high = middle;
            }
        }
        low
    }

    /// How far wall and core are apart at most, among the samples from one to another, while either is within; nothing where neither is.
    /// Between samples both go straight, so that the most is at a sample or where one of them meets an edge.
    pub fn apart(&self, within_c: [f64; 2], [first, last]: [usize; 2]) -> Option<f64> {
        let last = last.min(self.core_c.len().saturating_sub(1));
        let pairs = (first..last)
            .filter_map(|at| apart_between([self.wall_c[at], self.wall_c[at + 1]], [self.core_c[at], self.core_c[at + 1]], within_c));
        pairs.reduce(f64::max)
    }

    /// By how much wall and core are too far apart for an inversion, at worst. At every time one of three is enough: they are near each other,
    /// neither has come up to the inversion, or both are beyond it; the least of what is lacking counts. So it goes without a jump where a wall
    /// that waits below an inversion touches it, and is above 0 only where [`Series::apart`] is above its limit.
    ///
    /// Told for parts of the series of even length, so that what is too far at its beginning does not hide what is nearly so at its end.
    pub fn too_far(&self, inversion: &Inversion) -> [f64; PARTS] {
        let at = |at: usize| lacking(inversion, self.wall_c[at], self.core_c[at]);
        let between = |pair: usize| {
            let (from, to) = (at(pair), at(pair + 1));
            let mut worst = least(from).max(least(to));
            // Each of the three goes straight between samples: the least of them is highest at an end or where two of them meet.
            for [a, b] in [[0, 1], [0, 2], [1, 2]] {
                let (before, after) = (from[a] - from[b], to[a] - to[b]);
                if before * after < 0.0 {
                    let share = before / (before - after);
                    worst = worst.max(least([0, 1, 2].map(|each| from[each] + (to[each] - from[each]) * share)));
                }
            }
            worst
        };
        let pairs = self.wall_c.len().saturating_sub(1);
        let edge = |part: usize| part * pairs / PARTS;
        let start = self.wall_c.first().map_or(f64::NEG_INFINITY, |_| least(at(0)));
        std::array::from_fn(|part| {
            (edge(part)..edge(part + 1)).map(between).fold(if pairs < PARTS { start } else { f64::NEG_INFINITY }, f64::max)
        })
    }

    pub fn dry_min(&self) -> Option<f64> {
        first_at(&self.times_min, &self.core_c, DRY_C)
    }

    pub fn values(&self, (mould, of): (usize, Conductivity), needs: &Needs, [cavity_at_pour_c, corner_at_pour_c]: [f64; 2]) -> Values {
        let (top, end) = (self.top(), self.core_c.len());
        let apart = |inversion: &Inversion| Apart {
            up_k: self.apart(inversion.within_c, [0, top]).unwrap_or(0.0),
            down_k: self.apart(inversion.within_c, [top, end]).unwrap_or(0.0),
            most_k: inversion.most_k,
        };
        Values {
            mould,
            of,
            above_min: self.above_min(needs.above_c),
            core_top_c: self.core_top_c(),
            apart: needs.inversions.iter().map(apart).collect(),
            dry_min: self.dry_min(),
            core_at_pour_c: self.core_c.last().copied().unwrap_or(f64::NAN),
            cavity_at_pour_c,
            corner_at_pour_c,
        }
    }
}

fn lacking(inversion: &Inversion, wall_c: f64, core_c: f64) -> [f64; 3] {
    let [from_c, to_c] = inversion.within_c;
    [(wall_c - core_c).abs() - inversion.most_k, wall_c.max(core_c) - from_c, to_c - wall_c.min(core_c)]
}

fn least(three: [f64; 3]) -> f64 {
    three[0].min(three[1]).min(three[2])
}

fn apart_between(wall: [f64; 2], core: [f64; 2], [from_c, to_c]: [f64; 2]) -> Option<f64> {
    let mut most: Option<f64> = None;
    let mut look = |share: f64| {
        let at = |[from, to]: [f64; 2]| from + (to - from) * share;
        let (wall, core) = (at(wall), at(core));
        if wall.max(core) >= from_c - AT_EDGE_K && wall.min(core) <= to_c + AT_EDGE_K {
            most = Some(most.unwrap_or(0.0).max((wall - core).abs()));
        }
    };
    look(0.0);
    look(1.0);
    for [from, to] in [wall, core] {
        for edge in [from_c, to_c] {
            let share = (edge - from) / (to - from);
            if share > 0.0 && share < 1.0 {
                look(share);
            }
        }
    }
    most
}
