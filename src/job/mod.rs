//! The documents: a job (one casting batch, or an order book) and the studio. No arithmetic.
//!
//! `Option` is how a default is said: `None` means that the default in effect rules, and the figure names where it comes
//! from. Every object has `notes`. Start at [`Job`] and [`Studio`]; how they are written is in [`mod@format`].

mod again;
pub mod carry;
pub mod check;
mod flask;
mod follow;
pub mod format;
mod id;
mod order;
mod pattern;
mod place;
mod print;
mod printer;
mod quote;
mod record;
mod rework;
mod serial;
mod spin;
mod stage;
mod studio;
mod tree;
mod undone;

pub use flask::{Burnout, Consent, Draw, Drive, Flask, KilnReadings, Melt, Programme, Segment, SheetHours, WorkStep};
pub use follow::{Followed, IsOut, MOST_FOLLOWED, follow};
pub use id::{BurnoutId, FlaskId, JobId, LineId, LotId, MeltId, OrderId, PatternId, PieceId, PrintId, QuoteId, RecordId, TreeId};
pub use order::{Finished, From, Line, Order, PieceException, Size, Weighing};
pub use pattern::{Extents, FileUnit, InnerSolids, KeptMeasures, Making, NoGo, NoGoKind, Pair, PairKind, Pattern, PatternFile, SpruePoint};
pub use place::{NoPlace, Place};
pub use print::{PrintRow, PrintRun};
pub use printer::{Axis, Calibration, Gauge, PrintSetting, Printer};
pub use quote::{Extra, FrozenLine, FrozenPrice, FrozenQuote, Quote, QuoteState};
pub use record::{
    Accepted, BenchStep, CameBack, Entry, Event, Frozen, FrozenFigure, InvestedAs, KilnDid, MetalKind, OutFor, PieceStage, PouredAs,
    SentOut, continues, standing,
};
pub use rework::{FinishStep, Measures, Rework, ReworkBy};
pub use spin::{Centrifuge, Spin};
pub use stage::{pieces_in, stages};
pub use studio::{
    Day, Equipment, FlaskStock, Found, Hand, Learned, Lot, LotKind, MaterialLot, Mould, Price, PriceUnit, Receipt, Role, Site, Stocktake,
    Studio, Terms, UsualTree, WaterWeighing, WorkingHours,
};
pub use tree::{ButtonWish, Envelope, Hung, MainSprue, Placed, SprueRun, Tier, Tree, WeighedPart};
pub use undone::go_back;

use jiff::civil::Date;
use serial::document;

document! {
    /// One casting batch. Without flasks it is an order book, and just as legal.
    pub struct Job {
        /// Random, for good.
        job_id: JobId,
        /// What the caster calls it.
        name: String,
        /// When it was begun.
        made: Option<Date>,
        /// Where it is done, as far as that differs from the studio.
        site: Site,
        /// The orders.
        orders: Vec<Order>,
        /// The patterns.
        patterns: Vec<Pattern>,
        /// What is printed together.
        prints: Vec<PrintRun>,
        /// The trees.
        trees: Vec<Tree>,
        /// The flasks.
        flasks: Vec<Flask>,
        /// The kiln loads.
        burnouts: Vec<Burnout>,
        /// The melts.
        melts: Vec<Melt>,
        /// The quotes.
        quotes: Vec<Quote>,
        /// What happened. Append-only.
        record: Vec<Entry>,
        /// Findings somebody answers for.
        accepted: Vec<Accepted>,
        /// The shelf entries this job uses, as they were when it took them.
        shelf: Vec<carry::Copied>,
        /// Remarks.
        notes: String,
    }
}

impl Job {
    /// Every line with its order.
    pub fn lines(&self) -> impl Iterator<Item = (&Order, &Line)> {
        self.orders.iter().flat_map(|order| order.lines.iter().map(move |line| (order, line)))
    }

    /// Pieces of a line a client pays for: those it has, less the ones that are made in the stead of a rejected one.
    #[must_use]
    pub fn charged_pieces_of(line: &Line) -> u32 {
        let remade = line.exceptions.iter().filter(|(number, own)| own.remake_of.is_some() && !own.cancelled && **number <= line.quantity);
        Self::pieces_of(line).saturating_sub(u32::try_from(remade.count()).unwrap_or(u32::MAX))
    }

    /// Pieces a line really has: its quantity less the cancelled ones.
    #[must_use]
    pub fn pieces_of(line: &Line) -> u32 {
        if line.exceptions.is_empty() {
            return line.quantity;
        }
        let cancelled = line.exceptions.iter().filter(|(number, exception)| exception.cancelled && **number <= line.quantity).count();
        line.quantity.saturating_sub(u32::try_from(cancelled).unwrap_or(u32::MAX))
    }
}
