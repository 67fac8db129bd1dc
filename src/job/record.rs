//! The record: what really happened. Append-only.
//!
//! Undo takes an entry back only until the first save; after that it appends a withdrawal.

use jiff::civil::{Date, DateTime};
use serde::{Deserialize, Serialize};

use super::id::{BurnoutId, FlaskId, LotId, MeltId, PatternId, PieceId, RecordId, TreeId};
use super::order::Weighing;
use super::place::Place;
use super::rework::{FinishStep, Measures, Rework};
use super::serial::document;
use crate::quantity::{Finite, Grams};

/// True where `after` still begins with every entry of `before`, word for word: the record only grows. What no longer counts is withdrawn by a
/// later entry, never taken out.
#[must_use]
pub fn continues(before: &[Entry], after: &[Entry]) -> bool {
    after.starts_with(before)
}

/// Entries that no later entry withdraws, in order; withdrawals themselves are left out.
pub fn standing(record: &[Entry]) -> impl Iterator<Item = &Entry> {
    let withdrawn = |id: RecordId| record.iter().any(|entry| matches!(&entry.event, Event::Withdrawn { entry: of, .. } if *of == id));
    record.iter().filter(move |entry| !matches!(entry.event, Event::Withdrawn { .. }) && !withdrawn(entry.id))
}

document! {
    /// One entry.
    pub struct Entry {
        /// The entry's id; ids rise in the order of writing.
        id: RecordId,
        /// When it happened, by the clock on the wall.
        at: Option<DateTime>,
        /// Who says so, by initials.
        hands: String,
        /// What happened.
        event: Event,
        /// Pictures, by path relative to the job.
        photos: Vec<String>,
        /// Remarks.
        notes: String,
    }
}

/// What happened.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Event {
    /// A remark alone.
    #[default]
    Remark,
    /// Pieces reached a stage.
    Reached {
        /// The pieces.
        pieces: Vec<PieceId>,
        /// The stage.
        stage: PieceStage,
    },
    /// A pattern was made or checked.
    Pattern {
        /// The pattern.
        pattern: PatternId,
        /// What the scale said.
        weight: Option<Weighing>,
    },
    /// A tree was weighed.
    TreeWeighed {
        /// The tree.
        tree: TreeId,
        /// What the scale said.
        weight: Option<Weighing>,
    },
    /// A flask was invested; the plan's figures stand as they were.
    Invested {
        /// The flask.
        flask: FlaskId,
        /// The plan at that moment.
        plan: Frozen,
        /// What was really done.
        done: InvestedAs,
    },
    /// A kiln load went in or came out, or a temperature was read.
    Kiln {
        /// The load.
        burnout: BurnoutId,
        /// What was seen.
        temperature_c: Option<Finite>,
        /// What was done with the load.
        #[serde(default, skip_serializing_if = "crate::job::serial::is_default")]
        did: KilnDid,
    },
    /// A flask was poured; the plan's figures stand as they were.
    Poured {
        /// The flask.
        flask: FlaskId,
        /// The plan at that moment.
        plan: Frozen,
        /// What was really done.
        done: PouredAs,
    },
    /// Metal weighed after a pour.
    Metal {
        /// The melt, where the weighing belongs to one.
        melt: Option<MeltId>,
        /// The flask, where it belongs to one.
        flask: Option<FlaskId>,
        /// What kind of metal.
        what: MetalKind,
        /// How much.
        grams: Grams,
    },
    /// A piece was weighed.
    PieceWeighed {
        /// The piece.
        piece: PieceId,
        /// Cut off, or finished.
        finished: bool,
        /// How much.
        grams: Grams,
        /// After which step, where it is said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        after: Option<FinishStep>,
    },
    /// A piece was measured: one distance on it.
    Measured {
        /// The piece.
        piece: PieceId,
        /// What was measured, in a word: bore, width.
        what: String,
        /// What it measured.
        measures: Measures,
    },
    /// A piece was repaired or sized after it was cast.
    Reworked {
        /// The piece.
        piece: PieceId,
        /// What was done.
        rework: Rework,
    },
    /// Metal was handed back to the client it belongs to.
    HandedBack {
        /// The client, by letter code.
        client: String,
        /// The melt it was in: sprues and buttons.
        melt: Option<MeltId>,
        /// The lot, where it is handed back as it came.
        lot: Option<LotId>,
        /// How much.
        grams: Grams,
    },
    /// A piece was rejected.
    Rejected {
        /// The piece.
        piece: PieceId,
        /// The defect, by its key.
        defect: String,
    },
    /// Pieces went out of the house.
    SentOut {
        /// The pieces.
        pieces: Vec<PieceId>,
        /// What for, to whom and with what.
        sent: SentOut,
    },
    /// Pieces came back into the house.
    CameBack {
        /// The entry that sent them out.
        sent: RecordId,
        /// The pieces, those that failed there included.
        pieces: Vec<PieceId>,
        /// How.
        back: CameBack,
    },
    /// A step at the bench ran by the clock; the entry is written when it was done.
    Timed {
        /// Which step.
        step: BenchStep,
        /// The flask, the melt or the kiln load it was done with.
        of: Place,
        /// How long it took, in seconds.
        seconds: u32,
    },
    /// An earlier entry no longer counts.
    Withdrawn {
        /// That entry.
        entry: RecordId,
        /// Why.
        reason: String,
    },
}

