//! Type that is read at two metres, and that shrinks before anything is cut.

use eframe::egui::{
    Button, Color32, FontId, Id, Label, LayerId, Order, Rect, Response, RichText, Sense, Stroke, StrokeKind, Ui, WidgetInfo,
    accesskit::Role, text::LayoutJob, vec2,
};

use crate::app::cx::Cx;
use crate::app::theme::{Tokens, bold};
use crate::app::widget::mark::mark;
use crate::calc::Weight;
use crate::paper::words::weight_words;

/// Height that the largest step needs at full size.
const HEIGHT: f32 = 610.0;

/// How large type is in this window.
#[derive(Debug, Clone, Copy)]
pub struct Large {
    /// Times its usual size.
    pub scale: f32,
    /// Colours.
    pub tokens: Tokens,
}

impl Large {
    /// As large as the window lets it be, with `more` height needed at full size beside the step.
    pub fn of(ui: &Ui, tokens: Tokens, more: f32) -> Self {
        Self { scale: (ui.available_height() / (HEIGHT + more)).clamp(0.4, 1.5), tokens }
    }

    /// A size at which a text is no wider than `width`.
    fn fitting(&self, ui: &Ui, words: &str, font: &FontId, width: f32) -> f32 {
        let wide = ui.fonts_mut(|fonts| fonts.layout_no_wrap(words.to_owned(), font.clone(), Color32::PLACEHOLDER)).size().x;
        if wide <= width { font.size } else { (font.size * width / wide * 0.99).floor().max(8.0) }
    }

    fn put(&self, ui: &mut Ui, words: &str, font: FontId, ink: Color32, width: f32) -> Response {
        let size = self.fitting(ui, words, &font, width);
        let mut job = LayoutJob::simple_singleline(words.to_owned(), FontId::new(size, font.family), ink);
        job.wrap.max_width = f32::INFINITY;
        ui.add(Label::new(job).extend())
    }

    /// One bold line over the whole width.
    pub fn bold(&self, ui: &mut Ui, words: &str, size: f32, ink: Color32) {
        let width = ui.available_width();
        self.put(ui, words, FontId::new(size * self.scale, bold()), ink, width);
    }

    /// One plain line over the whole width.
    pub fn plain(&self, ui: &mut Ui, words: &str, size: f32, ink: Color32) {
        let width = ui.available_width();
        self.put(ui, words, FontId::proportional(size * self.scale), ink, width);
    }

    /// One plain line no wider than `width`.
    pub fn within(&self, ui: &mut Ui, words: &str, size: f32, ink: Color32, width: f32) {
        self.put(ui, words, FontId::proportional(size * self.scale), ink, width);
    }

    /// A sentence that may take several lines.
    pub fn wrapped(&self, ui: &mut Ui, words: &str, size: f32, ink: Color32) {
        ui.add(Label::new(RichText::new(words).size(size * self.scale).color(ink)).wrap());
    }

    /// Words that can be clicked.
    pub fn link(&self, ui: &mut Ui, words: &str, size: f32) -> Response {
        let size = size * self.scale.max(0.7);
        ui.add(Button::new(RichText::new(words).size(size).color(self.tokens.act)).frame(false).min_size(vec2(24.0, 24.0)))
    }

    /// The running clock and the figures side by side, each under its label.
    pub fn band(&self, ui: &mut Ui, runs: Option<&str>, columns: &[(String, String)]) {
        if runs.is_none() && columns.is_empty() {
            return;
        }
        let gap = 24.0 * self.scale;
        let places = columns.len() as f32 + if runs.is_some() { 1.5 } else { 0.0 };
        let each = ui.available_width() / places - gap;
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = gap;
            if let Some(runs) = runs {
                ui.vertical(|ui| {
                    ui.set_width(1.5 * each);
                    self.put(ui, runs, FontId::new(124.0 * self.scale, bold()), self.tokens.act, 1.5 * each);
                });
            }
            for (label, number) in columns {
                ui.vertical(|ui| {
                    ui.set_width(each);
                    ui.add_space(if runs.is_some() { 14.0 * self.scale } else { 0.0 });
                    self.put(ui, label, FontId::proportional(24.0 * self.scale), self.tokens.ink2, each);
                    let size = if runs.is_some() { 64.0 } else { 96.0 };
                    self.put(ui, number, FontId::new(size * self.scale, bold()), self.tokens.ink, each);
                });
            }
        });
    }

    /// A sign across the room that a step's time is over: a frame round the window, which comes and goes, and what it means, which stays.
    pub fn alarm(&self, ui: &mut Ui, words: &str, shown: bool) {
        self.bold(ui, words, 64.0, self.tokens.stop);
        if shown {
            let all = ui.ctx().content_rect().shrink(10.0);
            let painter = ui.ctx().layer_painter(LayerId::new(Order::Foreground, Id::unique("bench over")));
            painter.rect_stroke(all, 0, Stroke::new(20.0, self.tokens.stop), StrokeKind::Middle);
        }
    }

    /// How much of a step's time has run.
    pub fn bar(&self, ui: &mut Ui, share: f32, words: &str) {
        let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 26.0 * self.scale), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::ProgressIndicator, true, words));
        let painter = ui.painter();
        painter.rect_filled(rect, 3, self.tokens.panel);
        let filled = Rect::from_min_size(rect.min, vec2(rect.width() * share, rect.height()));
        painter.rect_filled(filled, 3, if share < 1.0 { self.tokens.act } else { self.tokens.caution });
    }

    /// A caution of the trade.
    pub fn caution(&self, ui: &mut Ui, cx: &Cx<'_>, words: &str) {
        ui.horizontal_top(|ui| {
            let side = 24.0 * self.scale;
            ui.add_space(2.0);
            mark(ui, Weight::Caution, side, &weight_words(Weight::Caution, cx.texts), &self.tokens);
            ui.add(Label::new(RichText::new(words).size(24.0 * self.scale).color(self.tokens.ink2)).wrap());
        });
    }
}
