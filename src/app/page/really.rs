//! What was done beside what was planned then.

use eframe::egui::Ui;

use crate::app::cx::Cx;
use crate::app::theme::{ROW, size};
use crate::app::widget::mark::mark;
use crate::app::widget::row::{cell, fitted};
use crate::calc::Weight;
use crate::calc::against::Against;
use crate::paper::words::weight_words;
use crate::quantity::print;

/// Widths of the columns: what, planned, done, and that it is unusual.
const WIDE: [f32; 4] = [150.0, 110.0, 110.0, 80.0];

/// Shows the rows; what is further off than usual is marked.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, rows: &[Against]) {
    let tokens = cx.tokens;
    if rows.is_empty() {
        return;
    }
    ui.horizontal(|ui| {
        for (key, width) in ["done-what", "done-planned", "done-done"].into_iter().zip(fitted(ui, WIDE, 0.0)) {
            cell(ui, &cx.label(key), width, size::SMALL, tokens.ink2);
        }
    });
    for row in rows {
        ui.horizontal(|ui| {
            ui.set_height(ROW);
            let wide = fitted(ui, WIDE, 30.0);
            let said = |value: f64| print(value, row.kind, cx.style).to_string();
            cell(ui, &cx.label(row.label), wide[0], size::BODY, tokens.ink2);
            cell(ui, &row.planned.map_or_else(|| "–".to_owned(), said), wide[1], size::BODY, tokens.ink2);
            cell(ui, &said(row.done), wide[2], size::BODY, if row.unusual { tokens.caution } else { tokens.ink });
            if row.unusual {
                mark(ui, Weight::Caution, 13.0, &weight_words(Weight::Caution, cx.texts), &tokens);
                cell(ui, &cx.label("done-unusual"), wide[3], size::SMALL, tokens.caution);
            }
        });
    }
}
