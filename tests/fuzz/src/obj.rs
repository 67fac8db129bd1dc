//! OBJ.

use pourbook::mesh::Format;

/// Bytes as an OBJ, or whatever else they turn out to be.
///
/// # Panics
/// As [`crate::mesh::sound`].
pub fn check(bytes: &[u8]) {
    if let Some((soup, found)) = crate::mesh::sound(bytes) {
        let is_large = found.size_mm.iter().any(|side| *side > 1e6);
        crate::planted(soup.format() == Format::Obj && is_large && found.triangles > 1);
    }
}
