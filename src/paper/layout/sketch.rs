//! Drawings on paper: to one of the usual scales, their words at a size that is read at the bench.

use super::blocks::{CELL, per_row, thumbnail_row};
use super::face::{ASCENT, DESCENT, Face, PT};
use super::lines::plain;
use super::mark::{Bounds, Content, Grey, Mark, Node, Spot, Tag};
use super::strip::{Maker, Strip};
use crate::drawing::primitive::{Anchor, Point, Primitive, Role};
use crate::paper::block::{Drawing, Thumbnail};

/// Scales a drawing may have: a millimetre of the paper is so many of the thing.
const SCALES: [f64; 12] = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 20.0, 50.0];
/// Room for words at the left and the right of a drawing that has pictures beside it, in mm.
const ASIDE: [f64; 2] = [4.0, 8.0];
/// Words of a drawing in points.
const WORDS: f64 = 7.2;

/// The strips of a drawing: itself, and the line under it.
pub(super) fn drawing(maker: &mut Maker<'_>, drawing: &Drawing) -> Vec<Strip> {
    let picture = &drawing.picture;
    let size = [picture.to.x - picture.from.x, picture.to.y - picture.from.y];
    let most = drawing.most_mm * maker.sizes.drawing;
    let kept = if drawing.beside.is_empty() { 0.0 } else { CELL + ASIDE[0] + ASIDE[1] };
    let scale = scale_of(size, [maker.width - kept, most], drawing.to_scale);
    let node = maker.node(Tag::Figure(drawing.says.clone()), None);
    let (wide, high) = (size[0] / scale, size[1] / scale);
    let (left, room) =
        if drawing.beside.is_empty() { ((maker.width - wide) / 2.0, maker.width) } else { (ASIDE[0], ASIDE[0] + wide + ASIDE[1]) };
    let onto = Onto { left, from: picture.from, high, scale };
    let mut contents = Vec::new();
    let mut taken: Vec<Bounds> = Vec::new();
    // What is tight is written first, so that no other word takes its place.
    let order = |primitive: &&Primitive| match primitive {
        Primitive::Text { role: Role::Caution | Role::Stop, .. } => 1,
        Primitive::Text { role: Role::Ink, .. } => 2,
        Primitive::Text { within: None, .. } => 3,
        Primitive::Text { .. } => 4,
        _ => 0,
    };
    let mut primitives: Vec<&Primitive> = picture.primitives.iter().collect();
    primitives.sort_by_key(order);
    for primitive in primitives {
        if let Primitive::Facets { corners, light, .. } = primitive {
            contents.extend(onto.facets(corners, light, node));
            continue;
        }
        contents.extend(onto.mark(maker, primitive, node, [room, high], &mut taken));
    }
    let mut whole = Strip { height: high, contents, ..Strip::default() };
    let rest = beside(maker, &mut whole, &drawing.beside, room + 1.0);
    let mut strips = vec![whole];
    let caption = if drawing.to_scale { format!("{} 1:{}", drawing.caption, number(scale)) } else { drawing.caption.clone() };
    if !caption.trim().is_empty() {
        strips[0].keep = true;
        strips.extend(maker.paragraph(&[plain(&caption)], maker.sizes.small, 0.0, Tag::Paragraph));
    }
    strips.extend(rest.chunks(per_row(maker.width)).map(|row| thumbnail_row(maker, row)));
    strips
}

/// Puts thumbnails into the room at the right of a drawing; gives those for which there is none.
fn beside<'l>(maker: &mut Maker<'_>, strip: &mut Strip, list: &'l [Thumbnail], left: f64) -> &'l [Thumbnail] {
    let across = per_row(maker.width - left);
    let (mut rest, mut y) = (list, 0.0);
    while !rest.is_empty() {
        let row = thumbnail_row(maker, &rest[..across.min(rest.len())]);
        if y > 0.0 && y + row.height > strip.height {
            break;
        }
        let moved = row.contents.into_iter().map(|content| Content { mark: content.mark.moved([left, y]), ..content });
        strip.contents.extend(moved);
        y += row.height;
        rest = &rest[across.min(rest.len())..];
    }
    strip.height = strip.height.max(y);
    rest
}

fn number(scale: f64) -> String {
    if scale.fract() == 0.0 { format!("{scale:.0}") } else { format!("{scale:.1}") }
}

