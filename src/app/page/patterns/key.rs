//! What the colours on a form mean.

use eframe::egui::{Color32, Label, Rect, RichText, Sense, Stroke, Ui, WidgetInfo, accesskit::Role, pos2, vec2};

use super::form::no_sprue_colours;
use crate::app::cx::Cx;
use crate::quantity::{Kind, print};

/// A patch of colour.
const PATCH: f32 = 12.0;

/// The colour of walls too thin, then those from the least to the heaviest, `scale_mm`.
pub fn walls(ui: &mut Ui, cx: &Cx<'_>, scale_mm: &[f64; 2], colours: &[Color32]) {
    let tokens = cx.tokens;
    let [least, heaviest] = scale_mm.map(|mm| print(mm, Kind::Length, cx.style).to_string());
    let said =
        cx.say("patterns-key-says", &[("least", least.clone().into()), ("from", least.clone().into()), ("to", heaviest.clone().into())]);
    let Some((thin, scale)) = colours.split_first() else { return };
    ui.horizontal(|ui| {
        patch(ui, *thin, tokens.edge);
        ui.add(Label::new(RichText::new(cx.say("patterns-key-under", &[("least", least.clone().into())])).color(tokens.ink2)));
    });
    ui.horizontal(|ui| {
        ui.add(Label::new(RichText::new(least).color(tokens.ink2)));
        let (rect, response) = ui.allocate_exact_size(vec2(PATCH * scale.len() as f32, PATCH), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &said));
        for (at, colour) in scale.iter().enumerate() {
            let from = pos2(rect.left() + PATCH * at as f32, rect.top());
            ui.painter().rect_filled(Rect::from_min_size(from, vec2(PATCH, PATCH)), 0.0, *colour);
        }
        ui.add(Label::new(RichText::new(heaviest).color(tokens.ink2)));
    });
}

/// The colours of places where no sprue may stand.
pub fn no_sprue(ui: &mut Ui, cx: &Cx<'_>) {
    let tokens = cx.tokens;
    ui.add(Label::new(RichText::new(cx.label("patterns-key-places")).color(tokens.ink2)));
    ui.horizontal(|ui| {
        for (key, colour) in ["patterns-key-texture", "patterns-key-seat", "patterns-key-mark"].into_iter().zip(no_sprue_colours(&tokens)) {
            patch(ui, colour, tokens.edge);
            ui.add(Label::new(RichText::new(cx.label(key)).color(tokens.ink2)));
        }
    });
}

fn patch(ui: &mut Ui, colour: Color32, edge: Color32) {
    let (rect, _) = ui.allocate_exact_size(vec2(PATCH, PATCH), Sense::hover());
    ui.painter().rect(rect, 2.0, colour, Stroke::new(1.0, edge), eframe::egui::StrokeKind::Inside);
}
