//! Feeding: whether a tree freezes from its far end to its button, piece before feed sprue, feed sprue before trunk, trunk before button.
//!
//! What freezes later has the larger modulus, volume over surface. Thin sections freeze at once whatever feeds them, and nothing is said of
//! those: a short sprue as thick as they are serves.

use std::collections::BTreeMap;

use super::book::Id;
use super::by_id::ById;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::metal::BUTTON_VOLUME;
use super::order::find_pattern;
use super::pass::Pass;
use super::pattern::{FILE_SCALE, FILE_UNIT, PatternFigures, SCALE_ONE};
use super::places::{self, Spot};
use super::rule::{givens, inputs, rules};
use super::tree::TreeFigures;
use crate::job::{Pattern, PatternId, Place, SprueRun, Tree};

inputs! {
    /// Modulus behind the sprue's place, as the file has it.
    JOINT_MODULUS "feed.joint-modulus" Length;
    /// The largest ball behind the sprue's place, as the file has it.
    JOINT_BALL "feed.joint-ball" Length;
    /// Diameter of a sprue.
    DIAMETER "feed.diameter" Length;
    /// Length of a sprue.
    LENGTH "feed.length" Length;
}

givens! {
    /// So much more than what it feeds.
    FACTOR "feed.factor" Ratio = 1.1; FromMemory "1.1–1.2; 1.2 is the usual factor of founders (J. Campbell, from memory)"
    /// A feed sprue has at least so much of the section it stands on.
    LEAST_SHARE "feed.least-share" Ratio = 0.7; Article "trade article on sprue systems: 70–150 % of the section at the joint, depending on the author"
    /// A feed sprue has at most so much of the section it stands on.
    MOST_SHARE "feed.most-share" Ratio = 1.5; Article "trade article on sprue systems: 70–150 % of the section at the joint, depending on the author"
    /// A feed sprue is at most so long for its diameter.
    MOST_LONG "feed.most-long" Ratio = 5.0; CommonPractice "short sprues feed best; five diameters at most: common practice, no source"
}

rules! {
    /// A length behind the sprue's place at the size it is printed.
    AT_JOINT "feed.at-joint" (file: Length, unit: Ratio, scale: Ratio) -> Length
        = Formula "file*unit*scale" { file * unit * scale };
        Computed "as the pattern's file has it"
    /// Volume over surface of a long round rod.
    ROD_MODULUS "feed.rod-modulus" (diameter: Length) -> Length
        = Formula "diameter/4" { diameter / 4.0 };
        Computed "a long rod: its ends give up nothing"
    /// The modulus that feeds a place.
    MODULUS_NEEDED "feed.modulus-needed" (factor: Ratio, modulus: Length) -> Length
        = Formula "factor*modulus" { factor * modulus };
        FromMemory "what feeds freezes last: 1.1–1.2 times the modulus (from memory)"
    /// The thickness of a round sprue of that modulus.
    ROD_NEEDED "feed.rod-needed" (modulus: Length) -> Length
        = Formula "4*modulus" { 4.0 * modulus };
        Computed "a long round rod"
    /// The least thickness for the section at the joint.
    SECTION_LEAST "feed.section-least" (share: Ratio, section: Length) -> Length
        = Formula "share*section" { share * section };
        Article "trade article on sprue systems: 70–150 % of the section at the joint"
    /// The greatest thickness for the section at the joint.
    SECTION_MOST "feed.section-most" (share: Ratio, section: Length) -> Length
        = Formula "share*section" { share * section };
        Article "trade article on sprue systems: 70–150 % of the section at the joint"
    /// Whichever asks for more.
    DIAMETER_NEEDED "feed.diameter-needed" (diameter: Length) -> Length = Most "max(diameter)"; Computed "by modulus and by section"
    /// The greatest length.
    LENGTH_MOST "feed.length-most" (times: Ratio, diameter: Length) -> Length
        = Formula "times*diameter" { times * diameter };
        CommonPractice "short sprues feed best: common practice, no source"
    /// Diameter and height of a round lump, as high as it is wide, of a modulus.
    LUMP_DIAMETER "feed.lump-diameter" (modulus: Length) -> Length
        = Formula "6*modulus" { 6.0 * modulus };
        Computed "a cylinder as high as it is wide: V/A is a sixth of that"
    /// Its volume.
    LUMP_VOLUME "feed.lump-volume" (diameter: Length) -> Volume
        = Formula "pi/4*diameter^3/1000" { std::f64::consts::FRAC_PI_4 * diameter.powi(3) / 1000.0 };
        Computed "a cylinder as high as it is wide"
}

