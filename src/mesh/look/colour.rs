//! A layer in colours.

use super::layer::Layer;
use super::picture::{CUT, CUT_TWICE, NOTHING};
use super::{Paint, Tones};

/// A step in depth of so much of the picture's shorter side is an outline.
const STEP: f32 = 0.02;
/// How much of an outline's pixel is outline.
const OUTLINE: f32 = 0.72;
/// How much of its colour a face keeps that no light falls on.
const SHADE: f32 = 0.22;
/// How much the farthest parts fade.
const FADE: f32 = 0.34;

/// How a layer is coloured.
pub(super) struct Colouring<'a> {
    pub paint: &'a dyn Paint,
    pub tones: &'a Tones,
    /// Pixels of the picture's shorter side.
    pub shorter_px: f32,
    /// How far the pattern reaches behind its middle, in pixels.
    pub radius_px: f32,
}

impl Colouring<'_> {
    /// Red, green, blue and cover of every pixel of a layer; clear where nothing is.
    pub fn of(&self, layer: &Layer, into: &mut Vec<[u8; 4]>) {
        into.clear();
        into.resize(layer.id.len(), [0; 4]);
        for (at, colour) in into.iter_mut().enumerate() {
            if layer.id[at] == NOTHING {
                continue;
            }
            let mut rgb = self.face(layer, at);
            if self.is_outline(layer, at) {
                rgb = mixed(rgb, self.tones.outline, OUTLINE);
            }
            *colour = [rgb[0], rgb[1], rgb[2], 255];
        }
    }

    fn face(&self, layer: &Layer, at: usize) -> [u8; 3] {
        let id = layer.id[at];
        let lit = match id {
            CUT => return self.tones.cut,
            CUT_TWICE => return self.tones.cut_twice,
            _ => self.paint.colour(id).unwrap_or(if layer.inner[at] { self.tones.inner } else { self.tones.material }),
        };
        let light = SHADE + (1.0 - SHADE) * f32::from(layer.light[at]) / 247.0;
        let shaded = mixed([0; 3], lit, light.min(1.0));
        // Half of the pattern is nearer than its middle, and stays as it is.
        let behind = (-layer.near[at] / self.radius_px.max(1.0)).clamp(-0.4, 1.0);
        mixed(shaded, self.tones.far, FADE * (behind + 0.4) / 1.4)
    }

    /// Does the pattern end here, or does this part of it stand before another, or does a cut begin?
    fn is_outline(&self, layer: &Layer, at: usize) -> bool {
        let [across, down] = layer.size;
        let (row, column) = (at / across, at % across);
        let step = STEP * self.shorter_px;
        let cut = layer.id[at] >= CUT_TWICE;
        let beside = [
            (row > 0).then(|| at - across),
            (row + 1 < down).then(|| at + across),
            (column > 0).then(|| at - 1),
            (column + 1 < across).then(|| at + 1),
        ];
        // The nearer of two is the one that has the line; the face of a cut has it all round.
        beside.into_iter().flatten().any(|other| {
            layer.near[at] - layer.near[other] > step || (cut && layer.id[other] < CUT_TWICE) || (cut && layer.id[other] == NOTHING)
        })
    }
}

/// So much of the second.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "kept within a byte")]
pub(super) fn mixed(one: [u8; 3], other: [u8; 3], share: f32) -> [u8; 3] {
    [0, 1, 2].map(|at| (f32::from(one[at]) + (f32::from(other[at]) - f32::from(one[at])) * share + 0.5) as u8)
}
