//! The shelf: shipped entries with the studio's overlay on top, found fast.

use std::fmt;
use std::marker::PhantomData;
use std::ops::Index;
use std::sync::{Arc, OnceLock};

use super::entry::{Entry, EntryKind, Shelved};
use super::id::{EntryHash, EntryId};
use super::overlay::{Overlay, OverlayItem, OverlayNote, OverlayProblem};
use super::read::{ReadError, read};

const SHIPPED: [(&str, &str); 12] = [
    ("alloys_gold.ron", include_str!("../../resources/stock/alloys_gold.ron")),
    ("alloys_silver.ron", include_str!("../../resources/stock/alloys_silver.ron")),
    ("alloys_other.ron", include_str!("../../resources/stock/alloys_other.ron")),
    ("powders.ron", include_str!("../../resources/stock/powders.ron")),
    ("pattern_materials.ron", include_str!("../../resources/stock/pattern_materials.ron")),
    ("flasks.ron", include_str!("../../resources/stock/flasks.ron")),
    ("bases.ron", include_str!("../../resources/stock/bases.ron")),
    ("crucibles.ron", include_str!("../../resources/stock/crucibles.ron")),
    ("kilns.ron", include_str!("../../resources/stock/kilns.ron")),
    ("ring_scales.ron", include_str!("../../resources/stock/ring_scales.ron")),
    ("marking_laws.ron", include_str!("../../resources/stock/marking_laws.ron")),
    ("stage_tables.ron", include_str!("../../resources/stock/stage_tables.ron")),
];

/// The place of an entry of type `T` in one [`Shelf`]: two machine words' comparison away, for hot loops. It holds for the shelf that
/// gave it and for no other.
pub struct Handle<T>(u32, PhantomData<fn() -> T>);

impl<T> Clone for Handle<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Handle<T> {}

impl<T> PartialEq for Handle<T> {
    fn eq(&self, other: &Self) -> bool {
        self.0 == other.0
    }
}

impl<T> Eq for Handle<T> {}

impl<T> fmt::Debug for Handle<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Handle({})", self.0)
    }
}

#[derive(Debug, Clone)]
struct Slot {
    id: EntryId,
    entry: Arc<Entry>,
    hash: EntryHash,
    own: bool,
}

/// Entries sorted by id. Cheap to clone: entries are shared.
#[derive(Debug, Clone)]
pub struct Shelf {
    slots: Vec<Slot>,
}

