//! Whether a point lies inside a closed surface.

use super::radial::{cross, dot, minus};
use super::soup::Triangle;
use super::sums::Span;
use super::tree::Tree;

/// Where a point is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    Inside,
    Outside,
    /// On the surface, or too near to tell.
    On,
}

/// Rays that lie along no axis, plane or diagonal a model is likely to have.
const RAYS: [[f64; 3]; 7] = [
    [0.577_215_66, 0.618_033_98, 0.533_691_02],
    [-0.314_159_26, 0.271_828_18, 0.909_671_23],
    [0.707_319_71, -0.141_421_35, 0.692_604_33],
    [0.123_456_78, 0.866_302_54, -0.484_083_11],
    [-0.832_050_29, -0.432_109_87, 0.347_296_35],
    [0.290_473_51, -0.951_056_51, -0.105_733_71],
    [-0.161_803_39, -0.223_606_79, -0.961_150_47],
];

/// Distance, as a share of the box's diagonal, within which a point counts as on the surface.
const ON_SHARE: f64 = 1e-9;

/// Finds where `point` is by the sum of signed crossings of a ray, which is the winding number.
pub(super) fn place(tree: &Tree, point: [f64; 3]) -> Place {
    RAYS.iter().find_map(|ray| along(tree, point, *ray)).unwrap_or(Place::On)
}

/// The answer along one ray, or nothing where the ray passes too near an edge to count crossings.
fn along(tree: &Tree, point: [f64; 3], ray: [f64; 3]) -> Option<Place> {
    let near = ON_SHARE * tree.nodes[0].span.diagonal();
    let mut winding = 0;
    let mut waiting = vec![0_u32];
    while let Some(at) = waiting.pop() {
        let node = &tree.nodes[at as usize];
        if !ray_meets(&node.span, point, ray, near) {
            continue;
        }
        if node.count == 0 {
            waiting.extend([node.first, node.first + 1]);
            continue;
        }
        for triangle in tree.leaf(node) {
            match crossing(triangle, point, ray, near) {
                Crossing::None => {}
                Crossing::Signed(sign) => winding += sign,
                Crossing::Here => return Some(Place::On),
                Crossing::Unclear => return None,
            }
        }
    }
    Some(if winding == 0 { Place::Outside } else { Place::Inside })
}

fn ray_meets(span: &Span, point: [f64; 3], ray: [f64; 3], slack: f64) -> bool {
    let (mut from, mut to) = (-slack, f64::INFINITY);
    for axis in 0..3 {
        let a = (f64::from(span.low[axis]) - slack - point[axis]) / ray[axis];
        let b = (f64::from(span.high[axis]) + slack - point[axis]) / ray[axis];
        from = from.max(a.min(b));
        to = to.min(a.max(b));
    }
    from <= to
}

enum Crossing {
    None,
    Signed(i32),
    Here,
    Unclear,
}

fn crossing(triangle: &Triangle, point: [f64; 3], ray: [f64; 3], near: f64) -> Crossing {
    let [a, b, c] = triangle.map(|corner| minus(corner.map(f64::from), point));
    let normal = cross(minus(b, a), minus(c, a));
    let turns = [dot(ray, cross(b, c)), dot(ray, cross(c, a)), dot(ray, cross(a, b))];
    // What rounding can do to such a product.
    let doubt = 1e-13 * (dot(a, a) + dot(b, b) + dot(c, c));
    if turns.iter().any(|&t| t > doubt) && turns.iter().any(|&t| t < -doubt) {
        return Crossing::None;
    }
    let across = dot(ray, normal);
    let distance = dot(a, normal) / across;
    let certain = turns.iter().all(|&t| t > doubt) || turns.iter().all(|&t| t < -doubt);
    if !certain {
        // Behind the point an unclear crossing does not matter.
        let behind = [a, b, c].iter().all(|&corner| dot(corner, ray) < -near);
        return if behind { Crossing::None } else { Crossing::Unclear };
    }
    if distance.abs() <= near {
        Crossing::Here
    } else if distance > 0.0 {
        Crossing::Signed(if across > 0.0 { 1 } else { -1 })
    } else {
        Crossing::None
    }
}
