//! A shaded view of a pattern that is turned, zoomed and cut by hand or by keys, with a millimetre rule.
//!
//! The picture is worked out by [`crate::mesh::look`]: on the window's thread while something moves, then finely on a thread of its own. It is
//! worked out again only when the camera, the cut, the size, the theme, the paint or the edges changed.

mod hands;
mod overlay;
mod sight;
mod tools;

use std::sync::Arc;

use eframe::egui::{self, Id, Rect, Response, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo, accesskit::Role, mutex::Mutex, pos2};

use self::sight::{Ask, Sight};
use crate::app::cx::Cx;
use crate::app::theme::{Tokens, printed};
use crate::mesh::FaultyEdges;
use crate::mesh::look::{Hit, Model, Palette};
use crate::texts::Texts;

/// A pattern to be shown.
#[derive(Debug, Clone, Copy)]
pub struct Part<'a> {
    /// Its id, from a stable key of the document; where the eye is stays with it.
    pub id: Id,
    /// The pattern, made ready.
    pub model: &'a Arc<Model>,
    /// Size of the picture in points.
    pub size: Vec2,
    /// What is shown, for those who hear the window.
    pub name: &'a str,
    /// The colour of its triangles; a new one is seen by its address.
    pub paint: Option<&'a Arc<Palette>>,
    /// Places on it that are pointed out.
    pub pins: &'a [Pin],
    /// Its edges at fault, likewise: open ones in the colour of a Stop, those wound both ways in that of a Caution.
    pub edges: Option<&'a Arc<FaultyEdges>>,
}

/// A place on a pattern that is pointed out, with a word beside it; fainter where the pattern lies before it.
#[derive(Debug, Clone, PartialEq)]
pub struct Pin {
    /// In the file's mm.
    pub at_mm: [f64; 3],
    /// What stands beside it.
    pub words: String,
    /// The one that was chosen is filled.
    pub is_chosen: bool,
}

/// What a pattern is shown with.
#[derive(Debug, Clone, Copy)]
pub struct Dress {
    /// Colours.
    pub tokens: Tokens,
    /// Sentences.
    pub texts: &'static Texts,
    /// Is the decimal mark a comma?
    pub comma: bool,
}

impl Dress {
    /// As the page has it.
    #[must_use]
    pub fn of(cx: &Cx<'_>) -> Self {
        Self { tokens: cx.tokens, texts: cx.texts, comma: cx.style.comma }
    }
}

/// What came of showing a pattern.
#[derive(Debug, Clone)]
pub struct Shown {
    /// The picture's response.
    pub response: Response,
    /// The place that was clicked, or picked in the middle of the picture by the space bar.
    pub clicked: Option<Hit>,
    /// The place under the pointer; while a large pattern turns, roughly.
    pub hovered: Option<Hit>,
    /// Does the picture show every triangle, with its edges smoothed?
    pub is_fine: bool,
    /// How many pictures were made for it since it was first shown.
    pub pictures: u64,
}

/// Shows a pattern with its tools above it.
pub fn part(ui: &mut Ui, dress: &Dress, part: &Part<'_>) -> Shown {
    let state = ui.data_mut(|data| data.get_temp_mut_or_default::<Arc<Mutex<Sight>>>(part.id).clone());
    let mut sight = state.lock();
    sight.take_model(part.model);
    tools::tools(ui, dress, part, &mut sight);
    let (_, rect) = ui.allocate_space(part.size);
    let rect = on_pixels(rect, ui.pixels_per_point());
    let response = ui.interact(rect, part.id.with("picture"), Sense::click_and_drag());
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, part.name));
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_description(dress.texts.label("part-how")));
    let size_px = pixels_of(rect, ui.pixels_per_point());
    hands::pointer(ui, &response, part.model, size_px, &mut sight);
    let picked = hands::keys(ui, &response, part.model, size_px, &mut sight);
    if ui.is_rect_visible(rect) {
        let ask = Ask::new(part, &sight, &dress.tokens, size_px);
        sight.see(ui.ctx(), ask, response.dragged());
        paint(ui, dress, part, &sight, rect, &response);
    }
    let at_px = |place: egui::Pos2| {
        let off = (place - rect.min) * ui.pixels_per_point();
        (off.x >= 0.0 && off.y >= 0.0).then_some([off.x as u32, off.y as u32])
    };
    let middle = [size_px[0] / 2, size_px[1] / 2];
    let by_mouse = response.clicked_by(egui::PointerButton::Primary).then(|| response.interact_pointer_pos().and_then(at_px)).flatten();
    let clicked = by_mouse.or(picked.then_some(middle)).and_then(|at| sight.exactly(at));
    let hovered = response.hover_pos().and_then(at_px).and_then(|at| sight.roughly(at));
    Shown { clicked, hovered, is_fine: sight.is_fine(), pictures: sight.pictures, response }
}

fn paint(ui: &Ui, dress: &Dress, part: &Part<'_>, sight: &Sight, rect: Rect, response: &Response) {
    let painter = ui.painter_at(rect.expand(2.0));
    painter.rect(rect, 3.0, dress.tokens.paper, Stroke::new(1.0, dress.tokens.rule), StrokeKind::Inside);
    if let Some(texture) = sight.texture() {
        painter.image(texture, rect, Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0)), printed(255));
    }
    if let Some(picture) = sight.picture() {
        overlay::overlay(&painter, dress, rect, picture.projection(), ui.pixels_per_point());
        overlay::pins(&painter, dress, rect, picture, part.pins, ui.pixels_per_point());
    }
    if let Some(words) = sight.cut_words(dress, part.model) {
        overlay::cut_words(&painter, dress, rect, &words);
    }
    if response.has_focus() {
        painter.rect_stroke(rect, 3.0, Stroke::new(2.0, dress.tokens.act), StrokeKind::Inside);
    }
}

/// A rectangle whose sides lie between the pixels of the screen, so that the picture is not blurred.
fn on_pixels(rect: Rect, pixels_per_point: f32) -> Rect {
    let round = |part: f32| (part * pixels_per_point).round() / pixels_per_point;
    Rect::from_min_max(pos2(round(rect.left()), round(rect.top())), pos2(round(rect.right()), round(rect.bottom())))
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a screen is small")]
fn pixels_of(rect: Rect, pixels_per_point: f32) -> [u32; 2] {
    [rect.width(), rect.height()].map(|side| (side * pixels_per_point).round().clamp(1.0, 4096.0) as u32)
}
