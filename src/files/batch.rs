//! A job opened from disk with the studio beside it: everything a recompute needs, and what was wrong on the way.

use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use super::disk::{Disk, DiskError, folder_of};
use super::save::{Hash, Original, SAVED_BESIDE, SaveError, Saved, hash_of, save};
use crate::job::check::{self, Fault};
use crate::job::format::{Opened, ReadError, WriteError, read_job, read_studio, write_job, write_studio};
use crate::job::{Entry, Job, Studio, continues};

/// The studio's file, beside the jobs of its folder.
pub const STUDIO_FILE: &str = "studio.ron";

/// The longest document that is read, in bytes.
pub const LONGEST_DOCUMENT: u64 = 256 << 20;

/// The files of a folder that may be jobs, by name.
///
/// # Errors
/// The system's, where the folder cannot be listed.
pub fn job_files(disk: &dyn Disk, folder: &Path) -> Result<Vec<PathBuf>, DiskError> {
    let mut files = disk.list(folder)?;
    files.retain(|path| is_job_name(path));
    files.sort();
    Ok(files)
}

/// Whether a file of this name may be a job: it ends in `.ron`, and is neither the studio's, nor hidden (unfinished saves and locks are),
/// nor what a save kept beside a file that somebody else had changed.
#[must_use]
pub fn is_job_name(path: &Path) -> bool {
    let Some(name) = path.file_name() else { return false };
    let name = name.to_string_lossy();
    let Some((stem, ending)) = name.rsplit_once('.') else { return false };
    let hidden = stem.is_empty() || name.starts_with('.');
    ending.eq_ignore_ascii_case("ron") && !hidden && !name.eq_ignore_ascii_case(STUDIO_FILE) && !is_saved_beside(stem)
}

/// `lilac (saved beside)` or `lilac (saved beside 2)`.
fn is_saved_beside(stem: &str) -> bool {
    let number = stem.rsplit_once(SAVED_BESIDE).and_then(|(_, behind)| behind.strip_suffix(')'));
    number.is_some_and(|number| {
        number.is_empty()
            || number.strip_prefix(' ').is_some_and(|digits| !digits.is_empty() && digits.bytes().all(|digit| digit.is_ascii_digit()))
    })
}

/// A document that could not be opened. One sentence, the path last.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum OpenError {
    /// The disk said no.
    #[error(transparent)]
    Disk(#[from] DiskError),
    /// The bytes say nothing that can be used.
    #[error("{error} ({path})", path = path.display())]
    Document {
        /// Why.
        error: ReadError,
        /// Which file.
        path: PathBuf,
    },
}

