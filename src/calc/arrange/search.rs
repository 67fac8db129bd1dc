//! The search: from even tiers on by moves, worse ones taken now and then and ever more rarely, with chance of a fixed beginning.

use super::super::stand::{Hang, Part};
use super::cost::{Weighed, of};
use super::place::{Spot, free};
use super::pose::Kinds;
use super::sides::Sides;
use super::{Arrangement, CannotArrange, Fault, Task, check, cost};

/// What the looks of a tree weigh beside its cost: what costs nothing else is tidy.
const TIDY: f64 = 0.05;

/// Somebody is asked whether to go on after so many steps.
const ASK_AFTER: u64 = 512;

/// Steps that are enough: so many for every piece, and so many for every two.
const ENOUGH: [u64; 2] = [1500, 400];

/// How much worse a tree may be at first to be taken now and then; in the end a hundredth of it.
const HEAT: f64 = 0.006;

/// So often what turns out to be too near is hung elsewhere; then it is left out.
const MOST_LESSONS: u32 = 64;

/// The state of a search.
pub(super) struct Search<'a> {
    pub task: &'a Task,
    pub kinds: &'a Kinds,
    pub sides: Sides<'a>,
    pub spots: Vec<Option<Spot>>,
    /// The lowest and the highest anything may be joined at.
    pub span: [f64; 2],
    /// Joints from the lowest to the highest, in whole numbers of a step.
    pub grid: Vec<f64>,
    pub dice: Dice,
    pub step_mm: f64,
    best: (f64, Vec<Option<Spot>>),
    moves: u64,
    steps: u64,
    asked: u64,
    go_on: &'a dyn Fn(f64) -> bool,
    stopped: bool,
}

impl<'a> Search<'a> {
    pub fn new(task: &'a Task, kinds: &'a Kinds, steps: u64, go_on: &'a dyn Fn(f64) -> bool) -> Self {
        let loose = (0..task.pieces.len()).filter(|piece| task.pieces[*piece].held.is_none());
        let joints: Vec<[f64; 2]> = loose.flat_map(|piece| &kinds.of_piece[piece]).map(|pose| kinds.poses[*pose].joints).collect();
        let low = joints.iter().map(|joint| joint[0]).fold(f64::INFINITY, f64::min);
        let high = joints.iter().map(|joint| joint[1]).fold(f64::NEG_INFINITY, f64::max);
        let span = if low <= high { [low, high] } else { [0.0; 2] };
        let step_mm = round_step((span[1] - span[0]) / 40.0);
        let mut search = Self {
            task,
            kinds,
            sides: Sides::new(&kinds.poses, task.limits),
            spots: vec![None; task.pieces.len()],
            span,
            grid: Vec::new(),
            dice: Dice(0x9e37_79b9_7f4a_7c15),
            step_mm,
            best: (f64::INFINITY, vec![None; task.pieces.len()]),
            moves: 0,
            steps,
            asked: 0,
            go_on,
            stopped: false,
        };
        let parts = ((span[1] - span[0]) / step_mm) as usize;
        let mut grid: Vec<f64> = (0..=parts).map(|part| search.whole(span[0] + step_mm * part as f64, span)).chain(span).collect();
        grid.sort_by(f64::total_cmp);
        grid.dedup();
        search.grid = grid;
        search
    }

    pub fn run(mut self) -> Result<Arrangement, CannotArrange> {
        self.clear();
        self.show();
        self.begin();
        self.improve();
        let mut lessons = 0;
        loop {
            let hangs = self.hangs();
            match check::some(self.task, &hangs) {
                Ok(()) => return self.told(hangs),
                Err(fault) => self.learn(&fault, lessons < MOST_LESSONS),
            }
            lessons += 1;
        }
    }

    /// The best tree so far.
    fn hangs(&self) -> Vec<Option<Hang>> {
        self.best.1.iter().enumerate().map(|(piece, spot)| spot.map(|spot| self.hung(piece, spot))).collect()
    }

