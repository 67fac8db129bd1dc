//! The heat of a mould, computed from low to high conductivity, in the kiln and afterwards on the bench.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use super::ask::HeatAsk;
use super::figures::HeatFigures;
use super::material::Conductivity;
use crate::calc::heat::{Field, Fineness, HeatError, Phase, Run, Surroundings, Watch, first_at};
use crate::calc::labour::{Cores, Labour};
use crate::calc::{Report, Runs};

/// The mould through the programme, at one conductivity.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Mould {
    /// When, in minutes after the kiln is started.
    pub times_min: Vec<f64>,
    /// The core, in °C.
    pub core_c: Vec<f64>,
    /// The outermost cavity.
    pub cavity_c: Vec<f64>,
    /// The wall at half height.
    pub wall_c: Vec<f64>,
    /// The corner at the upper end.
    pub corner_c: Vec<f64>,
    /// Free water in kg a kg of powder, mean over the mould.
    pub water_kg_kg: Vec<f64>,
    /// Heat taken in to its hottest, in kJ.
    pub heat_kj: f64,
    /// On the bench: minutes after it is taken out, and the outermost cavity in °C.
    pub out: Vec<[f64; 2]>,
}

/// Three values from low to high conductivity; nothing where something never happens.
pub type Band<T> = [Option<T>; 3];

/// The answer: from low to high conductivity.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatAnswer {
    /// The moulds; where one could not be computed, why.
    pub moulds: [Result<Mould, HeatError>; 3],
}

/// Above this in °C the core holds no free water.
pub const DRY_C: f64 = 105.0;

/// So many seconds lie between two samples.
const EVERY_S: f64 = 60.0;

/// A flask is watched on the bench for so many minutes, every so many seconds.
const OUT_MIN: f64 = 20.0;
const OUT_EVERY_S: f64 = 10.0;

/// Computes answers, in the order they are asked for. Nothing where the work is not to go on.
#[must_use]
pub fn answers(asks: &[&HeatAsk], labour: &Labour<'_>) -> Option<Vec<HeatAnswer>> {
    let runs: Vec<(&HeatAsk, usize)> = asks.iter().flat_map(|ask| [0, 1, 2].map(|at| (*ask, at))).collect();
    let done = AtomicUsize::new(0);
    let one = |(ask, at): &(&HeatAsk, usize)| {
        let mut stop = || !(labour.go_on)(done.load(Ordering::Relaxed) as f64 / runs.len() as f64);
        let mould = mould(ask, *at, &Fineness::PLAN, &mut stop).transpose().ok_or(());
        done.fetch_add(1, Ordering::Relaxed);
        mould
    };
    let mut moulds = labour.each(&runs, one).ok()?.into_iter();
    let mut next = || Some(HeatAnswer { moulds: [moulds.next()?, moulds.next()?, moulds.next()?] });
    asks.iter().map(|_| next()).collect()
}

fn mould(ask: &HeatAsk, at: usize, fineness: &Fineness, stop: &mut dyn FnMut() -> bool) -> Result<Option<Mould>, HeatError> {
    let mut field = Field::new(&ask.flask, &ask.materials[at], ask.room_c, fineness)?;
    let probes = vec![ask.places.cavity_m, ask.places.wall_m, ask.places.corner_m];
    let temperature = ask.kiln.iter().map(|[minutes, c]| [minutes * 60.0, *c]).collect();
    let kiln = Surroundings { temperature, phases: vec![Phase { from_s: 0.0, surfaces: ask.surfaces }] };
    let pour_s = ask.pour_min() * 60.0;
    let run = field.advance(&kiln, &Watch { probes: probes.clone(), every_s: EVERY_S, until_s: pour_s }, stop)?;
    if run.stopped {
        return Ok(None);
    }
    let bench = Surroundings::steady(ask.room_c, ask.surfaces);
    let until_s = pour_s + OUT_MIN * 60.0;
    let out = field.advance(&bench, &Watch { probes, every_s: OUT_EVERY_S, until_s }, stop)?;
    Ok((!out.stopped).then(|| put_together(run, &out, pour_s)))
}

