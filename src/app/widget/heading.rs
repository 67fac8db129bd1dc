//! Titles and words on a page.

use eframe::egui::{FontId, Label, Response, RichText, Ui};

use crate::app::theme::{STEP, Tokens, bold, size};

/// The title of a page, with what it is about beside it in lighter ink.
pub fn title(ui: &mut Ui, words: &str, about: &str, tokens: &Tokens) {
    ui.horizontal(|ui| {
        ui.label(RichText::new(words).font(FontId::new(size::TITLE, bold())).color(tokens.ink));
        if !about.is_empty() {
            ui.add(Label::new(RichText::new(about).color(tokens.ink2)).truncate());
        }
    });
    ui.add_space(2.0 * STEP);
}

/// The head of a group of rows.
pub fn group(ui: &mut Ui, words: &str, tokens: &Tokens) -> Response {
    ui.add_space(2.0 * STEP);
    ui.label(RichText::new(words).size(12.5).color(tokens.ink2))
}

/// A sentence in lighter ink, wrapped.
pub fn says(ui: &mut Ui, words: &str, tokens: &Tokens) -> Response {
    ui.add(Label::new(RichText::new(words).color(tokens.ink2)).wrap())
}

/// What an empty page says: what it is for, and the first thing to do.
pub fn empty(ui: &mut Ui, what: &str, first: &str, tokens: &Tokens) {
    ui.add_space(4.0 * STEP);
    ui.add(Label::new(RichText::new(what).color(tokens.ink)).wrap());
    ui.add(Label::new(RichText::new(first).color(tokens.ink2)).wrap());
    ui.add_space(2.0 * STEP);
}
