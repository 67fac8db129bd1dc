//! Marks that the law of a country asks for: pieces that were finished and delivered without one, and finenesses that may not be sold there.

use std::collections::BTreeSet;

use super::finding::{self, Arg};
use super::pass::Pass;
use super::piece_weights::PieceWeights;
use crate::job::{Event, Job, Line, OutFor, PieceId, PieceStage, Place, standing};
use crate::stock::{Alloy, Element, MarkingLaw, MarkingSystem, Shelf};

/// What the law asks of a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MarkAsked {
    /// A mark must be struck before it is sold.
    Needed,
    /// It is light enough to go without.
    Exempt,
    /// Nobody weighed it yet.
    NotWeighed,
    /// No precious metal, or no law that asks.
    Nothing,
}

/// The law the studio sells under.
#[must_use]
pub fn law_of<'s>(studio: &crate::job::Studio, today: &'s Shelf) -> Option<&'s MarkingLaw> {
    today.get::<MarkingLaw>(studio.marking.as_ref()?.as_str())
}

/// What it asks of a piece of this metal that weighs so much, in g.
#[must_use]
pub fn asked(law: &MarkingLaw, metal: Option<Element>, grams: Option<f64>) -> MarkAsked {
    let Some(metal) = metal.filter(|metal| law.asks(*metal)) else { return MarkAsked::Nothing };
    match (law.exemption(metal), grams) {
        (None, _) => MarkAsked::Needed,
        (Some(_), None) => MarkAsked::NotWeighed,
        (Some(light), Some(grams)) if grams < light.below_g.value || (light.up_to && grams <= light.below_g.value) => MarkAsked::Exempt,
        _ => MarkAsked::Needed,
    }
}

/// Pieces that came back from where marks are struck, and did not fail there.
#[must_use]
pub fn marked(job: &Job) -> BTreeSet<PieceId> {
    let (mut for_marks, mut marked) = (BTreeSet::new(), BTreeSet::new());
    for entry in standing(&job.record) {
        match &entry.event {
            Event::SentOut { sent, .. } if sent.what_for == OutFor::Hallmark => {
                for_marks.insert(entry.id);
            }
            Event::CameBack { sent, pieces, back } if for_marks.contains(sent) => {
                marked.extend(pieces.iter().filter(|piece| !back.failed.contains(piece)));
            }
            _ => {}
        }
    }
    marked
}

impl Pass<'_> {
    /// Holds the batch against the law of the country the studio sells in.
    pub(super) fn marking(&mut self, today: &Shelf) {
        let Some(law) = law_of(self.studio, today) else { return };
        let job = self.job;
        for (_, line) in job.lines() {
            let alloy = line.alloy.as_ref().and_then(|id| self.shelf.get::<Alloy>(id.as_str()));
            let Some(own) = alloy.and_then(|alloy| alloy.fineness) else { continue };
            let mark = line.mark_permille.map_or(own.permille.get(), |mark| mark.get());
            if !law.is_legal(own.metal, mark) {
                let args = vec![Arg::Text(permille(mark)), Arg::Text(law.name.clone())];
                self.find(&finding::MARK_NOT_LEGAL, Place::Line(line.id), args);
            }
        }
        if law.system == MarkingSystem::Compulsory {
            self.unmarked(law);
        }
    }

    /// What is cast for another maker leaves as it was cut off: only what was finished here is counted.
    fn unmarked(&mut self, law: &MarkingLaw) {
        let job = self.job;
        let finished: BTreeSet<PieceId> = standing(&job.record)
            .flat_map(|entry| match &entry.event {
                Event::Reached { pieces, stage: PieceStage::Finished } => pieces.clone(),
                Event::PieceWeighed { piece, finished: true, .. } => vec![*piece],
                _ => Vec::new(),
            })
            .collect();
        if finished.is_empty() {
            return;
        }
        let (weights, marked, stages) = (PieceWeights::of(job), marked(job), crate::job::stages(job));
        for (_, line) in job.lines() {
            let metal = self.metal_of_line(line);
            let sold = |number: &u32| {
                let piece = PieceId { line: line.id, number: *number };
                finished.contains(&piece)
                    && !marked.contains(&piece)
                    && !weights.is_rejected(piece)
                    && stages.get(&piece) == Some(&PieceStage::Delivered)
                    && asked(law, metal, weights.now(piece).map(crate::quantity::Grams::to_f64)) == MarkAsked::Needed
            };
            let count = (1..=line.quantity).filter(sold).count() as u64;
            if count > 0 {
                let args = vec![Arg::Count(count), Arg::Text(line.design.clone()), Arg::Text(law.name.clone())];
                self.find(&finding::UNMARKED, Place::Line(line.id), args);
            }
        }
    }

    fn metal_of_line(&self, line: &Line) -> Option<Element> {
        let alloy = self.shelf.get::<Alloy>(line.alloy.as_ref()?.as_str())?;
        alloy.fineness.map(|mark| mark.metal)
    }
}

/// `916` or `958.4`.
fn permille(mark: f64) -> String {
    format!("{mark}")
}
