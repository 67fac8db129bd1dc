//! From the documents to a wish: what each piece takes, what each flask holds, what stands already.

use super::open::{NO_DATE, Piece, Unknown, open_pieces};
use super::places::{Body, UsualTree};
use super::rules::{
    FEED_DIAMETER, FEED_DIAMETER_DEFAULT, FEED_LENGTH, FEED_LENGTH_DEFAULT, FOR_PIECES, GAP, HEAVIEST_TREE, MAIN_DIAMETER,
    MAIN_DIAMETER_DEFAULT, ONE_OF, PIECE_WITH_FEED, POURABLE, TRUNK_LENGTH, TRUNK_METAL,
};
use super::sizes::{Candidate, Done, candidates};
use super::{AlloyOf, Ask, Options};
use crate::calc::alloy::AlloyTerms;
use crate::calc::book::{Book, Id};
use crate::calc::clearance::WALL_NEEDED_DEFAULT;
use crate::calc::melt::{USABLE, may_melt};
use crate::calc::metal::{BUTTON_LEAST_DEFAULT, BUTTON_SHARE_DEFAULT, NO_RESERVE};
use crate::calc::order::{due, find_pattern};
use crate::calc::outline::{ANGLE, ANGLE_DEFAULT, BETWEEN_NEEDED};
use crate::calc::pass::Pass;
use crate::calc::pattern::LENGTH;
use crate::calc::rule::{Given, Input};
use crate::calc::tree::{SPRUE_VOLUME, WELDS};
use crate::calc::value::Cause;
use crate::calc::{PatternFigures, Report};
use crate::job::{Flask, FlaskId, Job, Line, LineId, Order, Pattern, PieceId, Place};
use crate::quantity::Finite;
use crate::stock::{Alloy, Crucible, EntryId, PatternMaterial};

/// The usual tree with the lines of the book it stands in.
pub(super) struct Usual {
    pub tree: UsualTree,
    main: Id,
    feed: Id,
    feed_diameter: Id,
    angle: Id,
}

/// What is being gathered.
pub(super) struct Maker<'p, 'a> {
    pub pass: &'p mut Pass<'a>,
    pub report: &'p Report,
    pub options: &'p Options,
    pub usual: Usual,
    pub alloys: Vec<(AlloyOf, AlloyTerms<'a>)>,
    /// Pieces asked for so far: a feed's volume is the same for all.
    feed_volume: Id,
    welds: Id,
    one: Id,
}

pub(super) fn make<'a>(pass: &mut Pass<'a>, report: &Report, options: &Options) -> Ask {
    let job = pass.job;
    let usual = usual_tree(pass);
    let one = pass.book.entered(&ONE_OF, Place::Job, 1.0);
    let feed_volume = pass.book.derive(&SPRUE_VOLUME, Place::Job, [usual.feed_diameter, usual.feed, one]);
    let welds = pass.book.assumed(&WELDS, Place::Job);
    let mut maker = Maker { pass, report, options, usual, alloys: Vec::new(), feed_volume, welds, one };
    let (mut pieces, mut unknown) = (Vec::new(), Vec::new());
    for (order, line, number) in open_pieces(job) {
        match maker.piece(order, line, number) {
            Ok(piece) => pieces.push(piece),
            Err(why) => unknown.push((PieceId { line: line.id, number }, why)),
        }
    }
    maker.widest_walls(&mut pieces);
    let done = Done::of(job);
    let hung = if options.add_to_flasks { maker.open_flasks(&done) } else { Vec::new() };
    let locked: Vec<FlaskId> = hung.iter().map(|hung| hung.flask.id).collect();
    let sizes = candidates(maker.pass, &locked, &done);
    maker.wish(pieces, unknown, sizes, &hung, &done)
}

