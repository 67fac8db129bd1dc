//! What went wrong on a disk, in a plain sentence: what was tried, why it failed, and the path last.

use std::{
    borrow::Cow,
    fmt, io,
    path::{Path, PathBuf},
};

/// What was tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Act {
    /// Reading a file.
    Read,
    /// Creating and writing a file.
    Write,
    /// Forcing a file onto the medium.
    Sync,
    /// Giving a file its name.
    Rename,
    /// Forcing a folder's names onto the medium.
    SyncFolder,
    /// Looking at a name.
    Look,
    /// Keeping permissions.
    Permissions,
    /// Removing a file.
    Remove,
    /// Listing a folder.
    List,
    /// Creating a folder.
    CreateFolder,
    /// Following a link.
    Resolve,
    /// Comparing what was written with what reads back.
    ReadBack,
}

impl Act {
    fn words(self) -> &'static str {
        match self {
            Self::Read => "read the file",
            Self::Write => "write the file",
            Self::Sync => "get the file safely onto the disk",
            Self::Rename => "give the file its name",
            Self::SyncFolder => "get the folder safely onto the disk",
            Self::Look => "look at the file",
            Self::Permissions => "keep the file's permissions",
            Self::Remove => "remove the file",
            Self::List => "list the folder",
            Self::CreateFolder => "create the folder",
            Self::Resolve => "find where the link leads",
            Self::ReadBack => "read back what was just written",
        }
    }
}

/// A disk call that failed. `Display` gives one sentence without a full stop, the path last.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub struct DiskError {
    /// What was tried.
    pub act: Act,
    /// The kind of failure, as the system gave it.
    pub kind: io::ErrorKind,
    /// Why, in the system's own words or in ours.
    pub detail: String,
    /// True where they are the system's.
    pub from_system: bool,
    /// Where.
    pub path: PathBuf,
}

impl DiskError {
    /// Wraps the system's error.
    #[must_use]
    pub fn new(act: Act, path: &Path, error: &io::Error) -> Self {
        Self { act, kind: error.kind(), detail: error.to_string(), from_system: true, path: path.to_path_buf() }
    }

    /// An error of our own, `detail` completing "because …".
    #[must_use]
    pub fn own(act: Act, path: &Path, kind: io::ErrorKind, detail: &str) -> Self {
        Self { act, kind, detail: detail.to_owned(), from_system: false, path: path.to_path_buf() }
    }

    /// What a person can do about it, as a whole sentence without its full stop.
    #[must_use]
    pub fn advice(&self) -> &'static str {
        match self.kind {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => "Make room on the disk and save again, or save to another disk",
            io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => "Save to a folder you may write to",
            io::ErrorKind::NotFound => "Check that the disk or share is connected, or save to another folder",
            _ => "Save again, or save to another disk",
        }
    }

    fn reason(&self) -> Cow<'_, str> {
        let known = match self.kind {
            io::ErrorKind::NotFound => "it is not there",
            io::ErrorKind::PermissionDenied => "you do not have permission",
            io::ErrorKind::AlreadyExists => "the name is already taken",
            io::ErrorKind::StorageFull => "the disk is full",
            io::ErrorKind::QuotaExceeded => "your share of the disk is used up",
            io::ErrorKind::ReadOnlyFilesystem => "the disk can only be read",
            io::ErrorKind::Interrupted => "it was interrupted",
            io::ErrorKind::TimedOut => "the disk did not answer in time",
            io::ErrorKind::FileTooLarge => "it is too large",
            io::ErrorKind::NotADirectory => "part of its path is not a folder",
            io::ErrorKind::IsADirectory => "it is a folder",
            // The system's own words, without the number behind them, which says nothing to a caster.
            _ if self.from_system => return format!("the disk or the system failed ({})", without_number(&self.detail)).into(),
            _ => &self.detail,
        };
        known.into()
    }
}

/// `Input/output error (os error 5)` without what stands in brackets.
fn without_number(words: &str) -> &str {
    words.split(" (os error").next().unwrap_or(words)
}

impl fmt::Display for DiskError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "Could not {} because {}: {}", self.act.words(), self.reason(), self.path.display())
    }
}
