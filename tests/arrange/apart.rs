//! Whether a tree keeps its room, by another way than the program's: solids placed by their own trigonometry, parted by planes that are searched for
//! way by way. A plane found is a proof: nothing on its one side is nearer to anything on its other.

use pourbook::calc::arrange::Task;
use pourbook::calc::stand::{Form, Hang};

use super::world::Dice;

type Point = [f64; 3];

/// Corners, and how thick the solid is around them.
pub struct Body {
    pub corners: Vec<Point>,
    pub round: f64,
}

/// Turned about z, and moved.
fn hung(point: Point, hang: &Hang, from: f64) -> Point {
    let [along, across, deep] = point;
    // About the feed; the feed leans from the axis z outwards; all about the trunk.
    let (ts, tc) = hang.twist_deg.to_radians().sin_cos();
    let (up, side) = (across * tc - deep * ts, across * ts + deep * tc);
    let (s, c) = hang.angle_deg.to_radians().sin_cos();
    let (out, high) = (from + along * s - up * c, hang.joint_mm + along * c + up * s);
    let (fs, fc) = hang.around_deg.to_radians().sin_cos();
    [out * fc - side * fs, out * fs + side * fc, high]
}

/// The piece and the feed of every hang, then the trunk.
pub fn bodies(task: &Task, hangs: &[Hang]) -> (Vec<[Body; 2]>, Body) {
    let radius = 0.5 * task.trunk.diameter_mm;
    let all = hangs.iter().map(|hang| {
        let points = match &hang.form {
            Form::Hull(points) => points.clone(),
            Form::Sides([along, across, deep]) => {
                let ends = |side: f64| [-0.5 * side, 0.5 * side];
                let mut corners = Vec::new();
                for a in [0.0, *along] {
                    for b in ends(*across) {
                        corners.extend(ends(*deep).map(|c| [a, b, c]));
                    }
                }
                corners
            }
        };
        let foot = |point: &Point| hung([point[0] + hang.feed_length_mm, point[1], point[2]], hang, radius);
        let ends = [0.0, hang.feed_length_mm].map(|along| hung([along, 0.0, 0.0], hang, radius));
        [
            Body { corners: points.iter().map(foot).collect(), round: 0.0 },
            Body { corners: ends.to_vec(), round: 0.5 * hang.feed_diameter_mm },
        ]
    });
    let end = [0.0, 0.0, task.trunk.dome_mm + task.trunk.length_mm - radius];
    (all.collect(), Body { corners: vec![[0.0; 3], end], round: radius })
}

fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn unit(a: Point) -> Point {
    let long = dot(a, a).sqrt();
    a.map(|x| x / long)
}

/// How far apart two bodies are along a way.
fn along(one: &Body, other: &Body, way: Point) -> f64 {
    let least = one.corners.iter().map(|corner| dot(*corner, way)).fold(f64::INFINITY, f64::min);
    let most = other.corners.iter().map(|corner| dot(*corner, way)).fold(f64::NEG_INFINITY, f64::max);
    least - most - one.round - other.round
}

/// The room between two bodies that the best way proves: from ways all over, climbed from the best in ever smaller random steps until so much is
/// proven. Where bodies are apart there is one best way, and no other that is better than those around it.
pub fn proven(one: &Body, other: &Body, enough: f64) -> f64 {
    let middle = |body: &Body| [0, 1, 2].map(|k| body.corners.iter().map(|corner| corner[k]).sum::<f64>() / body.corners.len() as f64);
    let (a, b) = (middle(one), middle(other));
    let mut way = unit([a[0] - b[0], a[1] - b[1], a[2] - b[2]]);
    let mut best = along(one, other, way);
    if best >= enough {
        return best;
    }
    for at in 0..60 {
        let z = 1.0 - (2.0 * f64::from(at) + 1.0) / 60.0;
        let (sin, cos) = (f64::from(at) * std::f64::consts::PI * (3.0 - 5.0_f64.sqrt())).sin_cos();
        let flat = (1.0 - z * z).sqrt();
        let next = [flat * cos, flat * sin, z];
        let room = along(one, other, next);
        if room > best || best.is_nan() {
            (best, way) = (room, next);
        }
    }
    // A ridge may hold a climb up where all steps around it are small: it is begun again with large ones.
    let mut dice = Dice(3);
    for _ in 0..12 {
        let mut step = 0.3;
        while step > 1e-8 && best < enough {
            let better = (0..60).find_map(|_| {
                let next = unit(way.map(|x| x + step * dice.between(-1.0, 1.0)));
                let room = along(one, other, next);
                (room > best).then_some((room, next))
            });
            match better {
                Some(found) => (best, way) = found,
                None => step *= 0.6,
            }
        }
    }
    best
}

/// The least room to spare of a tree: between every two solids, to the wall, above and below.
pub fn spare(task: &Task, hangs: &[Hang]) -> f64 {
    let (hung, trunk) = bodies(task, hangs);
    let limits = &task.limits;
    let mut least = f64::INFINITY;
    let mut two = |one: &Body, other: &Body, needs: f64| least = least.min(proven(one, other, needs) - needs);
    for (at, [piece, feed]) in hung.iter().enumerate() {
        two(piece, &trunk, limits.trunk_mm);
        for [other, other_feed] in &hung[at + 1..] {
            two(piece, other, limits.between_mm);
            two(piece, other_feed, limits.between_mm);
            two(feed, other, limits.between_mm);
            if let Some(needs) = limits.feeds_mm {
                two(feed, other_feed, needs);
            }
        }
    }
    for body in hung.iter().flatten() {
        for [x, y, z] in &body.corners {
            least = least.min(0.5 * limits.inner_diameter_mm - limits.wall_mm - x.hypot(*y) - body.round);
            least = least.min(limits.height_mm - limits.top_mm - z - body.round);
            least = least.min(z - body.round - limits.bottom_mm);
        }
    }
    least
}
