//! The search for a plan: alloy by alloy where the shelf has enough for all, all together where they want the same flasks.

use std::cell::Cell;

use super::alloy::Alloy;
use super::fill::Bin;
use super::sizes::Many;
use super::{Bound, Filled, Plan, Why, Wish};

/// How many flasks over the fewest are tried once the steps are spent.
const MORE: u32 = 4;

/// A search with its budget.
pub(super) struct Search<'a> {
    wish: &'a Wish,
    all_steps: u64,
    steps: u64,
    go_on: &'a dyn Fn(f64) -> bool,
    stopped: Cell<bool>,
}

/// Flasks that hold everything that was chosen, and what is known to be the least.
#[derive(Debug, Clone)]
struct Found {
    bins: Vec<(usize, Bin)>,
    bound: Bound,
}

impl<'a> Search<'a> {
    pub fn new(wish: &'a Wish, steps: u64, go_on: &'a dyn Fn(f64) -> bool) -> Self {
        Self { wish, all_steps: steps.max(1), steps, go_on, stopped: Cell::new(false) }
    }

    pub fn run(mut self) -> Plan {
        let mut left = super::left::impossible(self.wish);
        let mut chosen: Vec<usize> = (0..self.wish.groups.len()).filter(|at| left.iter().all(|(other, _)| other != at)).collect();
        let locked = |at: &usize| self.wish.locks.iter().any(|lock| lock.groups.contains(at));
        // What was locked goes first, then what is due first.
        chosen.sort_by_key(|at| (!locked(at), self.wish.groups[*at].due, *at));
        let found = match self.solve(&chosen) {
            Some(found) => found,
            None => {
                let (kept, found) = self.as_many_as_go(&chosen);
                left.extend(chosen.iter().filter(|at| !kept.contains(at)).map(|at| (*at, Why::NoRoom)));
                found
            }
        };
        left.sort_by_key(|(at, _)| *at);
        let flasks = found.bins.into_iter().filter(|(_, bin)| !bin.groups.is_empty());
        let flasks = flasks.map(|(alloy, mut bin)| {
            bin.groups.sort_unstable();
            Filled { size: bin.size, alloy, groups: bin.groups }
        });
        Plan { flasks: flasks.collect(), left, bound: found.bound, stopped: self.stopped.get() }
    }

    /// The earliest due that find room together, then whatever else still finds some.
    fn as_many_as_go(&mut self, chosen: &[usize]) -> (Vec<usize>, Found) {
        let nothing = Found { bins: Vec::new(), bound: Bound { flasks: 0, volume_mm3: 0 } };
        let (mut low, mut high) = (0, chosen.len());
        let mut best = (0, nothing);
        while low + 1 < high {
            let middle = usize::midpoint(low, high);
            match self.solve(&chosen[..middle]) {
                Some(found) => (low, best) = (middle, (middle, found)),
                None => high = middle,
            }
        }
        let (mut kept, mut found) = (chosen[..best.0].to_vec(), best.1);
        for &at in &chosen[best.0..] {
            kept.push(at);
            match self.solve(&kept) {
                Some(more) => found = more,
                None => drop(kept.pop()),
            }
            if self.stopped.get() {
                break;
            }
        }
        (kept, found)
    }

    /// Flasks for all that was chosen; nothing where none were found.
    fn solve(&mut self, chosen: &[usize]) -> Option<Found> {
        let wish = self.wish;
        let mut alloys: Vec<Alloy<'a>> = (0..wish.alloys)
            .map(|alloy| Alloy::new(alloy, &wish.groups, &wish.sizes, chosen, super::left::locked_bins(wish, alloy, chosen)))
            .filter(|alloy| alloy.most() > 0)
            .collect();
        for alloy in &mut alloys {
            self.fewest(alloy)?;
        }
        let least: u32 = alloys.iter().map(|alloy| alloy.fewest).sum();
        let most: u32 = alloys.iter().map(Alloy::most).sum();
        let most = wish.most_flasks.map_or(most, |kiln| kiln.min(most));
        let stock: Many = wish.sizes.iter().map(|size| size.stock.unwrap_or(u32::MAX)).collect();
        let most = most.min(stock.iter().fold(0, |sum, stock| sum.saturating_add(*stock)));
        let mut bound: Option<Bound> = None;
        for flasks in least..=most {
            let later_mm3 = self.later(&mut alloys, flasks - least);
            let mut together = Together { bins: Vec::new(), later_mm3, best: None, at_least_mm3: u64::MAX };
            self.part(&mut alloys, &Part { at: 0, flasks, stock: stock.clone(), volume_mm3: 0, at_least_mm3: 0 }, &mut together);
            // Nothing was found, and nothing is possible either: with so few flasks there is no plan.
            if together.at_least_mm3 < u64::MAX {
                bound.get_or_insert(Bound { flasks, volume_mm3: together.at_least_mm3 });
            }
            if let Some((volume_mm3, bins)) = together.best {
                return Some(Found { bins, bound: bound.unwrap_or(Bound { flasks, volume_mm3 }) });
            }
            if self.steps == 0 && flasks > least + MORE {
                break;
            }
        }
        None
    }

