//! How many flasks can stand on a floor at most, whatever is tried.

use super::room::Task;
use super::{Floor, SLACK_MM, Shape};
use std::f64::consts::PI;

/// Why no more flasks can stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bound {
    /// The flasks with half the gap around each cover more than the floor.
    Area {
        /// What all that were asked for cover, in mm².
        needs_mm2: f64,
        /// What there is, in mm².
        has_mm2: f64,
    },
    /// Of flasks at least so wide there is room for no more, even standing as close as round things can.
    Close {
        /// The narrowest of them, in mm.
        diameter_mm: f64,
        /// So many were asked for.
        wanted: u32,
        /// So many can stand at most.
        most: u32,
    },
}

/// No more flasks of this radius can stand. Of points in a convex area that are no nearer to each other than `d` there are at most
/// `2/√3 · area/d² + half the outline/d + 1` (Oler's inequality, from memory). On a floor that is `b` deep for their middles, with `b` below `d`,
/// each stands at least `√(d² - b²)` to the side of the one before.
pub(super) fn closest(floor: &Floor, radius: f64) -> f64 {
    let apart = 2.0 * radius + floor.gap_mm - SLACK_MM;
    let away = 2.0 * (radius + floor.wall_mm - SLACK_MM);
    let oler = |area: f64, outline: f64| 2.0 / 3.0_f64.sqrt() * area / (apart * apart) + 0.5 * outline / apart + 1.0;
    let most = match floor.shape {
        Shape::Rectangle { width_mm, depth_mm } => {
            let (width, depth) = (width_mm - away, depth_mm - away);
            if width < 0.0 || depth < 0.0 {
                return 0.0;
            }
            let row = |long: f64, narrow: f64| {
                let aside = (apart * apart - narrow * narrow).max(0.0).sqrt();
                if aside > 0.0 { long / aside + 1.0 } else { f64::INFINITY }
            };
            oler(width * depth, 2.0 * (width + depth)).min(row(width, depth)).min(row(depth, width))
        }
        Shape::Round { diameter_mm } => {
            let reach = 0.5 * (diameter_mm - away);
            if reach < 0.0 {
                return 0.0;
            }
            if 2.0 * reach < apart { 1.0 } else { oler(PI * reach * reach, 2.0 * PI * reach) }
        }
    };
    (most + 1e-9).floor()
}

/// The floor that flasks with half the gap around each may cover, in mm².
fn has_area(floor: &Floor) -> f64 {
    let more = floor.gap_mm - 2.0 * floor.wall_mm + 2.0 * SLACK_MM;
    match floor.shape {
        Shape::Rectangle { width_mm, depth_mm } => (width_mm + more).max(0.0) * (depth_mm + more).max(0.0),
        Shape::Round { diameter_mm } => PI / 4.0 * (diameter_mm + more).max(0.0).powi(2),
    }
}

/// How many of the flasks can stand at most, and by what; all of them, and nothing, where no bound says otherwise.
pub(super) fn at_most(floor: &Floor, task: &Task) -> (usize, Option<Bound>) {
    let mut radii = task.radius.clone();
    radii.sort_by(f64::total_cmp);
    let all = radii.len();
    let has_mm2 = has_area(floor);
    let cover = |radius: f64| PI * (radius + 0.5 * floor.gap_mm - 0.5 * SLACK_MM).powi(2);
    let mut covered = 0.0;
    let stand = radii.iter().take_while(|radius| {
        covered += cover(**radius);
        covered <= has_mm2
    });
    let by_area = stand.count();
    let mut best = (all, None);
    if by_area < all {
        let needs_mm2 = radii.iter().map(|radius| cover(*radius)).sum();
        best = (by_area, Some(Bound::Area { needs_mm2, has_mm2 }));
    }
    for (narrower, radius) in radii.iter().enumerate() {
        let wanted = all - narrower;
        let most = closest(floor, *radius).min(wanted as f64) as usize;
        if narrower + most < best.0 {
            best = (narrower + most, Some(Bound::Close { diameter_mm: 2.0 * radius, wanted: wanted as u32, most: most as u32 }));
        }
    }
    best
}
