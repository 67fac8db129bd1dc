//! Even, staggered tiers, heavy pieces below and thin ones above: what a search begins with.

use super::Task;
use super::dense;
use super::place::{Spot, untidy};
use super::search::Search;

/// Tiers at most that are laid evenly.
const MOST_TIERS: usize = 64;

/// Heights that are tried for what fits on no tier.
const FEW_HEIGHTS: usize = 16;

impl Search<'_> {
    /// The best of even tiers, and of what else finds more room; each is shown to the search.
    pub(super) fn begin(&mut self) {
        let order = order(self.task);
        let most = order.iter().filter(|piece| !self.is_held(**piece)).count().clamp(1, MOST_TIERS);
        let (mut whole, mut worse, mut least) = (0, 0, usize::MAX);
        for many in self.least_tiers(&order).min(most)..=most {
            // One tier more than are needed may look better; many more do not, and where more tiers do not help, even ones do not.
            if self.is_over() || whole >= 2 || worse >= 3 {
                break;
            }
            let heights = self.even_heights(many);
            self.lay(&order, &heights);
            self.show();
            let missing = self.missing();
            worse = if missing < least { 0 } else { worse + 1 };
            least = least.min(missing);
            whole += usize::from(missing == 0);
        }
        if self.best_missing() > 0 && self.kinds.many == 1 {
            self.lay_dense();
        }
        if self.best_missing() > 0 && !self.is_over() {
            self.fill(&order);
            self.show();
        }
        if self.best_missing() > 0 && !self.is_over() {
            self.pack(&order);
            self.show();
        }
    }

    /// Fewer tiers are not worth trying, by how far around pieces must be from their like.
    fn least_tiers(&mut self, order: &[usize]) -> usize {
        let mut around = 0.0;
        for piece in order {
            let pose = self.kinds.of_piece[*piece][0];
            around += self.sides.left(pose, pose, 0.0).min(360.0);
        }
        (0.8 * around / 360.0) as usize + 1
    }

    /// So many joints over all that pieces may be joined at: one at the far end, or the lowest and the highest and what is between.
    fn even_heights(&self, many: usize) -> Vec<f64> {
        let [low, high] = self.span;
        let step = (high - low) / (many.max(2) - 1) as f64;
        let at = |tier: usize| if many == 1 { high } else { low + step * tier as f64 };
        (0..many).map(at).collect()
    }

    /// Lays pieces in this order on tiers of these heights, as many on each, those of a tier opposite each other.
    fn lay(&mut self, order: &[usize], heights: &[f64]) {
        self.clear();
        let loose: Vec<usize> = order.iter().copied().filter(|piece| !self.is_held(*piece)).collect();
        let mut phase = 0.0;
        let on_tier = |tier: usize| &loose[tier * loose.len() / heights.len()..(tier + 1) * loose.len() / heights.len()];
        let heights: Vec<f64> = heights.iter().enumerate().map(|(tier, height)| self.common(on_tier(tier), *height)).collect();
        for (tier, height) in heights.iter().enumerate() {
            let members = on_tier(tier);
            let even = 360.0 / members.len().max(1) as f64;
            for (piece, seat) in members.iter().zip(opposite(members.len())) {
                let near = &heights[tier.saturating_sub(1)..(tier + 2).min(heights.len())];
                self.hang_near(*piece, *height, phase + even * seat as f64, near);
            }
            phase += 0.5 * even;
        }
    }

    /// The joint nearest to this one at which all of these may be joined, as they are liked best; where there is none, the joint itself.
    fn common(&self, members: &[usize], height: f64) -> f64 {
        let joints = || members.iter().map(|piece| self.kinds.poses[self.kinds.of_piece[*piece][0]].joints);
        let low = joints().map(|joint| joint[0]).fold(self.span[0], f64::max);
        let high = joints().map(|joint| joint[1]).fold(self.span[1], f64::min);
        self.whole(height, if low <= high { [low, high] } else { self.span })
    }

    /// Lays equal pieces as the densest even tiers, as many as there are places for.
    fn lay_dense(&mut self) {
        if (0..self.spots.len()).any(|piece| self.is_held(piece)) {
            return;
        }
        for places in dense::lattices(&mut self.sides, &self.kinds.poses, &self.kinds.of_piece[0]) {
            for (piece, spot) in self.spots.iter_mut().enumerate() {
                *spot = places.get(piece).copied();
            }
            self.show();
        }
    }

    /// Hangs what is left wherever it goes on the best tree.
    fn fill(&mut self, order: &[usize]) {
        self.take_best();
        let few = self.few_heights();
        for piece in order {
            if self.spots[*piece].is_none() && !self.is_over() {
                self.hang_near(*piece, self.span[0], 0.0, &few);
            }
        }
    }

    /// Every so many of the heights there are.
    fn few_heights(&self) -> Vec<f64> {
        self.grid.iter().copied().step_by(self.grid.len().div_ceil(FEW_HEIGHTS)).collect()
    }

    /// Lays pieces one after another as low as they go, close to those that hang.
    fn pack(&mut self, order: &[usize]) {
        self.clear();
        let mut largest: Vec<usize> = order.iter().copied().filter(|piece| !self.is_held(*piece)).collect();
        let size = |piece: &usize| {
            let pose = &self.kinds.poses[self.kinds.of_piece[*piece][0]];
            pose.reach * (pose.heights[1] - pose.heights[0])
        };
        largest.sort_by(|a, b| size(b).total_cmp(&size(a)));
        let few = self.few_heights();
        for piece in largest {
            if self.is_over() {
                break;
            }
            self.hang_near(piece, self.span[0], 0.0, &few);
        }
    }

    /// Hangs a piece as near to this height and angle as it goes, at one of these heights. Nothing where it goes at none.
    pub(super) fn hang_near(&mut self, piece: usize, height: f64, around: f64, heights: &[f64]) -> bool {
        let mut tried: Vec<f64> = heights.to_vec();
        tried.sort_by(|a, b| (a - height).abs().total_cmp(&(b - height).abs()));
        let poses = self.kinds.of_piece[piece].clone();
        for height in tried {
            if self.is_over() {
                return false;
            }
            for pose in &poses {
                let [low, high] = self.kinds.poses[*pose].joints;
                if (low..=high).contains(&height) && self.hang(piece, *pose, height, around) {
                    return true;
                }
            }
        }
        // At none of them: at its own lowest and highest, then.
        poses.iter().any(|pose| {
            let joints = self.kinds.poses[*pose].joints;
            joints.into_iter().any(|joint| self.hang(piece, *pose, joint, around))
        })
    }

    /// How tidy the tree is, from nought, and how much of it is turned from how it is liked best.
    pub(super) fn looks_odd(&self) -> f64 {
        let odd = |(piece, spot): (usize, &Option<Spot>)| spot.is_some_and(|spot| spot.pose != self.kinds.of_piece[piece][0]);
        let turned = self.spots.iter().enumerate().filter(|(piece, spot)| odd((*piece, spot))).count();
        0.9 * untidy(&self.spots) + 0.1 * turned as f64 / self.spots.len().max(1) as f64
    }
}

