//! What parts the cells of a line.

use serde::{Deserialize, Serialize};

/// What parts the cells of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Separator {
    /// A tab.
    Tab,
    /// `;`
    Semicolon,
    /// `|`
    Bar,
    /// `,`
    Comma,
    /// Blanks, as many as there are: only instruments write so, and [`super::read`] never takes them.
    Blanks,
}

impl Separator {
    /// In the order in which they are believed.
    pub const ALL: [Self; 5] = [Self::Tab, Self::Semicolon, Self::Bar, Self::Comma, Self::Blanks];

    /// Those that are one sign, in the same order.
    pub const SIGNS: [Self; 4] = [Self::Tab, Self::Semicolon, Self::Bar, Self::Comma];

    /// The bytes of [`Self::SIGNS`].
    pub const BYTES: &'static [u8] = b"\t;|,";

    /// Its sign as a byte.
    #[must_use]
    pub fn byte(self) -> u8 {
        match self {
            Self::Tab => b'\t',
            Self::Semicolon => b';',
            Self::Bar => b'|',
            Self::Comma => b',',
            Self::Blanks => b' ',
        }
    }
}
