//! What is poured: composition, fineness, temperatures, losses, shrinkage, hazards.

use serde::{Deserialize, Serialize};

use super::element::{Composition, Element, Permille};
use super::id::EntryId;
use super::powder::Powder;
use super::sourced::{Sourced, Span};

/// The metal an alloy is counted by.
#[allow(missing_docs, reason = "the names of the metals are their own description")]
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Family {
    Gold,
    Silver,
    Platinum,
    Palladium,
    Copper,
    Tin,
    Aluminium,
    Zinc,
    Iron,
}

/// The fineness an alloy is marked by: how many parts per thousand of which precious metal. A 14 karat alloy that carries the mark 585
/// holds 585 ‰, not 14/24 = 583.3 ‰.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fineness {
    /// The precious metal.
    pub metal: Element,
    /// Parts per thousand of it, no less.
    pub permille: Permille,
}

/// How heavy the pieces of a flask are, for the choice of temperatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Section {
    /// Filigree and wire, up to about 0.8 mm.
    Filigree,
    /// Light rings and settings, about 0.8 to 1.5 mm.
    Thin,
    /// Ordinary rings, about 1.5 to 3 mm.
    Medium,
    /// Men's rings and small sculpture, over about 3 mm.
    Heavy,
}

/// Where metal and mould should stand at the pour for one class of section.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PourRange {
    /// The class of section.
    pub section: Section,
    /// Metal, °C.
    pub metal_c: Span,
    /// Mould, °C.
    pub mould_c: Span,
}

/// How a cast flask is cooled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Cooling {
    /// Quench as soon as no red is seen: slow cooling makes the alloy brittle (red golds).
    Prompt,
    /// Quench after the stated minutes.
    Wait,
    /// Never quench: cool in air.
    Air,
}

/// When a cast flask may be quenched.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Quench {
    /// The way.
    pub cooling: Cooling,
    /// Minutes from the pour to the quench; absent for cooling in air.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after_min: Option<Span>,
    /// Why.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// What can hurt somebody; the cautions that print are chosen by these.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Hazard {
    /// Nickel: release on the skin, fume.
    Nickel,
    /// Cobalt: fume, skin.
    Cobalt,
    /// Zinc oxide fume.
    Zinc,
    /// Cadmium fume.
    Cadmium,
    /// Lead.
    Lead,
    /// Beryllium.
    Beryllium,
    /// Copper fume.
    CopperFume,
    /// Manganese fume.
    Manganese,
    /// Antimony.
    Antimony,
    /// Metal so bright that eyes need a shade.
    BrightHeat,
    /// Takes up oxygen or hydrogen strongly: inert cover or vacuum.
    InertCover,
    /// Burns if dross meets water (aluminium, magnesium).
    WaterReaction,
    /// Breathable crystalline silica.
    Silica,
    /// Ammonia when a phosphate mould is fired.
    Ammonia,
    /// Fume of wax when burnt.
    WaxFume,
    /// Uncured resin sensitises skin.
    UncuredResin,
    /// Fume of resin or plastic when burnt.
    ResinFume,
    /// Dust when carved or sanded.
    Dust,
}

/// What the heat model and the freezing rules need of an alloy.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AlloyThermal {
    /// Density just above the liquidus, g/cm³.
    pub liquid_density_g_cm3: Sourced,
    /// Latent heat of freezing, kJ/kg.
    pub latent_kj_kg: Sourced,
    /// Specific heat of the solid near the solidus, kJ/(kg·K).
    pub cp_solid_kj_kg_k: Sourced,
    /// Specific heat of the liquid, kJ/(kg·K).
    pub cp_liquid_kj_kg_k: Sourced,
    /// Conductivity of the solid near the solidus, W/(m·K).
    pub k_solid_w_m_k: Sourced,
    /// Conductivity of the liquid, W/(m·K).
    pub k_liquid_w_m_k: Sourced,
    /// Surface tension of the liquid, N/m.
    pub surface_tension_n_m: Sourced,
    /// Viscosity of the liquid, mPa·s.
    pub viscosity_mpa_s: Sourced,
    /// Loss of volume on freezing, as a ratio.
    pub solidification_shrink: Sourced,
}

/// An alloy as it is cast.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Alloy {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// The metal it is counted by.
    pub family: Family,
    /// The mark it carries; absent for base metal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fineness: Option<Fineness>,
    /// Karat by name, 24ths of gold: a name only, the mark rules. See [`Alloy::karat_permille`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub karat: Option<u8>,
    /// Parts per thousand by mass, a typical one of its kind; the supplier's sheet goes first.
    pub composition: Composition,
    /// Density of the sound solid at room temperature, g/cm³.
    pub density_g_cm3: Sourced,
    /// Spread of densities met under this name, g/cm³.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub density_range: Option<Span>,
    /// Where melting begins, °C.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub solidus_c: Option<Sourced>,
    /// How far the solidus may be off, K.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub solidus_uncertain_k: Option<Sourced>,
    /// Where melting is complete, °C.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub liquidus_c: Option<Sourced>,
    /// Metal and mould at the pour, by section; at most one of each section.
    pub pour: Vec<PourRange>,
    /// When to quench.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub quench: Option<Quench>,
    /// Share of the charge lost in the melt.
    pub melt_loss: Sourced,
    /// Linear shrinkage from pattern to casting, as a ratio.
    pub linear_shrink: Sourced,
    /// Share of returns a charge may hold.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub returns_limit: Option<Sourced>,
    /// What can hurt somebody.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<Hazard>,
    /// Properties for heat, freezing and filling.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thermal: Option<AlloyThermal>,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

/// Why an alloy must not be poured into a powder's mould.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MouldRefusal {
    /// Platinum, palladium and steel melt above what gypsum stands, whatever was typed for their pour.
    Family(Family),
    /// It pours hotter than the mould stands.
    TooHot {
        /// The hottest pour of the alloy, °C.
        pours_at_c: f64,
        /// What the mould stands, °C.
        limit_c: f64,
    },
}

impl Alloy {
    /// The hottest pour over all sections, °C; the liquidus where no pour is stated; `None` where neither is known.
    #[must_use]
    pub fn highest_pour_c(&self) -> Option<f64> {
        let stated = self.pour.iter().map(|range| range.metal_c.high).reduce(f64::max);
        stated.or_else(|| self.liquidus_c.as_ref().map(|liquidus| liquidus.value))
    }

    /// The range for one class of section.
    #[must_use]
    pub fn pour_for(&self, section: Section) -> Option<&PourRange> {
        self.pour.iter().find(|range| range.section == section)
    }

    /// 24ths of gold in parts per thousand (14 karat: 583.33), beside which the mark may ask for more (585).
    #[must_use]
    pub fn karat_permille(&self) -> Option<f64> {
        self.karat.map(|karat| f64::from(karat) * 1000.0 / 24.0)
    }

    /// Why `powder` cannot take this alloy, by family and by pouring temperature and never by a single element; `None` where it can.
    #[must_use]
    pub fn refused_by(&self, powder: &Powder) -> Option<MouldRefusal> {
        if powder.class.is_gypsum() && matches!(self.family, Family::Platinum | Family::Palladium | Family::Iron) {
            return Some(MouldRefusal::Family(self.family));
        }
        let limit_c = powder.max_pour_c.value;
        self.highest_pour_c().filter(|&pours_at_c| pours_at_c > limit_c).map(|pours_at_c| MouldRefusal::TooHot { pours_at_c, limit_c })
    }
}
