//! What patterns and sprues are made of, and what it takes to burn them out.

use serde::{Deserialize, Serialize};

use super::alloy::Hazard;
use super::id::EntryId;
use super::sourced::{Sourced, Span};

/// The classes of pattern material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum PatternClass {
    /// Shot into rubber moulds.
    InjectionWax,
    /// Carved by hand or milled.
    CarvingWax,
    /// Rod and wire for sprues and trees.
    SprueWax,
    /// Printed photopolymer that burns out.
    CastableResin,
    /// Printed photopolymer with much wax in it.
    WaxFilledPrint,
    /// Printed wax that melts.
    PrintedWax,
    /// Filament plastic.
    Pla,
    /// Leaves, seeds, twigs.
    Organic,
}

/// What burning out asks for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Burnout {
    /// Hours above 700 °C that take the last carbon away; never under the data sheet's hours.
    pub above_700_h: Span,
    /// Needs fresh air while it burns.
    pub needs_air: bool,
    /// Runs out of the mould before it burns.
    pub melts_out: bool,
    /// May be steamed out.
    pub dewax: bool,
    /// Ash left per mass of pattern, as a ratio.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ash: Option<Sourced>,
}

/// What a print asks for between the plate and the tree. The data sheet of the resin rules over it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AfterPrint {
    /// Minutes in a harsh solvent such as alcohol, all baths together: under the least it stays tacky, over the most thin walls swell and soften.
    pub wash_min: Span,
    /// Least minutes under ultraviolet light before the rinse, again where the surface is not clean after it.
    pub cure_before_rinse_min: Sourced,
}

/// A pattern material.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PatternMaterial {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// Its class.
    pub class: PatternClass,
    /// Density, g/cm³; weighing in water once per material is better.
    pub density_g_cm3: Sourced,
    /// Densities met, g/cm³.
    pub density_range: Span,
    /// Least clearance to the flask's wall, mm.
    pub wall_clearance_mm: Sourced,
    /// Linear shrinkage from mould or file to pattern, as a ratio.
    pub linear_shrink: Sourced,
    /// What burning out asks for.
    pub burnout: Burnout,
    /// What a print asks for between the plate and the tree.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after_print: Option<AfterPrint>,
    /// What can hurt somebody.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<Hazard>,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}
