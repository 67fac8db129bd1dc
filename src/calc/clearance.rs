//! Does the tree go into the flask, with room for investment around and above it?

use super::book::Id;
use super::finding::{self, Arg};
use super::investment::{COLLAR, NO_COLLAR};
use super::pass::Pass;
use super::rule::{Given, givens, inputs, rules};
use super::tree::TreeFigures;
use crate::job::{Flask, Place};
use crate::stock::{Base, Flask as Vessel, PatternMaterial};

inputs! {
    /// Room the pattern needs to the wall.
    WALL_NEEDED "flask.wall-needed" Length;
}

givens! {
    /// Room to the wall where no material says more.
    WALL_NEEDED_DEFAULT "flask.wall-needed" Length = 6.0; Article "college handout on investing: at least 6 mm to the flask's wall"
    /// Room above a tree in a small flask.
    TOP_NEEDED_SMALL "flask.top-needed" Length = 12.0; CommonPractice "12–20 mm above the tree in small vacuum flasks: common practice, no source"
    /// Room above a tree in a large flask.
    TOP_NEEDED_LARGE "flask.top-needed" Length = 25.0; Article "college handout on investing: at least 25 mm to the top of the flask"
}

rules! {
    /// Room between the tree and the flask's wall.
    WALL_ROOM "flask.wall-clearance" (flask: Length, tree: Length) -> Length
        = Formula "(flask - tree)/2" { (flask - tree) / 2.0 };
        Computed "half of what the flask is wider than the tree"
    /// Room between the far end of the tree and the flask's rim.
    TOP_ROOM "flask.top-clearance" (height: Length, collar: Length, tree: Length) -> Length
        = Formula "height + collar - tree" { height + collar - tree };
        Computed "what the flask is higher than the tree"
}

/// Flasks no higher than this hold a small tree.
pub(super) const SMALL_FLASK_MM: f64 = 102.5;

/// Room around a tree in its flask, where it is known.
#[derive(Debug, Clone, Copy, Default)]
pub struct ClearanceFigures {
    /// To the wall.
    pub wall: Option<Id>,
    /// What the pattern needs there.
    pub wall_needed: Option<Id>,
    /// Above.
    pub top: Option<Id>,
    /// What is needed there.
    pub top_needed: Option<Id>,
}

/// A tree that wants a flask, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanting {
    /// Its diameter.
    pub diameter_mm: f64,
    /// Its height over the base's rim.
    pub height_mm: f64,
    /// Room it needs to the wall.
    pub wall_mm: f64,
}

impl Wanting {
    /// A tree with patterns of these materials.
    #[must_use]
    pub fn new(diameter_mm: f64, height_mm: f64, materials: &[&PatternMaterial]) -> Self {
        let strictest = materials.iter().map(|material| material.wall_clearance_mm.value).reduce(f64::max);
        Self { diameter_mm, height_mm, wall_mm: strictest.unwrap_or(WALL_NEEDED_DEFAULT.value) }
    }

    /// Does it go into a flask, with all the room it needs?
    #[must_use]
    pub fn goes_into(&self, vessel: &Vessel) -> bool {
        let above = vessel.height_mm - self.height_mm;
        (vessel.inner_diameter_mm - self.diameter_mm) / 2.0 >= self.wall_mm && above >= top_needed(vessel).value
    }

    /// The flask of least volume that it goes into; of a base that fits, where one was chosen.
    #[must_use]
    pub fn smallest<'s>(&self, vessels: impl Iterator<Item = &'s Vessel>, base: Option<&Base>) -> Option<&'s Vessel> {
        let fitting = vessels.filter(|vessel| base.is_none_or(|base| base.fits(vessel.inner_diameter_mm)) && self.goes_into(vessel));
        fitting.min_by(|a, b| a.volume_cm3().total_cmp(&b.volume_cm3()).then_with(|| a.id.cmp(&b.id)))
    }
}

/// Room above a tree in a flask where nobody says otherwise.
pub(super) fn top_needed(vessel: &Vessel) -> &'static Given {
    if vessel.height_mm <= SMALL_FLASK_MM { &TOP_NEEDED_SMALL } else { &TOP_NEEDED_LARGE }
}

