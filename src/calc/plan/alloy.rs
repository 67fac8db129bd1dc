//! The flasks of one alloy: by how many of each size its groups go in, each way tried once.

use std::collections::{BTreeMap, BTreeSet};

use super::fill::{Answer, Bin, fill, quickly};
use super::sizes::{Many, volume, ways};
use super::{Group, Size};

/// Steps that one way may take at most.
const STEPS_A_WAY: u64 = 60_000;

/// What is known of a way to fill the groups of an alloy.
#[derive(Debug, Clone)]
enum Known {
    /// Not looked at.
    Nothing,
    /// Filled by rule of thumb, or by the search.
    Yes(Vec<Bin>),
    /// Impossible.
    No,
    /// Neither a filling nor a proof was found within the steps.
    Neither,
}

/// A way: its volume, how many of each size, and what is known of it.
struct Way {
    volume_mm3: u64,
    many: Many,
    known: Known,
}

/// Where there are too many ways to go through: as many of one size as are needed beside those filled by hand, for every size.
fn too_many(sizes: &[Size], flasks: u32, least: &[u32]) -> Vec<Way> {
    let open = flasks.saturating_sub(least.iter().sum());
    let of = |at: usize| {
        let mut many = least.to_vec();
        many[at] += open;
        let enough = sizes[at].stock.is_none_or(|stock| many[at] <= stock);
        enough.then(|| Way { volume_mm3: volume(sizes, &many), many, known: Known::Nothing })
    };
    let mut found: Vec<Way> = (0..sizes.len()).filter_map(of).collect();
    found.sort_by_key(|way| way.volume_mm3);
    found
}

/// The groups of one alloy and everything found out about them.
pub(super) struct Alloy<'a> {
    pub alloy: usize,
    groups: &'a [Group],
    sizes: &'a [Size],
    /// The groups that are not locked, the hardest first.
    order: Vec<usize>,
    /// Flasks filled by hand.
    locked: Vec<Bin>,
    /// How many of each size those are.
    least: Many,
    ways: BTreeMap<u32, Vec<Way>>,
    /// Numbers of flasks of which not every way is listed: what is the least is known of them only by sums.
    partly: BTreeSet<u32>,
    /// No plan takes fewer flasks than this.
    pub fewest: u32,
}

impl<'a> Alloy<'a> {
    pub fn new(alloy: usize, groups: &'a [Group], sizes: &'a [Size], chosen: &[usize], locked: Vec<Bin>) -> Self {
        let mut least = vec![0; sizes.len()];
        locked.iter().for_each(|bin| least[bin.size] += 1);
        let held = |at: &usize| locked.iter().any(|bin| bin.groups.contains(at));
        let mut order: Vec<usize> = chosen.iter().copied().filter(|at| groups[*at].alloy == alloy && !held(at)).collect();
        let most_metal = sizes.iter().map(|size| size.metal_mg[alloy]).max().unwrap_or(0).max(1);
        let most_places = sizes.iter().map(|size| size.places).max().unwrap_or(0).max(1);
        // Hard is what goes into few sizes, then what takes the largest share of a flask.
        let share = |at: usize| {
            let group = &groups[at];
            let of = |part: u64, whole: u64| u128::from(part) * 1_000_000_000 / u128::from(whole);
            of(group.metal_mg, most_metal).max(of(u64::from(group.least_places()), u64::from(most_places)))
        };
        let count = |at: usize| groups[at].fits.iter().filter(|fits| **fits).count();
        order.sort_by_key(|&at| (count(at), std::cmp::Reverse(share(at)), groups[at].metal_mg, groups[at].least_places(), at));
        let metal_mg: u64 = order.iter().map(|at| groups[*at].metal_mg).sum();
        let places: u64 = order.iter().map(|at| u64::from(groups[*at].least_places())).sum();
        let spare = |of: fn(&Bin) -> u64| locked.iter().map(of).sum::<u64>();
        let more_metal = metal_mg.saturating_sub(spare(|bin| bin.metal_mg)).div_ceil(most_metal);
        let more_places = places.saturating_sub(spare(|bin| u64::from(bin.places))).div_ceil(u64::from(most_places));
        let fewest = locked.len() as u32 + more_metal.max(more_places) as u32;
        let fewest = if order.is_empty() { fewest } else { fewest.max(1) };
        Self { alloy, groups, sizes, order, locked, least, ways: BTreeMap::new(), partly: BTreeSet::new(), fewest }
    }

    /// The most flasks that can be of use: one a group, beside those filled by hand.
    pub fn most(&self) -> u32 {
        (self.order.len() + self.locked.len()) as u32
    }

