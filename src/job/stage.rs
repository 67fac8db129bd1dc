//! How far every piece is, by the record.

use std::collections::{BTreeMap, BTreeSet};

use super::record::standing;
use super::{BurnoutId, Entry, Event, FlaskId, Hung, Job, KilnDid, Line, LineId, PieceId, PieceStage, TreeId};

/// How far each piece is: the furthest stage that an entry of the record says, by entries nobody withdrew. A piece of which nothing is told
/// is not among them.
///
/// What is told of a tree, a flask or a kiln load is told of the pieces that hang there. A piece that was sent out is out until it comes back,
/// and then as far as it was before.
#[must_use]
pub fn stages(job: &Job) -> BTreeMap<PieceId, PieceStage> {
    let lines = by_id(job);
    let mut stages = BTreeMap::new();
    for entry in standing(&job.record) {
        for (piece, stage) in says(job, entry, &lines) {
            let furthest = stages.entry(piece).or_insert(stage);
            *furthest = stage.max(*furthest);
        }
    }
    for piece in still_out(job) {
        let stage = stages.entry(piece).or_insert(PieceStage::Out);
        *stage = PieceStage::Out.max(*stage);
    }
    stages
}

/// Every line by its id.
pub(super) fn by_id(job: &Job) -> BTreeMap<LineId, &Line> {
    job.lines().map(|(_, line)| (line.id, line)).collect()
}

/// What an entry says of how far pieces are, but for those that are out of the house.
pub(super) fn says(job: &Job, entry: &Entry, lines: &BTreeMap<LineId, &Line>) -> Vec<(PieceId, PieceStage)> {
    let (pieces, stage): (Vec<PieceId>, PieceStage) = match &entry.event {
        Event::Reached { pieces, stage } => (pieces.clone(), *stage),
        Event::TreeWeighed { tree, .. } => (on_tree(job, Some(*tree), lines).collect(), PieceStage::OnTree),
        Event::Invested { flask, .. } => (in_flask(job, *flask, lines).collect(), PieceStage::Invested),
        Event::Kiln { burnout, did: KilnDid::CameOut, .. } => (in_load(job, *burnout, lines).collect(), PieceStage::BurntOut),
        Event::Poured { flask, .. } => (in_flask(job, *flask, lines).collect(), PieceStage::Cast),
        Event::PieceWeighed { piece, finished, .. } => (vec![*piece], if *finished { PieceStage::Finished } else { PieceStage::Weighed }),
        // A kiln that was looked at, or loaded, does not say that anything is burnt out.
        Event::Remark
        | Event::Pattern { .. }
        | Event::Kiln { .. }
        | Event::Metal { .. }
        | Event::Measured { .. }
        | Event::Reworked { .. }
        | Event::HandedBack { .. }
        | Event::Rejected { .. }
        | Event::SentOut { .. }
        | Event::Timed { .. }
        | Event::CameBack { .. }
        | Event::Withdrawn { .. } => (Vec::new(), PieceStage::Made),
    };
    pieces.into_iter().map(|piece| (piece, stage)).collect()
}

/// Pieces that were sent out and have not come back.
fn still_out(job: &Job) -> BTreeSet<PieceId> {
    let mut out = BTreeSet::new();
    for entry in standing(&job.record) {
        match &entry.event {
            Event::SentOut { pieces, .. } => out.extend(pieces.iter().copied()),
            Event::CameBack { pieces, .. } => out.retain(|piece| !pieces.contains(piece)),
            _ => {}
        }
    }
    out
}

/// The pieces in a flask; cancelled ones are in none.
pub fn pieces_in(job: &Job, flask: FlaskId) -> impl Iterator<Item = PieceId> {
    let lines = by_id(job);
    in_flask(job, flask, &lines).collect::<Vec<_>>().into_iter()
}

/// The pieces in the flasks of a kiln load.
fn in_load<'j>(job: &'j Job, id: BurnoutId, lines: &'j BTreeMap<LineId, &'j Line>) -> impl Iterator<Item = PieceId> + 'j {
    let flasks = job.flasks.iter().filter(move |flask| flask.burnout == Some(id));
    flasks.flat_map(move |flask| on_tree(job, flask.tree, lines))
}

fn in_flask<'j>(job: &'j Job, id: FlaskId, lines: &'j BTreeMap<LineId, &'j Line>) -> impl Iterator<Item = PieceId> + 'j {
    let tree = job.flasks.iter().find(|flask| flask.id == id).and_then(|flask| flask.tree);
    on_tree(job, tree, lines)
}

/// The pieces on a tree; cancelled ones never hang.
pub(super) fn on_tree<'j>(job: &'j Job, id: Option<TreeId>, lines: &'j BTreeMap<LineId, &'j Line>) -> impl Iterator<Item = PieceId> + 'j {
    let rows = job.trees.iter().filter(move |tree| Some(tree.id) == id).flat_map(|tree| &tree.pieces);
    rows.filter_map(|hung| Some((hung, *lines.get(&hung.line)?))).flat_map(|(hung, line)| hung.pieces(line))
}

