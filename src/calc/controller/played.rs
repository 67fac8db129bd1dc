//! What a controller and a kiln make of the rows.
//!
//! The controller moves its set point: along a timed ramp by its clock, at once where the word is full speed. The kiln follows it exactly where it
//! can, and as fast as it can where it cannot; it neither overshoots nor droops. A ramp at full speed is over when the kiln is there; a timed
//! ramp when its time is, unless the controller waits for the kiln before a hold begins (common practice, no source).

use super::curve::{Band, speed};
use super::limits::{self, MOST_ROWS};
use super::{Controller, ControllerError, Ramp, Row};

/// A kiln nearer to its set point than this is there, in K.
const THERE_K: f64 = 1e-9;

/// A row takes no more steps of reckoning: a few for every band.
const MOST_STEPS: usize = 2000;

/// A kiln and how its controller holds.
#[derive(Debug, Clone, PartialEq)]
pub struct Kiln {
    /// How fast it moves, at least one band.
    pub bands: Vec<Band>,
    /// Whether a hold begins only when the kiln is there.
    pub waits: bool,
}

/// A row as it was played. Times in min after the start.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlayedRow {
    /// When its ramp begins.
    pub begins_min: f64,
    /// When its hold begins by the controller's clock.
    pub hold_begins_min: f64,
    /// When its hold is over.
    pub ends_min: f64,
    /// When the kiln was there; nothing where it never was before the row was over.
    pub there_min: Option<f64>,
    /// How far the kiln was from the set point at most, in K, but for ramps at full speed.
    pub lag_k: f64,
    /// How far it still was when the row was over, in K.
    pub lag_at_end_k: f64,
}

/// A programme as it was played.
#[derive(Debug, Clone, PartialEq)]
pub struct Played {
    /// The kiln: minutes and true °C.
    pub kiln: Vec<[f64; 2]>,
    /// The controller's set point: minutes and true °C.
    pub set: Vec<[f64; 2]>,
    /// Its rows.
    pub rows: Vec<PlayedRow>,
}

/// Plays rows from a true temperature on.
///
/// # Errors
/// Where a number makes no sense, and where bands do not rise or there is none.
pub fn played(rows: &[Row], controller: &Controller, start_c: f64, kiln: &Kiln) -> Result<Played, ControllerError> {
    limits::controller(controller)?;
    limits::bands(&kiln.bands)?;
    limits::temperature("Start in °C", None, start_c)?;
    if kiln.bands.is_empty() {
        return Err(ControllerError::Bands);
    }
    if rows.len() > MOST_ROWS {
        return Err(ControllerError::TooMany { what: "rows", most: MOST_ROWS });
    }
    for (at, row) in rows.iter().enumerate() {
        limits::within("Set point in true °C", Some(at), controller.true_of(f64::from(row.set_point)), -500.0, 2500.0)?;
        if row.ramp == Ramp::Rate(0) {
            return Err(ControllerError::OutOfRange { what: "Rate", at: Some(at), value: 0.0, least: 1.0, most: f64::INFINITY });
        }
    }
    let begin = vec![[0.0, start_c]];
    let mut run = Run { bands: &kiln.bands, time: 0.0, at: start_c, set: start_c, kiln: begin.clone(), sets: begin, there: None, lag: 0.0 };
    let told = rows.iter().map(|row| run.row(row, controller, kiln.waits)).collect();
    Ok(Played { kiln: run.kiln, set: run.sets, rows: told })
}

/// A kiln under way.
struct Run<'a> {
    bands: &'a [Band],
    time: f64,
    /// Where the kiln is, true °C.
    at: f64,
    /// Where the set point is, true °C.
    set: f64,
    kiln: Vec<[f64; 2]>,
    sets: Vec<[f64; 2]>,
    there: Option<f64>,
    lag: f64,
}

impl Run<'_> {
    fn row(&mut self, row: &Row, controller: &Controller, waits: bool) -> PlayedRow {
        let begins_min = self.time;
        let to = controller.true_of(f64::from(row.set_point));
        match controller.ramp_min(row.ramp, to - self.set) {
            Some(minutes) if minutes > 0.0 => {
                self.lag = (self.set - self.at).abs();
                self.go(to, Some(minutes));
                self.arrive(to);
                if waits {
                    self.go(to, None);
                }
            }
            _ => {
                self.jump(to);
                // A jump in no time by a controller that counts minutes is over at once; full speed is over when the kiln is there.
                if waits || row.ramp == Ramp::Full {
                    self.go(to, None);
                }
                self.lag = (self.set - self.at).abs();
            }
        }
        let hold_begins_min = self.time;
        self.arrive(to);
        if row.hold_min > 0 {
            self.go(to, Some(f64::from(row.hold_min)));
        }
        let lag_at_end_k = (self.set - self.at).abs();
        PlayedRow { begins_min, hold_begins_min, ends_min: self.time, there_min: self.there.take(), lag_k: self.lag, lag_at_end_k }
    }

    fn jump(&mut self, to: f64) {
        self.set = to;
        self.sets.push([self.time, to]);
    }

    /// Takes down when the kiln was where the row goes.
    fn arrive(&mut self, to: f64) {
        if self.there.is_none() && (self.at - to).abs() <= THERE_K {
            self.there = Some(self.time);
        }
    }

    /// The set point goes straight to `to` in so many minutes; without a time it stays, until the kiln is there.
    fn go(&mut self, to: f64, minutes: Option<f64>) {
        let (begin, from) = (self.time, self.set);
        let slope = minutes.map_or(0.0, |minutes| (to - from) / minutes);
        let end = minutes.map_or(f64::INFINITY, |minutes| begin + minutes);
        for _ in 0..MOST_STEPS {
            let gap = self.set - self.at;
            if gap.abs() <= THERE_K {
                self.at = self.set;
                if slope.abs() <= 0.0 {
                    self.arrive(to);
                    if minutes.is_none() {
                        break;
                    }
                }
            }
            let (rate, bound) = self.pace(slope);
            let to_bound = if rate.abs() > 0.0 { (bound - self.at) / rate } else { f64::INFINITY };
            // Both move: they meet where the kiln is the faster.
            let closing = rate - slope;
            let to_meet = if (self.set - self.at) * closing > 0.0 { (self.set - self.at) / closing } else { f64::INFINITY };
            let step = to_bound.min(to_meet).min(end - self.time);
            if !step.is_finite() {
                break;
            }
            let over = step >= end - self.time;
            self.time = if over { end } else { self.time + step };
            self.set = if over { to } else { from + slope * (self.time - begin) };
            self.at = if step >= to_meet {
                self.set
            } else if step >= to_bound {
                bound
            } else {
                self.at + rate * step
            };
            self.kiln.push([self.time, self.at]);
            if minutes.is_some() {
                self.lag = self.lag.max((self.set - self.at).abs());
            }
            if over {
                break;
            }
        }
        self.arrive(to);
        self.sets.push([self.time, self.set]);
    }

    /// How fast the kiln moves now, in K/min, and the temperature to which that holds.
    fn pace(&self, slope: f64) -> (f64, f64) {
        let gap = self.set - self.at;
        let upwards = if gap.abs() > 0.0 { gap > 0.0 } else { slope > 0.0 };
        let Some((most, bound)) = speed(self.bands, self.at, upwards) else { return (0.0, self.at) };
        let most = if upwards { most } else { -most };
        // On the set point it goes along with it as far as it can.
        let rate = if gap.abs() > 0.0 || slope.abs() > most.abs() { most } else { slope };
        (rate, bound)
    }
}
