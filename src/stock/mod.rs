//! Shelf entries: alloys, powders, pattern materials, vessels, kilns, ring scales, stage tables; shipped text and the studio's overlay.
//!
//! Every number carries where it comes from and how far to trust it ([`Sourced`], [`Span`], [`Origin`]). Start at [`Shelf::shipped`]
//! and ask it by id: `shelf.get::<Alloy>("silver-925")`. A studio's own entries are an [`Overlay`] laid on top; whatever does not
//! fit comes back as an [`OverlayNote`]. Entries hold no brand, only what a thing is.

mod alloy;
mod element;
mod entry;
mod fault;
mod id;
mod kiln;
mod marking_law;
mod overlay;
mod pattern_material;
mod powder;
mod read;
mod ring_scale;
mod shelf;
mod sourced;
mod sources;
mod stage_table;
mod vessel;

pub use alloy::{Alloy, AlloyThermal, Cooling, Family, Fineness, Hazard, MouldRefusal, PourRange, Quench, Section};
pub use element::{Composition, Element, Permille};
pub use entry::{Entry, EntryKind, Shelved};
pub use fault::Fault;
pub use id::{EntryHash, EntryId};
pub use kiln::{Chamber, Controller, HotSide, Kiln, KilnBand};
pub use marking_law::{Exemption, LegalFinenesses, MarkingLaw, MarkingSystem};
pub use overlay::{Overlay, OverlayItem, OverlayNote, OverlayProblem, put_own};
pub use pattern_material::{AfterPrint, Burnout, PatternClass, PatternMaterial};
pub use powder::{LatentStep, Liquid, Powder, PowderClass, PowderThermal};
pub use read::{ReadError, entry_text, ron_options};
pub use ring_scale::{NearestSize, RingRule, RingScale, SizeError};
pub use shelf::{Handle, Shelf};
pub use sourced::{Curve, Origin, Sourced, Span, Trust};
pub use sources::{Source, sources};
pub use stage_table::{HotLoading, Stage, StageRow, StageTable};
pub use vessel::{Base, Crucible, CrucibleMaterial, Flask, FlaskWall};
