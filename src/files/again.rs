//! A batch once more, in a file of its own beside the first.

use std::path::{Path, PathBuf};

use super::disk::Disk;
use super::disk::beside::{before_ending, settle, write_beside};
use crate::job::Job;
use crate::job::format::write_job;

/// Writes a job beside the file it was made from, under the first name that is free: `first-pour again.ron`, `first-pour again 2.ron`.
/// What stands there is never touched.
///
/// # Errors
/// The sentence why it could not be written.
pub fn write_again(disk: &dyn Disk, original: &Path, job: &Job) -> Result<PathBuf, String> {
    let text = write_job(job).map_err(|error| error.to_string())?;
    let temporary = write_beside(disk, original, text.as_bytes(), None).map_err(|unfinished| unfinished.error.to_string())?;
    let name = |number: u32| {
        let middle = if number <= 1 { " again".to_owned() } else { format!(" again {number}") };
        before_ending(original, &middle)
    };
    settle(disk, &temporary, text.as_bytes(), name).map_err(|unfinished| unfinished.error.to_string())
}
