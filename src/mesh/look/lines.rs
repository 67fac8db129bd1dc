//! Lines on a pattern, drawn over it: what lies behind it is fainter.

use super::colour::mixed;
use super::cut::Plane;
use super::layer::Layer;
use super::{Lines, Projection};

/// How much of a hidden line is seen.
const HIDDEN: f32 = 0.28;
/// A line belongs to the surface it lies on: it is seen when no more than so many pixels behind it.
const BIAS_PX: f64 = 3.0;

/// Draws lines into the colours of a layer.
pub(super) fn draw(lines: &Lines<'_>, layer: &Layer, onto: &Projection, plane: Option<&Plane>, colours: &mut [[u8; 4]]) {
    let width = f64::from(lines.width_px.clamp(1.0, 8.0));
    for ends in lines.segments {
        let [from, to] = ends.map(|end| onto.place_corner(end));
        if from.iter().chain(&to).all(|part| part.is_finite()) {
            segment([from, to], width, layer, &mut |at, place| {
                if plane.is_some_and(|plane| plane.kept(place) < 0.0) {
                    return;
                }
                let seen = place[2] + BIAS_PX >= f64::from(layer.near[at]);
                lay(&mut colours[at], lines.colour, if seen { 1.0 } else { HIDDEN });
            });
        }
    }
}

fn lay(under: &mut [u8; 4], colour: [u8; 3], share: f32) {
    let [red, green, blue, cover] = *under;
    if cover == 0 {
        *under = [colour[0], colour[1], colour[2], if share < 1.0 { 128 } else { 255 }];
    } else {
        let [red, green, blue] = mixed([red, green, blue], colour, share);
        *under = [red, green, blue, cover];
    }
}

/// Every pixel within half a width of a segment, with the segment's place there. Walks along the longer way.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "kept within the picture")]
fn segment([from, to]: [[f64; 3]; 2], width: f64, layer: &Layer, each: &mut dyn FnMut(usize, [f64; 3])) {
    let long = usize::from((to[1] - from[1]).abs() > (to[0] - from[0]).abs());
    let (from, to) = if from[long] > to[long] { (to, from) } else { (from, to) };
    let run = to[long] - from[long];
    let other = 1 - long;
    let slope = if run > 0.0 { [0, 1, 2].map(|axis| (to[axis] - from[axis]) / run) } else { [0.0; 3] };
    let half = width / 2.0 * slope[other].hypot(1.0);
    let (most, most_other) = (layer.size[long] as f64 - 1.0, layer.size[other] as f64 - 1.0);
    // Half a width more at either end, so that lines that meet leave no gap.
    let (first, last) = ((from[long] - width / 2.0).floor().max(0.0), (to[long] + width / 2.0 - 0.5).floor().min(most));
    if first > last {
        return;
    }
    for step in first as usize..=last as usize {
        let along = (step as f64 + 0.5).clamp(from[long], to[long]) - from[long];
        let place = [0, 1, 2].map(|axis| from[axis] + slope[axis] * along);
        let (low, high) = ((place[other] - half - 0.5).ceil().max(0.0), (place[other] + half - 0.5).floor().min(most_other));
        if low > high {
            continue;
        }
        for aside in low as usize..=high as usize {
            let at = if long == 0 { aside * layer.size[0] + step } else { step * layer.size[0] + aside };
            each(at, place);
        }
    }
}