    fn told(self, hangs: Vec<Option<Hang>>) -> Result<Arrangement, CannotArrange> {
        let (steps, of) = (self.used(), hangs.len());
        let most = hangs.iter().flatten().count();
        if most < of {
            return Err(CannotArrange::RoomFor { most, of, hangs, stopped: self.stopped, steps });
        }
        let hangs: Vec<Hang> = hangs.into_iter().flatten().collect();
        Ok(Arrangement { cost: cost(self.task, &hangs), hangs, stopped: self.stopped, steps })
    }

    /// Takes down a piece of the best tree that is at fault, and hangs it elsewhere where it may. What is clear by its sides is clear by every
    /// look, but for solids between which two looks missed a touch: those are never taken as clear again.
    fn learn(&mut self, fault: &Fault, again: bool) {
        self.spots.clone_from(&self.best.1);
        let of = |part: &Part| match part {
            Part::Trunk => None,
            Part::Feed(at) | Part::Piece(at) => Some(*at),
        };
        let named = match fault {
            Fault::Between { parts, .. } => parts.iter().filter_map(of).collect(),
            Fault::Wall { piece, .. } | Fault::OffTrunk { piece, .. } | Fault::Number { piece } => vec![*piece],
            _ => Vec::new(),
        };
        if let [one, other] = named[..]
            && let (Some(first), Some(second)) = (self.spots[one], self.spots[other])
        {
            self.sides.forbid(first.pose, second.pose, second.joint - first.joint);
        }
        let hangs = |piece: &usize| self.spots[*piece].is_some() && !self.is_held(*piece);
        let blamed = named.iter().copied().rev().find(hangs).or_else(|| (0..self.spots.len()).rev().find(hangs));
        if let Some(piece) = blamed {
            let taken = self.spots[piece].take();
            if let (Some(spot), true) = (taken, again) {
                let grid = self.grid.clone();
                self.hang_near(piece, spot.joint, spot.around, &grid);
            }
        }
        self.best = (self.worth(), self.spots.clone());
        if again {
            self.improve();
        }
    }

    fn hung(&self, piece: usize, spot: Spot) -> Hang {
        let wanted = &self.task.pieces[piece];
        match wanted.held {
            Some(held) => wanted.hang(held.joint_mm, held.around_deg, held.twist_deg),
            None => wanted.hang(spot.joint, spot.around, self.kinds.poses[spot.pose].twist_deg),
        }
    }

    /// Takes down everything but what is held.
    pub fn clear(&mut self) {
        for (piece, wanted) in self.task.pieces.iter().enumerate() {
            let pose = self.kinds.of_piece[piece][0];
            self.spots[piece] = wanted.held.map(|held| Spot { pose, joint: held.joint_mm, around: held.around_deg });
        }
    }

    pub fn is_held(&self, piece: usize) -> bool {
        self.task.pieces[piece].held.is_some()
    }

    /// The joint in whole steps that is nearest within these ends, or an end where there is none.
    pub fn whole(&self, joint: f64, [low, high]: [f64; 2]) -> f64 {
        let within = |steps: f64| Some(steps * self.step_mm).filter(|at| (low..=high).contains(at));
        let steps = (joint.clamp(low, high) / self.step_mm).round();
        within(steps).or_else(|| within(steps + 1.0)).or_else(|| within(steps - 1.0)).unwrap_or(if joint < high { low } else { high })
    }

    /// Hangs a piece there, as near to this angle as it goes. It must not hang yet.
    pub fn hang(&mut self, piece: usize, pose: usize, joint: f64, around: f64) -> bool {
        self.moves += 1 + self.spots.len() as u64 / 64;
        let found = free(&mut self.sides, &self.spots, pose, joint, around);
        self.spots[piece] = found.map(|around| Spot { pose, joint, around });
        found.is_some()
    }

