//! The set mould of a powder as the heat run takes it.

use crate::calc::heat::{LatentEvent, Material};
use crate::stock::{Powder, PowderThermal};

/// Which end of the band of conductivities.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Conductivity {
    /// The lowest of the shelf's range.
    Low,
    /// The likely one.
    Likely,
    /// The highest.
    High,
}

impl Conductivity {
    /// All three, from low to high.
    pub const ALL: [Self; 3] = [Self::Low, Self::Likely, Self::High];
}

/// Specific heat of water in J/(kg·K), within a hundredth from 20 to 100 °C (steam tables, from memory).
const WATER_J_KG_K: f64 = 4186.0;

/// Heat to boil water at 100 °C in J/kg (steam tables).
const BOIL_J_KG: f64 = 2.257e6;

/// Where a table jumps, it does so within this, in K.
const EDGE_K: f64 = 0.01;

/// Free water boils off within these, in °C; a front has no width of its own.
const BOIL_C: [f64; 2] = [95.0, 105.0];

/// The mould of a powder that was mixed with so much liquid by weight, from low to high conductivity; nothing where the shelf says nothing of
/// its heat. Everything is by the kilogram of dry powder.
#[must_use]
pub fn materials(powder: &Powder, ratio: f64) -> Option<[Material; 3]> {
    let thermal = powder.thermal.as_ref()?;
    if !(ratio.is_finite() && ratio > 0.0) {
        return None;
    }
    // What the slurry filled, the mould fills: powder in a cubic metre of it.
    let volume = 1.0 / powder.density_g_cm3.value + ratio / powder.liquid_density_g_cm3.value;
    let density_kg_m3 = 1000.0 / volume;
    let binder = thermal.binder_fraction.value;
    let bound = binder * thermal.bound_water_per_binder.value;
    let free = (ratio - bound).max(0.0);
    let mut latent = vec![LatentEvent { from_c: BOIL_C[0], to_c: BOIL_C[1], heat_j_kg: free * BOIL_J_KG, releases_kg_kg: free }];
    let giving: f64 = thermal.latent.iter().map(|step| step.kj_per_kg_binder.value.max(0.0)).sum();
    for step in thermal.latent.iter().filter(|step| step.kj_per_kg_binder.value > 0.0) {
        let heat = step.kj_per_kg_binder.value;
        latent.push(LatentEvent {
            from_c: step.from_c,
            to_c: step.to_c,
            heat_j_kg: heat * 1000.0 * binder,
            // Bound water leaves as the heat for it goes in.
            releases_kg_kg: bound * heat / giving,
        });
    }
    let k = |of: Conductivity| match of {
        Conductivity::Low => (thermal.k_wet_range.low, thermal.k_dry_range.low),
        Conductivity::Likely => (thermal.k_wet_w_m_k.value, thermal.k_dry_w_m_k.value),
        Conductivity::High => (thermal.k_wet_range.high, thermal.k_dry_range.high),
    };
    let specific_heat = specific_heat(thermal, ratio);
    Some(Conductivity::ALL.map(|of| {
        let (wet, dry) = k(of);
        Material {
            density_kg_m3,
            conductivity: vec![[20.0, wet], [BOIL_C[0], wet], [BOIL_C[1], dry]],
            conductivity_dry: Some(vec![[20.0, dry]]),
            specific_heat: specific_heat.clone(),
            latent: latent.clone(),
            reversible: false,
        }
    }))
}

/// Specific heat over the temperature in J/(kg·K): the dry mould's, with its water while that is there. Where the solid gives heat on the way
/// up it takes less; on the way down nothing is taken back, which the flask leaves far above.
fn specific_heat(thermal: &PowderThermal, ratio: f64) -> Vec<[f64; 2]> {
    let curve = &thermal.cp_dry_kj_kg_k;
    let giving: Vec<_> = thermal.latent.iter().filter(|step| step.kj_per_kg_binder.value < 0.0).collect();
    let mut at: Vec<f64> = curve.points.iter().map(|point| point.0).collect();
    at.extend([20.0, BOIL_C[0], BOIL_C[1]]);
    at.extend(giving.iter().flat_map(|step| [step.from_c, step.from_c + EDGE_K, step.to_c - EDGE_K, step.to_c]));
    at.sort_by(f64::total_cmp);
    at.dedup();
    let of = |at: f64| {
        let dry = curve.at(at) * 1000.0;
        let water = if at <= BOIL_C[0] { ratio * WATER_J_KG_K } else { 0.0 };
        let given = giving.iter().filter(|step| at > step.from_c && at < step.to_c);
        let given: f64 =
            given.map(|step| step.kj_per_kg_binder.value * 1000.0 * thermal.binder_fraction.value / (step.to_c - step.from_c)).sum();
        [at, (dry + water + given).max(1.0)]
    };
    at.into_iter().map(of).collect()
}
