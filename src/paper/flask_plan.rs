//! What a drawing of a tree in its flask is made from, on paper and on the screen.

use std::collections::BTreeMap;

use super::desk::SheetInput;
use super::words::{Words, print_figure};
use crate::calc::outline::{MOST, angle_deg};
use crate::calc::places::Spot;
use crate::calc::solid::Solid;
use crate::calc::stand::{Form, Hang, Part, Standing, Trunk, stand};
use crate::calc::{BrokenFeed, FeedPart, FlaskFigures, Id, Outline};
use crate::drawing::flask::{Labels, Plan, Room, Tight};
use crate::drawing::primitive::Role;
use crate::drawing::tree::{Place, Shown, facets_of};
use crate::job::{Flask, LineId, OrderId, Tree};
use crate::quantity::{Finite, Kind, print};
use crate::stock::{Base, Flask as Vessel, FlaskWall};

/// A drawing's numbers, and the orders of its colours.
pub struct Drawn {
    /// The numbers.
    pub plan: Plan,
    /// The orders, in the order of the key.
    pub orders: Vec<OrderId>,
    /// Every piece is drawn where it was said to hang.
    pub said: bool,
    /// Every piece is drawn as large as it is.
    pub known: bool,
    /// Pieces that are not drawn, because there are too many of them.
    pub more: usize,
}

/// How a tree is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Look {
    /// How far it is turned about its axis, in degrees.
    pub turn_deg: f64,
    /// The piece that is pointed out.
    pub chosen: Option<(LineId, u32)>,
}

/// What is to be drawn of a flask; none where its steel is not chosen.
#[must_use]
pub fn plan(input: &SheetInput<'_>, flask: &Flask, figures: &FlaskFigures) -> Option<Drawn> {
    input.shelves.job.get::<Vessel>(flask.vessel.as_ref()?.as_str())?;
    let tree = flask.tree.and_then(|id| input.job.trees.iter().find(|tree| tree.id == id));
    Some(drawn(input, Some((flask, figures)), tree, Look::default()))
}

/// What is to be drawn of a tree, in the flask it stands in, or without one.
#[must_use]
pub fn plan_of_tree(input: &SheetInput<'_>, tree: &Tree, look: Look) -> Drawn {
    let flask = input.job.flasks.iter().find(|flask| flask.tree == Some(tree.id));
    let figures = flask.and_then(|flask| Some((flask, input.report.flasks.iter().find(|figures| figures.id == flask.id)?)));
    drawn(input, figures, Some(tree), look)
}

fn drawn(input: &SheetInput<'_>, flask: Option<(&Flask, &FlaskFigures)>, tree: Option<&Tree>, look: Look) -> Drawn {
    let shelf = &input.shelves.job;
    let vessel = flask.and_then(|(flask, _)| shelf.get::<Vessel>(flask.vessel.as_ref()?.as_str()));
    let base = tree.and_then(|tree| tree.base.as_ref()).and_then(|id| shelf.get::<Base>(id.as_str()));
    let figures_of_tree = tree.and_then(|tree| input.report.trees.iter().find(|figures| figures.id == tree.id));
    let outline = figures_of_tree.map(|figures| &figures.outline);
    let broken = figures_of_tree.map(|figures| figures.feed.broken.as_slice()).unwrap_or_default();
    let number = |id: Option<Id>| id.and_then(|id| input.book.number(id));
    let tree_diameter_mm = number(outline.and_then(|outline| outline.diameter));
    let tree_height_mm = number(outline.and_then(|outline| outline.height));
    let dome_mm = base.map_or(0.0, |base| base.dome_height_mm.value);
    let trunk = tree.and_then(|tree| trunk(tree, dome_mm));
    let mut orders = Vec::new();
    let hung = tree.zip(outline).zip(trunk).map(|((tree, outline), trunk)| {
        let sketch = Sketch { input, tree, outline, broken, trunk, side: tree_diameter_mm.unwrap_or(40.0) / 5.0 };
        (sketch.pieces(look, &mut orders), outline.spots.len().saturating_sub(MOST), outline.standing.is_some())
    });
    let (pieces, more, known) = hung.unwrap_or_default();
    let collar = flask.and_then(|(flask, _)| flask.collar_mm).map_or(0.0, Finite::get).max(0.0);
    let size = vessel.map(|vessel| [vessel.inner_diameter_mm, vessel.height_mm]);
    let [inner_mm, height_mm] = size.unwrap_or_else(|| [tree_diameter_mm.unwrap_or(60.0) + 12.0, tree_height_mm.unwrap_or(80.0) + 12.0]);
    let room = |id: Option<Id>, kinds| flask.and_then(|(flask, _)| room(input, flask, id, kinds));
    let plan = Plan {
        inner_mm,
        height_mm,
        collar_mm: collar,
        wall_mm: vessel.map_or(0.0, |vessel| vessel.wall_mm.value),
        perforated: vessel.is_some_and(|vessel| vessel.wall == FlaskWall::Perforated),
        bare: vessel.is_none(),
        dome_cm3: base.map_or(0.0, |base| base.dome_cm3.value),
        trunk,
        trunk_starves: broken.iter().any(|broken| broken.by == FeedPart::Trunk),
        dome_mm,
        tree_diameter_mm,
        tree_height_mm,
        wall: room(flask.and_then(|(_, figures)| figures.room.wall), ["tree-too-wide", "wall-clearance"]),
        above: room(flask.and_then(|(_, figures)| figures.room.top), ["tree-too-high", "top-clearance"]),
        labels: labels(input, vessel, collar),
        pieces,
        turn_deg: look.turn_deg,
        tight: outline.map(|outline| tight(input, outline)).unwrap_or_default(),
    };
    let said = outline.is_none_or(|outline| outline.spots.iter().all(|spot| spot.said.place()));
    Drawn { plan, orders, said, known, more }
}

