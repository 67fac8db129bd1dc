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

/// What stands on its floor, and where it is warm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Chamber {
    /// From side to side, mm.
    #[serde(deserialize_with = "finite")]
    pub width_mm: f64,
    /// From the door to the back, mm.
    #[serde(deserialize_with = "finite")]
    pub depth_mm: f64,
    /// From the floor, or what stands on it to raise the flasks, to the roof, mm.
    #[serde(deserialize_with = "finite")]
    pub height_mm: f64,
    /// Round like a drum, and loaded from above; its width is its diameter.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub round: bool,
    /// Least from a flask to wall or element, mm.
    #[serde(deserialize_with = "finite")]
    pub from_wall_mm: f64,
    /// Least between two flasks, for the air, mm.
    #[serde(deserialize_with = "finite")]
    pub between_mm: f64,
    /// Where it is hottest.
    pub hottest: HotSide,
    /// Source of all these.
    pub origin: Origin,
}

/// Where a kiln is hottest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum HotSide {
    /// Away from the door.
    Back,
    /// By the door.
    Front,
    /// To the left of who stands before it.
    Left,
    /// To the right.
    Right,
    /// In the middle.
    Middle,
    /// Nowhere: air is stirred.
    Even,
}

/// What its controller takes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Controller {
    /// Set in °F; in °C where not.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub fahrenheit: bool,
    /// Ramps are set as minutes; as degrees an hour where not.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub ramps_in_minutes: bool,
    /// A ramp may be set to as fast as it goes.
    pub full_speed: bool,
    /// Slowest and fastest ramp in K/h.
    #[serde(deserialize_with = "finite")]
    pub least_k_h: f64,
    /// Fastest ramp in K/h.
    #[serde(deserialize_with = "finite")]
    pub most_k_h: f64,
    /// Longest hold, h.
    #[serde(deserialize_with = "finite")]
    pub most_hold_h: f64,
    /// A hold begins once its temperature is reached, however late.
    pub waits_for_it: bool,
    /// Source of all these.
    pub origin: Origin,
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
    /// What it loses in an hour at 730 °C, kWh.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lost_kwh: Option<Sourced>,
    /// What its lining takes from a cold room to 730 °C, kWh.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lining_kwh: Option<Sourced>,
    /// Air enters and leaves (a vent or flue).
    pub vented: bool,
    /// Burns gas.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub gas: bool,
    /// Its floor, where it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chamber: Option<Chamber>,
    /// Its controller, where it has one that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub controller: Option<Controller>,
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
