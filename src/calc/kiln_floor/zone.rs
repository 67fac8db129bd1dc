//! Where in the kiln it is hotter than at the probe, and the thirds of the floor.

use super::{Floor, Shape};

/// Where a kiln is hottest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Hottest {
    /// At the back.
    Back,
    /// At the door.
    Front,
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// In the middle, and coldest at the farthest edge.
    Middle,
    /// It is the same everywhere, or nobody knows.
    #[default]
    Even,
}

/// How uneven a kiln is.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Zones {
    /// Where it is hottest.
    pub hottest: Hottest,
    /// How much hotter than the probe it is there, in K.
    pub hot_k: f64,
    /// How much colder than the probe it is at the coldest place, in K.
    pub cold_k: f64,
}

/// From front to back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Row {
    /// The third at the door.
    Front,
    /// The third between.
    Middle,
    /// The third at the back.
    Back,
}

/// From left to right.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Column {
    /// The left third.
    Left,
    /// The third between.
    Middle,
    /// The right third.
    Right,
}

/// How much hotter than the probe a place is expected to be, in K; less than nought is colder.
///
/// A rule of thumb: the difference falls in a straight line from `hot_k` at the hottest side to `-cold_k` at the side opposite, or from the middle
/// outwards, and the probe is taken to be where the line goes through nought, wherever it really is (common practice, no source). A log of a
/// second probe is better.
#[must_use]
pub fn zone_k(floor: &Floor, at_mm: [f64; 2]) -> f64 {
    let zones = floor.zones;
    let [width, depth] = floor.shape.sides_mm();
    let [x, y] = [at_mm[0] / width, at_mm[1] / depth];
    let away = match zones.hottest {
        Hottest::Even => return 0.0,
        Hottest::Back => 1.0 - y,
        Hottest::Front => y,
        Hottest::Left => x,
        Hottest::Right => 1.0 - x,
        Hottest::Middle => {
            let farthest = match floor.shape {
                Shape::Rectangle { .. } => 0.5 * width.hypot(depth),
                Shape::Round { diameter_mm } => 0.5 * diameter_mm,
            };
            (at_mm[0] - 0.5 * width).hypot(at_mm[1] - 0.5 * depth) / farthest
        }
    };
    zones.hot_k - (zones.hot_k + zones.cold_k) * away.clamp(0.0, 1.0)
}

/// The third of the floor a place is in, each way; of the square around it where the floor is round. What is on a line between two thirds is in the
/// middle.
#[must_use]
pub fn third(floor: &Floor, at_mm: [f64; 2]) -> (Row, Column) {
    let [width, depth] = floor.shape.sides_mm();
    let row = match 3.0 * at_mm[1] / depth {
        ..1.0 => Row::Front,
        y if y > 2.0 => Row::Back,
        _ => Row::Middle,
    };
    let column = match 3.0 * at_mm[0] / width {
        ..1.0 => Column::Left,
        x if x > 2.0 => Column::Right,
        _ => Column::Middle,
    };
    (row, column)
}
