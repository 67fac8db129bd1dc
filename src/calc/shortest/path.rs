//! The kiln's way through a programme, and what of it can be judged without a mould.
//!
//! A ramp is one rate, as a controller takes it. Where that is more than the kiln's own fastest, the kiln goes at its own and the next step waits
//! for it: so `ramp_min` is how long the ramp really takes, and the rate is whatever brings the kiln there by then.

use super::bind::{Bind, Breach};
use super::limits::{Least, Limits};

/// Minutes and degrees so near each other are one.
const SAME: f64 = 1e-6;

/// A segment: to a set point, and held there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment {
    /// Set point: a reading, in °C.
    pub target_c: f64,
    /// Minutes of the way there.
    pub ramp_min: f64,
    /// Minutes held.
    pub hold_min: f64,
}

/// Length of a programme in minutes.
#[must_use]
pub fn total_min(segments: &[Segment]) -> f64 {
    segments.iter().map(|segment| segment.ramp_min + segment.hold_min).sum()
}

/// The kiln's reading over the minutes after its start, `[min, °C]`, straight between the points.
#[must_use]
pub fn readings(segments: &[Segment], limits: &Limits) -> Vec<[f64; 2]> {
    let mut points = vec![[0.0, limits.start_c]];
    for part in parts(segments, limits) {
        let new = part.into_iter().skip(1);
        for point in new {
            if points.last() != Some(&point) {
                points.push(point);
            }
        }
    }
    points
}

/// The same segment by segment, each with its first point.
pub(super) fn parts(segments: &[Segment], limits: &Limits) -> Vec<Vec<[f64; 2]>> {
    let (mut now, mut from) = (0.0, limits.start_c);
    let part = |segment: &Segment| {
        let mut points = vec![[now, from]];
        for (minutes, c) in way(from, segment, limits) {
            now += minutes;
            points.push([now, c]);
        }
        now += segment.hold_min;
        points.push([now, segment.target_c]);
        from = segment.target_c;
        points
    };
    segments.iter().map(part).collect()
}

/// Minutes and end of each stretch of a ramp.
fn way(from_c: f64, segment: &Segment, limits: &Limits) -> Vec<(f64, f64)> {
    let stretches = stretches(from_c, segment.target_c, limits);
    // The rate at which all stretches together take as long as the ramp; those on which the kiln cannot follow take their own time.
    let mut slow = vec![false; stretches.len()];
    let mut rate = f64::INFINITY;
    for _ in 0..=stretches.len() {
        let own: f64 = stretches.iter().zip(&slow).filter(|(_, slow)| **slow).map(|(stretch, _)| stretch.least_min()).sum();
        let rest: f64 = stretches.iter().zip(&slow).filter(|(_, slow)| !**slow).map(|(stretch, _)| stretch.span_k()).sum();
        rate = if segment.ramp_min > own { rest / (segment.ramp_min - own) } else { f64::INFINITY };
        let more: Vec<bool> = stretches.iter().map(|stretch| stretch.k_min < rate).collect();
        if rate <= 0.0 || more == slow {
            break;
        }
        slow = more;
    }
    let minutes = |stretch: &Stretch| if stretch.k_min < rate { stretch.least_min() } else { stretch.span_k() / rate };
    let all: f64 = stretches.iter().map(minutes).sum();
    // A ramp shorter than the kiln can is drawn as it is asked for: it is a breach of its own.
    let fit = if all > 0.0 { segment.ramp_min / all } else { 1.0 };
    match stretches.len() {
        0 => vec![(segment.ramp_min, segment.target_c)],
        _ => stretches.iter().map(|stretch| (minutes(stretch) * fit, stretch.to_c)).collect(),
    }
}

/// Part of a ramp within one band of the kiln.
#[derive(Debug, Clone, Copy)]
struct Stretch {
    from_c: f64,
    to_c: f64,
    /// The kiln's fastest, in K/min.
    k_min: f64,
}

impl Stretch {
    fn span_k(&self) -> f64 {
        (self.to_c - self.from_c).abs()
    }

    fn least_min(&self) -> f64 {
        self.span_k() / self.k_min
    }
}

fn stretches(from_c: f64, to_c: f64, limits: &Limits) -> Vec<Stretch> {
    let (low, high) = (from_c.min(to_c), from_c.max(to_c));
    let mut ends: Vec<f64> = limits.bands.iter().map(|band| band.up_to_c).filter(|end| *end > low && *end < high).collect();
    ends.extend([low, high]);
    ends.sort_by(f64::total_cmp);
    let rises = to_c > from_c;
    let stretch = |pair: &[f64]| {
        let middle = f64::midpoint(pair[0], pair[1]);
        let band = limits.bands.iter().find(|band| middle < band.up_to_c).or(limits.bands.last());
        let k_h = band.map_or(f64::INFINITY, |band| if rises { band.rise_k_h } else { band.fall_k_h });
        let [from_c, to_c] = if rises { [pair[0], pair[1]] } else { [pair[1], pair[0]] };
        Stretch { from_c, to_c, k_min: k_h / 60.0 }
    };
    let mut all: Vec<Stretch> = ends.windows(2).filter(|pair| pair[1] > pair[0]).map(stretch).collect();
    if !rises {
        all.reverse();
    }
    all
}

