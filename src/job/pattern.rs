//! Patterns: the waxes and prints that pieces are cast from.

use serde::{Deserialize, Serialize};

use super::id::PatternId;
use super::order::Weighing;
use super::serial::document;
use crate::quantity::Finite;
use crate::stock::{EntryId, Section};

document! {
    /// One pattern design. It may be weighed, measured from a file, or both: metal is charged from the scale and quoted from the file.
    pub struct Pattern {
        /// The pattern's id.
        id: PatternId,
        /// What it is.
        name: String,
        /// What it is made of, by shelf id.
        material: Option<EntryId>,
        /// One pattern on the scale, cleaned, cured and dry.
        weighed: Option<Weighing>,
        /// Its file.
        file: Option<PatternFile>,
        /// Length × width × height as it hangs on the sprue (length along the sprue), where no file says so, in mm.
        extents_mm: Option<Extents>,
        /// How thick its walls are; `None` leaves the default.
        section: Option<Section>,
        /// The thinnest wall, where it was measured, in mm.
        thinnest_mm: Option<Finite>,
        /// It cannot be made again: carved, or a found object.
        irreplaceable: bool,
        /// Stones are set in it and cast in place.
        stones: bool,
        /// A hollow that investment fills: drain holes are open and the core is held. Unless this is said, a sealed void pours solid.
        void_drained: bool,
        /// Grams of resin or wax and minutes of making a piece, for the quote.
        making: Option<Making>,
        /// The mould it is shot from, by its number in the studio's register.
        mould: String,
        /// The other pattern of a pair, such as the left ear's of a right one; said at one of the two.
        pair: Option<Pair>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// What one pattern costs to make.
    pub struct Making {
        /// Minutes of work.
        labour_min: Option<Finite>,
        /// Share of supports and waste on top of the part's own material.
        waste_share: Option<Finite>,
    }
}

document! {
    /// What a pattern is to another one.
    pub struct Pair {
        /// The other one.
        with: PatternId,
        /// What the two should be to each other.
        like: PairKind,
    }
}

/// What the two patterns of a pair should be to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum PairKind {
    /// Left and right.
    #[default]
    MirrorImages,
    /// The same shape twice.
    Alike,
}

document! {
    /// A pattern file beside the job.
    pub struct PatternFile {
        /// The path, relative to the job's folder, with forward slashes.
        path: String,
        /// Hash of the content when it was last looked at; a difference is a finding.
        hash: Option<String>,
        /// The unit the file is drawn in.
        unit: FileUnit,
        /// Scale of the print against the file; 1 where not said.
        scale: Option<Finite>,
        /// What solids wholly inside another solid, wound the same way, were meant to be.
        inner: InnerSolids,
        /// Inner diameter of the ring as it is drawn in the file, in mm.
        bore_mm: Option<Finite>,
        /// Places where no sprue may stand.
        no_go: Vec<NoGo>,
        /// Where the feed sprue is to stand.
        sprue: Option<SpruePoint>,
        /// What was measured of the content that `hash` belongs to. It counts while the file is not there, cannot be read, or is another one.
        kept: Option<KeptMeasures>,
    }
}

document! {
    /// What a pattern's file measured when it was looked at, in the file's own unit.
    pub struct KeptMeasures {
        /// Volume of the file's material, where it has such a number.
        volume: Option<Finite>,
        /// What metal fills, sealed voids with it.
        fills: Option<Finite>,
        /// Area of its surface.
        area: Option<Finite>,
        /// Outer size along the file's axes.
        size: Option<[Finite; 3]>,
        /// Volume of its sealed voids.
        void: Option<Finite>,
        /// Volume of its solids wholly inside another solid, wound the same way.
        inner: Option<Finite>,
        /// Its walls: the thinnest, the typical, the heaviest.
        walls: Option<[Finite; 3]>,
    }
}

document! {
    /// A place of a pattern's surface where no sprue may stand, as a ball round it, in the file's own unit.
    pub struct NoGo {
        /// The ball's centre, on the surface.
        at: Option<[Finite; 3]>,
        /// Its radius.
        radius: Option<Finite>,
        /// What is there.
        what: NoGoKind,
    }
}

document! {
    /// Where a feed sprue stands on a pattern, and what it feeds there, in the file's own unit.
    pub struct SpruePoint {
        /// On the surface.
        at: Option<[Finite; 3]>,
        /// Diameter of the largest ball in the material behind it.
        ball: Option<Finite>,
        /// Volume over surface around that ball.
        modulus: Option<Finite>,
    }
}

/// What solids wholly inside another solid, wound the same way, were meant to be. A file cannot say it: its surface is that of a solid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum InnerSolids {
    /// Nobody said it yet.
    #[default]
    NotSaid,
    /// Material within material: nothing is there twice.
    Solid,
    /// A hollow whose surface faces the wrong way.
    Hollow,
}

/// Why no sprue may stand at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum NoGoKind {
    /// A texture that could not be filed back.
    #[default]
    Texture,
    /// A seat for a stone or a joint.
    Seat,
    /// A mark.
    Mark,
}

impl PatternFile {
    /// True where the path leads out of the job's folder: the file does not travel with the job.
    #[must_use]
    pub fn lies_outside(&self) -> bool {
        let path = self.path.trim();
        let drive = path.as_bytes().get(1) == Some(&b':');
        let mut depth = 0_i32;
        let climbs = path.split(['/', '\\']).any(|part| {
            match part {
                "" | "." => {}
                ".." => depth -= 1,
                _ => depth += 1,
            }
            depth < 0
        });
        drive || path.starts_with(['/', '\\']) || climbs
    }
}

/// The unit of a file that does not say it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum FileUnit {
    /// Millimetres, the custom of the trade.
    #[default]
    Millimetre,
    /// Centimetres.
    Centimetre,
    /// Inches.
    Inch,
    /// Metres.
    Metre,
    /// Thousandths of an inch.
    Mil,
    /// Thousandths of a millimetre.
    Micrometre,
}

impl FileUnit {
    /// Millimetres in one unit of the file.
    #[must_use]
    pub fn in_mm(self) -> f64 {
        match self {
            Self::Millimetre => 1.0,
            Self::Centimetre => 10.0,
            Self::Inch => 25.4,
            Self::Metre => 1000.0,
            Self::Mil => 0.0254,
            Self::Micrometre => 0.001,
        }
    }
}

/// Outer size in mm: along the sprue, across it, and the third way.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Extents {
    /// Along the feed sprue.
    pub along: Finite,
    /// Across it.
    pub across: Finite,
    /// The third way.
    pub deep: Finite,
}
