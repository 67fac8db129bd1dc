//! Binary STL: eighty bytes of anything, a count, then fifty bytes a triangle (normal, three corners, an attribute).

use super::soup::{Soup, Triangle};
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

/// True when the file is exactly as long as its count says.
pub(super) fn length_fits(bytes: &[u8]) -> bool {
    announced(bytes).is_some_and(|count| bytes.len() as u64 == HEADER_BYTES as u64 + RECORD_BYTES as u64 * u64::from(count))
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
    if said > limits.max_triangles {
        return Err(ReadError::TooManyTriangles { most: limits.max_triangles });
    }
    Ok(())
}

/// Reads the triangles. The stored normals and attributes are passed over: the order of the corners decides what is outside.
pub(super) fn read(bytes: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let said = announced(bytes).ok_or(ReadError::NotAMesh)?;
    check_length(said, bytes.len() as u64, limits)?;
    let mut triangles = vec![[[0.0_f32; 3]; 3]; said as usize];
    read_records(&bytes[HEADER_BYTES..], &mut triangles).map_err(|at| ReadError::NotFinite { triangle: at as u32 + 1 })?;
    Ok(Soup::new(Format::StlBinary, triangles, false))
}

/// Fills `triangles` from as many records. The error is the place, from 0, of the first record with a corner that is not finite.
pub(super) fn read_records(records: &[u8], triangles: &mut [Triangle]) -> Result<(), usize> {
    for (at, (record, triangle)) in records.as_chunks::<RECORD_BYTES>().0.iter().zip(triangles).enumerate() {
        let mut finite = true;
        for (k, corner) in triangle.iter_mut().enumerate() {
            for (axis, value) in corner.iter_mut().enumerate() {
                let from = 12 + 12 * k + 4 * axis;
                let number = f32::from_le_bytes([record[from], record[from + 1], record[from + 2], record[from + 3]]);
                finite &= number.is_finite();
                // Adding zero turns −0 into 0, so that equal corners have equal bits.
                *value = number + 0.0;
            }
        }
        if !finite {
            return Err(at);
        }
    }
    Ok(())
}
