//! How long metal takes to freeze in its mould: flat shapes by the square of their modulus, round ones with the curvature of their surface.
//!
//! Heat goes from the metal into a mould that is wide beside it. `β` is the modulus over `√(α·t)`; for a flat surface it is `λ·2/√π`, and
//! the time is Chvorinov's `t = [ρ(L + cΔT)/(2/√π·√(kρc)·ΔT_mould)]²·M²`; for a ball it solves `β = λ(2/√π + 1/(3β))`.

use super::alloy::{AlloyTerms, LIQUIDUS};
use super::book::Id;
use super::pass::Pass;
use super::pour::PourFigures;
use super::rule::{inputs, rules};
use super::value::Cause;
use crate::job::Place;
use crate::stock::Powder;

inputs! {
    /// Where melting begins.
    SOLIDUS "alloy.solidus" Temperature;
    /// Latent heat of freezing.
    LATENT "alloy.latent" HeatByMass;
    /// Specific heat of the liquid.
    CP_LIQUID "alloy.cp-liquid" SpecificHeat;
    /// Conductivity of the dry mould.
    K_MOULD "powder.k-dry" Conductivity;
    /// Specific heat of the dry mould at its temperature.
    CP_MOULD "powder.cp-dry" SpecificHeat;
}

rules! {
    /// Where an alloy counts as frozen.
    FREEZES_AT "freeze.at" (solidus: Temperature, liquidus: Temperature) -> Temperature
        = Formula "solidus + (liquidus - solidus)/2" { solidus + (liquidus - solidus) / 2.0 };
        CommonPractice "the middle between solidus and liquidus: common practice, no source"
    /// How much hotter than that the metal is poured.
    OVER "freeze.over" (metal: Temperature, at: Temperature) -> TemperatureDifference
        = Formula "metal - at" { metal - at };
        Computed "pouring temperature less where it freezes"
    /// How much cooler than that the mould is.
    FALL "freeze.fall" (at: Temperature, mould: Temperature) -> TemperatureDifference
        = Formula "at - mould" { at - mould };
        Computed "where it freezes less the mould's temperature"
    /// Heat that leaves a kilogram until it is frozen.
    HEAT "freeze.heat" (latent: HeatByMass, cp: SpecificHeat, over: TemperatureDifference) -> HeatByMass
        = Formula "latent + cp*max(over, 0)" { latent + cp * over.max(0.0) };
        Computed "latent heat, and what it is over where it freezes"
    /// How fast heat spreads in the mould.
    DIFFUSIVITY "freeze.mould-diffusivity" (k: Conductivity, density: Density, cp: SpecificHeat) -> Diffusivity
        = Formula "k/(density*cp)" { k / (density * cp) };
        Computed "conductivity over heat capacity"
    /// Heat that the mould takes up on its way to the metal's temperature, over the heat of freezing; a volume of each.
    LAMBDA "freeze.lambda" (mould: Density, cp: SpecificHeat, fall: TemperatureDifference, density: Density, heat: HeatByMass) -> Ratio
        = Formula "mould*cp*fall/(density*heat)" { mould * cp * fall / (density * heat) };
        Published "A. Ghosh and A. K. Mallik, Manufacturing Science, ch. 2 (inputs of its examples read, the book not opened)"
    /// Modulus over √(α·t) of a flat shape.
    BETA_FLAT "freeze.beta-flat" (lambda: Ratio) -> Ratio
        = Formula "lambda*2/sqrt(pi)" { lambda * std::f64::consts::FRAC_2_SQRT_PI };
        Published "expanded form of N. Chvorinov's rule, printed in a lecture on feeder design"
    /// Modulus over √(α·t) of a ball: β = λ(2/√π + 1/(3β)), solved.
    BETA_ROUND "freeze.beta-round" (lambda: Ratio) -> Ratio
        = Formula "(lambda*2/sqrt(pi) + sqrt((lambda*2/sqrt(pi))^2 + 4*lambda/3))/2" {
            let flat = lambda * std::f64::consts::FRAC_2_SQRT_PI;
            f64::midpoint(flat, (flat * flat + 4.0 * lambda / 3.0).sqrt())
        };
        Published "A. Ghosh and A. K. Mallik, Manufacturing Science, ch. 2 (inputs of its examples read, the book not opened)"
    /// Volume over surface of a wide wall: both its faces.
    WALL_MODULUS "freeze.wall-modulus" (wall: Length) -> Length
        = Formula "wall/2" { wall / 2.0 };
        Computed "a plate gives up heat through both faces"
    /// Volume over surface of a ball.
    BALL_MODULUS "freeze.ball-modulus" (diameter: Length) -> Length
        = Formula "diameter/6" { diameter / 6.0 };
        Computed "a ball: volume over surface"
    /// How long it takes to freeze.
    FREEZE_TIME "freeze.time" (modulus: Length, beta: Ratio, diffusivity: Diffusivity) -> Seconds
        = Formula "(modulus/beta)^2/diffusivity" { (modulus / beta).powi(2) / diffusivity };
        FromMemory "N. Chvorinov 1940, freezing time goes with (V/A)² (from memory)"
}

