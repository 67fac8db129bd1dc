//! How far every piece is, by the record.

use std::collections::BTreeMap;

use super::record::standing;
use super::{Event, FlaskId, Hung, Job, Line, LineId, PieceId, PieceStage, TreeId};

/// How far each piece is: the furthest stage that an entry of the record says, by entries nobody withdrew. A piece of which nothing is told
/// is not among them.
///
/// What is told of a tree or a flask is told of the pieces that hang there.
#[must_use]
pub fn stages(job: &Job) -> BTreeMap<PieceId, PieceStage> {
    let lines: BTreeMap<LineId, &Line> = job.lines().map(|(_, line)| (line.id, line)).collect();
    let mut stages = BTreeMap::new();
    let mut reach = |piece: PieceId, stage: PieceStage| {
        let furthest = stages.entry(piece).or_insert(stage);
        *furthest = stage.max(*furthest);
    };
    for entry in standing(&job.record) {
        match &entry.event {
            Event::Reached { pieces, stage } => pieces.iter().for_each(|piece| reach(*piece, *stage)),
            Event::TreeWeighed { tree, .. } => on_tree(job, Some(*tree), &lines).for_each(|piece| reach(piece, PieceStage::OnTree)),
            Event::Invested { flask, .. } => in_flask(job, *flask, &lines).for_each(|piece| reach(piece, PieceStage::Invested)),
            Event::Poured { flask, .. } => in_flask(job, *flask, &lines).for_each(|piece| reach(piece, PieceStage::Cast)),
            Event::PieceWeighed { piece, finished, .. } => {
                reach(*piece, if *finished { PieceStage::Finished } else { PieceStage::Weighed });
            }
            // A kiln that was looked at does not say whether the load went in or came out.
            Event::Remark
            | Event::Pattern { .. }
            | Event::Kiln { .. }
            | Event::Metal { .. }
            | Event::Rejected { .. }
            | Event::Withdrawn { .. } => {}
        }
    }
    stages
}

fn in_flask<'j>(job: &'j Job, id: FlaskId, lines: &'j BTreeMap<LineId, &'j Line>) -> impl Iterator<Item = PieceId> + 'j {
    let tree = job.flasks.iter().find(|flask| flask.id == id).and_then(|flask| flask.tree);
    on_tree(job, tree, lines)
}

/// The pieces on a tree; cancelled ones never hang.
fn on_tree<'j>(job: &'j Job, id: Option<TreeId>, lines: &'j BTreeMap<LineId, &'j Line>) -> impl Iterator<Item = PieceId> + 'j {
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
