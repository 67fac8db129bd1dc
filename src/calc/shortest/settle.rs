//! Whole minutes and steps: rounds a draft, then takes minutes off as long as all is kept, and puts some on where something is not.

use super::case::Halt;
use super::descend::Stand;
use super::model::{Look, Model, cost};
use super::path::{Segment, slacks, top};
use super::rows::Over;

/// What is broken costs so many times more than while a draft is bettered: whole numbers cannot come as near as they like.
const TIMES: f64 = 10.0;
/// What 1 of a limit that needs no mould costs, in minutes.
const STATIC: f64 = 1000.0;
/// That anything is broken at all costs as much besides, in minutes.
const ANY: f64 = 25.0;
/// Longest that is put on a number where slopes do not help, in minutes.
const MOST_MENDED: i32 = 16;
/// Minutes by which a slope is taken.
const STEP_MIN: f64 = 2.0;
/// Most that a number changes at once.
const MOST_STEPS: i32 = 3;
/// How many of the most promising changes are run.
const TRIED: usize = 6;
/// And how many of them at once.
const AT_ONCE: usize = 2;
/// How often slopes are taken anew, and how many changes are made by the same ones.
const ROUNDS: usize = 8;
const BY_THE_SAME: usize = 5;

/// A number of a whole programme.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Whole {
    Target(usize),
    Ramp(usize),
    Hold(usize),
}

/// A change of one or two numbers by whole steps.
type Change = [(usize, i32); 2];

