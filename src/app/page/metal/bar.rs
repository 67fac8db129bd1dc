//! A flask's charge as a bar of its parts, to scale.

use eframe::egui::{Rect, RichText, Sense, Ui, WidgetInfo, accesskit::Role, pos2, vec2};

use crate::app::cx::Cx;
use crate::app::widget::figure::{Look, figure, printed};
use crate::app::widget::row::row;
use crate::calc::Id;
use crate::job::FlaskId;

/// Shows the bar, and its parts in rows with a square of their colour.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, flask: FlaskId) {
    let Some(figures) = cx.computed.report.flasks.iter().find(|figures| figures.id == flask).cloned() else { return };
    let tokens = cx.tokens;
    let metal = &figures.metal;
    ui.label(RichText::new(crate::app::names::flask(cx, flask)).color(tokens.ink));
    let parts: [(&str, Id); 3] = [("melt-tree", metal.tree), ("melt-button", metal.button), ("melt-reserve", metal.reserve)];
    let grams: Option<Vec<f64>> = parts.iter().map(|(_, id)| cx.computed.book.number(*id)).collect();
    if let (Some(grams), Some(all)) = (grams, cx.computed.book.number(metal.on_balance).filter(|all| *all > 0.0)) {
        let width = ui.available_width().min(460.0);
        let (rect, response) = ui.allocate_exact_size(vec2(width, 18.0), Sense::hover());
        let spoken: Vec<String> = parts
            .iter()
            .map(|(key, id)| {
                let (number, unit, _) = printed(cx, *id, false);
                format!("{} {number} {unit}", cx.label(key))
            })
            .collect();
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, spoken.join(", ")));
        let painter = ui.painter();
        // What is left over to the end of the bar is lost in the melt, or rounding up on the balance.
        painter.rect_filled(rect, 2, tokens.rule);
        let mut left = rect.left();
        for (part, colour) in grams.iter().zip(tokens.series()) {
            #[allow(clippy::cast_possible_truncation, reason = "a width on the screen")]
            let right = left + rect.width() * (part / all) as f32;
            painter.rect_filled(Rect::from_min_max(pos2(left, rect.top()), pos2(right, rect.bottom())), 2, colour);
            left = right;
        }
    }
    for ((key, id), colour) in parts.into_iter().zip(tokens.series()) {
        let square = |ui: &mut Ui| {
            let (rect, _) = ui.allocate_exact_size(vec2(10.0, 10.0), Sense::hover());
            ui.painter().rect_filled(rect, 2, colour);
        };
        ui.horizontal(|ui| {
            square(ui);
            row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(150.0)));
        });
    }
    for (key, id) in [("melt-loss", metal.loss), ("melt-on-balance", metal.on_balance)] {
        ui.horizontal(|ui| {
            ui.add_space(18.0);
            row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(150.0)));
        });
    }
}
