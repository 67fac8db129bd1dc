//! A ramp slower than a controller takes, in steps: each waits where the last one ended, then goes as slowly as the controller can and meets the
//! ramp as planned at its end. So the kiln is never ahead of the plan.

use super::scale::HAIR;
use super::table::{Keying, Note};
use super::{Ramp, RampBy};

/// No ramp has more steps.
const MOST_STEPS: usize = 200;

/// The rows of a ramp that is to take `takes_min`, of which `planned_min` are planned.
pub(super) fn split(keying: &mut Keying, segment: usize, set: i64, planned_min: f64, takes_min: f64) {
    let controller = keying.controller;
    let goes_k = controller.true_c(set) - keying.at_c;
    let upwards = goes_k > 0.0;
    let rate = goes_k.abs() / takes_min;
    let first = keying.drafts.is_empty();
    let from = match keying.drafts.last() {
        Some(last) => last.set,
        None => begin(keying, segment, set, upwards),
    };
    let whole = set.abs_diff(from).max(1) as usize;
    let steps = wanted(keying, goes_k.abs(), takes_min).clamp(1, whole.min(MOST_STEPS));
    let (way, mut behind_k) = (set - from, 0.0_f64);
    for step in 1..=steps as i64 {
        let to = from + way * step / steps as i64;
        let by_k = (controller.true_c(to) - keying.at_c).abs();
        let part_min = takes_min * by_k / goes_k.abs();
        let ramp = slowest(controller.ramp, part_min);
        let wait_min = (part_min - controller.ramp_min(ramp, by_k).unwrap_or(0.0)).max(0.0);
        if let Some(last) = keying.drafts.last_mut() {
            last.wait_min += wait_min;
        }
        behind_k = behind_k.max(wait_min * rate);
        // The steps share the time that was planned as they share the way.
        keying.push(segment, to, ramp, Some((planned_min * by_k / goes_k.abs() - wait_min).max(0.0)));
    }
    // Where nothing is to be waited for at the start, no row is needed for it.
    if first && keying.drafts.first().is_some_and(|begin| begin.wait_min <= 0.0) {
        keying.drafts.remove(0);
    }
    keying.notes.push(Note::TooSlow { segment, planned_k_h: 60.0 * rate, steps, behind_k });
}

/// Nothing is keyed in yet, so that there is nowhere to wait: a row for where the kiln is, on the side it comes from.
fn begin(keying: &mut Keying, segment: usize, set: i64, upwards: bool) -> i64 {
    let at = keying.controller.steps(keying.at_c);
    let here = if upwards { (at.floor() as i64).min(set) } else { (at.ceil() as i64).max(set) };
    // Where that is over the ceiling, which only a kiln that is hotter than its ceiling can be, it goes to the highest there is.
    let here = match keying.wish.ceiling_c {
        Some(ceiling) => here.min(keying.controller.steps(ceiling + HAIR).floor() as i64),
        None => here,
    };
    let was_c = keying.at_c;
    keying.push(segment, here, keying.controller.fastest(), None);
    // The ramp is reckoned from where the kiln really is.
    keying.at_c = was_c;
    here
}

/// As many steps as keep it near enough to the plan.
fn wanted(keying: &Keying, goes_k: f64, takes_min: f64) -> usize {
    match keying.controller.ramp {
        RampBy::Rate { least, .. } => {
            // In a step of d K it waits until the plan is ahead by d · (1 - rate/slowest).
            let slowest = f64::from(least) / keying.controller.degrees() / 60.0;
            let share = 1.0 - goes_k / takes_min / slowest;
            (goes_k * share / keying.wish.behind_k - HAIR).ceil() as usize
        }
        RampBy::Minutes { most, .. } => (takes_min / f64::from(most) - HAIR).ceil() as usize,
    }
}

/// The slowest ramp for a step of so many minutes.
fn slowest(ramp: RampBy, part_min: f64) -> Ramp {
    match ramp {
        RampBy::Rate { least, .. } => Ramp::Rate(least),
        RampBy::Minutes { least, most } => Ramp::Minutes(((part_min - HAIR).ceil().min(f64::from(most)) as u32).max(least)),
    }
}