/// A step at the bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum BenchStep {
    /// Powder and water are weighed.
    Weigh,
    /// They are mixed.
    Mix,
    /// The bowl stands under vacuum.
    Bowl,
    /// The slurry is poured.
    Fill,
    /// The flask stands under vacuum.
    Vacuum,
    /// The flask stands still.
    Rest,
    /// The steam is started.
    Steam,
    /// The kiln is started.
    Kiln,
    /// The crucible is charged.
    Charge,
    /// The metal is poured.
    Pour,
    /// The flask is quenched, or left to cool.
    Quench,
}

/// What was done with a kiln load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum KilnDid {
    /// It was looked at.
    #[default]
    Read,
    /// It went in.
    WentIn,
    /// It came out, burnt out.
    CameOut,
}

/// What pieces are out of the house for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
pub enum OutFor {
    /// To be marked by an assay office.
    #[default]
    Hallmark,
    /// To have stones set.
    Setting,
    /// To be sized.
    Sizing,
    /// To be repaired.
    Repair,
    /// To be plated.
    Plating,
    /// To be cast elsewhere.
    Casting,
    /// Anything else, which the remarks tell.
    Other,
}

impl OutFor {
    /// All of them.
    pub const ALL: [Self; 7] = [Self::Hallmark, Self::Setting, Self::Sizing, Self::Repair, Self::Plating, Self::Casting, Self::Other];
}

/// How far a piece is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum PieceStage {
    /// Printed, injected or carved.
    Made,
    /// Washed and cured, or dressed.
    Cleaned,
    /// Checked and found good.
    Checked,
    /// On the tree.
    OnTree,
    /// In investment.
    Invested,
    /// Burnt out.
    BurntOut,
    /// Cast.
    Cast,
    /// Cut off the tree.
    CutOff,
    /// Weighed.
    Weighed,
    /// Finished.
    Finished,
    /// Out of the house: hallmark, setting, sizing, repair.
    Out,
    /// With the client.
    Delivered,
}

impl PieceStage {
    /// All of them, in the order of the work.
    pub const ALL: [Self; 12] = [
        Self::Made,
        Self::Cleaned,
        Self::Checked,
        Self::OnTree,
        Self::Invested,
        Self::BurntOut,
        Self::Cast,
        Self::CutOff,
        Self::Weighed,
        Self::Finished,
        Self::Out,
        Self::Delivered,
    ];
}

/// Where weighed metal came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum MetalKind {
    /// Put into the crucible.
    Charged,
    /// Good pieces as cut off.
    GoodPieces,
    /// Sprues and button, cleaned.
    SpruesAndButton,
    /// Pieces that did not fill.
    NoFill,
    /// Beads and spills that were gathered.
    Beads,
    /// Filings and sweeps.
    Sweeps,
}

document! {
    /// How pieces went out.
    pub struct SentOut {
        /// What for.
        what_for: OutFor,
        /// To whom, by letter code or a word of the studio's own.
        to: String,
        /// Who carried them, and the number of the parcel.
        carrier: String,
        /// When they are promised back.
        promised: Option<Date>,
        /// What they weighed together.
        weight: Option<Grams>,
    }
}

document! {
    /// How pieces came back.
    pub struct CameBack {
        /// What they weighed together.
        weight: Option<Grams>,
        /// Those that failed there.
        failed: Vec<PieceId>,
    }
}

document! {
    /// How a flask was really invested.
    pub struct InvestedAs {
        /// The lot of the powder, by its label.
        lot: String,
        /// The scale it was weighed on, by its label.
        scale: String,
        /// Temperature of the room in °C.
        room_c: Option<Finite>,
        /// Powder weighed out.
        powder: Option<Grams>,
        /// Water weighed out.
        water: Option<Grams>,
        /// The water's temperature in °C.
        water_c: Option<Finite>,
        /// Gloss-off measured, in min.
        gloss_off_min: Option<Finite>,
        /// The gauge's reading under the bell, in kPa below the barometer.
        vacuum_kpa: Option<Finite>,
    }
}

document! {
    /// How a flask was really poured.
    pub struct PouredAs {
        /// The metal's temperature in °C.
        metal_c: Option<Finite>,
        /// The mould's temperature in °C.
        mould_c: Option<Finite>,
        /// The charge.
        charge: Option<Grams>,
        /// Minutes until the quench.
        quench_min: Option<Finite>,
    }
}

document! {
    /// The plan's figures at a moment that cannot be taken back.
    pub struct Frozen {
        /// The figures.
        figures: Vec<FrozenFigure>,
        /// Hashes of the shelf entries used, `id hash`.
        shelf: Vec<String>,
    }
}

document! {
    /// One figure as it stood.
    pub struct FrozenFigure {
        /// The key of the rule that made it, or of the input or default it was.
        rule: String,
        /// Where.
        place: Place,
        /// Its value in the unit of the rule's quantity.
        value: Finite,
    }
}

document! {
    /// A finding that somebody answers for.
    pub struct Accepted {
        /// The finding's kind.
        finding: String,
        /// Where.
        place: Place,
        /// How bad it was then: worse raises it again.
        value: Option<Finite>,
        /// Who, by initials. Only a master signs for a Stop.
        hands: String,
        /// Why; it prints.
        reason: String,
        /// When.
        at: Option<DateTime>,
    }
}
