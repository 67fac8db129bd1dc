//! How a piece may be turned, and how high it may be joined, before anything else hangs there: to the wall, above, below, and to the trunk.

use super::super::solid::{Point, Rod, Solid, apart};
use super::super::stand::{Form, Trunk, stand};
use super::check::on_trunk;
use super::cost::middle;
use super::near::Body;
use super::{CannotArrange, LARGEST_MM, Task, Wanted};

/// A piece and its feed, turned so and so, joined at height nought towards the first way.
#[derive(Debug, Clone)]
pub(super) struct Pose {
    pub twist_deg: f64,
    pub piece: Body,
    pub feed: Body,
    /// The lowest and the highest of both.
    pub heights: [f64; 2],
    /// The farthest both reach from the axis.
    pub reach: f64,
    /// The middle of the piece as it is seen along the trunk.
    pub middle: [f64; 2],
    /// The lowest and the highest it may be joined.
    pub joints: [f64; 2],
    /// It is its own mirror image.
    pub is_mirrored: bool,
}

/// The poses of every piece.
#[derive(Debug, Clone)]
pub(super) struct Kinds {
    pub poses: Vec<Pose>,
    /// For every piece, the poses it may take, the best liked first. Equal pieces have the same.
    pub of_piece: Vec<Vec<usize>>,
    /// How many different pieces there are.
    pub many: usize,
}

/// A length that is as much as it must be, but for rounding.
const ENOUGH_MM: f64 = 1e-10;

/// So many turns of a piece are tried.
const MOST_TURNS: usize = 2;

/// Corners as near as this are the same; what is kept between solids is more.
const ALIKE_MM: f64 = 1e-8;

impl Kinds {
    pub fn of(task: &Task) -> Result<Self, CannotArrange> {
        flask(task)?;
        if let Some(piece) = task.pieces.iter().position(|wanted| !is_sound(wanted)) {
            return Err(CannotArrange::BadPiece { piece });
        }
        let mut kinds = Self { poses: Vec::new(), of_piece: Vec::new(), many: 0 };
        let mut seen: Vec<(usize, Vec<usize>)> = Vec::new();
        for (piece, wanted) in task.pieces.iter().enumerate() {
            let known = seen.iter().find(|(other, _)| is_like(&task.pieces[*other], wanted));
            let these = if let Some((_, these)) = known {
                these.clone()
            } else {
                let poses = match wanted.held {
                    Some(held) => vec![pose(task, wanted, held.twist_deg)],
                    None => turned(task, piece, wanted)?,
                };
                let first = kinds.poses.len();
                kinds.poses.extend(poses);
                let these: Vec<usize> = (first..kinds.poses.len()).collect();
                seen.push((piece, these.clone()));
                these
            };
            kinds.of_piece.push(these);
        }
        kinds.many = seen.len();
        Ok(kinds)
    }
}

#[allow(clippy::float_cmp, reason = "the same numbers make the same piece")]
fn is_like(one: &Wanted, other: &Wanted) -> bool {
    one.form == other.form
        && [one.feed_diameter_mm, one.feed_length_mm, one.angle_deg] == [other.feed_diameter_mm, other.feed_length_mm, other.angle_deg]
        && one.held.map(|held| held.twist_deg) == other.held.map(|held| held.twist_deg)
}

fn is_size(number: f64) -> bool {
    (0.0..=LARGEST_MM).contains(&number)
}

fn is_sound(wanted: &Wanted) -> bool {
    let form = match &wanted.form {
        Form::Sides(sides) => sides.iter().all(|side| is_size(*side)),
        Form::Hull(points) => !points.is_empty() && points.iter().flatten().all(|number| is_size(number.abs())),
    };
    let held = wanted.held.is_none_or(|held| [held.joint_mm, held.around_deg, held.twist_deg].iter().all(|number| is_size(number.abs())));
    form && held
        && [wanted.weight_g, wanted.feed_diameter_mm, wanted.feed_length_mm].iter().all(|number| is_size(*number))
        && wanted.thinnest_mm.is_none_or(is_size)
        && wanted.feed_diameter_mm > 0.0
        && (0.1..=179.9).contains(&wanted.angle_deg)
}

