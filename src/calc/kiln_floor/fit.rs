//! Whether certain flasks find room together.

use super::assign::assign;
use super::greedy::{Go, greedy};
use super::lattice::lattices;
use super::relax::Loose;
use super::room::{Dice, Point, Task};

/// Where flasks stand, by their number; nothing for those that do not.
pub(super) type Places = Vec<Option<Point>>;

/// Those of the flasks that may be moved, widest first.
pub(super) fn widest_first(task: &Task, flasks: &[usize]) -> Vec<usize> {
    let mut order: Vec<usize> = flasks.iter().copied().filter(|flask| task.held[*flask].is_none()).collect();
    order.sort_by(|a, b| task.radius[*b].total_cmp(&task.radius[*a]).then(a.cmp(b)));
    order
}

/// Those that are held, where they are.
pub(super) fn held(task: &Task) -> Places {
    task.held.clone()
}

/// One after the other into corners; the places of those that found one, and whether all did.
pub(super) fn one_by_one(task: &Task, flasks: &[usize]) -> (Places, bool) {
    let order = widest_first(task, flasks);
    let mut most: Option<(usize, Places)> = None;
    for go in [Go::Corner, Go::Front, Go::Left] {
        let mut places = held(task);
        if greedy(task, &order, go, &mut places) {
            return (places, true);
        }
        let stand = places.iter().flatten().count();
        if most.as_ref().is_none_or(|(before, _)| stand > *before) {
            most = Some((stand, places));
        }
    }
    (most.map_or_else(|| held(task), |(_, places)| places), false)
}

/// In rows that are wide enough for the widest, on those places where they are worth most; every way to do so.
pub(super) fn in_rows(task: &Task, flasks: &[usize]) -> Vec<Places> {
    let order = widest_first(task, flasks);
    let Some(&widest) = order.first() else { return Vec::new() };
    let mut found = Vec::new();
    for mut lattice in lattices(task, task.radius[widest]) {
        let kept = held(task);
        lattice.retain(|at| task.is_free(&kept, widest, *at));
        // Rows of hundreds are searched for nobody.
        lattice.truncate(400);
        let Some(taken) = assign(task, &order, &lattice) else { continue };
        let mut places = kept;
        for (flask, place) in order.iter().zip(taken) {
            places[*flask] = Some(lattice[place]);
        }
        found.push(places);
    }
    found
}

/// By pushing, from where they went one by one.
pub(super) fn by_pushing(task: &Task, flasks: &[usize], begin: &Places, steps: &mut u64) -> Option<Places> {
    let mut dice = Dice(0x9e37_79b9_7f4a_7c15);
    let all: Vec<usize> = (0..task.radius.len()).filter(|flask| task.held[*flask].is_some() || flasks.contains(flask)).collect();
    let at = all.iter().map(|flask| begin[*flask].unwrap_or_else(|| dice.place(&task.floor))).collect();
    let settled = Loose { flasks: all, at }.settle(task, steps)?;
    let mut places = held(task);
    for (flask, at) in settled.flasks.iter().zip(&settled.at) {
        places[*flask] = task.held[*flask].or(Some(*at));
    }
    Some(places)
}

/// Places for these flasks beside those that are held, by whatever finds them first.
pub(super) fn fit(task: &Task, flasks: &[usize], steps: &mut u64) -> Option<Places> {
    let (begin, all) = one_by_one(task, flasks);
    if all {
        return Some(begin);
    }
    in_rows(task, flasks).into_iter().next().or_else(|| by_pushing(task, flasks, &begin, steps))
}