impl<'a> Pass<'a> {
    pub(super) fn clearance(
        &mut self,
        flask: &'a Flask,
        vessel: Option<&'a Vessel>,
        base: Option<&'a Base>,
        tree: Option<&TreeFigures>,
        materials: &[&'a PatternMaterial],
    ) -> ClearanceFigures {
        let place = Place::Flask(flask.id);
        let (Some(vessel), Some(tree)) = (vessel, tree) else { return ClearanceFigures::default() };
        if let Some(base) = base.filter(|base| !base.fits(vessel.inner_diameter_mm)) {
            self.find(&finding::BASE_DOES_NOT_FIT, place, vec![Arg::Text(base.name.clone()), Arg::Text(vessel.to_string())]);
        }
        let (diameter, height) = self.vessel_size(Some(vessel), place);
        let mut room = ClearanceFigures::default();
        if let Some(tree_diameter) = tree.outline.diameter {
            let wall = self.book.derive(&WALL_ROOM, place, [diameter, tree_diameter]);
            let strictest = materials.iter().max_by(|a, b| a.wall_clearance_mm.value.total_cmp(&b.wall_clearance_mm.value));
            let needed = match strictest {
                Some(material) => self.shelf_term(&WALL_NEEDED, &material.id, &material.wall_clearance_mm),
                None => self.book.assumed(&WALL_NEEDED_DEFAULT, place),
            };
            self.room_found(place, wall, needed, [tree_diameter, diameter], &finding::TREE_TOO_WIDE, &finding::WALL_CLEARANCE);
            (room.wall, room.wall_needed) = (Some(wall), Some(needed));
        }
        if let Some(tree_height) = tree.outline.height {
            let collar = self.book.entered_or(&COLLAR, place, flask.collar_mm, &NO_COLLAR);
            let top = self.book.derive(&TOP_ROOM, place, [height, collar, tree_height]);
            let needed = self.book.assumed(top_needed(vessel), place);
            self.room_found(place, top, needed, [tree_height, height], &finding::TREE_TOO_HIGH, &finding::TOP_CLEARANCE);
            (room.top, room.top_needed) = (Some(top), Some(needed));
        }
        room
    }

    fn room_found(
        &mut self,
        place: Place,
        room: Id,
        needed: Id,
        [tree, flask]: [Id; 2],
        touches: &'static finding::FindingKind,
        tight: &'static finding::FindingKind,
    ) {
        let (Some(has), Some(needs)) = (self.book.number(room), self.book.number(needed)) else { return };
        if has <= 0.0 {
            self.find_on(touches, place, room, vec![Arg::Figure(room), Arg::Figure(tree), Arg::Figure(flask)]);
        } else if has < needs {
            self.find_on(tight, place, room, vec![Arg::Figure(room), Arg::Figure(needed)]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stock::Shelf;

    fn smallest(diameter_mm: f64, height_mm: f64, base: Option<&str>) -> Option<String> {
        let shelf = Shelf::shipped();
        let base = base.and_then(|id| shelf.get::<Base>(id));
        let wanting = Wanting { diameter_mm, height_mm, wall_mm: 6.0 };
        let vessels: Vec<&Vessel> = shelf.all::<Vessel>().collect();
        let found = wanting.smallest(vessels.iter().copied(), base);
        // No smaller one takes it, and this one does.
        if let Some(found) = found {
            assert!(wanting.goes_into(found));
            let fits = |vessel: &&&Vessel| base.is_none_or(|base| base.fits(vessel.inner_diameter_mm));
            let smaller = vessels.iter().filter(|vessel| vessel.volume_cm3() < found.volume_cm3()).filter(fits);
            assert!(smaller.clone().all(|vessel| !wanting.goes_into(vessel)), "{found}");
        }
        found.map(ToString::to_string)
    }

    #[test]
    fn the_smallest_flask_with_room_enough_is_found() {
        // 64.2 + 2 × 6 = 76.2 mm is the inside of the flask; a hair more takes the next.
        assert_eq!(smallest(64.2, 80.0, Some("base-76")).as_deref(), Some("76×102"));
        assert_eq!(smallest(64.3, 80.0, Some("base-76")), None);
        assert!(smallest(64.3, 80.0, None).is_some_and(|size| size != "76×102"));
        assert_eq!(smallest(900.0, 80.0, None), None);
    }
}
