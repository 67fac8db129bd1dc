//! Pattern files are read beside the window; until one is read, what rests on it is not known yet.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, channel};
use std::sync::{Arc, OnceLock};
use std::time::Instant;

use crate::calc::{PatternRun, Runs};
use crate::files::disk::{Disk, RealDisk};
use crate::files::outside::{Allowed, folder_to_ask};
use crate::files::pattern_runs::look_at_file;
use crate::files::pictures::shaded;
use crate::job::{Job, PatternId};
use crate::mesh::Limits;
use crate::paper::block::Raster;

/// Wakes whoever waits for a file.
type Wake = Box<dyn Fn() + Send + Sync>;

/// How far the reading of pattern files is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reading {
    /// Files read since this reading began.
    pub read: usize,
    /// Files asked for since then.
    pub all: usize,
    /// Seconds that the rest will take, once one file was read and as far as files are alike.
    pub seconds_left: Option<u64>,
}

/// What came of a file: what it measures, and its picture.
#[derive(Debug, Clone)]
struct Looked {
    run: PatternRun,
    picture: Option<Arc<Raster>>,
    /// The folder outside the job's own that it lies in, where that is not allowed.
    apart: Option<PathBuf>,
    /// Its length and when it was last written, before it was read.
    stamp: Option<Stamp>,
}

/// By what a file that changed is found out without reading it.
type Stamp = (u64, Option<std::time::SystemTime>);

fn stamp_of(path: &Path) -> Option<Stamp> {
    // What a link leads to is what is read.
    let real = RealDisk.resolve(path).ok()?;
    RealDisk.metadata(&real).ok().map(|about| (about.len_bytes, about.modified))
}

fn look(folder: &Path, path: &Path, allowed: &Allowed) -> Looked {
    let (apart, stamp) = (folder_to_ask(&RealDisk, folder, path, allowed), stamp_of(path));
    if apart.is_some() {
        return Looked { run: PatternRun::Apart, picture: None, apart, stamp };
    }
    let (run, picture) = look_at_file(&RealDisk, path, &Limits::default(), shaded);
    Looked { run, picture: picture.flatten(), apart, stamp }
}

/// Reads pattern files on threads of its own.
#[derive(Default)]
pub struct PatternReader {
    folder: PathBuf,
    allowed: Allowed,
    known: BTreeMap<PathBuf, Option<Looked>>,
    waits: Vec<Receiver<(PathBuf, Looked)>>,
    /// When the files that are being read were asked for, and how many were known before.
    began: Option<(Instant, usize)>,
    /// Called when a file was read; said once, and heard by reading that began before it was said.
    wake: Arc<OnceLock<Wake>>,
}

impl PatternReader {
    /// Who is to be woken when a file was read, and at once: one may have been read already.
    pub fn on_read(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        wake();
        // A reader is woken for one window in its life.
        let _ = self.wake.set(Box::new(wake));
    }

    /// Forgets files that were not there, could not be read, or were written since, so that they are looked for again.
    pub fn look_again(&mut self) {
        let unseen = |path: &Path, looked: &Looked| {
            matches!(looked.run, PatternRun::Missing | PatternRun::Unreadable(_)) || looked.stamp != stamp_of(path)
        };
        self.known.retain(|path, looked| !looked.as_ref().is_some_and(|looked| unseen(path, looked)));
    }

    /// Was a file written, taken away or put there since it was looked at? Those whose reading failed or was stopped wait until they are asked for.
    #[must_use]
    pub fn is_stale(&self) -> bool {
        let stale = |path: &Path, looked: &Looked| !matches!(looked.run, PatternRun::Unreadable(_)) && looked.stamp != stamp_of(path);
        self.known.iter().any(|(path, looked)| looked.as_ref().is_some_and(|looked| stale(path, looked)))
    }

    /// Allows folders outside the job's own, and looks for their files again.
    pub fn allow(&mut self, allowed: &Allowed) {
        if self.allowed != *allowed {
            self.allowed = allowed.clone();
            self.known.retain(|_, looked| looked.as_ref().is_none_or(|looked| looked.apart.is_none()));
        }
    }

    /// Folders outside the job's own that its files lie in and that are not allowed.
    #[must_use]
    pub fn apart(&self) -> BTreeSet<PathBuf> {
        self.known.values().flatten().filter_map(|looked| looked.apart.clone()).collect()
    }

    /// The names of the files in a folder that is not allowed.
    #[must_use]
    pub fn apart_in(&self, folder: &Path) -> Vec<String> {
        let here =
            |(_, looked): &(&PathBuf, &Option<Looked>)| looked.as_ref().is_some_and(|looked| looked.apart.as_deref() == Some(folder));
        let name = |(path, _): (&PathBuf, _)| path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
        self.known.iter().filter(here).map(name).collect()
    }

