//! One look at a pattern through a part of the picture: the nearest triangle of every pixel, with one sample a pixel.

use super::Projection;
use super::cut::Plane;
use super::fill::{area2, covered};
use super::light::{lightness, normal};
use super::model::BLOCK;
use super::picture::{CUT, CUT_TWICE, NOTHING};
use crate::mesh::{Triangle, Watch};

/// Lightness of the face of a cut, which is not lit.
const CUT_LIGHT: u8 = 255;

/// The nearest of every pixel of a part of the picture.
#[derive(Debug, Default)]
pub(super) struct Layer {
    /// Pixels across and down.
    pub size: [usize; 2],
    /// How near in pixels.
    pub near: Vec<f32>,
    /// The triangle, or that there is none, or the face of a cut.
    pub id: Vec<u32>,
    /// How light it is.
    pub light: Vec<u8>,
    /// Is it the inner side of a face that is seen, as through a hole?
    pub inner: Vec<bool>,
    /// How many more surfaces are left than entered behind the cut.
    turns: Vec<i16>,
}

/// What is drawn into a layer.
pub(super) struct Look<'a> {
    /// Triangles in mm.
    pub triangles: &'a [Triangle],
    /// The number each has in the file, where it is not its own.
    pub of: Option<&'a [u32]>,
    /// Where they land in the layer.
    pub onto: Projection,
    /// What is cut away.
    pub plane: Option<Plane>,
    /// Do the triangles face inwards?
    pub inside_out: bool,
}

impl Layer {
    /// Clears the layer and draws into it. False when asked to stop.
    pub fn draw(&mut self, size: [usize; 2], look: &Look<'_>, watch: &dyn Watch) -> bool {
        self.clear(size, look.plane.is_some());
        for (block, triangles) in look.triangles.chunks(BLOCK).enumerate() {
            if !watch.go_on((block * BLOCK) as f64 / look.triangles.len() as f64) {
                return false;
            }
            for (at, triangle) in triangles.iter().enumerate() {
                let at = block * BLOCK + at;
                self.triangle(triangle, look.of.map_or(at as u32, |of| of[at]), look);
            }
        }
        if let Some(plane) = &look.plane {
            self.close(plane, look.inside_out);
        }
        true
    }

    fn clear(&mut self, size: [usize; 2], cut: bool) {
        let many = size[0] * size[1];
        self.size = size;
        refill(&mut self.near, many, f32::NEG_INFINITY);
        refill(&mut self.id, many, NOTHING);
        refill(&mut self.light, many, 0);
        refill(&mut self.inner, many, false);
        refill(&mut self.turns, if cut { many } else { 0 }, 0);
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss, clippy::cast_sign_loss, reason = "a picture has few digits")]
    #[inline(always)]
    fn triangle(&mut self, triangle: &Triangle, id: u32, look: &Look<'_>) {
        let down = triangle.map(|corner| look.onto.down(corner));
        if down[0].max(down[1]).max(down[2]) < 0.0 || down[0].min(down[1]).min(down[2]) > self.size[1] as f64 {
            return;
        }
        let placed = triangle.map(|corner| look.onto.place_corner(corner));
        let kept = look.plane.as_ref().map(|plane| (plane, placed.map(|corner| plane.kept(corner))));
        if kept.is_some_and(|(_, kept)| kept.iter().all(|kept| *kept < 0.0)) {
            return;
        }
        let partly = kept.and_then(|(plane, kept)| kept.iter().any(|kept| *kept < 0.0).then_some(plane));
        let corners = placed.map(|corner| corner.map(|part| part as f32));
        let turn = if area2(&corners) < 0.0 { -1 } else { 1 };
        let inner = (turn > 0) != look.inside_out;
        let mut light = None;
        let across = self.size[0];
        let (nears, ids, lights, inners, turns) = (&mut self.near, &mut self.id, &mut self.light, &mut self.inner, &mut self.turns);
        covered(&corners, self.size, |column, row, near| {
            let at = row * across + column;
            if look.plane.is_some() {
                if partly.is_some_and(|plane| plane.kept([column as f64 + 0.5, row as f64 + 0.5, f64::from(near)]) < 0.0) {
                    return;
                }
                turns[at] = turns[at].saturating_add(turn);
            }
            if near > nears[at] {
                // Most triangles of a large file are never seen, and need no light.
                let light = *light.get_or_insert_with(|| {
                    let upward = placed.map(|[right, down, near]| [right, -down, near]);
                    (lightness(normal(upward)) * 255.0 + 0.5) as u8
                });
                (nears[at], ids[at], lights[at], inners[at]) = (near, id, light, inner);
            }
        });
    }

    /// Closes the solid where it was cut: a place on the cut lies inside when what is behind it is left more often than entered.
    #[allow(clippy::cast_precision_loss, reason = "a picture has few digits")]
    fn close(&mut self, plane: &Plane, inside_out: bool) {
        for at in 0..self.turns.len() {
            let turns = if inside_out { -self.turns[at] } else { self.turns[at] };
            if turns <= 0 {
                continue;
            }
            let (column, row) = (at % self.size[0], at / self.size[0]);
            if let Some(near) = plane.face(column as f64 + 0.5, row as f64 + 0.5) {
                self.near[at] = near;
                self.id[at] = if turns > 1 { CUT_TWICE } else { CUT };
                self.light[at] = CUT_LIGHT;
            }
        }
    }
}

fn refill<T: Copy>(list: &mut Vec<T>, many: usize, with: T) {
    list.clear();
    list.resize(many, with);
}
