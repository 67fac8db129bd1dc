//! Saving so that a power cut, a full disk or another hand on the same file never costs a job.
//!
//! The order of work: the check reads the bytes back and compares; links are followed; a read-only file is refused; the bytes are written
//! whole beside the file, with its permissions, synced and read back; the file on the disk is compared with what was loaded; only then one
//! rename replaces it, and the folder is synced. A difference is written to a second file and nothing is overwritten.
//!
//! Hard links: the rename parts the saved name from its other names, which keep the old contents. Writing in place would keep them together
//! but could tear the file; [`Saved::parted_names`] says how many there were. Owner, access lists and extended attributes are not kept.

mod error;

use std::{
    io::ErrorKind,
    path::{Path, PathBuf},
};

use crate::files::disk::{
    Disk, DiskError, Kind, Metadata,
    beside::{Unfinished, after_ending, before_ending, clear, settle, write_beside},
    folder_of,
};

pub use error::{SaveError, Theirs};

/// The hash of a file's bytes, as they were loaded or saved.
pub type Hash = blake3::Hash;

/// What the middle of a name begins with where a file had changed and ours was written beside it.
pub(super) const SAVED_BESIDE: &str = " (saved beside";

/// A file beyond this is none of ours and counts as changed without being read whole.
pub const LIMIT_BYTES: u64 = 256 * 1024 * 1024;

/// The hash that [`save`] compares by.
#[must_use]
pub fn hash_of(bytes: &[u8]) -> Hash {
    blake3::hash(bytes)
}

/// What becomes of the file as it was loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Original {
    /// It is replaced: we wrote it.
    Replace,
    /// It is kept as `name.ron.hand-edited` first: someone wrote in it by hand, and our layout would lose theirs.
    KeepBeside,
}

/// A save that is safe from a power cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Saved {
    /// Where, links followed.
    pub path: PathBuf,
    /// The hash for the next save.
    pub hash: Hash,
    /// Whether anything was written: false when the file already held these bytes.
    pub wrote: bool,
    /// Where the hand-edited original is kept.
    pub original_at: Option<PathBuf>,
    /// How many other names (hard links) still lead to the old contents.
    pub parted_names: u64,
}

/// Saves `bytes` at `path`.
///
/// `base` is the hash of the file as it was loaded or last saved; `None` when it must not exist yet. `check` reads the bytes back into what
/// they stand for and compares, before anything is touched.
///
/// # Errors
/// Every [`SaveError`] leaves a whole file at `path`, the old one except after `NotSure`.
pub fn save(
    disk: &dyn Disk,
    path: &Path,
    bytes: &[u8],
    base: Option<&Hash>,
    original: Original,
    check: impl Fn(&[u8]) -> Result<(), String>,
) -> Result<Saved, SaveError> {
    check(bytes).map_err(|reason| SaveError::NotTheSame { reason, path: path.to_path_buf() })?;
    let target = Target::find(disk, path)?;
    let saving = Saving { disk, path: &target.path, bytes, base };
    // From the comparison to the rename nobody else saves here.
    let _alone = disk.alone(folder_of(&target.path));
    // A second file next to a private one is private too.
    let (like, loaded) = match saving.found() {
        Err(error) => return Err(saving.not_written(error, None)),
        Ok(Found::Ours) => return saving.make_sure(),
        Ok(Found::Nothing | Found::Changed(Theirs::Gone)) => (None, None),
        Ok(Found::Changed(_)) => (Some(target.path.as_path()), None),
        Ok(Found::Base(loaded)) => (Some(target.path.as_path()), Some(loaded)),
    };
    let temporary =
        write_beside(disk, &target.path, bytes, like).map_err(|unfinished| saving.not_written(unfinished.error, unfinished.left))?;
    let original_at = match (original, loaded) {
        (Original::KeepBeside, Some(loaded)) => Some(saving.keep_original(&loaded, &temporary)?),
        _ => None,
    };
    saving.replace(&temporary, original_at, target.other_names)
}

/// The file to be saved to, links followed.
struct Target {
    path: PathBuf,
    other_names: u64,
}

