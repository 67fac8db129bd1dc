//! What a studio's own record teaches: what its jobs tell of melt loss, finishing, density, gloss-off, minutes and defects, put together.
//!
//! [`Notes::of`] reads one job, so that no more than one need be held at a time; [`teach`] puts the notes of all together. Only what was
//! really weighed or timed counts, never what was planned.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::{Date, date};

use super::learned::{GroupRate, Held, Judgement, Learned, Observation, Tally, judge, learn_by, rates_by};
use crate::job::{
    BenchStep, Event, FinishStep, Flask, FlaskId, Frozen, Job, Line, Measures, MetalKind, PieceId, Place, Programme, Weighing, pieces_in,
    standing,
};
use crate::quantity::{Finite, Grams};

/// What is learned.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lesson {
    /// Share of the charge that is lost, by alloy.
    MeltLoss(String),
    /// Share of a piece's weight that finishing takes, by alloy.
    Finishing(String),
    /// Share of a piece's weight that one step of finishing takes, by alloy.
    FinishStep(String, FinishStep),
    /// Linear shrinkage from pattern to casting, by alloy.
    Shrinkage(String),
    /// Linear shrinkage from file or master to pattern, by pattern material.
    PatternShrink(String),
    /// Density of a pattern material in g/cm³: what patterns weigh over what their files hold.
    Density(String),
    /// Minutes to gloss-off, by powder.
    GlossOff(String),
    /// Minutes of a step at the bench.
    Minutes(BenchStep),
}

impl Lesson {
    /// What 100 g of metal become where `learned` takes the place of `now`: in the crucible by the melt loss, for weighed patterns by their
    /// density; nothing where no metal hangs on it.
    #[must_use]
    pub fn of_100_g(&self, now: f64, learned: f64) -> Option<f64> {
        match self {
            Self::MeltLoss(_) => Some(100.0 * (1.0 - now) / (1.0 - learned)),
            Self::Density(_) => Some(100.0 * now / learned),
            // What a casting weighs goes with the cube of what is left of a length.
            Self::Shrinkage(_) => Some(100.0 * ((1.0 - learned) / (1.0 - now)).powi(3)),
            Self::Finishing(_) | Self::FinishStep(..) | Self::PatternShrink(_) | Self::GlossOff(_) | Self::Minutes(_) => None,
        }
    }
}

/// What defects are counted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum By {
    /// The alloy.
    Alloy,
    /// The section of the pattern.
    Section,
    /// The kiln's programme.
    Programme,
    /// The lot of the powder.
    PowderLot,
}

impl By {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Alloy, Self::Section, Self::Programme, Self::PowderLot];
}

/// What one job tells.
#[derive(Debug, Clone, Default)]
pub struct Notes {
    /// What the job is called, by its id.
    pub name: (String, String),
    measured: Vec<(Lesson, Observation<String>)>,
    castings: Vec<(By, String, Tally<String>)>,
    held: Vec<Held<String>>,
}

/// What all jobs teach together.
#[derive(Debug, Clone, Default)]
pub struct Taught {
    /// Every quantity.
    pub lessons: BTreeMap<Lesson, Learned<String>>,
    /// Defects, the worst group first.
    pub defects: BTreeMap<By, Vec<GroupRate<String>>>,
    /// How the metal that was predicted held, where anything was weighed.
    pub metal: Option<Judgement>,
    /// How many jobs told anything.
    pub jobs: usize,
    /// What jobs are called, by their ids.
    pub names: BTreeMap<String, String>,
}

/// The band that is promised of metal: 3 % until the record says better, and to hold nineteen times of twenty.
const METAL_BAND: f64 = 0.03;
const METAL_HOLDS: f64 = 0.95;

