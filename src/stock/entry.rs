//! One thing on the shelf, whatever its kind.

use serde::{Deserialize, Serialize};

use super::alloy::Alloy;
use super::id::{EntryHash, EntryId};
use super::kiln::Kiln;
use super::marking_law::MarkingLaw;
use super::pattern_material::PatternMaterial;
use super::powder::Powder;
use super::ring_scale::RingScale;
use super::stage_table::StageTable;
use super::vessel::{Base, Crucible, Flask};

macro_rules! entries {
    ($($(#[$note:meta])* $kind:ident),+ $(,)?) => {
        /// One thing on the shelf.
        #[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
        // A shelf holds a hundred of these behind pointers: the size of the largest is no cost.
        #[allow(clippy::large_enum_variant)]
        pub enum Entry { $($(#[$note])* $kind($kind)),+ }

        /// The kinds of entry.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        pub enum EntryKind { $($(#[$note])* $kind),+ }

        impl EntryKind {
            /// Every kind.
            pub const ALL: &'static [Self] = &[$(Self::$kind),+];
        }

        impl Entry {
            /// Its slug.
            #[must_use]
            pub fn id(&self) -> &EntryId {
                match self { $(Self::$kind(entry) => &entry.id),+ }
            }

            /// Its name in the trade's words.
            #[must_use]
            pub fn name(&self) -> &str {
                match self { $(Self::$kind(entry) => &entry.name),+ }
            }

            /// Its kind.
            #[must_use]
            pub fn kind(&self) -> EntryKind {
                match self { $(Self::$kind(_) => EntryKind::$kind),+ }
            }
        }

        $(
            impl Shelved for $kind {
                const KIND: EntryKind = EntryKind::$kind;
                fn of(entry: &Entry) -> Option<&Self> {
                    match entry { Entry::$kind(inner) => Some(inner), _ => None }
                }
            }

            impl From<$kind> for Entry {
                fn from(inner: $kind) -> Self { Self::$kind(inner) }
            }
        )+
    };
}

entries! {
    /// What is poured.
    Alloy,
    /// Investment.
    Powder,
    /// What patterns are made of.
    PatternMaterial,
    /// A sleeve.
    Flask,
    /// What closes the flask and forms the funnel.
    Base,
    /// What the metal melts in.
    Crucible,
    /// A burnout kiln.
    Kiln,
    /// A scale of ring sizes.
    RingScale,
    /// Burnout stages by flask size.
    StageTable,
    /// What a country asks of articles of precious metal.
    MarkingLaw,
}

/// A type that stands on the shelf as one kind of [`Entry`].
pub trait Shelved: Sized + 'static {
    /// Its kind.
    const KIND: EntryKind;
    /// The inner value, `None` for another kind.
    fn of(entry: &Entry) -> Option<&Self>;
}

impl Entry {
    /// The hash of its canonical text. It does not change with the layout of the file it was read from, nor when a later version
    /// gives entries a new optional field that this one leaves out.
    ///
    /// # Panics
    /// Never: entries hold nothing that RON cannot write.
    #[must_use]
    pub fn hash(&self) -> EntryHash {
        EntryHash::of(&ron::to_string(self).expect("an entry is plain data that RON can write"))
    }
}
