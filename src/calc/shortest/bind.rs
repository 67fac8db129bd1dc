//! What may bind a programme, and by how much a limit is broken.

/// A limit. Numbers are places in the lists of [`super::Load`] and [`super::Limits`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Bind {
    /// The kiln rises no faster.
    KilnRise,
    /// The kiln falls no faster.
    KilnFall,
    /// A ramp of the sheet.
    RampCap {
        /// Which cap.
        cap: usize,
    },
    /// The kiln's reading goes no higher.
    Ceiling,
    /// The reading goes no lower: the room, or how far it may dip under the soak.
    Floor,
    /// Minutes that the data sheet asks for between two temperatures.
    SheetLeast {
        /// Which of them.
        least: usize,
    },
    /// The least hold at the soak.
    SoakHold,
    /// The last set point is the soak.
    SoakTarget,
    /// The controller takes no more segments.
    Segments,
    /// Wall and core are apart while either crosses an inversion.
    Apart {
        /// Which mould.
        mould: usize,
        /// Which of its inversions.
        inversion: usize,
    },
    /// The core's minutes at or above the temperature that burns the last carbon.
    Carbon {
        /// Which mould.
        mould: usize,
    },
    /// The core at the pour beside the soak.
    CoreAtPour {
        /// Which mould.
        mould: usize,
    },
    /// The core is dry before the pour.
    Dry {
        /// Which mould.
        mould: usize,
    },
}

/// A limit that is broken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Breach {
    /// Which limit.
    pub limit: Bind,
    /// By how much: in minutes where [`Bind::in_minutes`], in segments for [`Bind::Segments`], else in K.
    pub by: f64,
}

impl Bind {
    /// Whether slack and breach of it are in minutes. A ramp too fast is told by the minutes it is too short.
    #[must_use]
    pub fn in_minutes(self) -> bool {
        match self {
            Self::KilnRise | Self::KilnFall | Self::RampCap { .. } | Self::SheetLeast { .. } | Self::SoakHold | Self::Carbon { .. } => true,
            Self::Ceiling | Self::Floor | Self::SoakTarget | Self::Segments => false,
            Self::Apart { .. } | Self::CoreAtPour { .. } | Self::Dry { .. } => false,
        }
    }
}