/// A batch that could not be saved. The file on the disk is as it was unless the disk itself says otherwise.
#[derive(Debug, thiserror::Error)]
pub enum SaveBatchError {
    /// Written by a newer program.
    #[error("this file was written by a newer version and holds things this one does not know, so it is not saved over; save under another name ({path})", path = .0.display())]
    NewerFormat(PathBuf),
    /// The record must only grow.
    #[error("the record of what happened may only grow, and an entry that was saved before is missing or changed; withdraw it with a new entry instead ({path})", path = .0.display())]
    RecordRewritten(PathBuf),
    /// The document holds something that cannot be written.
    #[error(transparent)]
    Write(#[from] WriteError),
    /// The disk said no, or the file changed there.
    #[error(transparent)]
    Disk(#[from] SaveError),
    /// What was just written cannot be opened again.
    #[error(transparent)]
    Open(#[from] OpenError),
}

/// A job with its studio.
#[derive(Debug, Clone)]
pub struct Batch {
    /// The job's file.
    pub path: PathBuf,
    /// The job as it stands in the file.
    pub job: Job,
    /// The job without what is at fault in it; figures are computed from this.
    pub sound: Job,
    /// What is at fault.
    pub faults: Vec<Fault>,
    /// The studio as it stands in its file, empty where the folder has none.
    pub studio: Studio,
    /// The studio without what is at fault in it; figures are computed from this.
    pub sound_studio: Studio,
    /// What is at fault in the studio's file.
    pub studio_faults: Vec<Fault>,
    /// Why the studio's file could not be used, where there is one.
    pub studio_error: Option<OpenError>,
    /// Hash of the job's bytes as they lie on the disk.
    pub hash: Hash,
    /// The same hash as hexadecimal text, the version that prints on paper.
    pub hash_text: String,
    /// The file was laid out by hand: it is kept beside at the first save.
    pub by_hand: bool,
    /// Written by a newer program: must not be saved over.
    pub read_only: bool,
    /// The record as it lies on the disk: it may only be added to.
    saved_record: Vec<Entry>,
    /// Hash of the studio's bytes as they lie on the disk; none where there is no such file.
    /// The hash of the studio file it was opened with.
    pub studio_hash: Option<Hash>,
}

impl Batch {
    /// Opens a job and the studio beside it. A studio that cannot be read does not keep the job from opening.
    ///
    /// # Errors
    /// [`OpenError`] where the job itself cannot be read; nothing was changed then.
    pub fn open(disk: &dyn Disk, path: &Path) -> Result<Self, OpenError> {
        let bytes = disk.read(path, LONGEST_DOCUMENT)?;
        let Opened { document: job, read_only, .. } =
            read_job(&bytes).map_err(|error| OpenError::Document { error, path: path.to_owned() })?;
        let by_hand = write_job(&job).map_or(true, |ours| ours.as_bytes() != bytes);
        let (sound, faults) = check::mend(&job);
        let (studio, studio_hash, studio_error) = match read_studio_file(disk, &folder_of(path).join(STUDIO_FILE)) {
            Ok(Some((studio, hash))) => (studio, Some(hash), None),
            Ok(None) => (Studio::default(), None, None),
            Err(error) => (Studio::default(), None, Some(error)),
        };
        let (sound_studio, studio_faults) = check::mend_studio(&studio);
        let saved_record = job.record.clone();
        Ok(Self {
            saved_record,
            studio_hash,
            path: path.to_owned(),
            job,
            sound,
            faults,
            studio,
            sound_studio,
            studio_faults,
            studio_error,
            hash_text: hash_of(&bytes).to_hex().to_string(),
            hash: hash_of(&bytes),
            by_hand,
            read_only,
        })
    }

    /// The record as the file has it.
    #[must_use]
    pub fn saved_record(&self) -> &[Entry] {
        &self.saved_record
    }

    /// Saves the job where it was opened. A file laid out by hand is kept beside the first time; a file that changed on the disk since is
    /// not overwritten.
    ///
    /// # Errors
    /// [`SaveBatchError`].
    pub fn save(&mut self, disk: &dyn Disk) -> Result<Saved, SaveBatchError> {
        if self.read_only {
            return Err(SaveBatchError::NewerFormat(self.path.clone()));
        }
        if !continues(&self.saved_record, &self.job.record) {
            return Err(SaveBatchError::RecordRewritten(self.path.clone()));
        }
        let text = write_job(&self.job)?;
        let original = if self.by_hand { Original::KeepBeside } else { Original::Replace };
        let saved = save(disk, &self.path, text.as_bytes(), Some(&self.hash), original, |bytes| same_job(bytes, &self.job))?;
        self.hash = saved.hash;
        self.hash_text = saved.hash.to_hex().to_string();
        self.by_hand = false;
        self.saved_record.clone_from(&self.job.record);
        Ok(saved)
    }

    /// Saves a job for the first time, under a name that nothing stands under, and the studio where its folder has none yet.
    ///
    /// # Errors
    /// [`SaveBatchError`].
    pub fn create(disk: &dyn Disk, path: &Path, job: &Job, studio: &Studio) -> Result<Self, SaveBatchError> {
        let text = write_job(job)?;
        save(disk, path, text.as_bytes(), None, Original::Replace, |bytes| same_job(bytes, job))?;
        let mut batch = Self::open(disk, path)?;
        if batch.studio_hash.is_none() && batch.studio_error.is_none() && *studio != Studio::default() {
            batch.save_studio(disk, studio)?;
        }
        Ok(batch)
    }

    /// Saves the studio beside the job. One that changed on the disk since it was opened is not overwritten.
    ///
    /// # Errors
    /// [`SaveBatchError`].
    pub fn save_studio(&mut self, disk: &dyn Disk, studio: &Studio) -> Result<(), SaveBatchError> {
        let text = write_studio(studio)?;
        let same = |bytes: &[u8]| match read_studio(bytes) {
            Ok(opened) if opened.document == *studio => Ok(()),
            Ok(_) => Err("what was written reads back as something else".to_owned()),
            Err(error) => Err(error.to_string()),
        };
        let path = self.folder().join(STUDIO_FILE);
        // A studio laid out by hand is kept beside, as a job is.
        let ours = write_studio(&self.studio).is_ok_and(|ours| self.studio_hash == Some(hash_of(ours.as_bytes())));
        let original = if ours { Original::Replace } else { Original::KeepBeside };
        let saved = save(disk, &path, text.as_bytes(), self.studio_hash.as_ref(), original, same)?;
        self.studio_hash = Some(saved.hash);
        (self.sound_studio, self.studio_faults) = check::mend_studio(studio);
        self.studio = studio.clone();
        self.studio_error = None;
        Ok(())
    }

    /// The folder that pattern paths are relative to.
    #[must_use]
    pub fn folder(&self) -> &Path {
        folder_of(&self.path)
    }
}

/// The studio of a folder; `None` where it has none.
///
/// # Errors
/// [`OpenError`] where there is one that cannot be read.
pub fn open_studio(disk: &dyn Disk, path: &Path) -> Result<Option<Studio>, OpenError> {
    Ok(read_studio_file(disk, path)?.map(|(studio, _)| studio))
}

fn same_job(bytes: &[u8], job: &Job) -> Result<(), String> {
    match read_job(bytes) {
        Ok(opened) if opened.document == *job => Ok(()),
        Ok(_) => Err("what was written reads back as something else".to_owned()),
        Err(error) => Err(error.to_string()),
    }
}

fn read_studio_file(disk: &dyn Disk, path: &Path) -> Result<Option<(Studio, Hash)>, OpenError> {
    let bytes = match disk.read(path, LONGEST_DOCUMENT) {
        Ok(bytes) => bytes,
        Err(error) if error.kind == ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(error.into()),
    };
    let opened = read_studio(&bytes).map_err(|error| OpenError::Document { error, path: path.to_owned() })?;
    Ok(Some((opened.document, hash_of(&bytes))))
}
