//! Where the flasks of a load stand: as many as find room, then by their wishes.

use super::better::{better, exchange_alike, worth};
use super::bound::{Bound, at_most};
use super::check::{Fault, check};
use super::error::{sound_floor, sound_load};
use super::fit::{Places, fit, held, in_rows, one_by_one};
use super::greedy::{Go, greedy};
use super::room::Task;
use super::spots::spots;
use super::{Column, Flask, Floor, FloorError, Place, Row, SLACK_MM, third, zone_k};
use std::cmp::Reverse;

/// Steps for finding room, and for bettering: each about one look at two flasks.
const STEPS: [u64; 2] = [800_000, 200_000];

/// So many ways to stand are bettered.
const MOST_WAYS: usize = 2;

/// A flask that stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// The flask.
    pub key: u32,
    /// Its middle, x and y in mm.
    pub at_mm: [f64; 2],
    /// How much hotter than the probe it is expected to be there, in K.
    pub zone_k: f64,
    /// The third of the floor from front to back.
    pub row: Row,
    /// The third of the floor from left to right.
    pub column: Column,
}

/// Why a flask does not stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Why {
    /// It is higher than the chamber.
    TooHigh {
        /// Its height, in mm.
        needs_mm: f64,
        /// The chamber's, in mm.
        has_mm: f64,
    },
    /// The floor is too narrow for it, even empty.
    TooWide {
        /// Its diameter and the clearance on both sides, in mm.
        needs_mm: f64,
        /// The floor's narrower side, in mm.
        has_mm: f64,
    },
    /// Beside the flasks that were put by hand there is proven to be no place for it.
    HeldInTheWay,
    /// No place was left for it; whether there is one, [`Arrangement::room`] says.
    NoRoom,
}

/// A flask that does not stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Left {
    /// The flask.
    pub key: u32,
    /// Why.
    pub why: Why,
}

/// Whether more could stand of those that are not ruled out by themselves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Room {
    /// All stand.
    Enough,
    /// Proven: no more can stand.
    Full(Bound),
    /// More were looked for and not found; that does not say there is no way.
    NotFound {
        /// No more than so many can stand.
        at_most: u32,
    },
}

/// A load as it stands in the kiln.
#[derive(Debug, Clone, PartialEq)]
pub struct Arrangement {
    /// What stands, in the order of the load. What was put by hand stands there, right or wrong.
    pub standing: Vec<Standing>,
    /// What does not.
    pub left: Vec<Left>,
    /// Whether more could stand.
    pub room: Room,
    /// What is wrong with what was put by hand.
    pub held_faults: Vec<Fault>,
    /// Pairs of which the first is poured before the second, but stands behind it: it is taken out over a hot flask.
    pub reached_over: Vec<[u32; 2]>,
}

/// Where the flasks of a load stand. As many as possible are found room for, by leaving out the widest (of equal ones the last poured); then
/// those that want it stand hot or cold, to a whole kelvin; then those poured first near the door; then all with even air.
///
/// # Errors
/// Where a number makes no sense, where two flasks have one key, and for more than [`super::MOST_FLASKS`].
pub fn arrange(floor: &Floor, flasks: &[Flask]) -> Result<Arrangement, FloorError> {
    sound_floor(floor)?;
    sound_load(flasks)?;
    let mut left: Vec<Left> = Vec::new();
    let low: Vec<Flask> = flasks.iter().copied().filter(|flask| rule_out(flask, high(floor, flask), &mut left)).collect();
    let by_hand: Vec<Flask> = low.iter().copied().filter(|flask| flask.held_mm.is_some()).collect();
    let held_faults = check(floor, &by_hand, &places_of(&by_hand))?;
    let kept: Vec<Flask> =
        low.into_iter().filter(|flask| flask.held_mm.is_some() || rule_out(flask, alone(floor, flask, &by_hand), &mut left)).collect();
    let task = Task::new(floor, &kept);
    let (most, bound) = if held_faults.is_empty() {
        at_most(floor, &task)
    } else {
        // Places that are wrong keep to no bound: only the others do.
        let loose: Vec<Flask> = kept.iter().copied().filter(|flask| flask.held_mm.is_none()).collect();
        let (most, bound) = at_most(floor, &Task::new(floor, &loose));
        (most + by_hand.len(), bound)
    };
    let places = stand(&task, most);
    let (standing, not) = given_out(floor, &kept, &places);
    let room = match bound {
        _ if not.is_empty() => Room::Enough,
        Some(bound) if standing.len() == most => Room::Full(bound),
        _ => Room::NotFound { at_most: most as u32 },
    };
    left.extend(not.into_iter().map(|key| Left { key, why: Why::NoRoom }));
    let reached_over = reached_over(&kept, &standing);
    Ok(Arrangement { standing, left, room, held_faults, reached_over })
}

/// Whether a flask stays in the load.
fn rule_out(flask: &Flask, why: Option<Why>, left: &mut Vec<Left>) -> bool {
    left.extend(why.map(|why| Left { key: flask.key, why }));
    why.is_none()
}

fn high(floor: &Floor, flask: &Flask) -> Option<Why> {
    (flask.height_mm > floor.height_mm).then_some(Why::TooHigh { needs_mm: flask.height_mm, has_mm: floor.height_mm })
}

