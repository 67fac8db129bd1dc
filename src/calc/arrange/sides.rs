//! How far around a piece must hang from another to be clear of it, by how much higher it is joined.

use std::collections::HashMap;

use super::super::solid::Point;
use super::Limits;
use super::near::{Body, room};
use super::pose::Pose;

/// More than all round: they are never clear of each other, however they hang.
pub(super) const NEVER_DEG: f64 = 1e9;

/// So much room is kept beyond what is needed, in mm, so that what is clear here is clear whoever measures it.
const KEPT_MM: f64 = 1e-6;

/// Looks at every so many degrees at least, and settles to so many.
const LOOK_DEG: f64 = 4.0;
const SETTLED_DEG: f64 = 0.1;

/// What was worked out so far.
pub(super) struct Sides<'a> {
    poses: &'a [Pose],
    limits: Limits,
    sectors: Vec<[Option<Sector>; 2]>,
    known: HashMap<(u32, u32, i64), f64>,
    /// Looks at how two solids lie that were taken.
    pub looks: u64,
}

/// Where a body lies around the axis, in degrees, and how near it comes to the axis.
#[derive(Debug, Clone, Copy)]
struct Sector {
    from: f64,
    to: f64,
    near: f64,
}

impl Sector {
    /// Nothing where the body does not lie wholly to one side of the axis.
    fn of(body: &Body) -> Option<Self> {
        let near = body.corners.iter().map(|corner| corner[0]).fold(f64::INFINITY, f64::min) - body.round;
        if near <= 1e-3 {
            return None;
        }
        let ways = || {
            body.corners.iter().map(|[x, y, _]| {
                let round = (body.round / x.hypot(*y)).min(1.0).asin();
                let way = y.atan2(*x);
                [way - round, way + round]
            })
        };
        let from = ways().map(|way| way[0]).fold(f64::INFINITY, f64::min).to_degrees();
        let to = ways().map(|way| way[1]).fold(f64::NEG_INFINITY, f64::max).to_degrees();
        Some(Self { from, to, near })
    }
}

impl<'a> Sides<'a> {
    pub fn new(poses: &'a [Pose], limits: Limits) -> Self {
        let sectors = poses.iter().map(|pose| [Sector::of(&pose.piece), Sector::of(&pose.feed)]).collect();
        Self { poses, limits, sectors, known: HashMap::new(), looks: 0 }
    }

    /// How many degrees the second must at least hang around from the first, to the left, where it is joined so much higher; [`NEVER_DEG`] where
    /// nothing up to half a turn does.
    pub fn left(&mut self, one: usize, other: usize, higher_mm: f64) -> f64 {
        let steps = (higher_mm * 1e6).round();
        let higher_mm = steps * 1e-6;
        let [a, b] = [&self.poses[one], &self.poses[other]];
        let most = self.limits.between_mm.max(self.limits.feeds_mm.unwrap_or(0.0)) + KEPT_MM;
        if higher_mm + b.heights[0] - a.heights[1] >= most || a.heights[0] - higher_mm - b.heights[1] >= most {
            return 0.0;
        }
        let mut key = (one as u32, other as u32, steps as i64);
        if a.is_mirrored && b.is_mirrored {
            // To the left of one is to the right of the other, and right is as left.
            key = key.min((other as u32, one as u32, -(steps as i64)));
        }
        if let Some(known) = self.known.get(&key) {
            return *known;
        }
        let found = self.find(one, other, higher_mm);
        self.known.insert(key, found);
        found
    }

    /// Takes it that these two are never clear of each other at this height.
    pub fn forbid(&mut self, one: usize, other: usize, higher_mm: f64) {
        let steps = (higher_mm * 1e6).round() as i64;
        self.known.insert((one as u32, other as u32, steps), NEVER_DEG);
        self.known.insert((other as u32, one as u32, -steps), NEVER_DEG);
    }

    fn find(&mut self, one: usize, other: usize, higher_mm: f64) -> f64 {
        let mut look = Look::new([&self.poses[one], &self.poses[other]], &self.limits, higher_mm);
        for (at, pair) in look.pairs.iter_mut().enumerate() {
            let (first, second) = (&self.sectors[one][at / 2], &self.sectors[other][at % 2]);
            pair.clear_from = match (first, second) {
                // Beyond the sector on the one side it may be within it on the other.
                (Some(first), Some(second)) if second.left_of(first, pair.needs) < 180.0 => first.left_of(second, pair.needs),
                _ => 180.0,
            };
        }
        let clear = look.search(self.poses[one].reach.min(self.poses[other].reach));
        self.looks += look.looks;
        clear
    }
}

