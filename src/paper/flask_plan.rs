//! From a flask of the job to the plain numbers its drawing is made from, on paper and on the screen.

use std::collections::BTreeMap;

use super::desk::SheetInput;
use super::words::{Words, print_figure};
use crate::calc::{FlaskFigures, Id, PatternFigures};
use crate::drawing::arrange::{MOST, Piece, Trunk};
use crate::drawing::flask::{Labels, Plan, Room};
use crate::drawing::primitive::Role;
use crate::job::{Flask, Hung, Line, LineId, Order, OrderId, Tree};
use crate::quantity::{Finite, Kind, print};
use crate::stock::{Base, Flask as Vessel};

/// A drawing's numbers, and the orders of its colours.
pub struct Drawn {
    /// The numbers.
    pub plan: Plan,
    /// The orders, in the order of the key.
    pub orders: Vec<OrderId>,
    /// Every piece is drawn where it was said to hang.
    pub said: bool,
    /// Pieces that are not drawn, because there are too many of them.
    pub more: usize,
}

/// What is to be drawn of a flask; none where its steel is not chosen.
#[must_use]
pub fn plan(input: &SheetInput<'_>, flask: &Flask, figures: &FlaskFigures) -> Option<Drawn> {
    let shelf = &input.shelves.job;
    let vessel = flask.vessel.as_ref().and_then(|id| shelf.get::<Vessel>(id.as_str()))?;
    let job = input.job;
    let tree = flask.tree.and_then(|id| job.trees.iter().find(|tree| tree.id == id));
    let base = tree.and_then(|tree| tree.base.as_ref()).and_then(|id| shelf.get::<Base>(id.as_str()));
    let measured = flask.tree.and_then(|id| input.report.trees.iter().find(|figures| figures.id == id));
    let number = |id: Option<Id>| id.and_then(|id| input.book.number(id));
    let tree_diameter_mm = number(measured.and_then(|tree| tree.outline.diameter));
    let tree_height_mm = number(measured.and_then(|tree| tree.outline.height));
    let dome_mm = base.map_or(0.0, |base| base.dome_height_mm.value);
    let trunk = tree.and_then(|tree| trunk(tree, dome_mm, [tree_diameter_mm, tree_height_mm]));
    let mut orders = Vec::new();
    let (pieces, more) = tree.filter(|_| trunk.is_some()).map(|tree| pieces(input, tree, &mut orders)).unwrap_or_default();
    let collar = flask.collar_mm.map_or(0.0, Finite::get).max(0.0);
    let drawn = Plan {
        inner_mm: vessel.inner_diameter_mm,
        height_mm: vessel.height_mm,
        collar_mm: collar,
        wall_mm: vessel.wall_mm.value,
        dome_cm3: base.map_or(0.0, |base| base.dome_cm3.value),
        trunk,
        dome_mm,
        tree_diameter_mm,
        tree_height_mm,
        wall: room(input, flask, figures.room.wall, ["tree-too-wide", "wall-clearance"]),
        above: room(input, flask, figures.room.top, ["tree-too-high", "top-clearance"]),
        labels: labels(input, vessel, collar),
        pieces,
    };
    let said = drawn.pieces.iter().all(|piece| piece.tier.is_some() && piece.around_deg.is_some());
    Some(Drawn { plan: drawn, orders, said, more })
}

fn labels(input: &SheetInput<'_>, vessel: &Vessel, collar: f64) -> Labels {
    let mm = |value: f64| print(value, Kind::Length, input.style).to_string();
    let size = [("diameter", mm(vessel.inner_diameter_mm).into()), ("height", mm(vessel.height_mm).into())];
    Labels {
        size: input.texts.say("drawing-size", &size),
        far_end: input.texts.label("drawing-far-end"),
        button_end: input.texts.label("drawing-button-end"),
        collar: input.texts.say("drawing-collar", &[("what", mm(collar).into())]),
    }
}

