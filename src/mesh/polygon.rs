//! Faces of more than three corners, cut into triangles along their own corners.
//!
//! A face of four is cut along the diagonal that keeps both halves facing the same way, and along the shorter one where both do: so a face that
//! bends inward is cut at its inner corner and a bent one gets the flatter fold. A larger face that bulges everywhere is fanned from its first
//! corner; any other is cut ear by ear, in the plane it lies in most nearly. Whatever is left when no ear can be found, because the face crosses
//! itself or has no area, is fanned: the edges to its neighbours stay as they are in any case.

use super::ReadError;
use super::soup::Triangle;
use robust::{Coord, orient2d};

/// Looks at a corner while ears are sought, over a whole file: some seconds of work.
const PATIENCE: u64 = 400_000_000;

/// Cuts faces and keeps the lists it needs for that from one face to the next.
pub(super) struct Cutter {
    patience: u64,
    flat: Vec<Coord<f64>>,
    next: Vec<u32>,
    before: Vec<u32>,
}

impl Default for Cutter {
    fn default() -> Self {
        Self { patience: PATIENCE, flat: Vec::new(), next: Vec::new(), before: Vec::new() }
    }
}

impl Cutter {
    /// Cuts a face of at least four corners. Nothing where that would take too long.
    pub fn cut(&mut self, corners: &[[f32; 3]], mut each: impl FnMut(Triangle) -> Result<(), ReadError>) -> Result<Option<()>, ReadError> {
        if let [a, b, c, d] = *corners {
            for triangle in halves(a, b, c, d) {
                each(triangle)?;
            }
            return Ok(Some(()));
        }
        self.flatten(corners);
        if self.bulges() {
            for pair in corners[1..].windows(2) {
                each([corners[0], pair[0], pair[1]])?;
            }
            return Ok(Some(()));
        }
        self.ears(corners, each)
    }

    /// Lays the face into the plane of the two axes it is seen largest along, so that it goes round to the left.
    fn flatten(&mut self, corners: &[[f32; 3]]) {
        let normal = normal_of(corners);
        let axis = (0..3).max_by(|&a, &b| normal[a].abs().total_cmp(&normal[b].abs())).unwrap_or(2);
        let (mut right, mut up) = ((axis + 1) % 3, (axis + 2) % 3);
        if normal[axis] < 0.0 {
            (right, up) = (up, right);
        }
        self.flat.clear();
        self.flat.extend(corners.iter().map(|c| Coord { x: f64::from(c[right]), y: f64::from(c[up]) }));
    }

    /// Positive where a corner turns to the left, exactly.
    fn turn(&self, a: u32, b: u32, c: u32) -> f64 {
        orient2d(self.flat[a as usize], self.flat[b as usize], self.flat[c as usize])
    }

    fn bulges(&self) -> bool {
        let n = self.flat.len() as u32;
        (0..n).all(|k| self.turn(k, (k + 1) % n, (k + 2) % n) > 0.0)
    }

    /// Cuts ear after ear.
    fn ears(&mut self, corners: &[[f32; 3]], mut each: impl FnMut(Triangle) -> Result<(), ReadError>) -> Result<Option<()>, ReadError> {
        let n = corners.len() as u32;
        self.next.clear();
        self.next.extend((1..n).chain([0]));
        self.before.clear();
        self.before.extend([n - 1].into_iter().chain(0..n - 1));
        let triangle = |a: u32, b: u32, c: u32| [corners[a as usize], corners[b as usize], corners[c as usize]];
        let (mut left, mut at, mut misses) = (n, 0, 0);
        while left > 3 && misses <= left {
            let (a, c) = (self.before[at as usize], self.next[at as usize]);
            match self.is_ear(a, at, c) {
                None => return Ok(None),
                Some(false) => {
                    misses += 1;
                    at = c;
                }
                Some(true) => {
                    each(triangle(a, at, c))?;
                    self.next[a as usize] = c;
                    self.before[c as usize] = a;
                    (left, misses) = (left - 1, 0);
                    // Passing over a corner keeps the triangles from all meeting in one.
                    at = self.next[c as usize];
                }
            }
        }
        let mut b = self.next[at as usize];
        for _ in 2..left {
            let c = self.next[b as usize];
            each(triangle(at, b, c))?;
            b = c;
        }
        Ok(Some(()))
    }

    /// True when the triangle at a corner turns left and no other corner lies in it or on its sides. Nothing when patience has ended.
    fn is_ear(&mut self, a: u32, b: u32, c: u32) -> Option<bool> {
        self.patience = self.patience.checked_sub(1)?;
        if self.turn(a, b, c) <= 0.0 {
            return Some(false);
        }
        let [pa, pb, pc] = [a, b, c].map(|k| self.flat[k as usize]);
        let mut at = self.next[c as usize];
        while at != a {
            self.patience = self.patience.checked_sub(1)?;
            let p = self.flat[at as usize];
            let is_inside = orient2d(pa, pb, p) >= 0.0 && orient2d(pb, pc, p) >= 0.0 && orient2d(pc, pa, p) >= 0.0;
            // A corner that the outline comes back to, as round a hole that is cut free, does not stand in its own way.
            if is_inside && ![pa, pb, pc].contains(&p) {
                return Some(false);
            }
            at = self.next[at as usize];
        }
        Some(true)
    }
}

/// The two halves of a face of four.
fn halves(a: [f32; 3], b: [f32; 3], c: [f32; 3], d: [f32; 3]) -> [Triangle; 2] {
    let agree = |[one, other]: [Triangle; 2]| dot(normal_of(&one), normal_of(&other)) > 0.0;
    let (across, along) = ([[a, b, c], [a, c, d]], [[a, b, d], [b, c, d]]);
    let is_shorter = || squared(b, d) < squared(a, c);
    if agree(along) && (!agree(across) || is_shorter()) { along } else { across }
}

/// Twice the area of a face as seen along each axis (Newell's sums), in mm².
fn normal_of(corners: &[[f32; 3]]) -> [f64; 3] {
    let from = |corner: &[f32; 3]| -> [f64; 3] { std::array::from_fn(|k| f64::from(corner[k]) - f64::from(corners[0][k])) };
    let mut sum = [0.0; 3];
    for pair in corners.windows(2) {
        let (p, q) = (from(&pair[0]), from(&pair[1]));
        for (axis, sum) in sum.iter_mut().enumerate() {
            let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
            *sum += p[u] * q[v] - p[v] * q[u];
        }
    }
    sum
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// The square of the distance, in mm².
fn squared(a: [f32; 3], b: [f32; 3]) -> f64 {
    (0..3).map(|k| (f64::from(a[k]) - f64::from(b[k])).powi(2)).sum()
}
