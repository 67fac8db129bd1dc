//! Betters where flasks stand by their wishes: hot and cold first, then the order of pouring, then even air.

use super::assign::assign;
use super::fit::Places;
use super::relax::Loose;
use super::room::{FINE_MM, Point, Task, apart};
use super::spots::spots;
use std::cmp::Ordering;

/// More air than this around a flask is no better, in mm.
const AIR_MM: f64 = 40.0;

/// What betters the air by less, in mm², is left alone.
const HARDLY: f64 = 4.0;

const MOST_PASSES: usize = 8;

/// Looks for better places in a grid of so many points a side.
const GRID: usize = 12;

/// So many exchanges of unlike flasks are tried by pushing.
const MOST_PUSHED: usize = 24;

/// How good all places are: more is better.
#[derive(Debug, Clone, Copy)]
pub(super) struct Worth {
    wishes: [i64; 2],
    air: f64,
}

impl Worth {
    pub fn compare(&self, other: &Self) -> Ordering {
        self.wishes.cmp(&other.wishes).then(self.air.total_cmp(&other.air))
    }
}

pub(super) fn worth(task: &Task, places: &Places) -> Worth {
    let mut sum = Worth { wishes: [0; 2], air: 0.0 };
    for (flask, place) in places.iter().enumerate() {
        if let Some(at) = place {
            let [warm, late] = task.worth(flask, *at);
            sum.wishes = [sum.wishes[0] + warm, sum.wishes[1] + late];
            sum.air += air(task, places, flask, *at);
        }
    }
    sum
}

/// How far a place is from having air enough: nought is enough, else less.
fn air(task: &Task, places: &Places, flask: usize, at: Point) -> f64 {
    let lacks = |room: f64| (AIR_MM - room).max(0.0).powi(2);
    let others = places.iter().enumerate().filter(|(other, _)| *other != flask);
    let others = others.filter_map(|(other, place)| Some(lacks(apart(at, (*place)?) - task.needs(flask, other))));
    -others.sum::<f64>() - lacks(task.spare_wall(task.radius[flask], at))
}

/// Betters places as far as single moves and exchanges do.
pub(super) fn better(task: &Task, places: &mut Places, steps: &mut u64) {
    let loose: Vec<usize> = (0..places.len()).filter(|flask| places[*flask].is_some() && task.held[*flask].is_none()).collect();
    for _ in 0..MOST_PASSES {
        let mut moved = exchange_alike(task, &loose, places);
        for flask in &loose {
            moved |= move_one(task, *flask, places);
        }
        moved |= exchange_unlike(task, &loose, places, steps);
        if !moved {
            break;
        }
    }
}

/// Those of one diameter, on their places as they are worth most. Whether that betters anything.
pub(super) fn exchange_alike(task: &Task, loose: &[usize], places: &mut Places) -> bool {
    let mut moved = false;
    let mut order = loose.to_vec();
    order.sort_by(|a, b| task.radius[*a].total_cmp(&task.radius[*b]).then(a.cmp(b)));
    for alike in order.chunk_by(|a, b| task.radius[*a].total_cmp(&task.radius[*b]).is_eq()) {
        let theirs: Vec<Point> = alike.iter().filter_map(|flask| places[*flask]).collect();
        let Some(taken) = assign(task, alike, &theirs) else { continue };
        let sum = |place: &dyn Fn(usize) -> usize| {
            let worths = alike.iter().enumerate().map(|(at, flask)| task.worth(*flask, theirs[place(at)]));
            worths.fold([0; 2], |sum, worth| [sum[0] + worth[0], sum[1] + worth[1]])
        };
        if sum(&|at| taken[at]) > sum(&|at| at) {
            alike.iter().zip(&taken).for_each(|(flask, place)| places[*flask] = Some(theirs[*place]));
            moved = true;
        }
    }
    moved
}

/// One to the best place it may have.
fn move_one(task: &Task, flask: usize, places: &mut Places) -> bool {
    let Some(now) = places[flask] else { return false };
    let radius = task.radius[flask];
    let wishes = task.worth(flask, now);
    let wanted = |at: Point| task.worth(flask, at) >= wishes;
    // Where it touches two others there is the least air: only a wish takes it there.
    let mut candidates = spots(task, places, flask, &|at| task.worth(flask, at) > wishes);
    let [width, depth] = task.floor.shape.sides_mm();
    let cell = |at: usize, side: f64| (at as f64 + 0.5) / GRID as f64 * side;
    let grid = (0..GRID * GRID).map(|at| task.clamp(radius, [cell(at % GRID, width), cell(at / GRID, depth)]));
    let near = [1.0, 4.0, 16.0].into_iter().flat_map(|step| {
        [[0.0, 1.0], [0.0, -1.0], [1.0, 0.0], [-1.0, 0.0]].map(|way| task.clamp(radius, [now[0] + step * way[0], now[1] + step * way[1]]))
    });
    candidates.extend(grid.chain(near).filter(|at| wanted(*at) && task.is_free(places, flask, *at)));
    let mut best = (wishes, air(task, places, flask, now), now);
    for at in candidates {
        let wishes = task.worth(flask, at);
        if wishes < best.0 {
            continue;
        }
        let air = air(task, places, flask, at);
        if wishes > best.0 || air > best.1 + HARDLY {
            best = (wishes, air, at);
        }
    }
    let moved = best.2 != now;
    places[flask] = Some(best.2);
    moved
}

/// Two of different diameters exchange places, those around them pushed aside where need be.
fn exchange_unlike(task: &Task, loose: &[usize], places: &mut Places, steps: &mut u64) -> bool {
    let mut wished: Vec<([i64; 2], usize, usize)> = Vec::new();
    for (at, &one) in loose.iter().enumerate() {
        for &other in &loose[at + 1..] {
            let (Some(here), Some(there)) = (places[one], places[other]) else { continue };
            let gain = |axis: usize| {
                let worth = |flask: usize, at: Point| task.worth(flask, at)[axis];
                worth(one, there) + worth(other, here) - worth(one, here) - worth(other, there)
            };
            let gain = [gain(0), gain(1)];
            if gain > [0; 2] && task.radius[one].total_cmp(&task.radius[other]).is_ne() {
                wished.push((gain, one, other));
            }
        }
    }
    wished.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cmp(&b.1)).then(a.2.cmp(&b.2)));
    let mut moved = false;
    for (_, one, other) in wished.into_iter().take(MOST_PUSHED) {
        if *steps == 0 {
            break;
        }
        if let Some(tried) = exchanged(task, one, other, places, steps)
            && worth(task, &tried).wishes > worth(task, places).wishes
        {
            *places = tried;
            moved = true;
        }
    }
    moved
}

fn exchanged(task: &Task, one: usize, other: usize, places: &Places, steps: &mut u64) -> Option<Places> {
    let mut tried = places.clone();
    tried.swap(one, other);
    let flasks: Vec<usize> = (0..tried.len()).filter(|flask| tried[*flask].is_some()).collect();
    let at = tried.iter().flatten().copied().collect();
    let mut pushed = Loose { flasks, at };
    if pushed.push(task, 60, steps) > FINE_MM {
        return None;
    }
    for (flask, at) in pushed.flasks.iter().zip(&pushed.at) {
        tried[*flask] = Some(*at);
    }
    Some(tried)
}
