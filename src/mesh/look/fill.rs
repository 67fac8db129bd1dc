//! Which pixels of a picture a triangle covers.

/// One edge. Both triangles beside it work out the same numbers from the same ends, so that every pixel belongs to just one of them.
#[derive(Clone, Copy)]
struct Edge {
    x: f32,
    y: f32,
    dx: f32,
    dy: f32,
    flipped: bool,
}

impl Edge {
    fn new(from: [f32; 3], to: [f32; 3], flipped: bool) -> Self {
        let turned = (from[0], from[1]) > (to[0], to[1]);
        let (from, to) = if turned { (to, from) } else { (from, to) };
        Self { x: from[0], y: from[1], dx: to[0] - from[0], dy: to[1] - from[1], flipped: flipped != turned }
    }

    #[inline(always)]
    fn holds(&self, across: f32, x: f32) -> bool {
        (across - self.dy * (x - self.x) < 0.0) == self.flipped
    }

    /// Narrows a row's columns to those that may lie inside, one more at either end.
    fn narrow(&self, across: f32, from: &mut f32, to: &mut f32) {
        if self.dy == 0.0 {
            return;
        }
        let crossing = self.x + across / self.dy;
        if (self.dy > 0.0) == self.flipped {
            *from = from.max(crossing - 1.5);
        } else {
            *to = to.min(crossing + 1.5);
        }
    }
}

/// Twice the area as the eye sees it, in px²; negative where the triangle faces the eye, since rows count downwards.
pub(super) fn area2([a, b, c]: &[[f32; 3]; 3]) -> f32 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Calls `each` with column, row and nearness of every pixel whose middle a triangle covers, in a picture of `size` pixels.
///
/// Corners are pixels right, pixels down and how near; nothing is called for a triangle that is seen from its edge.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "kept within the picture")]
#[inline(always)]
pub(super) fn covered(corners: &[[f32; 3]; 3], size: [usize; 2], mut each: impl FnMut(usize, usize, f32)) {
    let [a, b, c] = *corners;
    let least = |axis: usize| a[axis].min(b[axis]).min(c[axis]);
    let most = |axis: usize| a[axis].max(b[axis]).max(c[axis]);
    // Pixels count from 0; what lies before them is cut off before it is rounded, so that cutting off what follows the point rounds down.
    let from = |axis: usize| {
        let first = (least(axis) - 0.5).max(0.0);
        let whole = first as i32 as f32;
        if whole < first { whole + 1.0 } else { whole }
    };
    let to = |axis: usize| {
        let last = (most(axis) - 0.5).min(size[axis] as f32 - 1.0);
        if last < 0.0 { -1.0 } else { last as i32 as f32 }
    };
    let (left, right, top, bottom) = (from(0), to(0), from(1), to(1));
    if !(left <= right && top <= bottom) {
        return;
    }
    let area = area2(corners);
    if !area.is_finite() || area == 0.0 {
        return;
    }
    let flipped = area < 0.0;
    let edges = [Edge::new(a, b, flipped), Edge::new(b, c, flipped), Edge::new(c, a, flipped)];
    let slope_x = ((b[2] - a[2]) * (c[1] - a[1]) - (c[2] - a[2]) * (b[1] - a[1])) / area;
    let slope_y = ((c[2] - a[2]) * (b[0] - a[0]) - (b[2] - a[2]) * (c[0] - a[0])) / area;
    // A triangle seen almost from its edge has a wild slope: it never leaves its own corners.
    let (farthest, nearest) = (least(2), most(2));
    let wide = right - left > 8.0;
    for row in top as usize..=bottom as usize {
        let y = row as f32 + 0.5;
        let across = edges.map(|edge| edge.dx * (y - edge.y));
        let (mut first, mut last) = (left, right);
        if wide {
            for (edge, across) in edges.iter().zip(across) {
                edge.narrow(across, &mut first, &mut last);
            }
        }
        if first > last {
            continue;
        }
        for column in first as usize..=last as usize {
            let x = column as f32 + 0.5;
            if edges[0].holds(across[0], x) && edges[1].holds(across[1], x) && edges[2].holds(across[2], x) {
                let near = a[2] + slope_x * (x - a[0]) + slope_y * (y - a[1]);
                each(column, row, near.clamp(farthest, nearest));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A sheet of triangles whose inner points were pushed about, over more than the whole picture.
    fn crumpled() -> Vec<[[f32; 3]; 3]> {
        let mut seed = 7_u32;
        let mut push = || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (seed >> 8) as f32 / (1 << 24) as f32 - 0.5
        };
        let points: Vec<[f32; 3]> = (0..21 * 21)
            .map(|at| [(at % 21) as f32 * 5.0 - 10.0 + 4.0 * push(), (at / 21) as f32 * 5.0 - 10.0 + 4.0 * push(), push()])
            .collect();
        let at = |x: usize, y: usize| points[y * 21 + x];
        let quad = |x, y| [[at(x, y), at(x + 1, y), at(x + 1, y + 1)], [at(x, y), at(x + 1, y + 1), at(x, y + 1)]];
        (0..400).flat_map(|n| quad(n % 20, n / 20)).collect()
    }

    #[test]
    fn triangles_that_meet_leave_no_gap_and_share_no_pixel() {
        // Folds are allowed: where the sheet turns over it is left as often as it is entered.
        let mut turns = vec![0_i32; 80 * 80];
        for triangle in crumpled() {
            let turn = if area2(&triangle) > 0.0 { 1 } else { -1 };
            covered(&triangle, [80, 80], |column, row, _| turns[row * 80 + column] += turn);
        }
        assert!(turns.iter().all(|turns| *turns == 1), "{} pixels", turns.iter().filter(|turns| **turns != 1).count());
    }

    #[test]
    fn nearness_is_that_of_the_plane() {
        let plane = |x: f32, y: f32| 0.25 * x - 0.5 * y + 3.0;
        let corner = |x, y| [x, y, plane(x, y)];
        let mut many = 0;
        covered(&[corner(1.0, 2.0), corner(30.0, 5.0), corner(9.0, 27.0)], [32, 32], |column, row, near| {
            many += 1;
            assert!((near - plane(column as f32 + 0.5, row as f32 + 0.5)).abs() < 1e-4);
        });
        // Half the cross product of two of its sides.
        let area: f32 = (29.0 * 25.0 - 3.0 * 8.0) / 2.0;
        assert!((many as f32 - area).abs() < 12.0, "{many} of {area}");
    }
}
