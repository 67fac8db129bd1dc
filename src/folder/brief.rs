//! What is kept of a job in the index: ids, names, dates and links, without figures, remarks and the shelf entries it carries.

use std::collections::BTreeMap;

use jiff::civil::{Date, DateTime};
use serde::Deserialize;
use serde::de::IgnoredAny;

use crate::job::format::{ReadError, read_job, read_plain};
use crate::job::{BurnoutId, Event, FlaskId, From, Job, JobId, LineId, PieceId, PieceStage, Programme, RecordId, Size, TreeId};
use crate::stock::EntryId;

/// A part of a job. The names are those of the documents: absent fields have their defaults, and what is not here is passed over.
macro_rules! part {
    ($(#[$attribute:meta])* pub struct $name:ident { $($(#[$field_attribute:meta])* $field:ident: $type:ty,)* }) => {
        #[derive(Debug, Clone, PartialEq, Default, Deserialize)]
        #[serde(default)]
        $(#[$attribute])*
        pub struct $name { $($(#[$field_attribute])* pub $field: $type,)* }
    };
}

part! {
    /// One job, briefly.
    #[serde(rename = "Job")]
    pub struct Brief {
        /// Random, for good.
        job_id: JobId,
        /// What the caster calls it.
        name: String,
        /// When it was begun.
        made: Option<Date>,
        /// The orders.
        orders: Vec<BriefOrder>,
        /// The trees.
        trees: Vec<BriefTree>,
        /// The flasks.
        flasks: Vec<BriefFlask>,
        /// The kiln loads.
        burnouts: Vec<BriefBurnout>,
        /// The melts.
        melts: Vec<BriefMelt>,
        /// What happened.
        record: Vec<BriefEntry>,
    }
}

part! {
    /// What one client ordered at one time.
    pub struct BriefOrder {
        /// The client, by letter code.
        client: String,
        /// When it was taken.
        taken: Option<Date>,
        /// The lines.
        lines: Vec<BriefLine>,
    }
}

part! {
    /// So many pieces of one design in one alloy.
    pub struct BriefLine {
        /// The line's id, unique in the job.
        id: LineId,
        /// What it is.
        design: String,
        /// How many pieces.
        quantity: u32,
        /// The alloy.
        alloy: Option<EntryId>,
        /// The ring size or a free size.
        size: Option<Size>,
        /// What differs for single pieces, by their numbers.
        exceptions: BTreeMap<u32, BriefException>,
    }
}

part! {
    /// What is different about one piece.
    pub struct BriefException {
        /// Where it was taken on from.
        from: Option<From>,
        /// A size of its own.
        size: Option<Size>,
        /// No longer wanted.
        cancelled: bool,
    }
}

part! {
    /// One tree.
    pub struct BriefTree {
        /// The tree's id.
        id: TreeId,
        /// What the caster calls it.
        name: String,
        /// The pieces on it.
        pieces: Vec<BriefHung>,
    }
}

part! {
    /// Pieces of one line on a tree.
    pub struct BriefHung {
        /// The line.
        line: LineId,
    }
}

part! {
    /// One filled flask.
    pub struct BriefFlask {
        /// The flask's id.
        id: FlaskId,
        /// Number scratched into its face.
        scratch: String,
        /// The steel cylinder.
        vessel: Option<EntryId>,
        /// The powder.
        powder: Option<EntryId>,
        /// The tree in it.
        tree: Option<TreeId>,
        /// The kiln load it burns out in.
        burnout: Option<BurnoutId>,
        /// The alloy, where no piece on the tree says it.
        alloy: Option<EntryId>,
    }
}

part! {
    /// A kiln load.
    pub struct BriefBurnout {
        /// The load's id.
        id: BurnoutId,
        /// The kiln.
        kiln: Option<EntryId>,
        /// Where its programme comes from.
        programme: Option<BriefProgramme>,
        /// When the first flask is to be poured, by the clock on the wall.
        pour_at: Option<DateTime>,
    }
}

/// Where a programme comes from.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub enum BriefProgramme {
    /// A stage table of the shelf.
    Table(EntryId),
    /// Segments of the studio's own.
    Segments(Passed),
}

/// What was passed over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Passed;

impl<'de> Deserialize<'de> for Passed {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        IgnoredAny::deserialize(deserializer).map(|_| Self)
    }
}

part! {
    /// One crucible of metal.
    pub struct BriefMelt {
        /// What goes in.
        charge: Vec<BriefDraw>,
    }
}

part! {
    /// Metal drawn from a lot of the studio.
    pub struct BriefDraw {
        /// The lot.
        lot: String,
    }
}

part! {
    /// One entry of the record.
    pub struct BriefEntry {
        /// The entry's id.
        id: RecordId,
        /// When it happened, by the clock on the wall.
        at: Option<DateTime>,
        /// What happened.
        event: BriefEvent,
    }
}

/// What happened, with what of it is looked for.
#[derive(Debug, Clone, PartialEq, Eq, Default, Deserialize)]
#[allow(missing_docs, reason = "the fields are those of the record's own document")]
pub enum BriefEvent {
    #[default]
    Remark,
    Reached {
        pieces: Vec<PieceId>,
        stage: PieceStage,
    },
    Pattern {},
    TreeWeighed {},
    Invested {},
    Kiln {},
    Poured {
        flask: FlaskId,
    },
    Metal {},
    PieceWeighed {},
    Measured {},
    Reworked {},
    HandedBack {},
    Rejected {
        piece: PieceId,
        defect: String,
    },
    SentOut {},
    CameBack {},
    Timed {},
    Withdrawn {
        entry: RecordId,
    },
}

impl Brief {
    /// Reads a job briefly: what is plainly written by a quick reader, anything else by the reader that opens jobs.
    ///
    /// What the quick reader passes over may still be at fault: whether a job opens is for [`read_job`] to say.
    ///
    /// # Errors
    /// Those of [`read_job`].
    pub fn read(bytes: &[u8]) -> Result<Self, ReadError> {
        match read_plain::<Self>(bytes) {
            // A studio's file has no such id, and would pass for an empty job.
            Some(brief) if brief.job_id != JobId::default() => Ok(brief),
            _ => Ok(Self::of(&read_job(bytes)?.document)),
        }
    }

    /// A job that is open.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        let line = |line: &crate::job::Line| BriefLine {
            id: line.id,
            design: line.design.clone(),
            quantity: line.quantity,
            alloy: line.alloy.clone(),
            size: line.size.clone(),
            exceptions: line.exceptions.iter().map(|(number, one)| (*number, BriefException::of(one))).collect(),
        };
        let order = |order: &crate::job::Order| BriefOrder {
            client: order.client.clone(),
            taken: order.taken,
            lines: order.lines.iter().map(line).collect(),
        };
        let tree = |tree: &crate::job::Tree| BriefTree {
            id: tree.id,
            name: tree.name.clone(),
            pieces: tree.pieces.iter().map(|hung| BriefHung { line: hung.line }).collect(),
        };
        let melt = |melt: &crate::job::Melt| BriefMelt {
            charge: melt.charge.iter().map(|draw| BriefDraw { lot: draw.lot.to_string() }).collect(),
        };
        let entry = |entry: &crate::job::Entry| BriefEntry { id: entry.id, at: entry.at, event: BriefEvent::of(&entry.event) };
        Self {
            job_id: job.job_id,
            name: job.name.clone(),
            made: job.made,
            orders: job.orders.iter().map(order).collect(),
            trees: job.trees.iter().map(tree).collect(),
            flasks: job.flasks.iter().map(BriefFlask::of).collect(),
            burnouts: job.burnouts.iter().map(BriefBurnout::of).collect(),
            melts: job.melts.iter().map(melt).collect(),
            record: job.record.iter().map(entry).collect(),
        }
    }
}

impl BriefException {
    fn of(one: &crate::job::PieceException) -> Self {
        Self { from: one.from, size: one.size.clone(), cancelled: one.cancelled }
    }
}

impl BriefFlask {
    fn of(flask: &crate::job::Flask) -> Self {
        Self {
            id: flask.id,
            scratch: flask.scratch.clone(),
            vessel: flask.vessel.clone(),
            powder: flask.powder.clone(),
            tree: flask.tree,
            burnout: flask.burnout,
            alloy: flask.alloy.clone(),
        }
    }
}

impl BriefBurnout {
    fn of(load: &crate::job::Burnout) -> Self {
        let programme = load.programme.as_ref().map(|programme| match programme {
            Programme::Table(id) => BriefProgramme::Table(id.clone()),
            Programme::Segments(_) => BriefProgramme::Segments(Passed),
        });
        Self { id: load.id, kiln: load.kiln.clone(), programme, pour_at: load.pour_at }
    }
}

impl BriefEvent {
    fn of(event: &Event) -> Self {
        match event {
            Event::Remark => Self::Remark,
            Event::Reached { pieces, stage } => Self::Reached { pieces: pieces.clone(), stage: *stage },
            Event::Pattern { .. } => Self::Pattern {},
            Event::TreeWeighed { .. } => Self::TreeWeighed {},
            Event::Invested { .. } => Self::Invested {},
            Event::Kiln { .. } => Self::Kiln {},
            Event::Poured { flask, .. } => Self::Poured { flask: *flask },
            Event::Metal { .. } => Self::Metal {},
            Event::PieceWeighed { .. } => Self::PieceWeighed {},
            Event::Measured { .. } => Self::Measured {},
            Event::Reworked { .. } => Self::Reworked {},
            Event::HandedBack { .. } => Self::HandedBack {},
            Event::Rejected { piece, defect } => Self::Rejected { piece: *piece, defect: defect.clone() },
            Event::SentOut { .. } => Self::SentOut {},
            Event::CameBack { .. } => Self::CameBack {},
            Event::Timed { .. } => Self::Timed {},
            Event::Withdrawn { entry, .. } => Self::Withdrawn { entry: *entry },
        }
    }
}
