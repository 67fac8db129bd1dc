//! What is around the flask: the kiln, the bench, and how heat goes from there into it.

use super::error::{HeatError, within};

/// Coldest temperature taken, in °C.
pub(super) const COLDEST_C: f64 = -273.0;
/// Hottest temperature taken, in °C.
pub(super) const HOTTEST_C: f64 = 3000.0;
/// Stefan–Boltzmann constant in W/(m²·K⁴), CODATA 2018.
const SIGMA: f64 = 5.670_374_419e-8;
/// 0 °C in K.
const ZERO_C_K: f64 = 273.15;
/// Latest time taken, in s: about a hundred days.
pub(super) const LATEST_S: f64 = 1e7;
const MOST_ROWS: usize = 10_000;
/// Temperatures so near each other are one, in K.
const SAME_K: f64 = 1e-6;

/// One surface of the flask.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surface {
    /// Convection, in W/(m²·K). With 0, and no emissivity, nothing passes.
    pub h_w_m2_k: f64,
    /// Emissivity against black surroundings, 0 to 1.
    pub emissivity: f64,
}

/// The three surfaces.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surfaces {
    /// The wall; with a shell, its outside.
    pub side: Surface,
    /// The upper end.
    pub top: Surface,
    /// The lower end.
    pub bottom: Surface,
}

/// How the flask stands from some time on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Phase {
    /// From when on, in s.
    pub from_s: f64,
    /// Its surfaces.
    pub surfaces: Surfaces,
}

/// The surroundings of a flask through time.
#[derive(Debug, Clone, PartialEq)]
pub struct Surroundings {
    /// `[s, °C]`, straight between rows and constant before the first and after the last. Two rows at one time are a jump, such as a flask
    /// that is taken out of the kiln.
    pub temperature: Vec<[f64; 2]>,
    /// How the flask stands; the first rules before its time as well.
    pub phases: Vec<Phase>,
}

/// A stretch of time in which the temperature goes straight and the surfaces stay as they are.
#[derive(Debug, Clone, Copy)]
pub(super) struct Span {
    pub from_s: f64,
    pub to_s: f64,
    pub from_c: f64,
    pub to_c: f64,
    pub surfaces: Surfaces,
    /// Whether something jumps where it begins.
    pub jumps: bool,
}

/// What is around at one instant.
#[derive(Debug, Clone, Copy)]
pub(super) struct Around {
    pub temperature_c: f64,
    pub surfaces: Surfaces,
}

impl Span {
    pub fn at(&self, time_s: f64) -> Around {
        let share = ((time_s - self.from_s) / (self.to_s - self.from_s)).clamp(0.0, 1.0);
        Around { temperature_c: self.from_c + (self.to_c - self.from_c) * share, surfaces: self.surfaces }
    }
}

impl Surface {
    /// Nothing passes.
    pub const INSULATED: Self = Self { h_w_m2_k: 0.0, emissivity: 0.0 };

    /// Heat that comes in from `around_c` to a surface of `own_c`, in W/m², and how much less it gets by 1 K, in W/(m²·K).
    #[inline]
    pub(super) fn gain(&self, around_c: f64, own_c: f64) -> (f64, f64) {
        let (around, own) = (around_c + ZERO_C_K, (own_c + ZERO_C_K).max(0.0));
        let (around2, own2) = (around * around, own * own);
        let radiates = self.emissivity * SIGMA;
        let gain = self.h_w_m2_k * (around_c - own_c) + radiates * (around2 * around2 - own2 * own2);
        (gain, self.h_w_m2_k + 4.0 * radiates * own2 * own)
    }

    fn check(&self) -> Result<(), HeatError> {
        within("Convection at a surface in W/(m²·K)", self.h_w_m2_k, 0.0, 1e6)?;
        within("Emissivity of a surface", self.emissivity, 0.0, 1.0)?;
        Ok(())
    }
}

impl Surfaces {
    /// All three alike.
    #[must_use]
    pub fn all(surface: Surface) -> Self {
        Self { side: surface, top: surface, bottom: surface }
    }
}

