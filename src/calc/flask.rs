//! One flask with everything in it and around it.

use super::alloy::{AlloyTerms, SOLIDUS_OFF};
use super::book::Id;
use super::burnout::BurnoutFigures;
use super::by_id::ById;
use super::clearance::ClearanceFigures;
use super::fill::FillFigures;
use super::finding::{self, Arg};
use super::hung;
use super::investment::MixFigures;
use super::metal::MetalFigures;
use super::order::find_pattern;
use super::pass::Pass;
use super::pattern::PatternFigures;
use super::pour::PourFigures;
use super::rule::{inputs, rules};
use super::site::SiteFigures;
use super::spin::SpinFigures;
use super::tree::TreeFigures;
use super::value::Cause;
use crate::job::{BurnoutId, Flask, FlaskId, MeltId, Pattern, Place, Tree, TreeId};
use crate::stock::{Base, EntryId, Flask as Vessel, PatternMaterial, Powder, PowderClass, Section};

inputs! {
    /// Time a flask stands after investing before it is heated.
    SET "powder.set" Duration;
}

rules! {
    /// When investing must be over.
    INVESTED_BY "flask.invested-by" (heat: Moment, set: Duration) -> Moment
        = Formula "heat - set" { heat - set };
        CommonPractice "set for at least two hours before it is heated"
    /// When mixing starts at the latest.
    MIX_BY "flask.mix-by" (invested: Moment, clock: Duration) -> Moment
        = Formula "invested - clock" { invested - clock };
        Computed "backwards from the flask left alone"
}

/// Figures of one flask.
#[derive(Debug, Clone)]
pub struct FlaskFigures {
    /// The flask.
    pub id: FlaskId,
    /// Its tree.
    pub tree: Option<TreeId>,
    /// Its kiln load.
    pub burnout: Option<BurnoutId>,
    /// Its melt, where it shares or names one.
    pub melt: Option<MeltId>,
    /// Its alloy.
    pub alloy: Option<EntryId>,
    /// Its powder.
    pub powder: Option<EntryId>,
    /// Pattern materials in it.
    pub materials: Vec<EntryId>,
    /// Inner diameter and height of the steel in mm.
    pub size_mm: Option<[f64; 2]>,
    /// Stones are cast in place.
    pub stones: bool,
    /// Metal.
    pub metal: MetalFigures,
    /// Investment.
    pub mix: MixFigures,
    /// Room around the tree.
    pub room: ClearanceFigures,
    /// Pouring.
    pub pour: PourFigures,
    /// What drives the metal into the mould.
    pub fill: FillFigures,
    /// The flask on its machine, where it is spun.
    pub spin: Option<SpinFigures>,
    /// When investing must be over.
    pub invested_by: Option<Id>,
    /// When mixing starts at the latest.
    pub mix_by: Option<Id>,
}

impl<'a> Pass<'a> {
    pub(super) fn flasks(
        &mut self,
        trees: &[TreeFigures],
        patterns: &[PatternFigures],
        by_id: &ById<'a>,
        site: &SiteFigures,
    ) -> Vec<FlaskFigures> {
        let job = self.job;
        job.flasks.iter().map(|flask| self.flask(flask, trees, patterns, by_id, site)).collect()
    }

    fn flask(
        &mut self,
        flask: &'a Flask,
        trees: &[TreeFigures],
        patterns: &[PatternFigures],
        by_id: &ById<'a>,
        site: &SiteFigures,
    ) -> FlaskFigures {
        let place = Place::Flask(flask.id);
        let job = self.job;
        let tree = flask.tree.and_then(|id| job.trees.iter().find(|tree| tree.id == id));
        let tree_figures = flask.tree.and_then(|id| trees.iter().find(|tree| tree.id == id));
        let hung = tree.map(|tree| hung::patterns(tree, by_id)).unwrap_or_default();
        let alloy_id = self.flask_alloy(flask, tree, by_id);
        let alloy = self.alloy(alloy_id, place);
        let powder = self.entry::<Powder>(flask.powder.as_ref(), place);
        let vessel = self.entry::<Vessel>(flask.vessel.as_ref(), place);
        let base = self.entry::<Base>(tree.and_then(|tree| tree.base.as_ref()), place);
        let materials = materials_of(tree, &hung);
        let entries: Vec<&'a PatternMaterial> = materials.iter().filter_map(|id| self.shelf.get(id.as_str())).collect();
        let stones = hung.iter().any(|pattern| pattern.stones);
        let never_quench = stones || powder.is_some_and(|powder| powder.class == PowderClass::Phosphate);
        let metal = self.flask_metal(flask, tree_figures, alloy, base);
        let mix = self.flask_mix(flask, vessel, base, powder, tree_figures, site);
        let room = self.clearance(flask, vessel, base, tree_figures, &entries);
        let lightest = lightest_section(&hung, patterns);
        let mut pour = self.flask_pour(flask, alloy, lightest, never_quench);
        let freezing = self.freezing(place, alloy, powder, mix.powder_in_slurry, &pour);
        pour.no_glow = self.no_glow(place, alloy, base, metal.button_volume, freezing.0);
        let spin = self.flask_spin(flask, (vessel, base), tree_figures, &metal, &mix);
        let fill = self.flask_fill(flask, (tree, tree_figures), (alloy, site.barometer), spin.as_ref(), freezing, (&hung, patterns));
        self.mould_refuses(place, alloy, powder);
        self.solidus_uncertain(place, alloy);
        self.irreplaceable(place, &hung);
        if flask.trial
            && let Some(what) = tree.and_then(|tree| hung::irreplaceable(tree, &hung, by_id))
        {
            self.find(&finding::IRREPLACEABLE_BESIDE_TRIAL, place, vec![Arg::Text(what.to_owned())]);
        }
        if let Some(design) = tree.and_then(|tree| hung::irreplaceable_piece(tree, by_id)) {
            self.find(&finding::IRREPLACEABLE, place, vec![Arg::Text(design.to_owned())]);
        }
        if stones {
            self.find(&finding::STONES_NO_QUENCH, place, Vec::new());
        }
        FlaskFigures {
            id: flask.id,
            tree: flask.tree,
            burnout: flask.burnout,
            melt: flask.melt,
            alloy: alloy_id.cloned(),
            powder: flask.powder.clone(),
            materials,
            size_mm: vessel.map(|vessel| [vessel.inner_diameter_mm, vessel.height_mm]),
            stones,
            metal,
            mix,
            room,
            pour,
            fill,
            spin,
            invested_by: None,
            mix_by: None,
        }
    }

