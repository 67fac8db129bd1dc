//! Recovery files: what was not saved yet when the program or the machine went down.
//!
//! They live in a folder of their own, given by the caller, one for each document: a seal, a header, then the document's bytes. The seal is
//! the hash of all that follows, so a torn file is never offered as good. [`RecoveryWriter`] writes them on its own thread.

mod writer;

use std::{
    ffi::OsStr,
    io::ErrorKind,
    path::{Path, PathBuf},
};

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use crate::files::{
    disk::{Act, Disk, DiskError, beside::replace_whole, folder_of},
    save::{Hash, LIMIT_BYTES},
};

pub use writer::{Contents, RecoveryReport, RecoveryWriter, Snapshot};

/// How every recovery file ends.
const ENDING: &str = "recovery";
/// The first words of every recovery file; the number is its format.
const MAGIC: &str = "pourbook-recovery 1 ";

/// Which document a recovery file is for.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct RecoveryKey {
    /// Where the document is saved; `None` when it never was.
    pub path: Option<PathBuf>,
    /// The document's own id, so that two unsaved ones, or one replaced by another under the same name, stay apart.
    pub job_id: String,
}

impl RecoveryKey {
    /// The recovery file in `folder`: named by a hash, since a path is no file name.
    #[must_use]
    pub fn file_in(&self, folder: &Path) -> PathBuf {
        let mut hasher = blake3::Hasher::new();
        let path = self.path.as_deref().map_or(OsStr::new(""), Path::as_os_str).as_encoded_bytes();
        // The length first, so that no path and id run together into another pair.
        hasher.update(&(path.len() as u64).to_le_bytes()).update(path).update(self.job_id.as_bytes());
        folder.join(format!("{}.{ENDING}", &hasher.finalize().to_hex()[..32]))
    }
}

/// What may be recovered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecoveryFound {
    /// Where the recovery file lies.
    pub recovery_path: PathBuf,
    /// Which document it is for.
    pub key: RecoveryKey,
    /// The hash of the file the unsaved work began from: if the file has another by now, show both. `None` when it never was saved.
    pub base: Option<Hash>,
    /// When the work was set aside.
    pub time: Timestamp,
    /// The document, whole.
    pub bytes: Vec<u8>,
}

/// Everything in a recovery folder.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct RecoveryFolder {
    /// What may be recovered, newest first.
    pub found: Vec<RecoveryFound>,
    /// Files that are torn or cannot be read, with the reason: not offered, but not hidden either.
    pub not_good: Vec<(PathBuf, String)>,
}

#[derive(Debug, Serialize, Deserialize)]
struct Header {
    path: Option<String>,
    /// Only for a path that is not Unicode: its very bytes.
    path_bytes: Option<Vec<u8>>,
    job_id: String,
    base: Option<String>,
    time: Timestamp,
}

/// The text of a recovery file.
fn sealed(key: &RecoveryKey, base: Option<&Hash>, time: Timestamp, bytes: &[u8]) -> Result<Vec<u8>, String> {
    let path_bytes = key.path.as_deref().filter(|path| path.to_str().is_none()).map(|path| path.as_os_str().as_encoded_bytes().to_vec());
    let header = Header {
        path: key.path.as_deref().map(|path| path.to_string_lossy().into_owned()),
        path_bytes,
        job_id: key.job_id.clone(),
        base: base.map(|hash| hash.to_hex().to_string()),
        time,
    };
    let mut body = ron::to_string(&header).map_err(|error| error.to_string())?.into_bytes();
    body.push(b'\n');
    body.extend_from_slice(bytes);
    let mut text = format!("{MAGIC}{}\n", blake3::hash(&body).to_hex()).into_bytes();
    text.append(&mut body);
    Ok(text)
}

