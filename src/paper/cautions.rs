//! The usual cautions, each at the step it belongs to, chosen by what is in the flask. They make no step safe and do not claim to.

use std::collections::BTreeSet;

use super::block::{Block, Marked, Sign};
use super::desk::Desk;
use super::metal::{document_of, melt_of};
use crate::calc::FlaskFigures;
use crate::job::Drive;
use crate::stock::{Alloy, Element, EntryId, Hazard, Liquid, PatternMaterial, Powder};

/// What can hurt somebody with one flask.
#[derive(Debug, Clone, Default)]
pub(super) struct Hazards {
    /// By the shelf's entries: alloy, drawn lots' alloys, powder, pattern materials.
    here: BTreeSet<Hazard>,
    alloy_unknown: bool,
    powder_unknown: bool,
    special_liquid: bool,
    soldered: bool,
    dewax: bool,
    drive: Drive,
    never_quench: bool,
}

impl Hazards {
    /// Gathers them. What is not known counts as a hazard of its own.
    pub fn of(desk: &Desk<'_>, flask: &FlaskFigures) -> Self {
        let (job, shelf) = (desk.input.job, &desk.input.shelves.job);
        let document = job.flasks.iter().find(|other| other.id == flask.id);
        let alloy = flask.alloy.as_ref().and_then(|id| shelf.get::<Alloy>(id.as_str()));
        let powder = flask.powder.as_ref().and_then(|id| shelf.get::<Powder>(id.as_str()));
        let melt = document_of(job, melt_of(desk, flask));
        let drawn = melt.map(|melt| melt.charge.as_slice()).unwrap_or_default();
        let lots = || drawn.iter().filter_map(|draw| desk.input.studio.lots.iter().find(|lot| lot.id == draw.lot));
        let lot_alloys = lots().filter_map(|lot| shelf.get::<Alloy>(lot.alloy.as_ref()?.as_str()));
        let mut here: BTreeSet<Hazard> = alloy.into_iter().chain(lot_alloys).flat_map(of_alloy).collect();
        here.extend(powder.iter().flat_map(|powder| powder.hazards.iter().copied()));
        let materials = materials(desk, flask);
        let entries = materials.iter().filter_map(|id| shelf.get::<PatternMaterial>(id.as_str()));
        here.extend(entries.flat_map(|material| material.hazards.iter().copied()));
        let load = desk.input.report.burnouts.iter().find(|load| Some(load.id) == flask.burnout);
        Self {
            here,
            alloy_unknown: alloy.is_none(),
            powder_unknown: powder.is_none(),
            special_liquid: powder.is_some_and(|powder| powder.liquid == Liquid::SpecialLiquid),
            soldered: lots().any(|lot| lot.soldered),
            dewax: load.is_some_and(|load| load.dewax_start.is_some()),
            drive: document.map(|flask| flask.drive).unwrap_or_default(),
            never_quench: flask.pour.never_quench,
        }
    }

    /// All that can hurt somebody with several flasks at once.
    pub fn of_flasks(desk: &Desk<'_>, flasks: &[&FlaskFigures]) -> Self {
        let mut all = Self::default();
        for flask in flasks {
            let one = Self::of(desk, flask);
            all.here.extend(one.here);
            all.dewax |= one.dewax;
        }
        all
    }

    fn has(&self, hazard: Hazard) -> bool {
        self.here.contains(&hazard)
    }

    /// At the tree: cleaning, curing, carving.
    pub fn at_tree(&self, desk: &Desk<'_>) -> Option<Block> {
        let resin = self.has(Hazard::UncuredResin);
        let chosen = [(resin, "caution-uncured-resin"), (resin, "caution-solvent"), (self.has(Hazard::Dust), "caution-carving-dust")];
        block(desk, &chosen)
    }

    /// At the mixing bowl.
    pub fn at_mix(&self, desk: &Desk<'_>) -> Option<Block> {
        let chosen = [
            (self.has(Hazard::Silica) || self.powder_unknown, "caution-silica-mix"),
            (self.special_liquid, "caution-special-liquid"),
            (self.powder_unknown, "caution-powder-unknown"),
            (true, "caution-bell-jar"),
        ];
        block(desk, &chosen)
    }

