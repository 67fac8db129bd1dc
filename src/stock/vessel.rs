//! Flasks, bases and crucibles: what holds the mould and the metal.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::alloy::Family;
use super::id::EntryId;
use super::sourced::{Origin, Sourced, finite, finite_list};

/// The wall of a flask.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum FlaskWall {
    /// Solid steel.
    Solid,
    /// Perforated, with a flange for the vacuum chamber; wrapped before it is filled.
    Perforated,
}

/// A flask: a round steel sleeve. [`fmt::Display`] prints what it must always be called by: Ø×H.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Flask {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// Inner diameter, mm.
    #[serde(deserialize_with = "finite")]
    pub inner_diameter_mm: f64,
    /// Inner height, mm.
    #[serde(deserialize_with = "finite")]
    pub height_mm: f64,
    /// Source of diameter and height.
    pub origin: Origin,
    /// Thickness of the wall, mm.
    pub wall_mm: Sourced,
    /// Its wall.
    pub wall: FlaskWall,
    /// Mass empty, g, where it was weighed or computed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass_g: Option<Sourced>,
    /// Height a collar or wrap adds while the slurry rises, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub collar_mm: Option<Sourced>,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

impl Flask {
    /// Inside volume, cm³: π/4·Ø²·H.
    #[must_use]
    pub fn volume_cm3(&self) -> f64 {
        std::f64::consts::FRAC_PI_4 * self.inner_diameter_mm * self.inner_diameter_mm * self.height_mm / 1000.0
    }
}

impl fmt::Display for Flask {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.0}×{:.0}", self.inner_diameter_mm, self.height_mm)
    }
}

/// A base: closes the flask while it is filled and forms the funnel with its dome.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Base {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// Inner diameter of the flasks it closes, mm.
    #[serde(deserialize_with = "finite_list")]
    pub fits_diameter_mm: Vec<f64>,
    /// Volume of the dome inside the flask, cm³: investment that is not needed.
    pub dome_cm3: Sourced,
    /// Height of the dome, mm.
    pub dome_height_mm: Sourced,
    /// Room for the button in the funnel the dome leaves, cm³.
    pub funnel_cm3: Sourced,
    /// Mass, g, where it was weighed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tare_g: Option<Sourced>,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

impl Base {
    /// True where it closes a flask of `inner_diameter_mm`, to half a millimetre.
    #[must_use]
    pub fn fits(&self, inner_diameter_mm: f64) -> bool {
        self.fits_diameter_mm.iter().any(|fits| (fits - inner_diameter_mm).abs() <= 0.5)
    }
}

/// What a crucible is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum CrucibleMaterial {
    /// Graphite: for what takes up no carbon.
    Graphite,
    /// Clay with graphite.
    ClayGraphite,
    /// Fused silica.
    FusedSilica,
    /// Zirconia or zirconia-lined.
    Zirconia,
}

/// A crucible.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Crucible {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// What it is made of.
    pub material: CrucibleMaterial,
    /// Volume to the brim, cm³.
    pub total_cm3: Sourced,
    /// Volume that may be molten metal, cm³.
    pub usable_cm3: Sourced,
    /// Least share of the usable volume that a spin still throws out cleanly.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_fill: Option<Sourced>,
    /// Never above, °C.
    pub ceiling_c: Sourced,
    /// The families it may melt; one crucible, one family, in use.
    pub families: Vec<Family>,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}
