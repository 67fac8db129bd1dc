//! A list of trees or flasks, one of which is chosen: a row each, with its worst mark. Only the rows in sight are made.

use eframe::egui::{
    Align2, EventFilter, FontId, Id, InputState, Key, Modifiers, Rect, Response, ScrollArea, Sense, Stroke, StrokeKind, Ui, WidgetInfo,
    accesskit::Role, pos2, vec2,
};

use crate::app::cx::Cx;
use crate::app::theme::{bold, size};
use crate::app::widget::mark;
use crate::calc::Weight;
use crate::job::Place;
use crate::paper::words::weight_words;

/// Height of a row.
const HEIGHT: f32 = 28.0;
/// Rows in sight at once.
const ROWS: f32 = 6.0;

/// A row's words, by column.
#[derive(Debug, Clone, Default)]
pub struct Line {
    /// What it is called.
    pub name: String,
    /// What is said beside it.
    pub about: Vec<String>,
    /// Its worst mark.
    pub worst: Option<Weight>,
    /// Is it the chosen one?
    pub chosen: bool,
}

/// Shows `count` rows; gives the place of the one that was chosen. Arrow keys go from row to row once one has the focus.
pub fn list(ui: &mut Ui, cx: &Cx<'_>, salt: &str, count: usize, line: impl Fn(usize) -> Line) -> Option<usize> {
    let mut chosen = None;
    ui.spacing_mut().item_spacing.y = 0.0;
    let id = |place: usize| Id::unique(("row of a list", salt, place));
    let wanted = Id::unique(("wanted row of a list", salt));
    // A row out of sight has to be made before it can take the focus.
    let going: Option<usize> = ui.data_mut(|data| data.remove_temp(wanted));
    let mut area = ScrollArea::vertical().id_salt(salt).max_height(ROWS * HEIGHT).auto_shrink([false, true]);
    if let Some(place) = going {
        area = area.vertical_scroll_offset((place as f32 - ROWS / 2.0).max(0.0) * HEIGHT);
    }
    area.show_rows(ui, HEIGHT, count, |ui, range| {
        for place in range {
            let response = row(ui, cx, &line(place), id(place));
            if going == Some(place) {
                response.request_focus();
            }
            if response.clicked() {
                response.request_focus();
                chosen = Some(place);
            } else if response.has_focus()
                && let Some(next) = ui.input_mut(|input| step(input, place, count))
            {
                chosen = Some(next);
                ui.data_mut(|data| data.insert_temp(wanted, next));
                ui.request_repaint();
            }
        }
    });
    chosen
}

/// Where an arrow key leads from a place.
fn step(input: &mut InputState, place: usize, count: usize) -> Option<usize> {
    if input.consume_key(Modifiers::NONE, Key::ArrowDown) {
        Some(place + 1).filter(|next| *next < count)
    } else if input.consume_key(Modifiers::NONE, Key::ArrowUp) {
        place.checked_sub(1)
    } else {
        None
    }
}

fn row(ui: &mut Ui, cx: &Cx<'_>, line: &Line, id: Id) -> Response {
    let tokens = &cx.tokens;
    let (_, rect) = ui.allocate_space(vec2(ui.available_width().min(640.0), HEIGHT));
    let response = ui.interact(rect, id, Sense::click());
    if response.has_focus() {
        let filter = EventFilter { vertical_arrows: true, ..EventFilter::default() };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
    }
    let mut spoken = line.name.clone();
    for about in line.about.iter().filter(|about| !about.is_empty()) {
        spoken.push_str(", ");
        spoken.push_str(about);
    }
    if let Some(weight) = line.worst {
        spoken.push_str(", ");
        spoken.push_str(&weight_words(weight, cx.texts));
    }
    response.widget_info(|| WidgetInfo::selected(Role::Tab, true, line.chosen, &spoken));
    let painter = ui.painter();
    if line.chosen {
        painter.rect_filled(rect, 3, tokens.act_ground);
    }
    if response.hovered() || response.has_focus() {
        painter.rect_stroke(rect.shrink(1.0), 3, Stroke::new(1.0, tokens.act), StrokeKind::Inside);
    }
    let font = if line.chosen { FontId::new(size::BODY, bold()) } else { FontId::proportional(size::BODY) };
    let column = (rect.width() - 34.0) / (line.about.len() as f32 + 1.0);
    let words = std::iter::once((&line.name, font, tokens.ink))
        .chain(line.about.iter().map(|about| (about, FontId::proportional(size::BODY - 1.0), tokens.ink2)));
    let mut left = rect.left() + 8.0;
    for (words, font, ink) in words {
        let cell = Rect::from_min_size(pos2(left, rect.top()), vec2(column - 8.0, HEIGHT));
        let mut job = eframe::egui::text::LayoutJob::simple_singleline(words.clone(), font, ink);
        job.wrap = eframe::egui::text::TextWrapping::truncate_at_width(cell.width());
        let galley = ui.fonts_mut(|fonts| fonts.layout_job(job));
        let at = Align2::LEFT_CENTER.align_size_within_rect(galley.size(), cell).min;
        painter.galley(at, galley, ink);
        left += column;
    }
    if let Some(weight) = line.worst {
        mark::paint(ui, Rect::from_center_size(pos2(rect.right() - 16.0, rect.center().y), vec2(13.0, 13.0)), weight, tokens);
    }
    response
}

/// The heaviest finding at places that nobody answers for.
pub fn worst(cx: &Cx<'_>, here: impl Fn(Place) -> bool) -> Option<Weight> {
    let found = cx.computed.report.findings.iter().filter(|finding| finding.accepted.is_none() && here(finding.place));
    found.map(|finding| finding.kind.weight).min()
}