    /// Forgets a file, so that it is read anew.
    pub fn forget(&mut self, path: &Path) {
        self.known.remove(&self.folder.join(path));
    }

    /// Sets what is known of every pattern's file, and begins to read those that were never asked for. True where `runs` changed.
    pub fn ask(&mut self, folder: &Path, job: &Job, runs: &mut Runs) -> bool {
        let before = runs.patterns.clone();
        folder.clone_into(&mut self.folder);
        let mut fresh = Vec::new();
        let idle = self.known.values().all(Option::is_some);
        for pattern in &job.patterns {
            let Some(file) = pattern.file.as_ref().filter(|file| !file.path.trim().is_empty()) else {
                runs.patterns.remove(&pattern.id);
                continue;
            };
            let path = folder.join(&file.path);
            let known = self.known.entry(path.clone()).or_insert_with(|| {
                fresh.push(path);
                None
            });
            runs.patterns.insert(pattern.id, known.as_ref().map_or(PatternRun::Pending, |looked| looked.run.clone()));
        }
        if !fresh.is_empty() {
            if idle {
                self.began = Some((Instant::now(), self.known.len() - fresh.len()));
            }
            self.read(fresh);
        }
        runs.patterns != before
    }

    fn read(&mut self, paths: Vec<PathBuf>) {
        let (sender, receiver) = channel();
        let wake = Arc::clone(&self.wake);
        let reading = paths.clone();
        let (folder, allowed) = (self.folder.clone(), self.allowed.clone());
        let thread = std::thread::Builder::new().name("patterns".to_owned()).spawn(move || {
            for path in reading {
                let run = look(&folder, &path, &allowed);
                // Nobody waits any more where the batch was closed.
                if sender.send((path, run)).is_err() {
                    return;
                }
                if let Some(wake) = wake.get() {
                    wake();
                }
            }
        });
        match thread {
            Ok(_) => self.waits.push(receiver),
            // No thread to be had: read here, late rather than never.
            Err(_) => {
                for path in paths {
                    let run = look(&self.folder, &path, &self.allowed);
                    self.known.insert(path, Some(run));
                }
            }
        }
    }

    /// Takes in what was read. True where something was.
    pub fn take(&mut self, job: &Job, runs: &mut Runs) -> bool {
        let mut came = false;
        self.waits.retain(|wait| {
            loop {
                match wait.try_recv() {
                    Ok((path, run)) => {
                        self.known.insert(path, Some(run));
                        came = true;
                    }
                    Err(std::sync::mpsc::TryRecvError::Empty) => return true,
                    Err(std::sync::mpsc::TryRecvError::Disconnected) => return false,
                }
            }
        });
        if came {
            self.put(job, runs);
        }
        came
    }

    /// Stops reading: what was not read yet counts as not read, and says so, until it is looked for again.
    pub fn stop(&mut self, why: &str, job: &Job, runs: &mut Runs) {
        // A reader that finds nobody waiting ends after the file it is at.
        self.waits.clear();
        for run in self.known.values_mut().filter(|run| run.is_none()) {
            *run = Some(Looked { run: PatternRun::Unreadable(why.to_owned()), picture: None, apart: None, stamp: None });
        }
        self.put(job, runs);
    }

    fn put(&self, job: &Job, runs: &mut Runs) {
        for pattern in &job.patterns {
            let Some(file) = &pattern.file else { continue };
            if let Some(Some(looked)) = self.known.get(&self.folder.join(&file.path)) {
                runs.patterns.insert(pattern.id, looked.run.clone());
            }
        }
    }

    /// The pictures of a job's patterns, as far as their files were read.
    #[must_use]
    pub fn pictures(&self, job: &Job) -> BTreeMap<PatternId, Arc<Raster>> {
        let picture = |pattern: &crate::job::Pattern| {
            let looked = self.known.get(&self.folder.join(&pattern.file.as_ref()?.path))?.as_ref()?;
            Some((pattern.id, Arc::clone(looked.picture.as_ref()?)))
        };
        job.patterns.iter().filter_map(picture).collect()
    }

    /// How far the reading is; none where nothing is being read.
    #[must_use]
    pub fn progress(&self) -> Option<Reading> {
        let known = self.known.values().filter(|run| run.is_some()).count();
        if known == self.known.len() {
            return None;
        }
        let (since, before) = self.began.unwrap_or((Instant::now(), 0));
        let (read, all) = (known.saturating_sub(before), self.known.len().saturating_sub(before));
        #[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "an estimate in seconds")]
        let seconds_left = (read > 0).then(|| (since.elapsed().as_secs_f64() / read as f64 * (all - read) as f64).ceil() as u64);
        Some(Reading { read, all, seconds_left })
    }
}