impl Model<'_> {
    /// Whole numbers from a draft.
    pub fn round(&self, stand: Stand) -> Result<Vec<Segment>, Halt> {
        let mut draft = stand.draft;
        for knot in &mut draft.knots {
            if knot.bounds_c[1] > knot.bounds_c[0] {
                knot.target_c = self.limits.nearest_c(knot.target_c).clamp(knot.bounds_c[0], knot.bounds_c[1]);
            }
        }
        draft.in_order(self.limits);
        draft.knots.iter_mut().for_each(|knot| knot.bounds_c = [knot.target_c; 2]);
        let stand = self.stand(draft)?;
        let stand = self.descend(stand, 6.0, (4, 1.0))?;
        let whole = |minutes: f64| (minutes - 1e-6).ceil().max(0.0);
        let segments = stand.draft.segments(self.limits);
        let segments = segments.iter().map(|s| Segment { ramp_min: whole(s.ramp_min), hold_min: whole(s.hold_min), ..*s });
        Ok(without_nothing(segments.collect(), self.limits.start_c))
    }

    /// Betters whole numbers; nothing where something is still broken at the end.
    pub fn settle(&self, mut segments: Vec<Segment>) -> Result<(Vec<Segment>, Look, bool), Halt> {
        let mut look = self.look(&segments)?;
        for _ in 0..ROUNDS {
            let found = self.by_slopes(&mut segments, &mut look)?;
            if !(found || !self.all_kept(&segments, &look) && self.mend(&mut segments, &mut look)?) {
                break;
            }
        }
        let kept = self.all_kept(&segments, &look);
        Ok((segments, look, kept))
    }

    fn all_kept(&self, segments: &[Segment], look: &Look) -> bool {
        look.kept() && self.static_cost(segments) <= 0.0
    }

    /// Tries every number by more and more, and takes what is best. Whether any was for the better.
    fn mend(&self, segments: &mut Vec<Segment>, look: &mut Look) -> Result<bool, Halt> {
        let numbers = self.numbers(segments);
        let mut tried = Vec::new();
        for at in 0..numbers.len() {
            let steps = [-1, 1, 2, 4, 8, MOST_MENDED];
            for by in if matches!(numbers[at], Whole::Target(_)) { &steps[..4] } else { &steps[1..] } {
                tried.push(self.with(segments, &numbers, &[(at, *by), (at, 0)]));
            }
        }
        tried.retain(|next| sensible(next, segments, self.limits.start_c));
        let seen = self.looks(&tried.iter().map(Vec::as_slice).collect::<Vec<_>>())?;
        let merits = tried.into_iter().zip(seen).map(|(next, seen)| (self.whole_merit(&next, &seen), next, seen));
        let best = merits.min_by(|a, b| a.0.total_cmp(&b.0));
        match best {
            Some((merit, next, seen)) if merit < self.whole_merit(segments, look) - 0.5 => {
                (*segments, *look) = (next, seen);
                Ok(true)
            }
            _ => Ok(false),
        }
    }

    fn static_cost(&self, segments: &[Segment]) -> f64 {
        let broken = slacks(segments, self.limits, self.load.room_c).into_iter();
        broken.map(|(_, slack)| if slack < -1e-6 { STATIC * (1.0 - slack) } else { 0.0 }).sum()
    }

    fn whole_merit(&self, segments: &[Segment], look: &Look) -> f64 {
        look.merit(TIMES) + if look.kept() { 0.0 } else { ANY } + self.static_cost(segments)
    }

    /// Makes changes by the slopes where the programme is now. Whether any was for the better.
    fn by_slopes(&self, segments: &mut Vec<Segment>, look: &mut Look) -> Result<bool, Halt> {
        let numbers = self.numbers(segments);
        let slopes = self.whole_slopes(segments, look, &numbers)?;
        let mut any = false;
        for _ in 0..BY_THE_SAME {
            let now = self.whole_merit(segments, look);
            let promising = self.promising(segments, look, &numbers, &slopes).into_iter().take(TRIED);
            let promising: Vec<Vec<Segment>> = promising.map(|(_, change)| self.with(segments, &numbers, &change)).collect();
            let mut better = None;
            for some in promising.chunks(AT_ONCE) {
                let seen = self.looks(&some.iter().map(Vec::as_slice).collect::<Vec<_>>())?;
                better = some.iter().zip(seen).find(|(next, seen)| self.whole_merit(next, seen) < now - 0.5);
                if better.is_some() {
                    break;
                }
            }
            let Some((next, seen)) = better else { break };
            (*segments, *look, any) = (next.clone(), seen, true);
        }
        Ok(any)
    }

    fn numbers(&self, segments: &[Segment]) -> Vec<Whole> {
        let last = segments.len() - 1;
        let of = |at: usize| [(at < last).then_some(Whole::Target(at)), Some(Whole::Ramp(at)), Some(Whole::Hold(at))];
        (0..segments.len()).flat_map(of).flatten().collect()
    }

    fn with(&self, segments: &[Segment], numbers: &[Whole], change: &Change) -> Vec<Segment> {
        let mut next = segments.to_vec();
        for &(number, by) in change.iter().filter(|(_, by)| *by != 0) {
            self.add(&mut next, numbers[number], f64::from(by));
        }
        next
    }

    fn add(&self, segments: &mut [Segment], number: Whole, by: f64) {
        match number {
            Whole::Target(at) => segments[at].target_c += by * self.limits.step_c,
            Whole::Ramp(at) => segments[at].ramp_min += by,
            Whole::Hold(at) => segments[at].hold_min += by,
        }
    }

    /// How far each row of each case moves with one step of each number; empty for a case whose limits are far.
    fn whole_slopes(&self, segments: &[Segment], look: &Look, numbers: &[Whole]) -> Result<Vec<Vec<Vec<f64>>>, Halt> {
        let near = |case: &usize| look.rows[*case].iter().any(|row| row.over > -row.kind.far());
        let near = (0..look.rows.len()).filter(near);
        let asked: Vec<(usize, Whole)> = near.flat_map(|case| numbers.iter().map(move |number| (case, *number))).collect();
        let found = self.each(&asked, |&(case, number)| {
            let mut changed = segments.to_vec();
            self.add(&mut changed, number, STEP_MIN);
            let (Whole::Target(first) | Whole::Ramp(first) | Whole::Hold(first)) = number;
            self.changed(case, &look.tracks[case], first, &changed)
        })?;
        let mut slopes = vec![Vec::new(); look.rows.len()];
        for ((case, _), then) in asked.into_iter().zip(found) {
            let slope = |(then, now): (&Over, &Over)| {
                let known = now.over.is_finite() && then.over.is_finite();
                if known { (then.over - now.over) / STEP_MIN } else { 0.0 }
            };
            slopes[case].push(then.iter().zip(&look.rows[case]).map(slope).collect());
        }
        Ok(slopes)
    }

    /// Changes that should be for the better, the best first.
    fn promising(&self, segments: &[Segment], look: &Look, numbers: &[Whole], slopes: &[Vec<Vec<f64>>]) -> Vec<(f64, Change)> {
        let now = self.whole_merit(segments, look);
        let broken = !look.kept();
        let mut all: Vec<(f64, Change)> = Vec::new();
        let mut consider = |change: Change| {
            let next = self.with(segments, numbers, &change);
            if !sensible(&next, segments, self.limits.start_c) {
                return;
            }
            let statically = super::path::total_min(&next) + self.static_cost(&next);
            if statically >= now - 0.5 {
                return;
            }
            let broken = foreseen(look, slopes, &change);
            let foreseen = statically + TIMES * broken + if broken > 0.0 { ANY } else { 0.0 };
            if foreseen < now - 0.25 {
                all.push((foreseen, change));
            }
        };
        for first in 0..numbers.len() {
            for by in (-MOST_STEPS..=MOST_STEPS).filter(|by| *by != 0) {
                consider([(first, by), (first, 0)]);
                for second in (0..numbers.len()).filter(|second| *second != first) {
                    // Time is taken from the first and some of it given to the second, or a set point moves with it.
                    let target = matches!(numbers[second], Whole::Target(_));
                    let most = if target || broken { 2 } else { by.abs() - 1 };
                    for other in (-most..=most).filter(|other| *other != 0 && (by < 0 || *other < 0 || broken)) {
                        consider([(first, by), (second, other)]);
                    }
                }
            }
        }
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        all
    }
}

