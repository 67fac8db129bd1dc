//! What is not saved is set aside after every change, so that a crash costs nothing.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::Context;
use jiff::Timestamp;

use super::workbook::Workbook;
use crate::files::batch::STUDIO_FILE;
use crate::files::disk::Disk;
use crate::files::recover::{self, Contents, RecoveryFound, RecoveryKey, RecoveryWriter, Snapshot};
use crate::job::format::{write_job, write_studio};

/// Sets work aside, and finds what was set aside before.
pub struct Recovery {
    disk: Arc<dyn Disk>,
    folder: PathBuf,
    writer: Option<RecoveryWriter>,
    offered: Option<(RecoveryKey, u64)>,
}

impl Recovery {
    /// Starts the writer; without one nothing is set aside, and that is said.
    pub fn start(disk: Arc<dyn Disk>, folder: &Path, ctx: &Context) -> Self {
        let ctx = ctx.clone();
        let _ = disk.create_folders(folder);
        let writer = RecoveryWriter::start(Arc::clone(&disk), folder.to_owned(), move || ctx.request_repaint()).ok();
        Self { disk, folder: folder.to_owned(), writer, offered: None }
    }

    /// Under what the batch is set aside.
    pub fn key(workbook: &Workbook) -> RecoveryKey {
        RecoveryKey { path: workbook.path().map(Path::to_path_buf), job_id: workbook.job.job_id.to_string() }
    }

    /// Under what the studio of a batch is set aside.
    fn studio_key(workbook: &Workbook) -> RecoveryKey {
        let path = workbook.folder().map(|folder| folder.join(STUDIO_FILE));
        RecoveryKey { path, job_id: format!("studio {}", workbook.studio.studio_id) }
    }

    /// Sets both documents aside, each where it is not as it was saved and changed since the last time.
    pub fn offer(&mut self, workbook: &Workbook) {
        let Some(writer) = &self.writer else { return };
        let now = Some((Self::key(workbook), workbook.revision));
        if workbook.revision == 0 || self.offered == now || !workbook.is_changed() {
            return;
        }
        self.offered = now;
        let (time, revision) = (Timestamp::now(), workbook.revision);
        if workbook.job != workbook.saved.job {
            let (key, job) = (Self::key(workbook), Arc::clone(&workbook.job));
            let make = move || write_job(&job).map(String::into_bytes).map_err(|error| error.to_string());
            let base = workbook.batch.as_ref().map(|batch| batch.hash);
            writer.offer(Snapshot { key, base, time, revision, contents: Contents::Make(Box::new(make)) });
        }
        if workbook.studio != workbook.saved.studio {
            let (key, studio) = (Self::studio_key(workbook), Arc::clone(&workbook.studio));
            let make = move || write_studio(&studio).map(String::into_bytes).map_err(|error| error.to_string());
            let base = workbook.batch.as_ref().and_then(|batch| batch.studio_hash);
            writer.offer(Snapshot { key, base, time, revision, contents: Contents::Make(Box::new(make)) });
        }
    }

    /// The batch was saved or given up: nothing of it is to be recovered.
    pub fn settled(&mut self, workbook: &Workbook) {
        self.settled_as(Self::keys(workbook), workbook.revision);
    }

    /// Under what both documents of a batch are set aside.
    pub fn keys(workbook: &Workbook) -> [RecoveryKey; 2] {
        [Self::key(workbook), Self::studio_key(workbook)]
    }

    /// The same for the names a batch had until now.
    pub fn settled_as(&mut self, keys: [RecoveryKey; 2], revision: u64) {
        if let Some(writer) = &self.writer {
            keys.iter().for_each(|key| writer.saved(key, revision));
        }
    }

    /// What failed since it was last asked.
    pub fn failed(&self) -> Option<String> {
        self.writer.as_ref()?.take_reports().into_iter().find_map(|report| report.result.err())
    }

    /// What was set aside before, newest first.
    pub fn found(&self) -> Vec<RecoveryFound> {
        recover::find(&*self.disk, &self.folder).map(|folder| folder.found).unwrap_or_default()
    }

    /// Leaves one out for good.
    pub fn discard(&self, found: &RecoveryFound) {
        let _ = recover::discard(&*self.disk, &self.folder, &found.key);
    }
}
