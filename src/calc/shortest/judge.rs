//! Whether a programme keeps all limits.

use super::bind::{Bind, Breach};
use super::case::{Case, Halt, Manner};
use super::check::{MOST_MIN, at_most, celsius, within};
use super::limits::Limits;
use super::load::Load;
use super::path::{Segment, breaches, slacks, total_min};
use super::read::Values;
use crate::calc::heat::{Fineness, HeatError};
use crate::calc::labour::Labour;

/// Most segments that are judged.
const MOST_SEGMENTS: usize = 200;
/// Time between samples of a judged run, in s.
const EVERY_S: f64 = 60.0;

/// A programme held against its limits.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// What is broken, each limit once, by the most; empty where all is kept.
    pub breaches: Vec<Breach>,
    /// Mould by mould, from low to high conductivity.
    pub values: Vec<Values>,
    /// Length of the programme in minutes.
    pub total_min: f64,
    /// Whether it was told to stop: then nothing else here counts.
    pub stopped: bool,
}

impl Judged {
    /// Whether all is kept.
    #[must_use]
    pub fn sound(&self) -> bool {
        self.breaches.is_empty() && !self.stopped
    }
}

/// Runs every mould of a load through a programme and holds what was found against the limits.
///
/// # Errors
///
/// Where a number makes no sense; see [`HeatError`].
pub fn judge(segments: &[Segment], load: &Load, limits: &Limits, fineness: &Fineness, labour: &Labour<'_>) -> Result<Judged, HeatError> {
    load.check()?;
    limits.check()?;
    check(segments)?;
    let one = |case: &Case| {
        let track = case.run((load, limits), segments, &manner(fineness), &mut || !(labour.go_on)(0.0))?;
        Ok(track.values(*case, load))
    };
    match labour.each(&Case::all(load), one) {
        Ok(values) => Ok(judged(segments, load, limits, values)),
        Err(Halt::Heat(error)) => Err(error),
        Err(Halt::Stopped) => Ok(Judged { breaches: Vec::new(), values: Vec::new(), total_min: total_min(segments), stopped: true }),
    }
}

/// How a judged run is made.
pub(super) fn manner(fineness: &Fineness) -> Manner {
    Manner { fineness: *fineness, every_s: EVERY_S, keeps: false }
}

/// Holds values against the limits.
pub(super) fn judged(segments: &[Segment], load: &Load, limits: &Limits, values: Vec<Values>) -> Judged {
    let mut all = slacks(segments, limits, load.room_c);
    all.extend(values.iter().flat_map(|values| heat_slacks(values, load, limits)));
    Judged { breaches: breaches(&all), values, total_min: total_min(segments), stopped: false }
}

pub(super) fn check(segments: &[Segment]) -> Result<(), HeatError> {
    if segments.is_empty() {
        return Err(HeatError::Empty { what: "the programme" });
    }
    at_most("segments of a programme", segments.len(), MOST_SEGMENTS)?;
    for segment in segments {
        celsius("Set point in °C", segment.target_c)?;
        within("Ramp in minutes", segment.ramp_min, 0.0, MOST_MIN)?;
        within("Hold in minutes", segment.hold_min, 0.0, MOST_MIN)?;
    }
    within("Length of the programme in minutes", total_min(segments), 1.0, MOST_MIN)
}

/// Slack of every limit that a mould is held to: negative where it is broken.
pub(super) fn heat_slacks(values: &Values, load: &Load, limits: &Limits) -> Vec<(Bind, f64)> {
    let mould = values.mould;
    let apart = values.apart.iter().enumerate();
    let mut all: Vec<(Bind, f64)> =
        apart.map(|(inversion, apart)| (Bind::Apart { mould, inversion }, apart.most_k - apart.up_k.max(apart.down_k))).collect();
    let needs = &load.moulds[mould].needs;
    if needs.above_min > 0.0 {
        all.push((Bind::Carbon { mould }, values.above_min - needs.above_min));
    }
    all.push((Bind::CoreAtPour { mould }, limits.soak.within_k - (values.core_at_pour_c - limits.soak.mould_c).abs()));
    all.push((Bind::Dry { mould }, values.core_top_c - super::read::DRY_C));
    all
}