/// Reads a recovery file's text; the error completes "not offered because …".
fn unsealed(recovery_path: &Path, text: &[u8]) -> Result<RecoveryFound, String> {
    let (first, body) = split_line(text).ok_or("its first line is torn")?;
    let seal = first.strip_prefix(MAGIC.as_bytes()).ok_or("it is not a recovery file of a kind known here")?;
    let seal = Hash::from_hex(seal).map_err(|_| "its seal is torn")?;
    if blake3::hash(body) != seal {
        return Err("it is torn: its contents do not match its seal".to_owned());
    }
    let (header, bytes) = split_line(body).ok_or("its header is torn")?;
    let header: Header = ron::de::from_bytes(header).map_err(|error| format!("its header cannot be read: {error}"))?;
    let base = header.base.map(Hash::from_hex).transpose().map_err(|_| "its base cannot be read")?;
    let path = match header.path_bytes {
        Some(bytes) => Some(path_from(bytes).ok_or("its path cannot be read on this system")?),
        None => header.path.map(PathBuf::from),
    };
    let key = RecoveryKey { path, job_id: header.job_id };
    Ok(RecoveryFound { recovery_path: recovery_path.to_path_buf(), key, base, time: header.time, bytes: bytes.to_vec() })
}

fn split_line(text: &[u8]) -> Option<(&[u8], &[u8])> {
    let end = text.iter().position(|&byte| byte == b'\n')?;
    Some((&text[..end], &text[end + 1..]))
}

#[cfg(unix)]
fn path_from(bytes: Vec<u8>) -> Option<PathBuf> {
    Some(PathBuf::from(<std::ffi::OsString as std::os::unix::ffi::OsStringExt>::from_vec(bytes)))
}

#[cfg(not(unix))]
fn path_from(bytes: Vec<u8>) -> Option<PathBuf> {
    String::from_utf8(bytes).ok().map(PathBuf::from)
}

/// Writes the recovery file of a document in place of its last one, safe from a power cut after `Ok`.
///
/// # Errors
/// The disk's; the last recovery file then still stands.
pub fn write(
    disk: &dyn Disk,
    folder: &Path,
    key: &RecoveryKey,
    base: Option<&Hash>,
    time: Timestamp,
    bytes: &[u8],
) -> Result<(), DiskError> {
    let file = key.file_in(folder);
    let text = sealed(key, base, time, bytes).map_err(|reason| DiskError::own(Act::Write, &file, ErrorKind::InvalidData, &reason))?;
    make_folder(disk, folder)?;
    replace_whole(disk, &file, &text)
}

/// Creates the folder so that a power cut does not take it away again: every new folder's name is synced where it stands.
fn make_folder(disk: &dyn Disk, folder: &Path) -> Result<(), DiskError> {
    let mut missing = Vec::new();
    for above in folder.ancestors().filter(|above| !above.as_os_str().is_empty()) {
        if disk.exists(above)? {
            break;
        }
        missing.push(above);
    }
    if !missing.is_empty() {
        disk.create_folders(folder)?;
    }
    missing.into_iter().rev().try_for_each(|made| disk.sync_folder(folder_of(made)))
}

/// Removes the recovery file of a document; one that is not there is no error.
///
/// # Errors
/// The disk's.
pub fn discard(disk: &dyn Disk, folder: &Path, key: &RecoveryKey) -> Result<(), DiskError> {
    match disk.remove(&key.file_in(folder)) {
        Err(error) if error.kind == ErrorKind::NotFound => Ok(()),
        other => other.and_then(|()| disk.sync_folder(folder)),
    }
}

/// Everything that may be recovered. A document that is open in another running program shows up too: ask its lock.
///
/// # Errors
/// The disk's, when the folder stands and cannot be listed.
pub fn find(disk: &dyn Disk, folder: &Path) -> Result<RecoveryFolder, DiskError> {
    let paths = match disk.list(folder) {
        Err(error) if error.kind == ErrorKind::NotFound => return Ok(RecoveryFolder::default()),
        other => other?,
    };
    let mut listed = RecoveryFolder::default();
    for path in paths.into_iter().filter(|path| path.extension() == Some(OsStr::new(ENDING))) {
        match disk.read(&path, LIMIT_BYTES).map_err(|error| error.to_string()).and_then(|text| unsealed(&path, &text)) {
            Ok(found) => listed.found.push(found),
            Err(reason) => listed.not_good.push((path, reason)),
        }
    }
    listed.found.sort_by_key(|found| std::cmp::Reverse(found.time));
    Ok(listed)
}
