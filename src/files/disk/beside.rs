//! Writing a whole file beside another under a temporary name, and finding free names.
//!
//! A temporary always begins with [`TEMPORARY_PREFIX`], is never a job, and once it is old is swept.

use std::{
    ffi::{OsStr, OsString},
    io::ErrorKind,
    path::{Path, PathBuf},
    time::{Duration, SystemTime},
};

use super::{Act, Disk, DiskError, Kind, folder_of};

/// How every temporary begins. The leading point hides it in most listings.
pub const TEMPORARY_PREFIX: &str = ".pourbook-saving-";

/// Names longer than this many bytes are refused by most file systems.
const LONGEST_NAME_BYTES: usize = 255;
/// So many free names are tried before giving up: more taken ones mean that something else is wrong.
const TRIES: u32 = 1000;

/// Whether a path is an unfinished save of ours and so never a job.
#[must_use]
pub fn is_temporary(path: &Path) -> bool {
    path.file_name().is_some_and(|name| name.as_encoded_bytes().starts_with(TEMPORARY_PREFIX.as_bytes()))
}

/// A temporary that could not be finished.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unfinished {
    /// What failed.
    pub error: DiskError,
    /// Where the unfinished temporary still lies, if it could not be removed.
    pub left: Option<PathBuf>,
}

/// Writes `bytes` whole and synced under a temporary name in the folder of `target`, with the permissions of `like`, and reads them back.
///
/// # Errors
/// The disk's; the temporary is removed again where that works.
pub fn write_beside(disk: &dyn Disk, target: &Path, bytes: &[u8], like: Option<&Path>) -> Result<PathBuf, Unfinished> {
    // A hash for the name: the target's own name with a prefix could become too long.
    let short = blake3::hash(target.file_name().unwrap_or_default().as_encoded_bytes()).to_hex();
    let mut number = 1;
    let temporary = loop {
        let temporary = folder_of(target).join(format!("{TEMPORARY_PREFIX}{}-{number}.tmp", &short[..8]));
        match disk.write_new(&temporary, bytes) {
            Ok(()) => break temporary,
            Err(error) if error.kind == ErrorKind::AlreadyExists && number < TRIES => number += 1,
            // The name belongs to another save: not ours to remove.
            Err(error) if error.kind == ErrorKind::AlreadyExists => return Err(Unfinished { error, left: None }),
            Err(error) => return Err(Unfinished { error, left: clear(disk, &temporary) }),
        }
    };
    match finish(disk, &temporary, bytes, like) {
        Ok(()) => Ok(temporary),
        Err(error) => Err(Unfinished { error, left: clear(disk, &temporary) }),
    }
}

fn finish(disk: &dyn Disk, temporary: &Path, bytes: &[u8], like: Option<&Path>) -> Result<(), DiskError> {
    // Permissions before the sync, so that the sync carries them too.
    if let Some(like) = like {
        disk.copy_permissions(like, temporary)?;
    }
    disk.sync_file(temporary)?;
    // Some shares and sticks say "written" and have not.
    if disk.read(temporary, bytes.len() as u64)? == bytes {
        Ok(())
    } else {
        Err(DiskError::own(Act::ReadBack, temporary, ErrorKind::InvalidData, "the disk gives back something else"))
    }
}

/// Removes a temporary of ours; says where it lies if it will not go.
pub fn clear(disk: &dyn Disk, temporary: &Path) -> Option<PathBuf> {
    match disk.remove(temporary) {
        Ok(()) => None,
        Err(error) if error.kind == ErrorKind::NotFound => None,
        Err(_) => Some(temporary.to_path_buf()),
    }
}

