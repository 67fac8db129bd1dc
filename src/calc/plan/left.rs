//! What can be in no flask, and what was put into one by hand.

use super::fill::Bin;
use super::{Group, Size, Why, Wish};

/// Groups that no flask of the shelf takes, each with the reason, and groups whose locks contradict themselves.
pub(super) fn impossible(wish: &Wish) -> Vec<(usize, Why)> {
    let mut left: Vec<(usize, Why)> =
        wish.groups.iter().enumerate().filter_map(|(at, group)| Some((at, refused(group, &wish.sizes)?))).collect();
    for lock in &wish.locks {
        let mut bin: Option<Bin> = None;
        for &at in &lock.groups {
            let Some(group) = wish.groups.get(at).filter(|_| left.iter().all(|(other, _)| *other != at)) else { continue };
            let first = wish.groups[lock.groups[0]].alloy;
            let size = &wish.sizes[lock.size];
            let held = bin.get_or_insert_with(|| Bin::new(lock.size, size, first));
            if group.alloy == first && held.takes(group) {
                held.put(at, group);
            } else {
                left.push((at, Why::Contradiction));
            }
        }
    }
    left
}

fn refused(group: &Group, sizes: &[Size]) -> Option<Why> {
    if group.mould_c.is_empty() {
        return Some(Why::Contradiction);
    }
    let fitting = || (0..sizes.len()).filter(|at| group.fits[*at] && sizes[*at].stock != Some(0));
    let wide = || fitting().filter(|at| sizes[*at].places >= group.places[*at]);
    if wide().any(|at| sizes[at].metal_mg[group.alloy] >= group.metal_mg) {
        return None;
    }
    // With places enough, the metal that the roomiest takes.
    if let Some(most_mg) = wide().map(|at| sizes[at].metal_mg[group.alloy]).max() {
        return Some(Why::TooMuchMetal { most_mg });
    }
    // Shares are compared crosswise, so that none is rounded.
    let share = |a: usize, b: usize| {
        let product = |places: usize, of: usize| u64::from(group.places[places]) * u64::from(sizes[of].places);
        product(a, b).cmp(&product(b, a))
    };
    Some(fitting().min_by(|a, b| share(*a, *b)).map_or(Why::FitsNone, |size| Why::TooManyPlaces { size }))
}

/// The flasks of an alloy that were filled by hand, with those of their groups that are chosen.
pub(super) fn locked_bins(wish: &Wish, alloy: usize, chosen: &[usize]) -> Vec<Bin> {
    let filled = |lock: &super::Lock| {
        let groups: Vec<usize> = lock.groups.iter().copied().filter(|at| chosen.contains(at)).collect();
        let first = wish.groups.get(*groups.first()?)?;
        if first.alloy != alloy {
            return None;
        }
        let mut bin = Bin::new(lock.size, &wish.sizes[lock.size], alloy);
        groups.iter().for_each(|at| bin.put(*at, &wish.groups[*at]));
        Some(bin)
    };
    wish.locks.iter().filter_map(filled).collect()
}