impl Target {
    fn find(disk: &dyn Disk, path: &Path) -> Result<Self, SaveError> {
        let failed = |error| SaveError::NotWritten { path: path.to_path_buf(), error: Box::new(error), left: Vec::new() };
        let about = match disk.metadata(path) {
            Err(error) if error.kind == ErrorKind::NotFound => {
                return Ok(Self { path: path.to_path_buf(), other_names: 0 });
            }
            other => other.map_err(failed)?,
        };
        if about.kind != Kind::Link {
            return Self::checked(path.to_path_buf(), about);
        }
        let resolved = match disk.resolve(path) {
            Err(error) if error.kind == ErrorKind::NotFound => return Err(SaveError::LinkToNothing { path: path.to_path_buf() }),
            other => other.map_err(failed)?,
        };
        let about = disk.metadata(&resolved).map_err(failed)?;
        Self::checked(resolved, about)
    }

    fn checked(path: PathBuf, about: Metadata) -> Result<Self, SaveError> {
        match about.kind {
            Kind::File if about.read_only => Err(SaveError::ReadOnly { path }),
            Kind::File => Ok(Self { path, other_names: about.links.saturating_sub(1) }),
            _ => Err(SaveError::NotAFile { path }),
        }
    }
}

/// What stands at the path now.
enum Found {
    /// Nothing, as expected.
    Nothing,
    /// What was loaded, byte for byte.
    Base(Vec<u8>),
    /// What is being saved: another try got this far, or someone else wrote the same.
    Ours,
    /// Something else.
    Changed(Theirs),
}

struct Saving<'a> {
    disk: &'a dyn Disk,
    path: &'a Path,
    bytes: &'a [u8],
    base: Option<&'a Hash>,
}

