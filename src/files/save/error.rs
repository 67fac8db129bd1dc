//! Why a save did not go through, what is safe all the same, and what to do.

use std::path::PathBuf;

use super::Hash;
use crate::files::disk::DiskError;

/// What stands at the path instead of what was loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Theirs {
    /// A file with other contents than were loaded.
    Different,
    /// No file any more.
    Gone,
    /// A file where none was to be: this is a first save and the name is taken.
    InTheWay,
}

impl Theirs {
    fn words(self) -> &'static str {
        match self {
            Self::Different => "The file was changed since you opened it",
            Self::Gone => "The file was removed or renamed since you opened it",
            Self::InTheWay => "Another file of this name is there already",
        }
    }
}

/// A save that did not go through. Each says what is safe and where anything else lies; the path comes last.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SaveError {
    /// What was to be written does not read back as the same thing. Nothing was touched.
    #[error("Not saved: read back, it would not be the same ({reason}). The file is as it was. Nothing was touched at {}", path.display())]
    NotTheSame {
        /// What the check said.
        reason: String,
        /// The file.
        path: PathBuf,
    },
    /// The file may not be written to. Nothing was touched.
    #[error("Not saved: the file may only be read. It is as it was. Save under another name, or allow writing to {}", path.display())]
    ReadOnly {
        /// The file, links followed.
        path: PathBuf,
    },
    /// A folder or a device stands there. Nothing was touched.
    #[error("Not saved: this is not a file. Save under another name than {}", path.display())]
    NotAFile {
        /// What stands there.
        path: PathBuf,
    },
    /// A link to a file that is not there: its disk may be unplugged. Nothing was touched.
    #[error("Not saved: the link leads to a file that is not there. Connect its disk, or save under another name than {}", path.display())]
    LinkToNothing {
        /// The link.
        path: PathBuf,
    },
    /// The file was changed since it was loaded. Nothing was overwritten; ours is safe in a second file.
    /// A hand-edited original that was kept just before stays as well.
    #[error(
        "{}, so nothing was written over. Yours is saved beside it as {}: compare both, then keep one. Left alone: {}",
        theirs.words(), ours_at.display(), path.display()
    )]
    ChangedOnDisk {
        /// The file, links followed.
        path: PathBuf,
        /// Where ours is saved, safe from a power cut.
        ours_at: PathBuf,
        /// What stands at `path`.
        theirs: Theirs,
    },
    /// The file is whole and as it was; nothing is saved.
    #[error(
        "Not saved. {error}. Nothing that stood there has changed. {}{}: {}",
        lies(left), error.advice(), path.display()
    )]
    NotWritten {
        /// The file, links followed.
        path: PathBuf,
        /// What failed.
        error: Box<DiskError>,
        /// What lies there besides: temporaries that could not be removed, the hand-edited original that was kept.
        left: Vec<PathBuf>,
    },
    /// The file is whole: the new one, or after a power cut perhaps still the old one. Saving again is safe and makes it sure.
    #[error(
        "Perhaps not saved. {error}. The file is whole, but after a power cut it may be the one from before. {}{}: {}",
        lies(left), error.advice(), path.display()
    )]
    NotSure {
        /// The file, links followed.
        path: PathBuf,
        /// What failed.
        error: Box<DiskError>,
        /// The hash of what now stands there, for the next save; `None` when even that is not known.
        now: Option<Hash>,
        /// What lies there besides, perhaps the only copy of the new one.
        left: Vec<PathBuf>,
    },
    /// The file was changed since it was loaded and was left alone, and the second file failed too.
    #[error(
        "Not saved. {}, so nothing was written over; and yours could not be saved beside it. {error}. {}{}: {}",
        theirs.words(), lies(left), error.advice(), path.display()
    )]
    ChangedNotKept {
        /// The file, links followed.
        path: PathBuf,
        /// What stands at `path`.
        theirs: Theirs,
        /// What failed.
        error: Box<DiskError>,
        /// Where ours lies all the same, not sure to survive a power cut.
        left: Vec<PathBuf>,
    },
}

fn lies(left: &[PathBuf]) -> String {
    let paths: Vec<String> = left.iter().map(|path| path.display().to_string()).collect();
    if paths.is_empty() { String::new() } else { format!("What was written so far lies at {}. ", paths.join(" and ")) }
}
