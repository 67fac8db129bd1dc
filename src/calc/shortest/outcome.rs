//! What the search comes to.

use super::bind::Bind;
use super::judge::Judged;
use super::path::Segment;
use crate::calc::heat::HeatError;

/// What holds a ramp or a hold: it cannot be a minute shorter, all else as it is, without breaking this.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Which limit.
    pub limit: Bind,
    /// How far the programme is from breaking it, in minutes where [`Bind::in_minutes`], else in K.
    pub slack: f64,
}

/// What holds a segment; nothing where it has no such part.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Bound {
    /// The way to the set point.
    pub ramp: Option<Held>,
    /// The hold.
    pub hold: Option<Held>,
}

/// A programme that keeps all limits.
#[derive(Debug, Clone, PartialEq)]
pub struct Programme {
    /// Its segments: set points in whole steps and whole minutes, but where it is the table itself.
    pub segments: Vec<Segment>,
    /// Its length in minutes.
    pub total_min: f64,
    /// Segment by segment, what holds it.
    pub bound: Vec<Bound>,
    /// The fine run that bears it out.
    pub judged: Judged,
}

/// What the search comes to.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// A programme.
    Found(Box<Programme>),
    /// None was found.
    Impossible {
        /// The limit that stands in the way.
        limit: Bind,
        /// By how much the nearest programme breaks it, as in [`super::Breach::by`].
        by: f64,
        /// Whether it is certain that there is none that rises to one top and falls from it; else none was come upon.
        certain: bool,
    },
    /// It was told to stop.
    Stopped,
    /// A number made no sense.
    Refused(HeatError),
}
