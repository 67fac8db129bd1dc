//! The marks of findings: a shape for each weight, painted, so that colour is never the only sign.

use eframe::egui::{Color32, Pos2, Rect, Response, Sense, Shape, Stroke, Ui, Vec2, WidgetInfo, accesskit::Role};

use crate::app::theme::Tokens;
use crate::calc::Weight;

/// The colour of a weight.
#[must_use]
pub fn colour(weight: Weight, tokens: &Tokens) -> Color32 {
    match weight {
        Weight::Stop => tokens.stop,
        Weight::Caution => tokens.caution,
        Weight::Note => tokens.note,
    }
}

/// An octagon, a triangle or a ring in a square of `side`, named for those who hear the window.
pub fn mark(ui: &mut Ui, weight: Weight, side: f32, name: &str, tokens: &Tokens) -> Response {
    let (rect, response) = ui.allocate_exact_size(Vec2::splat(side), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, name));
    paint(ui, rect, weight, tokens);
    response
}

/// Paints a mark into a square.
pub fn paint(ui: &Ui, rect: Rect, weight: Weight, tokens: &Tokens) {
    let colour = colour(weight, tokens);
    let (centre, radius) = (rect.center(), rect.width() / 2.0);
    let around = |corners: u8, turn: f32| -> Vec<Pos2> {
        (0..corners)
            .map(|corner| {
                let angle = (f32::from(corner) / f32::from(corners)).mul_add(std::f32::consts::TAU, turn);
                centre + Vec2::angled(angle) * radius
            })
            .collect()
    };
    match weight {
        Weight::Stop => ui.painter().add(Shape::convex_polygon(around(8, std::f32::consts::TAU / 16.0), colour, Stroke::NONE)),
        Weight::Caution => {
            let top = Pos2::new(centre.x, rect.top());
            let foot = rect.bottom() - 0.08 * rect.height();
            let corners = vec![top, Pos2::new(rect.right(), foot), Pos2::new(rect.left(), foot)];
            ui.painter().add(Shape::convex_polygon(corners, colour, Stroke::NONE))
        }
        Weight::Note => ui.painter().add(Shape::circle_stroke(centre, radius - 1.0, Stroke::new(1.8, colour))),
    };
}
