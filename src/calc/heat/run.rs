//! A mould through a programme, and what is read on the way.

use super::error::HeatError;
use super::field::Field;
use super::flask::Flask;
use super::material::Material;
use super::mesh::Fineness;
use super::surroundings::Surroundings;

/// What is read on the way.
#[derive(Debug, Clone, PartialEq)]
pub struct Watch {
    /// Places, `[radius, height from the lower end]` in m.
    pub probes: Vec<[f64; 2]>,
    /// How often, in s.
    pub every_s: f64,
    /// To what time, in s.
    pub until_s: f64,
}

/// A run: series with a value for each of [`Run::times_s`].
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Run {
    /// When, in s: from the field's time on, and the end.
    pub times_s: Vec<f64>,
    /// Temperature of the surroundings, in °C.
    pub around_c: Vec<f64>,
    /// Temperature at each probe, in °C.
    pub probes_c: Vec<Vec<f64>>,
    /// Temperature of the core: on the axis at mid height, in °C.
    pub core_c: Vec<f64>,
    /// Temperature of the mould's skin at mid height, in °C.
    pub skin_c: Vec<f64>,
    /// Temperature of the coldest place of the mould, in °C.
    pub coldest_c: Vec<f64>,
    /// Temperature of the hottest place of the mould, in °C.
    pub hottest_c: Vec<f64>,
    /// Mean temperature of the shell, in °C; empty without one.
    pub shell_c: Vec<f64>,
    /// Steepest temperature along the radius, in K/m.
    pub steepest_k_m: Vec<f64>,
    /// Water not driven off yet, in kg/kg, mean over the mould; for each latent event.
    pub held_kg_kg: Vec<Vec<f64>>,
    /// Heat taken in since the run began, in J.
    pub heat_j: Vec<f64>,
    /// The account of the heat.
    pub energy: Energy,
    /// Steps taken.
    pub steps: usize,
    /// Steps tried and found too long.
    pub retries: usize,
    /// Whether it was told to stop before its end.
    pub stopped: bool,
}

/// What came in through the surfaces and what the mould and its shell gained.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Energy {
    /// In and out through the surfaces, net, in J.
    pub through_surfaces_j: f64,
    /// In and out through the surfaces, without sign, in J.
    pub exchanged_j: f64,
    /// Gained, in J.
    pub gained_j: f64,
}

impl Energy {
    /// By which share of the heat exchanged the account does not close.
    #[must_use]
    pub fn open(&self) -> f64 {
        if self.exchanged_j > 0.0 { (self.through_surfaces_j - self.gained_j).abs() / self.exchanged_j } else { self.gained_j.abs() }
    }
}

/// The first time a series is at or above a level, in s, straight between its samples.
#[must_use]
pub fn first_at(times_s: &[f64], series: &[f64], level: f64) -> Option<f64> {
    let at = series.iter().position(|&value| value >= level)?;
    let (&time, &value) = (times_s.get(at)?, series.get(at)?);
    let before = at.checked_sub(1).and_then(|before| Some((*times_s.get(before)?, *series.get(before)?)));
    Some(before.map_or(time, |(t0, v0)| t0 + (time - t0) * (level - v0) / (value - v0)))
}

/// A mould of one temperature through a whole programme.
///
/// # Errors
///
/// Where a number makes no sense; see [`HeatError`].
pub fn run(
    (flask, material, start_c): (&Flask, &Material, f64),
    surroundings: &Surroundings,
    watch: &Watch,
    fineness: &Fineness,
    stop: &mut dyn FnMut() -> bool,
) -> Result<Run, HeatError> {
    Field::new(flask, material, start_c, fineness)?.advance(surroundings, watch, stop)
}