    /// The alloy of the pieces on the tree, or of the flask where no piece says it. Two alloys on one tree are a Stop.
    fn flask_alloy(&mut self, flask: &'a Flask, tree: Option<&'a Tree>, by_id: &ById<'a>) -> Option<&'a EntryId> {
        let mut alloys: Vec<&'a EntryId> = flask.alloy.iter().collect();
        for hung in tree.map(|tree| tree.pieces.as_slice()).unwrap_or_default() {
            if let Some(alloy) = by_id.line(hung.line).and_then(|(_, found)| found.line.alloy.as_ref())
                && !alloys.contains(&alloy)
            {
                alloys.push(alloy);
            }
        }
        if let [first, second, ..] = alloys.as_slice() {
            let args = vec![Arg::Text(self.name_of(first)), Arg::Text(self.name_of(second))];
            self.find(&finding::TWO_ALLOYS, Place::Flask(flask.id), args);
        }
        alloys.first().copied()
    }

    fn mould_refuses(&mut self, place: Place, alloy: Option<AlloyTerms<'a>>, powder: Option<&'a Powder>) {
        if let (Some(alloy), Some(powder)) = (alloy, powder)
            && alloy.alloy.refused_by(powder).is_some()
        {
            self.find(&finding::MOULD_REFUSES, place, vec![Arg::Text(alloy.alloy.name.clone()), Arg::Text(powder.name.clone())]);
        }
    }

    /// Where the solidus is known only roughly, the quench and a mould close under it rest on that.
    fn solidus_uncertain(&mut self, place: Place, alloy: Option<AlloyTerms<'a>>) {
        if let Some(alloy) = alloy.map(|terms| terms.alloy)
            && let Some(off) = &alloy.solidus_uncertain_k
        {
            let off = self.shelf_term(&SOLIDUS_OFF, &alloy.id, off);
            self.find(&finding::SOLIDUS_UNCERTAIN, place, vec![Arg::Text(alloy.name.clone()), Arg::Figure(off)]);
        }
    }

    fn irreplaceable(&mut self, place: Place, hung: &[&'a Pattern]) {
        let alone = hung.len() < 2;
        if let Some(pattern) = hung.iter().find(|pattern| pattern.irreplaceable && !alone) {
            self.find(&finding::IRREPLACEABLE, place, vec![Arg::Text(pattern.name.clone())]);
        }
    }

    /// Clock times of investing, once the load's times are known.
    pub(super) fn investing_times(&mut self, flasks: &mut [FlaskFigures], burnouts: &[BurnoutFigures]) {
        for flask in flasks {
            let place = Place::Flask(flask.id);
            let Some(load) = burnouts.iter().find(|load| Some(load.id) == flask.burnout) else { continue };
            let set = match flask.powder.as_ref().and_then(|id| self.shelf.get::<Powder>(id.as_str())) {
                Some(powder) => {
                    let span = &powder.set_h;
                    self.book.shelf_number(&SET, &powder.id, span.low * 60.0, &span.source, span.trust)
                }
                None => self.book.absent(&SET, place, Cause::NotChosen),
            };
            let heat = load.dewax_start.unwrap_or(load.kiln_start);
            let invested_by = self.book.derive(&INVESTED_BY, place, [heat, set]);
            flask.invested_by = Some(invested_by);
            flask.mix_by = Some(self.book.derive(&MIX_BY, place, [invested_by, flask.mix.clock]));
        }
    }
}

/// The materials weighed on the tree or of the patterns that hang there, each once.
fn materials_of(tree: Option<&Tree>, hung: &[&Pattern]) -> Vec<EntryId> {
    let weighed = tree.into_iter().flat_map(|tree| &tree.weighed).filter_map(|part| part.material.as_ref());
    let patterns = hung.iter().filter_map(|pattern| pattern.material.as_ref());
    let mut all: Vec<EntryId> = Vec::new();
    for material in weighed.chain(patterns) {
        if !all.contains(material) {
            all.push(material.clone());
        }
    }
    all
}

/// A mixed tree is poured as its lightest pieces need it.
fn lightest_section(hung: &[&Pattern], patterns: &[PatternFigures]) -> Option<Section> {
    hung.iter().filter_map(|pattern| find_pattern(patterns, pattern.id)?.section).min()
}