impl Sector {
    /// From how many degrees to the left of this one another is clear: there is room between the sectors, even where they are nearest to the axis.
    fn left_of(&self, other: &Self, needs: f64) -> f64 {
        let near = self.near.max(other.near);
        if needs >= near {
            return 180.0;
        }
        (self.to - other.from + (needs / near).asin().to_degrees() + 1e-6).clamp(0.0, 180.0)
    }
}

/// One of two turned about the axis beside the other.
struct Look<'a> {
    poses: [&'a Pose; 2],
    higher_mm: f64,
    turned: [Body; 2],
    pairs: [Pair; 4],
    looks: u64,
}

/// A piece or feed and a piece or feed of another.
#[derive(Debug, Clone, Copy, Default)]
struct Pair {
    needs: f64,
    /// They are clear of each other at every angle.
    is_clear: bool,
    /// They are clear from this angle on, up to half a turn.
    clear_from: f64,
    way: Point,
}

impl<'a> Look<'a> {
    fn new(poses: [&'a Pose; 2], limits: &Limits, higher_mm: f64) -> Self {
        let mut pairs = [Pair::default(); 4];
        let [one, other] = poses.map(|pose| [&pose.piece, &pose.feed]);
        for (at, pair) in pairs.iter_mut().enumerate() {
            let (body, turned) = (one[at / 2], other[at % 2]);
            let needs = if at == 3 { limits.feeds_mm } else { Some(limits.between_mm) };
            pair.needs = KEPT_MM + needs.unwrap_or(0.0);
            let ([low, high], [from, to]) = (body.heights(), turned.heights());
            pair.is_clear = needs.is_none() || higher_mm + from - high >= pair.needs || low - higher_mm - to >= pair.needs;
            pair.way = [0, 1, 2].map(|k| body.corners[0][k] - turned.corners[0][k]);
        }
        Self { poses, higher_mm, turned: [poses[1].piece.clone(), poses[1].feed.clone()], pairs, looks: 0 }
    }

    /// The least angle from which on all is clear, but for what two looks may have between them.
    fn search(&mut self, reach: f64) -> f64 {
        let sectors: Vec<f64> = self.pairs.iter().filter(|pair| !pair.is_clear).map(|pair| pair.clear_from).collect();
        let mut clear = sectors.iter().copied().fold(0.0, f64::max);
        let mut spare = self.spare(clear);
        if spare < 0.0 {
            return NEVER_DEG;
        }
        let mut tight = None;
        while clear > 0.0 && tight.is_none() {
            // Turning it by so much brings nothing of it nearer than that; but no further than to where a pair has to be looked at.
            let sector = sectors.iter().copied().filter(|from| *from < clear).fold(0.0, f64::max);
            let next = (clear - LOOK_DEG.max(spare / reach.to_radians())).max(0.0).max(sector.min(clear - LOOK_DEG));
            spare = self.spare(next);
            if spare < 0.0 { tight = Some(next) } else { clear = next }
        }
        while let Some(from) = tight.filter(|from| clear - from > SETTLED_DEG) {
            let between = 0.5 * (clear + from);
            if self.spare(between) < 0.0 { tight = Some(between) } else { clear = between }
        }
        clear
    }

    /// Room beyond what is needed where the other hangs so far to the left; less than nought where there is not as much.
    fn spare(&mut self, left_deg: f64) -> f64 {
        let (sin, cos) = left_deg.to_radians().sin_cos();
        for (turned, body) in self.turned.iter_mut().zip([&self.poses[1].piece, &self.poses[1].feed]) {
            for (to, [x, y, z]) in turned.corners.iter_mut().zip(&body.corners) {
                *to = [cos * x - sin * y, sin * x + cos * y, z + self.higher_mm];
            }
        }
        let one = [&self.poses[0].piece, &self.poses[0].feed];
        let mut spare = f64::INFINITY;
        for (at, pair) in self.pairs.iter_mut().enumerate() {
            if pair.is_clear || left_deg > pair.clear_from {
                continue;
            }
            self.looks += 1;
            spare = spare.min(room(one[at / 2], &self.turned[at % 2], pair.needs, &mut pair.way) - pair.needs);
            if spare < 0.0 {
                break;
            }
        }
        spare
    }
}