/// What the freezing of one flask's metal goes by.
#[derive(Debug, Clone, Copy)]
pub(super) struct Freezing {
    /// Where it counts as frozen.
    pub at: Id,
    /// Heat that leaves a kilogram until then.
    pub heat: Id,
    beta_flat: Id,
    beta_round: Id,
    diffusivity: Id,
}

impl<'a> Pass<'a> {
    /// What freezing goes by; and whether nothing freezes because the mould is as hot as the metal does, in which case it goes by nothing.
    pub(super) fn freezing(
        &mut self,
        place: Place,
        alloy: Option<AlloyTerms<'a>>,
        powder: Option<&'a Powder>,
        mould_density: Id,
        pour: &PourFigures,
    ) -> (Option<Freezing>, bool) {
        let mut never = false;
        let freezing = self.freezing_unless(place, (alloy, powder), mould_density, pour, &mut never);
        (freezing, never)
    }

    fn freezing_unless(
        &mut self,
        place: Place,
        (alloy, powder): (Option<AlloyTerms<'a>>, Option<&'a Powder>),
        mould_density: Id,
        pour: &PourFigures,
        never: &mut bool,
    ) -> Option<Freezing> {
        let (alloy, powder) = (alloy?, powder?);
        let (metal, mould) = (alloy.alloy.thermal.as_ref()?, powder.thermal.as_ref()?);
        let id = &alloy.alloy.id;
        let liquidus = match &alloy.alloy.liquidus_c {
            Some(liquidus) => self.shelf_term(&LIQUIDUS, id, liquidus),
            None => self.book.absent(&LIQUIDUS, place, Cause::NotOnShelf),
        };
        // Where no solidus is known the alloy counts as frozen at its liquidus: rather too early.
        let solidus = alloy.alloy.solidus_c.as_ref().map_or(liquidus, |solidus| self.shelf_term(&SOLIDUS, id, solidus));
        let at = self.book.derive(&FREEZES_AT, place, [solidus, liquidus]);
        let fall = self.book.derive(&FALL, place, [at, pour.mould]);
        let mould_c = self.book.number(pour.mould)?;
        if self.book.number(fall)? <= 0.0 {
            *never = true;
            return None;
        }
        let over = self.book.derive(&OVER, place, [pour.metal, at]);
        let latent = self.shelf_term(&LATENT, id, &metal.latent_kj_kg);
        let cp_liquid = self.shelf_term(&CP_LIQUID, id, &metal.cp_liquid_kj_kg_k);
        let heat = self.book.derive(&HEAT, place, [latent, cp_liquid, over]);
        let k = self.shelf_term(&K_MOULD, &powder.id, &mould.k_dry_w_m_k);
        let curve = &mould.cp_dry_kj_kg_k;
        let cp = self.book.shelf_number(&CP_MOULD, &powder.id, curve.at(mould_c), &curve.source, curve.trust);
        let diffusivity = self.book.derive(&DIFFUSIVITY, place, [k, mould_density, cp]);
        let lambda = self.book.derive(&LAMBDA, place, [mould_density, cp, fall, alloy.liquid_density, heat]);
        let beta_flat = self.book.derive(&BETA_FLAT, place, [lambda]);
        let beta_round = self.book.derive(&BETA_ROUND, place, [lambda]);
        Some(Freezing { at, heat, beta_flat, beta_round, diffusivity })
    }

    /// How long a wide wall takes to freeze.
    pub(super) fn wall_freezes(&mut self, place: Place, freezing: Freezing, wall: Id) -> Id {
        let modulus = self.book.derive(&WALL_MODULUS, place, [wall]);
        self.book.derive(&FREEZE_TIME, place, [modulus, freezing.beta_flat, freezing.diffusivity])
    }

    /// How long the ball of a heaviest place takes to freeze.
    pub(super) fn ball_freezes(&mut self, place: Place, freezing: Freezing, diameter: Id) -> Id {
        let modulus = self.book.derive(&BALL_MODULUS, place, [diameter]);
        self.book.derive(&FREEZE_TIME, place, [modulus, freezing.beta_round, freezing.diffusivity])
    }
}
