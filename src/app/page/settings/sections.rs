//! Rows of several fields under one head, as tables are written on paper.

use eframe::egui::{Align, Label, Layout, RichText, Ui, vec2};

use crate::app::theme::{Tokens, size};

/// The head over columns of the given widths.
pub fn heads(ui: &mut Ui, columns: &[(String, f32)], tokens: &Tokens) {
    ui.horizontal(|ui| {
        for (words, width) in columns {
            ui.allocate_ui_with_layout(vec2(*width, 16.0), Layout::left_to_right(Align::Center), |ui| {
                ui.set_min_width(*width);
                ui.add(Label::new(RichText::new(words).size(size::SMALL).color(tokens.ink2)).truncate());
            });
        }
    });
}

/// A label over a field.
pub fn above<R>(ui: &mut Ui, label: &str, width: f32, tokens: &Tokens, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.vertical(|ui| {
        ui.set_width(width);
        ui.label(RichText::new(label).size(size::SMALL).color(tokens.ink2));
        add(ui)
    })
    .inner
}
