//! Which pieces go into which flask: fewest flasks, then least investment.
//!
//! What cannot be parted is a [`Group`]: a piece, or a set. Groups of one alloy share flasks where the temperatures they want of the mould meet,
//! where metal and places reach, and where nothing that cannot be made again stands beside an experiment. The answer is searched for by how
//! many flasks of each size every alloy takes, the cheapest first; whether groups go into given flasks is settled exactly, up to a budget of
//! steps. No clock is asked, so the same wish always gets the same plan; a long search tells how far it is and can be stopped.

mod alloy;
mod fill;
mod left;
mod search;
mod sizes;

use std::ops::RangeInclusive;

/// Pieces that go into one flask together.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Group {
    /// The alloy, by its place in the wish.
    pub alloy: usize,
    /// Metal for all of them, with their feeds, in milligrams.
    pub metal_mg: u64,
    /// Places they take on the tree of each size, one number a size of the wish: a large piece takes more of a small tree's than of a large one's.
    pub places: Vec<u32>,
    /// The sizes they go into by their measures, one word a size of the wish.
    pub fits: Vec<bool>,
    /// Temperatures of the mould that all of them bear, in °C.
    pub mould_c: RangeInclusive<i32>,
    /// What may stand beside them.
    pub company: Company,
    /// Those due earlier go first where not everything finds room.
    pub due: i64,
}

impl Group {
    /// The fewest places they take in any size they go into.
    fn least_places(&self) -> u32 {
        self.places.iter().zip(&self.fits).filter(|(_, fits)| **fits).map(|(places, _)| *places).min().unwrap_or(0)
    }
}

/// What may stand beside a group in its flask.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Company {
    /// Anything.
    #[default]
    Any,
    /// It cannot be made again: no experiment.
    Irreplaceable,
    /// An experiment: nothing that cannot be made again.
    Trial,
}

/// A size of flask.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Size {
    /// Metal that may be poured into its tree for each alloy, the button taken off, in milligrams.
    pub metal_mg: Vec<u64>,
    /// Places on its tree.
    pub places: u32,
    /// Its inside, in mm³: what investment it takes.
    pub volume_mm3: u64,
    /// How many there are; nothing where there is no end of them.
    pub stock: Option<u32>,
}

/// A flask somebody filled by hand: its groups stay in it, and others may join them.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Lock {
    /// Its size.
    pub size: usize,
    /// Its groups.
    pub groups: Vec<usize>,
}

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default)]
pub struct Wish {
    /// How many alloys there are.
    pub alloys: usize,
    /// The shelf of flasks.
    pub sizes: Vec<Size>,
    /// What is to be cast.
    pub groups: Vec<Group>,
    /// Flasks that are filled by hand.
    pub locks: Vec<Lock>,
    /// Flasks that the kiln takes; nothing where that does not matter.
    pub most_flasks: Option<u32>,
}

/// One flask of a plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filled {
    /// Its size.
    pub size: usize,
    /// Its alloy.
    pub alloy: usize,
    /// Its groups, in the order of the wish.
    pub groups: Vec<usize>,
}

/// Why a group is in no flask.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// By its measures it goes into none.
    FitsNone,
    /// Every flask it goes into takes less metal; the most that one takes, in milligrams.
    TooMuchMetal {
        /// The most.
        most_mg: u64,
    },
    /// Every flask it goes into has fewer places.
    TooManyPlaces {
        /// The size of which it fills the least share.
        size: usize,
    },
    /// What it wants of its mould, or of its company, contradicts itself or the flask it is locked to.
    Contradiction,
    /// There are not flasks enough, on the shelf or in the kiln, and others are due earlier.
    NoRoom,
}

/// What is known to be the least.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Bound {
    /// No plan of what was placed has fewer flasks.
    pub flasks: u32,
    /// No plan with so few flasks has less volume, in mm³; with more flasks it may.
    pub volume_mm3: u64,
}

/// A plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// Its flasks: those filled by hand first, then alloy by alloy.
    pub flasks: Vec<Filled>,
    /// What is in none, and why.
    pub left: Vec<(usize, Why)>,
    /// What is known to be the least.
    pub bound: Bound,
    /// Somebody stopped the search: it is the best that was found until then.
    pub stopped: bool,
}

impl Plan {
    /// Is nothing better possible?
    #[must_use]
    pub fn is_proven(&self, wish: &Wish) -> bool {
        self.bound == Bound { flasks: self.flasks.len() as u32, volume_mm3: self.volume_mm3(wish) }
    }

    /// The inside of all its flasks, in mm³.
    #[must_use]
    pub fn volume_mm3(&self, wish: &Wish) -> u64 {
        self.flasks.iter().map(|flask| wish.sizes[flask.size].volume_mm3).sum()
    }
}

/// Steps of a search by default: some seconds at most, mostly far fewer.
pub const STEPS: u64 = 4_000_000;

/// Plans a batch. `go_on` is told the share of the steps that is used, and stops the search by answering false; the best plan found so far is
/// given then.
#[must_use]
pub fn plan(wish: &Wish, steps: u64, go_on: &dyn Fn(f64) -> bool) -> Plan {
    search::Search::new(wish, steps, go_on).run()
}

/// Checks a plan against its wish by nothing but the wish's own words; the first thing that is wrong.
///
/// # Errors
/// A sentence where a group stands twice or nowhere, or a flask holds what it may not hold.
pub fn check(wish: &Wish, plan: &Plan) -> Result<(), String> {
    let mut seen = vec![0_u32; wish.groups.len()];
    let placed = plan.flasks.iter().flat_map(|flask| flask.groups.iter().copied());
    for group in placed.chain(plan.left.iter().map(|(group, _)| *group)) {
        *seen.get_mut(group).ok_or("a group that is in no wish")? += 1;
    }
    if let Some(group) = seen.iter().position(|times| *times != 1) {
        return Err(format!("group {group} stands {} times", seen[group]));
    }
    for (at, flask) in plan.flasks.iter().enumerate() {
        let size = wish.sizes.get(flask.size).ok_or("a size that is on no shelf")?;
        let groups: Vec<&Group> = flask.groups.iter().map(|group| &wish.groups[*group]).collect();
        let metal_mg: u64 = groups.iter().map(|group| group.metal_mg).sum();
        let wrong = if groups.is_empty() {
            "is empty"
        } else if groups.iter().any(|group| group.alloy != flask.alloy) {
            "holds two alloys"
        } else if metal_mg > size.metal_mg[flask.alloy] {
            "takes less metal"
        } else if groups.iter().map(|group| group.places[flask.size]).sum::<u32>() > size.places {
            "has fewer places"
        } else if groups.iter().any(|group| !group.fits[flask.size]) {
            "is too small for one"
        } else if groups.iter().map(|group| *group.mould_c.start()).max() > groups.iter().map(|group| *group.mould_c.end()).min() {
            "has no temperature that all of them bear"
        } else if [Company::Irreplaceable, Company::Trial].iter().all(|one| groups.iter().any(|group| group.company == *one)) {
            "is an experiment with something that cannot be made again"
        } else {
            continue;
        };
        return Err(format!("flask {at} {wrong}"));
    }
    for (at, size) in wish.sizes.iter().enumerate() {
        let used = plan.flasks.iter().filter(|flask| flask.size == at).count();
        if size.stock.is_some_and(|stock| used > stock as usize) {
            return Err(format!("size {at} is used {used} times"));
        }
    }
    if wish.most_flasks.is_some_and(|most| plan.flasks.len() > most as usize) {
        return Err("more flasks than the kiln takes".to_owned());
    }
    Ok(())
}
