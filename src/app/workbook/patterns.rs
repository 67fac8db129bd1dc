//! The pattern files of the open batch: read and compared beside the window, the chosen one looked at closely, their measures kept.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::Workbook;
use crate::app::computed::Computed;
use crate::app::inspect::{Inspection, Key, NoSprue};
use crate::app::patterns_run::Reading;
use crate::calc::PatternRun;
use crate::files::outside::Allowed;
use crate::files::pattern_runs::note_measures;
use crate::job::{Job, NoGo, PatternId};
use crate::paper::block::Raster;
use crate::quantity::Finite;
use crate::texts::Texts;

impl Workbook {
    /// Asks for every pattern file that was not looked at yet.
    pub(super) fn read_patterns(&mut self) {
        let folder = self.folder().map(Path::to_path_buf).unwrap_or_default();
        let read = self.reader.ask(&folder, &self.job, &mut self.runs);
        let compared = self.pairs.ask(&folder, &self.job, &mut self.runs);
        if read || compared {
            self.computed = Computed::new(&self.job, &self.studio, &self.runs, &self.setting);
        }
        self.heater.look(&self.computed.report, &mut self.runs);
    }

    /// Takes in what was read meanwhile. True where something came in.
    pub fn poll(&mut self) -> bool {
        let read = self.reader.take(&self.job, &mut self.runs);
        let compared = self.pairs.take();
        let heated = self.heater.take(&mut self.runs);
        if heated && !read && !compared {
            self.recompute();
        }
        if read || compared {
            let folder = self.folder().map(Path::to_path_buf).unwrap_or_default();
            self.pairs.ask(&folder, &self.job, &mut self.runs);
            self.looked += u64::from(read);
            self.recompute();
        }
        let sought = self.nights.take();
        let found = self.folder_jobs.take() | self.take_index();
        read || compared || heated || sought || found
    }

    /// Looks closely at the chosen pattern's file once it was measured, and takes in what was found. True where something was.
    pub fn inspect(&mut self) -> bool {
        match self.chosen_file() {
            Some((key, no_sprue)) => self.inspector.look_at(&key, &no_sprue),
            None => self.inspector.stop(),
        }
        self.inspector.take()
    }

    /// The chosen pattern's file with the content that was measured, and the balls on it where no sprue may stand.
    fn chosen_file(&self) -> Option<(Key, Vec<NoSprue>)> {
        let pattern = self.job.patterns.iter().find(|pattern| Some(pattern.id) == self.view.pattern)?;
        let Some(PatternRun::Measured(measure)) = self.runs.patterns.get(&pattern.id) else { return None };
        let file = pattern.file.as_ref()?;
        let path = self.folder().unwrap_or(Path::new("")).join(&file.path);
        let ball = |place: &NoGo| Some((place.at?.map(Finite::get), place.radius?.get()));
        Some((Key { path, hash: measure.hash.clone() }, file.no_go.iter().filter_map(ball).collect()))
    }

    /// What was found of the chosen pattern's file so far, and how far the looking is while it goes on.
    #[must_use]
    pub fn inspection(&self) -> Option<(Inspection, Option<f64>)> {
        let (key, _) = self.chosen_file()?;
        let found = self.inspector.of(&key.path, &key.hash).cloned().unwrap_or_default();
        let share = self.inspector.progress().filter(|_| !found.whole);
        Some((found, share))
    }

    /// How far the reading of pattern files is. None where nothing is being read.
    #[must_use]
    pub fn reading(&self) -> Option<Reading> {
        self.reader.progress()
    }

    /// Are the files of a pair being compared?
    #[must_use]
    pub fn is_comparing(&self) -> bool {
        self.pairs.is_running()
    }

    /// The pictures of the patterns, as far as their files were read.
    #[must_use]
    pub fn pictures(&self) -> BTreeMap<PatternId, Arc<Raster>> {
        self.reader.pictures(&self.job)
    }

    /// Stops the reading of pattern files; what rests on those not read says so.
    pub fn stop_reading(&mut self) {
        let why = Texts::english().label("reading-stopped");
        self.reader.stop(&why, &self.job, &mut self.runs);
        self.recompute();
    }

    /// Told where somebody is to be woken when a file was read.
    pub fn on_read(&mut self, wake: impl Fn() + Send + Sync + Clone + 'static) {
        self.inspector.on_found(wake.clone());
        self.pairs.on_found(wake.clone());
        self.arranger.on_found(wake.clone());
        self.planner.on_found(wake.clone());
        self.heater.on_found(wake.clone());
        self.nights.on_found(wake.clone());
        self.folder_jobs.on_found(wake.clone());
        self.indexer.on_found(wake.clone());
        self.reader.on_read(wake);
    }

    /// Looks at pattern files that were written or taken away since they were read.
    pub fn look_at_stale(&mut self) {
        if self.reader.is_stale() {
            self.look_again();
        }
    }

    /// Looks again for pattern files that were not there, could not be read, or changed since.
    pub fn look_again(&mut self) {
        self.reader.look_again();
        self.looked += 1;
        self.read_patterns();
    }

    /// Allows folders outside the batch's own to be read.
    pub fn allow(&mut self, allowed: &Allowed) {
        // A batch that has no folder yet names what its caster named.
        self.reader.allow(if self.batch.is_none() { &Allowed::Every } else { allowed });
        self.read_patterns();
    }

    /// Folders outside the batch's own whose files are not read before somebody allows it.
    #[must_use]
    pub fn apart(&self) -> BTreeSet<PathBuf> {
        self.reader.apart()
    }

    /// The names of files in a folder outside that are not read before somebody allows it.
    #[must_use]
    pub fn files_in(&self, folder: &Path) -> Vec<String> {
        self.reader.apart_in(folder)
    }

    /// Reads a file again that the batch names already.
    pub fn look_anew(&mut self, named: &Path) {
        self.reader.forget(named);
        self.looked += 1;
        self.read_patterns();
    }

    /// Takes a pattern's file as it is now: its measures are kept from here on.
    pub fn take_file(&mut self, id: PatternId) {
        let Some(PatternRun::Measured(measure)) = self.runs.patterns.get(&id) else { return };
        let (hash, kept) = (measure.hash.clone(), measure.kept());
        self.edit(Texts::english().label("edit-patterns-take-file"), move |job| {
            if let Some(file) = job.patterns.iter_mut().find(|pattern| pattern.id == id).and_then(|pattern| pattern.file.as_mut()) {
                (file.hash, file.kept) = (Some(hash), Some(kept));
            }
        });
    }

    /// Notes which content of each pattern file was measured and what it measured, where that is not noted yet: a file that changes later is
    /// found out by it, and until somebody looked at the new one the old measures count.
    pub(super) fn note_measures(&mut self) {
        let mut job = Job::clone(&self.job);
        note_measures(&mut job, &self.runs);
        if job != *self.job {
            self.job = Arc::new(job);
        }
    }
}
