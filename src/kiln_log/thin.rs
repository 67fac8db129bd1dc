//! Making a long curve light.

/// Leaves out points so that straight lines between the rest stay within `tolerance_k` of every point left out, at its minute. Points are
/// minutes and °C, minutes rising. First and last stay, and none is moved; time goes in proportion to the number of points.
///
/// From each point kept, the lines that pass all points since within the tolerance form a cone that only narrows; the point before the first
/// one outside it is kept next.
#[must_use]
pub fn thin(points: &[[f64; 2]], tolerance_k: f64) -> Vec<[f64; 2]> {
    let (Some(&first), Some(&last)) = (points.first(), points.last()) else { return Vec::new() };
    // NaN leaves nothing out, either.
    let leaves_out = tolerance_k >= 0.0;
    if !leaves_out {
        return points.to_vec();
    }
    let mut kept = vec![first];
    let mut cone = [f64::NEG_INFINITY, f64::INFINITY];
    let mut anchor = first;
    for pair in points.windows(2) {
        let (before, this) = (pair[0], pair[1]);
        let reached = slope(anchor, this, 0.0);
        // Written so that NaN, of two points at one minute, ends a stretch.
        let within = cone[0] <= reached && reached <= cone[1];
        if !within {
            if kept.last() != Some(&before) {
                kept.push(before);
            }
            anchor = before;
            cone = [f64::NEG_INFINITY, f64::INFINITY];
        }
        let [least, most] = [slope(anchor, this, -tolerance_k), slope(anchor, this, tolerance_k)];
        // No line passes two points at one minute: the later one is kept as well.
        cone = if least.is_nan() { [f64::INFINITY, f64::NEG_INFINITY] } else { [cone[0].max(least), cone[1].min(most)] };
    }
    if points.len() > 1 {
        kept.push(last);
    }
    kept
}

/// K a minute from one point to another that is moved by so many K; NaN where there is no time between them.
fn slope(from: [f64; 2], to: [f64; 2], moved_k: f64) -> f64 {
    let minutes = to[0] - from[0];
    if minutes > 0.0 { (to[1] + moved_k - from[1]) / minutes } else { f64::NAN }
}
