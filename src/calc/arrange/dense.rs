//! How many equal pieces go on a tree: the densest even tiers, one above the other or staggered.

use super::super::stand::{Hang, Trunk};
use super::place::Spot;
use super::pose::{Kinds, Pose};
use super::sides::{NEVER_DEG, Sides};
use super::{CannotArrange, Limits, Task, Wanted, check};

/// More places are not counted.
pub const MOST_PLACES: u32 = 500;

/// Tiers are so many parts of the free length apart, or a multiple.
const PARTS: u32 = 200;

/// Pieces on a tier at most.
const MOST_ON_TIER: u32 = 60;

/// How many pieces like this go on a tree in this flask: at least so many can be arranged. A place it is held at does not count.
///
/// # Errors
/// Where not even one does.
pub fn places(trunk: &Trunk, piece: &Wanted, limits: &Limits) -> Result<u32, CannotArrange> {
    let piece = Wanted { held: None, ..piece.clone() };
    let mut task = Task { trunk: *trunk, pieces: vec![piece.clone()], limits: *limits };
    let kinds = Kinds::of(&task)?;
    let mut sides = Sides::new(&kinds.poses, *limits);
    for spots in lattices(&mut sides, &kinds.poses, &kinds.of_piece[0]) {
        let hangs: Vec<Hang> = spots.iter().map(|spot| piece.hang(spot.joint, spot.around, kinds.poses[spot.pose].twist_deg)).collect();
        task.pieces = vec![piece.clone(); hangs.len()];
        if check(&task, &hangs).is_ok() {
            return Ok(hangs.len() as u32);
        }
    }
    Err(CannotArrange::RoomFor { most: 0, of: 1, hangs: vec![None], stopped: false, steps: sides.looks })
}

/// Every way of even tiers of one pose, those with most places first. Each begins with its lowest tier, and any beginning of it is a tree.
pub(super) fn lattices(sides: &mut Sides, poses: &[Pose], these: &[usize]) -> Vec<Vec<Spot>> {
    let mut found: Vec<Vec<Spot>> = Vec::new();
    for pose in these {
        let [low, high] = poses[*pose].joints;
        let alone = sides.left(*pose, *pose, 0.0);
        let most = if alone >= NEVER_DEG { 1 } else { ((360.0 / alone) as u32).clamp(1, MOST_ON_TIER) };
        for many in 1..=most {
            let even = 360.0 / f64::from(many);
            for stagger in [0.5 * even, 0.0] {
                let pitch = pitch(sides, *pose, many, stagger, high - low);
                let tiers = if pitch > 0.0 { ((high - low) / pitch + 1e-9) as u32 + 1 } else { 1 };
                let seat = |tier: u32, seat: u32| Spot {
                    pose: *pose,
                    joint: (low + pitch * f64::from(tier)).min(high),
                    around: (stagger * f64::from(tier % 2) + even * f64::from(seat)).rem_euclid(360.0),
                };
                let all = (0..tiers).flat_map(|tier| (0..many).map(move |at| (tier, at)));
                found.push(all.take(MOST_PLACES as usize).map(|(tier, at)| seat(tier, at)).collect());
            }
        }
    }
    found.sort_by_key(|spots| std::cmp::Reverse(spots.len()));
    found
}

/// How far tiers of so many must at least be apart; nought where there is only one.
fn pitch(sides: &mut Sides, pose: usize, many: u32, stagger: f64, span: f64) -> f64 {
    if span <= 0.0 {
        return 0.0;
    }
    let good = (1..=PARTS).find(|parts| {
        let pitch = span * f64::from(*parts) / f64::from(PARTS);
        (1..=PARTS / parts).all(|apart| are_clear(sides, pose, many, if apart % 2 == 1 { stagger } else { 0.0 }, pitch * f64::from(apart)))
    });
    good.map_or(0.0, |parts| span * f64::from(parts) / f64::from(PARTS))
}

/// Is a tier clear of another that is so much higher and so far round?
fn are_clear(sides: &mut Sides, pose: usize, many: u32, round: f64, higher: f64) -> bool {
    let left = sides.left(pose, pose, higher);
    let right = sides.left(pose, pose, -higher);
    (0..many).all(|seat| {
        let at = (round + 360.0 * f64::from(seat) / f64::from(many)).rem_euclid(360.0);
        at >= left && 360.0 - at >= right || left + right <= 0.0
    })
}
