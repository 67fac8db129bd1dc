//! The table to key into a kiln's controller, and what the controller makes of it.
//!
//! A programme is planned in true temperatures and minutes. A controller takes whole degrees of its probe, ramps as a rate or as minutes, whole
//! minutes of hold, and so many segments. [`key_in`] makes the rows: a set point is the nearest whole step, but never over the ceiling; a ramp is
//! never faster than planned, a hold never shorter. What that alters is told row by row. A ramp slower than the controller can be told goes
//! up in steps: wait, then catch up ([`split`]). Where there are too many rows, [`merge`] says which neighbouring segments alter the programme
//! least as one.
//!
//! [`played`] runs the rows as the controller would in a kiln that rises and falls no faster than it can; [`planned`] is what was meant, and
//! [`apart`] how far two curves are from each other. Curves are `[minutes, true °C]`, straight between their points.

mod curve;
mod error;
mod limits;
mod merge;
mod played;
mod scale;
mod split;
mod table;

pub use curve::{Apart, Band, apart, planned};
pub use error::ControllerError;
pub use merge::{Merge, TooMany};
pub use played::{Kiln, Played, PlayedRow, played};
pub use table::{Note, Row, Table, Wish, key_in};

/// The unit a controller shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Unit {
    /// Degrees Celsius.
    #[default]
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// How a controller is told of ramps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RampBy {
    /// In whole degrees of its unit an hour.
    Rate {
        /// The least it takes; at least 1.
        least: u32,
        /// The most it takes.
        most: u32,
    },
    /// In whole minutes.
    Minutes {
        /// The least it takes; nought where it may jump.
        least: u32,
        /// The most it takes.
        most: u32,
    },
}

/// What a controller takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Controller {
    /// The unit it shows.
    pub unit: Unit,
    /// Set points are multiples of so many degrees of its unit; mostly 1.
    pub step: u32,
    /// How it is told of ramps.
    pub ramp: RampBy,
    /// Whether it knows a word for as fast as it can.
    pub full_speed: bool,
    /// The longest hold of a segment, in min.
    pub most_hold_min: u32,
    /// The most segments of a programme.
    pub most_segments: u32,
    /// True temperature less its reading, in K. What is keyed in is the true temperature less this.
    pub offset_k: f64,
}

/// A segment as it is planned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment {
    /// The true temperature it goes to, in °C.
    pub target_c: f64,
    /// How long it takes to get there, in min; nothing, or nought, for as fast as the kiln can.
    pub ramp_min: Option<f64>,
    /// How long it stays there, in min.
    pub hold_min: f64,
}

/// A programme as it is planned.
#[derive(Debug, Clone, PartialEq)]
pub struct Programme {
    /// The kiln's true temperature at the start, in °C.
    pub start_c: f64,
    /// Its segments.
    pub segments: Vec<Segment>,
}

/// A ramp as it is keyed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ramp {
    /// The word for as fast as it can.
    Full,
    /// Degrees of the controller's unit an hour.
    Rate(u32),
    /// Minutes.
    Minutes(u32),
}
