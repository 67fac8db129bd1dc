//! The jobs of the batch's folder are read beside the window: those with pieces that are not delivered yet, and those that cannot be read.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use super::search::{Came, Search};
use crate::calc::board::{Timely, board};
use crate::calc::taught::{Notes, Taught, teach};
use crate::files::batch::{LONGEST_DOCUMENT, job_files};
use crate::files::disk::{Disk, RealDisk};
use crate::job::Job;
use crate::job::check::mend;
use crate::job::format::read_job;
use jiff::civil::Date;

/// A job of the folder with open pieces.
#[derive(Debug, Clone)]
pub struct OtherJob {
    /// Its file.
    pub path: PathBuf,
    /// The job without what is at fault in it.
    pub job: Job,
}

/// What a folder holds besides the open batch.
#[derive(Debug, Clone, Default)]
pub struct Folder {
    /// Jobs with open pieces, by name of their files.
    pub open: Vec<OtherJob>,
    /// What all jobs of the folder teach, the open one with them.
    pub taught: Taught,
    /// How many jobs are settled.
    pub settled: usize,
    /// What could not be read, and why.
    pub broken: Vec<(PathBuf, String)>,
}

/// Reads on a thread.
#[derive(Default)]
pub struct FolderReader {
    search: Search<Folder>,
    found: Option<Folder>,
}

impl FolderReader {
    /// Who is to be woken when it was read.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        self.search.on_found(wake);
    }

    /// Begins to read a folder; the job that is open is taken as it stands in the window.
    pub fn begin(&mut self, folder: PathBuf, open: Arc<Job>, today: Date) {
        self.search.begin("folder", move |go_on| read_folder(&RealDisk, &folder, &open, today, go_on));
    }

    /// How far it is, from 0 to 1, and how long it has gone on.
    #[must_use]
    pub fn progress(&self) -> Option<(f64, Duration)> {
        self.search.progress()
    }

    /// What was found last.
    #[must_use]
    pub fn found(&self) -> Option<&Folder> {
        self.found.as_ref()
    }

    /// Takes in what was read. True where anything was.
    pub fn take(&mut self) -> bool {
        match self.search.take() {
            Came::Nothing => return false,
            Came::Found(found) => self.found = Some(found),
            Came::Broke => {}
        }
        true
    }
}

/// Reads every job of a folder, but for the one that is open.
pub fn read_folder(disk: &dyn Disk, folder: &Path, open: &Job, today: Date, go_on: &dyn Fn(f64) -> bool) -> Folder {
    let files = job_files(disk, folder).unwrap_or_default();
    let mut found = Folder::default();
    let mut notes = vec![Notes::of(open)];
    let many = files.len().max(1);
    for (at, path) in files.into_iter().enumerate() {
        #[allow(clippy::cast_precision_loss, reason = "a share of a bar")]
        if !go_on(at as f64 / many as f64) {
            break;
        }
        let read = disk.read(&path, LONGEST_DOCUMENT).map_err(|error| error.to_string());
        match read.and_then(|bytes| read_job(&bytes).map_err(|error| error.to_string())) {
            Err(why) => found.broken.push((path, why)),
            Ok(opened) if opened.document.job_id == open.job_id => {}
            Ok(opened) => {
                let (job, _) = mend(&opened.document);
                notes.push(Notes::of(&job));
                if board(&job, today).iter().any(|row| row.timely != Timely::Settled) {
                    found.open.push(OtherJob { path, job });
                } else {
                    found.settled += 1;
                }
            }
        }
    }
    found.taught = teach(notes);
    found
}
