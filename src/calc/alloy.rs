//! What every page needs of an alloy, read from the shelf once in a recompute.

use super::book::Id;
use super::pass::Pass;
use super::rule::inputs;
use crate::job::Place;
use crate::stock::{Alloy, EntryId};

inputs! {
    /// Density of the alloy.
    ALLOY_DENSITY "alloy.density" Density;
    /// Linear shrinkage from pattern to casting.
    ALLOY_SHRINK "alloy.shrink" Ratio;
    /// Share of the charge lost in the melt.
    ALLOY_LOSS "alloy.melt-loss" Ratio;
    /// Density just above the liquidus.
    LIQUID_DENSITY "alloy.liquid-density" Density;
    /// How far the solidus may be off.
    SOLIDUS_OFF "alloy.solidus-uncertain" TemperatureDifference;
    /// Where melting is complete.
    LIQUIDUS "alloy.liquidus" Temperature;
}

/// An alloy and its terms.
#[derive(Debug, Clone, Copy)]
pub(super) struct AlloyTerms<'a> {
    pub alloy: &'a Alloy,
    pub density: Id,
    pub shrink: Id,
    pub loss: Id,
    /// The liquid's density, or the solid's where the shelf does not say it.
    pub liquid_density: Id,
    pub liquidus: Id,
}

impl<'a> Pass<'a> {
    /// The alloy of an id with its terms; `None` where it was not chosen or is not on the shelf.
    pub(super) fn alloy(&mut self, id: Option<&EntryId>, place: Place) -> Option<AlloyTerms<'a>> {
        let alloy = self.entry::<Alloy>(id, place)?;
        let thermal = alloy.thermal.as_ref().map(|thermal| &thermal.liquid_density_g_cm3);
        Some(AlloyTerms {
            alloy,
            density: self.shelf_term(&ALLOY_DENSITY, &alloy.id, &alloy.density_g_cm3),
            shrink: self.shelf_term(&ALLOY_SHRINK, &alloy.id, &alloy.linear_shrink),
            loss: self.shelf_term(&ALLOY_LOSS, &alloy.id, &alloy.melt_loss),
            liquid_density: self.shelf_term(&LIQUID_DENSITY, &alloy.id, thermal.unwrap_or(&alloy.density_g_cm3)),
            liquidus: self.shelf_term_or_absent(&LIQUIDUS, &alloy.id, alloy.liquidus_c.as_ref(), place),
        })
    }

    /// The same, kept between the many lines of a job.
    pub(super) fn alloy_of_line(&mut self, id: Option<&EntryId>, place: Place, kept: &mut Vec<AlloyTerms<'a>>) -> Option<AlloyTerms<'a>> {
        let id = id?;
        if let Some(terms) = kept.iter().find(|terms| terms.alloy.id == *id) {
            return Some(*terms);
        }
        let terms = self.alloy(Some(id), place)?;
        kept.push(terms);
        Some(terms)
    }
}
