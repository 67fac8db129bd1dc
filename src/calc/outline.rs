//! Outer measures of a tree, where everything on it stands, and what is too near to each other.

use std::collections::{BTreeMap, BTreeSet};

use super::book::Id;
use super::by_id::ById;
use super::finding::{self, Arg};
use super::form::PatternForm;
use super::order::find_pattern;
use super::pass::Pass;
use super::pattern::{LENGTH, PatternFigures};
use super::places::{Spot, spots};
use super::rule::{givens, inputs, rules};
use super::stand::{Between, Form, Hang, Part, Standing, Trunk, between, stand};
use crate::job::{PatternId, Place, SprueRun, Tree};
use crate::quantity::Finite;
use crate::stock::Base;

inputs! {
    /// Angle of a sprue to the main sprue.
    ANGLE "tree.sprue-angle" Angle;
    /// Diameter of the finished tree, measured.
    MEASURED_DIAMETER "tree.measured-diameter" Length;
    /// Height of the finished tree over the base's rim, measured.
    MEASURED_HEIGHT "tree.measured-height" Length;
    /// Height of the base's dome.
    DOME_HEIGHT "base.dome-height" Length;
    /// How high over the dome the sprue of a piece is joined.
    JOINT "tree.joint" Length;
    /// How far a piece reaches from the axis, by its shape as it hangs.
    SHAPE_REACH "tree.reach-of-shape" Length;
    /// How far a piece rises above the joint of its sprue, by its shape as it hangs.
    SHAPE_RISE "tree.rise-of-shape" Length;
    /// Room between two parts of the tree.
    BETWEEN "tree.between" Length;
}

givens! {
    /// Sprues stand at about half a right angle.
    ANGLE_DEFAULT "tree.sprue-angle" Angle = 45.0; CommonPractice "about 45° to the main sprue: common practice, no source"
    /// Room between two pieces.
    BETWEEN_NEEDED "tree.between-needed" Length = 3.0; CommonPractice "3 to 13 mm between pieces, by the handouts and by practice; thinner walls of mould break"
    /// Room between a piece and the main sprue.
    TRUNK_NEEDED "tree.trunk-needed" Length = 1.0; CommonPractice "a millimetre of mould at least, so that a piece is not cast onto the main sprue: common practice, no source"
}

rules! {
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
    /// The far end of a piece over the base's rim.
    PIECE_TOP "tree.piece-top" (dome: Length, joint: Length, rise: Length) -> Length
        = Formula "dome + joint + rise" { dome + joint + rise };
        Computed "where its sprue is joined, and how far it rises above that; joined at the main sprue's end where nobody said"
    /// The far end of the main sprue over the base's rim.
    TRUNK_TOP "tree.trunk-top" (dome: Length, main: Length) -> Length
        = Formula "dome + main" { dome + main };
        Computed "it stands on the dome"
    /// Diameter of the tree.
    TREE_DIAMETER "tree.diameter" (reach: Length) -> Length
        = Formula "2*reach" { 2.0 * reach };
        Computed "twice the farthest reach"
    /// Height of the tree over the base's rim.
    TREE_HEIGHT "tree.height" (top: Length) -> Length = Most "max(top)"; Computed "the highest part rules"
}

/// The forms of patterns.
pub(super) type Forms = BTreeMap<PatternId, PatternForm>;

/// Trees of more pieces than this are not looked at piece against piece.
pub const MOST: usize = 300;

/// Outer measures of a tree, and where everything on it stands.
#[derive(Debug, Clone, Default)]
pub struct Outline {
    /// Its diameter, where it is known.
    pub diameter: Option<Id>,
    /// Its height over the base's rim, where it is known.
    pub height: Option<Id>,
    /// Where its pieces hang, where the main sprue is known.
    pub spots: Vec<Spot>,
    /// Its solids, the pieces in the order of the spots, where all of them are known and there are not too many.
    pub standing: Option<Standing>,
    /// Parts nearer to each other than they should be, the nearest first.
    pub near: Vec<Between>,
}

/// The run of sprues of a piece.
struct Feed {
    length: Id,
    angle: Id,
    degrees: f64,
}

