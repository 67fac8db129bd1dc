//! The thread that writes recovery files, so that a slow disk never holds up typing.
//!
//! There is one place for each document: a newer snapshot takes the place of one still waiting, so work never queues up.

use std::{
    collections::BTreeMap,
    io,
    panic::{AssertUnwindSafe, catch_unwind},
    path::{Path, PathBuf},
    sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError},
    thread,
};

use jiff::Timestamp;

use super::{RecoveryKey, discard, write};
use crate::files::{disk::Disk, save::Hash};

/// The document's bytes, or how to make them on the writer's thread.
pub enum Contents {
    /// Ready.
    Bytes(Arc<[u8]>),
    /// Made when it is this snapshot's turn; one that is replaced before is never made.
    Make(Box<dyn FnOnce() -> Result<Vec<u8>, String> + Send>),
}

/// A document as it stands, to be set aside.
pub struct Snapshot {
    /// Which document.
    pub key: RecoveryKey,
    /// The hash of the file it began from.
    pub base: Option<Hash>,
    /// Now.
    pub time: Timestamp,
    /// The document's revision; grows with every change.
    pub revision: u64,
    /// Its bytes.
    pub contents: Contents,
}

/// How the last writing or removing for one document went.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecoveryReport {
    /// Which document.
    pub key: RecoveryKey,
    /// The revision that was set aside, or saved and so removed.
    pub revision: u64,
    /// A sentence when it failed.
    pub result: Result<(), String>,
}

enum Task {
    Write(Snapshot),
    Remove { key: RecoveryKey, revision: u64 },
}

#[derive(Default)]
struct Mailbox {
    waiting: BTreeMap<RecoveryKey, Task>,
    /// The newest revision on the disk or being written.
    written: BTreeMap<RecoveryKey, u64>,
    reports: BTreeMap<RecoveryKey, RecoveryReport>,
    closed: bool,
}

#[derive(Default)]
struct Shared {
    mailbox: Mutex<Mailbox>,
    arrived: Condvar,
}

impl Shared {
    fn lock(&self) -> MutexGuard<'_, Mailbox> {
        self.mailbox.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Writes recovery files on its own thread. Dropping it finishes what is waiting: at most one writing for each document.
pub struct RecoveryWriter {
    shared: Arc<Shared>,
    worker: Option<thread::JoinHandle<()>>,
}

impl RecoveryWriter {
    /// Starts the thread. `folder` is created with the first writing. `done` is called on the thread after each report, to wake the window.
    ///
    /// # Errors
    /// The system's, when it gives no thread.
    pub fn start(disk: Arc<dyn Disk>, folder: PathBuf, done: impl Fn() + Send + 'static) -> io::Result<Self> {
        let shared = Arc::new(Shared::default());
        let theirs = Arc::clone(&shared);
        let worker = thread::Builder::new().name("recovery".to_owned()).spawn(move || work(&theirs, disk.as_ref(), &folder, &done))?;
        Ok(Self { shared, worker: Some(worker) })
    }

    /// Sets a snapshot aside; returns at once. It takes the place of an older one of the same document still waiting.
    pub fn offer(&self, snapshot: Snapshot) {
        let mut mailbox = self.shared.lock();
        let newer_waits = matches!(mailbox.waiting.get(&snapshot.key), Some(Task::Write(other)) if other.revision > snapshot.revision);
        if !newer_waits {
            mailbox.waiting.insert(snapshot.key.clone(), Task::Write(snapshot));
            self.shared.arrived.notify_one();
        }
    }

    /// Says that a document was saved as of `revision`: its recovery file goes, unless it holds a newer revision. Offer such a newer one
    /// again with the new base. Returns at once.
    pub fn saved(&self, key: &RecoveryKey, revision: u64) {
        let mut mailbox = self.shared.lock();
        let newer_waits = matches!(mailbox.waiting.get(key), Some(Task::Write(other)) if other.revision > revision);
        let newer_written = mailbox.written.get(key).is_some_and(|&written| written > revision);
        if newer_waits {
            return;
        }
        if newer_written {
            // What waits is older than what is on the disk and saved by now.
            mailbox.waiting.remove(key);
            return;
        }
        mailbox.waiting.insert(key.clone(), Task::Remove { key: key.clone(), revision });
        self.shared.arrived.notify_one();
    }

    /// The last report for each document since this was last asked.
    #[must_use]
    pub fn take_reports(&self) -> Vec<RecoveryReport> {
        std::mem::take(&mut self.shared.lock().reports).into_values().collect()
    }
}

impl Drop for RecoveryWriter {
    fn drop(&mut self) {
        self.shared.lock().closed = true;
        self.shared.arrived.notify_one();
        if let Some(worker) = self.worker.take() {
            // The thread catches its own panics; there is nobody to tell here.
            let _ = worker.join();
        }
    }
}

fn work(shared: &Shared, disk: &dyn Disk, folder: &Path, done: &dyn Fn()) {
    while let Some(task) = next(shared) {
        let report = match task {
            Task::Write(snapshot) => set_aside(disk, folder, snapshot),
            Task::Remove { key, revision } => {
                let result = discard(disk, folder, &key).map_err(|error| error.to_string());
                RecoveryReport { key, revision, result }
            }
        };
        shared.lock().reports.insert(report.key.clone(), report);
        done();
    }
}

/// Waits for a task; `None` when closed and nothing waits.
fn next(shared: &Shared) -> Option<Task> {
    let mut mailbox = shared.lock();
    loop {
        if let Some((key, task)) = mailbox.waiting.pop_first() {
            match &task {
                Task::Write(snapshot) => mailbox.written.insert(key, snapshot.revision),
                Task::Remove { .. } => mailbox.written.remove(&key),
            };
            return Some(task);
        }
        if mailbox.closed {
            return None;
        }
        mailbox = shared.arrived.wait(mailbox).unwrap_or_else(PoisonError::into_inner);
    }
}

fn set_aside(disk: &dyn Disk, folder: &Path, snapshot: Snapshot) -> RecoveryReport {
    let Snapshot { key, base, time, revision, contents } = snapshot;
    let bytes: Result<Arc<[u8]>, String> = match contents {
        Contents::Bytes(bytes) => Ok(bytes),
        // A panic in one document's serialiser must not end recovery for all.
        Contents::Make(make) => catch_unwind(AssertUnwindSafe(make))
            .unwrap_or_else(|_| Err("The work could not be put into words for the recovery file".to_owned()))
            .map(Arc::from),
    };
    let result = bytes.and_then(|bytes| write(disk, folder, &key, base.as_ref(), time, &bytes).map_err(|error| error.to_string()));
    RecoveryReport { key, revision, result }
}
