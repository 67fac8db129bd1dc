//! When the button of a poured flask no longer glows: it gives its heat up through its face, the mould behind it is hot all round.

use super::alloy::AlloyTerms;
use super::book::Id;
use super::freeze_time::Freezing;
use super::investment::DOME;
use super::outline::DOME_HEIGHT;
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use crate::job::Place;
use crate::stock::Base;

inputs! {
    /// Specific heat of the solid metal.
    CP_SOLID "alloy.cp-solid" SpecificHeat;
}

givens! {
    /// A face that shines little gives up little.
    DULL "quench.emissivity-least" Ratio = 0.3; FromMemory "emissivity of liquid and hot metal under flux, 0.3 for the brighter (from memory)"
    /// A face under oxide.
    DARK "quench.emissivity-most" Ratio = 0.6; FromMemory "emissivity of an oxidised face of metal, 0.6 (from memory)"
}

rules! {
    /// Volume of the button over its face.
    DEPTH "quench.button-depth" (button: Volume, dome: Volume, height: Length) -> Length
        = Lookup "the button fills the bowl that a spherical dome leaves, turned mouth up, so far; volume over the area of its face" {
            depth_mm(button * 1000.0, dome * 1000.0, height)
        };
        Computed "caps of a sphere"
    /// Until the face no longer glows.
    NO_GLOW "quench.no-glow" (depth: Length, density: Density, heat: HeatByMass, at: Temperature, cp: SpecificHeat, emissivity: Ratio) -> Duration
        = Lookup "density·depth·[heat/(εσ·at⁴) + cp·(1/798³ − 1/at³)/(3εσ)], temperatures in K: radiates through its face alone" {
            no_glow_min(depth, density, [heat, cp], at, emissivity)
        };
        Published "J. W. Draper 1847: all that is solid begins to glow at 525 °C (from memory); Stefan and Boltzmann’s law"
}

/// Everything that is solid begins to glow here, in K.
const GLOWS_K: f64 = 798.15;
/// Stefan and Boltzmann's constant in W/(m²·K⁴).
const SIGMA: f64 = 5.670_374e-8;

/// Volume over the face of what stands in a bowl that a spherical cap left, all in mm; where it overflows, as if the bowl went on as it ends.
fn depth_mm(volume: f64, bowl: f64, height: f64) -> f64 {
    use std::f64::consts::PI;
    // The bowl's rim by its volume and height; a cap is V = πh(3a² + h²)/6.
    let rim_squared = (6.0 * bowl / (PI * height) - height * height) / 3.0;
    let radius = (rim_squared + height * height) / (2.0 * height);
    if volume >= bowl {
        return volume / (PI * rim_squared);
    }
    // How deep it stands: V = πx²(3R − x)/3 rises with x as far as the bowl goes.
    let (mut low, mut high) = (0.0, height);
    for _ in 0..60 {
        let x = f64::midpoint(low, high);
        if PI * x * x * (3.0 * radius - x) / 3.0 < volume {
            low = x;
        } else {
            high = x;
        }
    }
    let x = f64::midpoint(low, high);
    volume / (PI * x * (2.0 * radius - x))
}

/// Minutes until a face of this depth of metal no longer glows.
fn no_glow_min(depth_mm: f64, density_g_cm3: f64, [heat_kj_kg, cp_kj_kg_k]: [f64; 2], at_c: f64, emissivity: f64) -> f64 {
    let at = at_c + 273.15;
    let mass = density_g_cm3 * depth_mm;
    let gives = emissivity * SIGMA;
    // kg/m² · J/kg over W/m².
    let freezing = mass * heat_kj_kg * 1000.0 / (gives * at.powi(4));
    let cooling = mass * cp_kj_kg_k * 1000.0 * (1.0 / GLOWS_K.powi(3) - 1.0 / at.powi(3)).max(0.0) / (3.0 * gives);
    (freezing + cooling) / 60.0
}

impl<'a> Pass<'a> {
    /// When the button stops glowing, at the earliest and at the latest.
    pub(super) fn no_glow(
        &mut self,
        place: Place,
        alloy: Option<AlloyTerms<'a>>,
        base: Option<&'a Base>,
        button: Option<Id>,
        freezing: Option<Freezing>,
    ) -> Option<[Id; 2]> {
        let (alloy, base, button, freezing) = (alloy?, base?, button?, freezing?);
        let metal = alloy.alloy.thermal.as_ref()?;
        let dome = self.shelf_term(&DOME, &base.id, &base.dome_cm3);
        let height = self.shelf_term(&DOME_HEIGHT, &base.id, &base.dome_height_mm);
        let depth = self.book.derive(&DEPTH, place, [button, dome, height]);
        let cp = self.shelf_term(&CP_SOLID, &alloy.alloy.id, &metal.cp_solid_kj_kg_k);
        let of = [&DARK, &DULL].map(|face| {
            let face = self.book.constant(face);
            self.book.derive(&NO_GLOW, place, [depth, alloy.density, freezing.heat, freezing.at, cp, face])
        });
        self.book.number(of[1]).is_some().then_some(of)
    }
}
