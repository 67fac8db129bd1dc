//! Orders, their lines and the pieces of a line.

use std::collections::BTreeMap;

use jiff::civil::Date;
use serde::{Deserialize, Serialize};

use super::id::{JobId, LineId, OrderId, PatternId, PieceId};
use super::serial::document;
use crate::quantity::{Finite, Grams};
use crate::stock::EntryId;

document! {
    /// What one client ordered at one time.
    pub struct Order {
        /// The order's id.
        id: OrderId,
        /// The client, by letter code; names and addresses stay out of job files.
        client: String,
        /// When it was taken.
        taken: Option<Date>,
        /// When it is due.
        due: Option<Date>,
        /// The lines.
        lines: Vec<Line>,
        /// Where the client's own metal is cast: share of what the castings weigh that is agreed to be lost.
        agreed_loss: Option<Finite>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// So many pieces of one design in one alloy. The pieces are implicit, numbered from 1 to `quantity`.
    pub struct Line {
        /// The line's id, unique in the job.
        id: LineId,
        /// What it is: "limpet ring".
        design: String,
        /// How many pieces.
        quantity: u32,
        /// The alloy, by shelf id.
        alloy: Option<EntryId>,
        /// The ring size or a free size.
        size: Option<Size>,
        /// How wide the band is, in mm: a wide one is made larger, so that it goes over the knuckle.
        band_mm: Option<Finite>,
        /// The inside is rounded: such a ring wears larger than its size.
        comfort_fit: bool,
        /// By how much in diameter it wears larger, in mm; the middle of what is told where not said.
        comfort_mm: Option<Finite>,
        /// Finished outer size, for pieces that are no rings, along the axes of the pattern's file.
        finished: Finished,
        /// What finishing opens a bore by, in diameter, in mm.
        finishing_opens_mm: Option<Finite>,
        /// What finishing takes off an outer size, both sides together, in mm.
        finishing_takes_mm: Option<Finite>,
        /// The pattern every piece of the line is cast from.
        pattern: Option<PatternId>,
        /// A date of its own, where it differs from the order's.
        due: Option<Date>,
        /// Pieces of one set or pair are kept together: lines that share a word here belong together.
        set: String,
        /// The mark to be struck, in thousandths; `None` where the alloy's own applies or none is struck.
        mark_permille: Option<Finite>,
        /// What the piece gets after casting.
        finish: String,
        /// Minutes of finishing a piece, for the quote.
        finishing_min: Option<Finite>,
        /// What differs for single pieces, by number.
        exceptions: BTreeMap<u32, PieceException>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// An outer size that a finished piece is to have, along the axes of its pattern's file; `None` where nobody asks for it.
    pub struct Finished {
        /// Along x, in mm.
        x_mm: Option<Finite>,
        /// Along y, in mm.
        y_mm: Option<Finite>,
        /// Along z, in mm.
        z_mm: Option<Finite>,
    }
}

impl Finished {
    /// The three in the order of the axes.
    #[must_use]
    pub fn sides(&self) -> [Option<Finite>; 3] {
        [self.x_mm, self.y_mm, self.z_mm]
    }
}

document! {
    /// What is different about one piece.
    pub struct PieceException {
        /// Where it was taken on from. That it left the other job is found by looking through the shelf of jobs.
        from: Option<From>,
        /// A size of its own.
        size: Option<Size>,
        /// A pattern of its own.
        pattern: Option<PatternId>,
        /// The piece that this one replaces after a reject.
        remake_of: Option<PieceId>,
        /// Its pattern cannot be made again.
        irreplaceable: bool,
        /// No longer wanted.
        cancelled: bool,
        /// Remarks.
        notes: String,
    }
}

/// The piece of another job that this piece was taken on from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct From {
    /// The other job.
    pub job: JobId,
    /// The piece there.
    pub piece: PieceId,
}

/// How large a piece is to be.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Size {
    /// A ring size on a scale of the shelf.
    Ring {
        /// The scale's shelf id.
        scale: EntryId,
        /// The size as written on that scale: "54", "6 1/2", "N".
        size: String,
    },
    /// Anything else, in words.
    Free(String),
}

/// What a scale showed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Weighing {
    /// The thing alone, or with the tare already taken off by the scale.
    Net(Grams),
    /// The thing with what it stands on; the tare is what that weighs alone.
    Gross {
        /// What the scale showed.
        weight: Grams,
        /// What stands under it, where it was weighed.
        tare: Option<Grams>,
    },
}
