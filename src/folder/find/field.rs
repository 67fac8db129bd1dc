//! What a word was found in, and what a date is of.

/// Where in a job a word was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// The client's letter code.
    Client,
    /// The design.
    Design,
    /// The alloy's shelf id.
    Alloy,
    /// The key of a defect for which a piece was rejected.
    Defect,
    /// A size, of the line or of one of its pieces.
    Size,
    /// What is scratched into a flask, or the shelf id of its steel.
    Flask,
    /// The name of a tree.
    Tree,
    /// The name of the job.
    Job,
    /// The shelf id of a powder.
    Powder,
    /// The shelf id of a kiln or of the stage table it was run by.
    Kiln,
    /// A metal lot that was drawn on.
    Lot,
}

impl Field {
    pub(super) const ALL: [Self; 11] = [
        Self::Client,
        Self::Design,
        Self::Alloy,
        Self::Defect,
        Self::Size,
        Self::Flask,
        Self::Tree,
        Self::Job,
        Self::Powder,
        Self::Kiln,
        Self::Lot,
    ];

    /// How much a word found here counts.
    pub(super) fn weight(self) -> u32 {
        match self {
            Self::Client | Self::Design => 8,
            Self::Defect => 6,
            Self::Alloy | Self::Flask => 5,
            Self::Size => 4,
            Self::Tree | Self::Job => 3,
            Self::Powder | Self::Kiln | Self::Lot => 1,
        }
    }
}

/// What a date is the date of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DateOf {
    /// The job was begun; told where nothing else is.
    Begun,
    /// The order was taken.
    Ordered,
    /// A pour that is planned; told where the record knows of none.
    Planned,
    /// A pour, by the record.
    Poured,
}
