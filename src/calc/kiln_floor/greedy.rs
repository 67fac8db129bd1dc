//! One flask after the other, each where it goes best beside those that stand.

use super::room::{Point, Task, apart};
use super::spots::spots;

/// Which of the places a flask goes to that it may have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Go {
    /// As near the front as may be, then as far left.
    Front,
    /// As near the left as may be, then as near the front.
    Left,
    /// Into the narrowest corner: where a third thing is nearest beside the two it touches.
    Corner,
    /// Where it is worth most, then into the narrowest corner.
    Wish,
}

/// Flasks in this order, as far as they find a place; those that are held stand already. `None` for what found none.
pub(super) fn greedy(task: &Task, order: &[usize], go: Go, places: &mut [Option<Point>]) -> bool {
    let mut all = true;
    for &flask in order {
        let best = spots(task, places, flask, &|_| true).into_iter().map(|at| (rank(task, places, flask, at, go), at));
        let best = best.min_by(|(a, _), (b, _)| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])).then(a[2].total_cmp(&b[2])));
        all &= best.is_some();
        places[flask] = best.map(|(_, at)| at);
    }
    all
}

/// Less is better.
fn rank(task: &Task, places: &[Option<Point>], flask: usize, at: Point, go: Go) -> [f64; 3] {
    // Places that differ by a hair are level.
    let level = |length: f64| (length * 100.0).round();
    match go {
        Go::Front => [level(at[1]), level(at[0]), 0.0],
        Go::Left => [level(at[0]), level(at[1]), 0.0],
        Go::Corner => [level(third(task, places, flask, at)), level(at[1]), level(at[0])],
        Go::Wish => {
            let [warm, late] = task.worth(flask, at);
            [-(warm as f64), -(late as f64), level(third(task, places, flask, at))]
        }
    }
}

/// How far the third of the things around a place is away, in mm.
fn third(task: &Task, places: &[Option<Point>], flask: usize, at: Point) -> f64 {
    let mut nearest = [f64::INFINITY; 3];
    let mut add = |room: f64| {
        let mut room = room;
        for kept in &mut nearest {
            if room < *kept {
                std::mem::swap(kept, &mut room);
            }
        }
    };
    match task.floor.shape {
        super::Shape::Rectangle { width_mm, depth_mm } => {
            let away = task.radius[flask] + task.floor.wall_mm;
            [at[0], at[1], width_mm - at[0], depth_mm - at[1]].into_iter().for_each(|room| add(room - away));
        }
        super::Shape::Round { .. } => add(task.spare_wall(task.radius[flask], at)),
    }
    for (other, place) in places.iter().enumerate() {
        if let Some(place) = place.filter(|_| other != flask) {
            add(apart(at, place) - task.needs(flask, other));
        }
    }
    if nearest[2].is_finite() { nearest[2] } else { f64::MAX }
}
