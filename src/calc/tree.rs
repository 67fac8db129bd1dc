//! Trees: volume and weight by material, from the scale or computed.

use super::book::Id;
use super::by_id::{ById, Ordered};
use super::feed::FeedFigures;
use super::finding::{self, Arg};
use super::hung;
use super::order::find_pattern;
use super::outline::{Forms, Outline};
use super::pass::Pass;
use super::pattern::{LENGTH, MATERIAL_DENSITY, PatternFigures};
use super::rule::{givens, inputs, rules};
use super::value::Cause;
use crate::job::{PatternId, Place, Tree, TreeId};
use crate::stock::{Base, EntryId, PatternMaterial};

inputs! {
    /// How many there are.
    COUNT "tree.count" Count;
    /// Volume of the tree.
    TREE_UNKNOWN "tree.volume-unknown" Volume;
    /// A length of the tree that was not said.
    LENGTH_UNSAID "tree.length-unsaid" Length;
}

givens! {
    /// Welds and fillets on a computed tree.
    WELDS "tree.welds" Ratio = 0.05; FromMemory "welds and fillets add 3–8 % to a computed tree (from memory)"
}

rules! {
    /// Volume of one material on the tree, from the scale.
    PART_VOLUME "tree.part-volume" (weight: Mass, density: Density) -> Volume
        = Formula "weight/density" { weight / density };
        Computed "mass over density, each material apart"
    /// Volume of pieces of one line.
    PIECES_VOLUME "tree.pieces-volume" (volume: Volume, count: Count) -> Volume
        = Formula "volume*count" { volume * count };
        Computed "volume of one pattern times the pieces on the tree"
    /// Volume of round sprues of one run.
    SPRUE_VOLUME "tree.sprue-volume" (diameter: Length, length: Length, count: Count) -> Volume
        = Formula "pi/4*diameter^2*length*count/1000" { std::f64::consts::FRAC_PI_4 * diameter * diameter * length * count / 1000.0 };
        Computed "round rods"
    /// All of it, with welds and fillets.
    WELDED_VOLUME "tree.welded-volume" (volume: Volume, welds: Ratio) -> Volume
        = Formula "volume*(1 + welds)" { volume * (1.0 + welds) };
        FromMemory "welds and fillets add 3–8 % (from memory)"
    /// How far the scale and the parts of a tree disagree.
    TREE_DIFFERENCE "tree.difference" (weighed: Volume, computed: Volume) -> Ratio
        = Formula "abs(weighed - computed)/computed" { (weighed - computed).abs() / computed };
        Computed "share by which the tree on the scale differs from its patterns, sprues and welds"
    /// Volume of the tree.
    TREE_VOLUME "tree.volume" (part: Volume) -> Volume = Sum "sum(part)"; Computed "all parts together"
}

/// A material's share of the tree.
#[derive(Debug, Clone)]
pub struct TreePart {
    /// The row's place.
    pub place: Place,
    /// The material, where it was said.
    pub material: Option<EntryId>,
    /// Its net weight, where it comes from the scale.
    pub weight: Option<Id>,
    /// Density of the material, where it comes from the scale.
    pub density: Option<Id>,
    /// Its volume.
    pub volume: Id,
}

/// Figures of one tree.
#[derive(Debug, Clone)]
pub struct TreeFigures {
    /// The tree.
    pub id: TreeId,
    /// True where it stands on the scale's word.
    pub weighed: bool,
    /// Its parts.
    pub parts: Vec<TreePart>,
    /// Its volume.
    pub volume: Id,
    /// How far the scale and its parts disagree, where both are known.
    pub difference: Option<Id>,
    /// Its outer measures, and where everything on it stands.
    pub outline: Outline,
    /// How its pieces are fed.
    pub feed: FeedFigures,
}

impl<'a> Pass<'a> {
    pub(super) fn trees(&mut self, patterns: &[PatternFigures], forms: &Forms, by_id: &ById<'a>) -> Vec<TreeFigures> {
        let job = self.job;
        job.trees.iter().map(|tree| self.tree(tree, patterns, forms, by_id)).collect()
    }

    fn tree(&mut self, tree: &'a Tree, patterns: &[PatternFigures], forms: &Forms, by_id: &ById<'a>) -> TreeFigures {
        let place = Place::Tree(tree.id);
        let base = self.entry::<Base>(tree.base.as_ref(), place);
        let weighed = !tree.weighed.is_empty();
        let parts = if weighed { self.weighed_parts(tree) } else { self.computed_parts(tree, patterns, by_id) };
        let volumes: Vec<Id> = parts.iter().map(|part| part.volume).collect();
        let volume = if volumes.is_empty() {
            self.book.absent(&TREE_UNKNOWN, place, Cause::NotSaid)
        } else {
            let sum = self.book.derive_over(&TREE_VOLUME, place, &volumes);
            if weighed {
                sum
            } else {
                let welds = self.book.assumed(&WELDS, place);
                self.book.derive(&WELDED_VOLUME, place, [sum, welds])
            }
        };
        let difference = weighed.then(|| self.against_parts(tree, volume, patterns, by_id)).flatten();
        let outline = self.outline(tree, base, patterns, forms, by_id);
        let feed = self.feeding(tree, &outline.spots, patterns, by_id);
        TreeFigures { id: tree.id, weighed, parts, volume, difference, outline, feed }
    }

