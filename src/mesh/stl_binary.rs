//! Binary STL: eighty bytes of anything, a count, then fifty bytes a triangle (normal, three corners, an attribute).

use super::soup::{Soup, Triangle};
use super::source::{Records, Source, check_finite};
use super::{Format, Limits, ReadError};

/// Bytes before the first triangle.
pub(super) const HEADER_BYTES: usize = 84;
/// Bytes of one triangle.
pub(super) const RECORD_BYTES: usize = 50;

/// The count in the header, if the file is long enough to have one.
pub(super) fn announced(bytes: &[u8]) -> Option<u32> {
    let word = bytes.get(80..HEADER_BYTES)?;
    Some(u32::from_le_bytes(word.try_into().expect("four bytes were asked for")))
}

/// True when a file is exactly as long as its count says.
pub(super) fn length_fits(announced: Option<u32>, length: u64) -> bool {
    announced.is_some_and(|count| length == HEADER_BYTES as u64 + RECORD_BYTES as u64 * u64::from(count))
}

/// Compares the announced count with the bytes that are there, before anything is allocated.
pub(super) fn check_length(said: u32, length: u64, limits: &Limits) -> Result<(), ReadError> {
    let held = length - HEADER_BYTES as u64;
    let needed = RECORD_BYTES as u64 * u64::from(said);
    if needed > held {
        return Err(ReadError::BinaryCutShort { said, whole: held / RECORD_BYTES as u64 });
    }
    if needed < held {
        return Err(ReadError::TrailingBytes { said, bytes: held - needed });
    }
    if said == 0 {
        return Err(ReadError::NoGeometry);
    }
    if said > limits.triangles() {
        return Err(ReadError::TooManyTriangles { most: limits.triangles() });
    }
    Ok(())
}

/// The records of a whole file of this format within the limits.
pub(super) fn records<'a>(bytes: &'a [u8], limits: &Limits) -> Result<Records<'a>, ReadError> {
    let said = announced(bytes).ok_or(ReadError::NotAMesh)?;
    check_length(said, bytes.len() as u64, limits)?;
    Ok(Records(bytes[HEADER_BYTES..].as_chunks::<RECORD_BYTES>().0))
}

/// Reads the triangles. The stored normals and attributes are passed over: the order of the corners decides what is outside.
pub(super) fn read(bytes: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let records = records(bytes, limits)?;
    let mut triangles: Vec<Triangle> = Vec::with_capacity(records.count());
    let read = records.walk(0..records.count(), |at, block| {
        triangles.extend_from_slice(block);
        check_finite(at, block)
    });
    read.map_err(ReadError::from)?;
    Ok(Soup::new(Format::StlBinary, triangles, false))
}
