//! How much a file may ask of the machine.

/// The most a pattern file may cost before it is refused. Nothing is ever allocated on the word of a header: counts are compared with the bytes that are there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// The longest file that is read, in bytes.
    pub max_bytes: u64,
    /// The most triangles that are kept.
    pub max_triangles: u32,
    /// The most bytes a packed file may have once unpacked. They are counted while they come, whatever the package says of itself.
    pub max_expanded_bytes: u64,
}

/// Triangles that can be numbered, whatever the limits say: three points and three edges each must fit in 31 bits.
const MOST_TRIANGLES: u32 = 500_000_000;

impl Limits {
    /// The most triangles, never more than can be numbered.
    pub(super) fn triangles(&self) -> u32 {
        self.max_triangles.min(MOST_TRIANGLES)
    }

    /// The most corners that are kept beside the triangles: as many as they can have between them.
    pub(super) fn corners(&self) -> u64 {
        3 * u64::from(self.triangles())
    }
}

impl Default for Limits {
    /// 2 GiB, 4 GiB once unpacked, and 20 million triangles: some twenty times the finest pattern a printer can follow.
    fn default() -> Self {
        Self { max_bytes: 2 << 30, max_triangles: 20_000_000, max_expanded_bytes: 4 << 30 }
    }
}

/// The way a pattern file writes its triangles.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// Fixed records of fifty bytes behind a header of eighty-four.
    StlBinary,
    /// Words and numbers a person can read.
    StlAscii,
    /// Lines of corners and of faces that number them.
    Obj,
    /// A header that describes the tables after it, which a person can read.
    PlyAscii,
    /// The same with tables of bytes, in either order of bytes.
    PlyBinary,
    /// A zip package with a model in XML.
    ThreeMf,
}

impl Format {
    /// A name that stays the same from version to version.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::StlBinary => "stl-binary",
            Self::StlAscii => "stl-ascii",
            Self::Obj => "obj",
            Self::PlyAscii => "ply-ascii",
            Self::PlyBinary => "ply-binary",
            Self::ThreeMf => "3mf",
        }
    }
}