    /// Goes on from the best tree so far.
    pub fn take_best(&mut self) {
        self.spots.clone_from(&self.best.1);
    }

    pub fn missing(&self) -> usize {
        self.spots.iter().filter(|spot| spot.is_none()).count()
    }

    pub fn best_missing(&self) -> usize {
        self.best.1.iter().filter(|spot| spot.is_none()).count()
    }

    /// What the tree is worth: the less the better, a missing piece more than anything.
    pub fn worth(&self) -> f64 {
        let weighed: Vec<Weighed> = self
            .spots
            .iter()
            .zip(&self.task.pieces)
            .filter_map(|(spot, wanted)| Some((*spot.as_ref()?, wanted)))
            .map(|(spot, wanted)| {
                let ([a, b], (sin, cos)) = (self.kinds.poses[spot.pose].middle, spot.around.to_radians().sin_cos());
                let (x, y) = (cos * a - sin * b, sin * a + cos * b);
                Weighed { joint: spot.joint, x, y, weight: wanted.weight_g, thinnest: wanted.thinnest_mm }
            })
            .collect();
        self.missing() as f64 + of(&weighed, self.task.trunk.length_mm).total + TIDY * self.looks_odd()
    }

    /// Keeps the tree where it is the best so far.
    pub fn show(&mut self) -> f64 {
        let worth = self.worth();
        if worth < self.best.0 - 1e-9 {
            self.best = (worth, self.spots.clone());
        }
        worth
    }

    pub fn used(&self) -> u64 {
        self.moves + self.sides.looks
    }

    /// Are the steps used, or did somebody stop? Asks now and then.
    pub fn is_over(&mut self) -> bool {
        let used = self.used();
        if !self.stopped && used >= self.asked {
            self.asked = used + ASK_AFTER;
            self.stopped = !(self.go_on)((used as f64 / self.steps.max(1) as f64).min(1.0));
        }
        self.stopped || used >= self.steps
    }

    fn improve(&mut self) {
        self.spots.clone_from(&self.best.1);
        let loose: Vec<usize> = (0..self.spots.len()).filter(|piece| !self.is_held(*piece)).collect();
        let mut now = self.best.0;
        let begun = self.used();
        let many = loose.len() as u64;
        let enough = if self.best_missing() > 0 { u64::MAX } else { ENOUGH[0] * many + ENOUGH[1] * many * many };
        let left = self.steps.saturating_sub(begun).min(enough).max(1);
        let mut cool = false;
        while !loose.is_empty() && self.best.0 > 1e-9 && self.used() < begun + left && !self.is_over() {
            let share = (self.used() - begun) as f64 / left as f64;
            if share > 0.8 && !cool {
                // The last part of the way only goes down, from the best.
                cool = true;
                self.spots.clone_from(&self.best.1);
                now = self.best.0;
            }
            let heat = if cool { 0.0 } else { HEAT * 0.01_f64.powf(share) };
            let before = self.spots.clone();
            self.moves += 1 + (self.spots.len() * self.spots.len()) as u64 / 256;
            let moved = self.step(&loose);
            let worth = if moved { self.show() } else { f64::INFINITY };
            if worth <= now || self.dice.roll() < ((now - worth) / heat.max(1e-12)).exp() {
                now = worth;
            } else {
                self.spots = before;
            }
        }
    }
}

/// The next larger of 1, 2 and 5 times a power of ten.
fn round_step(least: f64) -> f64 {
    let power = 10.0_f64.powf(least.max(1e-6).log10().floor());
    [1.0, 2.0, 5.0, 10.0].map(|times| times * power).into_iter().find(|step| *step >= least).unwrap_or(power)
}

/// Random numbers of a fixed beginning (splitmix64, from memory).
pub(super) struct Dice(u64);

impl Dice {
    /// From nought to 1.
    pub fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, many: usize) -> usize {
        ((self.roll() * many as f64) as usize).min(many.saturating_sub(1))
    }
}
