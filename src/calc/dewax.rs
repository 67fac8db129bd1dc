//! Steam before the kiln: what it takes out, by the scale.

use super::book::Id;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::pass::Pass;
use super::rule::{inputs, rules};
use super::tree::TreeFigures;
use crate::job::{Burnout, Place};
use crate::stock::PatternMaterial;

inputs! {
    /// The flask before the steam.
    BEFORE "dewax.before" Mass;
    /// The flask after it.
    AFTER "dewax.after" Mass;
}

rules! {
    /// What ran out.
    OUT "dewax.out" (before: Mass, after: Mass) -> Mass
        = Formula "before - after" { before - after };
        Computed "the flask before the steam less the flask after it; water that the mould took up or gave off is in it"
    /// The share of the wax that ran out.
    SHARE "dewax.share" (out: Mass, wax: Mass) -> Ratio
        = Formula "out/wax" { out / wax };
        Computed "what ran out against the wax that went in"
    /// Wax that went in.
    WAX_IN "dewax.wax" (weight: Mass) -> Mass = Sum "sum(weight)"; Computed "everything on the tree, from the scale"
    /// The wax of a part, where the tree was not weighed.
    WAX_PART "dewax.wax-part" (volume: Volume, density: Density) -> Mass
        = Formula "volume*density" { volume * density };
        Computed "volume times density"
}

/// Less than this share of the wax is out: something holds the rest back. Common practice, no source.
const LEAST_OUT: f64 = 0.7;

/// Steam of one flask.
#[derive(Debug, Clone, Copy)]
pub struct DewaxFigures {
    /// Wax that went in.
    pub wax: Id,
    /// What ran out; nothing where the flask was not weighed twice.
    pub out: Option<Id>,
    /// The share of it.
    pub share: Option<Id>,
}

impl<'a> Pass<'a> {
    /// What the scale says of the steam, for a flask whose load is steamed.
    pub(super) fn dewax(&mut self, burnout: &'a Burnout, flask: &FlaskFigures, trees: &[TreeFigures]) -> Option<DewaxFigures> {
        burnout.dewax_min?;
        let place = Place::Flask(flask.id);
        self.steam_not_meant(place, flask);
        let tree = trees.iter().find(|tree| Some(tree.id) == flask.tree)?;
        let mut weights = Vec::new();
        for part in &tree.parts {
            weights.push(match part.weight {
                Some(weight) => weight,
                None => {
                    let material = part.material.as_ref().and_then(|id| self.shelf.get::<PatternMaterial>(id.as_str()))?;
                    let density = self.shelf_term(&super::pattern::MATERIAL_DENSITY, &material.id, &material.density_g_cm3);
                    self.book.derive(&WAX_PART, part.place, [part.volume, density])
                }
            });
        }
        let wax = self.book.derive_over(&WAX_IN, place, &weights);
        let document = self.job.flasks.iter().find(|other| other.id == flask.id)?;
        let Some((before, after)) = document.before_dewax.zip(document.after_dewax) else {
            return Some(DewaxFigures { wax, out: None, share: None });
        };
        let (before, after) = (self.book.weighed(&BEFORE, place, before), self.book.weighed(&AFTER, place, after));
        let out = self.book.derive(&OUT, place, [before, after]);
        let share = self.book.derive(&SHARE, place, [out, wax]);
        if self.book.number(share).is_some_and(|share| share < LEAST_OUT) {
            self.find_on(&finding::WAX_LEFT, place, share, vec![Arg::Figure(out), Arg::Figure(wax)]);
        }
        Some(DewaxFigures { wax, out: Some(out), share: Some(share) })
    }

    /// Steam softens or swells what does not run out by it.
    fn steam_not_meant(&mut self, place: Place, flask: &FlaskFigures) {
        let materials = flask.materials.iter().filter_map(|id| self.shelf.get::<PatternMaterial>(id.as_str()));
        if let Some(material) = materials.into_iter().find(|material| !material.burnout.dewax).map(|material| material.name.clone()) {
            self.find(&finding::STEAM_NOT_MEANT, place, vec![Arg::Text(material)]);
        }
    }
}