/// Writes a whole file in place of whatever stands there, synced: after `Ok` it survives a power cut, after an error the old one stands or
/// the new one does, never a part.
///
/// # Errors
/// The disk's.
pub fn replace_whole(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> Result<(), DiskError> {
    let temporary = write_beside(disk, path, bytes, None).map_err(|unfinished| unfinished.error)?;
    if let Err(error) = disk.rename(&temporary, path) {
        clear(disk, &temporary);
        return Err(error);
    }
    disk.sync_folder(folder_of(path))
}

/// Gives a finished temporary the first free of the names `name(1)`, `name(2)`, … and syncs the folder. A file that already holds these very
/// bytes under one of them is used instead, so that saving twice leaves one copy.
///
/// # Errors
/// The disk's, with where the bytes lie: under the new name, not yet safe from a power cut, or still in the temporary.
pub fn settle(disk: &dyn Disk, temporary: &Path, bytes: &[u8], name: impl Fn(u32) -> PathBuf) -> Result<PathBuf, Unfinished> {
    let still_temporary = |error| Unfinished { error, left: Some(temporary.to_path_buf()) };
    for number in 1..=TRIES {
        let settled = name(number);
        match disk.rename_new(temporary, &settled) {
            Ok(()) => {}
            Err(_) if holds(disk, &settled, bytes) => {
                clear(disk, temporary);
                disk.sync_file(&settled).map_err(|error| Unfinished { error, left: Some(settled.clone()) })?;
            }
            Err(error) if error.kind == ErrorKind::AlreadyExists && number < TRIES => continue,
            Err(error) => return Err(still_temporary(error)),
        }
        return match disk.sync_folder(folder_of(&settled)) {
            Ok(()) => Ok(settled),
            Err(error) => Err(Unfinished { error, left: Some(settled) }),
        };
    }
    Err(still_temporary(DiskError::own(Act::Rename, temporary, ErrorKind::AlreadyExists, "the names are all taken")))
}

/// Whether a file surely holds these bytes; anything unclear is a no.
pub fn holds(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> bool {
    let is_file = disk.metadata(path).is_ok_and(|about| about.kind == Kind::File);
    is_file && disk.read(path, bytes.len() as u64).is_ok_and(|found| found == bytes)
}

/// The path with `middle` put before its ending: `lilac (saved beside).ron`. Shortened when the name would grow too long.
#[must_use]
pub fn before_ending(path: &Path, middle: &str) -> PathBuf {
    let stem = path.file_stem().unwrap_or_default();
    let mut ending = OsString::new();
    if let Some(extension) = path.extension() {
        ending.push(".");
        ending.push(extension);
    }
    path.with_file_name(joined(stem, middle, &ending))
}

/// The path with `tail` added to its name: `lilac.ron.hand-edited`. Shortened when the name would grow too long.
#[must_use]
pub fn after_ending(path: &Path, tail: &str) -> PathBuf {
    path.with_file_name(joined(path.file_name().unwrap_or_default(), tail, OsStr::new("")))
}

fn joined(stem: &OsStr, middle: &str, ending: &OsStr) -> OsString {
    let room = LONGEST_NAME_BYTES.saturating_sub(middle.len() + ending.len());
    let mut name = if stem.len() <= room {
        stem.to_owned()
    } else {
        let mut short = stem.to_string_lossy().into_owned();
        while short.len() > room {
            short.pop();
        }
        OsString::from(short)
    };
    name.push(middle);
    name.push(ending);
    name
}

/// What a sweep did.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Swept {
    /// The temporaries that are gone.
    pub removed: Vec<PathBuf>,
    /// Those that would not go, with the reason.
    pub kept: Vec<(PathBuf, DiskError)>,
}

/// Removes temporaries of ours left behind by a crash, when they last changed more than `age` before `now`: a younger one may be another
/// program's save still going on. Nothing without our prefix, and no link or folder, is ever touched.
///
/// # Errors
/// The disk's, when the folder cannot be listed.
pub fn sweep(disk: &dyn Disk, folder: &Path, now: SystemTime, age: Duration) -> Result<Swept, DiskError> {
    let mut swept = Swept::default();
    for path in disk.list(folder)?.into_iter().filter(|path| is_temporary(path)) {
        let is_old = disk.metadata(&path).is_ok_and(|about| {
            let lain = about.modified.and_then(|modified| now.duration_since(modified).ok());
            about.kind == Kind::File && lain.is_some_and(|lain| lain > age)
        });
        if is_old {
            match disk.remove(&path) {
                Ok(()) => swept.removed.push(path),
                Err(error) => swept.kept.push((path, error)),
            }
        }
    }
    Ok(swept)
}
