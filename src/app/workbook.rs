//! The open batch: its documents, what follows from them, what was done to them, and where the caster is looking.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use jiff::civil::Date;
use jiff::tz::TimeZone;

use super::computed::Computed;
use super::history::{History, Moment};
use super::inspect::{Inspection, Inspector, Key, NoSprue};
use super::paper_desk::Shown;
use super::patterns_run::{PatternReader, Reading};
use super::view::View;
use crate::calc::{PatternRun, Runs, Setting};
use crate::files::batch::{Batch, OpenError, SaveBatchError};
use crate::files::disk::{Disk, folder_of};
use crate::files::outside::Allowed;
use crate::files::pattern_runs::note_measures;
use crate::job::carry::take_copies;
use crate::job::{Job, JobId, NoGo, Studio};
use crate::paper::block::Raster;
use crate::quantity::Finite;
use crate::texts::Texts;

/// One open batch.
pub struct Workbook {
    /// The job.
    pub job: Arc<Job>,
    /// The studio.
    pub studio: Arc<Studio>,
    /// As it lies on the disk; none where it was never saved.
    pub batch: Option<Batch>,
    /// As it was opened or last saved.
    pub saved: Moment,
    /// What follows from the documents.
    pub computed: Computed,
    /// What was measured of pattern files.
    pub runs: Runs,
    /// Day and zone.
    pub setting: Setting,
    /// What can be taken back.
    pub history: History,
    /// Where the caster is looking.
    pub view: View,
    /// Grows with every change.
    pub revision: u64,
    /// Grows whenever a pattern file was read or is looked for again.
    pub looked: u64,
    /// The paper that was looked at last.
    pub shown: Option<Shown>,
    reader: PatternReader,
    inspector: Inspector,
}

impl Workbook {
    /// An empty batch in an empty studio.
    #[must_use]
    pub fn empty(at: Date) -> Self {
        let job = Job { job_id: JobId::random().unwrap_or_default(), made: Some(at), ..Job::default() };
        Self::of(Arc::new(job), Arc::new(Studio::default()), None, at)
    }

    /// A new batch in the studio of a folder, not saved yet.
    #[must_use]
    pub fn new_in(studio: Arc<Studio>, at: Date) -> Self {
        let job = Job { job_id: JobId::random().unwrap_or_default(), made: Some(at), ..Job::default() };
        Self::of(Arc::new(job), studio, None, at)
    }

    /// A batch from its file.
    ///
    /// # Errors
    /// [`OpenError`] where it cannot be read.
    pub fn open(disk: &dyn Disk, path: &Path, at: Date) -> Result<Self, OpenError> {
        let batch = Batch::open(disk, path)?;
        let (job, studio) = (Arc::new(batch.job.clone()), Arc::new(batch.studio.clone()));
        Ok(Self::of(job, studio, Some(batch), at))
    }

    fn of(job: Arc<Job>, studio: Arc<Studio>, batch: Option<Batch>, at: Date) -> Self {
        let setting = Setting { at, zone: zone_of(&job, &studio) };
        let runs = Runs::default();
        let computed = Computed::new(&job, &studio, &runs, &setting);
        let saved = Moment { job: Arc::clone(&job), studio: Arc::clone(&studio) };
        let view = View::for_job(&job);
        let mut workbook = Self {
            job,
            studio,
            batch,
            saved,
            computed,
            runs,
            setting,
            history: History::default(),
            view,
            revision: 0,
            looked: 0,
            shown: None,
            reader: PatternReader::default(),
            inspector: Inspector::default(),
        };
        workbook.read_patterns();
        workbook
    }

    /// Both documents now.
    #[must_use]
    pub fn now(&self) -> Moment {
        Moment { job: Arc::clone(&self.job), studio: Arc::clone(&self.studio) }
    }

    /// Does anything stand here that is not on the disk?
    #[must_use]
    pub fn is_changed(&self) -> bool {
        self.job != self.saved.job || self.studio != self.saved.studio
    }

    /// What the batch is called.
    #[must_use]
    pub fn title(&self) -> String {
        let file = || self.path().and_then(|path| path.file_stem()).map(|stem| stem.to_string_lossy().into_owned());
        if self.job.name.trim().is_empty() { file().unwrap_or_default() } else { self.job.name.trim().to_owned() }
    }

