//! The batch plan of the open batch.

use std::sync::Arc;

use super::Workbook;
use crate::app::page::Page;
use crate::calc::batch::build;
use crate::calc::night::night;
use crate::folder::taken_by_others;
use crate::texts::Texts;

impl Workbook {
    /// Is the plan looked at, or searched for?
    #[must_use]
    pub fn is_planning(&self) -> bool {
        let shown = self.view.page == Page::Flasks && self.view.unfolded.contains("plan-batch");
        shown || self.planner.progress().is_some()
    }

    /// Looks at what a plan is asked for now, and takes in what was found. True where a plan was.
    pub fn look_at_plan(&mut self) -> bool {
        self.planner.look((self.revision, self.looked), &self.view.plan, &self.computed, &self.runs, &self.setting);
        self.planner.take(&self.computed)
    }

    /// Begins to plan the batch.
    pub fn plan(&mut self) {
        self.look_at_plan();
        self.planner.begin();
        self.look_at_plan();
    }

    /// Begins to seek the shortest night of the chosen load.
    pub fn seek_night(&mut self) {
        let computed = &self.computed;
        let asked = self
            .view
            .burnout
            .and_then(|load| night(&computed.sound, &computed.sound_studio, &computed.shelves.job, &computed.report, &computed.book, load));
        if let Some(asked) = asked {
            self.nights.begin(asked);
        }
    }

    /// Begins to read the other jobs of the folder.
    pub fn read_folder(&mut self) {
        if let Some(folder) = self.folder().map(std::path::Path::to_path_buf) {
            self.folder_jobs.begin(folder, Arc::clone(&self.job), self.setting.at);
        }
    }

    /// Takes in what stands in the folder; a piece that another job took on as well is told. True where anything came.
    pub(super) fn take_index(&mut self) -> bool {
        let taken_on = self.job.lines().any(|(_, line)| line.exceptions.values().any(|own| own.from.is_some()));
        if taken_on && self.indexer.index().is_none() {
            self.index_folder();
        }
        if !self.indexer.take() {
            return false;
        }
        let taken = self.indexer.index().map(|index| taken_by_others(index, self.job.job_id)).unwrap_or_default();
        if self.runs.taken != taken {
            self.runs.taken = taken;
            if taken_on {
                self.recompute();
            }
        }
        true
    }

    /// Looks through the folder, where that was not done just now.
    pub fn index_folder(&mut self) {
        if let Some(folder) = self.folder().map(std::path::Path::to_path_buf) {
            self.indexer.look(&folder);
        }
    }

    /// Ends the search with the best plan it has.
    pub fn stop_plan(&mut self) {
        self.planner.stop();
    }

    /// Builds the trees and flasks of the last plan, in one step; nothing where it answers something else by now.
    pub fn build_plan(&mut self) {
        self.look_at_plan();
        let Some(found) = self.planner.found().filter(|_| !self.planner.is_stale()) else { return };
        let (rows, template) = (found.outcome.rows.clone(), found.template.clone());
        let last = self.job.flasks.len();
        self.edit(Texts::english().label("edit-plan-build"), move |job| build(job, &rows, &template));
        self.planner.forget();
        self.view.plan.kept.clear();
        self.view.flask = self.job.flasks.get(last).map(|flask| flask.id).or(self.view.flask);
        self.view.tree = self.job.flasks.get(last).and_then(|flask| flask.tree).or(self.view.tree);
    }
}
