//! The machine's own disk.

use std::{
    any::Any,
    fs, io,
    io::{ErrorKind, Read as _, Write as _},
    path::{Path, PathBuf},
    time::Duration,
};

use super::{Act, Disk, DiskError, Kind, Metadata};

/// How often, and how long apart, another's save is waited for: a second in all.
const ALONE_TRIES: usize = 200;
const ALONE_WAIT: Duration = Duration::from_millis(5);

/// The machine's own disk, through the standard library.
#[derive(Debug, Clone, Copy, Default)]
pub struct RealDisk;

impl Disk for RealDisk {
    fn read(&self, path: &Path, limit_bytes: u64) -> Result<Vec<u8>, DiskError> {
        // Asked before opening: opening a pipe would wait for ever.
        let about = fs::metadata(path).map_err(|error| DiskError::new(Act::Read, path, &error))?;
        if !about.is_file() {
            return Err(DiskError::own(Act::Read, path, ErrorKind::InvalidInput, "it is not a file"));
        }
        let mut bytes = Vec::new();
        fs::File::open(path)
            .and_then(|file| file.take(limit_bytes.saturating_add(1)).read_to_end(&mut bytes))
            .map_err(|error| DiskError::new(Act::Read, path, &error))?;
        if bytes.len() as u64 > limit_bytes {
            return Err(DiskError::own(Act::Read, path, ErrorKind::FileTooLarge, "it is too large"));
        }
        Ok(bytes)
    }

    fn write_new(&self, path: &Path, bytes: &[u8]) -> Result<(), DiskError> {
        fs::OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(path)
            .and_then(|mut file| file.write_all(bytes))
            .map_err(|error| DiskError::new(Act::Write, path, &error))
    }

    fn sync_file(&self, path: &Path) -> Result<(), DiskError> {
        // Windows flushes only through a handle that may write; elsewhere reading is enough and works on files without write permission.
        fs::OpenOptions::new()
            .read(true)
            .write(cfg!(windows))
            .open(path)
            .and_then(|file| file.sync_all())
            .map_err(|error| DiskError::new(Act::Sync, path, &error))
    }

    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        fs::rename(from, to).map_err(|error| DiskError::new(Act::Rename, to, &error))
    }

    fn rename_new(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        rename_without_replacing(from, to).map_err(|error| DiskError::new(Act::Rename, to, &error))
    }

    fn sync_folder(&self, folder: &Path) -> Result<(), DiskError> {
        // Windows has no call for it, and some shared folders refuse it: there the names are as safe as they can be made.
        if cfg!(windows) {
            return Ok(());
        }
        let opened = fs::File::open(folder).and_then(|opened| {
            // Syncing a file by mistake would succeed and keep no name safe.
            if opened.metadata()?.is_dir() { Ok(opened) } else { Err(ErrorKind::NotADirectory.into()) }
        });
        match opened.and_then(|opened| opened.sync_all()) {
            Err(error) if !matches!(error.kind(), ErrorKind::InvalidInput | ErrorKind::Unsupported) => {
                Err(DiskError::new(Act::SyncFolder, folder, &error))
            }
            _ => Ok(()),
        }
    }

    fn metadata(&self, path: &Path) -> Result<Metadata, DiskError> {
        let about = fs::symlink_metadata(path).map_err(|error| DiskError::new(Act::Look, path, &error))?;
        let kind = match about.file_type() {
            kind if kind.is_file() => Kind::File,
            kind if kind.is_dir() => Kind::Folder,
            kind if kind.is_symlink() => Kind::Link,
            _ => Kind::Other,
        };
        Ok(Metadata {
            kind,
            len_bytes: about.len(),
            modified: about.modified().ok(),
            read_only: kind == Kind::File && (about.permissions().readonly() || refuses_this_person(path)),
            links: links(&about),
            mode: mode(&about),
        })
    }

    fn copy_permissions(&self, like: &Path, to: &Path) -> Result<(), DiskError> {
        fs::metadata(like)
            .and_then(|about| fs::set_permissions(to, about.permissions()))
            .map_err(|error| DiskError::new(Act::Permissions, to, &error))
    }

    fn remove(&self, path: &Path) -> Result<(), DiskError> {
        fs::remove_file(path).map_err(|error| DiskError::new(Act::Remove, path, &error))
    }

    fn list(&self, folder: &Path) -> Result<Vec<PathBuf>, DiskError> {
        let mut paths = fs::read_dir(folder)
            .and_then(|entries| entries.map(|entry| entry.map(|entry| entry.path())).collect::<io::Result<Vec<_>>>())
            .map_err(|error| DiskError::new(Act::List, folder, &error))?;
        paths.sort();
        Ok(paths)
    }

    fn create_folders(&self, folder: &Path) -> Result<(), DiskError> {
        fs::create_dir_all(folder).map_err(|error| DiskError::new(Act::CreateFolder, folder, &error))
    }

    fn resolve(&self, path: &Path) -> Result<PathBuf, DiskError> {
        fs::canonicalize(path).map_err(|error| DiskError::new(Act::Resolve, path, &error))
    }

    fn alone(&self, folder: &Path) -> Option<Box<dyn Any + Send>> {
        let folder = fs::File::open(folder).ok()?;
        for _ in 0..ALONE_TRIES {
            match folder.try_lock() {
                Ok(()) => return Some(Box::new(folder)),
                Err(fs::TryLockError::WouldBlock) => std::thread::sleep(ALONE_WAIT),
                Err(fs::TryLockError::Error(_)) => return None,
            }
        }
        None
    }
}

