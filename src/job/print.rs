//! Prints: what is printed together on one printer, and what was done with it afterwards.

use super::id::{PatternId, PrintId};
use super::serial::document;
use crate::quantity::Finite;
use crate::stock::EntryId;

document! {
    /// One print run: patterns that are printed together, in one resin, on as many plates as they need.
    pub struct PrintRun {
        /// The run's id.
        id: PrintId,
        /// What the caster calls it.
        name: String,
        /// The printer, by its name in the studio's file.
        printer: String,
        /// The resin, by shelf id.
        material: Option<EntryId>,
        /// What is printed.
        rows: Vec<PrintRow>,
        /// Minutes in solvent, all baths together.
        washed_min: Option<Finite>,
        /// Minutes under ultraviolet light before the rinse.
        cured_before_rinse_min: Option<Finite>,
        /// It was rinsed.
        rinsed: bool,
        /// Its surface is clean, neither tacky nor white, once it is rinsed and dry.
        surface_clean: Option<bool>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// So many of one pattern on the plate.
    pub struct PrintRow {
        /// The pattern.
        pattern: PatternId,
        /// How many.
        count: u32,
        /// Its width on the plate in mm, where it lies turned or no file says so.
        x_mm: Option<Finite>,
        /// Its depth on the plate in mm, where it lies turned or no file says so.
        y_mm: Option<Finite>,
        /// Its height above the plate in mm, the lift of its supports included, where it is turned or no file says so.
        height_mm: Option<Finite>,
    }
}
