//! Do these groups of one alloy go into these flasks? Settled exactly, up to a number of steps.

use super::{Company, Group, Size};

/// A flask that is being filled.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Bin {
    pub size: usize,
    pub metal_mg: u64,
    pub places: u32,
    low_c: i32,
    high_c: i32,
    company: Company,
    pub groups: Vec<usize>,
}

impl Bin {
    /// An empty flask of a size, with the room an alloy has in it.
    pub fn new(at: usize, size: &Size, alloy: usize) -> Self {
        let (low_c, high_c) = (i32::MIN, i32::MAX);
        Self { size: at, metal_mg: size.metal_mg[alloy], places: size.places, low_c, high_c, company: Company::Any, groups: Vec::new() }
    }

    pub fn takes(&self, group: &Group) -> bool {
        let clash =
            matches!((self.company, group.company), (Company::Irreplaceable, Company::Trial) | (Company::Trial, Company::Irreplaceable));
        group.metal_mg <= self.metal_mg
            && group.places[self.size] <= self.places
            && group.fits[self.size]
            && self.low_c.max(*group.mould_c.start()) <= self.high_c.min(*group.mould_c.end())
            && !clash
    }

    pub fn put(&mut self, at: usize, group: &Group) {
        self.metal_mg -= group.metal_mg;
        self.places -= group.places[self.size];
        self.low_c = self.low_c.max(*group.mould_c.start());
        self.high_c = self.high_c.min(*group.mould_c.end());
        self.company = self.company.max(group.company);
        self.groups.push(at);
    }

    /// Nothing tells this one from another but its groups.
    fn is_like(&self, other: &Self) -> bool {
        let key = |bin: &Self| (bin.size, bin.metal_mg, bin.places, bin.low_c, bin.high_c, bin.company);
        key(self) == key(other)
    }
}

/// What came of the question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Answer {
    /// They go in, so.
    Yes(Vec<Bin>),
    /// They do not.
    No,
    /// The steps ran out first.
    Unknown,
}

/// What a group takes of a flask.
type Measure = fn(&Group) -> u64;

/// Puts all groups into the flasks, `order` giving the harder ones first. `steps` is drawn from.
pub(super) fn fill(groups: &[Group], order: &[usize], bins: Vec<Bin>, steps: &mut u64) -> Answer {
    if let Some(full) = quickly(groups, order, bins.clone()) {
        return Answer::Yes(full);
    }
    // From each step on: the smallest of those still to come, and all of them.
    let from_here = |of: Measure| {
        let (mut least, mut sum) = (vec![u64::MAX; order.len() + 1], vec![0; order.len() + 1]);
        for at in (0..order.len()).rev() {
            let this = of(&groups[order[at]]);
            (least[at], sum[at]) = (least[at + 1].min(this), sum[at + 1] + this);
        }
        (least, sum)
    };
    let (least_metal, metal) = from_here(|group| group.metal_mg);
    let (fewest_places, places) = from_here(|group| u64::from(group.least_places()));
    let mut depth =
        Depth { groups, order, bins, steps, least: [least_metal, fewest_places], sum: [metal, places], last: vec![0; order.len()] };
    match depth.go(0) {
        Some(true) => Answer::Yes(depth.bins),
        Some(false) => Answer::No,
        None => Answer::Unknown,
    }
}

/// By rule of thumb: what is hardest first, each where the least room is left after it; then each where it first goes. Nothing where neither succeeds.
pub(super) fn quickly(groups: &[Group], order: &[usize], bins: Vec<Bin>) -> Option<Vec<Bin>> {
    let tries: [fn(&Bin, &Group) -> u64; 3] = [
        |bin, group| bin.metal_mg - group.metal_mg,
        |bin, group| u64::from(bin.places - group.places[bin.size]) << 40 | (bin.metal_mg - group.metal_mg).min((1 << 40) - 1),
        |_, _| 0,
    ];
    tries.into_iter().find_map(|left| {
        let mut bins = bins.clone();
        for &at in order {
            let group = &groups[at];
            let best = bins.iter_mut().filter(|bin| bin.takes(group)).min_by_key(|bin| left(bin, group))?;
            best.put(at, group);
        }
        Some(bins)
    })
}

/// A search in depth: the next group into each flask that takes it, flasks that are alike once.
struct Depth<'a> {
    groups: &'a [Group],
    order: &'a [usize],
    bins: Vec<Bin>,
    steps: &'a mut u64,
    /// The least metal and the fewest places among the groups from here on.
    least: [Vec<u64>; 2],
    /// The metal and the places of all groups from here on.
    sum: [Vec<u64>; 2],
    /// The flask each step last went into.
    last: Vec<usize>,
}

impl Depth<'_> {
    fn go(&mut self, at: usize) -> Option<bool> {
        let Some(&group) = self.order.get(at) else { return Some(true) };
        if *self.steps == 0 {
            return None;
        }
        *self.steps -= 1;
        if self.too_little_room(at) {
            return Some(false);
        }
        // One like the group before goes into the same flask or a later one: the two may be exchanged.
        let from = if at > 0 && same(&self.groups[self.order[at - 1]], &self.groups[group]) { self.last[at - 1] } else { 0 };
        for bin in from..self.bins.len() {
            let this = &self.bins[bin];
            let seen = self.bins[from..bin].iter().any(|other| other.is_like(this));
            if seen || !this.takes(&self.groups[group]) {
                continue;
            }
            let before = this.clone();
            self.bins[bin].put(group, &self.groups[group]);
            self.last[at] = bin;
            if self.go(at + 1)? {
                return Some(true);
            }
            self.bins[bin] = before;
        }
        Some(false)
    }

    /// Room that no group from here on can use is no room.
    fn too_little_room(&self, at: usize) -> bool {
        let (mut metal_mg, mut places) = (0, 0);
        for bin in &self.bins {
            if bin.metal_mg >= self.least[0][at] && u64::from(bin.places) >= self.least[1][at] {
                metal_mg += bin.metal_mg;
                places += u64::from(bin.places);
            }
        }
        metal_mg < self.sum[0][at] || places < self.sum[1][at]
    }
}

fn same(one: &Group, other: &Group) -> bool {
    one.metal_mg == other.metal_mg
        && one.places == other.places
        && one.fits == other.fits
        && one.mould_c == other.mould_c
        && one.company == other.company
}
