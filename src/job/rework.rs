//! What is done to a piece after it was cut off the tree: its finishing step by step, repairs, sizing, and what it measures.

use serde::{Deserialize, Serialize};

use super::order::Size;
use super::serial::document;
use crate::quantity::{Finite, Grams};

/// A step of finishing, after which a piece may be weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum FinishStep {
    /// Cut off its sprue.
    CutOff,
    /// Filed and sanded.
    Filed,
    /// Tumbled.
    Tumbled,
    /// Polished.
    Polished,
}

impl FinishStep {
    /// All of them, in the order of the work.
    pub const ALL: [Self; 4] = [Self::CutOff, Self::Filed, Self::Tumbled, Self::Polished];
}

/// How a piece is repaired or sized.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub enum ReworkBy {
    /// Welded by laser, with wire of its own alloy where none other is named.
    #[default]
    Laser,
    /// Soldered.
    Solder,
    /// Stretched or compressed, nothing joined.
    Stretch,
}

impl ReworkBy {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Laser, Self::Solder, Self::Stretch];
}

document! {
    /// A repair or a sizing of a cast piece.
    pub struct Rework {
        /// How.
        by: ReworkBy,
        /// Metal added: wire, solder, a piece of shank.
        added: Option<Grams>,
        /// Its fineness in thousandths; for a weld the piece's own where not said.
        added_permille: Option<Finite>,
        /// Metal taken out before.
        taken: Option<Grams>,
        /// The size the piece has now, where it was sized.
        size: Option<Size>,
    }
}

document! {
    /// One distance on a piece, as drawn, as printed or shot, as cast and as finished.
    pub struct Measures {
        /// In the file, or on the master, in mm.
        model_mm: Option<Finite>,
        /// On the pattern, in mm.
        pattern_mm: Option<Finite>,
        /// On the casting, in mm.
        cast_mm: Option<Finite>,
        /// On the finished piece, in mm.
        finished_mm: Option<Finite>,
    }
}
