//! The dozen things that are done to files, as one trait, so that every caller can be tried on a disk that fails or loses power.
//!
//! [`RealDisk`] is the machine's own. [`FailingDisk`] and [`SimulatedDisk`] exist for tests and fault drills only: the first fails any call
//! with any error, the second forgets what was not synced and lists every state a power cut may leave behind.
//! The rule it keeps: each call either does the whole of what it says or returns a [`DiskError`] naming what was tried and where.

pub mod beside;
pub mod crash;
pub mod error;
pub mod failing;
pub mod real;
pub mod simulated;
mod world;

use std::{
    any::Any,
    io::ErrorKind,
    path::{Path, PathBuf},
    time::SystemTime,
};

pub use error::{Act, DiskError};
pub use failing::FailingDisk;
pub use real::RealDisk;
pub use simulated::SimulatedDisk;

/// What stands under a name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// An ordinary file.
    File,
    /// A folder.
    Folder,
    /// A symbolic link, not followed.
    Link,
    /// A pipe, a device, a socket.
    Other,
}

/// What a disk knows of one name, links not followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Metadata {
    /// What stands there.
    pub kind: Kind,
    /// Length in bytes; of no meaning for folders.
    pub len_bytes: u64,
    /// When the contents last changed, where the file system keeps it.
    pub modified: Option<SystemTime>,
    /// Whether this person may not write to it: no write permission at all, or none for them, or a read-only disk.
    pub read_only: bool,
    /// How many names lead to this file (hard links); 1 where the system does not say.
    pub links: u64,
    /// The permission bits, where the system has them.
    pub mode: Option<u32>,
}

/// Everything the program does to a disk. Paths may be absolute or relative; errors always name the path given.
pub trait Disk: Send + Sync {
    /// The whole of an ordinary file, links followed.
    ///
    /// # Errors
    /// `FileTooLarge` when the file holds more than `limit_bytes`, `InvalidInput` when it is no ordinary file, else the system's.
    fn read(&self, path: &Path, limit_bytes: u64) -> Result<Vec<u8>, DiskError>;

    /// Creates a file that must not exist yet and writes all of `bytes`. Nothing is safe from a power cut before [`Self::sync_file`].
    ///
    /// # Errors
    /// `AlreadyExists` when the name is taken, even by a broken link. After any other error part of the file may lie there.
    fn write_new(&self, path: &Path, bytes: &[u8]) -> Result<(), DiskError>;

    /// Forces a file's contents and permissions onto the medium; its name needs [`Self::sync_folder`].
    ///
    /// # Errors
    /// The system's: then nothing is known of what the medium holds.
    fn sync_file(&self, path: &Path) -> Result<(), DiskError>;

    /// Gives a file another name in one step; what stood under that name is replaced.
    ///
    /// # Errors
    /// The system's.
    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskError>;

    /// Like [`Self::rename`], but never replaces.
    ///
    /// # Errors
    /// `AlreadyExists` when `to` is taken, else the system's.
    fn rename_new(&self, from: &Path, to: &Path) -> Result<(), DiskError>;

    /// Forces the names in a folder onto the medium. Does nothing where the system has no such call.
    ///
    /// # Errors
    /// The system's.
    fn sync_folder(&self, folder: &Path) -> Result<(), DiskError>;

    /// What stands under a name, links not followed.
    ///
    /// # Errors
    /// `NotFound` when nothing stands there, else the system's.
    fn metadata(&self, path: &Path) -> Result<Metadata, DiskError>;

    /// Gives `to` the permissions of `like`. Owners, access lists and extended attributes are not carried over.
    ///
    /// # Errors
    /// The system's.
    fn copy_permissions(&self, like: &Path, to: &Path) -> Result<(), DiskError>;

    /// Removes a file or a link, never a folder.
    ///
    /// # Errors
    /// The system's.
    fn remove(&self, path: &Path) -> Result<(), DiskError>;

    /// The full paths of all that stands in a folder, sorted.
    ///
    /// # Errors
    /// The system's.
    fn list(&self, folder: &Path) -> Result<Vec<PathBuf>, DiskError>;

    /// Creates a folder and those above it; one that stands already is no error.
    ///
    /// # Errors
    /// The system's.
    fn create_folders(&self, folder: &Path) -> Result<(), DiskError>;

    /// The absolute path with every link followed.
    ///
    /// # Errors
    /// `NotFound` when it leads nowhere, else the system's.
    fn resolve(&self, path: &Path) -> Result<PathBuf, DiskError>;

    /// Keeps other programs that save in a folder out until what is given is let go of, so that nothing happens between a comparison and the
    /// rename that follows from it. Nothing where the system cannot, or where another keeps us out for long: then the comparison alone guards.
    fn alone(&self, _folder: &Path) -> Option<Box<dyn Any + Send>> {
        None
    }

    /// Whether anything stands under a name, a broken link included.
    ///
    /// # Errors
    /// Whatever kept the disk from telling.
    fn exists(&self, path: &Path) -> Result<bool, DiskError> {
        match self.metadata(path) {
            Ok(_) => Ok(true),
            Err(error) if error.kind == ErrorKind::NotFound => Ok(false),
            Err(error) => Err(error),
        }
    }
}

/// The folder a file stands in: `.` for a bare name.
#[must_use]
pub fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}
