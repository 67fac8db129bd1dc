//! What a recompute is told from outside: the day, the time zone, and the results of long runs.

use std::collections::BTreeMap;
use std::sync::Arc;

use jiff::civil::Date;
use jiff::tz::TimeZone;

use super::mould_heat::HeatAnswer;
use crate::job::{FileUnit, From, KeptMeasures, PatternId};
use crate::quantity::Finite;

/// The day the figures are for and the clock on the wall.
#[derive(Debug, Clone)]
pub struct Setting {
    /// The day prices are judged and quotes are dated by.
    pub at: Date,
    /// The zone of wall-clock times in the job.
    pub zone: TimeZone,
}

/// Results of long runs, which are inputs to a recompute.
#[derive(Debug, Clone, Default)]
pub struct Runs {
    /// What is known of each pattern's file. A pattern with a file and no run is pending.
    pub patterns: BTreeMap<PatternId, PatternRun>,
    /// What comparing the files of a pair found, by the pattern that names the other. A pair that is not here was not compared (yet).
    pub pairs: BTreeMap<PatternId, PairRun>,
    /// The heat of moulds, by the keys of what was asked. One that is not here was not computed (yet).
    pub heat: BTreeMap<u128, Arc<HeatAnswer>>,
    /// Pieces that other jobs took on, by where these are from, with the names of those jobs. Nothing where nobody looked.
    pub taken: BTreeMap<From, Vec<String>>,
}

/// What comparing two pattern files found, at the size they are printed: how far the surfaces are apart at most when the second is laid on the
/// first as well as it goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PairRun {
    /// In mm, as it is.
    pub as_it_is_mm: f64,
    /// In mm, mirrored.
    pub mirrored_mm: f64,
}

/// What is known of a pattern's file.
#[derive(Debug, Clone, PartialEq)]
pub enum PatternRun {
    /// Being read: not known yet.
    Pending,
    /// Not there.
    Missing,
    /// There, and not to be read; the reason in words.
    Unreadable(String),
    /// Outside the job's folder, where nothing is read before somebody allows it.
    Apart,
    /// Measured, in the file's own unit.
    Measured(PatternMeasure),
}

/// What a pattern's file measures, in the file's own unit (mm where its unit is mm).
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PatternMeasure {
    /// Hash of the file's bytes, as hexadecimal text.
    pub hash: String,
    /// Volume of the file's material; `None` where it has no such number.
    pub volume: Option<f64>,
    /// What metal fills: sealed voids pour solid. An upper bound where shells overlap and their union is not known. `None` where the file has no volume.
    pub fills: Option<f64>,
    /// Surface area.
    pub area: f64,
    /// Outer size along the file's axes.
    pub size: [f64; 3],
    /// Triangles in the file.
    pub triangles: u32,
    /// Pieces its surface falls into.
    pub shells: u32,
    /// Its walls: the thinnest, the typical, the heaviest; `None` where they were not measured.
    pub walls: Option<[f64; 3]>,
    /// What is the matter with it.
    pub problems: Vec<FileProblem>,
    /// Its rough shape; `None` where it was not looked at.
    pub shape: Option<Arc<PatternShape>>,
}

/// The rough shape of a pattern's file, in the file's own unit.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PatternShape {
    /// Corners of a convex solid that holds all of it.
    pub around: Vec<[f64; 3]>,
    /// Triangles that look like it, for drawings.
    pub triangles: Vec<[[f32; 3]; 3]>,
}

impl PatternMeasure {
    /// What a job keeps of it.
    #[must_use]
    pub fn kept(&self) -> KeptMeasures {
        let void = self.problems.iter().find_map(|problem| match problem {
            FileProblem::SealedVoid(volume) => Finite::new(*volume),
            _ => None,
        });
        let inner = self.problems.iter().find_map(|problem| match problem {
            FileProblem::Nested(volume) => Finite::new(*volume),
            _ => None,
        });
        KeptMeasures {
            volume: self.volume.and_then(Finite::new),
            fills: self.fills.and_then(Finite::new),
            area: Finite::new(self.area),
            size: finite(self.size),
            void,
            inner,
            walls: self.walls.and_then(finite),
        }
    }

    /// What a job kept, as it was measured; `hash` is of the content that was measured then. Nothing where it kept no area or size.
    #[must_use]
    pub fn of_kept(kept: &KeptMeasures, hash: &str) -> Option<Self> {
        Some(Self {
            hash: hash.to_owned(),
            volume: kept.volume.map(Finite::get),
            fills: kept.fills.map(Finite::get),
            area: kept.area?.get(),
            size: kept.size?.map(Finite::get),
            walls: kept.walls.map(|walls| walls.map(Finite::get)),
            triangles: 0,
            shells: 0,
            problems: (kept.void.map(|void| FileProblem::SealedVoid(void.get())).into_iter())
                .chain(kept.inner.map(|inner| FileProblem::Nested(inner.get())))
                .collect(),
            shape: None,
        })
    }
}

/// Three numbers, where all are finite.
fn finite(numbers: [f64; 3]) -> Option<[Finite; 3]> {
    let [a, b, c] = numbers.map(Finite::new);
    Some([a?, b?, c?])
}

/// What can be the matter with a pattern's file.
#[derive(Debug, Clone, PartialEq)]
pub enum FileProblem {
    /// It is open at so many edges.
    Open(u64),
    /// It is wound both ways.
    MixedWinding,
    /// It holds a sealed void of this volume.
    SealedVoid(f64),
    /// Shells pass through each other. What the file fills with the overlap counted once, where that is known, and the sum of its solids.
    Overlapping {
        /// The volume of the solids together, in cubic file units; `None` where it is too intricate to say.
        union: Option<f64>,
        /// The volumes of the solids added up, in cubic file units.
        plain_sum: f64,
    },
    /// Solids of this volume lie wholly inside another, wound the same way; each is counted once.
    Nested(f64),
    /// It has too many triangles for its walls to be measured among the figures.
    WallsNotMeasured,
    /// Its size is absurd; it is probably drawn in this unit.
    ProbableUnit(FileUnit),
    /// Anything else, in words.
    Remark(String),
}