/// Puts the notes of all jobs together. What contradicts itself in one job is left out with that job's kind of note.
#[must_use]
pub fn teach(notes: impl IntoIterator<Item = Notes>) -> Taught {
    let (mut measured, mut castings, mut held) = (Vec::new(), BTreeMap::<By, Vec<(String, Tally<String>)>>::new(), Vec::new());
    let mut taught = Taught::default();
    for notes in notes {
        if !notes.is_empty() {
            taught.jobs += 1;
            taught.names.insert(notes.name.0.clone(), notes.name.1.clone());
        }
        measured.extend(notes.measured);
        held.extend(notes.held);
        for (by, group, tally) in notes.castings {
            castings.entry(by).or_default().push((group, tally));
        }
    }
    taught.lessons = learn_by(measured).unwrap_or_default();
    taught.defects = castings.into_iter().filter_map(|(by, tallies)| Some((by, rates_by(tallies).ok()?))).collect();
    taught.metal = judge(&held, METAL_HOLDS).ok();
    taught
}

impl Notes {
    /// What a job tells.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        let id = job.job_id.to_string();
        let name = if job.name.trim().is_empty() { id.clone() } else { job.name.trim().to_owned() };
        let mut notes = Self { name: (id, name), ..Self::default() };
        notes.patterns(job);
        notes.record(job);
        for flask in &job.flasks {
            notes.flask(job, flask);
        }
        notes.pieces(job);
        notes
    }

    /// Does it tell nothing?
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.measured.is_empty() && self.castings.is_empty() && self.held.is_empty()
    }

    fn measured(&mut self, lesson: Lesson, day: i32, value: f64) {
        if value.is_finite() {
            self.measured.push((lesson, Observation { job: self.name.0.clone(), day, value }));
        }
    }

    /// Patterns that were weighed alone and whose file was measured.
    fn patterns(&mut self, job: &Job) {
        let day = job.made.map_or(0, days);
        for pattern in &job.patterns {
            let Some(Weighing::Net(grams)) = &pattern.weighed else { continue };
            let (Some(file), Some(material)) = (&pattern.file, &pattern.material) else { continue };
            let mm = super::pattern_file::print_mm(file);
            let volume = file.kept.as_ref().and_then(|kept| kept.volume).map(|volume| volume.get() * mm.powi(3) / 1000.0);
            if let Some(cm3) = volume.filter(|cm3| *cm3 > 0.0) {
                self.measured(Lesson::Density(material.to_string()), day, grams.to_f64() / cm3);
            }
        }
    }

    /// What the clock told of steps and powders.
    fn record(&mut self, job: &Job) {
        for entry in standing(&job.record) {
            let Some(day) = entry.at.map(|at| days(at.date())) else { continue };
            match &entry.event {
                Event::Timed { step, seconds, .. } => self.measured(Lesson::Minutes(*step), day, f64::from(*seconds) / 60.0),
                Event::Invested { flask, done, .. } => {
                    let powder = job.flasks.iter().find(|one| one.id == *flask).and_then(|flask| flask.powder.as_ref());
                    if let (Some(minutes), Some(powder)) = (done.gloss_off_min, powder) {
                        self.measured(Lesson::GlossOff(powder.to_string()), day, minutes.get());
                    }
                }
                _ => {}
            }
        }
    }

    /// What was poured, what came back of it, and which pieces failed.
    fn flask(&mut self, job: &Job, flask: &Flask) {
        let poured = standing(&job.record).find_map(|entry| match &entry.event {
            Event::Poured { flask: of, plan, done } if *of == flask.id => Some((entry.at, plan, done)),
            _ => None,
        });
        let Some((Some(at), plan, done)) = poured else { return };
        let day = days(at.date());
        let alloy = alloy_of(job, flask);
        let back = back(job, flask.id);
        let charged = done.charge.map(Grams::to_f64).or(back.charged).filter(|charged| *charged > 0.0);
        if let (Some(charged), Some(came), Some(alloy)) = (charged, back.came, &alloy) {
            self.measured(Lesson::MeltLoss(alloy.clone()), day, 1.0 - came / charged);
        }
        if let (Some(predicted), Some(actual)) = (metal_planned(plan, flask.id), back.came) {
            let held = Held {
                job: self.name.0.clone(),
                day,
                predicted,
                lower: predicted * (1.0 - METAL_BAND),
                upper: predicted * (1.0 + METAL_BAND),
                actual,
            };
            self.held.push(held);
        }
        self.castings(job, flask, alloy);
    }

    fn castings(&mut self, job: &Job, flask: &Flask, alloy: Option<String>) {
        let pieces: BTreeSet<PieceId> = pieces_in(job, flask.id).collect();
        let rejected: BTreeSet<PieceId> = standing(&job.record)
            .filter_map(|entry| match &entry.event {
                Event::Rejected { piece, .. } => Some(*piece),
                _ => None,
            })
            .collect();
        let failed = |piece: &PieceId| u32::from(rejected.contains(piece));
        let job_id = self.name.0.clone();
        let tally = |defects: u32, of: u32| Tally { job: job_id.clone(), defects, of };
        let many = u32::try_from(pieces.len()).unwrap_or(u32::MAX);
        let all = tally(pieces.iter().map(failed).sum(), many);
        let programme = job.burnouts.iter().find(|load| Some(load.id) == flask.burnout).and_then(|load| match &load.programme {
            Some(Programme::Table(table)) => Some(table.to_string()),
            _ => None,
        });
        let lot = lot_of(job, flask);
        for (by, group) in [(By::Alloy, alloy), (By::Programme, programme), (By::PowderLot, lot)] {
            self.castings.extend(group.map(|group| (by, group, all.clone())));
        }
        for piece in &pieces {
            let section = section_of(job, *piece);
            self.castings.extend(section.map(|section| (By::Section, section, tally(failed(piece), 1))));
        }
    }

    /// Pieces weighed as cut off and again from step to step, and what was measured on them.
    fn pieces(&mut self, job: &Job) {
        let (mut cut, mut last) = (BTreeMap::<PieceId, f64>::new(), BTreeMap::<PieceId, f64>::new());
        let line_of = |piece: PieceId| job.lines().find(|(_, line)| line.id == piece.line).map(|(_, line)| line);
        for entry in standing(&job.record) {
            match &entry.event {
                Event::PieceWeighed { piece, finished, grams, after } => {
                    let grams = grams.to_f64();
                    let before = last.insert(*piece, grams);
                    let is_cut = !finished && after.is_none_or(|step| step == FinishStep::CutOff);
                    if is_cut {
                        cut.insert(*piece, grams);
                    }
                    let Some(day) = entry.at.map(|at| days(at.date())) else { continue };
                    let Some(alloy) = line_of(*piece).and_then(|line| line.alloy.as_ref()) else { continue };
                    let lost = |from: Option<f64>| from.filter(|from| *from > 0.0).map(|from| 1.0 - grams / from);
                    if let (Some(step), Some(share)) = (after.filter(|step| *step != FinishStep::CutOff), lost(before)) {
                        self.measured(Lesson::FinishStep(alloy.to_string(), step), day, share);
                    }
                    if let Some(share) = lost(cut.get(piece).copied()).filter(|_| *finished) {
                        self.measured(Lesson::Finishing(alloy.to_string()), day, share);
                    }
                }
                // What was added or taken out is no finishing: a piece begins anew.
                Event::Reworked { piece, .. } => {
                    cut.remove(piece);
                    last.remove(piece);
                }
                Event::Measured { piece, measures, .. } => {
                    let Some(day) = entry.at.map(|at| days(at.date())) else { continue };
                    self.shrinks(job, line_of(*piece), *piece, measures, day);
                }
                _ => {}
            }
        }
    }

    fn shrinks(&mut self, job: &Job, line: Option<&Line>, piece: PieceId, measures: &Measures, day: i32) {
        let Some(line) = line else { return };
        let share = |from: Option<Finite>, to: Option<Finite>| Some(1.0 - to?.get() / from?.get());
        if let (Some(alloy), Some(share)) = (&line.alloy, share(measures.pattern_mm, measures.cast_mm)) {
            self.measured(Lesson::Shrinkage(alloy.to_string()), day, share);
        }
        let own = line.exceptions.get(&piece.number).and_then(|own| own.pattern).or(line.pattern);
        // Of a wax from a rubber mould the rubber's shrinkage cannot be told from the wax's own.
        let carved = |pattern: &&crate::job::Pattern| pattern.mould.trim().is_empty();
        let material =
            job.patterns.iter().find(|pattern| Some(pattern.id) == own).filter(carved).and_then(|pattern| pattern.material.as_ref());
        if let (Some(material), Some(share)) = (material, share(measures.model_mm, measures.pattern_mm)) {
            self.measured(Lesson::PatternShrink(material.to_string()), day, share);
        }
    }
}

