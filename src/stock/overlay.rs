//! A studio's own entries, laid over the shipped ones.

use serde::{Deserialize, Serialize};

use super::entry::{Entry, EntryKind};
use super::fault::Fault;
use super::id::{EntryHash, EntryId};
use super::read::{ReadError, read};

/// One change to the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(clippy::large_enum_variant, reason = "a studio holds a few dozen of these")]
pub enum OverlayItem {
    /// A new entry.
    Add(Entry),
    /// Stands in for an entry of the same id and kind.
    Replace {
        /// Hash of the entry it was made from.
        base_hash: EntryHash,
        /// What stands there now.
        entry: Entry,
    },
    /// Takes an entry off the shelf.
    Hide(EntryId),
}

impl OverlayItem {
    /// The id it is about.
    #[must_use]
    pub fn id(&self) -> &EntryId {
        match self {
            Self::Add(entry) | Self::Replace { entry, .. } => entry.id(),
            Self::Hide(id) => id,
        }
    }
}

/// Puts an entry of the studio's own in the place of `stands`, which is on the shelf under the same id: it goes where the studio has one
/// already, and else replaces what stands there.
pub fn put_own(items: &mut Vec<OverlayItem>, stands: &Entry, own: Entry) {
    let already = items.iter_mut().rev().find_map(|item| match item {
        OverlayItem::Add(entry) | OverlayItem::Replace { entry, .. } if entry.id() == own.id() => Some(entry),
        _ => None,
    });
    match already {
        Some(entry) => *entry = own,
        None => items.push(OverlayItem::Replace { base_hash: stands.hash(), entry: own }),
    }
}

/// A studio's changes to the shelf, applied in order.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Overlay(pub Vec<OverlayItem>);

impl Overlay {
    /// Reads an overlay from RON.
    ///
    /// # Errors
    /// [`ReadError`] with line and column.
    pub fn parse(file: &str, text: &str) -> Result<Self, ReadError> {
        read(file, text)
    }
}

/// Something about an item of the overlay that a person should know.
#[derive(Debug, Clone, PartialEq)]
pub struct OverlayNote {
    /// Place in the overlay, from 0.
    pub place: usize,
    /// The id the item is about.
    pub id: EntryId,
    /// What is the matter.
    pub problem: OverlayProblem,
}

/// What can be the matter with an item of the overlay. Only [`OverlayProblem::BaseChanged`] is applied nevertheless.
#[derive(Debug, Clone, PartialEq)]
pub enum OverlayProblem {
    /// The entry it replaces is no longer the one it was made from. The studio's entry stands; keep it or adopt the new one.
    BaseChanged {
        /// Hash of the entry it was made from.
        was: EntryHash,
        /// Hash of the entry that would stand there now.
        now: EntryHash,
    },
    /// `Add` of an id that is taken: not applied.
    IdTaken(EntryKind),
    /// `Replace` or `Hide` of an id that is not on the shelf: not applied.
    UnknownId,
    /// `Replace` by another kind of entry: not applied.
    OtherKind {
        /// What stands there.
        stands: EntryKind,
        /// What would replace it.
        given: EntryKind,
    },
    /// The entry contradicts itself: not applied.
    Faulty(Vec<Fault>),
}