/// What should be broken after a change, at its cost.
fn foreseen(look: &Look, slopes: &[Vec<Vec<f64>>], change: &Change) -> f64 {
    let mut sum = 0.0;
    for (rows, slopes) in look.rows.iter().zip(slopes) {
        if slopes.is_empty() {
            sum += rows.iter().map(cost).sum::<f64>();
            continue;
        }
        for (at, row) in rows.iter().enumerate() {
            let moved: f64 = change.iter().map(|(number, by)| slopes[*number][at] * f64::from(*by)).sum();
            sum += row.kind.weight() * (row.over + moved).max(0.0);
        }
    }
    sum
}

/// Times are not negative, and set points go up to the top and down from it as before.
fn sensible(next: &[Segment], before: &[Segment], start_c: f64) -> bool {
    let top = top(before);
    let last = next.len() - 1;
    let ordered = |at: usize| {
        let from = at.checked_sub(1).map_or(start_c, |at| next[at].target_c);
        if at <= top { next[at].target_c >= from } else { at == last || next[at].target_c <= from }
    };
    next.iter().all(|segment| segment.ramp_min >= 0.0 && segment.hold_min >= 0.0) && (0..next.len()).all(ordered)
}

/// Without segments that go nowhere and take no time, and with holds in one where a set point is the one before it.
pub(super) fn without_nothing(segments: Vec<Segment>, start_c: f64) -> Vec<Segment> {
    let mut kept: Vec<Segment> = Vec::new();
    let mut from = start_c;
    let last = segments.len().saturating_sub(1);
    for (at, segment) in segments.into_iter().enumerate() {
        let stays = (segment.target_c - from).abs() < 1e-6;
        match kept.last_mut() {
            Some(before) if stays => before.hold_min += segment.ramp_min + segment.hold_min,
            None if stays && at < last && segment.ramp_min + segment.hold_min <= 0.0 => (),
            _ => kept.push(segment),
        }
        from = kept.last().map_or(start_c, |kept| kept.target_c);
    }
    kept
}
