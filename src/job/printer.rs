//! Printers: their plates, how they are set for a resin, and how true they print.

use jiff::civil::Date;
use serde::{Deserialize, Serialize};

use super::serial::document;
use crate::quantity::{Finite, Money};
use crate::stock::EntryId;

document! {
    /// A printer of resin or wax.
    pub struct Printer {
        /// Its name, by which runs and calibrations call it.
        name: String,
        /// Width of the plate in mm.
        plate_x_mm: Option<Finite>,
        /// Depth of the plate in mm.
        plate_y_mm: Option<Finite>,
        /// The highest part in mm.
        height_mm: Option<Finite>,
        /// Room between two parts in mm.
        gap_mm: Option<Finite>,
        /// How it is set, resin by resin.
        settings: Vec<PrintSetting>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// How a printer is set for one resin.
    pub struct PrintSetting {
        /// The resin, by shelf id.
        material: Option<EntryId>,
        /// Thickness of a layer in mm.
        layer_mm: Option<Finite>,
        /// Layers at the plate that are lit longer.
        base_layers: Option<u32>,
        /// Seconds of light for each of those.
        base_exposure_s: Option<Finite>,
        /// Seconds of light for each of the others.
        exposure_s: Option<Finite>,
        /// Seconds a layer that the plate moves and waits: lift, return, rest.
        move_s: Option<Finite>,
        /// Supports and waste as a share of the parts' own resin.
        supports_share: Option<Finite>,
        /// Price of a kilogram.
        price_per_kg: Option<Money>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// Parts of known size that were printed and measured.
    pub struct Calibration {
        /// What the caster calls it.
        name: String,
        /// The printer, by its name.
        printer: String,
        /// The resin, by shelf id.
        material: Option<EntryId>,
        /// When it was measured.
        on: Option<Date>,
        /// What was measured.
        rows: Vec<Gauge>,
        /// A measure a part is to come out at, in mm, to see what to draw for it.
        wanted_mm: Option<Finite>,
        /// It counts: the newest accepted one of a printer with a resin is the one that sizes are drawn by.
        accepted: bool,
        /// When it is to be measured again.
        recheck: Option<Date>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// One measured length.
    pub struct Gauge {
        /// Along which axis of the printer.
        axis: Axis,
        /// As it was drawn, in mm.
        nominal_mm: Option<Finite>,
        /// As it came out, in mm.
        measured_mm: Option<Finite>,
    }
}

/// An axis of a printer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub enum Axis {
    /// Across the plate.
    #[default]
    X,
    /// Along its depth.
    Y,
    /// Away from it.
    Z,
}

impl Axis {
    /// All three.
    pub const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];
}