/// Metal that was weighed after a pour.
struct Back {
    charged: Option<f64>,
    /// All that came back; only where both pieces and sprues were weighed, for half of it says nothing.
    came: Option<f64>,
}

fn back(job: &Job, flask: FlaskId) -> Back {
    let mut sums: BTreeMap<u8, f64> = BTreeMap::new();
    for entry in standing(&job.record) {
        if let Event::Metal { flask: Some(of), what, grams, .. } = &entry.event
            && *of == flask
        {
            *sums.entry(*what as u8).or_default() += grams.to_f64();
        }
    }
    let of = |kind: MetalKind| sums.get(&(kind as u8)).copied();
    let both = of(MetalKind::GoodPieces).zip(of(MetalKind::SpruesAndButton));
    let rest: f64 = [MetalKind::NoFill, MetalKind::Beads].into_iter().filter_map(of).sum();
    Back { charged: of(MetalKind::Charged), came: both.map(|(good, sprues)| good + sprues + rest) }
}

/// Tree and button as they were planned, in g.
fn metal_planned(plan: &Frozen, flask: FlaskId) -> Option<f64> {
    let of = |rule: &str| {
        let figure = plan.figures.iter().find(|figure| figure.rule == rule && figure.place == Place::Flask(flask))?;
        Some(figure.value.get())
    };
    Some(of("flask.tree-metal")? + of("flask.button")?)
}

