//! A plan that holds on the bench: how many of each piece really hang on a tree is counted by arranging them, and so is every flask of the plan.
//! Where not everything of a flask hangs, its pieces are taken to be larger there, and the batch is planned again.

use std::cell::Cell;
use std::collections::HashMap;

use super::trees::Trees;
use super::way::Way;
use super::{Ask, GroupOf};
use crate::calc::arrange::{CannotArrange, Task, Wanted, arrange};
use crate::calc::plan::{Plan, Wish, plan};
use crate::calc::stand::{Hang, Trunk};
use crate::job::PieceId;

/// Steps for one flask: a batch has many, and what needs long mostly does not go.
const STEPS_A_FLASK: u64 = 300_000;

/// So often a batch is planned again. Every time, pieces of some flask are taken to be larger.
const MOST_ROUNDS: u32 = 24;

/// The share of all work that counting takes.
const COUNTING: f64 = 0.4;

/// What is asked of [`settle`].
#[derive(Debug, Clone)]
pub struct Question {
    wish: Wish,
    trees: Trees,
    /// The sizes of groups that hang already in flasks of the job.
    hung: Vec<Option<usize>>,
}

impl Ask {
    /// What is asked of [`settle`].
    #[must_use]
    pub fn question(&self) -> Question {
        let size = |group: usize| self.wish.locks.iter().find(|lock| lock.groups.contains(&group)).map(|lock| lock.size);
        let hung = self.groups.iter().enumerate().map(|(at, of)| matches!(of, GroupOf::Hung(_)).then(|| size(at)).flatten()).collect();
        Question { wish: self.wish.clone(), trees: self.trees.clone(), hung }
    }
}

/// A plan with its flasks arranged.
#[derive(Debug, Clone, PartialEq)]
pub struct Settled {
    /// The wish, with places as they were found on trees.
    pub wish: Wish,
    /// Its plan.
    pub plan: Plan,
    /// How each of its flasks stands.
    pub stands: Vec<Stands>,
}

/// How a planned flask stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Stands {
    /// It was not looked at: the form of a piece is not known, or the search was stopped.
    NotSeen,
    /// Everything hangs.
    All(Upright),
    /// Not everything was found room for.
    Short {
        /// So many hang.
        most: usize,
        /// Of so many.
        of: usize,
    },
}

/// A tree of a plan on which everything hangs.
#[derive(Debug, Clone, PartialEq)]
pub struct Upright {
    /// Its main sprue.
    pub trunk: Trunk,
    /// Its pieces.
    pub hangs: Vec<(PieceId, Hang)>,
}

/// Plans, arranges every flask, and plans again until everything hangs. The same question always gets the same answer. `go_on` is told how far
/// it is, and stops the search by answering false.
#[must_use]
pub fn settle(question: &Question, steps: u64, go_on: &dyn Fn(f64) -> bool) -> Settled {
    let mut settling = Settling::new(question, go_on);
    settling.count();
    let mut round = 0;
    loop {
        round += 1;
        let found = plan(&settling.wish, steps, &|_| settling.tell(0.0));
        let stands: Vec<Stands> = found.flasks.iter().enumerate().map(|(at, _)| settling.stand(&found, at)).collect();
        // What the caster keeps is not planned anew.
        let own = |at: &usize| found.flasks[*at].groups.iter().any(|group| !settling.is_locked(*group));
        let short: Vec<usize> = (0..stands.len()).filter(|at| matches!(stands[*at], Stands::Short { .. }) && own(at)).collect();
        let stopped = found.stopped || settling.stopped();
        if short.is_empty() || stopped || round == MOST_ROUNDS {
            return Settled { wish: settling.wish, plan: Plan { stopped, ..found }, stands };
        }
        for at in short {
            settling.enlarge(&found, at);
        }
        settling.reckon();
    }
}

/// A tree that was tried: kinds in order, and where each hangs.
struct Tried {
    trunk: Trunk,
    hangs: Vec<Option<Hang>>,
}

struct Settling<'a> {
    question: &'a Question,
    wish: Wish,
    /// How each kind hangs, by size and kind.
    ways: Vec<Vec<Way>>,
    /// The places that a piece takes by size and kind; nothing where it does not hang.
    shares: Vec<Vec<Option<f64>>>,
    /// What is locked does hang, lock by lock.
    kept: Vec<bool>,
    tried: HashMap<(usize, Vec<usize>), Tried>,
    go_on: &'a dyn Fn(f64) -> bool,
    far: Cell<f64>,
    stopped: Cell<bool>,
}

