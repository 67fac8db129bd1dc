//! What is not saved is set aside after every change, so that a crash costs nothing.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::Context;
use jiff::Timestamp;

use super::workbook::Workbook;
use crate::files::disk::Disk;
use crate::files::recover::{self, Contents, RecoveryFound, RecoveryKey, RecoveryWriter, Snapshot};
use crate::job::format::write_job;

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

    /// Sets the batch aside where it changed since the last time.
    pub fn offer(&mut self, workbook: &Workbook) {
        let Some(writer) = &self.writer else { return };
        let key = Self::key(workbook);
        let now = Some((key.clone(), workbook.revision));
        if workbook.revision == 0 || self.offered == now || !workbook.is_changed() {
            return;
        }
        self.offered = now;
        let job = Arc::clone(&workbook.job);
        let make = move || write_job(&job).map(String::into_bytes).map_err(|error| error.to_string());
        let base = workbook.batch.as_ref().map(|batch| batch.hash);
        writer.offer(Snapshot { key, base, time: Timestamp::now(), revision: workbook.revision, contents: Contents::Make(Box::new(make)) });
    }

    /// The batch was saved or given up: nothing of it is to be recovered.
    pub fn settled(&mut self, workbook: &Workbook) {
        self.settled_as(&Self::key(workbook), workbook.revision);
    }

    /// The same for the name a batch had until now.
    pub fn settled_as(&mut self, key: &RecoveryKey, revision: u64) {
        if let Some(writer) = &self.writer {
            writer.saved(key, revision);
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
