//! Spinning: the machines of a studio, and how a flask is put onto one.

use super::serial::document;
use crate::quantity::{Finite, Grams};

document! {
    /// A machine that throws the metal into the flask. All radii are from the axle.
    pub struct Centrifuge {
        /// What the studio calls it.
        name: String,
        /// Usual speed in turns a minute.
        rpm: Option<Finite>,
        /// The most it may turn, by its manual.
        most_rpm: Option<Finite>,
        /// Radius of the metal's surface in the crucible, in mm.
        metal_mm: Option<Finite>,
        /// Radius of the pattern in the flask, in mm.
        pattern_mm: Option<Finite>,
        /// Radius of the flask's middle, in mm.
        flask_mm: Option<Finite>,
        /// Radius of the crucible's middle, in mm.
        crucible_mm: Option<Finite>,
        /// Radius of the counterweight's middle, in mm.
        counterweight_mm: Option<Finite>,
        /// The crucible, empty.
        crucible: Option<Grams>,
        /// The cradle and whatever else turns with the flask and has no counterweight of its own.
        cradle: Option<Grams>,
        /// The most it can be given as a counterweight.
        most_counterweight: Option<Grams>,
        /// The widest flask its cradle takes, outside, in mm.
        widest_mm: Option<Finite>,
        /// The highest flask its cradle takes, in mm.
        highest_mm: Option<Finite>,
        /// The heaviest flask its cradle takes.
        heaviest: Option<Grams>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// How a flask is spun; what it does not say is as the machine has it.
    pub struct Spin {
        /// The machine, by its name in the studio's file; the only one where not said.
        machine: String,
        /// Speed in turns a minute.
        rpm: Option<Finite>,
        /// Radius of the metal's surface in the crucible, in mm.
        metal_mm: Option<Finite>,
        /// Radius of the pattern in the flask, in mm.
        pattern_mm: Option<Finite>,
        /// The flask as it goes onto the machine, weighed.
        loaded: Option<Grams>,
        /// The counterweight as it is set.
        counterweight: Option<Grams>,
    }
}