impl<'a> Settling<'a> {
    fn new(question: &'a Question, go_on: &'a dyn Fn(f64) -> bool) -> Self {
        let trees = &question.trees;
        let usual = |trunk: &Trunk| trees.kinds.iter().map(|kind| Way::usual(kind.wanted.angle_deg, trunk)).collect();
        Self {
            question,
            wish: question.wish.clone(),
            ways: trees.sizes.iter().map(|(trunk, _)| usual(trunk)).collect(),
            shares: vec![vec![None; trees.kinds.len()]; trees.sizes.len()],
            kept: Vec::new(),
            tried: HashMap::new(),
            go_on,
            far: Cell::new(0.0),
            stopped: Cell::new(false),
        }
    }

    /// Tells how far it is, never less than before; false once somebody stopped it.
    fn tell(&self, far: f64) -> bool {
        self.far.set(self.far.get().max(far));
        if !self.stopped.get() && !(self.go_on)(self.far.get()) {
            self.stopped.set(true);
        }
        !self.stopped.get()
    }

    const fn stopped(&self) -> bool {
        self.stopped.get()
    }

    /// Counts how many of each kind hang in each size. Where it is stopped, the estimates of the wish stay.
    fn count(&mut self) {
        let (sizes, kinds) = (self.shares.len(), self.question.trees.kinds.len());
        for size in 0..sizes {
            for kind in 0..kinds {
                if !self.tell(COUNTING * (size * kinds + kind) as f64 / (sizes * kinds) as f64) {
                    return;
                }
                let way = Way::most(&self.question.trees, size, kind);
                self.ways[size][kind] = way;
                self.shares[size][kind] = (way.many > 0).then(|| f64::from(self.wish.sizes[size].places) / f64::from(way.many));
            }
        }
        self.kept = (0..self.wish.locks.len()).map(|lock| self.is_kept(lock)).collect();
        self.reckon();
    }

    /// Does everything of a flask hang that somebody filled by hand?
    fn is_kept(&self, lock: usize) -> bool {
        let lock = &self.wish.locks[lock];
        let of = |group: &usize| self.question.trees.groups[*group].iter().flatten().map(|(_, kind)| *kind).collect::<Vec<_>>();
        let mut kinds: Vec<usize> = lock.groups.iter().flat_map(of).collect();
        kinds.sort_unstable();
        lock.groups.iter().any(|group| self.question.hung[*group].is_some())
            || self.tried(lock.size, &kinds).hangs.iter().all(Option::is_some)
    }

    /// Puts the places that pieces take into the wish.
    fn reckon(&mut self) {
        for (at, group) in self.wish.groups.iter_mut().enumerate() {
            let Some(pieces) = &self.question.trees.groups[at] else { continue };
            let hung = self.question.hung[at];
            for size in 0..self.shares.len() {
                let shares: Option<Vec<f64>> = pieces.iter().map(|(_, kind)| self.shares[size][*kind]).collect();
                let whole = f64::from(self.wish.sizes[size].places);
                // What hangs already does hang.
                let sum = shares.as_ref().map_or(2.0 * whole, |shares| shares.iter().sum());
                let sum = if hung.is_some() { sum.min(whole) } else { sum.min(100.0 * whole) };
                group.places[size] = sum.floor() as u32;
                group.fits[size] = if hung.is_some() { hung == Some(size) } else { shares.is_some() };
            }
        }
        // So does what the caster keeps together and was found to.
        for (lock, _) in self.wish.locks.iter().zip(&self.kept).filter(|(_, hangs)| **hangs) {
            let whole = self.wish.sizes[lock.size].places;
            let sum: u64 = lock.groups.iter().map(|group| u64::from(self.wish.groups[*group].places[lock.size])).sum();
            for group in lock.groups.iter().filter(|_| sum > u64::from(whole)) {
                let group = &mut self.wish.groups[*group];
                group.places[lock.size] = (u64::from(group.places[lock.size]) * u64::from(whole) / sum) as u32;
                group.fits[lock.size] = true;
            }
        }
    }

    fn is_locked(&self, group: usize) -> bool {
        self.wish.locks.iter().any(|lock| lock.groups.contains(&group))
    }

    /// The pieces of a planned flask with their kinds, in the order of these.
    fn pieces(&self, plan: &Plan, flask: usize) -> Option<Vec<(PieceId, usize)>> {
        let groups = plan.flasks[flask].groups.iter().map(|group| self.question.trees.groups[*group].as_ref());
        let mut pieces: Vec<(PieceId, usize)> = groups.collect::<Option<Vec<_>>>()?.into_iter().flatten().copied().collect();
        pieces.sort_by_key(|(piece, kind)| (*kind, *piece));
        Some(pieces)
    }