/// The trunk, where the main sprue is known; its feed sprues are taken from the first run.
fn trunk(tree: &Tree, dome_mm: f64, [tree_diameter_mm, tree_height_mm]: [Option<f64>; 2]) -> Option<Trunk> {
    let main = tree.main_sprue.as_ref()?;
    let run = tree.sprues.first();
    Some(Trunk {
        dome_mm,
        diameter_mm: main.diameter_mm?.get(),
        length_mm: main.length_mm?.get(),
        feed_mm: run.and_then(|run| run.length_mm).map_or(0.0, Finite::get),
        angle_deg: run.and_then(|run| run.angle_deg).map_or(45.0, Finite::get),
        tree_diameter_mm,
        tree_height_mm,
    })
}

/// The pieces on a tree as far as they are drawn, and how many more there are.
fn pieces(input: &SheetInput<'_>, tree: &Tree, orders: &mut Vec<OrderId>) -> (Vec<Piece>, usize) {
    let wanted: std::collections::BTreeSet<LineId> = tree.pieces.iter().map(|hung| hung.line).collect();
    let lines = input.job.lines().filter(|(_, line)| wanted.contains(&line.id));
    let lines: BTreeMap<LineId, (&Order, &Line)> = lines.map(|(order, line)| (line.id, (order, line))).collect();
    let (mut pieces, mut all) = (Vec::new(), 0_usize);
    for hung in &tree.pieces {
        let Some((order, line)) = lines.get(&hung.line) else { continue };
        let key = orders.iter().position(|id| *id == order.id).unwrap_or_else(|| {
            orders.push(order.id);
            orders.len() - 1
        });
        for number in numbers(hung, line) {
            all = all.saturating_add(1);
            if pieces.len() < MOST {
                pieces.push(Piece { order: key, tier: hung.tier, around_deg: direction(hung, line), size_mm: size(input, line, number) });
            }
        }
    }
    let more = all - pieces.len();
    (pieces, more)
}

/// Several pieces of one row hang around the main sprue; only one of them can hang where its row says.
fn direction(hung: &Hung, line: &Line) -> Option<f64> {
    let single = if hung.numbers.is_empty() { line.quantity == 1 } else { hung.numbers.len() == 1 };
    hung.around_deg.filter(|_| single).map(Finite::get)
}

fn numbers<'a>(hung: &'a Hung, line: &'a Line) -> Box<dyn Iterator<Item = u32> + 'a> {
    let live = |number: &u32| !line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
    if hung.numbers.is_empty() { Box::new((1..=line.quantity).filter(live)) } else { Box::new(hung.numbers.iter().copied().filter(live)) }
}

/// Along the sprue and across it, by the piece's own pattern or the line's.
fn size(input: &SheetInput<'_>, line: &Line, number: u32) -> Option<[f64; 2]> {
    let id = line.exceptions.get(&number).and_then(|exception| exception.pattern).or(line.pattern)?;
    let patterns: &[PatternFigures] = &input.report.patterns;
    let found = &patterns[patterns.binary_search_by_key(&id, |pattern| pattern.id).ok()?];
    let [along, across, _] = found.extents?;
    Some([input.book.number(along)?, input.book.number(across)?])
}

/// A room in words, and how bad it is by what the findings say.
fn room(input: &SheetInput<'_>, flask: &Flask, id: Option<Id>, [none, tight]: [&str; 2]) -> Option<Room> {
    let id = id?;
    let mm = input.book.number(id)?;
    let words = Words { texts: input.texts, style: input.style, zone: &input.setting.zone, currency: "" };
    let place = crate::job::Place::Flask(flask.id);
    let found = |key: &str| input.report.findings.iter().any(|found| found.place == place && found.kind.key == key);
    let role = if found(none) {
        Role::Stop
    } else if found(tight) {
        Role::Caution
    } else {
        Role::Ink
    };
    Some(Room { words: print_figure(input.book, id, &words), mm, role })
}
