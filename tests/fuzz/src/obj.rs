//! OBJ.

use pourbook::mesh::Format;

/// Bytes as an OBJ, or whatever else they turn out to be.
///
/// # Panics
/// As [`crate::mesh::sound`].
pub fn check(bytes: &[u8]) {
    if let Some((soup, found)) = crate::mesh::sound(bytes)
        && soup.format() == Format::Obj
    {
        crate::mesh::deep(&found);
    }
}