    fn stand(&mut self, plan: &Plan, flask: usize) -> Stands {
        let share = (flask as f64) / (plan.flasks.len() as f64);
        if !self.tell(COUNTING + (1.0 - COUNTING) * share) {
            return Stands::NotSeen;
        }
        let planned = &plan.flasks[flask];
        // A tree that gets nothing stands as it stands.
        let stays = planned.groups.iter().all(|group| self.question.hung[*group].is_some());
        let Some(pieces) = self.pieces(plan, flask).filter(|_| !stays) else { return Stands::NotSeen };
        let size = planned.size;
        let kinds: Vec<usize> = pieces.iter().map(|(_, kind)| *kind).collect();
        let key = (size, kinds);
        if !self.tried.contains_key(&key) {
            let tried = self.tried(size, &key.1);
            self.tried.insert(key.clone(), tried);
        }
        let tried = &self.tried[&key];
        let most = tried.hangs.iter().flatten().count();
        if most < pieces.len() {
            // Stopped halfway, nothing is known of it.
            return if self.stopped() { Stands::NotSeen } else { Stands::Short { most, of: pieces.len() } };
        }
        let hangs = pieces.iter().zip(&tried.hangs).filter_map(|((piece, _), hang)| Some((*piece, hang.clone()?))).collect();
        Stands::All(Upright { trunk: tried.trunk, hangs })
    }

    fn tried(&self, size: usize, kinds: &[usize]) -> Tried {
        let all = &self.question.trees.kinds;
        let wall_mm = kinds.iter().map(|kind| all[*kind].wall_mm).fold(0.0, f64::max);
        let (trunk, limits) = self.question.trees.room(size, wall_mm);
        let ways = &self.ways[size];
        let wanted = |kind: &usize| Wanted { angle_deg: ways[*kind].angle_deg, ..all[*kind].wanted.clone() };
        let length_mm = kinds.iter().map(|kind| ways[*kind].length_mm).fold(trunk.length_mm, f64::min);
        let trunk = Trunk { length_mm, ..trunk };
        let task = Task { trunk, pieces: kinds.iter().map(wanted).collect(), limits };
        match arrange(&task, STEPS_A_FLASK, &|_| self.tell(0.0)) {
            Ok(found) => {
                let trunk = shortened(&task, &found.hangs);
                Tried { trunk, hangs: found.hangs.into_iter().map(Some).collect() }
            }
            Err(CannotArrange::RoomFor { hangs, .. }) => Tried { trunk, hangs },
            Err(_) => Tried { trunk, hangs: vec![None; kinds.len()] },
        }
    }

    /// Pieces of a flask that does not take all of them are taken to be larger in it: so much that one fewer goes in.
    fn enlarge(&mut self, plan: &Plan, flask: usize) {
        let size = plan.flasks[flask].size;
        let Some(pieces) = self.pieces(plan, flask) else { return };
        let kinds: Vec<usize> = pieces.into_iter().map(|(_, kind)| kind).collect();
        let Some(tried) = self.tried.get(&(size, kinds.clone())) else { return };
        let share = |kind: usize| self.shares[size][kind].unwrap_or(0.0);
        let hung: f64 = kinds.iter().zip(&tried.hangs).filter(|(_, hang)| hang.is_some()).map(|(kind, _)| share(*kind)).sum();
        let next =
            kinds.iter().zip(&tried.hangs).filter(|(_, hang)| hang.is_none()).map(|(kind, _)| share(*kind)).fold(f64::INFINITY, f64::min);
        let factor = (f64::from(self.wish.sizes[size].places) / (hung + next)).max(1.0) * 1.001;
        let mut of: Vec<usize> = kinds;
        of.dedup();
        for kind in of {
            self.shares[size][kind] = self.shares[size][kind].map(|share| share * factor + 1.0);
        }
    }
}

/// The main sprue cut off above the highest feed, in whole millimetres: what stands over it feeds nothing.
fn shortened(task: &Task, hangs: &[Hang]) -> Trunk {
    let over = |hang: &Hang| hang.joint_mm + 0.5 * hang.feed_diameter_mm - task.trunk.dome_mm;
    let highest = hangs.iter().map(over).fold(1.0, f64::max);
    // The round end of a rod takes half its width.
    let length_mm = (highest - 1e-9).ceil().max(0.5 * task.trunk.diameter_mm).min(task.trunk.length_mm);
    Trunk { length_mm, ..task.trunk }
}
