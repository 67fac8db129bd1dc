//! Trees: volume and weight by material, from the scale or computed; outer measures.

use super::book::Id;
use super::by_id::{ById, Ordered};
use super::finding::{self, Arg};
use super::hung;
use super::order::find_pattern;
use super::pass::Pass;
use super::pattern::{LENGTH, MATERIAL_DENSITY, PatternFigures};
use super::rule::{givens, inputs, rules};
use super::value::Cause;
use crate::job::{Place, SprueRun, Tree, TreeId};
use crate::stock::{Base, EntryId, PatternMaterial};

inputs! {
    /// How many there are.
    COUNT "tree.count" Count;
    /// Angle of a sprue to the main sprue.
    ANGLE "tree.sprue-angle" Angle;
    /// Diameter of the finished tree, measured.
    MEASURED_DIAMETER "tree.measured-diameter" Length;
    /// Height of the finished tree over the base's rim, measured.
    MEASURED_HEIGHT "tree.measured-height" Length;
    /// Height of the base's dome.
    DOME_HEIGHT "base.dome-height" Length;
    /// Volume of the tree.
    TREE_UNKNOWN "tree.volume-unknown" Volume;
    /// A length of the tree that was not said.
    LENGTH_UNSAID "tree.length-unsaid" Length;
}

givens! {
    /// Sprues stand at about half a right angle.
    ANGLE_DEFAULT "tree.sprue-angle" Angle = 45.0; CommonPractice "about 45° to the main sprue: common practice, no source"
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
    /// Volume of the tree.
    TREE_VOLUME "tree.volume" (part: Volume) -> Volume = Sum "sum(part)"; Computed "all parts together"
    /// How far the farthest corner of a piece reaches from the axis.
    REACH "tree.reach" (main: Length, feed: Length, along: Length, across: Length, deep: Length, angle: Angle) -> Length
        = Formula "sqrt((main/2 + (feed + along)*abs(sind(angle)) + across/2*abs(cosd(angle)))^2 + (deep/2)^2)" {
            let (sin, cos) = angle.to_radians().sin_cos();
            let out = main / 2.0 + (feed + along) * sin.abs() + across / 2.0 * cos.abs();
            (out * out + deep * deep / 4.0).sqrt()
        };
        Computed "corner of the piece's box at the end of its sprue"
    /// How far a piece rises above the joint of its sprue.
    RISE "tree.rise" (feed: Length, along: Length, across: Length, angle: Angle) -> Length
        = Formula "(feed + along)*abs(cosd(angle)) + across/2*abs(sind(angle))" {
            let (sin, cos) = angle.to_radians().sin_cos();
            (feed + along) * cos.abs() + across / 2.0 * sin.abs()
        };
        Computed "corner of the piece's box at the end of its sprue"
    /// The largest reach.
    WIDEST "tree.widest-reach" (reach: Length) -> Length = Most "max(reach)"; Computed "the widest piece rules"
    /// The largest rise.
    HIGHEST "tree.highest-rise" (rise: Length) -> Length = Most "max(rise)"; Computed "the highest piece rules"
    /// Diameter of the tree.
    TREE_DIAMETER "tree.diameter" (reach: Length) -> Length
        = Formula "2*reach" { 2.0 * reach };
        Computed "twice the farthest reach"
    /// Height of the tree over the base's rim, the top tier joined at the main sprue's end.
    TREE_HEIGHT "tree.height" (dome: Length, main: Length, rise: Length) -> Length
        = Formula "dome + main + rise" { dome + main + rise };
        Computed "an upper bound: the top tier may join lower"
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
    /// Its diameter, where it is known.
    pub diameter: Option<Id>,
    /// Its height over the base's rim, where it is known.
    pub height: Option<Id>,
}

impl<'a> Pass<'a> {
    pub(super) fn trees(&mut self, patterns: &[PatternFigures], by_id: &ById<'a>) -> Vec<TreeFigures> {
        let job = self.job;
        job.trees.iter().map(|tree| self.tree(tree, patterns, by_id)).collect()
    }

