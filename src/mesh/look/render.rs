//! From a scene to a picture, over one thread or two.

use super::colour::Colouring;
use super::layer::{Layer, Look};
use super::picture::{CUT_TWICE, NOTHING};
use super::{Camera, Cut, Hit, Lines, Model, Paint, Picture, Projection, Tones, lines};
use crate::mesh::Watch;

/// What is looked at, and how.
#[derive(Clone, Copy)]
pub struct Scene<'a> {
    /// The pattern.
    pub model: &'a Model,
    /// Where the eye is.
    pub camera: Camera,
    /// What is cut away.
    pub cut: Option<Cut>,
    /// The colour of its triangles.
    pub paint: &'a dyn Paint,
    /// Lines on it.
    pub lines: &'a [Lines<'a>],
    /// Every other colour.
    pub tones: Tones,
}

/// How fine a picture is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quality {
    /// At once: the stand-in of a large pattern, one sample a pixel.
    Turning,
    /// Every triangle, edges smoothed.
    Rest,
}

/// Pixels across and down at most.
const MOST_PX: u32 = 4096;
/// Triangles up to which edges are smoothed most finely.
const FINE_TRIANGLES: usize = 1_000_000;

/// Where within a pixel it is looked at, in 16ths of it off the middle. The first is the middle, which tells what is seen; of the others no two
/// share a row or a column.
const SAMPLES: [[i8; 2]; 9] = [[0, 0], [-7, 1], [-5, -5], [-3, 5], [-1, -3], [1, 7], [3, -1], [5, -7], [7, 3]];
/// The same with fewer.
const FEW_SAMPLES: [[i8; 2]; 5] = [[0, 0], [-6, -2], [-2, 6], [2, -6], [6, 2]];

/// A picture of a scene, `size_px` across and down (1 to 4096); none when asked to stop. `threads` is how many work on it, 1 or 2.
#[must_use]
pub fn render(scene: &Scene<'_>, size_px: [u32; 2], quality: Quality, threads: usize, watch: &dyn Watch) -> Option<Picture> {
    let size_px = size_px.map(|side| side.clamp(1, MOST_PX));
    let [across, down] = size_px.map(|side| side as usize);
    let onto = Projection::new(&scene.camera, scene.model, size_px);
    let mut picture = Picture {
        size_px,
        rgba: vec![0; 4 * across * down],
        ids: vec![NOTHING; across * down],
        near: vec![f32::NEG_INFINITY; across * down],
        onto,
    };
    let samples = match quality {
        Quality::Turning => &SAMPLES[..1],
        Quality::Rest if scene.model.triangles().len() <= FINE_TRIANGLES => &SAMPLES[..],
        Quality::Rest => &FEW_SAMPLES[..],
    };
    let rows = if threads > 1 && down > 1 { down.div_ceil(2) } else { down };
    let bands =
        picture.rgba.chunks_mut(4 * across * rows).zip(picture.ids.chunks_mut(across * rows)).zip(picture.near.chunks_mut(across * rows));
    let mut bands: Vec<Band<'_>> =
        bands.enumerate().map(|(at, ((rgba, ids), near))| Band { top: at * rows, across, rgba, ids, near }).collect();
    let paint = |band: &mut Band<'_>| band.paint(scene, size_px, samples, quality, watch);
    let done = std::thread::scope(|scope| {
        let Some((first, others)) = bands.split_first_mut() else { return true };
        let others: Vec<_> = others.iter_mut().map(|band| scope.spawn(|| paint(band))).collect();
        let done = paint(first);
        others.into_iter().all(|other| other.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))) && done
    });
    done.then_some(picture)
}

/// What is seen of a scene in the middle of pixel `at_px`, among all its triangles; none where nothing is.
#[must_use]
pub fn pick(scene: &Scene<'_>, size_px: [u32; 2], at_px: [u32; 2]) -> Option<Hit> {
    let onto = Projection::new(&scene.camera, scene.model, size_px);
    let mut layer = Layer::default();
    let corner = at_px.map(f64::from);
    layer.draw([1, 1], &look(scene, Quality::Rest, onto.moved(corner)), &crate::mesh::Unwatched);
    let id = layer.id[0];
    let place = [corner[0] + 0.5, corner[1] + 0.5, f64::from(layer.near[0])];
    (id != NOTHING).then(|| Hit { triangle: (id < CUT_TWICE).then_some(id), point_mm: onto.point_mm(place) })
}

fn look<'a>(scene: &Scene<'a>, quality: Quality, onto: Projection) -> Look<'a> {
    let (triangles, of) = if quality == Quality::Turning { scene.model.light() } else { (scene.model.triangles(), None) };
    let plane = scene.cut.map(|cut| cut.plane(scene.model, &onto));
    Look { triangles, of, onto, plane, inside_out: scene.model.is_inside_out() }
}

/// Rows of a picture that one thread paints.
struct Band<'a> {
    top: usize,
    across: usize,
    rgba: &'a mut [u8],
    ids: &'a mut [u32],
    near: &'a mut [f32],
}

impl Band<'_> {
    #[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, reason = "a picture is small")]
    fn paint(&mut self, scene: &Scene<'_>, size_px: [u32; 2], samples: &[[i8; 2]], quality: Quality, watch: &dyn Watch) -> bool {
        let across = self.across;
        let onto = Projection::new(&scene.camera, scene.model, size_px);
        let colouring = Colouring {
            paint: scene.paint,
            tones: &scene.tones,
            shorter_px: size_px[0].min(size_px[1]) as f32,
            radius_px: (onto.px_per_mm() * scene.model.radius_mm()) as f32,
        };
        // A row more at either side, for the outlines.
        let size = [across, self.ids.len() / across + 2];
        let inner = across..across * (size[1] - 1);
        let (mut layer, mut colours) = (Layer::default(), Vec::new());
        let mut sums = vec![[0_u16; 4]; self.ids.len()];
        for (number, sample) in samples.iter().enumerate() {
            let off = sample.map(|part| f64::from(part) / 16.0);
            let look = look(scene, quality, onto.moved([off[0], self.top as f64 - 1.0 + off[1]]));
            if !layer.draw(size, &look, watch) {
                return false;
            }
            colouring.of(&layer, &mut colours);
            for lines in scene.lines {
                lines::draw(lines, &layer, &look.onto, look.plane.as_ref(), &mut colours);
            }
            for (sum, [red, green, blue, cover]) in sums.iter_mut().zip(&colours[inner.clone()]) {
                // At most nine samples of 255 go into a sum, a colour weighed by its cover.
                let share = |part: u8| u16::from(part) * u16::from(*cover) / 255;
                *sum = [sum[0] + share(*red), sum[1] + share(*green), sum[2] + share(*blue), sum[3] + u16::from(*cover)];
            }
            if number == 0 {
                self.ids.copy_from_slice(&layer.id[inner.clone()]);
                self.near.copy_from_slice(&layer.near[inner.clone()]);
            }
        }
        let many = samples.len() as u16;
        for (pixel, sum) in self.rgba.chunks_exact_mut(4).zip(&sums) {
            if sum[3] > 0 {
                let part = |at: usize| (u32::from(sum[at]) * 255 / u32::from(sum[3])).min(255) as u8;
                pixel.copy_from_slice(&[part(0), part(1), part(2), (sum[3] / many) as u8]);
            }
        }
        true
    }
}