/// Pieces from those that belong below to those that belong above: by rank of weight, and of the thinnest section where it is known.
fn order(task: &Task) -> Vec<usize> {
    let rank = |of: &dyn Fn(usize) -> f64| {
        let mut sorted: Vec<f64> = (0..task.pieces.len()).map(of).collect();
        sorted.sort_by(f64::total_cmp);
        (0..task.pieces.len()).map(|piece| sorted.partition_point(|other| *other < of(piece)) as f64).collect::<Vec<_>>()
    };
    let weights = rank(&|piece| task.pieces[piece].weight_g);
    let sections = rank(&|piece| task.pieces[piece].thinnest_mm.unwrap_or(f64::INFINITY));
    let is_known = |piece: usize| task.pieces[piece].thinnest_mm.is_some();
    let high = |piece: usize| -(weights[piece] + if is_known(piece) { sections[piece] } else { weights[piece] });
    let mut order: Vec<usize> = (0..task.pieces.len()).collect();
    order.sort_by(|a, b| high(*a).total_cmp(&high(*b)).then(a.cmp(b)));
    order
}

/// Seats of a ring in such an order that each is about opposite to those before: 0 3 1 4 2 5.
fn opposite(many: usize) -> Vec<usize> {
    let half = many.div_ceil(2);
    let mut seats = Vec::with_capacity(many);
    for seat in 0..half {
        seats.push(seat);
        if half + seat < many {
            seats.push(half + seat);
        }
    }
    seats
}