    /// The least volume of the alloys from each place on, where all of them together take `more` flasks over their fewest.
    fn later(&mut self, alloys: &mut [Alloy<'a>], more: u32) -> Vec<u64> {
        let mut later = vec![0; alloys.len() + 1];
        for at in (0..alloys.len()).rev() {
            let fewest = alloys[at].fewest;
            let least =
                (fewest..=fewest + more).filter_map(|many| alloys[at].cheapest(many, &mut self.steps, &|_| true).at_least_mm3).min();
            later[at] = later[at + 1] + least.unwrap_or(0);
        }
        later
    }

    fn may_go_on(&self) -> bool {
        let share = 1.0 - self.steps as f64 / self.all_steps as f64;
        if !self.stopped.get() && !(self.go_on)(share) {
            self.stopped.set(true);
        }
        !self.stopped.get()
    }

    /// The fewest flasks an alloy takes by itself, as far as that can be proven; nothing where the shelf has not enough for it alone.
    fn fewest(&mut self, alloy: &mut Alloy<'a>) -> Option<()> {
        while alloy.fewest <= alloy.most() {
            if !self.may_go_on() {
                self.steps = 0;
            }
            if alloy.cheapest(alloy.fewest, &mut self.steps, &|_| true).at_least_mm3.is_some() {
                return Some(());
            }
            alloy.fewest += 1;
        }
        None
    }

    /// Parts flasks among the alloys that still want some.
    fn part(&mut self, alloys: &mut [Alloy<'a>], part: &Part, together: &mut Together) {
        let at = part.at;
        if at == alloys.len() {
            if part.flasks == 0 {
                together.take(part);
            }
            return;
        }
        let later: u32 = alloys[at + 1..].iter().map(|alloy| alloy.fewest).sum();
        let fewest = alloys[at].fewest;
        let Some(most) = part.flasks.checked_sub(later) else { return };
        // The last one takes what is left.
        let from = if at + 1 == alloys.len() { most.max(fewest) } else { fewest };
        for many in from..=most.min(alloys[at].most()) {
            self.with(alloys, part, many, together);
        }
    }

    /// Gives the next alloy so many of them, in each way that may be of use, and parts the rest.
    fn with(&mut self, alloys: &mut [Alloy<'a>], part: &Part, many: u32, together: &mut Together) {
        let (at, stock) = (part.at, &part.stock);
        // Where the cheapest way takes flasks that a later alloy needs, the next cheapest is tried, and so on.
        let tried = std::cell::RefCell::new(Vec::<Many>::new());
        loop {
            if !self.may_go_on() {
                self.steps = 0;
            }
            let allows = |way: &Many| way.iter().zip(stock).all(|(many, stock)| many <= stock) && !tried.borrow().contains(way);
            let cheapest = alloys[at].cheapest(many, &mut self.steps, &allows);
            let Some(at_least) = cheapest.at_least_mm3 else { return };
            let least_of_all = part.at_least_mm3 + at_least + together.later_mm3[at + 1];
            let spent = self.steps == 0 && (together.best.is_some() || !tried.borrow().is_empty());
            // What is not known to be impossible counts for what is the least, though no plan comes of it.
            let (Some(filled), false) = (cheapest.filled, spent) else { return together.leave(least_of_all) };
            self.steps = self.steps.saturating_sub(1);
            let volume = alloys[at].volume_mm3(&filled);
            let volume_mm3 = part.volume_mm3 + volume;
            if together.best.as_ref().is_some_and(|(best, _)| volume_mm3 + together.later_mm3[at + 1] >= *best) {
                return together.leave(least_of_all);
            }
            let mut used = vec![0; stock.len()];
            filled.iter().for_each(|bin| used[bin.size] += 1);
            let left: Many =
                stock.iter().zip(&used).map(|(stock, used)| if *stock == u32::MAX { u32::MAX } else { stock - used }).collect();
            let held = together.bins.len();
            together.bins.extend(filled.into_iter().map(|bin| (alloys[at].alloy, bin)));
            let at_least_mm3 = part.at_least_mm3 + at_least;
            let rest = Part { at: at + 1, flasks: part.flasks - many, stock: left, volume_mm3, at_least_mm3 };
            self.part(alloys, &rest, together);
            together.bins.truncate(held);
            // Where no size is short, the cheapest of each alloy is the cheapest of all.
            let short = self.wish.sizes.iter().zip(&used).any(|(size, used)| *used > 0 && size.stock.is_some());
            if !short || self.stopped.get() {
                return;
            }
            tried.borrow_mut().push(used);
        }
    }
}

/// What is still to be parted: flasks among the alloys from a place on.
struct Part {
    /// The place.
    at: usize,
    /// How many flasks.
    flasks: u32,
    /// How many of each size are left.
    stock: Many,
    /// The volume of the alloys before, as it is.
    volume_mm3: u64,
    /// The same, as it is at least.
    at_least_mm3: u64,
}

/// The best of all partings so far.
struct Together {
    /// The flasks of the alloys that have theirs.
    bins: Vec<(usize, Bin)>,
    /// The least volume of the alloys from each place on.
    later_mm3: Vec<u64>,
    best: Option<(u64, Vec<(usize, Bin)>)>,
    /// No plan of this number of flasks has less volume; the largest number where none is possible.
    at_least_mm3: u64,
}

impl Together {
    /// Partings that were not gone into, none of which has less volume than this.
    fn leave(&mut self, at_least_mm3: u64) {
        self.at_least_mm3 = self.at_least_mm3.min(at_least_mm3);
    }

    fn take(&mut self, part: &Part) {
        self.leave(part.at_least_mm3);
        if self.best.as_ref().is_none_or(|(best, _)| part.volume_mm3 < *best) {
            self.best = Some((part.volume_mm3, self.bins.clone()));
        }
    }
}
