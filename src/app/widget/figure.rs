//! A computed figure: it sits on the paper with a dotted line under it, and opens its working.

use eframe::egui::{Align2, Color32, FontId, Id as UiId, Rect, Response, Sense, Shape, Ui, WidgetInfo, accesskit::Role, pos2, vec2};

use crate::app::cx::Cx;
use crate::app::theme::{ROW, bold, size};
use crate::calc::Id;
use crate::paper::words::{figure_title, is_fine, moment_of, moment_words, print_figure, with_currency};
use crate::quantity::{Kind, Printed, Style, print};

/// How a figure stands on the page.
#[derive(Debug, Clone, Copy)]
pub struct Look {
    /// Size of the number.
    pub size: f32,
    /// Width of the whole, the unit's column included.
    pub width: f32,
    /// Weights of powder are whole grams.
    pub powder: bool,
    /// At the right, for rows; at the left, where it stands alone.
    pub right: bool,
}

impl Look {
    /// In a row.
    pub const ROW: Self = Self { size: size::BODY, width: super::row::FIELD, powder: false, right: true };
    /// Alone and large.
    pub const LARGE: Self = Self { size: size::LARGE, width: 240.0, powder: false, right: false };

    /// For powder and water.
    #[must_use]
    pub const fn powder(self) -> Self {
        Self { powder: true, ..self }
    }

    /// With another width.
    #[must_use]
    pub const fn width(self, width: f32) -> Self {
        Self { width, ..self }
    }
}

/// How far signs reach below their line, as a share of their size: from the typeface's own table (hhea descent 483 of 2048 units).
const DESCENT: f32 = 0.236;

/// Width kept for a unit, so that numbers of a column end at one line.
const UNIT: f32 = 36.0;

/// Sizes go into a slicer and densities are weighed for their last digit: both stand finer than others, and their shares in per cent.
fn style_of(cx: &Cx<'_>, key: &str, kind: Kind, powder: bool) -> Style {
    if powder {
        return cx.style.for_powder();
    }
    let fine =
        ["size.", "weighing.", "mould."].iter().any(|page| key.starts_with(page)) || key == "pattern.implied-density" || is_fine(key);
    match (fine, kind) {
        (false, _) => *cx.style,
        (true, Kind::Ratio) => Style { units: cx.style.units.with(kind, "%").unwrap_or(cx.style.units), ..*cx.style },
        // Weights are as fine as their balance everywhere.
        (true, _) => cx.style.finer(),
    }
}

/// Number and unit of a figure; the words of what is the matter with it where it has no number.
#[must_use]
pub fn printed(cx: &Cx<'_>, id: Id, powder: bool) -> (String, String, bool) {
    let book = &cx.computed.book;
    let kind = book.kind(id);
    let style = style_of(cx, book.figure(id).origin.key(), kind, powder);
    let Some(number) = book.number(id) else { return (print_figure(book, id, &cx.words()), String::new(), false) };
    match kind {
        Kind::Moment => {
            let words = moment_of(number, &cx.setting.zone).map_or_else(String::new, |at| moment_words(at, cx.texts));
            (words, String::new(), true)
        }
        Kind::Money => (print_figure(book, id, &cx.words()), String::new(), true),
        Kind::PricePerGram => {
            let Printed { number, unit } = print(number, kind, &style);
            (number, with_currency(String::new(), unit, cx.words().currency).trim_start().to_owned(), true)
        }
        _ => {
            let Printed { number, unit } = print(number, kind, &style);
            (number, unit.to_owned(), true)
        }
    }
}

/// Shows a figure. A click or the focus opens its working.
pub fn figure(ui: &mut Ui, cx: &mut Cx<'_>, id: Id, look: Look) -> Response {
    let (number, unit, known) = printed(cx, id, look.powder);
    let title = figure_title(&cx.computed.book.figure(id), cx.texts);
    let height = if look.size > size::BODY { look.size * 1.15 } else { ROW };
    let (_, rect) = ui.allocate_space(vec2(look.width, height));
    // By the figure itself and its place on the page, so that the focus stays with it when the page is laid out anew.
    let nth = cx.drawn.entry(id).and_modify(|nth| *nth += 1).or_insert(0);
    let response = ui.interact(rect, UiId::unique(("figure", id, *nth, cx.view.page)), Sense::click());
    let chosen = cx.is_chosen(id);
    let spoken = format!("{number} {unit}").trim_end().to_owned();
    response.widget_info(|| WidgetInfo {
        current_text_value: Some(spoken.clone()),
        ..WidgetInfo::selected(Role::Button, true, chosen, &title)
    });
    if ui.is_rect_visible(rect) {
        paint(ui, cx, rect, (&number, &unit, known), look, chosen || response.has_focus());
    }
    // Who goes over it by keys reads its working where the pane is open; a click opens it.
    if response.clicked() || (response.gained_focus() && !chosen) {
        cx.choose(id, response.clicked());
        // Enter leads into the pane: on the way there by Tab lie other figures.
        cx.view.to_working = response.clicked() && !ui.input(|input| input.pointer.any_click());
    }
    response.on_hover_text(title)
}

fn paint(ui: &Ui, cx: &Cx<'_>, rect: Rect, (number, unit, known): (&str, &str, bool), look: Look, chosen: bool) {
    let tokens = &cx.tokens;
    let painter = ui.painter();
    if chosen {
        painter.rect_filled(rect, 3, tokens.act_ground);
    }
    let ink = match (known, chosen) {
        (false, _) => tokens.ink2,
        (true, true) => tokens.act,
        (true, false) => tokens.ink,
    };
    let font = if known { FontId::new(look.size, bold()) } else { FontId::proportional(size::BODY) };
    let unit_size = if look.size > size::BODY { 15.0 } else { 12.0 };
    // Words that are too long for their place are cut at the end, and whole in the working pane.
    let galley = |text: &str, font: FontId, colour: Color32, width: f32| {
        let mut job = eframe::egui::text::LayoutJob::simple_singleline(text.to_owned(), font, colour);
        job.wrap = eframe::egui::text::TextWrapping::truncate_at_width(width);
        ui.fonts_mut(|fonts| fonts.layout_job(job))
    };
    let room = if known { rect.width() - if look.right { UNIT } else { 0.0 } } else { rect.width() - 8.0 };
    let words = galley(number, font, ink, room);
    let width = words.size().x;
    let left = match (look.right, known) {
        (true, true) => rect.right() - UNIT - width,
        (true, false) => rect.right() - 8.0 - width,
        (false, _) => rect.left(),
    };
    let top = rect.center().y - words.size().y / 2.0;
    let under = top + words.size().y - 1.0;
    painter.galley(pos2(left, top), words, ink);
    if known && width > 0.0 {
        let line = [pos2(left, under), pos2(left + width, under)];
        painter.extend(Shape::dotted_line(&line, tokens.ink3, 3.0, 0.6));
    }
    if !unit.is_empty() {
        // Number and unit stand on one line: the larger of them reaches further below it.
        let at = pos2(left + width + 6.0, under + 1.0 - DESCENT * (look.size - unit_size));
        painter.text(at, Align2::LEFT_BOTTOM, unit, FontId::proportional(unit_size), tokens.ink3);
    }
}
