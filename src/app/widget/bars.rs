//! A histogram: bars over a scale of lengths, with a line at what is asked for.

use eframe::egui::{Align2, FontId, Rect, Response, Sense, Stroke, Ui, WidgetInfo, accesskit, pos2, vec2};

use crate::app::theme::{Tokens, size};

/// One bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// From here on the scale.
    pub from: f64,
    /// To here.
    pub to: f64,
    /// How much; bars are drawn in proportion.
    pub much: f64,
}

/// What is drawn beside the bars.
#[derive(Debug, Clone, Copy)]
pub struct Around<'a> {
    /// A line across at this place of the scale: what lies left of it is drawn as a Caution.
    pub least: Option<f64>,
    /// Printed under the scale's beginning and end.
    pub ends: [&'a str; 2],
    /// Said to those who hear the window.
    pub says: &'a str,
}

/// Room under the bars for the ends of the scale.
const UNDER: f32 = 18.0;

/// Draws the bars as wide as its place.
pub fn bars(ui: &mut Ui, bars: &[Bar], around: &Around<'_>, height: f32, tokens: &Tokens) -> Response {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(accesskit::Role::Image, true, around.says));
    let (Some(first), Some(last)) = (bars.first(), bars.last()) else { return response };
    let most = bars.iter().map(|bar| bar.much).fold(0.0, f64::max);
    let (from, over) = (first.from, last.to - first.from);
    if !ui.is_rect_visible(rect) || most <= 0.0 || over <= 0.0 {
        return response;
    }
    let floor = rect.bottom() - UNDER;
    #[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
    let across = |at: f64| rect.left() + rect.width() * ((at - from) / over) as f32;
    let painter = ui.painter_at(rect);
    for bar in bars {
        // The smallest share is still seen.
        #[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
        let up = if bar.much > 0.0 { ((bar.much / most) as f32 * (rect.height() - UNDER - 4.0)).max(2.0) } else { 0.0 };
        let thin = around.least.is_some_and(|least| bar.from < least);
        let place = Rect::from_min_max(pos2(across(bar.from) + 0.5, floor - up), pos2(across(bar.to) - 0.5, floor));
        painter.rect_filled(place, 0.0, if thin { tokens.caution } else { tokens.core });
    }
    painter.hline(rect.x_range(), floor, Stroke::new(1.0, tokens.edge));
    if let Some(least) = around.least.filter(|least| (from..=from + over).contains(least)) {
        painter.vline(across(least), rect.top()..=floor, Stroke::new(1.0, tokens.caution));
    }
    let font = FontId::proportional(size::SMALL);
    painter.text(pos2(rect.left(), rect.bottom()), Align2::LEFT_BOTTOM, around.ends[0], font.clone(), tokens.ink3);
    painter.text(pos2(rect.right(), rect.bottom()), Align2::RIGHT_BOTTOM, around.ends[1], font, tokens.ink3);
    response
}