/// The largest usual scale at which it goes into its place; one that fits just so where it is drawn to none.
fn scale_of(size: [f64; 2], room: [f64; 2], to_scale: bool) -> f64 {
    let needed = (size[0] / room[0]).max(size[1] / room[1]).max(1e-6);
    if !to_scale {
        return needed.max(1.0);
    }
    SCALES.into_iter().find(|scale| *scale >= needed).unwrap_or(needed.ceil())
}

struct Onto {
    left: f64,
    from: Point,
    high: f64,
    scale: f64,
}

impl Onto {
    fn spot(&self, point: Point) -> Spot {
        [self.left + (point.x - self.from.x) / self.scale, self.high - (point.y - self.from.y) / self.scale]
    }

    fn mark(&self, maker: &mut Maker<'_>, primitive: &Primitive, node: Node, room: Spot, taken: &mut Vec<Bounds>) -> Option<Content> {
        let mark = match primitive {
            Primitive::Line { from, to, width, broken, role } => {
                let width = if *role == Role::Sprue { 3.0 / self.scale.max(1.0) } else { f64::from(*width) * 0.2 };
                Mark::Line { from: self.spot(*from), to: self.spot(*to), width, grey: grey(*role), broken: *broken }
            }
            Primitive::Polygon { corners, fill } => {
                Mark::Area { corners: corners.iter().map(|corner| self.spot(*corner)).collect(), grey: grey(*fill) }
            }
            Primitive::Facets { .. } => return None,
            Primitive::Circle { centre, radius, fill, edge } => {
                Mark::Disc { centre: self.spot(*centre), radius: radius / self.scale, fill: fill.map(grey), edge: edge.map(grey) }
            }
            Primitive::Text { place, words, anchor, role, within } => {
                return self.text(maker, (self.spot(*place), words, *anchor, *role, *within), node, room, taken);
            }
        };
        Some(Content { node: Some(node), mark })
    }

    /// A solid thing. On paper a piece is told by its number, which stands dark on its light sides.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a grey from 175 to 253")]
    fn facets(&self, corners: &[[Point; 3]], light: &[f32], node: Node) -> Vec<Content> {
        let shade = |light: &f32| 175 + (78.0 * light) as Grey;
        let mark = |(corners, light): (&[Point; 3], &f32)| Mark::Area {
            corners: corners.iter().map(|corner| self.spot(*corner)).collect(),
            grey: shade(light),
        };
        corners.iter().zip(light).map(|facet| Content { node: Some(node), mark: mark(facet) }).collect()
    }

    fn text(
        &self,
        maker: &mut Maker<'_>,
        (spot, words, anchor, role, within): (Spot, &str, Anchor, Role, Option<f64>),
        node: Node,
        room: Spot,
        taken: &mut Vec<Bounds>,
    ) -> Option<Content> {
        if words.is_empty() {
            return None;
        }
        let face = if matches!(role, Role::Caution | Role::Stop | Role::OnPiece) { Face::Bold } else { Face::Plain };
        let em = WORDS * PT;
        let wide = maker.setter.run(face, words).width * em;
        if within.is_some_and(|radius| wide.hypot(em * 0.7) / 2.0 > radius / self.scale) {
            return None;
        }
        let x = match anchor {
            Anchor::Left => spot[0],
            Anchor::Middle => spot[0] - wide / 2.0,
            Anchor::Right => spot[0] - wide,
        };
        // At the edge words move in rather than out of the column.
        let x = x.min(room[0] - wide).max(0.0);
        let y = (spot[1] + em * 0.36).clamp(em * ASCENT, (room[1] - em * DESCENT).max(em * ASCENT));
        let bounds = Bounds { left: x, top: y - ASCENT * em, right: x + wide, bottom: y + DESCENT * em };
        // Half a word over another tells less than none.
        if wide > room[0] || taken.iter().any(|other| bounds.meets(other)) {
            return None;
        }
        taken.push(bounds);
        let run = maker.setter.run(face, words);
        Some(Content { node: Some(node), mark: Mark::Text { at: [x, y], run, size_pt: WORDS, grey: grey(role) } })
    }
}

/// Black, white and the greys that a plain printer keeps apart.
fn grey(role: Role) -> Grey {
    match role {
        Role::Ground => 255,
        Role::Mould => 236,
        Role::Steel => 90,
        Role::Dome => 205,
        Role::Sprue => 150,
        Role::Label => 70,
        Role::Ink | Role::Caution | Role::Stop | Role::OnPiece => 0,
        Role::Piece(_) => 255,
    }
}
