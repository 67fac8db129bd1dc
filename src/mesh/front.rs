//! From a path or bytes to figures.

use super::{Limits, Measure, ReadError, Soup, measure, read};
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// Reads and measures bytes.
///
/// # Errors
/// As [`read`].
pub fn measure_bytes(bytes: &[u8], limits: &Limits) -> Result<Measure, ReadError> {
    Ok(measure(&read(bytes, limits)?))
}

/// Reads and measures a file.
///
/// # Errors
/// As [`read_file`].
pub fn measure_file(path: &Path, limits: &Limits) -> Result<Measure, ReadError> {
    Ok(measure(&read_file(path, limits)?))
}

/// Reads a file's triangles.
///
/// # Errors
/// As [`read`]; and when the path cannot be opened or is no ordinary file.
pub fn read_file(path: &Path, limits: &Limits) -> Result<Soup, ReadError> {
    let told = |error: std::io::Error| ReadError::CannotRead { reason: error.to_string() };
    // Looked at before opening: opening a pipe would wait for somebody to write into it.
    if !std::fs::metadata(path).map_err(told)?.is_file() {
        return Err(ReadError::CannotRead { reason: "it is not an ordinary file".to_owned() });
    }
    let file = File::open(path).map_err(told)?;
    let length = file.metadata().map_err(told)?.len();
    if length > limits.max_bytes {
        return Err(ReadError::TooLarge { bytes: length, most: limits.max_bytes });
    }
    let mut bytes = Vec::with_capacity(length as usize + 1);
    // A file that grows while it is read is still held to the limit.
    file.take(limits.max_bytes.saturating_add(1)).read_to_end(&mut bytes).map_err(told)?;
    read(&bytes, limits)
}
