//! What the kiln can and the data sheet allows.

use super::check::{MOST_MIN, at_most, between, celsius, within};
use crate::calc::heat::HeatError;

/// Most rows of each list.
const MOST_ROWS: usize = 64;
/// Rates taken, in K/h.
const RATES_K_H: [f64; 2] = [1e-3, 1e6];

/// How fast a loaded kiln moves below a temperature of its reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KilnBand {
    /// The band reaches up to here, in °C; the last is open upwards.
    pub up_to_c: f64,
    /// Fastest rise, in K/h.
    pub rise_k_h: f64,
    /// Fastest fall, in K/h.
    pub fall_k_h: f64,
}

/// The fastest ramps that a sheet allows between two readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RampCap {
    /// From and to, in °C.
    pub within_c: [f64; 2],
    /// Fastest rise, in K/h; nothing where the sheet is silent.
    pub rise_k_h: Option<f64>,
    /// Fastest fall, in K/h.
    pub fall_k_h: Option<f64>,
}

/// Minutes that the kiln's reading must spend between two temperatures, all told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Least {
    /// From and to, in °C, both included.
    pub within_c: [f64; 2],
    /// How many minutes.
    pub minutes: f64,
}

/// The end of the programme: the mould's temperature at the pour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Soak {
    /// The mould's temperature at the pour, in °C: a true one, not a reading.
    pub mould_c: f64,
    /// Least hold of the last set point, in minutes.
    pub least_min: f64,
    /// How far every core may be off it at the pour, in K.
    pub within_k: f64,
    /// How far the kiln may dip under it on the way down, in K: 0 for never. A dip cools the core sooner and the wall too far.
    pub dip_k: f64,
}

/// What binds every programme of a load. Set points and ramps are readings; what the moulds feel is `offset_k` more.
#[derive(Debug, Clone, PartialEq)]
pub struct Limits {
    /// The kiln's reading when it is started, in °C.
    pub start_c: f64,
    /// How fast it moves, in rising order.
    pub bands: Vec<KilnBand>,
    /// True temperature less the reading, in K.
    pub offset_k: f64,
    /// Highest reading, in °C.
    pub ceiling_c: f64,
    /// Ramps of the sheet.
    pub caps: Vec<RampCap>,
    /// Least times of the sheet.
    pub least: Vec<Least>,
    /// The end.
    pub soak: Soak,
    /// Most segments the controller takes.
    pub most_segments: Option<usize>,
    /// Set points are whole multiples of this, in K: 1 or 5. Minutes are always whole.
    pub step_c: f64,
}

impl Limits {
    pub(super) fn check(&self) -> Result<(), HeatError> {
        celsius("Kiln when it is started in °C", self.start_c)?;
        within("Offset of the kiln in K", self.offset_k, -500.0, 500.0)?;
        celsius("Ceiling of the kiln in °C", self.ceiling_c)?;
        within("Step of the set points in K", self.step_c, 0.1, 100.0)?;
        if self.bands.is_empty() {
            return Err(HeatError::Empty { what: "the kiln's bands" });
        }
        at_most("bands of the kiln", self.bands.len(), MOST_ROWS)?;
        at_most("ramps of the sheet", self.caps.len(), MOST_ROWS)?;
        at_most("least times of the sheet", self.least.len(), MOST_ROWS)?;
        self.check_rows()?;
        celsius("Mould at the pour in °C", self.soak.mould_c)?;
        within("Least hold of the soak in minutes", self.soak.least_min, 0.0, MOST_MIN)?;
        within("How far the core may be off the soak in K", self.soak.within_k, 0.0, 1000.0)?;
        within("How far the kiln may dip under the soak in K", self.soak.dip_k, 0.0, 1000.0)?;
        within("Segments of the controller", self.most_segments.unwrap_or(1) as f64, 1.0, 1000.0)
    }

    fn check_rows(&self) -> Result<(), HeatError> {
        let [least, most] = RATES_K_H;
        for band in &self.bands {
            // The last band may be open: its end may be infinite.
            within("End of a kiln's band in °C", band.up_to_c, -273.0, f64::INFINITY)?;
            within("Rise of the kiln in K/h", band.rise_k_h, least, most)?;
            within("Fall of the kiln in K/h", band.fall_k_h, least, most)?;
        }
        if !self.bands.is_sorted_by(|a, b| a.up_to_c < b.up_to_c) {
            return Err(HeatError::Unsorted { what: "the kiln's bands" });
        }
        for cap in &self.caps {
            between("Ramp of the sheet in °C", cap.within_c)?;
            within("Rise of the sheet in K/h", cap.rise_k_h.unwrap_or(most), least, most)?;
            within("Fall of the sheet in K/h", cap.fall_k_h.unwrap_or(most), least, most)?;
        }
        for row in &self.least {
            between("Least time of the sheet in °C", row.within_c)?;
            within("Least time of the sheet in minutes", row.minutes, 0.0, MOST_MIN)?;
        }
        Ok(())
    }

    /// The set point at a whole step that is nearest.
    pub(super) fn nearest_c(&self, reading_c: f64) -> f64 {
        (reading_c / self.step_c).round() * self.step_c
    }

    /// The highest set point that is not above this.
    pub(super) fn at_most_c(&self, reading_c: f64) -> f64 {
        (reading_c / self.step_c + 1e-9).floor() * self.step_c
    }

    /// The lowest set point that is not below this.
    pub(super) fn at_least_c(&self, reading_c: f64) -> f64 {
        (reading_c / self.step_c - 1e-9).ceil() * self.step_c
    }

    /// The last set point.
    pub(super) fn soak_reading_c(&self) -> f64 {
        self.nearest_c(self.soak.mould_c - self.offset_k)
    }

    /// The kiln falls no lower than the room, or than where it is started.
    pub(super) fn floor_c(&self, room_c: f64) -> f64 {
        self.start_c.min(room_c - self.offset_k)
    }

    /// On the way down it falls no lower than it may dip.
    pub(super) fn dip_floor_c(&self) -> f64 {
        self.soak_reading_c().min(self.soak.mould_c - self.offset_k - self.soak.dip_k)
    }
}
