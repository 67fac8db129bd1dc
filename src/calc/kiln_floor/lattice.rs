//! Flasks in even rows, spread over the floor.

use super::Shape;
use super::room::{FINE_MM, Point, Task, apart};

/// The ways to stand flasks of one radius in rows: straight ones, staggered ones along and across, none given that is not sound by itself.
pub(super) fn lattices(task: &Task, radius: f64) -> Vec<Vec<Point>> {
    let needs = 2.0 * radius + task.floor.gap_mm;
    let away = radius + task.floor.wall_mm;
    match task.floor.shape {
        Shape::Rectangle { width_mm, depth_mm } => {
            let (width, depth) = (width_mm - 2.0 * away, depth_mm - 2.0 * away);
            if width < -FINE_MM || depth < -FINE_MM {
                return Vec::new();
            }
            let (width, depth) = (width.max(0.0), depth.max(0.0));
            let mut found = vec![straight(width, depth, needs)];
            for equal in [true, false] {
                found.extend(staggered(width, depth, needs, equal));
                let turned = staggered(depth, width, needs, equal);
                found.extend(turned.map(|places| places.into_iter().map(|[y, x]| [x, y]).collect()));
            }
            let inside = |places: Vec<Point>| places.into_iter().map(|[x, y]| [x + away, y + away]).collect();
            found.into_iter().map(inside).collect()
        }
        Shape::Round { diameter_mm } => round(0.5 * diameter_mm, 0.5 * diameter_mm - away, needs),
    }
}

/// So many points along a length, evenly from end to end; one stands in the middle.
fn along(length: f64, many: usize) -> impl Fn(usize) -> f64 {
    move |at| if many > 1 { length * at as f64 / (many - 1) as f64 } else { 0.5 * length }
}

/// So many go along a length.
fn count(length: f64, needs: f64) -> usize {
    ((length + FINE_MM) / needs) as usize + 1
}

fn straight(width: f64, depth: f64, needs: f64) -> Vec<Point> {
    let (across, deep) = (count(width, needs), count(depth, needs));
    let (x, y) = (along(width, across), along(depth, deep));
    (0..deep).flat_map(|row| (0..across).map(move |column| (column, row))).map(|(column, row)| [x(column), y(row)]).collect()
}

/// Every other row is moved by half a step; it has as many flasks, or one fewer.
fn staggered(width: f64, depth: f64, needs: f64, equal: bool) -> Option<Vec<Point>> {
    let (many, step) = if equal {
        // A row and half a step more.
        let many = ((width + FINE_MM) / needs + 0.5) as usize;
        (many, width / (many as f64 - 0.5))
    } else {
        let many = count(width, needs);
        (many, width / (many as f64 - 1.0))
    };
    if many == 0 || !step.is_finite() || (!equal && many < 2) {
        return None;
    }
    // Rows as near as flasks in the gaps of the row before allow, and the row after that.
    let pitch = (needs * needs - 0.25 * step * step).max(0.0).sqrt().max(0.5 * needs);
    let rows = count(depth, pitch);
    let y = along(depth, rows);
    let mut places = Vec::new();
    for row in 0..rows {
        let (fewer, moved) = match (row % 2, equal) {
            (0, _) => (0, 0.0),
            (_, true) => (0, 0.5),
            (_, false) => (1, 0.5),
        };
        places.extend((0..many - fewer).map(|at| [(at as f64 + moved) * step, y(row)]));
    }
    Some(places)
}

/// A close lattice around a flask, around the middle of two, and around the middle of three.
fn round(middle: f64, reach: f64, needs: f64) -> Vec<Vec<Point>> {
    if reach < -FINE_MM {
        return Vec::new();
    }
    let pitch = 0.75_f64.sqrt() * needs;
    let (across, deep) = ((reach / needs) as i64 + 2, (reach / pitch) as i64 + 2);
    let mut found = Vec::new();
    for shift in [[0.0, 0.0], [0.5 * needs, 0.0], [0.5 * needs, pitch / 3.0]] {
        let mut places = Vec::new();
        for row in -deep..=deep {
            for column in -across..=across {
                let half = if row % 2 == 0 { 0.0 } else { 0.5 };
                let place = [middle + (column as f64 + half) * needs - shift[0], middle + row as f64 * pitch - shift[1]];
                if apart(place, [middle; 2]) <= reach + FINE_MM {
                    places.push(place);
                }
            }
        }
        found.push(places);
    }
    found
}