/// Sections thinner than this need no advice, in mm: a short sprue of their own thickness serves (common practice, no source).
pub const SILENT_BELOW_MM: f64 = 2.0;

/// A part of a tree.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FeedPart {
    /// The pieces of a row, from 1.
    Pieces(u32),
    /// The feed sprues of a run, from 1.
    Run(u32),
    /// The main sprue.
    Trunk,
    /// The button.
    Button,
}

/// Where the order of freezing is broken: the second part freezes before the first, which it should feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct BrokenFeed {
    /// What should be fed.
    pub fed: FeedPart,
    /// What freezes too soon.
    pub by: FeedPart,
}

/// How the pieces of one row are fed.
#[derive(Debug, Clone, Copy)]
pub struct FedRow {
    /// The row of pieces, from 1.
    pub row: u32,
    /// Its run of feed sprues, from 1.
    pub run: u32,
    /// Modulus of the place that is fed.
    pub modulus: Id,
    /// Modulus of the feed sprue.
    pub feed: Id,
    /// The thickness the feed sprue needs.
    pub needed: Id,
}

/// Feeding of one tree. Empty where nothing on it is thick enough to need advice, or too little is known.
#[derive(Debug, Clone, Default)]
pub struct FeedFigures {
    /// The rows whose pieces are thick enough.
    pub rows: Vec<FedRow>,
    /// Modulus of the main sprue.
    pub trunk: Option<Id>,
    /// Volume of the button, and the one that feeds the main sprue.
    pub button: Option<[Id; 2]>,
    /// Where the order of freezing is broken, from the far end to the button.
    pub broken: Vec<BrokenFeed>,
}

impl<'a> Pass<'a> {
    /// Feeding of a tree up to its main sprue; the button belongs to the flask. The pieces of a row that hang on one run are looked at together.
    pub(super) fn feeding(&mut self, tree: &'a Tree, spots: &[Spot], patterns: &[PatternFigures], by_id: &ById<'a>) -> FeedFigures {
        let of_tree = if spots.is_empty() { places::spots(tree, 0.0, |id| Some(by_id.line(id)?.1.line)) } else { Vec::new() };
        let mut groups: BTreeMap<(u32, usize), Vec<PatternId>> = BTreeMap::new();
        for spot in spots.iter().chain(&of_tree) {
            let (Some(run), Some(pattern)) = (spot.run, spot.pattern) else { continue };
            let group = groups.entry((spot.row, run)).or_default();
            if !group.contains(&pattern) {
                group.push(pattern);
            }
        }
        let mut figures = FeedFigures::default();
        for ((row, run), group) in groups {
            let Some(sprue) = tree.sprues.get(run) else { continue };
            let (Some(diameter), Ok(run)) = (sprue.diameter_mm, u32::try_from(run + 1)) else { continue };
            let place = Place::TreeRow(tree.id, row);
            let places = group.iter().filter_map(|id| self.fed_place(by_id.pattern(*id)?, patterns));
            let places: Vec<FedPlace> = places.collect();
            let thick = places.into_iter().filter(|fed| fed.section_mm >= SILENT_BELOW_MM);
            let Some(fed) = thick.max_by(|a, b| a.modulus_mm.total_cmp(&b.modulus_mm)) else { continue };
            let diameter = self.book.entered(&DIAMETER, place, diameter.get());
            let feed = self.book.derive(&ROD_MODULUS, place, [diameter]);
            let needed = self.feed_found(place, &fed, diameter, sprue);
            if self.number_under(feed, fed.modulus) {
                figures.broken.push(BrokenFeed { fed: FeedPart::Pieces(row), by: FeedPart::Run(run) });
            }
            figures.rows.push(FedRow { row, run, modulus: fed.modulus, feed, needed });
        }
        self.trunk_found(tree, &mut figures);
        figures
    }

