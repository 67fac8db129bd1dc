//! The plan of a flask as it stands at a moment that cannot be taken back: invested, or poured.

use std::collections::BTreeSet;

use super::book::{Book, Id, Origin};
use super::{Report, Shelves};
use crate::job::{FlaskId, Frozen, FrozenFigure, Place};
use crate::quantity::Finite;

/// Every figure of a flask, its tree, its kiln load and its melt, with all they rest on (typed in, read from the shelf, defaults), and the
/// hashes of the shelf entries used. `None` where the job has no such flask.
#[must_use]
pub fn plan_of(flask: FlaskId, report: &Report, book: &Book, shelves: &Shelves) -> Option<Frozen> {
    let figures = report.flasks.iter().find(|figures| figures.id == flask)?;
    let melts: Vec<Place> = report.melts.iter().filter(|melt| melt.flasks.contains(&flask)).map(|melt| melt.place).collect();
    let belongs = |place: Place| match place {
        Place::Flask(id) | Place::Mix(id, _) => id == flask,
        Place::Tree(id) | Place::TreeRow(id, _) => Some(id) == figures.tree,
        Place::Burnout(id) | Place::Stage(id, _) => Some(id) == figures.burnout,
        place => melts.contains(&place),
    };
    let mut open: Vec<Id> = book.figures().filter(|figure| belongs(figure.place)).map(|figure| figure.id).collect();
    let mut kept: BTreeSet<Id> = open.iter().copied().collect();
    while let Some(id) = open.pop() {
        open.extend(book.figure(id).terms.iter().copied().filter(|term| kept.insert(*term)));
    }
    let mut entries = BTreeSet::new();
    let mut frozen = Vec::new();
    for id in kept {
        let line = book.figure(id);
        if let Origin::Shelf(_, index) = line.origin
            && let Some(term) = book.shelf_term(index)
        {
            entries.insert(term.entry.clone());
        }
        if let Some(value) = line.value.number().and_then(Finite::new) {
            frozen.push(FrozenFigure { rule: line.origin.key().to_owned(), place: line.place, value });
        }
    }
    let shelf = entries.iter().filter_map(|id| Some(format!("{id} {}", shelves.job.hash_of(id.as_str())?))).collect();
    Some(Frozen { figures: frozen, shelf })
}
