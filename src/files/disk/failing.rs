//! A disk that fails one chosen call, for tests and fault drills: walking every call × every error shows that no failure loses a file.

use std::{
    io::ErrorKind,
    path::{Path, PathBuf},
    sync::{
        Mutex, PoisonError,
        atomic::{AtomicUsize, Ordering},
    },
};

use super::{Act, Disk, DiskError, Metadata};

/// What the failing call still does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Effect {
    /// Nothing.
    NotDone,
    /// All of it, and then says it failed: a share whose answer was lost.
    DoneAnyway,
    /// A write stops after so many bytes and says so; any other call does nothing.
    Short(usize),
    /// A write stops after so many bytes and says that all is well; any other call does nothing and fails.
    ShortUnsaid(usize),
}

/// Which call fails, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Failure {
    /// The number of the call, the first being 1.
    pub call: usize,
    /// The error it returns.
    pub kind: ErrorKind,
    /// What it still does.
    pub effect: Effect,
    /// Whether every later call fails as well (with nothing done): the disk is gone.
    pub for_good: bool,
}

/// Wraps a disk and fails as told. For tests and fault drills.
#[derive(Debug)]
pub struct FailingDisk<D> {
    inner: D,
    failure: Option<Failure>,
    made: AtomicUsize,
    log: Mutex<Vec<(Act, PathBuf)>>,
}

impl<D: Disk> FailingDisk<D> {
    /// Fails as `failure` says; `None` never fails and only counts.
    pub fn new(inner: D, failure: Option<Failure>) -> Self {
        Self { inner, failure, made: AtomicUsize::new(0), log: Mutex::default() }
    }

    /// The disk inside.
    pub fn inner(&self) -> &D {
        &self.inner
    }

    /// Every call made so far with its path, in order.
    pub fn calls(&self) -> Vec<(Act, PathBuf)> {
        self.log.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// How this call is to fail, if it is.
    fn next(&self, act: Act, path: &Path) -> Option<(Effect, DiskError)> {
        self.log.lock().unwrap_or_else(PoisonError::into_inner).push((act, path.to_path_buf()));
        let number = self.made.fetch_add(1, Ordering::SeqCst) + 1;
        let failure = self.failure?;
        let error = DiskError::own(act, path, failure.kind, "the disk was told to fail");
        if number == failure.call {
            Some((failure.effect, error))
        } else {
            (failure.for_good && number > failure.call).then_some((Effect::NotDone, error))
        }
    }

    fn call<T>(&self, act: Act, path: &Path, run: impl FnOnce(&D) -> Result<T, DiskError>) -> Result<T, DiskError> {
        match self.next(act, path) {
            None => run(&self.inner),
            Some((Effect::DoneAnyway, error)) => run(&self.inner).and(Err(error)),
            Some((_, error)) => Err(error),
        }
    }
}

impl<D: Disk> Disk for FailingDisk<D> {
    fn read(&self, path: &Path, limit_bytes: u64) -> Result<Vec<u8>, DiskError> {
        self.call(Act::Read, path, |disk| disk.read(path, limit_bytes))
    }

    fn write_new(&self, path: &Path, bytes: &[u8]) -> Result<(), DiskError> {
        match self.next(Act::Write, path) {
            None => self.inner.write_new(path, bytes),
            Some((Effect::NotDone, error)) => Err(error),
            Some((Effect::DoneAnyway, error)) => self.inner.write_new(path, bytes).and(Err(error)),
            Some((Effect::Short(count), error)) => self.inner.write_new(path, &bytes[..count.min(bytes.len())]).and(Err(error)),
            Some((Effect::ShortUnsaid(count), _)) => self.inner.write_new(path, &bytes[..count.min(bytes.len())]),
        }
    }

    fn sync_file(&self, path: &Path) -> Result<(), DiskError> {
        self.call(Act::Sync, path, |disk| disk.sync_file(path))
    }

    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        self.call(Act::Rename, to, |disk| disk.rename(from, to))
    }

    fn rename_new(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        self.call(Act::Rename, to, |disk| disk.rename_new(from, to))
    }

    fn sync_folder(&self, folder: &Path) -> Result<(), DiskError> {
        self.call(Act::SyncFolder, folder, |disk| disk.sync_folder(folder))
    }

    fn metadata(&self, path: &Path) -> Result<Metadata, DiskError> {
        self.call(Act::Look, path, |disk| disk.metadata(path))
    }

    fn copy_permissions(&self, like: &Path, to: &Path) -> Result<(), DiskError> {
        self.call(Act::Permissions, to, |disk| disk.copy_permissions(like, to))
    }

    fn remove(&self, path: &Path) -> Result<(), DiskError> {
        self.call(Act::Remove, path, |disk| disk.remove(path))
    }

    fn list(&self, folder: &Path) -> Result<Vec<PathBuf>, DiskError> {
        self.call(Act::List, folder, |disk| disk.list(folder))
    }

    fn create_folders(&self, folder: &Path) -> Result<(), DiskError> {
        self.call(Act::CreateFolder, folder, |disk| disk.create_folders(folder))
    }

    fn resolve(&self, path: &Path) -> Result<PathBuf, DiskError> {
        self.call(Act::Resolve, path, |disk| disk.resolve(path))
    }
}
