//! Reading the folder: all of it, or what changed since.

use std::collections::HashMap;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;
use std::time::SystemTime;

use super::stamp::{Proof, Stamp};
use super::{Broken, Index, Listed};
use crate::files::batch::{LONGEST_DOCUMENT, job_files};
use crate::files::disk::{Disk, DiskError, Kind};
use crate::folder::brief::Brief;
use crate::folder::find::{Rows, Texts};

/// Files a thread takes at once.
const HANDFUL: usize = 16;

/// Texts that nobody says any more are put up with up to so many beyond the living ones.
const DEAD_TEXTS: usize = 10_000;

/// What a refresh found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Changes {
    /// Files that were not listed before.
    pub new: Vec<PathBuf>,
    /// Files that say something else now, or are read or broken where they were not.
    pub changed: Vec<PathBuf>,
    /// Files that are gone.
    pub gone: Vec<PathBuf>,
    /// How many files were opened and read.
    pub read: usize,
}

impl Changes {
    /// True where nothing is different.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.new.is_empty() && self.changed.is_empty() && self.gone.is_empty()
    }
}

/// What was listed before, by path.
type Before = HashMap<Arc<Path>, (Listed, Option<Arc<Rows>>)>;

/// What was found of one file.
enum Met {
    /// It is as it was.
    Same,
    /// It was read again and says the same; whether its stamp now tells is in the proof.
    Proved(Option<Proof>),
    Read(Listed),
    Gone,
}

impl Index {
    /// Reads every job file of a folder, on as many threads as the machine runs at once. `now` is the time by the clock that the files' own
    /// times are held against, taken before the call.
    ///
    /// # Errors
    /// The system's, where the folder cannot be listed. A file that cannot be read is none: it is in [`Self::broken`].
    pub fn build(disk: &dyn Disk, folder: &Path, now: SystemTime) -> Result<Self, DiskError> {
        let mut index = Self { folder: folder.to_owned(), ..Self::default() };
        index.refresh(disk, now)?;
        Ok(index)
    }

    /// Reads again what is not as it was: by time of change and length, and by content where a file was read so soon after it changed that
    /// a later change may not show.
    ///
    /// # Errors
    /// The system's, where the folder cannot be listed; then the index is as it was.
    pub fn refresh(&mut self, disk: &dyn Disk, now: SystemTime) -> Result<Changes, DiskError> {
        let paths = job_files(disk, &self.folder)?;
        let before: Before = std::mem::take(&mut self.files)
            .into_iter()
            .zip(std::mem::take(&mut self.rows))
            .map(|(listed, rows)| (Arc::clone(&listed.path), (listed, rows)))
            .collect();
        let met = look_at_all(disk, &paths, |path| before.get(path).map(|(listed, _)| listed), now);
        Ok(self.take_up(paths, met, before))
    }

    fn take_up(&mut self, paths: Vec<PathBuf>, met: Vec<Met>, mut before: Before) -> Changes {
        let mut changes = Changes::default();
        for (path, met) in paths.into_iter().zip(met) {
            let old = before.remove(path.as_path());
            let (listed, rows) = match (met, old) {
                (Met::Gone, Some(_)) => {
                    changes.gone.push(path);
                    continue;
                }
                (Met::Same, Some(old)) => old,
                (Met::Proved(proof), Some((listed, rows))) => {
                    changes.read += 1;
                    (Listed { proof, ..listed }, rows)
                }
                // Only what was listed before can be the same, or go.
                (Met::Gone | Met::Same | Met::Proved(_), None) => continue,
                (Met::Read(listed), old) => {
                    changes.read += 1;
                    match &old {
                        None => changes.new.push(path),
                        Some((old, _)) if old.job != listed.job => changes.changed.push(path),
                        Some(_) => {}
                    }
                    let same_job = old.filter(|(old, _)| old.job == listed.job);
                    let rows = same_job.and_then(|(_, rows)| rows).or_else(|| rows_of(&listed, &mut self.texts));
                    (listed, rows)
                }
            };
            self.files.push(listed);
            self.rows.push(rows);
        }
        changes.gone.extend(before.into_keys().map(|path| path.to_path_buf()));
        changes.gone.sort_unstable();
        if self.texts_then == 0 {
            self.texts_then = self.texts.len();
        } else if self.texts.len() > self.texts_then * 2 + DEAD_TEXTS {
            self.texts = Texts::default();
            self.rows = self.files.iter().map(|listed| rows_of(listed, &mut self.texts)).collect();
            self.texts_then = self.texts.len();
        }
        changes
    }
}

