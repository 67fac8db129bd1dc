//! The moves of the search: each takes a few pieces down and hangs them again.

use super::place::{SAME_MM, Spot, between, tiers};
use super::search::Search;

/// An even tier is not even where a piece had to go aside by more, in degrees.
const EVEN_DEG: f64 = 1e-6;

impl Search<'_> {
    /// Tries a move; false where it did not go. The tree is to be put back then.
    pub(super) fn step(&mut self, loose: &[usize]) -> bool {
        let piece = loose[self.dice.below(loose.len())];
        let missing: Vec<usize> = loose.iter().copied().filter(|piece| self.spots[*piece].is_none()).collect();
        if !missing.is_empty() && self.dice.below(3) > 0 {
            let new = missing[self.dice.below(missing.len())];
            return self.squeeze_in(new, piece);
        }
        if self.spots[piece].is_none() {
            return self.elsewhere(piece);
        }
        match self.dice.below(10) {
            0..=2 => {
                let other = loose[self.dice.below(loose.len())];
                self.swap(piece, other)
            }
            3 | 4 => self.elsewhere(piece),
            5 | 6 => self.turn(piece),
            7 => self.even_tier(piece),
            8 => self.lift_tier(piece),
            _ => self.twist(piece),
        }
    }

    /// Two pieces change places.
    fn swap(&mut self, one: usize, other: usize) -> bool {
        let (Some(first), Some(second)) = (self.spots[one], self.spots[other]) else { return false };
        if one == other {
            return false;
        }
        (self.spots[one], self.spots[other]) = (None, None);
        self.hang_at(one, second.joint, second.around) && self.hang_at(other, first.joint, first.around)
    }

    /// A piece goes to another tier, or to any height.
    fn elsewhere(&mut self, piece: usize) -> bool {
        self.spots[piece] = None;
        let joint = self.any_joint();
        let around = if self.dice.below(2) == 0 { 360.0 * self.dice.roll() } else { self.lighter_way() };
        self.hang_at(piece, joint, around)
    }

    /// Mostly the joint of another piece, so that tiers stay tiers.
    fn any_joint(&mut self) -> f64 {
        let other = self.dice.below(self.spots.len());
        match self.spots[other] {
            Some(spot) if self.dice.below(5) > 0 => spot.joint,
            _ => self.grid[self.dice.below(self.grid.len())],
        }
    }

    /// A piece goes around: to where it balances the others, to the middle of its neighbours, or anywhere near.
    fn turn(&mut self, piece: usize) -> bool {
        let Some(spot) = self.spots[piece].take() else { return false };
        let around = match self.dice.below(3) {
            0 => self.lighter_way(),
            1 => self.widest_gap(spot),
            _ => spot.around + 40.0 * (self.dice.roll() - 0.5),
        };
        self.hang(piece, spot.pose, spot.joint, around)
    }

    /// A tier is spread evenly, staggered to the one below, or from where one of it hangs.
    fn even_tier(&mut self, piece: usize) -> bool {
        let Some(spot) = self.spots[piece] else { return false };
        let mut members = self.tier_of(spot.joint);
        members.sort_by(|a, b| around(self.spots[*a]).total_cmp(&around(self.spots[*b])));
        let even = 360.0 / members.len() as f64;
        let first = members.iter().position(|member| *member == piece).unwrap_or(0);
        members.rotate_left(first);
        let from = if self.dice.below(2) == 0 { spot.around } else { self.staggered(spot, even) };
        let spots: Vec<Option<Spot>> = members.iter().map(|member| self.spots[*member].take()).collect();
        members.iter().zip(spots).enumerate().all(|(seat, (member, spot))| {
            let at = from + even * seat as f64;
            spot.is_some_and(|spot| {
                self.hang(*member, spot.pose, spot.joint, at) && between(around(self.spots[*member]), at.rem_euclid(360.0)) < EVEN_DEG
            })
        })
    }

    /// The way between two of the tier below that is nearest.
    fn staggered(&mut self, spot: Spot, even: f64) -> f64 {
        let tiers = tiers(&self.spots);
        let below = tiers.iter().rev().find(|(joint, _)| *joint < spot.joint - SAME_MM);
        let Some((_, angles)) = below else { return 360.0 * self.dice.roll() };
        let half = 0.5 * (360.0 / angles.len() as f64).min(even);
        let ways = angles.iter().flat_map(|angle| [angle - half, angle + half]);
        ways.min_by(|a, b| between(*a, spot.around).total_cmp(&between(*b, spot.around))).unwrap_or(spot.around)
    }

    /// A whole tier goes up or down, or to the height of another.
    fn lift_tier(&mut self, piece: usize) -> bool {
        let Some(spot) = self.spots[piece] else { return false };
        let members = self.tier_of(spot.joint);
        let up = 10.0 * self.step_mm * (self.dice.roll() - 0.5);
        let joint = if self.dice.below(2) == 0 { self.any_joint() } else { self.whole(spot.joint + up, self.span) };
        let spots: Vec<Option<Spot>> = members.iter().map(|member| self.spots[*member].take()).collect();
        members.iter().zip(spots).all(|(member, spot)| spot.is_some_and(|spot| self.hang_at(*member, joint, spot.around)))
    }

    /// A piece is turned about its feed.
    fn twist(&mut self, piece: usize) -> bool {
        let poses = &self.kinds.of_piece[piece];
        if poses.len() < 2 {
            return false;
        }
        let pose = poses[self.dice.below(poses.len())];
        let Some(spot) = self.spots[piece].take() else { return false };
        let [low, high] = self.kinds.poses[pose].joints;
        (low..=high).contains(&spot.joint) && self.hang(piece, pose, spot.joint, spot.around)
    }

    /// A piece that hangs nowhere takes the place of another, which goes elsewhere; or finds room of itself.
    fn squeeze_in(&mut self, new: usize, old: usize) -> bool {
        let joint = self.any_joint();
        let around = 360.0 * self.dice.roll();
        if self.hang_at(new, joint, around) {
            return true;
        }
        let Some(spot) = self.spots[old].take() else { return false };
        if !self.hang_at(new, spot.joint, spot.around) {
            return false;
        }
        let joint = self.any_joint();
        if !self.hang_at(old, joint, spot.around) {
            let joint = self.any_joint();
            self.hang_at(old, joint, around);
        }
        true
    }

    /// Hangs a piece at this height in one of its poses, that which goes nearest to the angle.
    fn hang_at(&mut self, piece: usize, joint: f64, wanted: f64) -> bool {
        let mut best: Option<(f64, Spot)> = None;
        // Mostly it is enough that it goes as it is liked best.
        let any = self.dice.below(4) > 0;
        for pose in self.kinds.of_piece[piece].clone() {
            let [low, high] = self.kinds.poses[pose].joints;
            if !(low..=high).contains(&joint) || !self.hang(piece, pose, joint, wanted) {
                continue;
            }
            if let Some(spot) = self.spots[piece].take() {
                let off = between(spot.around, wanted);
                if best.is_none_or(|(least, _)| off < least - EVEN_DEG) {
                    best = Some((off, spot));
                }
                if any || off < EVEN_DEG {
                    break;
                }
            }
        }
        self.spots[piece] = best.map(|(_, spot)| spot);
        best.is_some()
    }

    /// Those that are joined at this height and not held.
    fn tier_of(&self, joint: f64) -> Vec<usize> {
        let is_there = |piece: &usize| self.spots[*piece].is_some_and(|spot| (spot.joint - joint).abs() <= SAME_MM);
        (0..self.spots.len()).filter(|piece| !self.is_held(*piece)).filter(is_there).collect()
    }

    /// The way to which the weight of all that hang does not lean.
    fn lighter_way(&self) -> f64 {
        let mut lean = [0.0; 2];
        for (spot, wanted) in self.spots.iter().zip(&self.task.pieces) {
            let Some(spot) = spot else { continue };
            let ([a, b], (sin, cos)) = (self.kinds.poses[spot.pose].middle, spot.around.to_radians().sin_cos());
            lean[0] += wanted.weight_g * (cos * a - sin * b);
            lean[1] += wanted.weight_g * (sin * a + cos * b);
        }
        (-lean[1]).atan2(-lean[0]).to_degrees()
    }

    /// The middle of the two neighbours on the tier between which a piece hung.
    fn widest_gap(&self, spot: Spot) -> f64 {
        let others: Vec<f64> = self.spots.iter().flatten().filter(|o| (o.joint - spot.joint).abs() <= SAME_MM).map(|o| o.around).collect();
        let left = others.iter().map(|other| (other - spot.around).rem_euclid(360.0)).fold(360.0, f64::min);
        let right = others.iter().map(|other| (spot.around - other).rem_euclid(360.0)).fold(360.0, f64::min);
        spot.around + 0.5 * (left - right)
    }
}

fn around(spot: Option<Spot>) -> f64 {
    spot.map_or(0.0, |spot| spot.around)
}
