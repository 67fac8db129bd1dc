//! A small shaded picture of a pattern, for paper: seen from the front right and a little above, lit from the upper left, with dark outlines,
//! so that it is told apart in black and white at the size of a thumbnail.

use super::Soup;
use super::look::light::{lightness, normal};

/// A shaded picture, row by row from the top.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shade {
    /// Pixels across and down.
    pub side: u32,
    /// Lightness of every pixel, 0 is black; `side` × `side`.
    pub grey: Vec<u8>,
    /// How much of every pixel is covered, 255 is all; `side` × `side`.
    pub cover: Vec<u8>,
}

/// Where the eye is, 35° to the right of the front and 25° above it: unit vectors to the right, upwards and towards the eye, in the file's
/// axes. Written out, so that every machine has the same picture.
const VIEW: [[f64; 3]; 3] =
    [[0.819_152_04, 0.573_576_44, 0.0], [-0.242_403_88, 0.346_188_61, 0.906_307_79], [0.519_836_79, -0.742_403_88, 0.422_618_26]];
/// Samples of a pixel along each side.
const FINE: usize = 3;
/// Free at each side of the picture, as a share of it.
const MARGIN: f64 = 0.04;
/// A step in depth of so much of the picture is an outline.
const STEP: f32 = 0.03;

/// A picture of a pattern, `side` pixels square (16 to 1024); `None` where it has no extent that could be seen.
#[must_use]
pub fn shade(soup: &Soup, side: u32) -> Option<Shade> {
    let side = side.clamp(16, 1024);
    let fit = Fit::of(soup, side)?;
    let mut canvas = Canvas::new(fit.across);
    for triangle in soup.triangles() {
        canvas.triangle(triangle.map(|corner| fit.place(corner)), lightness(normal(triangle.map(seen))));
    }
    if canvas.depth.iter().all(|depth| *depth == f32::NEG_INFINITY) {
        return None;
    }
    canvas.outline();
    Some(canvas.averaged(side))
}

fn seen([x, y, z]: [f32; 3]) -> [f64; 3] {
    VIEW.map(|axis| axis[0] * f64::from(x) + axis[1] * f64::from(y) + axis[2] * f64::from(z))
}

/// How the pattern lies in the picture.
struct Fit {
    scale: f64,
    middle: [f64; 3],
    across: usize,
}

impl Fit {
    fn of(soup: &Soup, side: u32) -> Option<Self> {
        let (mut low, mut high) = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
        for corner in soup.triangles().iter().flatten() {
            for (axis, value) in seen(*corner).into_iter().enumerate() {
                low[axis] = low[axis].min(value);
                high[axis] = high[axis].max(value);
            }
        }
        let extent = (high[0] - low[0]).max(high[1] - low[1]);
        if !(extent.is_finite() && extent > 0.0) {
            return None;
        }
        let across = usize::try_from(side).ok()? * FINE;
        let room = f64::from(side) * 3.0 * (1.0 - 2.0 * MARGIN);
        let middle = [0, 1, 2].map(|axis| (low[axis] + high[axis]) / 2.0);
        Some(Self { scale: room / extent, middle, across })
    }

    /// Right and down in samples, and how near in samples.
    #[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "a picture has few digits")]
    fn place(&self, corner: [f32; 3]) -> [f32; 3] {
        let half = self.across as f64 / 2.0;
        let [x, y, z] = seen(corner);
        let of = |value: f64, axis: usize| (value - self.middle[axis]) * self.scale;
        [(half + of(x, 0)) as f32, (half - of(y, 1)) as f32, of(z, 2) as f32]
    }
}

struct Canvas {
    across: usize,
    depth: Vec<f32>,
    light: Vec<f32>,
}

