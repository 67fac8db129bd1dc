//! How light a face is, in the shaded view and in the pictures for paper alike.

/// Where the light comes from, in the picture's axes: left, above, and from the eye's side. A unit vector.
const LIGHT: [f64; 3] = [-0.45, 0.64, 0.622_816_8];

/// How light a face is, 0 to 1, by its normal of any length in the picture's axes: right, up, towards the eye.
///
/// Both its sides are seen alike, since files are wound either way.
#[allow(clippy::cast_possible_truncation, reason = "a lightness has few digits")]
pub(in crate::mesh) fn lightness(normal: [f64; 3]) -> f32 {
    let length = (normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]).sqrt();
    if !(length.is_finite() && length > 0.0) {
        return 0.5;
    }
    let side = if normal[2] < 0.0 { -1.0 } else { 1.0 };
    let [x, y, z] = normal.map(|part| part / length * side);
    let lit = (x * LIGHT[0] + y * LIGHT[1] + z * LIGHT[2]).max(0.0);
    // What turns away from the eye is darker: the form shows even where the light lies flat on it.
    let light = (0.30 + 0.66 * lit) * (0.80 + 0.20 * z);
    light.clamp(0.0, 0.97) as f32
}

/// The normal of three points, as long as twice their area.
pub(in crate::mesh) fn normal([a, b, c]: [[f64; 3]; 3]) -> [f64; 3] {
    let (u, v) = ([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);
    [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]
}
