//! From a path or bytes to figures.

use super::measure::{measure_any, measure_sound};
use super::source::OnDisk;
use super::survey::{REGION_TRIANGLES, survey};
use super::{Limits, Measure, ReadError, Soup, measure, read, stl_binary};
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// Reads and measures bytes.
///
/// # Errors
/// As [`read`].
pub fn measure_bytes(bytes: &[u8], limits: &Limits) -> Result<Measure, ReadError> {
    // Records need not be copied into a list as long as nothing is wrong with them.
    if bytes.len() as u64 <= limits.max_bytes && stl_binary::length_fits(stl_binary::announced(bytes), bytes.len() as u64) {
        let records = stl_binary::records(bytes, limits)?;
        if let Some(found) = measure_sound(&survey(&records, REGION_TRIANGLES)?) {
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
    let length = length_of(path, limits)?;
    let mut header = Vec::with_capacity(stl_binary::HEADER_BYTES);
    File::open(path)?.take(stl_binary::HEADER_BYTES as u64).read_to_end(&mut header)?;
    let said = stl_binary::announced(&header);
    if let Some(said) = said.filter(|_| stl_binary::length_fits(said, length)) {
        stl_binary::check_length(said, length, limits)?;
        let records = OnDisk { path, count: said as usize };
        if let Some(found) = measure_sound(&survey(&records, REGION_TRIANGLES)?) {
            return Ok(found);
        }
        return Ok(measure_any(&read_file(path, limits)?));
    }
    Ok(measure(&read_file(path, limits)?))
}

/// Reads a file's triangles.
///
/// # Errors
/// As [`read`]; and when the path cannot be opened or is no ordinary file.
pub fn read_file(path: &Path, limits: &Limits) -> Result<Soup, ReadError> {
    let length = length_of(path, limits)?;
    let mut bytes = Vec::with_capacity(usize::try_from(length).unwrap_or(0) + 1);
    // A file that grows while it is read is still held to the limit.
    File::open(path)?.take(limits.max_bytes.saturating_add(1)).read_to_end(&mut bytes)?;
    read(&bytes, limits)
}

/// The length of an ordinary file within the limit, in bytes.
fn length_of(path: &Path, limits: &Limits) -> Result<u64, ReadError> {
    // Looked at before opening: opening a pipe would wait for somebody to write into it.
    let about = std::fs::metadata(path)?;
    if !about.is_file() {
        return Err(ReadError::CannotRead { reason: "it is not an ordinary file".to_owned() });
    }
    if about.len() > limits.max_bytes {
        return Err(ReadError::TooLarge { bytes: about.len(), most: limits.max_bytes });
    }
    Ok(about.len())
}
