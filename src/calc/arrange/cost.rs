//! What a tree costs: how far it is from heavy below, thin above, and balanced.

use super::super::solid::Solid;
use super::super::stand::{Hang, stand};
use super::Task;

/// What a tree costs. Nought is best; each part is a pure number up to 1.
///
/// That heavy pieces belong near the button, which feeds them while they freeze, thin ones where the head of metal is greatest, and that a tree's
/// weight is balanced: common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Cost {
    /// How much higher heavier pieces are joined than lighter ones: over every two pieces, the difference of their weights (g) by the height (mm)
    /// at which the heavier one is joined over the lighter one, divided by all differences of weight by the trunk's length. Nought where no
    /// heavier piece is joined higher; 1 where all of them are, by the whole trunk.
    pub heavy: f64,
    /// The same for sections: how much higher thicker pieces are joined than thinner ones, in mm of their thinnest section by mm of height. Pieces
    /// whose section is not known do not count.
    pub thin: f64,
    /// How far the common centre of the pieces' weight is off the trunk's axis, divided by what it would be if all hung the same way:
    /// nought is balanced, 1 hangs to one side. The weight of a piece is taken to be in the middle of its corners; feeds do not count.
    pub balance: f64,
    /// The mean of the three.
    pub total: f64,
}

/// What a tree costs. Hangs beyond the pieces of the task, and pieces that do not hang, do not count.
#[must_use]
pub fn cost(task: &Task, hangs: &[Hang]) -> Cost {
    let tree = stand(&task.trunk, hangs);
    let points = hangs.iter().zip(&tree.pieces).zip(&task.pieces).map(|((hang, solid), wanted)| {
        let [x, y] = middle(solid);
        Weighed { joint: hang.joint_mm, x, y, weight: wanted.weight_g, thinnest: wanted.thinnest_mm }
    });
    of(&points.collect::<Vec<_>>(), task.trunk.length_mm)
}

/// The middle of a piece's corners, as far as it is seen along the trunk.
pub(super) fn middle(solid: &Solid) -> [f64; 2] {
    let mean = |points: &[[f64; 3]], axis: usize| points.iter().map(|point| point[axis]).sum::<f64>() / points.len().max(1) as f64;
    match solid {
        Solid::Block(block) => [block.centre[0], block.centre[1]],
        Solid::Rod(rod) => [0, 1].map(|axis| mean(&rod.ends, axis)),
        Solid::Hull(points) => [0, 1].map(|axis| mean(points, axis)),
    }
}

/// What matters of a piece.
#[derive(Debug, Clone, Copy)]
pub(super) struct Weighed {
    pub joint: f64,
    pub x: f64,
    pub y: f64,
    pub weight: f64,
    pub thinnest: Option<f64>,
}

pub(super) fn of(pieces: &[Weighed], length_mm: f64) -> Cost {
    let (mut heavy, mut thin) = ([0.0; 2], [0.0; 2]);
    for (at, one) in pieces.iter().enumerate() {
        for other in &pieces[at + 1..] {
            let higher = one.joint - other.joint;
            let add = |sum: &mut [f64; 2], more: f64| {
                sum[0] += (more * higher).max(0.0);
                sum[1] += more.abs();
            };
            add(&mut heavy, one.weight - other.weight);
            if let (Some(first), Some(second)) = (one.thinnest, other.thinnest) {
                add(&mut thin, first - second);
            }
        }
    }
    let sum = |part: fn(&Weighed) -> f64| pieces.iter().map(part).sum::<f64>();
    let off = sum(|one| one.weight * one.x).hypot(sum(|one| one.weight * one.y));
    let [heavy, thin] = [heavy, thin].map(|[sum, all]| share(sum, all * length_mm));
    let balance = share(off, sum(|one| one.weight * one.x.hypot(one.y)));
    Cost { heavy, thin, balance, total: (heavy + thin + balance) / 3.0 }
}

fn share(part: f64, whole: f64) -> f64 {
    if whole > 0.0 { part / whole } else { 0.0 }
}
