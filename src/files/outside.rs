//! Pattern files that lie outside the folder of their job. A job that came from somebody else may name any file of this machine: nothing out
//! there is read before the person at it allows the folder.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::disk::{Disk, folder_of};

/// Which folders outside a job's own may be read.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub enum Allowed {
    /// None.
    #[default]
    None,
    /// These, with their links followed.
    Folders(BTreeSet<PathBuf>),
    /// Every one: whoever asks named the files in person.
    Every,
}

impl Allowed {
    /// May a file of this folder be read? The folder's links are followed already.
    #[must_use]
    pub fn holds(&self, folder: &Path) -> bool {
        match self {
            Self::None => false,
            Self::Folders(folders) => folders.contains(folder),
            Self::Every => true,
        }
    }
}

/// The folder a file lies in where that is outside the job's folder and not allowed; links are followed, so that a link inside the folder that
/// leads out of it counts as outside. None for what lies inside, is allowed, or is not there.
#[must_use]
pub fn folder_to_ask(disk: &dyn Disk, job_folder: &Path, path: &Path, allowed: &Allowed) -> Option<PathBuf> {
    if *allowed == Allowed::Every {
        return None;
    }
    let real = disk.resolve(path).ok()?;
    let home = disk.resolve(if job_folder.as_os_str().is_empty() { Path::new(".") } else { job_folder }).ok()?;
    let folder = folder_of(&real);
    (!real.starts_with(&home) && !allowed.holds(folder)).then(|| folder.to_owned())
}