    fn tree(&mut self, tree: &'a Tree, patterns: &[PatternFigures], by_id: &ById<'a>) -> TreeFigures {
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
        let (diameter, height) = self.envelope(tree, base, patterns, by_id);
        TreeFigures { id: tree.id, weighed, parts, volume, diameter, height }
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

    /// Diameter and height: as measured, or else from the boxes of the pieces at the ends of their sprues.
    fn envelope(
        &mut self,
        tree: &'a Tree,
        base: Option<&'a Base>,
        patterns: &[PatternFigures],
        by_id: &ById<'a>,
    ) -> (Option<Id>, Option<Id>) {
        let place = Place::Tree(tree.id);
        let measured = tree.envelope.as_ref();
        let diameter = measured.and_then(|envelope| envelope.diameter_mm);
        let height = measured.and_then(|envelope| envelope.height_mm);
        let diameter = diameter.map(|number| self.book.entered(&MEASURED_DIAMETER, place, number.get()));
        let height = height.map(|number| self.book.entered(&MEASURED_HEIGHT, place, number.get()));
        if diameter.is_some() && height.is_some() {
            return (diameter, height);
        }
        let main = tree.main_sprue.as_ref().and_then(|main| Some((main.diameter_mm?, main.length_mm?)));
        let Some((main_diameter, main_length)) = main else { return (diameter, height) };
        let main_diameter = self.book.entered(&LENGTH, place, main_diameter.get());
        // Nobody says which run holds which piece: the worst of them rules, so that a tree that does not go in is never passed over.
        let mut feeds = Vec::new();
        for run in &tree.sprues {
            let Some(length) = run.length_mm else { return (diameter, height) };
            let feed = self.book.entered(&LENGTH, place, length.get());
            feeds.push((feed, self.sprue_angle(run, place), run.angle_deg.map_or(ANGLE_DEFAULT.value, crate::quantity::Finite::get)));
        }
        let (mut reaches, mut rises) = (Vec::new(), Vec::new());
        for (row, hung) in (1..).zip(&tree.pieces) {
            let Some((_, Ordered { line, .. })) = by_id.line(hung.line) else { return (diameter, height) };
            let row = Place::TreeRow(tree.id, row);
            for (id, _) in hung::by_pattern(hung, line) {
                let pattern = id.and_then(|id| find_pattern(patterns, id));
                let Some((pattern, [along, across, deep])) = pattern.and_then(|pattern| Some((pattern, pattern.extents?))) else {
                    return (diameter, height);
                };
                for (feed, angle, degrees) in feeds.iter().copied() {
                    reaches.push(self.book.derive(&REACH, row, [main_diameter, feed, along, across, deep, angle]));
                    rises.push(self.book.derive(&RISE, row, [feed, along, across, angle]));
                    // How a file hangs is not known. Steep or flat sprues need more room for its long side across.
                    if !pattern.hang_known && !(27.0..=63.0).contains(&degrees.abs()) {
                        reaches.push(self.book.derive(&REACH, row, [main_diameter, feed, across, along, deep, angle]));
                        rises.push(self.book.derive(&RISE, row, [feed, across, along, angle]));
                    }
                }
            }
        }
        if reaches.is_empty() {
            return (diameter, height);
        }
        let widest = self.book.derive_over(&WIDEST, place, &reaches);
        let highest = self.book.derive_over(&HIGHEST, place, &rises);
        let computed_diameter = self.book.derive(&TREE_DIAMETER, place, [widest]);
        let computed_height = base.map(|base| {
            let dome = self.shelf_term(&DOME_HEIGHT, &base.id, &base.dome_height_mm);
            let main = self.book.entered(&LENGTH, place, main_length.get());
            self.book.derive(&TREE_HEIGHT, place, [dome, main, highest])
        });
        (diameter.or(Some(computed_diameter)), height.or(computed_height))
    }

    fn sprue_angle(&mut self, run: &SprueRun, place: Place) -> Id {
        self.book.entered_or(&ANGLE, place, run.angle_deg, &ANGLE_DEFAULT)
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
