//! The index of the folder's jobs is kept beside the window: built when it is first wanted, and held to what changed while it is looked at.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant, SystemTime};

use super::search::{Came, Search};
use crate::files::disk::RealDisk;
use crate::folder::Index;

/// While it is looked at, the folder is looked through again this often.
pub const EVERY: Duration = Duration::from_secs(3);

/// Builds and refreshes on a thread.
#[derive(Default)]
pub struct Indexer {
    search: Search<Result<Index, String>>,
    index: Option<Arc<Index>>,
    failed: Option<String>,
    /// The folder that was looked through last, and when.
    asked: Option<(PathBuf, Instant)>,
}

impl Indexer {
    /// Who is to be woken when it was looked through.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        self.search.on_found(wake);
    }

    /// Looks through a folder, unless that is being done or was done just now.
    pub fn look(&mut self, folder: &Path) {
        let same = self.asked.as_ref().filter(|(other, _)| other == folder);
        if same.is_some_and(|(_, at)| self.search.progress().is_some() || at.elapsed() < EVERY) {
            return;
        }
        if same.is_none() {
            (self.index, self.failed) = (None, None);
        }
        self.asked = Some((folder.to_path_buf(), Instant::now()));
        let (before, folder) = (self.index.clone(), folder.to_path_buf());
        self.search.begin("index", move |_| {
            // Taken before the first file is looked at: what changes later is looked at again.
            let now = SystemTime::now();
            let Some(before) = before else { return Index::build(&RealDisk, &folder, now).map_err(|error| error.to_string()) };
            let mut index = Index::clone(&before);
            index.refresh(&RealDisk, now).map(|_| index).map_err(|error| error.to_string())
        });
    }

    /// What stands in the folder, once it was looked through.
    #[must_use]
    pub fn index(&self) -> Option<&Arc<Index>> {
        self.index.as_ref()
    }

    /// Why the folder could not be looked through.
    #[must_use]
    pub fn failed(&self) -> Option<&str> {
        self.failed.as_deref()
    }

    /// Takes in what was found. True where anything came.
    pub fn take(&mut self) -> bool {
        match self.search.take() {
            Came::Nothing => return false,
            Came::Found(Ok(index)) => {
                // The same answer keeps its place, so that whoever keeps something by it need not make it anew.
                if self.index.as_deref() != Some(&index) {
                    self.index = Some(Arc::new(index));
                }
                self.failed = None;
            }
            Came::Found(Err(why)) => self.failed = Some(why),
            Came::Broke => {}
        }
        true
    }
}