impl Surroundings {
    /// One temperature and one way to stand, all the time.
    #[must_use]
    pub fn steady(temperature_c: f64, surfaces: Surfaces) -> Self {
        Self { temperature: vec![[0.0, temperature_c]], phases: vec![Phase { from_s: 0.0, surfaces }] }
    }

    pub(super) fn check(&self) -> Result<(), HeatError> {
        let (temperatures, ways) = ("the surroundings' temperatures", "the ways the flask stands");
        for (what, rows) in [(temperatures, self.temperature.len()), (ways, self.phases.len())] {
            match rows {
                0 => return Err(HeatError::Empty { what }),
                1..=MOST_ROWS => (),
                _ => return Err(HeatError::TooMany { what, most: MOST_ROWS }),
            }
        }
        for &[time, temperature] in &self.temperature {
            within("Time of the surroundings in s", time, -LATEST_S, LATEST_S)?;
            within("Temperature of the surroundings in °C", temperature, COLDEST_C, HOTTEST_C)?;
        }
        for phase in &self.phases {
            within("Time of a way to stand in s", phase.from_s, -LATEST_S, LATEST_S)?;
            for surface in [phase.surfaces.side, phase.surfaces.top, phase.surfaces.bottom] {
                surface.check()?;
            }
        }
        if !self.temperature.is_sorted_by(|a, b| a[0] <= b[0]) {
            return Err(HeatError::BackInTime { what: temperatures });
        }
        if !self.phases.is_sorted_by(|a, b| a.from_s < b.from_s) {
            return Err(HeatError::BackInTime { what: ways });
        }
        Ok(())
    }

    /// Whether upper and lower end are always alike.
    pub(super) fn ends_alike(&self) -> bool {
        self.phases.iter().all(|phase| phase.surfaces.top == phase.surfaces.bottom)
    }

    /// The stretches between two times, in order, without a gap. `before` is what was around until then.
    pub(super) fn spans(&self, from_s: f64, to_s: f64, before: Option<Around>) -> Vec<Span> {
        let mut times: Vec<f64> = self.temperature.iter().map(|row| row[0]).chain(self.phases.iter().map(|phase| phase.from_s)).collect();
        times.retain(|&time| time > from_s && time < to_s);
        times.extend([from_s, to_s]);
        times.sort_by(f64::total_cmp);
        times.dedup();
        let mut before = before;
        let mut spans: Vec<Span> = Vec::with_capacity(times.len());
        for pair in times.windows(2) {
            let [from_s, to_s] = [pair[0], pair[1]];
            let (from_c, to_c) = (self.just_after(from_s), self.just_before(to_s));
            let surfaces = self.standing(from_s);
            let goes_on = |before: Around| before.surfaces == surfaces && (before.temperature_c - from_c).abs() <= SAME_K;
            let jumps = !before.is_some_and(goes_on);
            before = Some(Around { temperature_c: to_c, surfaces });
            spans.push(Span { from_s, to_s, from_c, to_c, surfaces, jumps });
        }
        spans
    }

    fn standing(&self, time_s: f64) -> Surfaces {
        let begun = self.phases.partition_point(|phase| phase.from_s <= time_s);
        self.phases[begun.saturating_sub(1)].surfaces
    }

    fn just_after(&self, time_s: f64) -> f64 {
        self.between(self.temperature.partition_point(|row| row[0] <= time_s), time_s)
    }

    fn just_before(&self, time_s: f64) -> f64 {
        self.between(self.temperature.partition_point(|row| row[0] < time_s), time_s)
    }

    /// The temperature on the way from the row before `next` to it.
    fn between(&self, next: usize, time_s: f64) -> f64 {
        let rows = &self.temperature;
        match (next.checked_sub(1).map(|last| rows[last]), rows.get(next)) {
            (Some([t0, c0]), Some(&[t1, c1])) => c0 + (c1 - c0) * (time_s - t0) / (t1 - t0),
            (Some([_, only]), None) | (None, Some(&[_, only])) => only,
            (None, None) => 0.0,
        }
    }
}
