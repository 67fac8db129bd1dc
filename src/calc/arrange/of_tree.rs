//! The task of a job's own tree, and the places of an arrangement written down for its pieces.

use super::super::book::Book;
use super::super::clearance::{Wanting, top_needed};
use super::super::order::find_pattern;
use super::super::outline::{BETWEEN_NEEDED, MOST, TRUNK_NEEDED, angle_deg};
use super::super::places::Spot;
use super::super::stand::{Hang, Trunk};
use super::super::{Report, Shelves};
use super::{Held, Limits, Task, Wanted};
use crate::job::{Job, LineId, PatternId, PieceId, Placed, Tree};
use crate::quantity::Finite;
use crate::stock::{Base, Flask as Vessel, PatternMaterial};

/// What must be said before a tree can be arranged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lacks {
    /// Pieces on it.
    Pieces,
    /// Diameter and length of the main sprue.
    MainSprue,
    /// A flask whose steel is chosen.
    Flask,
    /// A sprue for a piece, or its length.
    Sprue(LineId, u32),
    /// The outer size of a piece.
    Size(LineId, u32),
    /// Fewer pieces: there are too many to be looked at piece against piece.
    Fewer,
}

/// A hair more room than is needed: places are written down to a hundredth. The wall does not care for height nor direction.
pub const HAIR_MM: f64 = 0.05;

/// The task of a tree in its flask. With `hold`, pieces whose place was said stay there.
///
/// # Errors
/// What must be said first.
pub fn task_of(job: &Job, tree: &Tree, report: &Report, book: &Book, shelves: &Shelves, hold: bool) -> Result<Task, Lacks> {
    let main = tree.main_sprue.as_ref().and_then(|main| Some((main.diameter_mm?.get(), main.length_mm?.get())));
    let (diameter_mm, length_mm) = main.ok_or(Lacks::MainSprue)?;
    let outline = report.trees.iter().find(|figures| figures.id == tree.id).map(|figures| &figures.outline).ok_or(Lacks::Pieces)?;
    if outline.spots.is_empty() {
        return Err(Lacks::Pieces);
    }
    if outline.spots.len() > MOST {
        return Err(Lacks::Fewer);
    }
    let shelf = &shelves.job;
    let base = tree.base.as_ref().and_then(|id| shelf.get::<Base>(id.as_str()));
    let dome_mm = base.map_or(0.0, |base| base.dome_height_mm.value);
    let flask = job.flasks.iter().find(|flask| flask.tree == Some(tree.id)).ok_or(Lacks::Flask)?;
    let vessel = flask.vessel.as_ref().and_then(|id| shelf.get::<Vessel>(id.as_str())).ok_or(Lacks::Flask)?;
    let figures = report.flasks.iter().find(|figures| figures.id == flask.id);
    let materials = figures.map(|figures| figures.materials.as_slice()).unwrap_or_default();
    let materials: Vec<&PatternMaterial> = materials.iter().filter_map(|id| shelf.get(id.as_str())).collect();
    let trunk = Trunk { diameter_mm, length_mm, dome_mm };
    let pieces = outline.spots.iter().map(|spot| wanted(job, tree, report, book, &trunk, spot, hold)).collect::<Result<_, _>>()?;
    let limits = Limits {
        inner_diameter_mm: vessel.inner_diameter_mm,
        height_mm: vessel.height_mm + flask.collar_mm.map_or(0.0, Finite::get),
        wall_mm: Wanting::new(0.0, 0.0, &materials).wall_mm,
        between_mm: BETWEEN_NEEDED.value + HAIR_MM,
        feeds_mm: None,
        trunk_mm: TRUNK_NEEDED.value + HAIR_MM,
        top_mm: top_needed(vessel).value + HAIR_MM / 5.0,
        bottom_mm: dome_mm,
    };
    Ok(Task { trunk, pieces, limits })
}

#[allow(clippy::too_many_arguments, reason = "each is one thing a piece is made of")]
fn wanted(job: &Job, tree: &Tree, report: &Report, book: &Book, trunk: &Trunk, spot: &Spot, hold: bool) -> Result<Wanted, Lacks> {
    let (size, sprue) = (Lacks::Size(spot.line, spot.number), Lacks::Sprue(spot.line, spot.number));
    let id = spot.pattern.ok_or(size)?;
    let run = spot.run.and_then(|run| tree.sprues.get(run)).ok_or(sprue)?;
    let length = run.length_mm.ok_or(sprue)?.get();
    let feed = [run.diameter_mm.map_or(0.0, Finite::get), length, angle_deg(run)];
    let held = Held { joint_mm: trunk.dome_mm + spot.height_mm, around_deg: spot.around_deg, twist_deg: spot.turn_deg };
    let held = (hold && spot.said.place()).then_some(held);
    wanted_of(job, report, book, id, feed).map(|wanted| Wanted { held, ..wanted }).ok_or(size)
}

/// A piece of a pattern on a feed of this diameter, length and angle, free to hang anywhere; nothing where its form is not known.
#[must_use]
pub fn wanted_of(job: &Job, report: &Report, book: &Book, id: PatternId, feed: [f64; 3]) -> Option<Wanted> {
    let form = report.forms.get(&id)?.form.clone();
    let figures = find_pattern(&report.patterns, id);
    let wall = figures.and_then(|figures| figures.walls).and_then(|[thinnest, ..]| book.number(thinnest));
    let said = job.patterns.iter().find(|pattern| pattern.id == id).and_then(|pattern| pattern.thinnest_mm);
    let [feed_diameter_mm, feed_length_mm, angle_deg] = feed;
    Some(Wanted {
        form,
        // All pieces of a tree are cast in one alloy: their volumes weigh as they do.
        weight_g: figures.and_then(|figures| book.number(figures.charge_volume)).unwrap_or(0.0),
        thinnest_mm: said.map(Finite::get).or(wall),
        feed_diameter_mm,
        feed_length_mm,
        angle_deg,
        held: None,
    })
}

/// Writes down where the pieces of a tree hang, to a hundredth.
pub fn write_down(tree: &mut Tree, trunk: &Trunk, spots: &[Spot], hangs: &[Hang]) {
    for (spot, hang) in spots.iter().zip(hangs) {
        let piece = PieceId { line: spot.line, number: spot.number };
        let own = tree.placed.iter().find(|placed| (placed.line, placed.number) == (spot.line, spot.number)).and_then(|own| own.sprue);
        let sprue = own.or_else(|| spot.run.and_then(|run| u32::try_from(run + 1).ok()));
        tree.placed.retain(|placed| (placed.line, placed.number) != (spot.line, spot.number));
        tree.placed.push(placed(piece, trunk, hang, sprue));
    }
}

/// Where a piece hangs, to a hundredth.
#[must_use]
pub fn placed(piece: PieceId, trunk: &Trunk, hang: &Hang, sprue: Option<u32>) -> Placed {
    let to = |value: f64| Finite::new((value * 100.0).round() / 100.0);
    Placed {
        line: piece.line,
        number: piece.number,
        tier: None,
        height_mm: to(hang.joint_mm - trunk.dome_mm),
        around_deg: to(hang.around_deg.rem_euclid(360.0)),
        turn_deg: to(hang.twist_deg.rem_euclid(360.0)).filter(|turn| turn.get() != 0.0),
        sprue,
    }
}