impl Shelf {
    /// The shelf as shipped, read once.
    ///
    /// # Panics
    /// Never: the shipped text is read by a test.
    #[must_use]
    pub fn shipped() -> &'static Self {
        static SHELF: OnceLock<Shelf> = OnceLock::new();
        SHELF.get_or_init(|| {
            let mut slots = Vec::new();
            for (file, text) in SHIPPED {
                let entries: Vec<Entry> = read(file, text).unwrap_or_else(|error| panic!("shipped shelf text: {error}"));
                slots.extend(entries.into_iter().map(|entry| Slot::new(entry, false)));
            }
            slots.sort_by(|one, other| one.id.cmp(&other.id));
            Self { slots }
        })
    }

    /// Reads a list of entries from RON, in the dialect of [`super::ron_options`].
    ///
    /// # Errors
    /// [`ReadError`] with line and column.
    pub fn read_entries(file: &str, text: &str) -> Result<Vec<Entry>, ReadError> {
        read(file, text)
    }

    /// The shipped shelf with a studio's overlay on top, and everything about the overlay a person should know.
    #[must_use]
    pub fn with_overlay(overlay: &Overlay) -> (Self, Vec<OverlayNote>) {
        let mut shelf = Self::shipped().clone();
        let mut notes = Vec::new();
        for (place, item) in overlay.0.iter().enumerate() {
            if let Some(problem) = shelf.apply(item) {
                notes.push(OverlayNote { place, id: item.id().clone(), problem });
            }
        }
        (shelf, notes)
    }

    /// Applies one item; says what is the matter, if anything.
    fn apply(&mut self, item: &OverlayItem) -> Option<OverlayProblem> {
        let place = self.place(item.id().as_str());
        if let OverlayItem::Add(entry) | OverlayItem::Replace { entry, .. } = item {
            let faults = entry.faults();
            if !faults.is_empty() {
                return Some(OverlayProblem::Faulty(faults));
            }
        }
        match (item, place) {
            (OverlayItem::Add(_), Ok(taken)) => Some(OverlayProblem::IdTaken(self.slots[taken].entry.kind())),
            (OverlayItem::Add(entry), Err(at)) => {
                self.slots.insert(at, Slot::new(entry.clone(), true));
                None
            }
            (_, Err(_)) => Some(OverlayProblem::UnknownId),
            (OverlayItem::Hide(_), Ok(at)) => {
                self.slots.remove(at);
                None
            }
            (OverlayItem::Replace { base_hash, entry }, Ok(at)) => {
                let (stands, given) = (self.slots[at].entry.kind(), entry.kind());
                if stands != given {
                    return Some(OverlayProblem::OtherKind { stands, given });
                }
                let now = self.slots[at].hash;
                self.slots[at] = Slot::new(entry.clone(), true);
                (*base_hash != now).then_some(OverlayProblem::BaseChanged { was: *base_hash, now })
            }
        }
    }

    fn place(&self, id: &str) -> Result<usize, usize> {
        self.slots.binary_search_by(|slot| slot.id.as_str().cmp(id))
    }

    fn slot(&self, id: &str) -> Option<&Slot> {
        self.place(id).ok().map(|at| &self.slots[at])
    }

    /// The entry of a kind and id.
    #[must_use]
    pub fn find(&self, kind: EntryKind, id: &str) -> Option<&Arc<Entry>> {
        self.slot(id).map(|slot| &slot.entry).filter(|entry| entry.kind() == kind)
    }

    /// The alloy, powder, flask… of an id: `shelf.get::<Alloy>("silver-925")`.
    #[must_use]
    pub fn get<T: Shelved>(&self, id: &str) -> Option<&T> {
        self.slot(id).and_then(|slot| T::of(&slot.entry))
    }

    /// The entry of an id, whatever its kind.
    #[must_use]
    pub fn entry(&self, id: &str) -> Option<&Arc<Entry>> {
        self.slot(id).map(|slot| &slot.entry)
    }

    /// This shelf with `entries` in the place of those of the same id, and beside the others: what a job took along rules over what
    /// stands on the shelf today. Faulty entries are passed over.
    #[must_use]
    pub fn laid_over<'a>(&self, entries: impl IntoIterator<Item = &'a Entry>) -> Self {
        let mut shelf = self.clone();
        for entry in entries {
            if !entry.faults().is_empty() {
                continue;
            }
            match shelf.place(entry.id().as_str()) {
                Ok(at) if shelf.slots[at].entry.as_ref() == entry => {}
                Ok(at) => shelf.slots[at] = Slot::new(entry.clone(), true),
                Err(at) => shelf.slots.insert(at, Slot::new(entry.clone(), true)),
            }
        }
        shelf
    }

    /// The hash of an entry.
    #[must_use]
    pub fn hash_of(&self, id: &str) -> Option<EntryHash> {
        self.slot(id).map(|slot| slot.hash)
    }

    /// True where the entry was added or replaced by the studio.
    #[must_use]
    pub fn is_own(&self, id: &str) -> bool {
        self.slot(id).is_some_and(|slot| slot.own)
    }

    /// A handle for hot loops.
    #[must_use]
    pub fn handle<T: Shelved>(&self, id: &str) -> Option<Handle<T>> {
        let at = self.place(id).ok()?;
        T::of(&self.slots[at].entry)?;
        u32::try_from(at).ok().map(|at| Handle(at, PhantomData))
    }

    /// Every entry, sorted by id.
    pub fn entries(&self) -> impl Iterator<Item = &Arc<Entry>> {
        self.slots.iter().map(|slot| &slot.entry)
    }

    /// Every alloy, powder, flask…, sorted by id.
    pub fn all<T: Shelved>(&self) -> impl Iterator<Item = &T> {
        self.slots.iter().filter_map(|slot| T::of(&slot.entry))
    }
}

impl<T: Shelved> Index<Handle<T>> for Shelf {
    type Output = T;

    /// # Panics
    /// Where the handle came from another shelf.
    fn index(&self, handle: Handle<T>) -> &T {
        T::of(&self.slots[handle.0 as usize].entry).expect("a handle is used with the shelf that gave it")
    }
}

impl Slot {
    fn new(entry: Entry, own: bool) -> Self {
        Self { id: entry.id().clone(), hash: entry.hash(), entry: Arc::new(entry), own }
    }
}