/// The least minutes of a ramp, and what they are for.
pub(super) fn least_ramp(from_c: f64, to_c: f64, limits: &Limits) -> (f64, Bind) {
    let (low, high, rises) = (from_c.min(to_c), from_c.max(to_c), to_c > from_c);
    let crossed = |within: [f64; 2]| within[0].max(low) < within[1].min(high) - SAME;
    let caps = limits.caps.iter().enumerate().filter(|(_, cap)| crossed(cap.within_c));
    let caps = caps.filter_map(|(at, cap)| Some((if rises { cap.rise_k_h? } else { cap.fall_k_h? } / 60.0, at)));
    let cap = caps.min_by(|a, b| a.0.total_cmp(&b.0));
    let stretches = stretches(from_c, to_c, limits);
    let own: f64 = stretches.iter().map(Stretch::least_min).sum();
    let capped = cap.map_or(0.0, |(rate, _)| stretches.iter().map(|stretch| stretch.span_k() / rate.min(stretch.k_min)).sum());
    match cap {
        Some((_, cap)) if capped > own + SAME => (capped, Bind::RampCap { cap }),
        _ => (own, if rises { Bind::KilnRise } else { Bind::KilnFall }),
    }
}

/// Minutes that the reading spends between two temperatures, both included.
pub(super) fn minutes_within([from_c, to_c]: [f64; 2], points: &[[f64; 2]]) -> f64 {
    let part = |pair: &[[f64; 2]]| {
        let [[t0, c0], [t1, c1]] = [pair[0], pair[1]];
        let (low, high) = (c0.min(c1), c0.max(c1));
        if high - low <= SAME {
            return if low >= from_c - SAME && high <= to_c + SAME { t1 - t0 } else { 0.0 };
        }
        (t1 - t0) * ((high.min(to_c) - low.max(from_c)) / (high - low)).max(0.0)
    };
    points.windows(2).map(part).sum()
}

/// By how many minutes a programme falls short of a least time; negative where it has more.
pub(super) fn short_of(least: &Least, points: &[[f64; 2]]) -> f64 {
    least.minutes - minutes_within(least.within_c, points)
}

/// The first of the hottest segments: what comes after it is the way down.
pub(super) fn top(segments: &[Segment]) -> usize {
    let hotter = |best: usize, at: usize| if segments[at].target_c > segments[best].target_c { at } else { best };
    (1..segments.len()).fold(0, hotter)
}

/// Slack of every limit that needs no mould: negative where it is broken, in the unit of [`Breach::by`].
pub(super) fn slacks(segments: &[Segment], limits: &Limits, room_c: f64) -> Vec<(Bind, f64)> {
    let mut all = Vec::new();
    let mut from = limits.start_c;
    let top = top(segments);
    for (at, segment) in segments.iter().enumerate() {
        if (segment.target_c - from).abs() > SAME {
            let (least, limit) = least_ramp(from, segment.target_c, limits);
            all.push((limit, segment.ramp_min - least));
        }
        all.push((Bind::Ceiling, limits.ceiling_c - segment.target_c));
        let floor_c = if at > top { limits.dip_floor_c() } else { limits.floor_c(room_c) };
        all.push((Bind::Floor, segment.target_c - floor_c));
        from = segment.target_c;
    }
    let points = readings(segments, limits);
    all.extend(limits.least.iter().enumerate().map(|(at, least)| (Bind::SheetLeast { least: at }, -short_of(least, &points))));
    let soak = &limits.soak;
    let last = segments.last();
    all.push((Bind::SoakHold, last.map_or(0.0, |last| last.hold_min) - soak.least_min));
    // A set point is as near the soak as a step lets it, or as near as the core must be.
    let near = soak.within_k.max(limits.step_c / 2.0);
    all.push((Bind::SoakTarget, near - last.map_or(f64::INFINITY, |last| (last.target_c + limits.offset_k - soak.mould_c).abs())));
    if let Some(most) = limits.most_segments {
        all.push((Bind::Segments, most as f64 - segments.len() as f64));
    }
    all
}

/// Those that are broken, each once, by the most.
pub(super) fn breaches(slacks: &[(Bind, f64)]) -> Vec<Breach> {
    let mut all: Vec<Breach> =
        slacks.iter().filter(|(_, slack)| slack.is_nan() || *slack < -SAME).map(|&(limit, slack)| Breach { limit, by: -slack }).collect();
    all.sort_by(|a, b| (a.limit, -a.by).partial_cmp(&(b.limit, -b.by)).unwrap_or(std::cmp::Ordering::Equal));
    all.dedup_by_key(|breach| breach.limit);
    all
}
