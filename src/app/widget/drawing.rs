//! Paints a drawing of the drawing layer, to scale, into a place of the page.

use eframe::egui::{
    self, Align2, Color32, FontId, Painter, Pos2, Rect, Response, Sense, Shape, Stroke, Ui, Vec2, WidgetInfo, accesskit, pos2, vec2,
};

use crate::app::theme::{Tokens, lit, size};
use crate::drawing::primitive::{Anchor, Picture, Point, Primitive, Role};

/// Where a drawing lands.
#[derive(Debug, Clone, Copy)]
struct Onto {
    origin: Pos2,
    scale: f32,
}

#[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
const fn short(number: f64) -> f32 {
    number as f32
}

/// Where a drawing landed, for who wants to know what lies under the hand.
#[derive(Debug, Clone, Copy)]
pub struct Landed(Onto);

impl Landed {
    /// The place of the drawing at a place of the window.
    #[must_use]
    pub fn back(self, place: Pos2) -> Point {
        let Onto { origin, scale } = self.0;
        Point { x: f64::from((place.x - origin.x) / scale), y: f64::from((origin.y - place.y) / scale) }
    }
}

impl Onto {
    fn new(picture: &Picture, rect: Rect) -> Self {
        let (width, height) = (short(picture.to.x - picture.from.x).max(1e-3), short(picture.to.y - picture.from.y).max(1e-3));
        let scale = (rect.width() / width).min(rect.height() / height);
        let spare = rect.size() - vec2(width, height) * scale;
        let origin = pos2(
            rect.left() + spare.x / 2.0 - short(picture.from.x) * scale,
            rect.bottom() - spare.y / 2.0 + short(picture.from.y) * scale,
        );
        Self { origin, scale }
    }

    fn at(self, point: Point) -> Pos2 {
        pos2(self.origin.x + short(point.x) * self.scale, self.origin.y - short(point.y) * self.scale)
    }
}

/// Shows a picture as large as its place allows, and says its sentence to those who hear the window.
///
/// It takes no more height than its width lets it have.
pub fn drawing(ui: &mut Ui, picture: &Picture, place: Vec2, says: &str, tokens: &Tokens) -> Response {
    handled(ui, picture, place, says, tokens, Sense::hover()).0
}

/// The same for a drawing that is taken hold of.
pub fn handled(ui: &mut Ui, picture: &Picture, place: Vec2, says: &str, tokens: &Tokens, sense: Sense) -> (Response, Landed) {
    let (width, height) = (short(picture.to.x - picture.from.x).max(1e-3), short(picture.to.y - picture.from.y).max(1e-3));
    let place = vec2(place.x, place.y.min(place.x * height / width));
    let (rect, response) = ui.allocate_exact_size(place, sense);
    response.widget_info(|| WidgetInfo::labeled(accesskit::Role::Image, true, says));
    let onto = Onto::new(picture, rect);
    if ui.is_rect_visible(rect) {
        let painter = ui.painter_at(rect.expand(2.0));
        let mut taken = Vec::new();
        for primitive in &picture.primitives {
            paint(&painter, onto, primitive, tokens, &mut taken);
        }
    }
    (response, Landed(onto))
}

/// The colour of a role.
#[must_use]
pub fn colour(role: Role, tokens: &Tokens) -> Color32 {
    match role {
        Role::Ground | Role::OnPiece => tokens.paper,
        Role::Mould => tokens.mould,
        Role::Steel => tokens.ink2,
        Role::Dome => tokens.panel,
        Role::Sprue => tokens.edge,
        Role::Ink => tokens.ink,
        Role::Label => tokens.ink2,
        Role::Caution => tokens.caution,
        Role::Stop => tokens.stop,
        Role::Piece(order) => {
            let series = tokens.series();
            series[order % series.len()]
        }
    }
}

fn paint(painter: &Painter, onto: Onto, primitive: &Primitive, tokens: &Tokens, taken: &mut Vec<Rect>) {
    match primitive {
        Primitive::Line { from, to, width, broken, role } => {
            let (ends, stroke) = ([onto.at(*from), onto.at(*to)], Stroke::new(*width, colour(*role, tokens)));
            if *broken {
                painter.extend(Shape::dashed_line(&ends, stroke, 4.0, 3.0));
            } else {
                painter.line_segment(ends, stroke);
            }
        }
        Primitive::Polygon { corners, fill } => {
            let corners = corners.iter().map(|corner| onto.at(*corner)).collect();
            painter.add(Shape::convex_polygon(corners, colour(*fill, tokens), Stroke::NONE));
        }
        Primitive::Facets { corners, light, fill } => {
            let mut mesh = egui::Mesh::default();
            for (corners, light) in corners.iter().zip(light) {
                let shade = lit(colour(*fill, tokens), *light);
                let first = mesh.vertices.len() as u32;
                for corner in corners {
                    mesh.colored_vertex(onto.at(*corner), shade);
                }
                mesh.add_triangle(first, first + 1, first + 2);
            }
            painter.add(Shape::mesh(mesh));
        }
        Primitive::Circle { centre, radius, fill, edge } => {
            let fill = fill.map_or(Color32::TRANSPARENT, |role| colour(role, tokens));
            let edge = edge.map_or(Stroke::NONE, |role| Stroke::new(1.2, colour(role, tokens)));
            painter.circle(onto.at(*centre), short(*radius) * onto.scale, fill, edge);
        }
        Primitive::Text { place, words, anchor, role, within } => {
            if within.is_some_and(|radius| short(radius) * onto.scale < size::SMALL * 0.6) {
                return;
            }
            let font = FontId::new(size::SMALL, egui::FontFamily::Proportional);
            let galley = painter.layout_no_wrap(words.clone(), font, colour(*role, tokens));
            let mut at = align(*anchor).anchor_size(onto.at(*place), galley.size());
            // Where the picture is small, words at its edge move in rather than being cut.
            let clip = painter.clip_rect().shrink(2.0);
            let inward = (clip.left() - at.left()).max(0.0) + (clip.right() - at.right()).min(0.0);
            at = at.translate(vec2(inward, 0.0));
            // A piece that hides behind another keeps its number to itself.
            if within.is_some() && taken.iter().any(|other| other.shrink(1.0).intersects(at)) {
                return;
            }
            taken.push(at);
            painter.galley(at.min, galley, colour(*role, tokens));
        }
    }
}

const fn align(anchor: Anchor) -> Align2 {
    match anchor {
        Anchor::Left => Align2::LEFT_CENTER,
        Anchor::Middle => Align2::CENTER_CENTER,
        Anchor::Right => Align2::RIGHT_CENTER,
    }
}
