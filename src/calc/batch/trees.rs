//! What the flasks of a wish are arranged with: the forms of the pieces, and the main sprue and the room of each size.

use super::places::{Body, Inside, UsualTree};
use crate::calc::arrange::{HAIR_MM, Limits, Wanted};
use crate::calc::outline::TRUNK_NEEDED;
use crate::calc::stand::Trunk;
use crate::job::{PatternId, PieceId};

/// Pieces that are arranged alike: one pattern on the usual feed, in flasks that leave it the same room.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Kind {
    pub pattern: PatternId,
    /// Room to the wall in mm: the strictest material of its alloy rules.
    pub wall_mm: f64,
    pub wanted: Wanted,
}

/// What the flasks of a wish are arranged with.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Trees {
    pub(super) kinds: Vec<Kind>,
    /// The pieces of each group with their kinds; nothing where the form of one is not known.
    pub(super) groups: Vec<Option<Vec<(PieceId, usize)>>>,
    /// The longest main sprue of each size, and its room with none to the wall.
    pub(super) sizes: Vec<(Trunk, Limits)>,
}

impl Trees {
    /// The kind of a piece, a new one where none is like it. `form` is asked only then.
    pub(super) fn kind(&mut self, pattern: PatternId, body: &Body, form: impl FnOnce() -> Option<Wanted>) -> Option<usize> {
        let alike = |kind: &Kind| kind.pattern == pattern && kind.wall_mm.to_bits() == body.wall_mm.to_bits();
        if let Some(at) = self.kinds.iter().position(alike) {
            return Some(at);
        }
        self.kinds.push(Kind { pattern, wall_mm: body.wall_mm, wanted: form()? });
        Some(self.kinds.len() - 1)
    }

    /// The room of a size, for pieces that want so much of it to the wall.
    pub(super) fn room(&self, size: usize, wall_mm: f64) -> (Trunk, Limits) {
        let (trunk, limits) = self.sizes[size];
        (trunk, Limits { wall_mm, ..limits })
    }
}

/// Main sprue and room of a flask's inside.
pub(super) fn inside(tree: &UsualTree, inside: &Inside, length_mm: f64) -> (Trunk, Limits) {
    // A main sprue is written down in whole millimetres.
    let trunk = Trunk { diameter_mm: tree.main_mm, length_mm: length_mm.floor().max(1.0), dome_mm: inside.dome_mm };
    let limits = Limits {
        inner_diameter_mm: inside.diameter_mm,
        height_mm: inside.height_mm,
        wall_mm: 0.0,
        between_mm: tree.gap_mm + HAIR_MM,
        feeds_mm: None,
        trunk_mm: TRUNK_NEEDED.value + HAIR_MM,
        top_mm: inside.top_mm + HAIR_MM / 5.0,
        bottom_mm: inside.dome_mm,
    };
    (trunk, limits)
}
