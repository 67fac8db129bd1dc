//! One mould at one conductivity, run through a programme segment by segment.

use super::limits::Limits;
use super::load::{Load, Mould};
use super::path::{Segment, parts};
use super::read::{Series, Values};
use crate::calc::heat::{Field, Fineness, HeatError, Phase, Surroundings, Watch};
use crate::calc::mould_heat::Conductivity;

/// Shortest piece that is run, in s: a segment of no length is none.
const SHORTEST_S: f64 = 1e-3;

/// One mould at one conductivity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Case {
    pub mould: usize,
    pub of: Conductivity,
}

/// Why a run came to no end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Halt {
    /// It was told to.
    Stopped,
    /// A number made no sense.
    Heat(HeatError),
}

impl From<HeatError> for Halt {
    fn from(error: HeatError) -> Self {
        Self::Heat(error)
    }
}

/// A case through a programme: the mould before each segment, and what was read in it.
#[derive(Debug, Clone, Default)]
pub(super) struct Track {
    pub before: Vec<Field>,
    pub series: Vec<Series>,
    /// Outermost cavity and corner at the end.
    pub at_end: [f64; 2],
}

/// How a case is run.
#[derive(Debug, Clone, Copy)]
pub(super) struct Manner {
    pub fineness: Fineness,
    /// Time between samples, in s.
    pub every_s: f64,
    /// Whether the moulds before each segment are kept.
    pub keeps: bool,
}

impl Case {
    /// Mould by mould, those that must hold.
    pub fn all(load: &Load) -> Vec<Self> {
        let of = |mould: usize| load.kept.all().iter().map(move |&of| Self { mould, of });
        (0..load.moulds.len()).flat_map(of).collect()
    }

    pub fn mould(self, load: &Load) -> &Mould {
        &load.moulds[self.mould]
    }

    /// Through a whole programme.
    pub fn run(
        self,
        (load, limits): (&Load, &Limits),
        segments: &[Segment],
        manner: &Manner,
        stop: &mut dyn FnMut() -> bool,
    ) -> Result<Track, Halt> {
        let mould = self.mould(load);
        let field = Field::new(&mould.flask, &mould.materials[self.of as usize], mould.start_c, &manner.fineness)?;
        self.go_on((load, limits), (field, 0), segments, manner, stop)
    }

    /// From before a segment to the end.
    pub fn go_on(
        self,
        (load, limits): (&Load, &Limits),
        (mut field, first): (Field, usize),
        segments: &[Segment],
        manner: &Manner,
        stop: &mut dyn FnMut() -> bool,
    ) -> Result<Track, Halt> {
        let mould = self.mould(load);
        let mut track = Track { before: Vec::new(), series: Vec::new(), at_end: [f64::NAN; 2] };
        for part in parts(segments, limits).iter().skip(first) {
            if manner.keeps {
                track.before.push(field.clone());
            }
            track.series.push(piece(mould, limits, &mut field, part, manner, stop)?);
        }
        track.at_end = [field.at(mould.places.cavity_m), field.at(mould.places.corner_m)];
        Ok(track)
    }
}

fn piece(
    mould: &Mould,
    limits: &Limits,
    field: &mut Field,
    part: &[[f64; 2]],
    manner: &Manner,
    stop: &mut dyn FnMut() -> bool,
) -> Result<Series, Halt> {
    let until_s = part.last().map_or(0.0, |last| last[0] * 60.0);
    if until_s - field.time_s() < SHORTEST_S {
        return Ok(Series {
            times_min: vec![field.time_s() / 60.0],
            wall_c: vec![field.at(mould.places.wall_m)],
            core_c: vec![field.core_c()],
        });
    }
    let temperature = part.iter().map(|[minutes, c]| [minutes * 60.0, c + limits.offset_k]).collect();
    let kiln = Surroundings { temperature, phases: vec![Phase { from_s: 0.0, surfaces: mould.surfaces }] };
    let watch = Watch { probes: vec![mould.places.wall_m], every_s: manner.every_s, until_s };
    let run = field.advance(&kiln, &watch, stop)?;
    if run.stopped {
        return Err(Halt::Stopped);
    }
    let wall_c = run.probes_c.into_iter().next().unwrap_or_default();
    Ok(Series { times_min: run.times_s.iter().map(|s| s / 60.0).collect(), wall_c, core_c: run.core_c })
}

impl Track {
    pub fn whole(&self) -> Series {
        let mut whole = Series::default();
        self.series.iter().for_each(|series| whole.extend(series));
        whole
    }

    pub fn values(&self, case: Case, load: &Load) -> Values {
        self.whole().values((case.mould, case.of), &case.mould(load).needs, self.at_end)
    }
}
