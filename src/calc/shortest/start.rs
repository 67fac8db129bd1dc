//! Where the search begins: a calm programme with a knot wherever something may begin or end.

use super::draft::{Draft, Knot, free};
use super::limits::Limits;
use super::load::Load;
use super::path::least_ramp;

/// Knots nearer each other are one, in K.
const NEAR_K: f64 = 4.0;

/// How long a load's slowest mould takes to follow the kiln, in minutes: its radius squared over diffusivity and the square of the first root
/// of J₀ (2.405), dry.
pub(super) fn slowness_min(load: &Load) -> f64 {
    let of = |mould: &super::load::Mould| {
        let material = &mould.materials[load.kept.all()[0] as usize];
        let least = |rows: &[[f64; 2]]| rows.iter().map(|row| row[1]).fold(f64::INFINITY, f64::min);
        let k = least(material.conductivity_dry.as_deref().unwrap_or(&material.conductivity)).min(least(&material.conductivity));
        let heat = material.specific_heat.iter().map(|row| row[1]).fold(0.0, f64::max);
        let reach = mould.flask.radius_m.min(mould.flask.height_m / 2.0);
        material.density_kg_m3 * heat * reach * reach / (k * 2.405 * 2.405) / 60.0
    };
    let slowest = load.moulds.iter().map(of).fold(1.0, f64::max);
    if slowest.is_finite() { slowest.clamp(1.0, 600.0) } else { 60.0 }
}

/// A programme that takes its time: `calm` times as long as the moulds need to follow.
pub(super) fn draft(load: &Load, limits: &Limits, calm: f64) -> Draft {
    let slow = slowness_min(load);
    let (soak, start) = (limits.soak_reading_c(), limits.start_c);
    let ceiling = limits.at_most_c(limits.ceiling_c);
    let top_bounds = free(false, true, limits, load.room_c);
    let asked = load.moulds.iter().filter(|mould| mould.needs.above_min > 0.0);
    let need = asked.clone().map(|mould| mould.needs.above_min).fold(0.0, f64::max);
    let hot = asked.map(|mould| mould.needs.above_c - limits.offset_k).fold(soak, f64::max);
    let top_c = if need > 0.0 { ceiling } else { hot.max(soak) }.clamp(top_bounds[0], top_bounds[1]);
    let mut up = fixed_up(limits, [start, top_c]);
    for inversion in load.moulds.iter().flat_map(|mould| &mould.needs.inversions) {
        add(&mut up, (inversion.within_c[0] - limits.offset_k + 5.0, None, calm * 3.0 * slow), [start, top_c]);
    }
    let mut down: Vec<(f64, Option<f64>, f64)> = Vec::new();
    for cap in limits.caps.iter().filter(|cap| cap.fall_k_h.is_some()) {
        for edge in [limits.at_least_c(cap.within_c[1]), limits.at_most_c(cap.within_c[0])] {
            add(&mut down, (edge, Some(edge), 0.0), [soak, top_c]);
        }
    }
    down.sort_by(|a, b| b.0.total_cmp(&a.0));
    if limits.soak.dip_k > 0.0 {
        down.push((soak - limits.soak.dip_k / 3.0, None, 0.0));
    }
    up.push((top_c, (top_bounds[0] >= top_bounds[1]).then_some(top_c), need + calm * slow));
    let top = up.len() - 1;
    let rate = 60.0 / (calm * slow);
    let mut from = start;
    let mut knot = |at: usize, (c, fixed, hold_min): (f64, Option<f64>, f64)| {
        let bounds_c = fixed.map_or_else(|| free(at > top, at == top, limits, load.room_c), |c| [c; 2]);
        let target_c = c.clamp(bounds_c[0], bounds_c[1]);
        let calm_min = (target_c - from).abs() / rate;
        let excess_min = (calm_min - least_ramp(from, target_c, limits).0).max(0.0);
        from = target_c;
        Knot { target_c, bounds_c, excess_min, hold_min }
    };
    let mut knots: Vec<Knot> = up.into_iter().chain(down).enumerate().map(|(at, each)| knot(at, each)).collect();
    let hold = limits.soak.least_min.max(calm * 2.0 * slow);
    knots.push(knot(knots.len(), (soak, Some(soak), hold)));
    let mut draft = Draft { knots, top };
    draft.in_order(limits);
    draft
}

/// Set points that stay where they are: the hottest ends of the sheet's least times, where they cost the least, and the ends of its ramps.
fn fixed_up(limits: &Limits, between: [f64; 2]) -> Vec<(f64, Option<f64>, f64)> {
    let mut up = Vec::new();
    for least in &limits.least {
        let c = limits.at_most_c(least.within_c[1]);
        add(&mut up, (c, Some(c), least.minutes), between);
    }
    for cap in limits.caps.iter().filter(|cap| cap.rise_k_h.is_some()) {
        for edge in [limits.at_most_c(cap.within_c[0]), limits.at_least_c(cap.within_c[1])] {
            add(&mut up, (edge, Some(edge), 0.0), between);
        }
    }
    up
}

/// Adds a knot in its place where none is near.
fn add(knots: &mut Vec<(f64, Option<f64>, f64)>, new: (f64, Option<f64>, f64), [low, high]: [f64; 2]) {
    let inside = new.0 > low + 1.0 && new.0 < high - 1.0;
    if inside && knots.iter().all(|knot| (knot.0 - new.0).abs() >= NEAR_K) {
        let at = knots.partition_point(|knot| knot.0 < new.0);
        knots.insert(at, new);
    }
}