    /// At the kiln.
    pub fn at_burnout(&self, desk: &Desk<'_>) -> Option<Block> {
        let chosen = [
            (self.dewax, "caution-dewax-steam"),
            (true, "caution-burnout-fume"),
            (self.has(Hazard::ResinFume), "caution-resin-fume"),
            (self.has(Hazard::Ammonia), "caution-ammonia"),
        ];
        block(desk, &chosen)
    }

    /// At the kiln's door, for the whole load.
    pub fn at_kiln(&self, desk: &Desk<'_>) -> Option<Block> {
        block(desk, &[(true, "caution-kiln-codes")])
    }

    /// At the crucible.
    pub fn at_melt(&self, desk: &Desk<'_>) -> Option<Block> {
        let by_hazard = [
            (Hazard::Nickel, "caution-nickel"),
            (Hazard::Cobalt, "caution-cobalt"),
            (Hazard::Zinc, "caution-zinc"),
            (Hazard::Cadmium, "caution-cadmium"),
            (Hazard::Lead, "caution-lead"),
            (Hazard::Beryllium, "caution-beryllium"),
            (Hazard::CopperFume, "caution-copper-fume"),
            (Hazard::Manganese, "caution-manganese"),
            (Hazard::Antimony, "caution-antimony"),
            (Hazard::BrightHeat, "caution-bright-heat"),
            (Hazard::InertCover, "caution-inert-cover"),
            (Hazard::WaterReaction, "caution-water-reaction"),
        ];
        let mut chosen = vec![(true, "caution-damp-charge"), (true, "caution-torch"), (self.alloy_unknown, "caution-alloy-unknown")];
        chosen.extend(by_hazard.map(|(hazard, key)| (self.has(hazard), key)));
        chosen.push((self.soldered, "caution-soldered"));
        block(desk, &chosen)
    }

    /// At the pour.
    pub fn at_pour(&self, desk: &Desk<'_>) -> Option<Block> {
        let chosen = [
            (true, "caution-hot-flask"),
            (true, "caution-molten-metal"),
            (self.drive == Drive::Centrifugal, "caution-centrifuge"),
            (self.drive == Drive::Centrifugal, "caution-centrifuge-before"),
            (self.drive == Drive::Vacuum, "caution-vacuum-pour"),
        ];
        block(desk, &chosen)
    }

    /// At the bucket, and after it.
    pub fn at_quench(&self, desk: &Desk<'_>) -> Option<Block> {
        let silica = self.has(Hazard::Silica) || self.powder_unknown;
        let chosen = [
            (!self.never_quench, "caution-quench-steam"),
            (silica && !self.never_quench, "caution-silica-quench"),
            (silica, "caution-silica-devest"),
            (true, "caution-acids"),
        ];
        block(desk, &chosen)
    }
}

/// What an alloy's entry says, and what its composition says where the entry does not.
fn of_alloy(alloy: &Alloy) -> BTreeSet<Hazard> {
    let by_element = [
        (Element::Ni, Hazard::Nickel),
        (Element::Co, Hazard::Cobalt),
        (Element::Zn, Hazard::Zinc),
        (Element::Cd, Hazard::Cadmium),
        (Element::Pb, Hazard::Lead),
        (Element::Be, Hazard::Beryllium),
        (Element::Mn, Hazard::Manganese),
        (Element::Sb, Hazard::Antimony),
    ];
    let parts = alloy.composition.parts().iter().map(|(element, _)| *element);
    let found = parts.filter_map(|part| by_element.iter().find(|(element, _)| *element == part).map(|(_, hazard)| *hazard));
    alloy.hazards.iter().copied().chain(found).collect()
}

/// Pattern materials in the flask, those of built-up sprues too.
fn materials(desk: &Desk<'_>, flask: &FlaskFigures) -> BTreeSet<EntryId> {
    let tree = desk.tree(flask.tree);
    let main = tree.and_then(|tree| tree.main_sprue.as_ref()?.material.clone());
    let runs = tree.into_iter().flat_map(|tree| tree.sprues.iter().filter_map(|run| run.material.clone()));
    flask.materials.iter().cloned().chain(main).chain(runs).collect()
}

fn block(desk: &Desk<'_>, chosen: &[(bool, &str)]) -> Option<Block> {
    let sentences: Vec<String> = chosen.iter().filter(|(here, _)| *here).map(|(_, key)| desk.label(key)).collect();
    (!sentences.is_empty())
        .then(|| Block::Marked(vec![Marked { sign: Sign::Care, mark: desk.label("mark-care"), text: sentences.join(" ") }]))
}
