//! Coarse runs of a load through a programme, with what they are known to be off.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicU64, Ordering};

use super::case::{Case, Halt, Manner, Track};
use super::limits::Limits;
use super::load::Load;
use super::path::{Segment, top, total_min};
use super::rows::{Kind, Over, joined, on_the_way, worst_of_each};
use crate::calc::heat::Fineness;
use crate::calc::labour::Labour;

/// Coarse enough for thousands of runs; what it is off is found out by finer ones.
const COARSE: Fineness = Fineness { radial: 6, axial: 8, grading: 0.2, tolerance_k: 0.2 };
/// Time between samples of a coarse run, in s.
const EVERY_S: f64 = 120.0;

/// By what share of it the difference of wall and core may be off.
const APART_OFF: f64 = 0.003;

/// How coarse runs are made.
pub(super) const MANNER: Manner = Manner { fineness: COARSE, every_s: EVERY_S, keeps: true };

/// A load with its limits, and how far coarse runs are off.
pub(super) struct Model<'a> {
    pub load: &'a Load,
    pub limits: &'a Limits,
    pub cases: Vec<Case>,
    /// Whether a case is looked at: others are known to be far from all their limits, until a finer run says they are not.
    pub awake: Vec<bool>,
    manner: Manner,
    /// What is added to how far a limit is broken.
    leeway: BTreeMap<(Case, Kind), f64>,
    /// How far each limit was broken in the last finer run.
    seen: BTreeMap<(Case, Kind), f64>,
    /// How much more it was broken in the finest.
    beyond: BTreeMap<(Case, Kind), f64>,
    labour: &'a Labour<'a>,
    /// How much is done, from 0 to 1, as its bits.
    done: AtomicU64,
}

/// A programme as coarse runs see it.
#[derive(Debug, Clone)]
pub(super) struct Look {
    pub total_min: f64,
    /// Case by case; nothing of one that is asleep.
    pub tracks: Vec<Track>,
    pub rows: Vec<Vec<Over>>,
}

impl Look {
    /// Length, and what is broken at a weight.
    pub fn merit(&self, times: f64) -> f64 {
        self.total_min + times * self.rows.iter().flatten().map(cost).sum::<f64>()
    }

    /// Whether nothing is broken.
    pub fn kept(&self) -> bool {
        self.rows.iter().flatten().all(|row| row.over <= 0.0)
    }

    /// What is broken the most, by its cost.
    pub fn worst(&self) -> Option<(usize, Over)> {
        let all = self.rows.iter().enumerate().flat_map(|(case, rows)| rows.iter().map(move |row| (case, *row)));
        all.max_by(|a, b| cost(&a.1).total_cmp(&cost(&b.1)))
    }
}

pub(super) fn cost(row: &Over) -> f64 {
    row.kind.weight() * row.over.max(0.0)
}

impl<'a> Model<'a> {
    pub fn new(load: &'a Load, limits: &'a Limits, labour: &'a Labour<'a>) -> Self {
        let cases = Case::all(load);
        Self {
            load,
            limits,
            awake: vec![true; cases.len()],
            cases,
            manner: MANNER,
            leeway: BTreeMap::new(),
            seen: BTreeMap::new(),
            beyond: BTreeMap::new(),
            labour,
            done: AtomicU64::new(0),
        }
    }

    pub fn set_done(&self, share: f64) {
        self.done.store(share.to_bits(), Ordering::Relaxed);
    }

    /// Through a whole programme, until it is told to stop.
    pub fn run(&self, case: Case, segments: &[Segment], manner: &Manner) -> Result<Track, Halt> {
        case.run((self.load, self.limits), segments, manner, &mut || self.is_told())
    }

    /// For every one of many, on all cores there are.
    pub fn each<T: Sync, R: Send, E: Send>(&self, all: &[T], task: impl Fn(&T) -> Result<R, E> + Sync) -> Result<Vec<R>, E> {
        self.labour.each(all, task)
    }

    fn is_told(&self) -> bool {
        !(self.labour.go_on)(f64::from_bits(self.done.load(Ordering::Relaxed)))
    }

    /// Wakes for each kind of limit the case that is nearest to it, beside those that are awake already.
    pub fn wake_nearest(&mut self, segments: &[Segment]) -> Result<(), Halt> {
        let before = std::mem::replace(&mut self.awake, vec![true; self.cases.len()]);
        let look = self.look(segments)?;
        let mut nearest: BTreeMap<Kind, (f64, usize)> = BTreeMap::new();
        for (case, rows) in look.rows.iter().enumerate() {
            for (kind, over) in worst_of_each(rows) {
                let held = nearest.entry(kind).or_insert((over, case));
                if over > held.0 {
                    *held = (over, case);
                }
            }
        }
        self.awake = before;
        nearest.values().for_each(|(_, case)| self.awake[*case] = true);
        Ok(())
    }

