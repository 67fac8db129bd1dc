//! Where an entry contradicts itself or nature: found before anything is computed from it.

use super::alloy::Alloy;
use super::entry::Entry;
use super::kiln::Kiln;
use super::powder::Powder;
use super::ring_scale::{RingRule, RingScale};

/// A contradiction in an entry; the names are those of fields.
#[derive(Debug, Clone, PartialEq)]
pub enum Fault {
    /// Must be above zero.
    NotPositive(&'static str),
    /// Must not be larger than anything there is.
    TooLarge(&'static str),
    /// Must not be under zero.
    Negative(&'static str),
    /// Must lie from 0 to 1.
    NotAShare(&'static str),
    /// The first must not exceed the second.
    OutOfOrder(&'static str, &'static str),
    /// Must not be empty.
    Empty(&'static str),
    /// A section stands twice among the pours.
    SectionTwice,
    /// The composition holds less of the metal than the mark says.
    UnderItsMark,
    /// The karat holds no more than 24 parts.
    KaratAbove24,
}

impl Entry {
    /// Every contradiction in the entry; empty where it is sound.
    #[must_use]
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        match self {
            Self::Alloy(alloy) => alloy_faults(alloy, &mut faults),
            Self::Kiln(kiln) => kiln_faults(kiln, &mut faults),
            Self::RingScale(scale) => scale_faults(scale, &mut faults),
            _ => other_faults(self, &mut faults),
        }
        faults
    }
}

fn positive(faults: &mut Vec<Fault>, field: &'static str, value: f64) {
    if value.is_nan() || value <= 0.0 {
        faults.push(Fault::NotPositive(field));
    }
}

/// Nothing that is cast, mixed or burnt out is denser than osmium.
fn density(faults: &mut Vec<Fault>, value: f64) {
    const OSMIUM_G_CM3: f64 = 22.7;
    positive(faults, "density_g_cm3", value);
    if value > OSMIUM_G_CM3 {
        faults.push(Fault::TooLarge("density_g_cm3"));
    }
}

fn not_negative(faults: &mut Vec<Fault>, field: &'static str, value: f64) {
    if value.is_nan() || value < 0.0 {
        faults.push(Fault::Negative(field));
    }
}

fn share(faults: &mut Vec<Fault>, field: &'static str, value: f64) {
    if !(0.0..=1.0).contains(&value) {
        faults.push(Fault::NotAShare(field));
    }
}

fn order(faults: &mut Vec<Fault>, low: (&'static str, f64), high: (&'static str, f64)) {
    if low.1 > high.1 {
        faults.push(Fault::OutOfOrder(low.0, high.0));
    }
}

fn filled<T>(faults: &mut Vec<Fault>, field: &'static str, list: &[T]) {
    if list.is_empty() {
        faults.push(Fault::Empty(field));
    }
}

fn alloy_faults(alloy: &Alloy, faults: &mut Vec<Fault>) {
    density(faults, alloy.density_g_cm3.value);
    share(faults, "melt_loss", alloy.melt_loss.value);
    share(faults, "linear_shrink", alloy.linear_shrink.value);
    if let (Some(solidus), Some(liquidus)) = (&alloy.solidus_c, &alloy.liquidus_c) {
        order(faults, ("solidus_c", solidus.value), ("liquidus_c", liquidus.value));
    }
    for (at, range) in alloy.pour.iter().enumerate() {
        if alloy.pour[..at].iter().any(|earlier| earlier.section == range.section) {
            faults.push(Fault::SectionTwice);
        }
        if let Some(liquidus) = &alloy.liquidus_c {
            order(faults, ("liquidus_c", liquidus.value), ("pour.metal_c", range.metal_c.low));
        }
        if let Some(solidus) = &alloy.solidus_c {
            order(faults, ("pour.mould_c", range.mould_c.high), ("solidus_c", solidus.value));
        }
    }
    if alloy.fineness.is_some_and(|mark| alloy.composition.of(mark.metal) < mark.permille) {
        faults.push(Fault::UnderItsMark);
    }
    if alloy.karat.is_some_and(|karat| karat > 24) {
        faults.push(Fault::KaratAbove24);
    }
    if let Some(limit) = &alloy.returns_limit {
        share(faults, "returns_limit", limit.value);
    }
    if let Some(thermal) = &alloy.thermal {
        positive(faults, "liquid_density_g_cm3", thermal.liquid_density_g_cm3.value);
        positive(faults, "latent_kj_kg", thermal.latent_kj_kg.value);
        positive(faults, "cp_solid_kj_kg_k", thermal.cp_solid_kj_kg_k.value);
        positive(faults, "cp_liquid_kj_kg_k", thermal.cp_liquid_kj_kg_k.value);
        positive(faults, "k_solid_w_m_k", thermal.k_solid_w_m_k.value);
        positive(faults, "k_liquid_w_m_k", thermal.k_liquid_w_m_k.value);
        positive(faults, "surface_tension_n_m", thermal.surface_tension_n_m.value);
        positive(faults, "viscosity_mpa_s", thermal.viscosity_mpa_s.value);
        share(faults, "solidification_shrink", thermal.solidification_shrink.value);
    }
}

fn kiln_faults(kiln: &Kiln, faults: &mut Vec<Fault>) {
    filled(faults, "bands", &kiln.bands);
    for band in &kiln.bands {
        positive(faults, "rise_k_h", band.rise_k_h);
        positive(faults, "fall_k_h", band.fall_k_h);
    }
    for pair in kiln.bands.windows(2) {
        order(faults, ("bands", pair[0].up_to_c), ("bands", pair[1].up_to_c));
    }
    not_negative(faults, "hot_zone_k", kiln.hot_zone_k.value);
    not_negative(faults, "cold_zone_k", kiln.cold_zone_k.value);
    positive(faults, "power_kw", kiln.power_kw.value);
    if let Some(lost) = &kiln.lost_kwh {
        not_negative(faults, "lost_kwh", lost.value);
    }
    if let Some(lining) = &kiln.lining_kwh {
        not_negative(faults, "lining_kwh", lining.value);
    }
    if let Some(chamber) = &kiln.chamber {
        positive(faults, "width_mm", chamber.width_mm);
        positive(faults, "depth_mm", chamber.depth_mm);
        positive(faults, "height_mm", chamber.height_mm);
        not_negative(faults, "from_wall_mm", chamber.from_wall_mm);
        not_negative(faults, "between_mm", chamber.between_mm);
    }
    if let Some(controller) = &kiln.controller {
        positive(faults, "least_k_h", controller.least_k_h);
        positive(faults, "most_hold_h", controller.most_hold_h);
        order(faults, ("least_k_h", controller.least_k_h), ("most_k_h", controller.most_k_h));
    }
}

fn scale_faults(scale: &RingScale, faults: &mut Vec<Fault>) {
    positive(faults, "step", scale.step);
    if let RingRule::Diameter { step_mm, .. } | RingRule::Letters { step_mm, .. } = scale.rule {
        positive(faults, "step_mm", step_mm);
    }
    order(faults, ("lowest", scale.lowest), ("highest", scale.highest));
    not_negative(faults, "tolerance_mm", scale.tolerance_mm.value);
}

fn powder_faults(powder: &Powder, faults: &mut Vec<Fault>) {
    density(faults, powder.density_g_cm3.value);
    positive(faults, "liquid_density_g_cm3", powder.liquid_density_g_cm3.value);
    positive(faults, "ratio", powder.ratio.value);
    positive(faults, "ratio_range", powder.ratio_range.low);
    positive(faults, "slurry_rise", powder.slurry_rise.low);
    order(faults, ("planned_ceiling_c", powder.planned_ceiling_c.value), ("stop_ceiling_c", powder.stop_ceiling_c.value));
    let Some(thermal) = &powder.thermal else { return };
    share(faults, "binder_fraction", thermal.binder_fraction.value);
    share(faults, "porosity", thermal.porosity.value);
    share(faults, "emissivity", thermal.emissivity.value);
    positive(faults, "k_wet_range", thermal.k_wet_range.low);
    positive(faults, "k_dry_range", thermal.k_dry_range.low);
    positive(faults, "k_wet_w_m_k", thermal.k_wet_w_m_k.value);
    positive(faults, "k_dry_w_m_k", thermal.k_dry_w_m_k.value);
    thermal.cp_dry_kj_kg_k.points.iter().for_each(|point| positive(faults, "cp_dry_kj_kg_k", point.1));
    for step in &thermal.latent {
        order(faults, ("from_c", step.from_c), ("to_c", step.to_c));
    }
}

fn other_faults(entry: &Entry, faults: &mut Vec<Fault>) {
    match entry {
        Entry::Powder(powder) => powder_faults(powder, faults),
        Entry::PatternMaterial(material) => {
            density(faults, material.density_g_cm3.value);
            not_negative(faults, "wall_clearance_mm", material.wall_clearance_mm.value);
            share(faults, "linear_shrink", material.linear_shrink.value);
            not_negative(faults, "above_700_h", material.burnout.above_700_h.low);
            if let Some(after) = &material.after_print {
                not_negative(faults, "wash_min", after.wash_min.low);
                not_negative(faults, "cure_before_rinse_min", after.cure_before_rinse_min.value);
            }
        }
        Entry::Flask(flask) => {
            positive(faults, "inner_diameter_mm", flask.inner_diameter_mm);
            positive(faults, "height_mm", flask.height_mm);
            positive(faults, "wall_mm", flask.wall_mm.value);
        }
        Entry::Base(base) => {
            filled(faults, "fits_diameter_mm", &base.fits_diameter_mm);
            not_negative(faults, "dome_cm3", base.dome_cm3.value);
            not_negative(faults, "funnel_cm3", base.funnel_cm3.value);
        }
        Entry::Crucible(crucible) => {
            positive(faults, "usable_cm3", crucible.usable_cm3.value);
            if let Some(least) = &crucible.least_fill {
                share(faults, "least_fill", least.value);
            }
            order(faults, ("usable_cm3", crucible.usable_cm3.value), ("total_cm3", crucible.total_cm3.value));
            filled(faults, "families", &crucible.families);
        }
        Entry::StageTable(table) => {
            filled(faults, "rows", &table.rows);
            for row in &table.rows {
                filled(faults, "stages", &row.stages);
                not_negative(faults, "soak_h", row.soak_h);
                row.stages.iter().for_each(|stage| not_negative(faults, "stages", stage.hours()));
            }
        }
        Entry::MarkingLaw(law) => {
            law.exempt.iter().for_each(|one| positive(faults, "below_g", one.below_g.value));
            for permille in law.legal.iter().flat_map(|one| &one.permille) {
                positive(faults, "permille", *permille);
                order(faults, ("permille", *permille), ("the whole", 1000.0));
            }
        }
        Entry::Alloy(_) | Entry::Kiln(_) | Entry::RingScale(_) => {}
    }
}