fn labels(input: &SheetInput<'_>, vessel: Option<&Vessel>, collar: f64) -> Labels {
    let mm = |value: f64| print(value, Kind::Length, input.style).to_string();
    let size = vessel.map(|vessel| {
        let args = [("diameter", mm(vessel.inner_diameter_mm).into()), ("height", mm(vessel.height_mm).into())];
        input.texts.say("drawing-size", &args)
    });
    Labels {
        size: size.unwrap_or_else(|| input.texts.label("drawing-no-flask")),
        far_end: input.texts.label("drawing-far-end"),
        button_end: input.texts.label("drawing-button-end"),
        collar: input.texts.say("drawing-collar", &[("what", mm(collar).into())]),
    }
}

/// The trunk, where the main sprue is known.
fn trunk(tree: &Tree, dome_mm: f64) -> Option<Trunk> {
    let main = tree.main_sprue.as_ref()?;
    Some(Trunk { dome_mm, diameter_mm: main.diameter_mm?.get(), length_mm: main.length_mm?.get() })
}

/// The pieces of a tree to be drawn; what is not known of them is guessed.
struct Sketch<'a> {
    input: &'a SheetInput<'a>,
    tree: &'a Tree,
    outline: &'a Outline,
    /// Where the order of freezing is broken.
    broken: &'a [BrokenFeed],
    trunk: Trunk,
    /// The side of a piece whose measures nobody knows.
    side: f64,
}

impl Sketch<'_> {
    fn pieces(&self, look: Look, orders: &mut Vec<OrderId>) -> Vec<Shown> {
        let spots = &self.outline.spots[..self.outline.spots.len().min(MOST)];
        let guessed;
        let standing = if let Some(standing) = &self.outline.standing {
            standing
        } else {
            guessed = stand(&self.trunk, &spots.iter().map(|spot| self.hang(spot)).collect::<Vec<_>>());
            &guessed
        };
        let of_line: BTreeMap<LineId, OrderId> = self.input.job.lines().map(|(order, line)| (line.id, order.id)).collect();
        let mut pieces = Vec::with_capacity(spots.len());
        for (at, spot) in spots.iter().enumerate() {
            let Some(order) = of_line.get(&spot.line) else { continue };
            let key = orders.iter().position(|id| id == order).unwrap_or_else(|| {
                orders.push(*order);
                orders.len() - 1
            });
            let run = spot.run.and_then(|run| self.tree.sprues.get(run));
            pieces.push(Shown {
                order: key,
                facets: self.facets(spot, standing, at),
                feed: standing.frames[at].feed(),
                feed_diameter_mm: run.and_then(|run| run.diameter_mm).map_or(self.side / 6.0, Finite::get),
                starved: self.starved(spot),
                chosen: look.chosen == Some((spot.line, spot.number)),
            });
        }
        pieces
    }

    /// Does the sprue of a piece freeze before it?
    fn starved(&self, spot: &Spot) -> bool {
        let run = spot.run.and_then(|run| u32::try_from(run + 1).ok());
        let broken =
            |broken: &BrokenFeed| broken.fed == FeedPart::Pieces(spot.row) && run.is_some_and(|run| broken.by == FeedPart::Run(run));
        self.broken.iter().any(broken)
    }

    /// The surface of a piece: of its file where it has one, otherwise of its box.
    fn facets(&self, spot: &Spot, standing: &Standing, at: usize) -> Vec<[Place; 3]> {
        let form = spot.pattern.and_then(|id| self.input.report.forms.get(&id));
        let frame = &standing.frames[at];
        match (form.and_then(|form| form.shape.as_ref()), &standing.pieces[at]) {
            (Some((shape, file)), Solid::Hull(_)) => {
                let placed = |corner: [f32; 3]| frame.place(file.place(corner.map(f64::from)));
                shape.triangles.iter().map(|triangle| triangle.map(placed)).collect()
            }
            (_, solid) => facets_of(solid),
        }
    }

    fn hang(&self, spot: &Spot) -> Hang {
        let run = spot.run.and_then(|run| self.tree.sprues.get(run));
        let form = spot.pattern.and_then(|id| self.input.report.forms.get(&id)).map(|form| form.form.clone());
        Hang {
            joint_mm: self.trunk.dome_mm + spot.height_mm,
            around_deg: spot.around_deg,
            angle_deg: run.map_or(45.0, angle_deg),
            twist_deg: spot.turn_deg,
            feed_diameter_mm: run.and_then(|run| run.diameter_mm).map_or(0.0, Finite::get),
            feed_length_mm: run.and_then(|run| run.length_mm).map_or(self.side / 2.0, Finite::get),
            form: form.unwrap_or(Form::Sides([self.side; 3])),
        }
    }
}

/// What is too near to each other, with how near it is; only of pieces that were said to hang there.
fn tight(input: &SheetInput<'_>, outline: &Outline) -> Vec<Tight> {
    let said = |part: &Part| match part {
        Part::Trunk => true,
        Part::Feed(at) | Part::Piece(at) => outline.spots.get(*at).is_some_and(|spot| spot.said.place()),
    };
    let words = |mm: f64| print(mm.max(0.0), Kind::Length, input.style).to_string();
    let near = outline.near.iter().filter(|near| near.parts.iter().all(said)).map(|near| {
        let touches = near.apart.at_least_mm <= 0.0;
        let role = if touches { Role::Stop } else { Role::Caution };
        Tight { places: near.apart.places, words: words(near.apart.at_least_mm), role }
    });
    near.collect()
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
