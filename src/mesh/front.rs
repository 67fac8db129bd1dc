//! From a path or bytes to figures.

use super::measure::{measure_any, measure_sound};
use super::survey::{REGION_TRIANGLES, survey};
use super::{Limits, Measure, ReadError, Soup, measure, read, stl_binary};
use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::path::Path;

/// Reads and measures bytes.
///
/// # Errors
/// As [`read`].
pub fn measure_bytes(bytes: &[u8], limits: &Limits) -> Result<Measure, ReadError> {
    // Records need not be copied into a list as long as nothing is wrong with them.
    if bytes.len() as u64 <= limits.max_bytes && stl_binary::length_fits(bytes) {
        let records = stl_binary::records(bytes, limits)?;
        let survey = survey(&records, REGION_TRIANGLES).map_err(|at| ReadError::NotFinite { triangle: at as u32 + 1 })?;
        if let Some(found) = measure_sound(&survey) {
            return Ok(found);
        }
        return Ok(measure_any(&read(bytes, limits)?));
    }
    Ok(measure(&read(bytes, limits)?))
}

/// Reads and measures a file.
///
/// # Errors
/// As [`read_file`].
pub fn measure_file(path: &Path, limits: &Limits) -> Result<Measure, ReadError> {
    measure_bytes(&bytes_of(path, limits)?, limits)
}

/// Reads a file's triangles.
///
/// # Errors
/// As [`read`]; and when the path cannot be opened or is no ordinary file.
pub fn read_file(path: &Path, limits: &Limits) -> Result<Soup, ReadError> {
    read(&bytes_of(path, limits)?, limits)
}

/// Files from this length on are read by two threads: most of the time goes into the machine handing over memory.
const TWO_THREADS_BYTES: usize = 4 << 20;

fn bytes_of(path: &Path, limits: &Limits) -> Result<Vec<u8>, ReadError> {
    let told = |error: std::io::Error| ReadError::CannotRead { reason: error.to_string() };
    // Looked at before opening: opening a pipe would wait for somebody to write into it.
    if !std::fs::metadata(path).map_err(told)?.is_file() {
        return Err(ReadError::CannotRead { reason: "it is not an ordinary file".to_owned() });
    }
    let length = std::fs::metadata(path).map_err(told)?.len();
    let length = usize::try_from(length)
        .ok()
        .filter(|_| length <= limits.max_bytes)
        .ok_or(ReadError::TooLarge { bytes: length, most: limits.max_bytes })?;
    let mut bytes = vec![0; length];
    let part = |from: usize, part: &mut [u8]| -> std::io::Result<()> {
        let mut file = File::open(path)?;
        file.seek(SeekFrom::Start(from as u64))?;
        file.read_exact(part)
    };
    let half = if length < TWO_THREADS_BYTES { length } else { length / 2 };
    let (first, second) = bytes.split_at_mut(half);
    std::thread::scope(|scope| {
        let other = (!second.is_empty()).then(|| scope.spawn(|| part(half, second)));
        part(0, first)?;
        other.map_or(Ok(()), |other| other.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
    })
    .map_err(told)?;
    Ok(bytes)
}
