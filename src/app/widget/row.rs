//! A row: a label at the left, a field or figure at the right, its unit in a column of its own.

use eframe::egui::{Align, Color32, Label, Layout, RichText, Ui, vec2};

use crate::app::theme::{ROW, Tokens};

/// Width of a row's label.
pub const LABEL: f32 = 150.0;
/// Width of a field.
pub const FIELD: f32 = 132.0;

/// A row of a label and what stands behind it.
pub fn row<R>(ui: &mut Ui, label: &str, tokens: &Tokens, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.horizontal(|ui| {
        ui.allocate_ui_with_layout(vec2(LABEL, ROW), Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(LABEL);
            ui.add(Label::new(RichText::new(label).color(tokens.ink)).truncate());
        });
        add(ui)
    })
    .inner
}

/// A word of a table, in a column of its own.
pub fn cell(ui: &mut Ui, words: &str, width: f32, size: f32, ink: Color32) {
    ui.allocate_ui(vec2(width, ROW.min(size + 8.0)), |ui| {
        ui.set_min_width(width);
        ui.add(Label::new(RichText::new(words).size(size).color(ink)).truncate());
    });
}

/// The widths of a row's columns within the room there is, less some for what stands besides: as they are, or all of them narrower alike.
#[must_use]
pub fn fitted<const N: usize>(ui: &Ui, widths: [f32; N], besides: f32) -> [f32; N] {
    let gaps = ui.spacing().item_spacing.x * N as f32;
    let share = (ui.available_width() - besides - gaps) / widths.iter().sum::<f32>();
    widths.map(|width| width * share.min(1.0))
}