    /// The tree on the scale against its parts, where all of them are known. More than a tenth is no welding: something is not on the tree, was
    /// weighed with it, or is of another material.
    fn against_parts(&mut self, tree: &'a Tree, volume: Id, patterns: &[PatternFigures], by_id: &ById<'a>) -> Option<Id> {
        const FLAGGED: f64 = 0.1;
        let place = Place::Tree(tree.id);
        let hung = || tree.pieces.iter().filter_map(|hung| Some((hung, by_id.line(hung.line)?.1.line)));
        let known = |id: Option<PatternId>| {
            let pattern = id.and_then(|id| find_pattern(patterns, id));
            pattern.is_some_and(|pattern| self.book.number(pattern.charge_volume).is_some())
        };
        let patterns_known = hung().all(|(hung, line)| hung::by_pattern(hung, line).into_iter().all(|(id, _)| known(id)));
        let main = tree.main_sprue.as_ref().map(|main| (main.diameter_mm, main.length_mm));
        let sprues = main.into_iter().chain(tree.sprues.iter().map(|run| (run.diameter_mm, run.length_mm)));
        let sprues_known = main.is_some() && sprues.into_iter().all(|(diameter, length)| diameter.is_some() && length.is_some());
        if tree.pieces.is_empty() || !patterns_known || !sprues_known {
            return None;
        }
        let parts: Vec<Id> = self.computed_parts(tree, patterns, by_id).iter().map(|part| part.volume).collect();
        let sum = self.book.derive_over(&TREE_VOLUME, place, &parts);
        // Nothing but this check rests on the welds, so that nobody need confirm them.
        let welds = self.book.constant(&WELDS);
        let computed = self.book.derive(&WELDED_VOLUME, place, [sum, welds]);
        let difference = self.book.derive(&TREE_DIFFERENCE, place, [volume, computed]);
        if self.book.number(difference).is_some_and(|share| share > FLAGGED) {
            let args = vec![Arg::Figure(volume), Arg::Figure(computed), Arg::Figure(difference)];
            self.find_on(&finding::TREE_AGAINST_PARTS, place, difference, args);
        }
        Some(difference)
    }

    fn weighed_parts(&mut self, tree: &'a Tree) -> Vec<TreePart> {
        let mut parts = Vec::new();
        for (row, part) in (1..).zip(&tree.weighed) {
            let place = Place::TreeRow(tree.id, row);
            let material = self.entry::<PatternMaterial>(part.material.as_ref(), place);
            let density = self.material_density(material, place);
            let weight =
                self.net_weight(part.weight, place).unwrap_or_else(|| self.book.absent(&super::pattern::NET, place, Cause::NotSaid));
            let volume = self.book.derive(&PART_VOLUME, place, [weight, density]);
            parts.push(TreePart { place, material: part.material.clone(), weight: Some(weight), density: Some(density), volume });
        }
        parts
    }

    fn material_density(&mut self, material: Option<&'a PatternMaterial>, place: Place) -> Id {
        match material {
            Some(material) => self.shelf_term(&MATERIAL_DENSITY, &material.id, &material.density_g_cm3),
            None => self.book.absent(&MATERIAL_DENSITY, place, Cause::NotChosen),
        }
    }

    fn computed_parts(&mut self, tree: &'a Tree, patterns: &[PatternFigures], by_id: &ById<'a>) -> Vec<TreePart> {
        let mut parts = Vec::new();
        let mut row = 0;
        for hung in &tree.pieces {
            row += 1;
            let place = Place::TreeRow(tree.id, row);
            let Some((_, Ordered { line, .. })) = by_id.line(hung.line) else { continue };
            for (id, pieces) in hung::by_pattern(hung, line) {
                let volume = id.and_then(|id| find_pattern(patterns, id)).map(|pattern| pattern.charge_volume);
                let volume = volume.unwrap_or_else(|| self.book.absent(&TREE_UNKNOWN, place, Cause::NotChosen));
                let count = self.book.entered(&COUNT, place, f64::from(pieces));
                let volume = self.book.derive(&PIECES_VOLUME, place, [volume, count]);
                let material = id.and_then(|id| by_id.pattern(id)?.material.clone());
                parts.push(TreePart { place, material, weight: None, density: None, volume });
            }
        }
        let main = tree.main_sprue.iter().map(|main| (main.material.as_ref(), 1, main.diameter_mm, main.length_mm));
        let runs = tree.sprues.iter().map(|run| (run.material.as_ref(), run.count, run.diameter_mm, run.length_mm));
        for (material, count, diameter, length) in main.chain(runs) {
            row += 1;
            let place = Place::TreeRow(tree.id, row);
            let said = |pass: &mut Self, number: Option<crate::quantity::Finite>| match number {
                Some(number) => pass.book.entered(&LENGTH, place, number.get()),
                None => pass.book.absent(&LENGTH_UNSAID, place, Cause::NotSaid),
            };
            let (diameter, length) = (said(self, diameter), said(self, length));
            let count = self.book.entered(&COUNT, place, f64::from(count));
            let volume = self.book.derive(&SPRUE_VOLUME, place, [diameter, length, count]);
            parts.push(TreePart { place, material: material.cloned(), weight: None, density: None, volume });
        }
        parts
    }

    /// Trees that stand in no flask while the job has flasks, and trees that stand in two.
    pub(super) fn trees_in_flasks(&mut self) {
        for tree in &self.job.trees {
            if self.job.flasks.iter().filter(|flask| flask.tree == Some(tree.id)).count() > 1 {
                self.find(&finding::TREE_IN_TWO_FLASKS, Place::Tree(tree.id), vec![Arg::Text(tree.name.clone())]);
            }
            if !self.job.flasks.is_empty() && self.job.flasks.iter().all(|flask| flask.tree != Some(tree.id)) {
                self.find(&finding::TREE_IN_NO_FLASK, Place::Tree(tree.id), vec![Arg::Text(tree.name.clone())]);
            }
        }
    }
}