    /// The ways of so many flasks, the cheapest first, without those whose room is too little by sums alone.
    fn of(&mut self, flasks: u32) -> &mut Vec<Way> {
        let (groups, sizes, order, locked, least, alloy) = (self.groups, self.sizes, &self.order, &self.locked, &self.least, self.alloy);
        let partly = &mut self.partly;
        self.ways.entry(flasks).or_insert_with(|| {
            let metal_mg: u64 = order.iter().map(|at| groups[*at].metal_mg).sum();
            let places: u64 = order.iter().map(|at| u64::from(groups[*at].least_places())).sum();
            let Some(mut found) = ways(sizes, flasks, least) else {
                partly.insert(flasks);
                return too_many(sizes, flasks, least);
            };
            let enough = |many: &Many| {
                let new = |of: &dyn Fn(usize) -> u64| (0..sizes.len()).map(|at| of(at) * u64::from(many[at] - least[at])).sum::<u64>();
                let metal = new(&|at| sizes[at].metal_mg[alloy]) + locked.iter().map(|bin| bin.metal_mg).sum::<u64>();
                let room = new(&|at| u64::from(sizes[at].places)) + locked.iter().map(|bin| u64::from(bin.places)).sum::<u64>();
                metal >= metal_mg && room >= places
            };
            found.retain(|(_, many)| enough(many));
            found.into_iter().map(|(volume_mm3, many)| Way { volume_mm3, many, known: Known::Nothing }).collect()
        })
    }

    fn bins(&self, many: &Many) -> Vec<Bin> {
        let new = (0..self.sizes.len()).flat_map(|at| (self.least[at]..many[at]).map(move |_| at));
        self.locked.iter().cloned().chain(new.map(|at| Bin::new(at, &self.sizes[at], self.alloy))).collect()
    }

    /// The cheapest way of so many flasks that is known to be filled or may be, that `allows` the numbers of sizes; filled as far as the
    /// steps go. Its volume, its numbers, and its flasks where it is filled.
    pub fn cheapest(&mut self, flasks: u32, steps: &mut u64, allows: &dyn Fn(&Many) -> bool) -> Cheapest {
        self.of(flasks);
        let count = self.ways[&flasks].len();
        // Another way than those listed may do: no way has less than so many of the smallest.
        let smallest = self.sizes.iter().map(|size| size.volume_mm3).min().unwrap_or(0);
        let at_least_mm3 = self.partly.contains(&flasks).then(|| smallest * u64::from(flasks));
        let mut found = Cheapest { at_least_mm3, filled: None };
        for at in 0..count {
            let way = &self.ways[&flasks][at];
            if !allows(&way.many) {
                continue;
            }
            let known = match &way.known {
                Known::Nothing => self.settle(flasks, at, steps),
                known => known.clone(),
            };
            let volume_mm3 = self.ways[&flasks][at].volume_mm3;
            match known {
                Known::Yes(bins) => {
                    found.at_least_mm3 = found.at_least_mm3.or(Some(volume_mm3));
                    found.filled = Some(bins);
                    return found;
                }
                Known::No => {}
                Known::Neither | Known::Nothing => found.at_least_mm3 = found.at_least_mm3.or(Some(volume_mm3)),
            }
        }
        found
    }

    /// Finds out about a way: by rule of thumb, then by the search as far as the steps go.
    fn settle(&mut self, flasks: u32, at: usize, steps: &mut u64) -> Known {
        let many = self.ways[&flasks][at].many.clone();
        let bins = self.bins(&many);
        let mut own = STEPS_A_WAY.min(*steps);
        let before = own;
        let known = if own == 0 {
            quickly(self.groups, &self.order, bins).map_or(Known::Nothing, Known::Yes)
        } else {
            match fill(self.groups, &self.order, bins, &mut own) {
                Answer::Yes(bins) => Known::Yes(bins),
                Answer::No => Known::No,
                Answer::Unknown => Known::Neither,
            }
        };
        *steps -= before - own;
        if let Some(way) = self.ways.get_mut(&flasks).and_then(|ways| ways.get_mut(at)) {
            way.known = known.clone();
        }
        known
    }

    /// The volume of flasks that are filled.
    pub fn volume_mm3(&self, bins: &[Bin]) -> u64 {
        let mut many = vec![0; self.sizes.len()];
        bins.iter().for_each(|bin| many[bin.size] += 1);
        volume(self.sizes, &many)
    }
}

/// The cheapest way that was asked for.
#[derive(Debug, Clone)]
pub(super) struct Cheapest {
    /// No way of so many flasks that is allowed has less volume, in mm³; nothing where none is possible.
    pub at_least_mm3: Option<u64>,
    /// The flasks of the cheapest one that was filled.
    pub filled: Option<Vec<Bin>>,
}
