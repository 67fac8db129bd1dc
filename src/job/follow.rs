//! Where every piece of a job is, since when, and what became of it: read off the record, never stored.

use std::collections::BTreeMap;

use jiff::civil::{Date, DateTime};

use super::record::standing;
use super::stage::{by_id, on_tree, says, stages};
use super::{Event, FlaskId, From, Job, OutFor, PieceException, PieceId, PieceStage, RecordId, TreeId};

/// More pieces of a job than this are not followed one by one.
pub const MOST_FOLLOWED: usize = 20_000;

/// A piece that is out of the house and not back.
#[derive(Debug, Clone, PartialEq)]
pub struct IsOut {
    /// The entry that sent it out.
    pub sent: RecordId,
    /// What for.
    pub what_for: OutFor,
    /// To whom, by letter code or a word of the studio's own.
    pub to: String,
    /// When it is promised back.
    pub promised: Option<Date>,
    /// When it went.
    pub at: Option<DateTime>,
}

/// A piece as the record tells of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Followed {
    /// Which.
    pub piece: PieceId,
    /// How far it is; nothing where nothing is told.
    pub stage: Option<PieceStage>,
    /// When it came there, and by whose hands; of the first entry that says so.
    pub since: Option<DateTime>,
    /// By whose hands.
    pub hands: String,
    /// It was rejected: the defect, by its key or in words.
    pub rejected: Option<String>,
    /// The piece of this job that is made in its stead.
    pub remade_by: Option<PieceId>,
    /// The piece in whose stead it is made.
    pub remake_of: Option<PieceId>,
    /// Where it was taken on from.
    pub from: Option<From>,
    /// Out of the house now.
    pub out: Option<IsOut>,
    /// It failed where it was sent, and was not sent out since: what it was sent for.
    pub failed: Option<OutFor>,
    /// The tree it hangs on.
    pub tree: Option<TreeId>,
    /// The flask it is cast in.
    pub flask: Option<FlaskId>,
}

impl Followed {
    /// Nothing more is to be done with it: the client has it, or it was rejected.
    #[must_use]
    pub fn is_settled(&self) -> bool {
        self.rejected.is_some() || self.stage == Some(PieceStage::Delivered)
    }
}

/// Every piece that is wanted, by line and number; the first [`MOST_FOLLOWED`] of them.
#[must_use]
pub fn follow(job: &Job) -> Vec<Followed> {
    let stages = stages(job);
    let told = Told::of(job, &stages);
    let places = places(job);
    let remade: BTreeMap<PieceId, PieceId> = remakes(job).collect();
    let mut all = Vec::new();
    for (_, line) in job.lines() {
        for number in 1..=line.quantity {
            let piece = PieceId { line: line.id, number };
            let own = line.exceptions.get(&number);
            if own.is_some_and(|own| own.cancelled) {
                continue;
            }
            if all.len() >= MOST_FOLLOWED {
                return all;
            }
            let (since, hands) = told.since.get(&piece).cloned().unwrap_or_default();
            let (tree, flask) = places.get(&piece).copied().unwrap_or_default();
            all.push(Followed {
                piece,
                stage: stages.get(&piece).copied(),
                since,
                hands,
                rejected: told.rejected.get(&piece).cloned(),
                remade_by: remade.get(&piece).copied(),
                remake_of: own.and_then(|own| own.remake_of),
                from: own.and_then(|own| own.from),
                out: told.out.get(&piece).cloned(),
                failed: told.failed.get(&piece).copied(),
                tree,
                flask,
            });
        }
    }
    all
}

/// What single entries tell of pieces.
#[derive(Default)]
struct Told {
    since: BTreeMap<PieceId, (Option<DateTime>, String)>,
    rejected: BTreeMap<PieceId, String>,
    out: BTreeMap<PieceId, IsOut>,
    failed: BTreeMap<PieceId, OutFor>,
}