/// Why a flask cannot stand, even if nothing but what is held were there.
fn alone(floor: &Floor, flask: &Flask, by_hand: &[Flask]) -> Option<Why> {
    let [width, depth] = floor.shape.sides_mm();
    let (needs_mm, has_mm) = (flask.diameter_mm + 2.0 * floor.wall_mm, width.min(depth));
    if needs_mm > has_mm + 2.0 * SLACK_MM {
        return Some(Why::TooWide { needs_mm, has_mm });
    }
    let mut both = by_hand.to_vec();
    both.push(*flask);
    // A little narrower: what passes the check by its slack is not ruled out.
    both[by_hand.len()].diameter_mm -= 2.0 * SLACK_MM;
    let task = Task::new(floor, &both);
    spots(&task, &held(&task), by_hand.len(), &|_| true).is_empty().then_some(Why::HeldInTheWay)
}

fn places_of(by_hand: &[Flask]) -> Vec<Place> {
    by_hand.iter().filter_map(|flask| Some(Place { key: flask.key, at_mm: flask.held_mm? })).collect()
}

/// As many as can be found room for, as good as can be found.
fn stand(task: &Task, most: usize) -> Places {
    let mut loose: Vec<usize> = (0..task.radius.len()).filter(|flask| task.held[*flask].is_none()).collect();
    // Those that are left out come last: the widest, of equal ones the last poured, of those the last named.
    loose.sort_by(|a, b| task.radius[*a].total_cmp(&task.radius[*b]).then(task.late[*a].cmp(&task.late[*b])).then(a.cmp(b)));
    let most = most.saturating_sub(task.radius.len() - loose.len()).min(loose.len());
    let [mut steps, mut to_better] = STEPS;
    let (chosen, found) = choose(task, &loose, most, &mut steps);
    let mut ways = ways(task, chosen);
    ways.push(found);
    for places in &mut ways {
        exchange_alike(task, chosen, places);
    }
    // The most promising first; those far behind are not worth the time.
    ways.sort_by(|a, b| worth(task, b).compare(&worth(task, a)));
    ways.truncate(MOST_WAYS);
    let mut best: Option<Places> = None;
    for mut places in ways {
        better(task, &mut places, &mut to_better);
        if best.as_ref().is_none_or(|best| worth(task, &places).compare(&worth(task, best)).is_gt()) {
            best = Some(places);
        }
    }
    best.unwrap_or_else(|| held(task))
}

/// The most of the flasks, in this order, that room is found for.
fn choose<'a>(task: &Task, loose: &'a [usize], most: usize, steps: &mut u64) -> (&'a [usize], Places) {
    if let Some(places) = fit(task, &loose[..most], &mut (*steps / 2)) {
        return (&loose[..most], places);
    }
    let mut chosen = (&loose[..0], held(task));
    for many in (1..most).rev() {
        let (places, all) = one_by_one(task, &loose[..many]);
        if all {
            chosen = (&loose[..many], places);
            break;
        }
    }
    *steps /= 2;
    for many in chosen.0.len() + 1..most {
        let Some(places) = fit(task, &loose[..many], steps) else { break };
        chosen = (&loose[..many], places);
    }
    chosen
}

/// Other ways for the same flasks to stand: each where it is worth most, those first that want it most; and in rows.
fn ways(task: &Task, chosen: &[usize]) -> Vec<Places> {
    let mut ways = in_rows(task, chosen);
    let mut order = chosen.to_vec();
    order.sort_by_key(|flask| (Reverse(task.warmth[*flask].abs()), Reverse(task.late[*flask].abs()), *flask));
    let mut places = held(task);
    if greedy(task, &order, Go::Wish, &mut places) {
        ways.push(places);
    }
    ways
}

/// A place as it is written down.
pub(super) fn hundredths(at: [f64; 2]) -> [f64; 2] {
    at.map(|length| (length * 100.0).round() / 100.0)
}

/// What stands, checked anew, and the keys of what does not.
fn given_out(floor: &Floor, kept: &[Flask], places: &Places) -> (Vec<Standing>, Vec<u32>) {
    let mut not: Vec<u32> = kept.iter().zip(places).filter(|(_, place)| place.is_none()).map(|(flask, _)| flask.key).collect();
    let stand = kept.iter().zip(places).filter_map(|(flask, place)| Some((flask, (*place)?)));
    let stand = stand.map(|(flask, at)| Place { key: flask.key, at_mm: flask.held_mm.unwrap_or(hundredths(at)) });
    let mut stand: Vec<Place> = stand.collect();
    let is_loose = |key: &u32| kept.iter().any(|flask| flask.key == *key && flask.held_mm.is_none());
    // What a search got wrong would be left out rather than given out.
    while let Some(key) = check(floor, kept, &stand).unwrap_or_default().iter().flat_map(Fault::keys).find(is_loose) {
        stand.retain(|place| place.key != key);
        not.push(key);
    }
    let told = |place: Place| {
        let (row, column) = third(floor, place.at_mm);
        Standing { key: place.key, at_mm: place.at_mm, zone_k: zone_k(floor, place.at_mm), row, column }
    };
    (stand.into_iter().map(told).collect(), not)
}

/// Pairs where one poured earlier stands straight behind one poured later, seen from the front.
fn reached_over(kept: &[Flask], standing: &[Standing]) -> Vec<[u32; 2]> {
    let of = |stand: &Standing| kept.iter().find(|flask| flask.key == stand.key);
    let mut found = Vec::new();
    for one in standing {
        for other in standing {
            let (Some(first), Some(second)) = (of(one), of(other)) else { continue };
            let (Some(earlier), Some(later)) = (first.pour, second.pour) else { continue };
            let in_line = (one.at_mm[0] - other.at_mm[0]).abs() < 0.5 * (first.diameter_mm + second.diameter_mm);
            if earlier < later && other.at_mm[1] < one.at_mm[1] && in_line {
                found.push([one.key, other.key]);
            }
        }
    }
    found
}
