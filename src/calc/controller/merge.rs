//! Which neighbouring segments alter a programme least as one.

use super::curve::{Apart, Band, apart, fastest, meant};
use super::table::{Wish, rows};
use super::{Controller, Programme, Segment};

/// Two neighbouring segments as one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Merge {
    /// The first of the two, from nought, in the programme as the merges before this one left it.
    pub first: usize,
    /// What stands for both.
    pub segment: Segment,
    /// How far the programme with this merge and those before it is from the one that was planned. Its ramps are never faster than the faster of
    /// the two that became one.
    pub off: Apart,
    /// Minutes of hold that this merge takes: they become part of a ramp.
    pub hold_lost_min: f64,
}

/// More rows than the controller takes.
#[derive(Debug, Clone, PartialEq)]
pub struct TooMany {
    /// By so many.
    pub by: usize,
    /// Merges one after the other, each the one that leaves the programme nearest to what was planned.
    pub merges: Vec<Merge>,
    /// The programme with all of them.
    pub merged: Programme,
    /// Whether it goes into the controller then.
    pub fits: bool,
}

/// Where there are too many rows: what can be done.
pub(super) fn too_many(programme: &Programme, controller: &Controller, wish: &Wish, many: usize) -> Option<TooMany> {
    let most = controller.most_segments as usize;
    let by = many.checked_sub(most).filter(|by| *by > 0)?;
    let plan = meant(programme, &wish.bands);
    let (mut merged, mut merges, mut left) = (programme.clone(), Vec::new(), many);
    while left > most {
        let Some((merge, next, rows)) = best(&merged, &plan, controller, wish, left) else { break };
        merges.push(merge);
        (merged, left) = (next, rows);
    }
    Some(TooMany { by, merges, merged, fits: left <= most })
}

/// The merge that leaves fewer rows and alters least; of equal ones that which takes the least hold, then the first.
fn best(programme: &Programme, plan: &[[f64; 2]], controller: &Controller, wish: &Wish, left: usize) -> Option<(Merge, Programme, usize)> {
    let mut best: Option<(Merge, Programme, usize)> = None;
    for first in 0..programme.segments.len().saturating_sub(1) {
        for (segment, hold_lost_min) in ways(programme, first, &wish.bands) {
            let mut next = programme.clone();
            next.segments.splice(first..first + 2, [segment]);
            let off = apart(&meant(&next, &wish.bands), plan);
            let nearer = |(other, _, _): &(Merge, Programme, usize)| {
                let rank = |off: Apart, lost: f64| [off.most_k(), lost];
                rank(off, hold_lost_min) < rank(other.off, other.hold_lost_min)
            };
            if best.as_ref().is_some_and(|best| !nearer(best)) {
                continue;
            }
            match rows(&next, controller, wish) {
                Ok((rows, _)) if rows.len() < left => best = Some((Merge { first, segment, off, hold_lost_min }, next, rows.len())),
                _ => {}
            }
        }
    }
    best
}

/// What may stand for two segments, and the hold it takes: one ramp straight to the second's target over the time of both; or the first ramp on to
/// the second's target, and there for the time that is left.
fn ways(programme: &Programme, first: usize, bands: &[Band]) -> Vec<(Segment, f64)> {
    let (one, two) = (programme.segments[first], programme.segments[first + 1]);
    let from_c = first.checked_sub(1).map_or(programme.start_c, |before| programme.segments[before].target_c);
    let (ramp, next) = (timed(&one), timed(&two));
    let whole_way = (two.target_c - one.target_c) * (one.target_c - from_c) >= 0.0;
    if ramp.is_none() && next.is_none() && one.hold_min <= 0.0 && whole_way {
        return vec![(two, 0.0)];
    }
    let Some((ramp_takes, next_takes)) = takes(ramp, from_c, one.target_c, bands).zip(takes(next, one.target_c, two.target_c, bands))
    else {
        return Vec::new();
    };
    let both = ramp_takes + one.hold_min + next_takes;
    let mut ways = Vec::new();
    if both > 0.0 {
        ways.push((Segment { ramp_min: Some(both), ..two }, one.hold_min));
    }
    let all = both + two.hold_min;
    let (goes_k, went_k) = ((two.target_c - from_c).abs(), (one.target_c - from_c).abs());
    let on = match ramp {
        // At the first ramp's rate, so that it is not faster; at once where there is none.
        Some(minutes) if went_k > 0.0 => Some(minutes * goes_k / went_k),
        Some(_) => return ways,
        None => None,
    };
    let Some(on_takes) = takes(on, from_c, two.target_c, bands) else { return ways };
    let least = one.hold_min + two.hold_min;
    ways.push((Segment { target_c: two.target_c, ramp_min: on, hold_min: (all - on_takes).max(least) }, 0.0));
    ways
}

fn timed(segment: &Segment) -> Option<f64> {
    segment.ramp_min.filter(|minutes| *minutes > 0.0)
}

/// How long a ramp takes; nothing where only the kiln knows.
fn takes(ramp: Option<f64>, from_c: f64, to_c: f64, bands: &[Band]) -> Option<f64> {
    match ramp {
        Some(minutes) => Some(minutes),
        None if from_c.total_cmp(&to_c).is_eq() => Some(0.0),
        None if bands.is_empty() => None,
        None => fastest(bands, from_c, to_c).last().map(|point| point[0]),
    }
}