fn usual_tree(pass: &mut Pass<'_>) -> Usual {
    let last = pass.job.trees.iter().rev().find(|tree| tree.main_sprue.is_some() && !tree.sprues.is_empty());
    let main = last.and_then(|tree| tree.main_sprue.as_ref()).and_then(|main| main.diameter_mm);
    let run = last.and_then(|tree| tree.sprues.first());
    let said = &pass.studio.usual_tree;
    let terms: [(&Input, Option<Finite>, Option<Finite>, &Given); 5] = [
        (&MAIN_DIAMETER, said.main_diameter_mm, main, &MAIN_DIAMETER_DEFAULT),
        (&FEED_DIAMETER, said.feed_diameter_mm, run.and_then(|run| run.diameter_mm), &FEED_DIAMETER_DEFAULT),
        (&FEED_LENGTH, said.feed_length_mm, run.and_then(|run| run.length_mm), &FEED_LENGTH_DEFAULT),
        (&ANGLE, said.feed_angle_deg, run.and_then(|run| run.angle_deg), &ANGLE_DEFAULT),
        (&GAP, said.gap_mm, None, &BETWEEN_NEEDED),
    ];
    // What the studio says rules; else the last tree of the job is taken for a usual one.
    let ids = terms.map(|(input, said, last, given)| match (said, last) {
        (Some(said), _) => pass.book.studio(input, said.get()),
        (None, last) => pass.book.entered_or(input, Place::Job, last, given),
    });
    let [main_mm, feed_diameter_mm, feed_mm, angle_deg, gap_mm] = ids.map(|id| pass.book.number(id).unwrap_or_default());
    let [main, feed_diameter, feed, angle, _] = ids;
    Usual { tree: UsualTree { main_mm, feed_diameter_mm, feed_mm, angle_deg, gap_mm }, main, feed, feed_diameter, angle }
}

/// A flask of the job that may take more, with its pieces.
pub(super) struct Hung<'a> {
    pub flask: &'a Flask,
    pub pieces: Vec<Piece>,
    /// Metal of its pieces as it hangs, in milligrams.
    pub metal_mg: u64,
}

