//! Where the pieces of one flask hang on their tree: nothing touches, everything stays inside, heavy pieces near the button, thin ones at the far
//! end, the weight balanced around the trunk.
//!
//! The flask is round, so that it does not matter to the wall, nor above and below, which way a piece hangs: [`pose`] settles once how it may be
//! turned and how high it may be joined. What matters between two pieces is only how much higher one is joined and how far around it hangs:
//! [`sides`] works out from which angle on they are clear of each other, and keeps it. With that, [`place`] finds room for a piece by
//! intervals of angles. [`tiers`] lays even, staggered tiers as a caster does; [`search`] goes on from the best of them by moves, with chance of a
//! fixed beginning and no clock, so that the same task always gets the same tree. What is given out has passed [`check`], which knows none of
//! this and measures every two solids.

mod check;
mod cost;
mod dense;
mod moves;
mod near;
mod of_tree;
mod place;
mod pose;
mod search;
mod sides;
mod tiers;

pub use check::{Fault, check};
pub use cost::{Cost, cost};
pub use dense::{MOST_PLACES, places};
pub use of_tree::{HAIR_MM, Lacks, placed, task_of, wanted_of, write_down};

use super::stand::{Form, Hang, Part, Trunk};

/// A piece to be hung.
#[derive(Debug, Clone, PartialEq)]
pub struct Wanted {
    /// Its form.
    pub form: Form,
    /// Its weight in g; in what material does not matter as long as it is the same for all.
    pub weight_g: f64,
    /// Its thinnest section in mm, where it is known.
    pub thinnest_mm: Option<f64>,
    /// The diameter of its feed in mm.
    pub feed_diameter_mm: f64,
    /// The length of its feed in mm.
    pub feed_length_mm: f64,
    /// The angle of its feed to the trunk, in degrees: 90 stands straight out, less leans to the far end.
    pub angle_deg: f64,
    /// Where it was put by hand: there it stays.
    pub held: Option<Held>,
}

/// A place somebody chose by hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// How high over the base's rim the feed is joined to the trunk, in mm.
    pub joint_mm: f64,
    /// The way it hangs around the trunk, in degrees.
    pub around_deg: f64,
    /// How far it is turned about its feed, in degrees.
    pub twist_deg: f64,
}

/// The flask, and the room that must be left, all in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The flask's inner diameter.
    pub inner_diameter_mm: f64,
    /// Its height over the base's rim, with a collar where there is one.
    pub height_mm: f64,
    /// From pieces and feeds to the wall.
    pub wall_mm: f64,
    /// Between two pieces, and between a piece and the feed of another.
    pub between_mm: f64,
    /// Between two feeds, which are nearest where they leave the trunk; nothing where they may run into each other.
    pub feeds_mm: Option<f64>,
    /// Between a piece and the trunk.
    pub trunk_mm: f64,
    /// From the highest part to the flask's far rim.
    pub top_mm: f64,
    /// From the lowest piece or feed to the base's rim. Whoever wants it over the dome adds the dome's height.
    pub bottom_mm: f64,
}

impl Limits {
    /// The room that two parts that are not joined must have between them, in mm; nothing where they may touch.
    #[must_use]
    pub fn needs_mm(&self, parts: [Part; 2]) -> Option<f64> {
        match parts {
            [Part::Trunk, _] | [_, Part::Trunk] => Some(self.trunk_mm),
            [Part::Feed(_), Part::Feed(_)] => self.feeds_mm,
            _ => Some(self.between_mm),
        }
    }
}

/// What is asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// The trunk.
    pub trunk: Trunk,
    /// What is to hang on it.
    pub pieces: Vec<Wanted>,
    /// The flask and the room.
    pub limits: Limits,
}

/// A tree on which everything hangs.
#[derive(Debug, Clone, PartialEq)]
pub struct Arrangement {
    /// The pieces, in the order of the task.
    pub hangs: Vec<Hang>,
    /// What it costs.
    pub cost: Cost,
    /// Somebody stopped the search: it is the best that was found until then.
    pub stopped: bool,
    /// Steps that were used.
    pub steps: u64,
}

/// Why nothing is arranged. Pieces are numbered as in the task.
#[derive(Debug, Clone, PartialEq)]
pub enum CannotArrange {
    /// The trunk, the flask or the room has a size that is none: not finite, less than nought, or larger than [`LARGEST_MM`].
    BadFlask,
    /// A piece or its feed has such a size.
    BadPiece {
        /// The piece.
        piece: usize,
    },
    /// The trunk alone is too high.
    TrunkTooLong {
        /// Height the flask would need over the rim, in mm.
        needs_mm: f64,
        /// Height it has.
        has_mm: f64,
    },
    /// The trunk alone is too thick.
    TrunkTooThick {
        /// Inner diameter the flask would need, in mm.
        needs_mm: f64,
        /// Inner diameter it has.
        has_mm: f64,
    },
    /// However it is turned about its feed, a piece is too wide.
    TooWide {
        /// The piece.
        piece: usize,
        /// Inner diameter the flask would need, in mm.
        needs_mm: f64,
        /// Inner diameter it has.
        has_mm: f64,
    },
    /// However it is turned, a piece comes too near to the trunk: its feed is too short.
    FeedTooShort {
        /// The piece.
        piece: usize,
        /// Room it must have to the trunk, in mm.
        needs_mm: f64,
        /// The most it has; nought or less where it touches.
        has_mm: f64,
    },
    /// As low as it may be joined, a piece is too high.
    TooHigh {
        /// The piece.
        piece: usize,
        /// Height the flask would need over the rim, in mm.
        needs_mm: f64,
        /// Height it has.
        has_mm: f64,
    },
    /// The trunk is too short for a piece to be joined to it high enough over the base.
    TrunkTooShort {
        /// The piece.
        piece: usize,
        /// Length over the dome the trunk would need, in mm.
        needs_mm: f64,
        /// Length it has.
        has_mm: f64,
    },
    /// What was put by hand is wrong in itself.
    Held(Fault),
    /// Not everything was found room for.
    RoomFor {
        /// The most pieces that were found room for.
        most: usize,
        /// Of so many.
        of: usize,
        /// Those that hang, where they hang; nothing for those that do not. It passes [`check`] with the others taken out.
        hangs: Vec<Option<Hang>>,
        /// Somebody stopped the search.
        stopped: bool,
        /// Steps that were used.
        steps: u64,
    },
}

/// No size may be larger, in mm.
pub const LARGEST_MM: f64 = 1e5;

/// Steps of a search by default: some seconds at most, mostly far fewer. A step is about one look at how two solids lie.
pub const STEPS: u64 = 1_500_000;

/// Arranges the pieces of one flask. `go_on` is told the share of the steps that is used, and stops the search by answering false; the best tree
/// found until then is given.
///
/// # Errors
/// Where a piece cannot hang in this flask at all, where what is held is wrong in itself, or where not everything was found room for.
pub fn arrange(task: &Task, steps: u64, go_on: &dyn Fn(f64) -> bool) -> Result<Arrangement, CannotArrange> {
    let kinds = pose::Kinds::of(task)?;
    check::held_alone(task).map_err(CannotArrange::Held)?;
    search::Search::new(task, &kinds, steps, go_on).run()
}
