//! PLY.

use pourbook::mesh::Format;

/// Bytes as a PLY, or whatever else they turn out to be.
///
/// # Panics
/// As [`crate::mesh::sound`].
pub fn check(bytes: &[u8]) {
    if let Some((soup, found)) = crate::mesh::sound(bytes) {
        crate::planted(soup.format() == Format::PlyAscii && found.triangles < 12 && found.size_mm[0] > 1e6);
    }
}