    /// What a pattern asks of its feed: the modulus behind the sprue's place where it was picked, else that of the whole.
    fn fed_place(&mut self, pattern: &'a Pattern, patterns: &[PatternFigures]) -> Option<FedPlace<'a>> {
        let figures = find_pattern(patterns, pattern.id).filter(|figures| self.plausible(figures))?;
        let place = Place::Pattern(pattern.id);
        let file = pattern.file.as_ref();
        let picked = file.and_then(|file| Some((file, file.sprue.as_ref()?)));
        let mut at_joint = |input, file: &crate::job::PatternFile, length: f64| {
            let unit = self.book.entered(&FILE_UNIT, place, file.unit.in_mm());
            let scale = self.book.entered_or(&FILE_SCALE, place, file.scale, &SCALE_ONE);
            let length = self.book.measured(input, place, length);
            self.book.derive(&AT_JOINT, place, [length, unit, scale])
        };
        let ball = picked.and_then(|(file, point)| Some(at_joint(&JOINT_BALL, file, point.ball?.get())));
        let modulus = picked.and_then(|(file, point)| Some(at_joint(&JOINT_MODULUS, file, point.modulus?.get())));
        let modulus = modulus.or(figures.modulus)?;
        let modulus_mm = self.book.number(modulus)?;
        let number = |id: Option<Id>| id.and_then(|id| self.book.number(id));
        // A plate is twice its modulus thick.
        let section_mm = number(ball).or_else(|| number(figures.walls.map(|[_, typical, _]| typical))).unwrap_or(2.0 * modulus_mm);
        Some(FedPlace { pattern, modulus, modulus_mm, ball, section_mm })
    }

    /// The thickness a feed sprue needs, and what is to be said of the one it has.
    fn feed_found(&mut self, place: Place, fed: &FedPlace<'a>, diameter: Id, sprue: &SprueRun) -> Id {
        let factor = self.book.constant(&FACTOR);
        let modulus = self.book.derive(&MODULUS_NEEDED, place, [factor, fed.modulus]);
        let mut asked = vec![self.book.derive(&ROD_NEEDED, place, [modulus])];
        let mut most = None;
        if let Some(ball) = fed.ball {
            let (least_share, most_share) = (self.book.constant(&LEAST_SHARE), self.book.constant(&MOST_SHARE));
            asked.push(self.book.derive(&SECTION_LEAST, place, [least_share, ball]));
            most = Some(self.book.derive(&SECTION_MOST, place, [most_share, ball]));
        }
        let needed = self.book.derive_over(&DIAMETER_NEEDED, place, &asked);
        let name = || Arg::Text(fed.pattern.name.clone());
        if self.number_under(diameter, needed) {
            self.find_on(&finding::FEED_THIN, place, diameter, vec![name(), Arg::Figure(diameter), Arg::Figure(needed)]);
        } else if let Some(most) = most.filter(|most| self.number_under(*most, diameter) && self.number_under(needed, *most)) {
            self.find_on(&finding::FEED_THICK, place, diameter, vec![name(), Arg::Figure(diameter), Arg::Figure(most)]);
        }
        if let Some(length) = sprue.length_mm {
            let length = self.book.entered(&LENGTH, place, length.get());
            let times = self.book.constant(&MOST_LONG);
            let most = self.book.derive(&LENGTH_MOST, place, [times, diameter]);
            if self.number_under(most, length) {
                self.find_on(&finding::FEED_LONG, place, length, vec![name(), Arg::Figure(length), Arg::Figure(most)]);
            }
        }
        needed
    }

    /// The main sprue freezes after every feed sprue it serves.
    fn trunk_found(&mut self, tree: &'a Tree, figures: &mut FeedFigures) {
        let Some(trunk) = tree.main_sprue.as_ref().and_then(|main| main.diameter_mm).filter(|_| !figures.rows.is_empty()) else { return };
        let place = Place::Tree(tree.id);
        let trunk = self.book.entered(&DIAMETER, place, trunk.get());
        let modulus = self.book.derive(&ROD_MODULUS, place, [trunk]);
        figures.trunk = Some(modulus);
        let thickest = figures.rows.iter().max_by(|a, b| {
            let number = |row: &FedRow| self.book.number(row.feed).unwrap_or(0.0);
            number(a).total_cmp(&number(b))
        });
        let Some(thickest) = thickest.copied().filter(|row| self.number_under(modulus, row.feed)) else { return };
        figures.broken.push(BrokenFeed { fed: FeedPart::Run(thickest.run), by: FeedPart::Trunk });
        let feed = self.book.figure(thickest.feed).terms.first().copied().unwrap_or(thickest.feed);
        self.find_on(&finding::TRUNK_THIN, place, trunk, vec![Arg::Figure(trunk), Arg::Figure(feed)]);
    }

    /// The button freezes last of all; with it the order of every tree is known.
    pub(super) fn buttons(&mut self, trees: &mut [TreeFigures], flasks: &[FlaskFigures]) {
        for flask in flasks {
            let Some(tree) = trees.iter_mut().find(|tree| Some(tree.id) == flask.tree) else { continue };
            let place = Place::Flask(flask.id);
            let (Some(trunk), Some(alloy)) = (tree.feed.trunk, self.alloy(flask.alloy.as_ref(), place)) else { continue };
            let diameter = self.book.derive(&LUMP_DIAMETER, place, [trunk]);
            let needed = self.book.derive(&LUMP_VOLUME, place, [diameter]);
            let button = self.book.derive(&BUTTON_VOLUME, place, [flask.metal.button, alloy.density]);
            tree.feed.button = Some([button, needed]);
            if self.number_under(button, needed) {
                tree.feed.broken.push(BrokenFeed { fed: FeedPart::Trunk, by: FeedPart::Button });
                self.find_on(&finding::BUTTON_SMALL, place, button, vec![Arg::Figure(button), Arg::Figure(needed)]);
            }
        }
        let job = self.job;
        for tree in trees.iter().filter(|tree| !tree.feed.broken.is_empty()) {
            let name = job.trees.iter().find(|other| other.id == tree.id).map_or("", |tree| tree.name.as_str());
            let part = |key, of: fn(FeedPart) -> bool| tree.feed.broken.iter().any(|broken| of(broken.by)).then_some(key);
            let parts = [
                part("feed-part-run", |part| matches!(part, FeedPart::Run(_))),
                part("feed-part-trunk", |part| part == FeedPart::Trunk),
                part("feed-part-button", |part| part == FeedPart::Button),
            ];
            let parts: Vec<&'static str> = parts.into_iter().flatten().collect();
            // One broken link is told by its own Caution; several of them are no chain any more.
            if parts.len() > 1 {
                self.find(&finding::FREEZING_ORDER, Place::Tree(tree.id), vec![Arg::Text(name.to_owned()), Arg::Words(parts)]);
            }
        }
    }

    fn number_under(&self, one: Id, other: Id) -> bool {
        // A hair of binary noise is no difference.
        matches!((self.book.number(one), self.book.number(other)), (Some(one), Some(other)) if one < other * (1.0 - 1e-9))
    }
}

/// A place that is fed.
struct FedPlace<'a> {
    pattern: &'a Pattern,
    modulus: Id,
    modulus_mm: f64,
    ball: Option<Id>,
    section_mm: f64,
}