/// The alloy of a flask: its own, or that of what hangs there first.
fn alloy_of(job: &Job, flask: &Flask) -> Option<String> {
    let own = flask.alloy.as_ref().map(ToString::to_string);
    own.or_else(|| {
        let tree = job.trees.iter().find(|tree| Some(tree.id) == flask.tree)?;
        let line = tree.pieces.first()?.line;
        job.lines().find(|(_, one)| one.id == line)?.1.alloy.as_ref().map(ToString::to_string)
    })
}

/// The lot it was really mixed from, or the one that was planned.
fn lot_of(job: &Job, flask: &Flask) -> Option<String> {
    let really = standing(&job.record).find_map(|entry| match &entry.event {
        Event::Invested { flask: of, done, .. } if *of == flask.id => Some(done.lot.trim().to_owned()),
        _ => None,
    });
    let lot = really.filter(|lot| !lot.is_empty()).unwrap_or_else(|| flask.powder_lot.trim().to_owned());
    (!lot.is_empty()).then_some(lot)
}

fn section_of(job: &Job, piece: PieceId) -> Option<String> {
    let (_, line) = job.lines().find(|(_, line)| line.id == piece.line)?;
    let own = line.exceptions.get(&piece.number).and_then(|own| own.pattern).or(line.pattern)?;
    let section = job.patterns.iter().find(|pattern| pattern.id == own)?.section?;
    Some(format!("{section:?}").to_lowercase())
}

/// Days since 1970.
fn days(on: Date) -> i32 {
    on.since(date(1970, 1, 1)).map_or(0, |span| span.get_days())
}
