//! What a job must keep beyond being well-formed: ids that are given once and point at something, numbers that can be true.
//!
//! A fault never hides the rest: [`mend`] gives the job without what is at fault, so that everything else still computes, while the
//! document on disk stays as it is.

mod back;
mod mending;
mod on_file;
mod prints;
mod studio;
mod walk;
mod walk_later;

pub use back::{let_go, points_at};
pub use studio::mend_studio;

use super::{Job, OrderId, Place};
use crate::quantity::Grams;
use mending::Mending;

/// Something in a job that cannot be.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// Where.
    pub place: Place,
    /// The field.
    pub field: &'static str,
    /// What is wrong with it.
    pub what: Wrong,
}

/// What is wrong with a field.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Wrong {
    /// No id.
    #[error("it has no id; ids are whole numbers from 1")]
    NoId,
    /// An id twice.
    #[error("the id {0} is given twice; the second one was left out")]
    Twice(u32),
    /// A label twice.
    #[error("the label {0} is given twice; the second one was left out")]
    LabelTwice(String),
    /// A word that is no metal.
    #[error("“{0}” is no metal; metals are written by their signs, such as Au, Ag, Pt, Pd, Cu")]
    NoMetal(String),
    /// A copy of a shelf entry that contradicts itself.
    #[error("the copy of {0} in this job contradicts itself and was left out; the shelf's own is used")]
    FaultyCopy(String),
    /// A reference to nothing.
    #[error("it points at {0}, which is not in this job")]
    Dangling(Place),
    /// A pattern that is its own pair.
    #[error("a pattern makes no pair with itself")]
    PairWithItself,
    /// An order of somebody else in a quote.
    #[error("order {0} is not an order of {1}; a client's quote covers their own orders only")]
    OtherClient(OrderId, String),
    /// Out of every sensible range.
    #[error("{value} cannot be right here; it must lie between {low} and {high}")]
    OutOfRange {
        /// What stands there.
        value: f64,
        /// Least.
        low: f64,
        /// Most.
        high: f64,
    },
    /// A tare above the gross weight.
    #[error("the tare ({tare} g) is more than the gross weight ({weight} g)")]
    TareOverGross {
        /// Tare.
        tare: Grams,
        /// Gross.
        weight: Grams,
    },
    /// Sample and sinker weigh no less in water than the sample in air and the sinker in water.
    #[error("together in water ({both} g) they must weigh less than the dry sample and the sinker in water ({apart} g)")]
    NoLighterInWater {
        /// Both in water.
        both: Grams,
        /// The dry sample and the sinker in water.
        apart: Grams,
    },
    /// An order line of nothing, or of absurdly much.
    #[error("a line has from 1 to 100000 pieces, not {0}")]
    Quantity(u32),
    /// A print row of nothing, or of absurdly much.
    #[error("a row has from 1 to {most} prints, not {count}")]
    Prints {
        /// What stands there.
        count: u32,
        /// The most.
        most: u32,
    },
    /// More rows than anybody prints at once.
    #[error("there are {0} rows; only the first {1} were taken")]
    TooManyRows(usize, usize),
    /// A piece number beyond the line.
    #[error("piece {0} is not among the line's pieces")]
    NoSuchPiece(u32),
}

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}, {}: {}", self.place, self.field, self.what)
    }
}

/// The job without what is at fault, and the faults.
#[must_use]
pub fn mend(job: &Job) -> (Job, Vec<Fault>) {
    let mut mending = Mending::default();
    let mut job = job.clone();
    let written = job.record.clone();
    mending.ids(&mut job);
    // Lines that cannot stay go first, or references to them would be left behind.
    mending.orders(&mut job);
    mending.references(&mut job);
    mending.patterns(&mut job);
    mending.prints(&mut job);
    mending.trees(&mut job);
    mending.flasks(&mut job);
    mending.burnouts(&mut job);
    mending.melts(&mut job);
    mending.quotes(&mut job);
    mending.record(&mut job);
    mending.pointing_back(&mut job, &written);
    mending.copies(&mut job);
    mending.site_of(Place::Job, &mut job.site);
    (job, mending.faults)
}

/// The faults alone.
#[must_use]
pub fn faults(job: &Job) -> Vec<Fault> {
    mend(job).1
}
