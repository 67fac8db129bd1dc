//! Pattern files on their way into a job: copied beside it, and named as the job names them.

use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use super::disk::{Disk, DiskError, folder_of};

/// The folder beside a job that its pattern files are copied into.
pub const PATTERNS: &str = "patterns";

/// Endings of the files that patterns are read from.
pub const ENDINGS: [&str; 4] = ["stl", "obj", "ply", "3mf"];

/// Does the name of this file say that it holds a pattern?
#[must_use]
pub fn looks_like_pattern(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ENDINGS.iter().any(|known| ending.eq_ignore_ascii_case(known)))
}

/// How a job in a folder names a file: relative with forward slashes where it lies in the folder, else by its whole path.
#[must_use]
pub fn named_in(folder: &Path, path: &Path) -> String {
    path.strip_prefix(folder).unwrap_or(path).to_string_lossy().replace('\\', "/")
}

/// Copies a file into the folder of patterns beside a job and tells where it is now. A file that lies there already with the same content is
/// taken for the copy; another one of that name stays, and the copy gets a number.
///
/// # Errors
/// [`DiskError`]; nothing stands under the copy's name then.
pub fn copy_beside(disk: &dyn Disk, from: &Path, job_folder: &Path, most_bytes: u64) -> Result<PathBuf, DiskError> {
    let bytes = disk.read(from, most_bytes)?;
    let ending = from.extension().map_or_else(|| "stl".to_owned(), |ending| ending.to_string_lossy().into_owned());
    put(disk, &job_folder.join(PATTERNS), (&stem_of(from), &ending), &bytes)
}

/// The name of a file without its ending.
#[must_use]
pub fn stem_of(path: &Path) -> String {
    path.file_stem().map_or_else(|| "pattern".to_owned(), |stem| stem.to_string_lossy().into_owned())
}

/// Puts bytes into a folder under a name and an ending, and tells where they are now. A file that lies there already with the same content is
/// taken for it; another one of that name stays, and this one gets a number.
///
/// # Errors
/// [`DiskError`]; nothing stands under the new name then.
pub fn put(disk: &dyn Disk, folder: &Path, (stem, ending): (&str, &str), bytes: &[u8]) -> Result<PathBuf, DiskError> {
    disk.create_folders(folder)?;
    let length = bytes.len() as u64;
    for number in 1_u32.. {
        let name = if number == 1 { format!("{stem}.{ending}") } else { format!("{stem}-{number}.{ending}") };
        let to = folder.join(name);
        if disk.exists(&to)? {
            if disk.read(&to, length).is_ok_and(|there| there == bytes) {
                return Ok(to);
            }
            continue;
        }
        return write_whole(disk, &to, bytes).map(|()| to);
    }
    unreachable!("a folder does not hold four thousand million names")
}

/// Writes a file that is not there yet, safe from a power cut once this comes back; what was written in part is taken away again.
///
/// # Errors
/// [`DiskError`].
pub fn write_whole(disk: &dyn Disk, to: &Path, bytes: &[u8]) -> Result<(), DiskError> {
    let written = disk.write_new(to, bytes).and_then(|()| disk.sync_file(to)).and_then(|()| disk.sync_folder(folder_of(to)));
    if let Err(error) = &written
        && error.kind != ErrorKind::AlreadyExists
    {
        // Nothing more can be done where it cannot even be removed.
        let _ = disk.remove(to);
    }
    written
}
