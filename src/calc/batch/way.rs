//! How many of one piece hang on a tree: on the usual feed, on a straighter one, or over a shorter main sprue.

use super::trees::Trees;
use crate::calc::arrange::{HAIR_MM, Wanted, places};
use crate::calc::stand::{Trunk, stand};

/// Sprues of a large piece may stand straighter out than usual, in degrees: it then keeps clear of the main sprue. A choice of the house.
const STRAIGHTER_DEG: [f64; 3] = [60.0, 75.0, 90.0];

/// One as large as the flask stands over the main sprue instead, at these. A choice of the house.
const STEEPER_DEG: [f64; 3] = [30.0, 20.0, 10.0];

/// Sprues are straighter where no more than so many pieces hang as usual. A choice of the house.
const FEW: u32 = 2;

/// How a kind hangs in a size.
#[derive(Debug, Clone, Copy)]
pub(super) struct Way {
    /// The angle of its feed, in degrees.
    pub angle_deg: f64,
    /// The length of main sprue it hangs on.
    pub length_mm: f64,
    /// How many of it hang.
    pub many: u32,
}

impl Way {
    /// As estimated: nobody counted yet.
    pub const fn usual(angle_deg: f64, trunk: &Trunk) -> Self {
        Self { angle_deg, length_mm: trunk.length_mm, many: 0 }
    }

    /// How most of a kind hang: on the usual feed, on a straighter one where few do, on a shorter main sprue where none does.
    pub fn most(trees: &Trees, size: usize, kind: usize) -> Self {
        let kind = &trees.kinds[kind];
        let (trunk, limits) = trees.room(size, kind.wall_mm);
        let at = |angle_deg: f64, length_mm: f64| {
            let trunk = Trunk { length_mm, ..trunk };
            let many = places(&trunk, &Wanted { angle_deg, ..kind.wanted.clone() }, &limits).unwrap_or(0);
            Way { angle_deg, length_mm, many }
        };
        let more = |best: Way, other: Way| if other.many > best.many { other } else { best };
        let usual = at(kind.wanted.angle_deg, trunk.length_mm);
        if usual.many > FEW {
            return usual;
        }
        let angles = || STRAIGHTER_DEG.into_iter().filter(|angle| *angle > usual.angle_deg);
        let best = angles().map(|angle| at(angle, trunk.length_mm)).fold(usual, more);
        if best.many > 0 {
            return best;
        }
        // A piece as large as the flask hangs over the end of the main sprue.
        let short = |angle_deg: f64| {
            let hang = Wanted { angle_deg, ..kind.wanted.clone() }.hang(0.0, 0.0, 0.0);
            let rise = stand(&trunk, &[hang]).pieces[0].heights()[1];
            let joint = limits.height_mm - limits.top_mm - rise - HAIR_MM;
            let length_mm = joint + 0.5 * kind.wanted.feed_diameter_mm - trunk.dome_mm;
            // Written down in whole millimetres, as every main sprue.
            at(angle_deg, length_mm.floor().clamp(1.0, trunk.length_mm))
        };
        let steeper = STEEPER_DEG.into_iter().filter(|angle| *angle < usual.angle_deg);
        std::iter::once(usual.angle_deg).chain(steeper).map(short).fold(best, more)
    }
}