impl Told {
    fn of(job: &Job, stages: &BTreeMap<PieceId, PieceStage>) -> Self {
        let lines = by_id(job);
        let mut told = Self::default();
        for entry in standing(&job.record) {
            for (piece, stage) in says(job, entry, &lines) {
                // The first entry that brings it where it is.
                if stages.get(&piece) == Some(&stage) {
                    told.since.entry(piece).or_insert_with(|| (entry.at, entry.hands.clone()));
                }
            }
            match &entry.event {
                Event::Rejected { piece, defect } => {
                    told.rejected.insert(*piece, defect.clone());
                }
                Event::SentOut { pieces, sent } => {
                    let out = IsOut { sent: entry.id, what_for: sent.what_for, to: sent.to.clone(), promised: sent.promised, at: entry.at };
                    told.failed.retain(|piece, _| !pieces.contains(piece));
                    told.out.extend(pieces.iter().map(|piece| (*piece, out.clone())));
                }
                Event::CameBack { pieces, back, .. } => {
                    let what_for = |piece: &PieceId| Some((*piece, told.out.get(piece)?.what_for));
                    let failed: Vec<_> = back.failed.iter().filter_map(what_for).collect();
                    told.failed.extend(failed);
                    told.out.retain(|piece, _| !pieces.contains(piece));
                }
                _ => {}
            }
        }
        told
    }
}

/// Tree and flask of every piece that hangs.
fn places(job: &Job) -> BTreeMap<PieceId, (Option<TreeId>, Option<FlaskId>)> {
    let lines = by_id(job);
    let mut places = BTreeMap::new();
    for tree in &job.trees {
        let flask = job.flasks.iter().find(|flask| flask.tree == Some(tree.id)).map(|flask| flask.id);
        for piece in on_tree(job, Some(tree.id), &lines) {
            places.insert(piece, (Some(tree.id), flask));
        }
    }
    places
}

/// Rejected piece and the one made in its stead.
fn remakes(job: &Job) -> impl Iterator<Item = (PieceId, PieceId)> + '_ {
    job.lines().flat_map(|(_, line)| {
        let made = |(number, own): (&u32, &PieceException)| {
            let piece = PieceId { line: line.id, number: *number };
            (!own.cancelled).then_some((own.remake_of?, piece))
        };
        line.exceptions.iter().filter_map(made)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{CameBack, Entry, Line, LineId, Order, SentOut};

    fn job(events: Vec<Event>) -> Job {
        let line = Line { id: LineId(7), quantity: 2, ..Line::default() };
        Job {
            orders: vec![Order { lines: vec![line], ..Order::default() }],
            record: (1..).zip(events).map(|(id, event)| Entry { id: RecordId(id), event, ..Entry::default() }).collect(),
            ..Job::default()
        }
    }

    #[test]
    fn what_failed_outside_is_told_until_it_goes_out_again() {
        let piece = |number| PieceId { line: LineId(7), number };
        let sent =
            || Event::SentOut { pieces: vec![piece(1), piece(2)], sent: SentOut { what_for: OutFor::Setting, ..SentOut::default() } };
        let back = Event::CameBack {
            sent: RecordId(1),
            pieces: vec![piece(1), piece(2)],
            back: CameBack { failed: vec![piece(2)], ..CameBack::default() },
        };
        let failed = |job: &Job| follow(job).into_iter().map(|one| one.failed).collect::<Vec<_>>();
        assert_eq!(failed(&job(vec![sent(), back.clone()])), [None, Some(OutFor::Setting)]);
        assert_eq!(failed(&job(vec![sent(), back, sent()])), [None, None]);
    }

    #[test]
    fn more_pieces_than_anybody_follows_are_cut_off() {
        let mut job = job(Vec::new());
        job.orders[0].lines[0].quantity = u32::MAX;
        assert_eq!(follow(&job).len(), MOST_FOLLOWED);
    }
}