impl<'a> Maker<'_, 'a> {
    /// What a plan has to know of a piece, or what is not known.
    fn piece(&mut self, order: &'a Order, line: &'a Line, number: u32) -> Result<Piece, Unknown> {
        let job = self.pass.job;
        let exception = line.exceptions.get(&number);
        let alloy = self.alloy(line.alloy.as_ref().ok_or(Unknown::NoAlloy)?)?;
        let pattern = exception.and_then(|exception| exception.pattern).or(line.pattern).ok_or(Unknown::NoPattern)?;
        let figures = find_pattern(&self.report.patterns, pattern).ok_or(Unknown::NoPattern)?;
        let pattern: &Pattern = job.patterns.iter().find(|other| other.id == pattern).ok_or(Unknown::NoPattern)?;
        let wanting = |book: &Book, id: Id, other: Unknown| match book.value(id).cause() {
            Some(Cause::Pending) => Unknown::BeingRead,
            _ => other,
        };
        if self.pass.book.number(figures.charge_volume).is_none() {
            return Err(wanting(self.pass.book, figures.charge_volume, Unknown::NoVolume));
        }
        let body = self.body(pattern, figures)?;
        let place = Place::Piece(PieceId { line: line.id, number });
        let terms = [figures.charge_volume, self.feed_volume, self.welds, self.alloys[alloy].1.density];
        let metal = self.pass.book.derive(&PIECE_WITH_FEED, place, terms);
        let metal_g = self.pass.book.number(metal).ok_or(Unknown::NoVolume)?;
        Ok(Piece {
            id: PieceId { line: line.id, number },
            order: order.id,
            set: line.set.trim().to_owned(),
            pattern: pattern.id,
            alloy,
            body,
            section: figures.section,
            irreplaceable: pattern.irreplaceable || exception.is_some_and(|exception| exception.irreplaceable),
            metal_mg: milligrams_up(metal_g),
            due: due(order, line).map_or(NO_DATE, |day| i64::from((day - jiff::civil::date(1970, 1, 1)).get_days())),
        })
    }

    fn body(&self, pattern: &Pattern, figures: &PatternFigures) -> Result<Body, Unknown> {
        let numbers = figures.extents.map(|sides| sides.map(|side| self.pass.book.value(side)));
        let Some([Some(along), Some(across), Some(deep)]) = numbers.map(|sides| sides.map(crate::calc::Value::number)) else {
            let pending = numbers.is_some_and(|sides| sides.iter().any(|side| side.cause() == Some(Cause::Pending)));
            return Err(if pending { Unknown::BeingRead } else { Unknown::NoSize });
        };
        let material = pattern.material.as_ref().and_then(|id| self.pass.shelf.get::<PatternMaterial>(id.as_str()));
        let wall_mm = material.map_or(WALL_NEEDED_DEFAULT.value, |material| material.wall_clearance_mm.value);
        Ok(Body { sides_mm: [along, across, deep], hang_known: figures.hang_known, wall_mm })
    }

    /// The strictest material of a tree rules for all of it, and nobody knows yet which pieces share one: that of the alloy rules.
    fn widest_walls(&self, pieces: &mut [Piece]) {
        for alloy in 0..self.alloys.len() {
            let of = pieces.iter().filter(|piece| piece.alloy == alloy).map(|piece| piece.body.wall_mm);
            let widest = of.fold(0.0, f64::max);
            pieces.iter_mut().filter(|piece| piece.alloy == alloy).for_each(|piece| piece.body.wall_mm = widest);
        }
    }

    /// The place of an alloy in the plan, with the crucible it is poured from.
    fn alloy(&mut self, id: &EntryId) -> Result<usize, Unknown> {
        if let Some(at) = self.alloys.iter().position(|(alloy, _)| alloy.id == *id) {
            return Ok(at);
        }
        let terms = self.pass.alloy(Some(id), Place::Job).ok_or_else(|| Unknown::AlloyNotOnShelf(id.clone()))?;
        let crucible = match &self.options.crucible {
            Some(chosen) => {
                let found = self.pass.shelf.get::<Crucible>(chosen.as_str()).filter(|crucible| may_melt(crucible, terms.alloy));
                let wrong = || Unknown::CrucibleWrong { crucible: chosen.clone(), alloy: id.clone() };
                Some(found.ok_or_else(wrong)?)
            }
            None => self.largest_crucible(terms.alloy),
        };
        let heaviest = crucible.map(|crucible| self.heaviest(crucible, terms));
        let heaviest_g = heaviest.and_then(|id| self.pass.book.number(id));
        let of = AlloyOf { id: id.clone(), name: terms.alloy.name.clone(), crucible: crucible.map(|one| one.id.clone()), heaviest_g };
        self.alloys.push((of, terms));
        Ok(self.alloys.len() - 1)
    }

    /// The largest crucible that may melt it: of those the studio registered, or else of the shelf.
    fn largest_crucible(&self, alloy: &Alloy) -> Option<&'a Crucible> {
        // One crucible, one family, once it is in use.
        let serves = |family: &str| family.trim().is_empty() || family.trim().eq_ignore_ascii_case(&format!("{:?}", alloy.family));
        let own = |crucible: &&Crucible| {
            self.pass.studio.equipment.iter().any(|item| item.entry.as_ref() == Some(&crucible.id) && serves(&item.family))
        };
        let all = || self.pass.shelf.all::<Crucible>().filter(|crucible| may_melt(crucible, alloy));
        let largest = |a: &&Crucible, b: &&Crucible| a.usable_cm3.value.total_cmp(&b.usable_cm3.value);
        all().filter(own).max_by(largest).or_else(|| all().max_by(largest))
    }

    /// The heaviest tree a crucible pours.
    fn heaviest(&mut self, crucible: &'a Crucible, alloy: AlloyTerms<'a>) -> Id {
        let pass = &mut *self.pass;
        let usable = pass.shelf_term(&USABLE, &crucible.id, &crucible.usable_cm3);
        let step = pass.balance_step(Place::Job);
        let poured = pass.book.derive(&POURABLE, Place::Job, [usable, alloy.liquid_density, step, alloy.loss]);
        let reserve = pass.book.assumed(&NO_RESERVE, Place::Job);
        let least = pass.book.assumed(&BUTTON_LEAST_DEFAULT, Place::Job);
        let share = pass.book.assumed(&BUTTON_SHARE_DEFAULT, Place::Job);
        pass.book.derive(&HEAVIEST_TREE, Place::Job, [poured, reserve, least, share])
    }

    /// Flasks that are neither weighed nor invested, and whose pieces are all known.
    fn open_flasks(&mut self, done: &Done) -> Vec<Hung<'a>> {
        let job = self.pass.job;
        let open = |flask: &&&Flask| !done.closed.contains(&flask.id) && flask.vessel.is_some();
        let flasks: Vec<&Flask> = job.flasks.iter().filter(|flask| open(&flask)).collect();
        flasks.into_iter().filter_map(|flask| self.hung(flask)).collect()
    }

    fn hung(&mut self, flask: &'a Flask) -> Option<Hung<'a>> {
        let job = self.pass.job;
        let tree = job.trees.iter().find(|tree| Some(tree.id) == flask.tree).filter(|tree| tree.weighed.is_empty())?;
        let shared = job.flasks.iter().filter(|other| other.tree == flask.tree).count() > 1;
        let mut pieces = Vec::new();
        for row in &tree.pieces {
            let (order, line) = line_of(job, row.line)?;
            for piece in row.pieces(line) {
                pieces.push(self.piece(order, line, piece.number).ok()?);
            }
        }
        let alloy = pieces.first()?.alloy;
        if shared || pieces.iter().any(|piece| piece.alloy != alloy) {
            return None;
        }
        let figures = self.report.flasks.iter().find(|figures| figures.id == flask.id)?;
        let tree_mg = milligrams_up(self.pass.book.number(figures.metal.tree)?);
        // Its own main sprue is taken off: that of the plan is counted in its stead.
        let own = tree.main_sprue.as_ref().and_then(|main| Some((main.diameter_mm?, main.length_mm?)));
        let trunk = own.and_then(|(diameter, length)| {
            let (book, place) = (&mut *self.pass.book, Place::Flask(flask.id));
            let terms = [book.entered(&LENGTH, place, diameter.get()), book.entered(&LENGTH, place, length.get()), self.one];
            let volume = book.derive(&SPRUE_VOLUME, place, terms);
            let metal = book.derive(&TRUNK_METAL, place, [volume, self.welds, self.alloys[alloy].1.density]);
            book.number(metal)
        });
        let of_pieces: u64 = pieces.iter().map(|piece| piece.metal_mg).sum();
        let metal_mg = tree_mg.saturating_sub(milligrams_down(trunk.unwrap_or(0.0))).max(of_pieces);
        Some(Hung { flask, pieces, metal_mg })
    }

    /// The longest main sprue of a size.
    pub(super) fn trunk_length(&mut self, candidate: &Candidate<'a>) -> Id {
        let [height, dome, top] = candidate.heights;
        self.pass.book.derive(&TRUNK_LENGTH, Place::Job, [height, dome, top, self.usual.feed, self.usual.angle])
    }

    /// Metal of the main sprue, and metal left for pieces, in a size and an alloy; no end of it where no crucible says one.
    pub(super) fn metal_in(&mut self, candidate: &Candidate<'a>, alloy: usize) -> (f64, Option<f64>) {
        let (of, terms) = (self.alloys[alloy].0.clone(), self.alloys[alloy].1);
        let length = self.trunk_length(candidate);
        let book = &mut *self.pass.book;
        let volume = book.derive(&SPRUE_VOLUME, Place::Job, [self.usual.main, length, self.one]);
        let trunk = book.derive(&TRUNK_METAL, Place::Job, [volume, self.welds, terms.density]);
        let trunk_g = book.number(trunk).unwrap_or(0.0);
        let crucible = of.crucible.as_ref().and_then(|id| self.pass.shelf.get::<Crucible>(id.as_str()));
        let left = crucible.map(|crucible| {
            let heaviest = self.heaviest(crucible, terms);
            let left = self.pass.book.derive(&FOR_PIECES, Place::Job, [heaviest, trunk]);
            self.pass.book.number(left).unwrap_or(0.0)
        });
        (trunk_g, left)
    }
}

fn line_of(job: &Job, id: LineId) -> Option<(&Order, &Line)> {
    job.lines().find(|(_, line)| line.id == id)
}

/// Metal that is to be poured is rounded up.
fn milligrams_up(grams: f64) -> u64 {
    (grams * 1000.0).clamp(0.0, 1e15).ceil() as u64
}

/// Metal that may be poured is rounded down.
pub(super) fn milligrams_down(grams: f64) -> u64 {
    (grams * 1000.0).clamp(0.0, 1e15).floor() as u64
}
