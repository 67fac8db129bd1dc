//! Where the hulls of two sets of points are nearest.

use super::{Point, dot, gap, minus};

/// What was found.
pub(super) struct Nearest {
    /// A place in the first hull and one in the second.
    pub places: [Point; 2],
    /// The hulls are proven to be at least so far apart; nought or less where they were not told apart.
    pub proven: f64,
}

/// A corner of the difference of two hulls, with the corners it comes from.
#[derive(Clone, Copy)]
struct Corner {
    at: Point,
    from: [Point; 2],
}

/// Steps at most; a dozen are usual.
const STEPS: usize = 128;

/// Finds it for sets that are not empty.
pub(super) fn nearest(a: &[Point], b: &[Point]) -> Nearest {
    let corner = |way: Point| {
        let [far_a, far_b] = [farthest(a, way.map(|x| -x)), farthest(b, way)];
        Corner { at: minus(far_a, far_b), from: [far_a, far_b] }
    };
    let mut held = vec![corner(minus(a[0], b[0]))];
    let mut shares = vec![1.0];
    let mut proven = f64::NEG_INFINITY;
    for _ in 0..STEPS {
        let now = sum(&held, &shares, |corner| corner.at);
        let squared = dot(now, now);
        proven = f64::max(proven, gap(a, b, now));
        let next = corner(now);
        // No corner lies farther towards the origin: this is the nearest point, to the last digits.
        let left = squared - dot(now, next.at);
        if squared == 0.0 || left <= 1e-15 * squared || held.iter().any(|corner| corner.at == next.at) {
            break;
        }
        held.push(next);
        let (kept, new_shares) = smallest(&held);
        let closer = sum(&kept, &new_shares, |corner| corner.at);
        if dot(closer, closer) >= squared {
            break;
        }
        (held, shares) = (kept, new_shares);
        if held.len() == 4 {
            // The origin lies within: the hulls lie in each other.
            break;
        }
    }
    let places = [0, 1].map(|which| sum(&held, &shares, |corner| corner.from[which]));
    Nearest { places, proven }
}

/// The point that lies farthest along a way; there is at least one.
pub(in crate::calc) fn farthest(points: &[Point], way: Point) -> Point {
    let mut best = (f64::NEG_INFINITY, points[0]);
    for point in points {
        let far = dot(*point, way);
        if far > best.0 {
            best = (far, *point);
        }
    }
    best.1
}

fn sum(held: &[Corner], shares: &[f64], of: impl Fn(&Corner) -> Point) -> Point {
    let mut sum = [0.0; 3];
    for (corner, share) in held.iter().zip(shares) {
        let point = of(corner);
        (0..3).for_each(|k| sum[k] += share * point[k]);
    }
    sum
}

/// The corners among at most four whose hull holds the point nearest to the origin, and the share of each in that point. Every corner, edge, face
/// and the whole is tried: fifteen at most.
fn smallest(held: &[Corner]) -> (Vec<Corner>, Vec<f64>) {
    let mut best: Option<(f64, Vec<Corner>, Vec<f64>)> = None;
    for chosen in 1_u32..1 << held.len() {
        let these: Vec<Corner> = (0..held.len()).filter(|at| chosen >> at & 1 == 1).map(|at| held[at]).collect();
        let Some(shares) = shares_of(&these) else { continue };
        let point = sum(&these, &shares, |corner| corner.at);
        let squared = dot(point, point);
        if best.as_ref().is_none_or(|(least, kept, _)| squared < *least || (squared == *least && these.len() < kept.len())) {
            best = Some((squared, these, shares));
        }
    }
    best.map_or_else(|| (vec![held[0]], vec![1.0]), |(_, kept, shares)| (kept, shares))
}

/// Shares of the corners in the point of their flat that is nearest to the origin; nothing where it lies outside of them or they lie flatter
/// than that.
fn shares_of(these: &[Corner]) -> Option<Vec<f64>> {
    let base = these[0].at;
    let edges: Vec<Point> = these[1..].iter().map(|corner| minus(corner.at, base)).collect();
    let many = edges.len();
    let mut rows = vec![vec![0.0; many + 1]; many];
    for (at, row) in rows.iter_mut().enumerate() {
        (0..many).for_each(|other| row[other] = dot(edges[at], edges[other]));
        row[many] = -dot(edges[at], base);
    }
    let solved = solved(rows)?;
    let first = 1.0 - solved.iter().sum::<f64>();
    let shares: Vec<f64> = std::iter::once(first).chain(solved).collect();
    shares.iter().all(|share| *share >= 0.0 && share.is_finite()).then_some(shares)
}

/// Solves up to three equations by elimination, the largest pivot first.
fn solved(mut rows: Vec<Vec<f64>>) -> Option<Vec<f64>> {
    let many = rows.len();
    for step in 0..many {
        let pivot = (step..many).max_by(|a, b| rows[*a][step].abs().total_cmp(&rows[*b][step].abs()))?;
        rows.swap(step, pivot);
        let top = rows[step].clone();
        if top[step] == 0.0 {
            return None;
        }
        for row in rows.iter_mut().skip(step + 1) {
            let times = row[step] / top[step];
            (step..=many).for_each(|at| row[at] -= times * top[at]);
        }
    }
    let mut found = vec![0.0; many];
    for step in (0..many).rev() {
        let known: f64 = (step + 1..many).map(|at| rows[step][at] * found[at]).sum();
        found[step] = (rows[step][many] - known) / rows[step][step];
    }
    Some(found)
}
