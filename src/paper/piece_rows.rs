//! Every piece that was ever ordered, with what the plan and the record know of it: what tables of pieces are made of.

use std::collections::BTreeMap;

use jiff::civil::Date;

use super::desk::{Desk, Ordered};
use crate::calc::Id;
use crate::job::{
    Burnout, Event, Flask, Hung, Job, Line, LineId, Melt, Order, Pattern, PieceException, PieceId, PieceStage, Size, Tree, TreeId, stages,
    standing,
};

/// One piece. A cancelled one has neither weight nor place, so that the sum of a column is what will be cast.
#[derive(Debug, Clone)]
pub(super) struct PieceRow<'a> {
    pub order: &'a Order,
    pub line: &'a Line,
    pub id: PieceId,
    /// What is different about it.
    pub exception: Option<&'a PieceException>,
    /// Its own, or else the line's.
    pub size: Option<&'a Size>,
    /// Its own, or else the line's.
    pub pattern: Option<&'a Pattern>,
    /// Inner diameter of its ring size.
    pub bore: Option<Id>,
    /// Its weight as cast and cut off.
    pub rough: Option<Id>,
    pub due: Option<Date>,
    pub hangs: Hangs<'a>,
    /// How far it is, by the record.
    pub stage: Option<PieceStage>,
    /// The defect it was rejected for.
    pub rejected: Option<&'a str>,
}

/// Where a piece hangs and what becomes of it there; the first tree and the first flask where a plan names two.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Hangs<'a> {
    pub tree: Option<&'a Tree>,
    pub flask: Option<&'a Flask>,
    pub load: Option<&'a Burnout>,
    pub melt: Option<&'a Melt>,
}

impl PieceRow<'_> {
    pub fn cancelled(&self) -> bool {
        self.exception.is_some_and(|exception| exception.cancelled)
    }

    /// The piece or its pattern cannot be made again.
    pub fn irreplaceable(&self) -> bool {
        self.exception.is_some_and(|exception| exception.irreplaceable) || self.pattern.is_some_and(|pattern| pattern.irreplaceable)
    }
}

/// Every piece of every line, from 1 to the line's quantity, in the order of the job.
pub(super) fn piece_rows<'a>(desk: &Desk<'a>) -> Vec<PieceRow<'a>> {
    let job = desk.input.job;
    let (plan, stages, rejected) = (Plan::of(job), stages(job), rejected(job));
    let mut rows = Vec::new();
    for (order, line) in job.lines() {
        let figures = desk.line(line.id).and_then(|Ordered { figures, .. }| figures);
        for number in 1..=line.quantity {
            let id = PieceId { line: line.id, number };
            let exception = line.exceptions.get(&number);
            let wanted = !exception.is_some_and(|exception| exception.cancelled);
            let own_size = exception.and_then(|exception| exception.size.as_ref());
            let pattern = exception.and_then(|exception| exception.pattern).or(line.pattern);
            rows.push(PieceRow {
                order,
                line,
                id,
                exception,
                size: own_size.or(line.size.as_ref()),
                pattern: pattern.and_then(|id| job.patterns.iter().find(|pattern| pattern.id == id)),
                bore: figures.and_then(|figures| if own_size.is_some() { figures.own_bore(number) } else { figures.bore() }),
                rough: figures.filter(|_| wanted).and_then(|figures| figures.rough_of(pattern)),
                due: line.due.or(order.due),
                hangs: if wanted { plan.hangs(id) } else { Hangs::default() },
                stage: stages.get(&id).copied(),
                rejected: rejected.get(&id).copied(),
            });
        }
    }
    rows
}

/// The rows of the trees by line, and the flasks by tree.
struct Plan<'a> {
    job: &'a Job,
    hung: BTreeMap<LineId, Vec<(&'a Hung, &'a Tree)>>,
    flasks: BTreeMap<TreeId, &'a Flask>,
}

impl<'a> Plan<'a> {
    fn of(job: &'a Job) -> Self {
        let mut hung: BTreeMap<LineId, Vec<(&Hung, &Tree)>> = BTreeMap::new();
        for tree in &job.trees {
            tree.pieces.iter().for_each(|row| hung.entry(row.line).or_default().push((row, tree)));
        }
        let mut flasks = BTreeMap::new();
        for flask in &job.flasks {
            if let Some(tree) = flask.tree {
                flasks.entry(tree).or_insert(flask);
            }
        }
        Self { job, hung, flasks }
    }

    fn hangs(&self, piece: PieceId) -> Hangs<'a> {
        let here = |hung: &Hung| hung.numbers.is_empty() || hung.numbers.contains(&piece.number);
        let tree = self.hung.get(&piece.line).and_then(|rows| rows.iter().find(|(hung, _)| here(hung))).map(|(_, tree)| *tree);
        let flask = tree.and_then(|tree| self.flasks.get(&tree.id).copied());
        let load = flask.and_then(|flask| flask.burnout);
        let melt = flask.and_then(|flask| flask.melt);
        Hangs {
            tree,
            flask,
            load: load.and_then(|id| self.job.burnouts.iter().find(|load| load.id == id)),
            melt: melt.and_then(|id| self.job.melts.iter().find(|melt| melt.id == id)),
        }
    }
}

/// Rejected pieces with their defects, by entries nobody withdrew.
fn rejected(job: &Job) -> BTreeMap<PieceId, &str> {
    let told = standing(&job.record).filter_map(|entry| match &entry.event {
        Event::Rejected { piece, defect } => Some((*piece, defect.as_str())),
        _ => None,
    });
    told.collect()
}
