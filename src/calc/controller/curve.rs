//! Curves over time: what was planned, and how far two are apart.

use super::{ControllerError, Programme, limits};

/// How fast a kiln moves below a temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The band reaches up to here, true °C; the last is open, whatever it says.
    pub up_to_c: f64,
    /// Fastest rise, in K/h.
    pub rise_k_h: f64,
    /// Fastest fall, in K/h.
    pub fall_k_h: f64,
}

/// How far a curve is from another at the same time, at most.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Apart {
    /// By how much it is hotter, in K; nought or more.
    pub hotter_k: f64,
    /// By how much it is colder, in K; nought or more.
    pub colder_k: f64,
}

impl Apart {
    /// The larger of the two, in K.
    #[must_use]
    pub fn most_k(self) -> f64 {
        self.hotter_k.max(self.colder_k)
    }
}

/// On the edge of a band to this, a kiln is in the one it goes to, in K.
const EDGE_K: f64 = 1e-8;

/// The fastest a kiln moves from `at_c` upwards or downwards, in K/min, and the temperature up or down to which that holds.
pub(super) fn speed(bands: &[Band], at_c: f64, upwards: bool) -> Option<(f64, f64)> {
    let last = bands.len().checked_sub(1)?;
    let in_band = |band: &&Band| if upwards { at_c < band.up_to_c - EDGE_K } else { at_c <= band.up_to_c + EDGE_K };
    let this = bands[..last].iter().take_while(|band| !in_band(band)).count();
    if upwards {
        let end = if this < last { bands[this].up_to_c } else { f64::INFINITY };
        Some((bands[this].rise_k_h / 60.0, end))
    } else {
        let end = if this > 0 { bands[this - 1].up_to_c } else { f64::NEG_INFINITY };
        Some((bands[this].fall_k_h / 60.0, end))
    }
}

/// The points on the way from one temperature to another as fast as the kiln can: minutes from the start, and °C.
pub(super) fn fastest(bands: &[Band], from_c: f64, to_c: f64) -> Vec<[f64; 2]> {
    let (mut time, mut at) = (0.0, from_c);
    let upwards = to_c > from_c;
    let mut points = Vec::new();
    // A way through every band.
    for _ in 0..=bands.len() {
        let Some((rate, end)) = speed(bands, at, upwards) else { break };
        let next = if upwards { end.min(to_c) } else { end.max(to_c) };
        time += (next - at).abs() / rate;
        at = next;
        points.push([time, at]);
        if upwards && at >= to_c || !upwards && at <= to_c {
            return points;
        }
    }
    vec![[0.0, to_c]]
}

/// The curve of a programme as it is meant: ramps straight and in their time; those without a time as fast as the kiln's bands say, or at once
/// where there are none.
///
/// # Errors
/// Where a number makes no sense, and where bands do not rise.
pub fn planned(programme: &Programme, bands: &[Band]) -> Result<Vec<[f64; 2]>, ControllerError> {
    limits::programme(programme)?;
    limits::bands(bands)?;
    Ok(meant(programme, bands))
}

/// The same, of what is sound.
pub(super) fn meant(programme: &Programme, bands: &[Band]) -> Vec<[f64; 2]> {
    let (mut time, mut at) = (0.0, programme.start_c);
    let mut curve = vec![[time, at]];
    for segment in &programme.segments {
        let target = segment.target_c;
        match segment.ramp_min.filter(|minutes| *minutes > 0.0) {
            Some(minutes) => {
                time += minutes;
                curve.push([time, target]);
            }
            None => {
                let way = fastest(bands, at, target);
                curve.extend(way.iter().map(|[minutes, c]| [time + minutes, *c]));
                time += way.last().map_or(0.0, |point| point[0]);
            }
        }
        at = target;
        if segment.hold_min > 0.0 {
            time += segment.hold_min;
            curve.push([time, at]);
        }
    }
    curve
}

/// How far the first curve is from the second at the same time. Before its beginning and after its end a curve stays as it is there; what is no
/// number counts for nothing.
#[must_use]
pub fn apart(one: &[[f64; 2]], other: &[[f64; 2]]) -> Apart {
    let mut most = Apart::default();
    // Between two neighbouring points of either both are straight: the most is at a point, just before it or just after it.
    for point in one.iter().chain(other) {
        for after in [false, true] {
            if let (Some(first), Some(second)) = (value(one, point[0], after), value(other, point[0], after)) {
                most.hotter_k = most.hotter_k.max(first - second);
                most.colder_k = most.colder_k.max(second - first);
            }
        }
    }
    most
}

/// A curve just before or just after a time.
pub(super) fn value(curve: &[[f64; 2]], time: f64, after: bool) -> Option<f64> {
    let next = curve.partition_point(|point| if after { point[0] <= time } else { point[0] < time });
    match (next.checked_sub(1).map(|last| curve[last]), curve.get(next)) {
        (Some([t0, c0]), Some([t1, c1])) => Some(c0 + (c1 - c0) * (time - t0) / (t1 - t0)),
        (Some([_, only]), None) => Some(only),
        (None, Some([_, only])) => Some(*only),
        (None, None) => None,
    }
}