    pub fn look(&self, segments: &[Segment]) -> Result<Look, Halt> {
        Ok(self.looks(&[segments])?.remove(0))
    }

    /// A look at each of many programmes.
    pub fn looks(&self, programmes: &[&[Segment]]) -> Result<Vec<Look>, Halt> {
        let awake = (0..self.cases.len()).filter(|at| self.awake[*at]);
        let asked: Vec<(usize, usize)> = awake.flat_map(|at| (0..programmes.len()).map(move |which| (which, at))).collect();
        let found = self.each(&asked, |&(which, at)| {
            let track = self.run(self.cases[at], programmes[which], &self.manner)?;
            let rows = self.rows(self.cases[at], &track.series.iter().collect::<Vec<_>>(), top(programmes[which]));
            Ok::<_, Halt>((track, rows))
        })?;
        let nothing = |segments: &&[Segment]| Look {
            total_min: total_min(segments),
            tracks: vec![Track::default(); self.cases.len()],
            rows: vec![Vec::new(); self.cases.len()],
        };
        let mut looks: Vec<Look> = programmes.iter().map(nothing).collect();
        for ((which, at), (track, rows)) in asked.into_iter().zip(found) {
            (looks[which].tracks[at], looks[which].rows[at]) = (track, rows);
        }
        Ok(looks)
    }

    /// The rows of one case where a programme changes from a segment on.
    pub fn changed(&self, at: usize, before: &Track, first: usize, segments: &[Segment]) -> Result<Vec<Over>, Halt> {
        let case = self.cases[at];
        let manner = Manner { keeps: false, ..self.manner };
        let after =
            case.go_on((self.load, self.limits), (before.before[first].clone(), first), segments, &manner, &mut || self.is_told())?;
        Ok(self.rows(case, &joined(before, first, &after), top(segments)))
    }

    fn rows(&self, case: Case, series: &[&super::read::Series], top: usize) -> Vec<Over> {
        let mut rows = on_the_way(case, (self.load, self.limits), series, top);
        for row in &mut rows {
            row.over += self.leeway.get(&(case, row.kind)).copied().unwrap_or(0.0);
        }
        rows
    }

    /// What a track breaks, as it is: with nothing that was learned.
    pub fn bare_rows(&self, case: Case, track: &Track, segments: &[Segment]) -> Vec<Over> {
        on_the_way(case, (self.load, self.limits), &track.series.iter().collect::<Vec<_>>(), top(segments))
    }

    /// Learns what a coarse run is off from a finer one of the same programme, and leaves so much room besides. Gives by how much the worst is
    /// broken, with what was learned of still finer runs.
    pub fn learn(&mut self, case: Case, segments: &[Segment], finer: &Track, room: f64) -> Result<f64, Halt> {
        let manner = Manner { keeps: false, ..MANNER };
        let coarse = self.run(case, segments, &manner)?;
        let coarse = worst_of_each(&self.bare_rows(case, &coarse, segments));
        let mut worst = f64::NEG_INFINITY;
        for (kind, finer) in worst_of_each(&self.bare_rows(case, finer, segments)) {
            self.seen.insert((case, kind), finer);
            let finer = finer + self.beyond.get(&(case, kind)).copied().unwrap_or(0.0);
            worst = worst.max(finer);
            let coarse = coarse.get(&kind).copied().unwrap_or(finer);
            self.leeway.insert((case, kind), finer - coarse + room + self.wide(case, kind));
        }
        Ok(worst)
    }

    /// Learns what the finer runs are off beside the finest, of the programme learned from last.
    pub fn learn_beyond(&mut self, case: Case, segments: &[Segment], finest: &Track, room: f64) -> Result<(), Halt> {
        for (kind, finest) in worst_of_each(&self.bare_rows(case, finest, segments)) {
            if let Some(finer) = self.seen.get(&(case, kind)) {
                self.beyond.insert((case, kind), finest - finer);
            }
        }
        let seen = std::mem::take(&mut self.beyond);
        self.learn(case, segments, finest, room)?;
        self.beyond = seen;
        Ok(())
    }

    /// Cases by how near their limits are, the nearest first, as was seen last.
    pub fn nearest_first(&self) -> Vec<Case> {
        let near = |case: &Case| {
            let of_case = self.seen.iter().filter(|((seen, _), _)| seen == case);
            of_case.map(|((_, kind), over)| over / kind.far()).fold(f64::NEG_INFINITY, f64::max)
        };
        let mut cases = self.cases.clone();
        cases.sort_by(|a, b| near(b).total_cmp(&near(a)));
        cases
    }

    /// Room that goes with a limit: a mesh is off by a share of how far wall and core are apart.
    fn wide(&self, case: Case, kind: Kind) -> f64 {
        match kind {
            Kind::Apart { inversion, .. } => APART_OFF * case.mould(self.load).needs.inversions[inversion].most_k,
            _ => 0.0,
        }
    }
}
