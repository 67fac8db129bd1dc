//! A small file beside a job that says who has it open: `.lilac.ron.lock`.
//!
//! Courtesy only. A lock never keeps anyone from opening or saving; it lets the program say "AB has this open on the bench computer". What
//! guards the file is the comparison in [`super::save`]. No clock and no list of processes is read here: both are told by the caller.

use std::{
    io::ErrorKind,
    path::{Path, PathBuf},
};

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use crate::files::disk::{Act, Disk, DiskError, beside::replace_whole};

/// No lock of ours is longer than this many bytes.
const LIMIT_BYTES: u64 = 4096;

/// How often a lock is tried for that is gone each time it is looked at.
const TRIES: usize = 8;

/// Who has a file open.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Holder {
    /// The computer's name.
    pub host: String,
    /// The program's process number on it.
    pub pid: u32,
    /// Whose hands.
    pub initials: String,
    /// When it was opened, or last said to be still open.
    pub time: Timestamp,
}

impl Holder {
    /// Whether this is the same running program, at whatever time.
    #[must_use]
    pub fn is_same_program(&self, other: &Self) -> bool {
        self.host == other.host && self.pid == other.pid
    }

    /// What another's lock is worth to us: `runs` tells whether a process number is alive on this computer. No two clocks are compared: those of
    /// two computers are hours apart now and then. Whether a lock is still said anew is for who watches it to see.
    #[must_use]
    pub fn standing(&self, me: &Self, runs: impl Fn(u32) -> bool) -> Standing {
        if self.is_same_program(me) {
            Standing::Mine
        } else if self.host == me.host {
            if runs(self.pid) { Standing::OpenHere } else { Standing::LeftBehind }
        } else {
            Standing::OpenElsewhere
        }
    }
}

/// What a lock is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Ours.
    Mine,
    /// Another running program on this computer.
    OpenHere,
    /// A program on this computer that is gone: it crashed.
    LeftBehind,
    /// Another computer.
    OpenElsewhere,
}

/// What lock stands beside a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Lock {
    /// None.
    None,
    /// Somebody's, ours perhaps.
    Held(Holder),
    /// One that cannot be read: half written, or not ours. Somebody may have the file open.
    Unreadable,
}

/// Where the lock of a file stands: beside the file itself, links followed, so that all who come by a link meet the same lock.
#[must_use]
pub fn lock_path(disk: &dyn Disk, path: &Path) -> PathBuf {
    let real = disk.resolve(path).unwrap_or_else(|_| path.to_path_buf());
    let mut name = std::ffi::OsString::from(".");
    name.push(real.file_name().unwrap_or_default());
    name.push(".lock");
    real.with_file_name(name)
}

/// What lock stands beside `path` now.
///
/// # Errors
/// The disk's; an unreadable text is no error.
pub fn look(disk: &dyn Disk, path: &Path) -> Result<Lock, DiskError> {
    match disk.read(&lock_path(disk, path), LIMIT_BYTES) {
        Ok(bytes) => Ok(parse(&bytes).map_or(Lock::Unreadable, Lock::Held)),
        Err(error) if error.kind == ErrorKind::NotFound => Ok(Lock::None),
        Err(error) if matches!(error.kind, ErrorKind::FileTooLarge | ErrorKind::InvalidInput) => Ok(Lock::Unreadable),
        Err(error) => Err(error),
    }
}

fn parse(bytes: &[u8]) -> Option<Holder> {
    ron::de::from_bytes(bytes).ok()
}

fn text(me: &Holder, path: &Path) -> Result<String, DiskError> {
    ron::to_string(me).map_err(|error| DiskError::own(Act::Write, path, ErrorKind::InvalidData, &error.to_string()))
}

/// Puts our lock beside `path` unless one stands there already, and says what stood there: after `Lock::None` the lock is ours. Whatever else
/// it says, the file may be opened and saved all the same.
///
/// # Errors
/// The disk's. Without a lock the work goes on.
pub fn take(disk: &dyn Disk, path: &Path, me: &Holder) -> Result<Lock, DiskError> {
    let lock = lock_path(disk, path);
    for _ in 0..TRIES {
        match disk.write_new(&lock, text(me, &lock)?.as_bytes()) {
            Ok(()) => return Ok(Lock::None),
            Err(error) if error.kind == ErrorKind::AlreadyExists => match look(disk, path)? {
                // It was let go of in between, and is not ours by that.
                Lock::None => {}
                other => return Ok(other),
            },
            Err(error) => {
                // A lock written in part would only worry the others.
                if !matches!(error.kind, ErrorKind::PermissionDenied | ErrorKind::NotFound | ErrorKind::ReadOnlyFilesystem) {
                    let _ = disk.remove(&lock);
                }
                return Err(error);
            }
        }
    }
    // A name that is taken and leads nowhere, such as a broken link.
    Ok(Lock::Unreadable)
}

/// Replaces whatever lock stands there by ours: to take over one that was left behind, or to say that we still have the file open.
///
/// # Errors
/// The disk's.
pub fn take_over(disk: &dyn Disk, path: &Path, me: &Holder) -> Result<(), DiskError> {
    let lock = lock_path(disk, path);
    replace_whole(disk, &lock, text(me, &lock)?.as_bytes())
}

/// Removes our lock; another's is left alone. Says whether ours was there.
///
/// # Errors
/// The disk's.
pub fn release(disk: &dyn Disk, path: &Path, me: &Holder) -> Result<bool, DiskError> {
    match look(disk, path)? {
        Lock::Held(holder) if holder.is_same_program(me) => disk.remove(&lock_path(disk, path)).map(|()| true),
        _ => Ok(false),
    }
}
