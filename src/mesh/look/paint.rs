//! What a pattern is coloured with.

/// The colour of every triangle.
pub trait Paint: Sync {
    /// Red, green and blue of a triangle by its number in the file; none for the plain material.
    fn colour(&self, triangle: u32) -> Option<[u8; 3]>;
}

/// The plain material all over.
#[derive(Debug, Clone, Copy)]
pub struct Plain;

impl Paint for Plain {
    fn colour(&self, _triangle: u32) -> Option<[u8; 3]> {
        None
    }
}

/// A few colours, and which of them each triangle has.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Palette {
    /// The colours.
    pub colours: Vec<[u8; 3]>,
    /// The colour of every triangle, in the file's order; a number beyond the colours, and a triangle beyond the list, is plain material.
    pub of: Vec<u8>,
}

impl Paint for Palette {
    fn colour(&self, triangle: u32) -> Option<[u8; 3]> {
        let index = *self.of.get(triangle as usize)?;
        self.colours.get(usize::from(index)).copied()
    }
}

/// Lines on a pattern, such as its open edges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lines<'a> {
    /// Both ends in mm.
    pub segments: &'a [[[f32; 3]; 2]],
    /// Red, green and blue.
    pub colour: [u8; 3],
    /// Width in pixels, 1 to 8.
    pub width_px: f32,
}

/// The colours of everything that has no paint.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tones {
    /// A face that the light falls on squarely.
    pub material: [u8; 3],
    /// The inner side of a face, as it is seen through a hole; it tells faces that are wound the wrong way, too.
    pub inner: [u8; 3],
    /// The face of a cut.
    pub cut: [u8; 3],
    /// Where a cut goes through two solids that stand in one another.
    pub cut_twice: [u8; 3],
    /// The line where the pattern ends, or one part of it stands before another.
    pub outline: [u8; 3],
    /// What far parts fade towards.
    pub far: [u8; 3],
}
