//! 3MF: a package, or the XML of a model by itself, which its checksum keeps a fuzzer from changing.

use crate::mesh::{LIMITS, check_measure, check_refusal, check_soup, sound};
use pourbook::mesh::{measure, read_model_part};

/// Bytes as a package where they begin like one, else as the XML of a model.
///
/// # Panics
/// As [`sound`].
pub fn check(bytes: &[u8]) {
    if bytes.starts_with(b"PK") {
        sound(bytes);
        return;
    }
    match read_model_part(bytes, &LIMITS) {
        Ok(soup) => {
            check_soup(&soup);
            let found = measure(&soup);
            check_measure(&found);
            crate::planted(found.size_mm[0] > 1e6 && found.triangles > 1);
        }
        Err(error) => check_refusal(&error),
    }
}
