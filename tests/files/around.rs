//! A simulated disk with something put around its calls.

use std::path::{Path, PathBuf};

use pourbook::files::disk::{Act, Disk, DiskError, Metadata, SimulatedDisk};

/// What is told to the one who stands around a call.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    Before,
    After,
}

/// Tells `watch` before and after every call. When it says `false` before a call that gives nothing back, the call is left out and said to be done.
pub struct Around<F> {
    pub inner: SimulatedDisk,
    pub watch: F,
}

impl<F: Fn(Act, &Path, When) -> bool + Send + Sync> Around<F> {
    fn give<T>(&self, act: Act, path: &Path, run: impl FnOnce(&SimulatedDisk) -> Result<T, DiskError>) -> Result<T, DiskError> {
        (self.watch)(act, path, When::Before);
        let result = run(&self.inner);
        (self.watch)(act, path, When::After);
        result
    }

    fn unless(&self, act: Act, path: &Path, run: impl FnOnce(&SimulatedDisk) -> Result<(), DiskError>) -> Result<(), DiskError> {
        if !(self.watch)(act, path, When::Before) {
            return Ok(());
        }
        let result = run(&self.inner);
        (self.watch)(act, path, When::After);
        result
    }
}

impl<F: Fn(Act, &Path, When) -> bool + Send + Sync> Disk for Around<F> {
    fn read(&self, path: &Path, limit_bytes: u64) -> Result<Vec<u8>, DiskError> {
        self.give(Act::Read, path, |disk| disk.read(path, limit_bytes))
    }
    fn write_new(&self, path: &Path, bytes: &[u8]) -> Result<(), DiskError> {
        self.unless(Act::Write, path, |disk| disk.write_new(path, bytes))
    }
    fn sync_file(&self, path: &Path) -> Result<(), DiskError> {
        self.unless(Act::Sync, path, |disk| disk.sync_file(path))
    }
    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        self.unless(Act::Rename, to, |disk| disk.rename(from, to))
    }
    fn rename_new(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        self.unless(Act::Rename, to, |disk| disk.rename_new(from, to))
    }
    fn sync_folder(&self, folder: &Path) -> Result<(), DiskError> {
        self.unless(Act::SyncFolder, folder, |disk| disk.sync_folder(folder))
    }
    fn metadata(&self, path: &Path) -> Result<Metadata, DiskError> {
        self.give(Act::Look, path, |disk| disk.metadata(path))
    }
    fn copy_permissions(&self, like: &Path, to: &Path) -> Result<(), DiskError> {
        self.unless(Act::Permissions, to, |disk| disk.copy_permissions(like, to))
    }
    fn remove(&self, path: &Path) -> Result<(), DiskError> {
        self.unless(Act::Remove, path, |disk| disk.remove(path))
    }
    fn list(&self, folder: &Path) -> Result<Vec<PathBuf>, DiskError> {
        self.give(Act::List, folder, |disk| disk.list(folder))
    }
    fn create_folders(&self, folder: &Path) -> Result<(), DiskError> {
        self.unless(Act::CreateFolder, folder, |disk| disk.create_folders(folder))
    }
    fn resolve(&self, path: &Path) -> Result<PathBuf, DiskError> {
        self.give(Act::Resolve, path, |disk| disk.resolve(path))
    }
}
