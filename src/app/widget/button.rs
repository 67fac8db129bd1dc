//! Buttons: one filled a page for what comes next, outlined ones for the rest, and plain words that lead somewhere.

use eframe::egui::{self, Button, Color32, Response, RichText, Stroke, Ui, WidgetInfo, accesskit::Role};

use crate::app::theme::Tokens;

/// What comes next on a page.
pub fn main(ui: &mut Ui, words: &str, tokens: &Tokens) -> Response {
    ui.add(
        Button::new(RichText::new(words).color(tokens.paper))
            .fill(tokens.act)
            .stroke(Stroke::new(1.0, tokens.act))
            .min_size(egui::vec2(24.0, 32.0)),
    )
}

/// Anything else.
pub fn plain(ui: &mut Ui, words: &str, tokens: &Tokens) -> Response {
    outlined(ui, words, tokens, true)
}

/// What leads to help.
pub fn alarm(ui: &mut Ui, words: &str, tokens: &Tokens) -> Response {
    let button = Button::new(RichText::new(words).color(tokens.stop)).fill(Color32::TRANSPARENT).stroke(Stroke::new(1.0, tokens.stop));
    ui.add(button.min_size(egui::vec2(24.0, 28.0)))
}

/// The same, greyed while it cannot be done.
pub fn outlined(ui: &mut Ui, words: &str, tokens: &Tokens, enabled: bool) -> Response {
    let colour = if enabled { tokens.act } else { tokens.ink3 };
    let button = Button::new(RichText::new(words).color(colour)).fill(Color32::TRANSPARENT).stroke(Stroke::new(1.0, colour));
    ui.add_enabled(enabled, button.min_size(egui::vec2(24.0, 28.0)))
}

/// Words that lead somewhere.
pub fn link(ui: &mut Ui, words: &str, tokens: &Tokens) -> Response {
    ui.add(Button::new(RichText::new(words).color(tokens.act)).frame(false).min_size(egui::vec2(24.0, 24.0)))
}

/// The head of a section that folds away.
pub fn fold(ui: &mut Ui, words: &str, open: bool, tokens: &Tokens) -> Response {
    let sign = if open { "▾" } else { "▸" };
    let response =
        ui.add(Button::new(RichText::new(format!("{sign} {words}")).color(tokens.act)).frame(false).min_size(egui::vec2(24.0, 24.0)));
    response.widget_info(|| WidgetInfo::selected(Role::DisclosureTriangle, true, open, words));
    response
}
