//! Where flasks stand in a burnout kiln: none too near to another or to a wall, thin-sectioned ones where it is hottest, those that are poured
//! first near the door.
//!
//! The floor is seen from above: x runs from the left, y from the front, which is where the door is and where the caster stands; both in mm from
//! the front left corner of the floor, or of the square around it where it is round. A flask stands where its middle stands. There is one layer.
//!
//! [`arrange`] tries rows ([`lattice`]), one flask after the other into a corner ([`greedy`]), and flasks that push each other apart ([`relax`]);
//! then it betters what it found by the wishes ([`better`]). Chance has a fixed beginning and there is no clock, so that the same load always
//! stands the same way. What cannot stand at all is told by bounds that are proven ([`bound`]); what was merely not found is told as that. What
//! is given out has passed [`check`], which knows none of this.

mod assign;
mod better;
mod bound;
mod check;
mod error;
mod fit;
mod greedy;
mod known;
mod lattice;
mod most;
mod relax;
mod room;
mod search;
mod spots;
mod zone;

pub use bound::Bound;
pub use check::{Fault, check};
pub use error::FloorError;
pub use known::{best_known_round, best_known_square};
pub use most::{Most, most};
pub use search::{Arrangement, Left, Room, Standing, Why, arrange};
pub use zone::{Column, Hottest, Row, Zones, third, zone_k};

/// Lengths that are short by no more than this are not short, in mm: places are given in hundredths.
pub const SLACK_MM: f64 = 0.02;

/// No length may be larger, in mm.
pub const LARGEST_MM: f64 = 5000.0;

/// Most flasks of one load.
pub const MOST_FLASKS: usize = 40;

/// No importance may be larger, either way.
pub const LARGEST_WARMTH: i32 = 1000;

/// The outline of a kiln's floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// A rectangle; the door is its front.
    Rectangle {
        /// From left to right, in mm.
        width_mm: f64,
        /// From front to back, in mm.
        depth_mm: f64,
    },
    /// A circle, as in a kiln that is loaded from above.
    Round {
        /// Its diameter, in mm.
        diameter_mm: f64,
    },
}

impl Shape {
    /// From left to right and from front to back, in mm.
    #[must_use]
    pub fn sides_mm(self) -> [f64; 2] {
        match self {
            Self::Rectangle { width_mm, depth_mm } => [width_mm, depth_mm],
            Self::Round { diameter_mm } => [diameter_mm; 2],
        }
    }
}

/// The floor of a kiln, and the room that must be left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Floor {
    /// Its outline.
    pub shape: Shape,
    /// Height of the chamber, in mm.
    pub height_mm: f64,
    /// From a flask to walls and elements, in mm.
    pub wall_mm: f64,
    /// Between two flasks, for air, in mm.
    pub gap_mm: f64,
    /// Where it is hotter and where colder.
    pub zones: Zones,
}

/// A flask that is to stand in the kiln.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flask {
    /// What it is called by; no two flasks of a load have the same.
    pub key: u32,
    /// Outer diameter, with its flange where it has one, in mm.
    pub diameter_mm: f64,
    /// Height as it stands, in mm.
    pub height_mm: f64,
    /// How much it matters that it stands hot, up to [`LARGEST_WARMTH`]: above nought for thin sections, below nought for heavy ones, which
    /// belong where it is coldest; nought where it does not matter.
    pub warmth: i32,
    /// When it is poured: lower is earlier, and nearer the door. Nothing where that is not known.
    pub pour: Option<u32>,
    /// Where it was put by hand, x and y in mm: there it stays.
    pub held_mm: Option<[f64; 2]>,
}

/// A flask's place, for a check.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// The flask.
    pub key: u32,
    /// Its middle, x and y in mm.
    pub at_mm: [f64; 2],
}