/// Renames only when the new name is free, in one step where the system offers it.
fn rename_without_replacing(from: &Path, to: &Path) -> io::Result<()> {
    #[cfg(any(target_os = "linux", target_vendor = "apple"))]
    {
        use rustix::{fs::RenameFlags, io::Errno};
        match rustix::fs::renameat_with(rustix::fs::CWD, from, rustix::fs::CWD, to, RenameFlags::NOREPLACE) {
            Err(Errno::INVAL | Errno::NOSYS | Errno::NOTSUP) => {}
            other => return other.map_err(io::Error::from),
        }
    }
    // A second name cannot be given where one stands, so this too never replaces.
    match fs::hard_link(from, to) {
        Ok(()) => {
            // The file has its name; a first name that will not go is a stray temporary and is swept later.
            let _ = fs::remove_file(from);
            return Ok(());
        }
        Err(error) if error.kind() == ErrorKind::AlreadyExists => return Err(error),
        Err(_) => {}
    }
    // Neither call exists on this file system: look, then rename. Another program could still step in between.
    match fs::symlink_metadata(to) {
        Ok(_) => Err(ErrorKind::AlreadyExists.into()),
        Err(error) if error.kind() == ErrorKind::NotFound => fs::rename(from, to),
        Err(error) => Err(error),
    }
}

/// Whether the system would refuse this person's writing although the file itself can be written: another owner, or a read-only disk.
/// Renaming over such a file would succeed all the same, so it must be asked.
#[cfg(unix)]
fn refuses_this_person(path: &Path) -> bool {
    use rustix::io::Errno;
    matches!(rustix::fs::access(path, rustix::fs::Access::WRITE_OK), Err(Errno::ACCESS | Errno::PERM | Errno::ROFS))
}

#[cfg(not(unix))]
fn refuses_this_person(_path: &Path) -> bool {
    false
}

#[cfg(unix)]
fn links(about: &fs::Metadata) -> u64 {
    std::os::unix::fs::MetadataExt::nlink(about)
}

#[cfg(not(unix))]
fn links(_about: &fs::Metadata) -> u64 {
    1
}

#[cfg(unix)]
fn mode(about: &fs::Metadata) -> Option<u32> {
    Some(std::os::unix::fs::MetadataExt::mode(about) & 0o7777)
}

#[cfg(not(unix))]
fn mode(_about: &fs::Metadata) -> Option<u32> {
    None
}