fn flask(task: &Task) -> Result<(), CannotArrange> {
    let (trunk, limits) = (&task.trunk, &task.limits);
    let room = [limits.wall_mm, limits.between_mm, limits.feeds_mm.unwrap_or(0.0), limits.trunk_mm, limits.top_mm, limits.bottom_mm];
    let sizes = [trunk.diameter_mm, trunk.length_mm, trunk.dome_mm, limits.inner_diameter_mm, limits.height_mm];
    if !room.iter().chain(&sizes).all(|number| is_size(*number)) || trunk.diameter_mm <= 0.0 {
        return Err(CannotArrange::BadFlask);
    }
    // The trunk as it stands: with a round end, so that one thicker than long is a ball.
    let needs_mm = stand(trunk, &[]).trunk.heights()[1] + limits.top_mm;
    if needs_mm > limits.height_mm + ENOUGH_MM {
        return Err(CannotArrange::TrunkTooLong { needs_mm, has_mm: limits.height_mm });
    }
    let needs_mm = trunk.diameter_mm + 2.0 * limits.wall_mm;
    if needs_mm > limits.inner_diameter_mm + ENOUGH_MM {
        return Err(CannotArrange::TrunkTooThick { needs_mm, has_mm: limits.inner_diameter_mm });
    }
    Ok(())
}

/// A piece turned by so much; its joints as if there were no limits but the trunk's ends.
fn pose(task: &Task, wanted: &Wanted, twist_deg: f64) -> Pose {
    let tree = stand(&task.trunk, &[wanted.hang(0.0, 0.0, twist_deg)]);
    let (piece, feed) = (&tree.pieces[0], &tree.feeds[0]);
    let ([low, high], [feed_low, feed_high]) = (piece.heights(), feed.heights());
    Pose {
        twist_deg,
        heights: [low.min(feed_low), high.max(feed_high)],
        reach: piece.reach().max(feed.reach()),
        middle: middle(piece),
        joints: on_trunk(task, wanted),
        is_mirrored: are_alike(&Body::of(piece), &Body::of(piece).mirrored()),
        piece: Body::of(piece),
        feed: Body::of(feed),
    }
}

/// How a piece may be turned: by quarters, and by less only where no quarter does.
fn turned(task: &Task, piece: usize, wanted: &Wanted) -> Result<Vec<Pose>, CannotArrange> {
    let quarters: &[f64] = if matches!(wanted.form, Form::Sides(_)) { &[0.0, 90.0] } else { &[0.0, 90.0, 180.0, 270.0] };
    if let Ok(mut poses) = fitting(task, piece, wanted, quarters) {
        // A ring that is turned over is the same ring.
        let mut different: Vec<Pose> = Vec::new();
        poses.retain(|pose| {
            let is_new = !different.iter().any(|other| are_alike(&pose.piece, &other.piece));
            if is_new {
                different.push(pose.clone());
            }
            is_new
        });
        poses.truncate(MOST_TURNS);
        return Ok(poses);
    }
    let all: Vec<f64> = (0..360).map(f64::from).collect();
    let mut found = fitting(task, piece, wanted, &all)?;
    // One with most room to the wall, and one a quarter from it or the nearest to that.
    let best = found.iter().enumerate().min_by(|a, b| a.1.reach.total_cmp(&b.1.reach)).map_or(0, |(at, _)| at);
    found.swap(0, best);
    let off = |pose: &Pose| ((pose.twist_deg - found[0].twist_deg).rem_euclid(180.0) - 90.0).abs();
    let other = (1..found.len()).min_by(|a, b| off(&found[*a]).total_cmp(&off(&found[*b]))).unwrap_or(0);
    if other > 1 {
        found.swap(1, other);
    }
    found.truncate(MOST_TURNS);
    Ok(found)
}

