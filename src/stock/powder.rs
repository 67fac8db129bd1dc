//! Investment powder: what fills the flask round the tree.

use serde::{Deserialize, Serialize};

use super::alloy::Hazard;
use super::id::EntryId;
use super::sourced::{Curve, Sourced, Span, finite};

/// The four classes a studio meets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum PowderClass {
    /// Gypsum-bonded, for wax patterns.
    GypsumGeneral,
    /// Gypsum-bonded and stronger, for printed resin.
    GypsumResin,
    /// Gypsum-bonded with boric acid, for stones cast in place.
    GypsumStones,
    /// Phosphate-bonded, for platinum, palladium, steel and all that pours too hot for gypsum.
    Phosphate,
}

impl PowderClass {
    /// True for the three gypsum-bonded classes.
    #[must_use]
    pub fn is_gypsum(self) -> bool {
        !matches!(self, Self::Phosphate)
    }
}

/// What the powder is mixed with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Liquid {
    /// Water.
    Water,
    /// The maker's own liquid, as it is or thinned.
    SpecialLiquid,
}

/// Heat taken up (positive) or given off (negative) over a range of temperature.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LatentStep {
    /// What happens.
    pub name: String,
    /// Begins, °C.
    #[serde(deserialize_with = "finite")]
    pub from_c: f64,
    /// Ends, °C.
    #[serde(deserialize_with = "finite")]
    pub to_c: f64,
    /// Heat, kJ per kg of binder as it stands in the dry powder.
    pub kj_per_kg_binder: Sourced,
}

/// What the heat model needs of a mould.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PowderThermal {
    /// Share of the dry powder that is binder.
    pub binder_fraction: Sourced,
    /// Its range.
    pub binder_range: Span,
    /// Water bound on setting, kg per kg of binder.
    pub bound_water_per_binder: Sourced,
    /// Pores of the fired mould, as a ratio of its volume.
    pub porosity: Sourced,
    /// Conductivity of the wet mould, W/(m·K).
    pub k_wet_w_m_k: Sourced,
    /// Its range.
    pub k_wet_range: Span,
    /// Conductivity of the dry mould, W/(m·K).
    pub k_dry_w_m_k: Sourced,
    /// Its range: the band of every mould temperature comes from here.
    pub k_dry_range: Span,
    /// Specific heat of the dry mould over °C, kJ/(kg·K).
    pub cp_dry_kj_kg_k: Curve,
    /// Water leaving its binding and changes of the solid, in rising order.
    pub latent: Vec<LatentStep>,
    /// Emissivity of the bare mould's surface.
    pub emissivity: Sourced,
}

/// An investment powder. Ratios are mass of liquid to mass of powder: 0.40 is 40 per 100.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Powder {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// Its class.
    pub class: PowderClass,
    /// True density of the dry grains, g/cm³.
    pub density_g_cm3: Sourced,
    /// Its range.
    pub density_range: Span,
    /// What it is mixed with.
    pub liquid: Liquid,
    /// Density of that liquid at room temperature, g/cm³.
    pub liquid_density_g_cm3: Sourced,
    /// Ordinary ratio.
    pub ratio: Sourced,
    /// What the powder bears.
    pub ratio_range: Span,
    /// For fine work.
    pub ratio_fine: Sourced,
    /// For medium sections.
    pub ratio_medium: Sourced,
    /// For heavy sections.
    pub ratio_heavy: Sourced,
    /// For a fast burnout, where the powder bears one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ratio_fast: Option<Sourced>,
    /// Water and powder when mixed, °C.
    pub mix_temperature_c: Span,
    /// From the first powder in the liquid to the end of pouring, min.
    pub working_time_min: Span,
    /// From the first powder in the liquid to the loss of shine, min; the gloss-off measured for the lot today rules.
    pub gloss_off_min: Span,
    /// Not finished before this, or water separates and leaves marks, min from the first powder in the liquid.
    pub finish_not_before_min: Sourced,
    /// How long before gloss-off pouring must end, min.
    pub stop_pouring_before_gloss_off_min: Span,
    /// How long before gloss-off all must be finished, the flask's vacuum too, min.
    pub finish_before_gloss_off_min: Span,
    /// Mixing, min.
    pub mix_min: Sourced,
    /// Bowl under vacuum, min.
    pub bowl_vacuum_min: Sourced,
    /// Pouring, min.
    pub pour_min: Sourced,
    /// Flask under vacuum, min.
    pub flask_vacuum_min: Sourced,
    /// Least time without moving, h.
    pub stand_min_h: Sourced,
    /// From investing to kiln or dewax, h, by room and powder.
    pub set_h: Span,
    /// Highest temperature to plan for, °C: above it a Caution.
    pub planned_ceiling_c: Sourced,
    /// Never above, °C: a Stop.
    pub stop_ceiling_c: Sourced,
    /// Never above with stones in the mould, °C; absent where stones must not be cast in it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stones_ceiling_c: Option<Sourced>,
    /// How many times its volume the slurry rises under vacuum.
    pub slurry_rise: Span,
    /// Hottest metal the mould stands, °C.
    pub max_pour_c: Sourced,
    /// Months from making, dry and closed.
    pub life_months: Sourced,
    /// Properties for the heat model.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thermal: Option<PowderThermal>,
    /// What can hurt somebody.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<Hazard>,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}
