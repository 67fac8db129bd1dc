//! What is drawn over the picture: the millimetre rule, the axes of the file, where the cut is.

use eframe::egui::{Align2, FontFamily, FontId, Painter, Pos2, Rect, Stroke, Vec2, pos2, vec2};

use super::{Dress, Pin};
use crate::app::theme::size;
use crate::mesh::look::{Picture, Projection};
use crate::quantity::THIN;

/// Free round what is drawn over the picture, in points.
const ASIDE: f32 = 12.0;
/// The rule is at most so much of the picture's width.
const RULE_SHARE: f64 = 0.3;
/// Length of an axis, in points.
const AXIS: f32 = 20.0;

/// The longest round length, 1, 2 or 5 of a power of ten, that is no longer than this.
fn round_length(most: f64) -> f64 {
    let power = 10_f64.powf(most.log10().floor());
    [5.0, 2.0].into_iter().map(|times| times * power).find(|length| *length <= most * (1.0 + 1e-9)).unwrap_or(power)
}

/// Draws the rule at the lower left and the axes at the lower right.
pub(super) fn overlay(painter: &Painter, dress: &Dress, rect: Rect, onto: &Projection, pixels_per_point: f32) {
    rule(painter, dress, rect, onto.px_per_mm() / f64::from(pixels_per_point));
    axes(painter, dress, rect, onto);
}

fn font() -> FontId {
    FontId::new(size::SMALL, FontFamily::Proportional)
}

#[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
fn rule(painter: &Painter, dress: &Dress, rect: Rect, points_per_mm: f64) {
    let mm = round_length(f64::from(rect.width()) * RULE_SHARE / points_per_mm);
    let length = (mm * points_per_mm) as f32;
    if !(length.is_finite() && length > 4.0) {
        return;
    }
    let stroke = Stroke::new(1.5, dress.tokens.ink2);
    let from = pos2(rect.left() + ASIDE, rect.bottom() - ASIDE);
    painter.line_segment([from, from + vec2(length, 0.0)], stroke);
    // Whole millimetres, or tenths of the rule, as far as they can be told apart.
    let parts: u8 = 10;
    for part in 0..=parts {
        let high = if part == 0 || part == parts {
            8.0
        } else if part == 5 {
            6.0
        } else {
            4.0
        };
        let at = from + vec2(length * f32::from(part) / f32::from(parts), 0.0);
        painter.line_segment([at, at - vec2(0.0, high)], Stroke::new(1.0, dress.tokens.ink2));
    }
    let figure = mm.to_string();
    let words = format!("{}{THIN}mm", if dress.comma { figure.replace('.', ",") } else { figure });
    painter.text(from + vec2(0.0, -10.0), Align2::LEFT_BOTTOM, words, font(), dress.tokens.ink2);
}

#[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
fn axes(painter: &Painter, dress: &Dress, rect: Rect, onto: &Projection) {
    let from = pos2(rect.right() - ASIDE - AXIS - 8.0, rect.bottom() - ASIDE - AXIS - 6.0);
    for ([right, up, near], name) in onto.axes_seen().into_iter().zip(["x", "y", "z"]) {
        let way = vec2(right as f32, -up as f32);
        // What points away is fainter.
        let colour = if near < -0.05 { dress.tokens.edge } else { dress.tokens.ink2 };
        let to: Pos2 = from + way * AXIS;
        painter.line_segment([from, to], Stroke::new(1.5, colour));
        // An axis that points at the eye, or away, is only a point, and has its name beside it.
        let aside = if way.length() < 0.2 { vec2(-9.0, 9.0) } else { way.normalized() * 8.0 };
        painter.text(to + aside, Align2::CENTER_CENTER, name, font(), colour);
    }
}

/// A pin's radius in points.
const PIN: f32 = 4.5;
/// A pin lies on the surface, whose pixels are as deep as they are wide.
const PIN_PX: f64 = 2.0;

/// Points places out, those on the far side fainter.
#[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
pub(super) fn pins(painter: &Painter, dress: &Dress, rect: Rect, picture: &Picture, pins: &[Pin], pixels_per_point: f32) {
    let onto = picture.projection();
    let tokens = &dress.tokens;
    for pin in pins {
        let [x, y, _] = onto.place(pin.at_mm);
        let at = rect.min + vec2(x as f32, y as f32) / pixels_per_point;
        if !rect.shrink(PIN).contains(at) {
            continue;
        }
        let hidden = picture.hides(pin.at_mm, 2.0 * PIN_PX / onto.px_per_mm());
        let ink = if hidden { tokens.edge } else { tokens.act };
        let fill = if pin.is_chosen { ink } else { tokens.paper };
        painter.circle(at, PIN, fill, Stroke::new(2.0, ink));
        let words = painter.layout_no_wrap(pin.words.clone(), font(), if hidden { tokens.ink2 } else { tokens.ink });
        // On a ground of its own, since what is under it may be of any colour; left of the pin where there is no room to its right.
        let wide = words.size().x + 6.0;
        let left = if at.x + PIN + 3.0 + wide > rect.right() { at.x - PIN - 3.0 - wide } else { at.x + PIN + 3.0 };
        let ground = Rect::from_min_size(pos2(left, at.y - 0.5 * words.size().y - 1.0), words.size() + vec2(6.0, 2.0));
        painter.rect_filled(ground, 3.0, tokens.paper.gamma_multiply(0.85));
        painter.galley(ground.min + vec2(3.0, 1.0), words, tokens.ink);
    }
}

/// Says where the cut is, at the upper left.
pub(super) fn cut_words(painter: &Painter, dress: &Dress, rect: Rect, words: &str) {
    painter.text(rect.min + Vec2::splat(ASIDE - 2.0), Align2::LEFT_TOP, words, font(), dress.tokens.ink2);
}

#[cfg(test)]
mod tests {
    use super::round_length;

    #[test]
    fn rules_are_one_two_or_five_of_a_power_of_ten() {
        for (most, length) in
            [(1.0, 1.0), (1.99, 1.0), (2.0, 2.0), (4.9, 2.0), (5.0, 5.0), (9.99, 5.0), (0.37, 0.2), (0.05, 0.05), (730.0, 500.0)]
        {
            assert!((round_length(most) / length - 1.0_f64).abs() < 1e-9, "{most}");
        }
    }
}