/// Have two bodies the same corners, but for rounding?
fn are_alike(one: &Body, other: &Body) -> bool {
    let has = |points: &[Point], point: &Point| points.iter().any(|near| (0..3).all(|k| (near[k] - point[k]).abs() < ALIKE_MM));
    let holds = |one: &Body, other: &Body| one.corners.iter().all(|corner| has(&other.corners, corner));
    holds(one, other) && holds(other, one)
}

/// The poses of these turns that fit, or why none does: first the wall, then the trunk, then the height.
fn fitting(task: &Task, piece: usize, wanted: &Wanted, twists: &[f64]) -> Result<Vec<Pose>, CannotArrange> {
    let limits = &task.limits;
    let poses: Vec<Pose> = twists.iter().map(|twist| pose(task, wanted, *twist)).collect();
    let least = |all: &[Pose], of: &dyn Fn(&Pose) -> f64| all.iter().map(of).fold(f64::INFINITY, f64::min);
    let wide = |pose: &Pose| 2.0 * (pose.reach + limits.wall_mm);
    let needs_mm = least(&poses, &wide);
    let mut poses: Vec<Pose> = poses.into_iter().filter(|pose| wide(pose) <= limits.inner_diameter_mm + ENOUGH_MM).collect();
    if poses.is_empty() {
        return Err(CannotArrange::TooWide { piece, needs_mm, has_mm: limits.inner_diameter_mm });
    }
    let mut most = f64::NEG_INFINITY;
    for pose in &mut poses {
        most = most.max(off_the_trunk(task, pose));
    }
    poses.retain(|pose| pose.joints[0].is_finite());
    if poses.is_empty() {
        return Err(CannotArrange::FeedTooShort { piece, needs_mm: limits.trunk_mm, has_mm: most });
    }
    let end = on_trunk(task, wanted)[1];
    for pose in &mut poses {
        pose.joints[0] = pose.joints[0].max(limits.bottom_mm - pose.heights[0]);
    }
    let needs_mm = task.trunk.length_mm + least(&poses, &|pose| pose.joints[0]) - end;
    poses.retain(|pose| pose.joints[0] <= end + ENOUGH_MM);
    if poses.is_empty() {
        return Err(CannotArrange::TrunkTooShort { piece, needs_mm, has_mm: task.trunk.length_mm });
    }
    let high = |pose: &Pose| pose.joints[0] + pose.heights[1] + limits.top_mm;
    let needs_mm = least(&poses, &high);
    poses.retain(|pose| high(pose) <= limits.height_mm + ENOUGH_MM);
    if poses.is_empty() {
        return Err(CannotArrange::TooHigh { piece, needs_mm, has_mm: limits.height_mm });
    }
    for pose in &mut poses {
        pose.joints[1] = pose.joints[1].min(limits.height_mm - limits.top_mm - pose.heights[1]).max(pose.joints[0]);
    }
    Ok(poses)
}

/// Raises the lowest joint to where the piece keeps off the trunk: to no height at all where it never does. Gives the most room it has there.
///
/// What of the trunk is beside a piece only gets less the higher it is joined, so that the room gets no less.
fn off_the_trunk(task: &Task, pose: &mut Pose) -> f64 {
    let needs = task.limits.trunk_mm;
    let piece = Solid::Hull(pose.piece.corners.clone());
    let room = |joint: f64| apart(&piece, &lowered(&task.trunk, joint)).at_least_mm;
    let [low, high] = pose.joints;
    let most = room(high.max(low));
    if most < needs - ENOUGH_MM {
        pose.joints[0] = f64::INFINITY;
    } else if room(low) < needs - ENOUGH_MM {
        let (mut tight, mut clear) = (low, high.max(low));
        for _ in 0..40 {
            let between = 0.5 * (tight + clear);
            if room(between) < needs - ENOUGH_MM { tight = between } else { clear = between }
        }
        pose.joints[0] = clear;
    }
    most
}

/// The trunk as it is seen from a joint.
fn lowered(trunk: &Trunk, joint: f64) -> Solid {
    match stand(trunk, &[]).trunk {
        Solid::Rod(rod) => Solid::Rod(Rod { ends: rod.ends.map(|[x, y, z]| [x, y, z - joint]), ..rod }),
        other => other,
    }
}