    /// Its file.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.batch.as_ref().map(|batch| batch.path.as_path())
    }

    /// The folder that pattern paths are relative to.
    #[must_use]
    pub fn folder(&self) -> Option<&Path> {
        self.path().map(folder_of)
    }

    /// Changes the job under a name; nothing that changes nothing is a step.
    pub fn edit(&mut self, name: impl Into<String>, change: impl FnOnce(&mut Job)) {
        self.edit_both(name, |job, _| change(job));
    }

    /// Changes the studio under a name.
    pub fn edit_studio(&mut self, name: impl Into<String>, change: impl FnOnce(&mut Studio)) {
        self.edit_both(name, |_, studio| change(studio));
    }

    /// Changes both documents in one step.
    pub fn edit_both(&mut self, name: impl Into<String>, change: impl FnOnce(&mut Job, &mut Studio)) {
        let (mut job, mut studio) = (Job::clone(&self.job), Studio::clone(&self.studio));
        change(&mut job, &mut studio);
        let (other_job, other_studio) = (job != *self.job, studio != *self.studio);
        if !other_job && !other_studio {
            return;
        }
        let before = self.now();
        if other_job {
            // The job keeps what it took off the shelf, as it was when it took it.
            take_copies(&mut job, &self.computed.shelves.today);
            self.job = Arc::new(job);
        }
        if other_studio {
            self.studio = Arc::new(studio);
        }
        self.history.did(name.into(), before);
        self.changed();
    }

    /// Takes the last change back.
    pub fn undo(&mut self) {
        if let Some(moment) = self.history.undo(self.now()) {
            self.go_to(moment);
        }
    }

    /// Does again what was taken back last.
    pub fn redo(&mut self) {
        if let Some(moment) = self.history.redo(self.now()) {
            self.go_to(moment);
        }
    }

    fn go_to(&mut self, moment: Moment) {
        let id = self.job.job_id;
        (self.job, self.studio) = (moment.job, moment.studio);
        if self.job.job_id != id {
            // A batch that goes on under another name keeps its own id, however far it is taken back.
            Arc::make_mut(&mut self.job).job_id = id;
        }
        self.changed();
    }

    fn changed(&mut self) {
        self.revision += 1;
        self.setting.zone = zone_of(&self.job, &self.studio);
        self.read_patterns();
        self.recompute();
    }

    fn recompute(&mut self) {
        self.computed = Computed::new(&self.job, &self.studio, &self.runs, &self.setting);
        self.view.settle(&self.job);
    }

    /// Asks for every pattern file that was not looked at yet.
    fn read_patterns(&mut self) {
        let folder = self.folder().map(Path::to_path_buf).unwrap_or_default();
        if self.reader.ask(&folder, &self.job, &mut self.runs) {
            self.computed = Computed::new(&self.job, &self.studio, &self.runs, &self.setting);
        }
    }

    /// Takes in what was read meanwhile. True where something came in.
    pub fn poll(&mut self) -> bool {
        let came = self.reader.take(&self.job, &mut self.runs);
        if came {
            self.looked += 1;
            self.recompute();
        }
        came
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

    /// The pictures of the patterns, as far as their files were read.
    #[must_use]
    pub fn pictures(&self) -> std::collections::BTreeMap<crate::job::PatternId, Arc<Raster>> {
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
    pub fn apart(&self) -> std::collections::BTreeSet<PathBuf> {
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
    pub fn take_file(&mut self, id: crate::job::PatternId) {
        let Some(PatternRun::Measured(measure)) = self.runs.patterns.get(&id) else { return };
        let (hash, kept) = (measure.hash.clone(), measure.kept());
        self.edit(Texts::english().label("edit-patterns-take-file"), move |job| {
            if let Some(file) = job.patterns.iter_mut().find(|pattern| pattern.id == id).and_then(|pattern| pattern.file.as_mut()) {
                (file.hash, file.kept) = (Some(hash), Some(kept));
            }
        });
    }

    /// Saves where it was opened.
    ///
    /// # Errors
    /// A sentence.
    pub fn save(&mut self, disk: &dyn Disk) -> Result<(), SaveBatchError> {
        self.note_measures();
        let (job, studio) = (Job::clone(&self.job), Arc::clone(&self.studio));
        let Some(batch) = &mut self.batch else { return Ok(()) };
        batch.job = job;
        batch.save(disk)?;
        if *studio != batch.studio {
            batch.save_studio(disk, &studio)?;
        }
        self.saved = Moment { job: Arc::clone(&self.job), studio };
        Ok(())
    }

    /// Saves under a name that nothing stands under yet, and goes on there.
    ///
    /// # Errors
    /// A sentence; the batch stays where it was.
    pub fn save_as(&mut self, disk: &dyn Disk, path: PathBuf) -> Result<(), SaveBatchError> {
        self.note_measures();
        let mut job = Job::clone(&self.job);
        if self.batch.is_some() {
            // What goes on under another name is another batch: two files with one id would each count the other's pieces and metal.
            job.job_id = JobId::random().unwrap_or_default();
        }
        let batch = Batch::create(disk, &path, &job, &self.studio)?;
        self.job = Arc::new(job);
        let mut batch = batch;
        if batch.studio_error.is_none() && batch.studio == *self.saved.studio && batch.studio != *self.studio {
            // The studio this one was changed from: the changes are saved with the batch.
            batch.save_studio(disk, &self.studio)?;
        }
        // A folder has one studio, and it is the one that stands there: another is never written over it. Undo brings this one back.
        if batch.studio_error.is_none() && batch.studio != *self.studio {
            let before = self.now();
            self.studio = Arc::new(batch.studio.clone());
            self.history.did(Texts::english().label("edit-studio-of-folder"), before);
        }
        self.batch = Some(batch);
        self.saved = self.now();
        self.runs = Runs::default();
        self.changed();
        Ok(())
    }
}

impl Workbook {
    /// Notes which content of each pattern file was measured and what it measured, where that is not noted yet: a file that changes later is
    /// found out by it, and until somebody looked at the new one the old measures count.
    fn note_measures(&mut self) {
        let mut job = Job::clone(&self.job);
        note_measures(&mut job, &self.runs);
        if job != *self.job {
            self.job = Arc::new(job);
        }
    }
}

/// The job's zone, or the studio's, or the machine's.
fn zone_of(job: &Job, studio: &Studio) -> TimeZone {
    let named = [&job.site.zone, &studio.site.zone].into_iter().find(|zone| !zone.is_empty());
    named.and_then(|name| TimeZone::get(name).ok()).unwrap_or_else(TimeZone::system)
}
