//! What a plan still lacks, says twice, or plans for nothing.

use super::finding::{self, Arg, KINDS};
use super::flask::FlaskFigures;
use super::pass::Pass;
use crate::job::{Burnout, Flask, Job, Melt, Place, Tree};
use crate::stock::EntryId;

impl<'a> Pass<'a> {
    pub(super) fn wanting(&mut self, flasks: &[FlaskFigures]) {
        let job = self.job;
        for flask in &job.flasks {
            self.unfinished(Place::Flask(flask.id), &flask_lacks(flask, job));
        }
        for load in &job.burnouts {
            self.unfinished(Place::Burnout(load.id), &load_lacks(load));
            if job.flasks.iter().all(|flask| flask.burnout != Some(load.id)) {
                self.find(&finding::LOAD_EMPTY, Place::Burnout(load.id), Vec::new());
            }
        }
        for melt in &job.melts {
            self.melt_wanting(melt);
        }
        for flask in flasks {
            if let Some(tree) = job.trees.iter().find(|tree| Some(tree.id) == flask.tree) {
                self.parts_not_weighed(tree, &flask.materials);
            }
        }
        self.scratches();
        self.acceptances();
    }

    fn unfinished(&mut self, place: Place, lacks: &[(&'static str, bool)]) {
        let lacks: Vec<&'static str> = lacks.iter().filter(|(_, lacks)| *lacks).map(|(what, _)| *what).collect();
        if !lacks.is_empty() {
            self.find(&finding::UNFINISHED, place, vec![Arg::Words(lacks)]);
        }
    }

    fn melt_wanting(&mut self, melt: &Melt) {
        let place = Place::Melt(melt.id);
        if self.job.flasks.iter().any(|flask| flask.melt == Some(melt.id)) {
            self.unfinished(place, &[("want-crucible", melt.crucible.is_none())]);
        } else {
            self.find(&finding::MELT_FEEDS_NOTHING, place, Vec::new());
        }
    }

    /// On a weighed tree every material counts by the scale alone: one that was not weighed is metal that nobody charges.
    fn parts_not_weighed(&mut self, tree: &Tree, hung: &[EntryId]) {
        // A part without a material may be the very one.
        if tree.weighed.is_empty() || tree.weighed.iter().any(|part| part.material.is_none()) {
            return;
        }
        let main = tree.main_sprue.iter().filter_map(|main| main.material.as_ref());
        let runs = tree.sprues.iter().filter(|run| run.count > 0).filter_map(|run| run.material.as_ref());
        let mut missing: Vec<&EntryId> = main.chain(runs).chain(hung).collect();
        missing.sort_unstable();
        missing.dedup();
        missing.retain(|material| tree.weighed.iter().all(|part| part.material.as_ref() != Some(*material)));
        for material in missing {
            let name = Arg::Text(self.name_of(material));
            self.find(&finding::PART_NOT_WEIGHED, Place::Tree(tree.id), vec![name]);
        }
    }

    /// Out of the kiln a flask is known by its face alone.
    fn scratches(&mut self) {
        let job = self.job;
        for (index, flask) in job.flasks.iter().enumerate() {
            let scratch = flask.scratch.trim();
            if !scratch.is_empty() && job.flasks.iter().take(index).any(|other| other.scratch.trim() == scratch) {
                self.find(&finding::SCRATCH_TWICE, Place::Flask(flask.id), vec![Arg::Text(scratch.to_owned())]);
            }
        }
    }

    fn acceptances(&mut self) {
        let job = self.job;
        for accepted in &job.accepted {
            if KINDS.iter().all(|kind| kind.key != accepted.finding) {
                self.find(&finding::ACCEPTANCE_UNKNOWN, accepted.place, vec![Arg::Text(accepted.finding.clone())]);
            }
        }
    }
}

fn flask_lacks(flask: &Flask, job: &Job) -> Vec<(&'static str, bool)> {
    let tree = flask.tree.and_then(|id| job.trees.iter().find(|tree| tree.id == id));
    vec![
        ("want-vessel", flask.vessel.is_none()),
        ("want-tree", tree.is_none()),
        ("want-base", tree.is_some_and(|tree| tree.base.is_none())),
        ("want-powder", flask.powder.is_none()),
        ("want-load", flask.burnout.is_none()),
    ]
}

fn load_lacks(load: &Burnout) -> Vec<(&'static str, bool)> {
    vec![("want-kiln", load.kiln.is_none()), ("want-programme", load.programme.is_none()), ("want-pour-time", load.pour_at.is_none())]
}
