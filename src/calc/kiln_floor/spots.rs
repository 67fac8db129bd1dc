//! Places where a flask touches two other things: corners, walls and flasks, and pairs of flasks.

use super::Shape;
use super::room::{Point, Task};

/// All places where a flask may stand and touches two things, or one where there is nothing else to touch.
///
/// Where a flask can stand at all there is such a place: the places it may have are a closed area whose outline is made of walls and of circles
/// around flasks; it has a corner where two of them meet, or is one whole circle, of which four points are taken.
///
/// Only those are given that are wanted, which is asked before they are looked at.
pub(super) fn spots(task: &Task, places: &[Option<Point>], flask: usize, wanted: &dyn Fn(Point) -> bool) -> Vec<Point> {
    let mut found = Vec::new();
    let radius = task.radius[flask];
    let others = places.iter().enumerate().filter(|(other, _)| *other != flask);
    let circles: Vec<(Point, f64)> = others.filter_map(|(other, place)| Some(((*place)?, task.needs(flask, other)))).collect();
    let mut add = |at: Point| {
        if wanted(at) && task.is_free(places, flask, at) {
            found.push(at);
        }
    };
    walls(task, radius, &circles, &mut add);
    for (at, (middle, reach)) in circles.iter().enumerate() {
        for way in [[1.0, 0.0], [-1.0, 0.0], [0.0, 1.0], [0.0, -1.0]] {
            add([middle[0] + reach * way[0], middle[1] + reach * way[1]]);
        }
        for (other, further) in &circles[at + 1..] {
            meet((*middle, *reach), (*other, *further)).into_iter().flatten().for_each(&mut add);
        }
    }
    found
}

fn walls(task: &Task, radius: f64, circles: &[(Point, f64)], add: &mut dyn FnMut(Point)) {
    let away = radius + task.floor.wall_mm;
    match task.floor.shape {
        Shape::Rectangle { width_mm, depth_mm } => {
            let (across, deep) = ([away, width_mm - away], [away, depth_mm - away]);
            for x in across {
                deep.iter().for_each(|y| add([x, *y]));
                for ([at, other], reach) in circles {
                    let half = reach * reach - (x - at) * (x - at);
                    if half >= 0.0 {
                        [-1.0, 1.0].iter().for_each(|side| add([x, other + side * half.sqrt()]));
                    }
                }
            }
            for y in deep {
                for ([other, at], reach) in circles {
                    let half = reach * reach - (y - at) * (y - at);
                    if half >= 0.0 {
                        [-1.0, 1.0].iter().for_each(|side| add([other + side * half.sqrt(), y]));
                    }
                }
            }
        }
        Shape::Round { .. } => {
            let middle = task.middle();
            // Rounding may leave a little less than nought where a flask just fits.
            let reach = (middle[0] - away).max(0.0);
            add(middle);
            for way in [[1.0, 0.0], [-1.0, 0.0], [0.0, 1.0], [0.0, -1.0]] {
                add([middle[0] + reach * way[0], middle[1] + reach * way[1]]);
            }
            for circle in circles {
                meet((middle, reach), *circle).into_iter().flatten().for_each(&mut *add);
            }
        }
    }
}

/// The points where two circles meet.
fn meet((one, reach): (Point, f64), (other, further): (Point, f64)) -> Option<[Point; 2]> {
    let (x, y) = (other[0] - one[0], other[1] - one[1]);
    let square = x * x + y * y;
    if square <= 0.0 {
        return None;
    }
    let along = 0.5 * (1.0 + (reach * reach - further * further) / square);
    let aside = reach * reach / square - along * along;
    // Circles that just touch may miss each other by rounding.
    if aside < -1e-9 {
        return None;
    }
    let aside = aside.max(0.0).sqrt();
    let point = |side: f64| [one[0] + along * x - side * aside * y, one[1] + along * y + side * aside * x];
    Some([point(1.0), point(-1.0)])
}
