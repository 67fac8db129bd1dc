//! Every job file of a folder with what it says shortly.

mod build;
mod stamp;

use std::fmt;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::brief::Brief;
use super::find::{Rows, Texts};
use crate::job::JobId;
use crate::job::format::ReadError;

pub use build::Changes;
use stamp::Proof;
pub use stamp::Stamp;

/// Every job file of a folder. A copy is cheap beside a new reading: the jobs in it are shared.
#[derive(Debug, Clone, Default)]
pub struct Index {
    folder: PathBuf,
    /// Sorted by path.
    files: Vec<Listed>,
    /// The rows of each file, in the same order; none for files that could not be read.
    rows: Vec<Option<Arc<Rows>>>,
    texts: Texts,
    /// How many texts there were when the rows were last made all anew: what no file says any more stays among them until then.
    texts_then: usize,
}

/// A job file of the folder.
#[derive(Debug, Clone, PartialEq)]
pub struct Listed {
    /// Where it is.
    pub path: Arc<Path>,
    /// What it says, or why that could not be read.
    pub job: Result<Arc<Brief>, Broken>,
    /// When it last changed and how long it was when it was read; `None` has it read again at the next refresh.
    pub stamp: Option<Stamp>,
    proof: Option<Proof>,
}

/// Why a job file could not be read. It is listed and passed over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Broken {
    /// The system's words.
    Unreadable(String),
    /// Longer than any document is.
    TooLong,
    /// What stands in it.
    Content(ReadError),
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable(says) => f.write_str(says),
            Self::TooLong => f.write_str("it is longer than any document"),
            Self::Content(error) => error.fmt(f),
        }
    }
}

impl Index {
    /// The folder.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Every job file, by path.
    #[must_use]
    pub fn files(&self) -> &[Listed] {
        &self.files
    }

    /// The job of a file, where it is listed and could be read.
    #[must_use]
    pub fn job_at(&self, path: &Path) -> Option<&Brief> {
        let at = self.files.binary_search_by(|file| file.path.as_ref().cmp(path)).ok()?;
        self.files.get(at)?.job.as_deref().ok()
    }

    /// Every job that could be read, with its file, by path.
    pub fn jobs(&self) -> impl Iterator<Item = (&Arc<Path>, &Brief)> {
        self.files.iter().filter_map(|file| Some((&file.path, file.job.as_ref().ok()?.as_ref())))
    }

    /// Every file that could not be read, with the reason, by path.
    pub fn broken(&self) -> impl Iterator<Item = (&Path, &Broken)> {
        self.files.iter().filter_map(|file| Some((file.path.as_ref(), file.job.as_ref().err()?)))
    }

    /// Every job once: of several files with one `job_id`, such as a copy that somebody kept, the first by path. What is added up or held
    /// against each other counts these; [`Self::twins`] tells of the others.
    pub fn jobs_once(&self) -> impl Iterator<Item = (&Arc<Path>, &Brief)> {
        let mut seen = std::collections::BTreeSet::new();
        self.jobs().filter(move |(_, job)| job.job_id == JobId::default() || seen.insert(job.job_id))
    }

    /// Files that say they are the same job: the id with all its files, by path.
    #[must_use]
    pub fn twins(&self) -> Vec<(JobId, Vec<&Path>)> {
        let mut files: std::collections::BTreeMap<JobId, Vec<&Path>> = std::collections::BTreeMap::new();
        self.jobs()
            .filter(|(_, job)| job.job_id != JobId::default())
            .for_each(|(path, job)| files.entry(job.job_id).or_default().push(path.as_ref()));
        files.into_iter().filter(|(_, paths)| paths.len() > 1).collect()
    }

    pub(crate) fn texts(&self) -> &Texts {
        &self.texts
    }

    pub(crate) fn rows(&self, file: usize) -> Option<&Rows> {
        self.rows.get(file)?.as_deref()
    }
}

/// Two indexes are equal where they list the same files with the same stamps and contents; how they came by them does not count.
impl PartialEq for Index {
    fn eq(&self, other: &Self) -> bool {
        let same = |a: &Listed, b: &Listed| a.path == b.path && a.job == b.job && a.stamp == b.stamp;
        self.folder == other.folder && self.files.len() == other.files.len() && self.files.iter().zip(&other.files).all(|(a, b)| same(a, b))
    }
}