fn put_together(run: Run, out: &Run, pour_s: f64) -> Mould {
    let mut probes = run.probes_c.into_iter();
    let mut next = || probes.next().unwrap_or_default();
    Mould {
        times_min: run.times_s.iter().map(|s| s / 60.0).collect(),
        core_c: run.core_c,
        cavity_c: next(),
        wall_c: next(),
        corner_c: next(),
        water_kg_kg: run.held_kg_kg.into_iter().next().unwrap_or_default(),
        heat_kj: run.heat_j.iter().copied().fold(0.0, f64::max) / 1000.0,
        out: out.times_s.iter().zip(&out.probes_c[0]).map(|(s, c)| [(s - pour_s) / 60.0, *c]).collect(),
    }
}

impl Mould {
    /// When the core passes a temperature for the first time, in minutes after the kiln is started.
    #[must_use]
    pub fn core_at(&self, c: f64) -> Option<f64> {
        first_at(&self.times_min, &self.core_c, c)
    }

    /// For how many minutes the core is at least this hot.
    #[must_use]
    pub fn core_above_min(&self, c: f64) -> f64 {
        let part = |times: &[f64], temperatures: &[f64]| {
            let (from, to) = (temperatures[0] - c, temperatures[1] - c);
            let minutes = times[1] - times[0];
            match (from >= 0.0, to >= 0.0) {
                (true, true) => minutes,
                (false, false) => 0.0,
                (true, false) => minutes * from / (from - to),
                (false, true) => minutes * to / (to - from),
            }
        };
        self.times_min.windows(2).zip(self.core_c.windows(2)).map(|(times, temperatures)| part(times, temperatures)).sum()
    }

    /// The hottest the core becomes, in °C.
    #[must_use]
    pub fn core_top_c(&self) -> Option<f64> {
        self.core_c.iter().copied().reduce(f64::max)
    }

    /// Core and outermost cavity at the pour, in °C.
    #[must_use]
    pub fn at_pour(&self) -> Option<[f64; 2]> {
        Some([*self.core_c.last()?, *self.cavity_c.last()?])
    }

    /// How far wall and core are apart at most while either crosses these temperatures, in K.
    #[must_use]
    pub fn apart_within(&self, [from_c, to_c]: [f64; 2]) -> Option<f64> {
        let crosses = |(wall, core): &(&f64, &f64)| wall.max(**core) >= from_c && wall.min(**core) <= to_c;
        self.wall_c.iter().zip(&self.core_c).filter(crosses).map(|(wall, core)| (wall - core).abs()).reduce(f64::max)
    }

    /// Minutes on the bench until the outermost cavity is colder than this; nothing where it stays hotter as long as it was watched, nought where
    /// it comes out colder.
    #[must_use]
    pub fn out_until(&self, c: f64) -> Option<f64> {
        let colder = |pair: &[[f64; 2]]| {
            (pair[0][1] >= c && pair[1][1] < c).then(|| {
                let [[t0, c0], [t1, c1]] = [pair[0], pair[1]];
                t0 + (t1 - t0) * (c0 - c) / (c0 - c1)
            })
        };
        match self.out.first() {
            Some([_, first]) if *first < c => Some(0.0),
            _ => self.out.windows(2).find_map(colder),
        }
    }
}

impl HeatAnswer {
    /// What a mould says, from low to high conductivity.
    pub fn band<T>(&self, says: impl Fn(&Mould) -> Option<T>) -> Band<T> {
        [0, 1, 2].map(|at| self.moulds[at].as_ref().ok().and_then(&says))
    }

    /// The mould at one conductivity, where it could be computed.
    #[must_use]
    pub fn mould(&self, of: Conductivity) -> Option<&Mould> {
        self.moulds[of as usize].as_ref().ok()
    }
}

/// Questions of a report that `runs` does not know the answers of, each once, by their keys.
#[must_use]
pub fn unknown<'a>(report: &'a Report, runs: &Runs) -> BTreeMap<u128, &'a HeatAsk> {
    let asks = report.heat.iter().flat_map(HeatFigures::unanswered).map(|ask| (ask.key(), ask));
    asks.filter(|(key, _)| !runs.heat.contains_key(key)).collect()
}

/// Computes what a report asks for and `runs` does not know. True where there was anything. For whoever can wait.
pub fn answer_all(report: &Report, runs: &mut Runs, cores: &dyn Cores) -> bool {
    let asks = unknown(report, runs);
    let questions: Vec<&HeatAsk> = asks.values().copied().collect();
    let found = answers(&questions, &Labour { cores, ..Labour::ALONE }).unwrap_or_default();
    runs.heat.extend(asks.keys().copied().zip(found.into_iter().map(Arc::new)));
    !questions.is_empty()
}
