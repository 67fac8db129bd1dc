//! What a column is.

use serde::{Deserialize, Serialize};

/// What a column is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Role {
    /// Who ordered.
    Client,
    /// What the piece is.
    Design,
    /// How many pieces.
    Quantity,
    /// The alloy.
    Alloy,
    /// The ring size.
    Size,
    /// When it is due.
    Due,
    /// When the order was taken.
    Taken,
    /// The order's number or reference.
    Reference,
    /// The price.
    Price,
    /// Remarks; several columns can be.
    Notes,
    /// The file of the pattern.
    PatternFile,
    /// Nothing that is taken in.
    Ignored,
}

impl Role {
    /// True where several columns can have it.
    #[must_use]
    pub fn is_shared(self) -> bool {
        matches!(self, Self::Notes | Self::Ignored)
    }
}