impl<'a> Pass<'a> {
    pub(super) fn outline(
        &mut self,
        tree: &'a Tree,
        base: Option<&'a Base>,
        patterns: &[PatternFigures],
        forms: &Forms,
        by_id: &ById<'a>,
    ) -> Outline {
        let place = Place::Tree(tree.id);
        let measured = tree.envelope.as_ref();
        let diameter = measured.and_then(|envelope| envelope.diameter_mm);
        let height = measured.and_then(|envelope| envelope.height_mm);
        let mut outline = Outline {
            diameter: diameter.map(|number| self.book.entered(&MEASURED_DIAMETER, place, number.get())),
            height: height.map(|number| self.book.entered(&MEASURED_HEIGHT, place, number.get())),
            ..Outline::default()
        };
        let main = tree.main_sprue.as_ref().and_then(|main| Some((main.diameter_mm?.get(), main.length_mm?.get())));
        let Some((diameter_mm, length_mm)) = main else { return outline };
        outline.spots = spots(tree, length_mm, |line| by_id.line(line).map(|(_, found)| found.line));
        let dome_mm = base.map_or(0.0, |base| base.dome_height_mm.value);
        let trunk = Trunk { diameter_mm, length_mm, dome_mm };
        outline.standing = standing(tree, &trunk, &outline.spots, forms);
        if outline.diameter.is_none() || outline.height.is_none() {
            self.computed(tree, base, patterns, forms, &mut outline);
        }
        self.nearness(tree, &mut outline);
        outline
    }

    /// Diameter and height from the pieces at the ends of their sprues.
    fn computed(&mut self, tree: &'a Tree, base: Option<&'a Base>, patterns: &[PatternFigures], forms: &Forms, outline: &mut Outline) {
        let place = Place::Tree(tree.id);
        let Some(main) = &tree.main_sprue else { return };
        let [Some(main_diameter), Some(main_length)] =
            [main.diameter_mm, main.length_mm].map(|number| number.map(|number| self.book.entered(&LENGTH, place, number.get())))
        else {
            return;
        };
        let mut feeds = Vec::new();
        for run in &tree.sprues {
            let Some(length) = run.length_mm else { return };
            let length = self.book.entered(&LENGTH, place, length.get());
            feeds.push(Feed { length, angle: self.sprue_angle(run, place), degrees: angle_deg(run) });
        }
        let dome_mm = base.map_or(0.0, |base| base.dome_height_mm.value);
        let dome = base.map(|base| self.shelf_term(&DOME_HEIGHT, &base.id, &base.dome_height_mm));
        let (mut reaches, mut tops) = (Vec::new(), Vec::new());
        let mut seen = BTreeSet::new();
        for (at, spot) in outline.spots.iter().enumerate() {
            // Pieces that hang alike have figures of their own once.
            let height = spot.said.height.then(|| spot.height_mm.to_bits());
            let alike = (spot.row, spot.pattern, spot.run.filter(|_| spot.said.run), height, spot.turn_deg.to_bits());
            if !seen.insert(alike) {
                continue;
            }
            let row = Place::TreeRow(tree.id, spot.row);
            let pattern = spot.pattern.and_then(|id| find_pattern(patterns, id));
            let Some((pattern, sides)) = pattern.and_then(|pattern| Some((pattern, pattern.extents?))) else { return };
            // Nobody said which run holds which piece: the worst of them rules, so that a tree that does not go in is never passed over.
            let own = spot.run.filter(|_| spot.said.run);
            let runs: Vec<&Feed> = own.map_or_else(|| feeds.iter().collect(), |run| feeds.get(run).into_iter().collect());
            let shape = spot.pattern.and_then(|id| forms.get(&id)).filter(|form| {
                (matches!(form.form, Form::Hull(_)) && form.hang_known || spot.turn_deg != 0.0) && (own.is_some() || feeds.len() == 1)
            });
            let mut rises = Vec::new();
            if let Some((_, standing)) = shape.zip(outline.standing.as_ref()) {
                let solid = &standing.pieces[at];
                let joint = dome_mm + spot.height_mm;
                reaches.push(self.book.measured(&SHAPE_REACH, row, solid.reach()));
                rises.push(self.book.measured(&SHAPE_RISE, row, solid.heights()[1] - joint));
            } else {
                for feed in runs {
                    self.box_reach(row, main_diameter, feed, sides, pattern.hang_known, (&mut reaches, &mut rises));
                }
            }
            let joint = if spot.said.height { self.book.entered(&JOINT, row, spot.height_mm) } else { main_length };
            if let Some(dome) = dome {
                tops.extend(rises.into_iter().map(|rise| self.book.derive(&PIECE_TOP, row, [dome, joint, rise])));
            }
        }
        if reaches.is_empty() {
            return;
        }
        let widest = self.book.derive_over(&WIDEST, place, &reaches);
        let diameter = self.book.derive(&TREE_DIAMETER, place, [widest]);
        outline.diameter = outline.diameter.or(Some(diameter));
        if let Some(dome) = dome {
            tops.push(self.book.derive(&TRUNK_TOP, place, [dome, main_length]));
            let height = self.book.derive_over(&TREE_HEIGHT, place, &tops);
            outline.height = outline.height.or(Some(height));
        }
    }

