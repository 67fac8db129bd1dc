//! PLY.

use pourbook::mesh::Format;

/// Bytes as a PLY, or whatever else they turn out to be.
///
/// # Panics
/// As [`crate::mesh::sound`].
pub fn check(bytes: &[u8]) {
    if let Some((soup, found)) = crate::mesh::sound(bytes)
        && matches!(soup.format(), Format::PlyAscii | Format::PlyBinary)
    {
        crate::mesh::deep(&found);
    }
}
