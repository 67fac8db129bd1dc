//! A programme under way: numbers that need not be whole yet, and how far each set point may move.

use super::limits::Limits;
use super::path::{Segment, least_ramp, top};

/// Ramps shorter than this are not parted, in K and in minutes.
const LONG_K: f64 = 40.0;
const LONG_MIN: f64 = 40.0;

/// A segment under way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Knot {
    pub target_c: f64,
    /// How far the set point may go.
    pub bounds_c: [f64; 2],
    /// Minutes of the ramp over the least.
    pub excess_min: f64,
    pub hold_min: f64,
}

/// A programme under way: it rises to one top and falls from it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Draft {
    pub knots: Vec<Knot>,
    /// The hottest knot. There is always one more: the soak.
    pub top: usize,
}

/// A number of a draft that may be changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Number {
    Target(usize),
    Excess(usize),
    Hold(usize),
}

impl Number {
    pub fn segment(self) -> usize {
        match self {
            Self::Target(at) | Self::Excess(at) | Self::Hold(at) => at,
        }
    }
}

impl Draft {
    pub fn segments(&self, limits: &Limits) -> Vec<Segment> {
        let mut from = limits.start_c;
        let segment = |knot: &Knot| {
            let ramp_min = least_ramp(from, knot.target_c, limits).0 + knot.excess_min;
            from = knot.target_c;
            Segment { target_c: knot.target_c, ramp_min, hold_min: knot.hold_min }
        };
        self.knots.iter().map(segment).collect()
    }

    /// The draft of a programme; nothing where it does not rise to one top and fall to its end.
    pub fn of(segments: &[Segment], limits: &Limits, room_c: f64) -> Option<Self> {
        let mut segments = segments.to_vec();
        let top = top(&segments);
        if top + 1 == segments.len() {
            segments.push(Segment { ramp_min: 0.0, ..*segments.last()? });
            segments[top].hold_min = 0.0;
        }
        let rises = segments[..=top].is_sorted_by(|a, b| a.target_c <= b.target_c) && segments[0].target_c >= limits.start_c;
        let falls = segments[top..segments.len() - 1].is_sorted_by(|a, b| a.target_c >= b.target_c);
        if !(rises && falls) {
            return None;
        }
        let mut from = limits.start_c;
        let last = segments.len() - 1;
        let knot = |(at, segment): (usize, &Segment)| {
            let excess_min = (segment.ramp_min - least_ramp(from, segment.target_c, limits).0).max(0.0);
            from = segment.target_c;
            let bounds_c = if at == last { [segment.target_c; 2] } else { free(at > top, at == top, limits, room_c) };
            let target_c = segment.target_c.clamp(bounds_c[0], bounds_c[1]);
            Knot { target_c, bounds_c, excess_min, hold_min: segment.hold_min }
        };
        Some(Self { knots: segments.iter().enumerate().map(knot).collect(), top })
    }

    /// The numbers that may change.
    pub fn numbers(&self) -> Vec<Number> {
        let of = |(at, knot): (usize, &Knot)| {
            let moves = knot.bounds_c[1] > knot.bounds_c[0];
            [moves.then_some(Number::Target(at)), Some(Number::Excess(at)), Some(Number::Hold(at))]
        };
        self.knots.iter().enumerate().flat_map(of).flatten().collect()
    }

    /// The value of a number, and what it may be.
    pub fn read(&self, number: Number, limits: &Limits) -> (f64, [f64; 2]) {
        let knot = &self.knots[number.segment()];
        let least = if number.segment() + 1 == self.knots.len() { limits.soak.least_min } else { 0.0 };
        match number {
            Number::Target(_) => (knot.target_c, knot.bounds_c),
            Number::Excess(_) => (knot.excess_min, [0.0, f64::INFINITY]),
            Number::Hold(_) => (knot.hold_min, [least, f64::INFINITY]),
        }
    }

    pub fn add(&mut self, number: Number, by: f64) {
        let knot = &mut self.knots[number.segment()];
        match number {
            Number::Target(_) => knot.target_c += by,
            Number::Excess(_) => knot.excess_min += by,
            Number::Hold(_) => knot.hold_min += by,
        }
    }

    /// Set points in order again: rounding, and sums of rounded numbers, may leave them a hair out of it.
    pub fn in_order(&mut self, limits: &Limits) {
        let mut from = limits.start_c;
        let last = self.knots.len() - 1;
        for (at, knot) in self.knots.iter_mut().enumerate().take(last) {
            let ordered = if at <= self.top { knot.target_c.max(from) } else { knot.target_c.min(from) };
            knot.target_c = ordered.clamp(knot.bounds_c[0], knot.bounds_c[1]);
            from = knot.target_c;
        }
        let soak = &mut self.knots[last];
        soak.hold_min = soak.hold_min.max(limits.soak.least_min);
    }

    /// With one more knot half way up or down every long ramp; the kiln goes as before.
    pub fn finer(&self, limits: &Limits, room_c: f64) -> Self {
        let mut finer = Self { knots: Vec::new(), top: self.top };
        let mut from = limits.start_c;
        for (at, (knot, segment)) in self.knots.iter().zip(self.segments(limits)).enumerate() {
            let mut knot = *knot;
            if (knot.target_c - from).abs() >= LONG_K && segment.ramp_min >= LONG_MIN {
                let middle = f64::midpoint(from, knot.target_c);
                let half = |from: f64, to: f64| (segment.ramp_min / 2.0 - least_ramp(from, to, limits).0).max(0.0);
                let bounds_c = free(at > self.top, false, limits, room_c);
                finer.knots.push(Knot { target_c: middle, bounds_c, excess_min: half(from, middle), hold_min: 0.0 });
                knot.excess_min = half(middle, knot.target_c);
                finer.top += usize::from(at <= self.top);
            }
            finer.knots.push(knot);
            from = knot.target_c;
        }
        finer
    }

    /// Without a knot: the next ramp takes its time over.
    pub fn without(&self, at: usize, limits: &Limits) -> Self {
        let minutes: f64 = self.segments(limits)[at..=at + 1].iter().map(|segment| segment.ramp_min).sum::<f64>() + self.knots[at].hold_min;
        let mut less = self.clone();
        less.knots.remove(at);
        less.top -= usize::from(at < self.top);
        let from = at.checked_sub(1).map_or(limits.start_c, |before| less.knots[before].target_c);
        let next = &mut less.knots[at];
        next.excess_min = (minutes - least_ramp(from, next.target_c, limits).0).max(0.0);
        less
    }
}

/// How far a set point may go that nothing fixes.
pub(super) fn free(down: bool, top: bool, limits: &Limits, room_c: f64) -> [f64; 2] {
    let high = limits.at_most_c(limits.ceiling_c);
    let low = match (down, top) {
        (true, _) => limits.at_least_c(limits.dip_floor_c()),
        (false, true) => limits.soak_reading_c().max(limits.start_c),
        (false, false) => limits.at_least_c(limits.floor_c(room_c)),
    };
    [low.min(high), high]
}