fn rows_of(listed: &Listed, texts: &mut Texts) -> Option<Arc<Rows>> {
    listed.job.as_ref().ok().map(|job| Arc::new(Rows::of(job, texts)))
}

/// Looks at every path, several at a time; the answers come in the order of the paths.
fn look_at_all<'o>(disk: &dyn Disk, paths: &[PathBuf], old: impl Fn(&Path) -> Option<&'o Listed> + Sync, now: SystemTime) -> Vec<Met> {
    let threads = thread::available_parallelism().map_or(1, usize::from).min(paths.len().div_ceil(HANDFUL)).max(1);
    let next = AtomicUsize::new(0);
    let work = || {
        let mut done = Vec::new();
        loop {
            let start = next.fetch_add(HANDFUL, Ordering::Relaxed);
            let Some(handful) = paths.get(start..paths.len().min(start + HANDFUL)).filter(|handful| !handful.is_empty()) else {
                break done;
            };
            done.push((start, handful.iter().map(|path| look_at(disk, path, old(path), now)).collect::<Vec<_>>()));
        }
    };
    let mut done = if threads == 1 {
        work()
    } else {
        thread::scope(|scope| {
            let threads: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
            threads.into_iter().flat_map(|thread| thread.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))).collect()
        })
    };
    done.sort_unstable_by_key(|(start, _)| *start);
    done.into_iter().flat_map(|(_, handful)| handful).collect()
}

fn look_at(disk: &dyn Disk, path: &Path, old: Option<&Listed>, now: SystemTime) -> Met {
    let unreadable = |error: &DiskError| match error.kind {
        ErrorKind::NotFound => Met::Gone,
        ErrorKind::FileTooLarge => Met::Read(broken(path, Broken::TooLong)),
        _ => Met::Read(broken(path, Broken::Unreadable(error.to_string()))),
    };
    // Asked before reading: whatever changes between the two makes the stamp too old, never too new.
    let about = match disk.metadata(path) {
        Ok(about) if matches!(about.kind, Kind::File | Kind::Link) => about,
        Ok(_) => return Met::Gone,
        Err(error) => return unreadable(&error),
    };
    let stamp = Stamp::of(&about);
    let same = old.filter(|old| stamp.is_some() && old.stamp == stamp);
    if same.is_some_and(|same| same.proof.is_none()) {
        return Met::Same;
    }
    if about.len_bytes > LONGEST_DOCUMENT {
        return Met::Read(Listed { stamp, ..broken(path, Broken::TooLong) });
    }
    let bytes = match disk.read(path, LONGEST_DOCUMENT) {
        Ok(bytes) => bytes,
        Err(error) => return unreadable(&error),
    };
    let young = stamp.is_some_and(|stamp| stamp.is_young(now));
    let proof = (young || same.is_some()).then(|| Proof::of(&bytes));
    let kept = if young { proof } else { None };
    if proof.is_some() && same.is_some_and(|same| same.proof == proof) {
        return Met::Proved(kept);
    }
    let job = Brief::read(&bytes).map(Arc::new).map_err(Broken::Content);
    Met::Read(Listed { path: path.into(), job, stamp, proof: kept })
}

fn broken(path: &Path, why: Broken) -> Listed {
    Listed { path: path.into(), job: Err(why), stamp: None, proof: None }
}
