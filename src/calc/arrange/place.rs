//! Where a piece may hang among others: the angles that are left, and how tidy a tree looks.

use super::sides::{NEVER_DEG, Sides};

/// Where a piece hangs, and in which of its poses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub pose: usize,
    pub joint: f64,
    pub around: f64,
}

/// Angles as near as this are the same.
const SAME_DEG: f64 = 1e-10;

/// Joints as near as this are one tier.
pub(super) const SAME_MM: f64 = 1e-6;

/// The angle nearest to the wanted one at which a piece may hang there, clear of all that hang.
pub(super) fn free(sides: &mut Sides, spots: &[Option<Spot>], pose: usize, joint: f64, wanted: f64) -> Option<f64> {
    let mut blocked: Vec<[f64; 2]> = Vec::new();
    for spot in spots.iter().flatten() {
        let higher = joint - spot.joint;
        let left = sides.left(spot.pose, pose, higher);
        let right = if left >= NEVER_DEG { left } else { sides.left(pose, spot.pose, -higher) };
        if left + right > 360.0 {
            return None;
        }
        if left + right > 0.0 {
            blocked.push([(spot.around - right).rem_euclid(360.0), left + right]);
        }
    }
    let is_free = |at: f64| {
        blocked.iter().all(|[from, wide]| {
            let into = (at - from).rem_euclid(360.0);
            into <= SAME_DEG || into >= wide - SAME_DEG
        })
    };
    let wanted = wanted.rem_euclid(360.0);
    if is_free(wanted) {
        return Some(wanted);
    }
    let mut best: Option<(f64, f64)> = None;
    for end in blocked.iter().flat_map(|[from, wide]| [*from, (from + wide).rem_euclid(360.0)]) {
        let off = between(end, wanted);
        if best.is_none_or(|(least, _)| off < least) && is_free(end) {
            best = Some((off, end));
        }
    }
    best.map(|(_, at)| at)
}

/// How far two ways are apart, in degrees: at most half a turn.
pub(super) fn between(one: f64, other: f64) -> f64 {
    let off = (one - other).rem_euclid(360.0);
    off.min(360.0 - off)
}

/// The tiers of a tree from below: the joint, and the angles on it in order.
pub(super) fn tiers(spots: &[Option<Spot>]) -> Vec<(f64, Vec<f64>)> {
    let mut all: Vec<(f64, f64)> = spots.iter().flatten().map(|spot| (spot.joint, spot.around)).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut found: Vec<(f64, Vec<f64>)> = Vec::new();
    for (joint, around) in all {
        match found.last_mut() {
            Some((at, angles)) if joint - *at <= SAME_MM => angles.push(around),
            _ => found.push((joint, vec![around])),
        }
    }
    // Joints of one tier may differ in their last digits, and with them the order.
    found.iter_mut().for_each(|(_, angles)| angles.sort_by(f64::total_cmp));
    found
}

/// How untidy a tree looks, from nought to 1: many tiers, uneven ones, full and empty ones, tiers that hang behind each other.
pub(super) fn untidy(spots: &[Option<Spot>]) -> f64 {
    let tiers = tiers(spots);
    let many: usize = tiers.iter().map(|(_, angles)| angles.len()).sum();
    if many < 2 {
        return 0.0;
    }
    let (mut uneven, mut behind) = (0.0, 0.0);
    for (at, (_, angles)) in tiers.iter().enumerate() {
        let even = 360.0 / angles.len() as f64;
        let next = |k: usize| if k + 1 < angles.len() { angles[k + 1] } else { angles[0] + 360.0 };
        uneven += (0..angles.len()).map(|k| (next(k) - angles[k] - even).abs()).sum::<f64>() / 720.0 * angles.len() as f64;
        if let Some((_, below)) = at.checked_sub(1).map(|at| &tiers[at]) {
            let half = 180.0 / below.len().max(angles.len()) as f64;
            let off = |angle: f64| below.iter().map(|other| between(angle, *other)).fold(half, f64::min);
            behind += angles.iter().map(|angle| 1.0 - off(*angle) / half).sum::<f64>();
        }
    }
    let many = many as f64;
    let count = |pick: fn(usize, usize) -> usize| tiers.iter().map(|(_, angles)| angles.len()).reduce(pick).unwrap_or(0) as f64;
    let unlike = (count(usize::max) - count(usize::min)) / many;
    0.4 * (tiers.len() - 1) as f64 / (many - 1.0) + 0.3 * uneven / many + 0.2 * behind / many + 0.1 * unlike
}
