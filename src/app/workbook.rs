//! The open batch: its documents, what follows from them, what was done to them, and where the caster is looking.

mod arrange;
mod patterns;
mod plan;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use jiff::ZonedDateTime;
use jiff::civil::Date;
use jiff::tz::TimeZone;

use super::arrange_run::Arranger;
use super::computed::Computed;
use super::folder_run::FolderReader;
use super::heat_run::Heater;
use super::history::{History, Moment};
use super::index_run::Indexer;
use super::inspect::Inspector;
use super::night_run::Nights;
use super::pairs_run::PairReader;
use super::paper_desk::Shown;
use super::patterns_run::PatternReader;
use super::plan_run::Planner;
use super::view::View;
use crate::calc::{Runs, Setting};
use crate::files::batch::{Batch, OpenError, SaveBatchError};
use crate::files::disk::{Disk, folder_of};
use crate::job::carry::take_copies;
use crate::job::{Job, JobId, Studio, continues, go_back};
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
    pairs: PairReader,
    inspector: Inspector,
    /// The batch plan.
    pub planner: Planner,
    /// Trees that are arranged.
    pub arranger: Arranger,
    /// Shortest nights.
    pub nights: Nights,
    /// The other jobs of the folder.
    pub folder_jobs: FolderReader,
    /// The index of every job of the folder.
    pub indexer: Indexer,
    /// Moulds whose heat is computed.
    pub heater: Heater,
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
            pairs: PairReader::default(),
            inspector: Inspector::default(),
            planner: Planner::default(),
            arranger: Arranger::default(),
            nights: Nights::default(),
            folder_jobs: FolderReader::default(),
            indexer: Indexer::default(),
            heater: Heater::default(),
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

    /// Goes on with the last change where it has the same name: undo takes both back at once.
    pub fn edit_on(&mut self, name: impl Into<String>, change: impl FnOnce(&mut Job)) {
        self.edit_both(name, |job, _| change(job));
        self.history.join();
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
        if let Some(saved) = self.batch.as_ref().map(Batch::saved_record).filter(|saved| !continues(saved, &self.job.record)) {
            // What is in the file already is never taken out of it.
            let now = ZonedDateTime::now().with_time_zone(self.setting.zone.clone()).datetime();
            let at = now.with().second(0).subsec_nanosecond(0).build().ok();
            let record = go_back(saved, &self.job.record, at, &Texts::english().label("record-undone"));
            Arc::make_mut(&mut self.job).record = record;
        }
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
        self.heater.look(&self.computed.report, &mut self.runs);
        self.view.settle(&self.job);
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

/// The job's zone, or the studio's, or the machine's.
fn zone_of(job: &Job, studio: &Studio) -> TimeZone {
    let named = [&job.site.zone, &studio.site.zone].into_iter().find(|zone| !zone.is_empty());
    named.and_then(|name| TimeZone::get(name).ok()).unwrap_or_else(TimeZone::system)
}
