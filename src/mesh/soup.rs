//! The triangles of a file as they stand in it, before anything is known about how they meet.

use super::{Format, Limits, ReadError, obj, ply, stl_ascii, stl_binary, threemf};

/// One triangle: three corners of x, y, z in mm: a file that names no unit is taken to be in mm. Their order gives the outside.
pub type Triangle = [[f32; 3]; 3];

/// What a file holds: triangles that do not know of each other. Every coordinate is finite and there is at least one triangle.
#[derive(Debug, Clone)]
pub struct Soup {
    format: Format,
    pub(super) triangles: Vec<Triangle>,
    cut_name: bool,
}

impl Soup {
    pub(super) fn new(format: Format, triangles: Vec<Triangle>, cut_name: bool) -> Self {
        Self { format, triangles, cut_name }
    }

    /// The format the file turned out to be.
    #[must_use]
    pub fn format(&self) -> Format {
        self.format
    }

    /// The same, so many times as large; nothing where that leaves the range of its numbers.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Option<Self> {
        #[allow(clippy::cast_possible_truncation, reason = "rounded to what a file holds")]
        let larger = |corner: [f32; 3]| corner.map(|x| (f64::from(x) * factor) as f32);
        let triangles: Vec<Triangle> = self.triangles.iter().map(|triangle| triangle.map(larger)).collect();
        let finite = triangles.as_flattened().as_flattened().iter().all(|x| x.is_finite());
        finite.then_some(Self { format: self.format, triangles, cut_name: self.cut_name })
    }

    /// The triangles in the file's order, in mm.
    #[must_use]
    pub fn triangles(&self) -> &[Triangle] {
        &self.triangles
    }

    /// True when the last line of a text file looks cut off although every triangle is there.
    #[must_use]
    pub fn last_line_looks_cut(&self) -> bool {
        self.cut_name
    }
}

/// Reads a file's bytes, whatever format they turn out to be.
///
/// A file whose length fits its announced count is binary whatever its header says, since many programs begin that header with "solid".
///
/// # Errors
/// [`ReadError`] when the bytes are not a whole file of a known format, hold no triangle or a corner that is not finite, or pass the limits.
pub fn read(bytes: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let length = bytes.len() as u64;
    if length > limits.max_bytes {
        return Err(ReadError::TooLarge { bytes: length, most: limits.max_bytes });
    }
    match sniff(bytes)? {
        Format::StlBinary => stl_binary::read(bytes, limits),
        Format::StlAscii => stl_ascii::read(bytes, limits),
        Format::Obj => obj::read(bytes, limits),
        Format::PlyAscii | Format::PlyBinary => ply::read(bytes, limits),
        Format::ThreeMf => threemf::read(bytes, limits),
    }
}

/// How far into a file words are looked for.
const LOOK_BYTES: usize = 4096;

fn sniff(bytes: &[u8]) -> Result<Format, ReadError> {
    if bytes.is_empty() {
        return Err(ReadError::Empty);
    }
    if stl_binary::length_fits(stl_binary::announced(bytes), bytes.len() as u64) {
        return Ok(Format::StlBinary);
    }
    if ply::begins(bytes) {
        // Which of the two it is stands in its header.
        return Ok(Format::PlyBinary);
    }
    if threemf::begins(bytes) {
        return Ok(Format::ThreeMf);
    }
    let start = &bytes[..bytes.len().min(LOOK_BYTES)];
    let is_text = !start.iter().any(|&b| b < 0x20 && !b.is_ascii_whitespace() && b != 0x0b);
    match (stl_ascii::begins_with_solid(start), is_text) {
        (true, true) => Ok(Format::StlAscii),
        (false, true) if obj::looks_like(bytes) => Ok(Format::Obj),
        (false, true) => Err(ReadError::NotAMesh),
        // Not text and of the wrong length: read as binary so that the message can say what is missing.
        (_, false) if bytes.len() >= stl_binary::HEADER_BYTES => Ok(Format::StlBinary),
        (_, false) => Err(ReadError::NotAMesh),
    }
}
