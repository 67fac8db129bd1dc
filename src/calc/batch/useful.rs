//! Sizes that are of no use to a wish.

use super::Ask;
use crate::calc::plan::Group;

impl Ask {
    /// Leaves out sizes that another one is never worse than: no more investment, as many pieces, as much metal, and no end of it.
    pub(super) fn without_useless_sizes(mut self) -> Self {
        let wish = &self.wish;
        let locked = |at: usize| wish.locks.iter().any(|lock| lock.size == at);
        let endless = |at: usize| wish.sizes[at].stock.is_none();
        let covers = |one: usize, other: usize| {
            let (a, b) = (&wish.sizes[one], &wish.sizes[other]);
            let takes = |group: &Group| {
                let share = |places: usize, of: usize| u64::from(group.places[places]) * u64::from(wish.sizes[of].places);
                !group.fits[other] || (group.fits[one] && share(one, other) <= share(other, one))
            };
            endless(one)
                && a.volume_mm3 <= b.volume_mm3
                && a.metal_mg.iter().zip(&b.metal_mg).all(|(a, b)| a >= b)
                && wish.groups.iter().all(takes)
        };
        let mut kept: Vec<usize> = Vec::new();
        for at in 0..wish.sizes.len() {
            // Sizes stand in the order of their volume: only an earlier one can take no more investment.
            if locked(at) || !kept.iter().any(|one| covers(*one, at)) {
                kept.push(at);
            }
        }
        fn pick<T: Clone>(all: &[T], kept: &[usize]) -> Vec<T> {
            kept.iter().map(|at| all[*at].clone()).collect()
        }
        for group in &mut self.wish.groups {
            (group.places, group.fits) = (pick(&group.places, &kept), pick(&group.fits, &kept));
        }
        for lock in &mut self.wish.locks {
            lock.size = kept.iter().position(|at| *at == lock.size).unwrap_or(0);
        }
        self.wish.sizes = pick(&self.wish.sizes, &kept);
        self.sizes = pick(&self.sizes, &kept);
        self.trunks_g = pick(&self.trunks_g, &kept);
        self.trees.sizes = pick(&self.trees.sizes, &kept);
        self
    }
}