impl Hung {
    /// The pieces of its line that hang in this row: the named ones, or all of them. Cancelled ones never hang.
    pub fn pieces<'l>(&'l self, line: &'l Line) -> impl Iterator<Item = PieceId> + 'l {
        let last = if self.numbers.is_empty() { line.quantity } else { 0 };
        let wanted = |number: &u32| !line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
        self.numbers.iter().copied().chain(1..=last).filter(wanted).map(|number| PieceId { line: line.id, number })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Entry, Flask, Order, PieceException, RecordId, Tree};

    fn job(events: Vec<Event>) -> Job {
        let cancelled = PieceException { cancelled: true, ..PieceException::default() };
        let line = Line { id: LineId(7), quantity: 4, exceptions: [(2, cancelled)].into(), ..Line::default() };
        let tree = Tree { id: TreeId(1), pieces: vec![Hung { line: LineId(7), ..Hung::default() }], ..Tree::default() };
        let record = (1..).zip(events).map(|(id, event)| Entry { id: RecordId(id), event, ..Entry::default() });
        Job {
            orders: vec![Order { lines: vec![line], ..Order::default() }],
            trees: vec![tree],
            flasks: vec![Flask { id: FlaskId(3), tree: Some(TreeId(1)), ..Flask::default() }],
            record: record.collect(),
            ..Job::default()
        }
    }

    #[test]
    fn a_load_that_came_out_is_burnt_out_and_one_that_went_in_is_not() {
        let mut job = job(vec![Event::Kiln { burnout: BurnoutId(5), temperature_c: None, did: KilnDid::WentIn }]);
        job.flasks[0].burnout = Some(BurnoutId(5));
        assert_eq!(stages(&job).len(), 0);
        job.record[0].event = Event::Kiln { burnout: BurnoutId(5), temperature_c: None, did: KilnDid::CameOut };
        assert_eq!(stages(&job).into_values().collect::<Vec<_>>(), [PieceStage::BurntOut; 3]);
    }

    #[test]
    fn what_is_out_is_out_until_it_comes_back() {
        let piece = PieceId { line: LineId(7), number: 1 };
        let finished = Event::Reached { pieces: vec![piece], stage: PieceStage::Finished };
        let sent = Event::SentOut { pieces: vec![piece], sent: Default::default() };
        let back = Event::CameBack { sent: RecordId(2), pieces: vec![piece], back: Default::default() };
        assert_eq!(of(vec![finished.clone(), sent.clone()]), [("7.1".to_owned(), PieceStage::Out)]);
        assert_eq!(of(vec![finished.clone(), sent.clone(), back.clone()]), [("7.1".to_owned(), PieceStage::Finished)]);
        let delivered = Event::Reached { pieces: vec![piece], stage: PieceStage::Delivered };
        assert_eq!(of(vec![sent.clone(), delivered]), [("7.1".to_owned(), PieceStage::Delivered)], "straight to the client");
        let withdrawn = Event::Withdrawn { entry: RecordId(3), reason: "not yet".to_owned() };
        assert_eq!(of(vec![finished, sent, back, withdrawn]), [("7.1".to_owned(), PieceStage::Out)]);
    }

    fn of(events: Vec<Event>) -> Vec<(String, PieceStage)> {
        stages(&job(events)).into_iter().map(|(piece, stage)| (piece.to_string(), stage)).collect()
    }

    #[test]
    fn what_is_told_of_a_flask_is_told_of_its_pieces_but_not_of_cancelled_ones() {
        let poured = Event::Poured { flask: FlaskId(3), plan: Default::default(), done: Default::default() };
        let cast = |code: &str| (code.to_owned(), PieceStage::Cast);
        assert_eq!(of(vec![poured]), [cast("7.1"), cast("7.3"), cast("7.4")]);
        assert_eq!(of(vec![Event::Remark, Event::Poured { flask: FlaskId(9), plan: Default::default(), done: Default::default() }]), []);
    }

    #[test]
    fn the_furthest_stage_counts_and_what_was_withdrawn_does_not() {
        let piece = PieceId { line: LineId(7), number: 1 };
        let reached = |stage| Event::Reached { pieces: vec![piece], stage };
        let events = vec![reached(PieceStage::Delivered), reached(PieceStage::Finished), reached(PieceStage::Made)];
        assert_eq!(of(events.clone()), [("7.1".to_owned(), PieceStage::Delivered)]);
        let withdrawn = Event::Withdrawn { entry: RecordId(1), reason: "the wrong ring".to_owned() };
        assert_eq!(of([events, vec![withdrawn]].concat()), [("7.1".to_owned(), PieceStage::Finished)]);
    }
}
