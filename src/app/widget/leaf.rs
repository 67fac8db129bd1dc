//! A printed page on the screen: the same marks that go on paper.

use std::collections::HashMap;
use std::sync::Arc;

use eframe::egui::{
    self, Color32, FontFamily, FontId, Painter, Pos2, Rect, Response, Sense, Shape, Stroke, StrokeKind, TextureHandle, TextureOptions, Ui,
    WidgetInfo, accesskit, pos2, vec2,
};

use crate::app::theme::{Tokens, bold, pixels, printed};
use crate::paper::block::Raster;
use crate::paper::layout::face::{Face, PT, Run};
use crate::paper::layout::mark::{Laid, Mark, Spot};

/// Pictures that were handed to the screen, by where their pixels lie.
type Textures = HashMap<usize, TextureHandle>;

/// Shows a page `width` points wide, and says its sentence to those who hear the window.
pub fn leaf(ui: &mut Ui, laid: &Laid, index: usize, width: f32, says: &str, tokens: &Tokens) -> Response {
    let [wide, high] = laid.format.size_mm();
    let scale = f64::from(width) / wide;
    let (rect, response) = ui.allocate_exact_size(vec2(width, short(high * scale)), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(accesskit::Role::Image, true, says));
    if ui.is_rect_visible(rect) {
        let painter = ui.painter_at(rect.expand(1.0));
        painter.rect(rect, 0, printed(255), Stroke::new(1.0, tokens.edge), StrokeKind::Outside);
        let onto = Onto { rect, scale };
        let id = egui::Id::unique("paper-pictures");
        let textures = ui.data_mut(|data| data.get_temp_mut_or_default::<Arc<egui::mutex::Mutex<Textures>>>(id).clone());
        for content in laid.leaves.get(index).iter().flat_map(|leaf| &leaf.contents) {
            onto.paint(&painter, &content.mark, &mut textures.lock());
        }
    }
    response
}

#[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
const fn short(number: f64) -> f32 {
    number as f32
}

struct Onto {
    rect: Rect,
    scale: f64,
}

impl Onto {
    fn at(&self, [x, y]: Spot) -> Pos2 {
        pos2(self.rect.left() + short(x * self.scale), self.rect.top() + short(y * self.scale))
    }

    fn paint(&self, painter: &Painter, mark: &Mark, textures: &mut Textures) {
        let stroke = |width: f64, grey: u8| Stroke::new(short(width * self.scale).max(0.5), printed(grey));
        match mark {
            Mark::Text { at, run, size_pt, grey } => self.text(painter, *at, run, *size_pt, printed(*grey)),
            Mark::Line { from, to, width, grey, broken } => {
                let (ends, stroke) = ([self.at(*from), self.at(*to)], stroke(*width, *grey));
                if *broken {
                    painter.extend(Shape::dashed_line(&ends, stroke, short(1.2 * self.scale), short(0.9 * self.scale)));
                } else {
                    painter.line_segment(ends, stroke);
                }
            }
            Mark::Area { corners, grey } => {
                let corners = corners.iter().map(|corner| self.at(*corner)).collect();
                painter.add(Shape::convex_polygon(corners, printed(*grey), Stroke::NONE));
            }
            Mark::Frame { at, size, width, grey } => {
                let rect = Rect::from_min_size(self.at(*at), vec2(short(size[0] * self.scale), short(size[1] * self.scale)));
                painter.rect_stroke(rect, 0, stroke(*width, *grey), StrokeKind::Middle);
            }
            Mark::Disc { centre, radius, fill, edge } => {
                let fill = fill.map_or(Color32::TRANSPARENT, printed);
                painter.circle(self.at(*centre), short(radius * self.scale), fill, edge.map_or(Stroke::NONE, |grey| stroke(0.25, grey)));
            }
            Mark::Picture { at, size, raster } => {
                let rect = Rect::from_min_size(self.at(*at), vec2(short(size[0] * self.scale), short(size[1] * self.scale)));
                if let Some(texture) = texture(painter, raster, textures) {
                    let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
                    painter.image(texture.id(), rect, whole, printed(255));
                }
            }
        }
    }

    /// Word by word, each where the page has it: the screen's type is a little wider or narrower than the page's.
    fn text(&self, painter: &Painter, at: Spot, run: &Run, size_pt: f64, colour: Color32) {
        let em = size_pt * PT * self.scale;
        let family = if run.face == Face::Bold { bold() } else { FontFamily::Proportional };
        let font = FontId::new(short(em), family);
        let base = self.at(at);
        let mut start = 0;
        while start < run.words.len() {
            let rest = &run.words[start..];
            let end = start + rest.find(' ').unwrap_or(rest.len());
            if end > start {
                let before: f64 = run.glyphs.iter().filter(|glyph| glyph.of.start < start).map(|glyph| f64::from(glyph.advance)).sum();
                let galley = painter.layout_no_wrap(run.words[start..end].to_owned(), font.clone(), colour);
                let ascent = galley.rows.first().and_then(|row| row.glyphs.first()).map_or(short(em * 0.93), |glyph| glyph.pos.y);
                painter.galley(pos2(base.x + short(before * em), base.y - ascent), galley, colour);
            }
            start = end + 1;
        }
    }
}

fn texture<'t>(painter: &Painter, raster: &Arc<Raster>, textures: &'t mut Textures) -> Option<&'t TextureHandle> {
    let key = Arc::as_ptr(raster) as usize;
    let size = [usize::try_from(raster.width).ok()?, usize::try_from(raster.height).ok()?];
    if size[0] * size[1] * 4 != raster.rgba.len() || size[0] == 0 {
        return None;
    }
    Some(textures.entry(key).or_insert_with(|| {
        let image = pixels(size, &raster.rgba);
        painter.ctx().load_texture("paper", image, TextureOptions::LINEAR)
    }))
}
