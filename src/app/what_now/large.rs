//! Type for a card: never smaller than is read with a hand full, larger where the window has room.

use eframe::egui::{Button, Color32, FontFamily, FontId, Label, Response, RichText, Ui, vec2};

use crate::app::theme::{Tokens, bold};

/// Height of a window that takes the usual sizes.
const HEIGHT: f32 = 640.0;

/// How large the type is in this window.
#[derive(Debug, Clone, Copy)]
pub struct Large {
    /// Times its usual size, at least 1.
    pub scale: f32,
    /// Colours.
    pub tokens: Tokens,
}

impl Large {
    /// The name of a card, in points.
    pub const TITLE: f32 = 44.0;
    /// What comes first.
    pub const FIRST: f32 = 29.0;
    /// Everything that is to be done.
    pub const BODY: f32 = 24.0;
    /// Where it comes from, and the keys.
    pub const ASIDE: f32 = 17.0;

    /// As large as the window lets it be.
    pub fn of(ui: &Ui, tokens: Tokens) -> Self {
        Self { scale: (ui.available_height() / HEIGHT).clamp(1.0, 1.5), tokens }
    }

    fn put(&self, ui: &mut Ui, words: &str, (size, family): (f32, FontFamily), ink: Color32) {
        ui.add(Label::new(RichText::new(words).font(FontId::new(size * self.scale, family)).color(ink)).wrap());
    }

    /// Bold words, over several lines where one does not take them.
    pub fn bold(&self, ui: &mut Ui, words: &str, size: f32, ink: Color32) {
        self.put(ui, words, (size, bold()), ink);
    }

    /// Plain words.
    pub fn plain(&self, ui: &mut Ui, words: &str, size: f32, ink: Color32) {
        self.put(ui, words, (size, FontFamily::Proportional), ink);
    }

    /// A sentence beside its number or sign.
    pub fn beside(&self, ui: &mut Ui, sign: &str, words: &str, ink: Color32) {
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = 0.0;
            ui.allocate_ui(vec2(Self::BODY * self.scale * 1.1, Self::BODY * self.scale), |ui| {
                ui.set_width(Self::BODY * self.scale * 1.1);
                self.bold(ui, sign, Self::BODY, ink);
            });
            self.plain(ui, words, Self::BODY, self.tokens.ink);
        });
    }

    /// Words that can be pressed.
    pub fn link(&self, ui: &mut Ui, words: &str) -> Response {
        let words = RichText::new(words).size(Self::ASIDE).color(self.tokens.act);
        ui.add(Button::new(words).frame(false).min_size(vec2(24.0, 28.0)))
    }
}
