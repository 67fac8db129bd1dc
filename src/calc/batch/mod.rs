//! The batch plan over all open pieces of a job: from the documents to a [`plan::Wish`], and from a [`plan::Plan`] back to trees and flasks.
//!
//! [`ask`] computes the job, finds what hangs nowhere yet and what each piece takes, and makes the wish. [`settle`] answers it with
//! flasks that are arranged, somewhere with a thread and a clock. [`Ask::read`] says what the answer means, and [`build`] puts it into the job.

mod build;
mod make;
mod open;
pub mod places;
mod read;
mod rules;
mod settle;
mod sizes;
mod trees;
mod useful;
mod way;
mod wish;

pub use build::{Template, build};
pub use open::{Piece, Unknown, open_pieces};
pub use read::{Left, Outcome, Row, WhyLeft};
pub use rules::{FEED_DIAMETER_DEFAULT, FEED_LENGTH_DEFAULT, GIVENS, INPUTS, MAIN_DIAMETER_DEFAULT, RULES};
pub use settle::{Question, Settled, Stands, Upright, settle};
pub use trees::Trees;

pub use super::outline::{ANGLE_DEFAULT as FEED_ANGLE_DEFAULT, BETWEEN_NEEDED as GAP_DEFAULT};

use super::book::Book;
use super::pass::Pass;
use super::setting::{Runs, Setting};
use super::{Shelves, plan, recompute};
use crate::job::{BurnoutId, FlaskId, Job, PieceId, Studio};
use crate::stock::EntryId;
use places::{Inside, UsualTree};

/// What a caster may say to a plan.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Options {
    /// The crucible that everything is poured from; the largest there is, alloy by alloy, where not said.
    pub crucible: Option<EntryId>,
    /// How many flasks are burnt out together.
    pub kiln: Places,
    /// Flasks of the job that are neither weighed nor invested may take more pieces.
    pub add_to_flasks: bool,
    /// Flasks of an earlier plan that stay as they are.
    pub kept: Vec<Kept>,
}

/// Where the places in the kiln are known from.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Places {
    /// The kiln of the job's open load, where there is one.
    #[default]
    OfLoad,
    /// They do not matter.
    NoMatter,
    /// This kiln, empty.
    Of(EntryId),
}

/// A planned flask that stays: others may still join it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Its steel.
    pub vessel: EntryId,
    /// Its pieces.
    pub pieces: Vec<PieceId>,
}

/// An alloy of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct AlloyOf {
    /// Which.
    pub id: EntryId,
    /// What it is called.
    pub name: String,
    /// The crucible it is poured from; none where no crucible may melt it, so that metal is no limit.
    pub crucible: Option<EntryId>,
    /// The heaviest tree that crucible pours, in g.
    pub heaviest_g: Option<f64>,
}

/// A size of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct SizeOf {
    /// The steel, by shelf id.
    pub vessel: EntryId,
    /// Ø×H, as every flask is called.
    pub words: String,
    /// The base that closes it, where the shelf has one.
    pub base: Option<EntryId>,
    /// Its inside.
    pub inside: Inside,
    /// How many are free; nothing where there is no end of them.
    pub free: Option<u32>,
}

/// What a group of the wish is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum GroupOf {
    /// Open pieces that go together, by their places in the list.
    Open(Vec<usize>),
    /// What hangs already in a flask of the job.
    Hung(FlaskId),
}

/// What a lock of the wish is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LockOf {
    /// A flask of the job.
    Flask(FlaskId),
    /// One that the caster keeps from an earlier plan.
    Kept,
}

/// The places of a kiln.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KilnOf {
    /// The kiln.
    pub id: EntryId,
    /// Its name.
    pub name: String,
    /// Its places.
    pub positions: u32,
    /// How many of them are taken by flasks that the plan does not touch.
    pub taken: u32,
}

/// A wish with what its numbers stand for.
#[derive(Debug)]
pub struct Ask {
    /// The wish.
    pub wish: plan::Wish,
    /// The open pieces that are planned.
    pub pieces: Vec<Piece>,
    /// What each group of the wish is.
    pub groups: Vec<GroupOf>,
    /// What each lock of the wish is.
    pub locks: Vec<LockOf>,
    /// The alloys.
    pub alloys: Vec<AlloyOf>,
    /// The sizes.
    pub sizes: Vec<SizeOf>,
    /// The largest of all sizes that were looked at.
    pub roomiest: Option<SizeOf>,
    /// Pieces left out before anything is planned, and why.
    pub unknown: Vec<(PieceId, Unknown)>,
    /// The kiln, where its places matter.
    pub kiln: Option<KilnOf>,
    /// The load that new flasks go into.
    pub load: Option<BurnoutId>,
    /// What trees are reckoned with.
    pub tree: UsualTree,
    /// What flasks are arranged with.
    pub trees: Trees,
    /// The figures: those of the job, and those of the plan.
    pub book: Book,
    /// Metal of a main sprue, in g, by size and alloy.
    trunks_g: Vec<Vec<f64>>,
}

impl Ask {
    /// Asks for the same as another: a plan of that one is a plan of this one.
    #[must_use]
    pub fn is_like(&self, other: &Asked) -> bool {
        self.wish == other.wish && self.groups == other.groups && self.pieces.iter().map(|piece| piece.id).eq(other.pieces.iter().copied())
    }

    /// What has to be kept of it to know later whether a plan still answers it.
    #[must_use]
    pub fn asked(&self) -> Asked {
        Asked { wish: self.wish.clone(), groups: self.groups.clone(), pieces: self.pieces.iter().map(|piece| piece.id).collect() }
    }
}

/// What was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// The wish.
    pub wish: plan::Wish,
    groups: Vec<GroupOf>,
    pieces: Vec<PieceId>,
}

/// Makes the wish of a job as it stands. `job` and `studio` are to be mended first, as for [`recompute`].
#[must_use]
pub fn ask(job: &Job, studio: &Studio, shelves: &Shelves, runs: &Runs, setting: &Setting, options: &Options) -> Ask {
    let mut book = Book::default();
    let report = recompute(job, studio, shelves, runs, setting, &mut book);
    let mut pass = Pass::new(job, studio, &shelves.job, runs, setting, &mut book);
    let made = make::make(&mut pass, &report, options);
    Ask { book, ..made }
}
