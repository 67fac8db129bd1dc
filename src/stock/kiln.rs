//! Burnout kilns: how fast they really rise and fall, how hot, how even.

use serde::{Deserialize, Serialize};

use super::id::EntryId;
use super::sourced::{Origin, Sourced, finite};

/// How fast a loaded kiln really moves below a temperature.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KilnBand {
    /// The band reaches up to here, °C.
    #[serde(deserialize_with = "finite")]
    pub up_to_c: f64,
    /// Fastest rise at full power, K/h.
    #[serde(deserialize_with = "finite")]
    pub rise_k_h: f64,
    /// Fastest fall with the door shut, K/h.
    #[serde(deserialize_with = "finite")]
    pub fall_k_h: f64,
}

/// A kiln.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kiln {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// Bands in rising order; the last reaches the ceiling.
    pub bands: Vec<KilnBand>,
    /// Source of the bands.
    pub bands_origin: Origin,
    /// Never above, °C.
    pub ceiling_c: Sourced,
    /// True temperature less the reading, K.
    pub offset_k: Sourced,
    /// How much hotter than the probe its hottest place is, K.
    pub hot_zone_k: Sourced,
    /// How much colder than the probe its coldest place is, K.
    pub cold_zone_k: Sourced,
    /// How many flasks of 89×102 mm stand in it with air round each.
    pub positions: u32,
    /// Segments its controller takes; absent for one that is set by hand.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub segments: Option<u32>,
    /// Power, kW.
    pub power_kw: Sourced,
    /// Air enters and leaves (a vent or flue).
    pub vented: bool,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

impl Kiln {
    /// The band that holds at `temperature_c`, the last one above all bands; `None` only where there is no band.
    #[must_use]
    pub fn band_at(&self, temperature_c: f64) -> Option<&KilnBand> {
        self.bands.iter().find(|band| temperature_c < band.up_to_c).or_else(|| self.bands.last())
    }
}
