//! Writing triangles as binary STL.

use super::radial::{cross, dot, minus};
use super::soup::Triangle;

/// Triangles as a binary STL file, each with its normal. The header names nobody.
#[must_use]
pub fn as_stl(triangles: &[Triangle]) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(84 + 50 * triangles.len());
    bytes.extend([0_u8; 80]);
    bytes.extend(u32::try_from(triangles.len()).unwrap_or(u32::MAX).to_le_bytes());
    for triangle in triangles {
        let [a, b, c] = triangle.map(|corner| corner.map(f64::from));
        let normal = cross(minus(b, a), minus(c, a));
        let length = dot(normal, normal).sqrt();
        let unit = normal.map(|part| if length > 0.0 { (part / length) as f32 } else { 0.0 });
        for number in unit.iter().chain(triangle.as_flattened()) {
            bytes.extend(number.to_le_bytes());
        }
        bytes.extend([0, 0]);
    }
    bytes
}
