//! How many flasks of one size fit on a floor.

use super::bound::closest;
use super::check::check;
use super::error::{sound_diameter, sound_floor};
use super::fit::{by_pushing, held};
use super::lattice::lattices;
use super::room::{Point, Task};
use super::search::hundredths;
use super::{Flask, Floor, FloorError, Place, SLACK_MM, Shape, best_known_round, best_known_square};

/// No more than so many are counted.
const MOST_COUNTED: usize = 1000;

/// Beyond so many only rows are counted.
const MOST_PUSHED: usize = 60;

/// Steps for each flask more.
const STEPS: u64 = 3_000_000;

/// How many flasks of one size fit.
#[derive(Debug, Clone, PartialEq)]
pub struct Most {
    /// So many were found to fit.
    pub count: u32,
    /// Where they stand, in mm.
    pub places_mm: Vec<[f64; 2]>,
    /// No more can fit.
    pub at_most: u32,
    /// What the literature's best for a square or a circle comes to, up to 20; nothing for other floors and for more.
    pub known: Option<u32>,
}

impl Most {
    /// Is it proven here that no more fit?
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.count == self.at_most
    }

    /// Is it what the literature knows as the most?
    #[must_use]
    pub fn is_known_best(&self) -> bool {
        self.known == Some(self.count)
    }
}

/// How many flasks of this outer diameter fit on a floor, whatever their height.
///
/// # Errors
/// Where a number makes no sense, and where more than a thousand would fit.
pub fn most(diameter_mm: f64, floor: &Floor) -> Result<Most, FloorError> {
    sound_floor(floor)?;
    sound_diameter(None, diameter_mm)?;
    let radius = 0.5 * diameter_mm;
    let at_most = closest(floor, radius);
    if at_most > MOST_COUNTED as f64 {
        return Err(FloorError::TooMany { many: at_most as usize, most: MOST_COUNTED });
    }
    let at_most = at_most as usize;
    let known = known(radius, floor);
    let enough = known.map_or(at_most, |known| at_most.min(known));
    let rows = lattices(&Task::alike(floor, radius, 0), radius).into_iter().max_by_key(Vec::len);
    let mut best = sound(rows.unwrap_or_default(), diameter_mm, floor);
    while best.len() < enough && best.len() < MOST_PUSHED {
        let Some(more) = pushed(radius, best.len() + 1, floor) else { break };
        let more = sound(more, diameter_mm, floor);
        if more.len() <= best.len() {
            break;
        }
        best = more;
    }
    Ok(Most { count: best.len() as u32, places_mm: best, at_most: at_most as u32, known: known.map(|known| known as u32) })
}

fn pushed(radius: f64, many: usize, floor: &Floor) -> Option<Vec<Point>> {
    let task = Task::alike(floor, radius, many);
    let flasks: Vec<usize> = (0..many).collect();
    let mut steps = STEPS;
    Some(by_pushing(&task, &flasks, &held(&task), &mut steps)?.into_iter().flatten().collect())
}

/// Those places that pass the check, in hundredths of a mm.
fn sound(places: Vec<Point>, diameter_mm: f64, floor: &Floor) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    for at in places.into_iter().map(hundredths) {
        kept.push(at);
        // The check takes a load at a time: a flask and those around it.
        let near = kept.iter().filter(|other| super::room::apart(**other, at) < diameter_mm + floor.gap_mm);
        let near: Vec<Place> = (0..).zip(near).map(|(key, at)| Place { key, at_mm: *at }).collect();
        let flask = |place: &Place| Flask { key: place.key, diameter_mm, height_mm: floor.height_mm, warmth: 0, pour: None, held_mm: None };
        let flasks: Vec<Flask> = near.iter().map(flask).collect();
        if check(floor, &flasks, &near).is_ok_and(|faults| faults.is_empty()) {
            continue;
        }
        kept.pop();
    }
    kept
}

/// What the best of the literature comes to on this floor.
fn known(radius: f64, floor: &Floor) -> Option<usize> {
    // With half the gap around each, flasks are circles that touch each other and a wall that much farther out.
    let more = floor.gap_mm - 2.0 * floor.wall_mm;
    let wide = radius + 0.5 * floor.gap_mm;
    let (side, best): (f64, fn(usize) -> Option<f64>) = match floor.shape {
        Shape::Rectangle { width_mm, depth_mm } if (width_mm - depth_mm).abs() <= SLACK_MM => (width_mm + more, best_known_square),
        Shape::Rectangle { .. } => return None,
        Shape::Round { diameter_mm } => (0.5 * (diameter_mm + more), best_known_round),
    };
    let fits = |many: usize| best(many).is_some_and(|radius| radius * side >= wide - 0.5 * SLACK_MM);
    let many = (1..=20).rev().find(|many| fits(*many)).unwrap_or(0);
    (many < 20).then_some(many)
}