impl Canvas {
    fn new(across: usize) -> Self {
        Self { across, depth: vec![f32::NEG_INFINITY; across * across], light: vec![1.0; across * across] }
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "kept within the picture")]
    fn triangle(&mut self, [a, b, c]: [[f32; 3]; 3], light: f32) {
        let area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
        if !area.is_finite() || area == 0.0 {
            return;
        }
        let most = self.across as f32 - 1.0;
        let from = |axis: usize| a[axis].min(b[axis]).min(c[axis]).floor().clamp(0.0, most) as usize;
        let to = |axis: usize| a[axis].max(b[axis]).max(c[axis]).ceil().clamp(0.0, most) as usize;
        for row in from(1)..=to(1) {
            for column in from(0)..=to(0) {
                let (x, y) = (column as f32 + 0.5, row as f32 + 0.5);
                let wa = ((b[0] - x) * (c[1] - y) - (b[1] - y) * (c[0] - x)) / area;
                let wb = ((c[0] - x) * (a[1] - y) - (c[1] - y) * (a[0] - x)) / area;
                let wc = 1.0 - wa - wb;
                if wa < -1e-4 || wb < -1e-4 || wc < -1e-4 {
                    continue;
                }
                let depth = wa * a[2] + wb * b[2] + wc * c[2];
                let at = row * self.across + column;
                if depth > self.depth[at] {
                    self.depth[at] = depth;
                    self.light[at] = light;
                }
            }
        }
    }

    /// Dark lines where the pattern ends and where one part of it stands before another.
    #[allow(clippy::cast_precision_loss, reason = "a picture is small")]
    fn outline(&mut self) {
        let (across, step) = (self.across, STEP * self.across as f32);
        let edge = |at: usize, depth: &[f32]| {
            let (row, column) = (at / across, at % across);
            let beside = [
                (row > 0).then(|| at - across),
                (row + 1 < across).then(|| at + across),
                (column > 0).then(|| at - 1),
                (column + 1 < across).then(|| at + 1),
            ];
            // The nearer of two is the one that has the line.
            beside.into_iter().any(|other| other.is_none_or(|other| depth[at] - depth[other] > step))
        };
        for at in 0..self.light.len() {
            if self.depth[at] > f32::NEG_INFINITY && edge(at, &self.depth) {
                self.light[at] = 0.08;
            }
        }
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "kept within a byte")]
    fn averaged(&self, side: u32) -> Shade {
        let side_px = self.across / FINE;
        let (mut grey, mut cover) = (Vec::with_capacity(side_px * side_px), Vec::with_capacity(side_px * side_px));
        for row in 0..side_px {
            for column in 0..side_px {
                let (mut light, mut count) = (0.0, 0_u32);
                for y in 0..FINE {
                    for x in 0..FINE {
                        let at = (row * FINE + y) * self.across + column * FINE + x;
                        if self.depth[at] > f32::NEG_INFINITY {
                            light += self.light[at];
                            count += 1;
                        }
                    }
                }
                grey.push(if count == 0 { 255 } else { (light / count as f32 * 255.0).round() as u8 });
                cover.push((count as f32 / (FINE * FINE) as f32 * 255.0).round() as u8);
            }
        }
        Shade { side, grey, cover }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Format, Soup};
    use super::*;

    type Triangle = [[f32; 3]; 3];

    fn soup(triangles: Vec<Triangle>) -> Soup {
        Soup::new(Format::StlBinary, triangles, false)
    }

    fn cube(low: f32, high: f32) -> Vec<Triangle> {
        let corner = |n: usize| [n & 1, n >> 1 & 1, n >> 2 & 1].map(|bit| if bit == 1 { high } else { low });
        let faces = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
        faces.iter().flat_map(|[a, b, c, d]| [[corner(*a), corner(*b), corner(*c)], [corner(*a), corner(*c), corner(*d)]]).collect()
    }

    fn sphere() -> Vec<Triangle> {
        let point = |i: u32, j: u32| {
            let (theta, phi) = (std::f32::consts::PI * i as f32 / 40.0, std::f32::consts::TAU * j as f32 / 80.0);
            [theta.sin() * phi.cos(), theta.sin() * phi.sin(), theta.cos()]
        };
        let quad = |i, j| [[point(i, j), point(i + 1, j), point(i + 1, j + 1)], [point(i, j), point(i + 1, j + 1), point(i, j + 1)]];
        (0..40).flat_map(|i| (0..80).flat_map(move |j| quad(i, j))).collect()
    }

    fn at(shade: &Shade, x: f64, y: f64) -> u8 {
        let side = f64::from(shade.side);
        shade.grey[(y * side) as usize * shade.side as usize + (x * side) as usize]
    }

    #[test]
    fn a_sphere_is_a_disc_lit_at_the_upper_left() {
        let shade = shade(&soup(sphere()), 128).unwrap();
        assert!(at(&shade, 0.35, 0.35) > at(&shade, 0.62, 0.68) + 40);
        let covered: f64 = shade.cover.iter().map(|cover| f64::from(*cover) / 255.0).sum();
        let radius = 128.0 * (1.0 - 2.0 * MARGIN) / 2.0;
        let disc = std::f64::consts::PI * radius * radius;
        assert!((covered / disc - 1.0).abs() < 0.02, "{covered} of {disc}");
    }

    #[test]
    fn a_cube_shows_three_faces_of_three_greys() {
        let shade = shade(&soup(cube(0.0, 10.0)), 96).unwrap();
        let mut greys: Vec<u8> = shade.grey.iter().zip(&shade.cover).filter(|(_, cover)| **cover == 255).map(|(grey, _)| *grey).collect();
        greys.sort_unstable();
        let mut large: Vec<u8> = greys.chunk_by(|a, b| a == b).filter(|group| group.len() > 300).map(|group| group[0]).collect();
        large.dedup_by(|a, b| a.abs_diff(*b) < 12);
        assert_eq!(large.len(), 3, "{large:?}");
    }

    #[test]
    fn winding_size_and_place_change_nothing() {
        let plain = shade(&soup(cube(0.0, 10.0)), 64).unwrap();
        let turned = cube(0.0, 10.0).into_iter().map(|[a, b, c]| [a, c, b]).collect();
        assert_eq!(shade(&soup(turned), 64).unwrap(), plain);
        let moved = shade(&soup(cube(100.0, 140.0)), 64).unwrap();
        let other = moved.grey.iter().zip(&plain.grey).filter(|(a, b)| a.abs_diff(**b) > 40).count();
        assert!(other < 40, "{other} pixels differ");
    }

    #[test]
    fn what_is_nearer_hides_what_is_farther() {
        // A small plate before a large one, as the eye sees it.
        let plate = |half: f32, near: f32| {
            let corner = |x: f32, y: f32| {
                let [r, u, d] = VIEW.map(|axis| axis.map(|part| part as f32));
                [0, 1, 2].map(|axis| r[axis] * x + u[axis] * y + d[axis] * near)
            };
            let [a, b, c, d] = [corner(-half, -half), corner(half, -half), corner(half, half), corner(-half, half)];
            vec![[a, b, c], [a, c, d]]
        };
        let both = |near| shade(&soup([plate(10.0, 0.0), plate(3.0, near)].concat()), 90).unwrap();
        // Before it, the small one has an outline of its own; behind it, nothing is seen of it.
        assert_ne!(both(5.0), both(-5.0));
        assert_eq!(both(-5.0), shade(&soup(plate(10.0, 0.0)), 90).map(|one| Shade { ..one }).unwrap());
    }

    #[test]
    fn nothing_to_see_is_no_picture() {
        assert!(shade(&soup(vec![[[1.0, 2.0, 3.0]; 3]]), 64).is_none());
        let huge = vec![[[0.0, 0.0, 0.0], [f32::MAX, 0.0, 0.0], [0.0, f32::MAX, f32::MAX]]];
        assert!(shade(&soup(huge), 64).is_some());
        let tiny = cube(0.0, 1e-30);
        let _ = shade(&soup(tiny), 64);
        assert_eq!(shade(&soup(cube(0.0, 1.0)), 1).unwrap().side, 16);
    }
}