    /// Reach and rise of a box at the end of its sprue.
    fn box_reach(
        &mut self,
        row: Place,
        main: Id,
        feed: &Feed,
        [along, across, deep]: [Id; 3],
        hang_known: bool,
        (reaches, rises): (&mut Vec<Id>, &mut Vec<Id>),
    ) {
        reaches.push(self.book.derive(&REACH, row, [main, feed.length, along, across, deep, feed.angle]));
        rises.push(self.book.derive(&RISE, row, [feed.length, along, across, feed.angle]));
        // How a file hangs is not known. Steep or flat sprues need more room for its long side across.
        if !hang_known && !(27.0..=63.0).contains(&feed.degrees.abs()) {
            reaches.push(self.book.derive(&REACH, row, [main, feed.length, across, along, deep, feed.angle]));
            rises.push(self.book.derive(&RISE, row, [feed.length, across, along, feed.angle]));
        }
    }

    fn sprue_angle(&mut self, run: &SprueRun, place: Place) -> Id {
        self.book.entered_or(&ANGLE, place, run.angle_deg, &ANGLE_DEFAULT)
    }

    /// What is nearer to each other than it should be. Only of pieces whose place was said there is something to say.
    fn nearness(&mut self, tree: &'a Tree, outline: &mut Outline) {
        let place = Place::Tree(tree.id);
        let Some(standing) = outline.standing.as_ref().filter(|standing| !standing.pieces.is_empty()) else { return };
        let mut near = between(standing, BETWEEN_NEEDED.value);
        near.retain(|near| near.parts[0] != Part::Trunk || near.apart.at_least_mm < TRUNK_NEEDED.value);
        let said = |part: Part| match part {
            Part::Trunk => true,
            Part::Feed(at) | Part::Piece(at) => outline.spots[at].said.place(),
        };
        let told: Vec<&Between> = near.iter().filter(|near| near.parts.into_iter().all(said)).collect();
        let (trunk, apart): (Vec<&Between>, Vec<&Between>) = told.into_iter().partition(|near| near.parts[0] == Part::Trunk);
        for told in [trunk, apart] {
            let Some(nearest) = told.first() else { continue };
            let room = self.book.measured(&BETWEEN, place, nearest.apart.at_least_mm.max(0.0));
            let mut args: Vec<Arg> = nearest.parts.iter().filter_map(|part| self.part_name(*part, &outline.spots)).collect();
            let more = Arg::Count(told.len().saturating_sub(1) as u64);
            let kind = match args.len() {
                1 => &finding::PIECE_NEAR_TRUNK,
                _ if nearest.apart.at_least_mm <= 0.0 => &finding::PARTS_TOUCH,
                _ => &finding::PARTS_NEAR,
            };
            if *kind != finding::PARTS_TOUCH {
                let given = if *kind == finding::PARTS_NEAR { &BETWEEN_NEEDED } else { &TRUNK_NEEDED };
                args.extend([Arg::Figure(room), Arg::Figure(self.book.assumed(given, place))]);
            }
            args.push(more);
            self.find_on(kind, place, room, args);
        }
        outline.near = near;
    }
    /// What a piece is called: its design and its number.
    fn part_name(&self, part: Part, spots: &[Spot]) -> Option<Arg> {
        let (Part::Feed(at) | Part::Piece(at)) = part else { return None };
        let spot = spots.get(at)?;
        let (_, line) = self.job.lines().find(|(_, line)| line.id == spot.line)?;
        Some(Arg::Text(format!("{} {}", line.design, spot.number)))
    }
}

/// The angle of a run's sprues to the main sprue, in degrees.
#[must_use]
pub fn angle_deg(run: &SprueRun) -> f64 {
    run.angle_deg.map_or(ANGLE_DEFAULT.value, Finite::get)
}

/// The solids of a tree, where all its pieces are known and not too many.
fn standing(tree: &Tree, trunk: &Trunk, spots: &[Spot], forms: &Forms) -> Option<Standing> {
    if spots.len() > MOST {
        return None;
    }
    let hangs: Option<Vec<Hang>> = spots.iter().map(|spot| hang(tree, trunk, spot, forms)).collect();
    Some(stand(trunk, &hangs?))
}

/// How a piece hangs by its spot.
fn hang(tree: &Tree, trunk: &Trunk, spot: &Spot, forms: &Forms) -> Option<Hang> {
    let form = forms.get(&spot.pattern?)?.form.clone();
    let run = tree.sprues.get(spot.run?)?;
    Some(Hang {
        joint_mm: trunk.dome_mm + spot.height_mm,
        around_deg: spot.around_deg,
        angle_deg: angle_deg(run),
        twist_deg: spot.turn_deg,
        feed_diameter_mm: run.diameter_mm.map_or(0.0, Finite::get),
        feed_length_mm: run.length_mm?.get(),
        form,
    })
}