impl Saving<'_> {
    fn found(&self) -> Result<Found, DiskError> {
        let changed = if self.base.is_some() { Theirs::Different } else { Theirs::InTheWay };
        match self.disk.read(self.path, LIMIT_BYTES.max(self.bytes.len() as u64)) {
            Ok(there) if there == self.bytes => Ok(Found::Ours),
            Ok(there) if self.base == Some(&hash_of(&there)) => Ok(Found::Base(there)),
            Ok(_) => Ok(Found::Changed(changed)),
            Err(error) if error.kind == ErrorKind::FileTooLarge => Ok(Found::Changed(changed)),
            Err(error) if error.kind == ErrorKind::NotFound && self.base.is_none() => Ok(Found::Nothing),
            Err(error) if error.kind == ErrorKind::NotFound => Ok(Found::Changed(Theirs::Gone)),
            Err(error) => Err(error),
        }
    }

    /// Compares once more, right before it counts, and replaces the file or settles beside it.
    fn replace(&self, temporary: &Path, original_at: Option<PathBuf>, other_names: u64) -> Result<Saved, SaveError> {
        let renamed = match self.found() {
            Err(error) => return Err(self.not_written(error, clear(self.disk, temporary).into_iter().chain(original_at))),
            Ok(Found::Changed(theirs)) => return Err(self.keep_beside(temporary, theirs)),
            Ok(Found::Ours) => {
                clear(self.disk, temporary);
                return self.make_sure();
            }
            // Where nothing stood the rename must not replace what appeared meanwhile.
            Ok(Found::Nothing) => self.disk.rename_new(temporary, self.path),
            Ok(Found::Base(_)) => self.disk.rename(temporary, self.path),
        };
        if let Err(error) = renamed {
            self.after_failed_rename(temporary, error, original_at.as_ref())?;
        }
        match self.disk.sync_folder(folder_of(self.path)) {
            Ok(()) => {
                Ok(Saved { path: self.path.to_path_buf(), hash: hash_of(self.bytes), wrote: true, original_at, parted_names: other_names })
            }
            Err(error) => Err(self.not_sure(error, true, original_at)),
        }
    }

    /// A rename that failed may have happened all the same (a share whose answer was lost), so the disk is asked what stands there.
    fn after_failed_rename(&self, temporary: &Path, error: DiskError, original_at: Option<&PathBuf>) -> Result<(), SaveError> {
        let not_written = |error| self.not_written(error, clear(self.disk, temporary).into_iter().chain(original_at.cloned()));
        match self.found() {
            Ok(Found::Ours) => {
                clear(self.disk, temporary);
                self.disk.sync_file(self.path).map_err(|error| self.not_sure(error, true, original_at.cloned()))
            }
            Ok(Found::Base(_)) => Err(not_written(error)),
            Ok(Found::Changed(theirs @ (Theirs::Different | Theirs::InTheWay))) => Err(self.keep_beside(temporary, theirs)),
            // Nothing there: believed only while the temporary still is; a share that went away shows neither.
            Ok(Found::Nothing) if self.disk.metadata(temporary).is_ok() => Err(not_written(error)),
            Ok(Found::Changed(Theirs::Gone)) if self.disk.metadata(temporary).is_ok() => Err(self.keep_beside(temporary, Theirs::Gone)),
            // The temporary may be the only good copy: it stays.
            Ok(Found::Nothing | Found::Changed(Theirs::Gone)) | Err(_) => {
                let left = std::iter::once(temporary.to_path_buf()).chain(original_at.cloned());
                Err(self.not_sure(error, false, left))
            }
        }
    }

    fn keep_beside(&self, temporary: &Path, theirs: Theirs) -> SaveError {
        let path = self.path.to_path_buf();
        match settle(self.disk, temporary, self.bytes, |number| {
            numbered(number, |count| before_ending(self.path, &format!("{SAVED_BESIDE}{count})")))
        }) {
            Ok(ours_at) => SaveError::ChangedOnDisk { path, ours_at, theirs },
            Err(Unfinished { error, left }) => {
                SaveError::ChangedNotKept { path, theirs, error: Box::new(error), left: left.into_iter().collect() }
            }
        }
    }

    /// Keeps what was loaded under its own name; when that fails the new temporary goes too.
    fn keep_original(&self, loaded: &[u8], temporary: &Path) -> Result<PathBuf, SaveError> {
        let name = |number| numbered(number, |count| after_ending(self.path, &format!(".hand-edited{}", count.replace(' ', "-"))));
        let kept = write_beside(self.disk, self.path, loaded, Some(self.path)).and_then(|copy| {
            settle(self.disk, &copy, loaded, name).map_err(|Unfinished { error, left }| {
                // Settled but not sure: it stays. Still the temporary copy: it goes.
                let left = left.and_then(|left| if left == copy { clear(self.disk, &copy) } else { Some(left) });
                Unfinished { error, left }
            })
        });
        kept.map_err(|Unfinished { error, left }| self.not_written(error, clear(self.disk, temporary).into_iter().chain(left)))
    }

    /// The file holds these bytes already; only the medium may not know yet.
    fn make_sure(&self) -> Result<Saved, SaveError> {
        let now = hash_of(self.bytes);
        let path = self.path.to_path_buf();
        match self.disk.sync_file(self.path).and_then(|()| self.disk.sync_folder(folder_of(self.path))) {
            Ok(()) => Ok(Saved { path, hash: now, wrote: false, original_at: None, parted_names: 0 }),
            Err(error) => Err(self.not_sure(error, true, None)),
        }
    }

    fn not_written(&self, error: DiskError, left: impl IntoIterator<Item = PathBuf>) -> SaveError {
        SaveError::NotWritten { path: self.path.to_path_buf(), error: Box::new(error), left: left.into_iter().collect() }
    }

    fn not_sure(&self, error: DiskError, stands: bool, left: impl IntoIterator<Item = PathBuf>) -> SaveError {
        let now = stands.then(|| hash_of(self.bytes));
        SaveError::NotSure { path: self.path.to_path_buf(), error: Box::new(error), now, left: left.into_iter().collect() }
    }
}

/// `name("")`, `name(" 2")`, `name(" 3")`, …
fn numbered(number: u32, name: impl Fn(&str) -> PathBuf) -> PathBuf {
    if number <= 1 { name("") } else { name(&format!(" {number}")) }
}
