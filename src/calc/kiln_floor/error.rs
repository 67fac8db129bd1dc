//! Why nothing can be said of a floor.

use super::{Flask, Floor, LARGEST_MM, LARGEST_WARMTH, MOST_FLASKS};
use std::fmt;

/// Why nothing was worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FloorError {
    /// A number is no number, or outside what makes sense.
    OutOfRange {
        /// Which number, with its unit.
        what: &'static str,
        /// The flask it belongs to, where it belongs to one.
        key: Option<u32>,
        /// What it was.
        value: f64,
        /// The least that is taken.
        least: f64,
        /// The most that is taken.
        most: f64,
    },
    /// Two flasks are called the same.
    SameKey {
        /// What they are called.
        key: u32,
    },
    /// There are too many.
    TooMany {
        /// So many there are, or would be.
        many: usize,
        /// So many are taken.
        most: usize,
    },
}

impl fmt::Display for FloorError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange { what, key: Some(key), value, least, most } => {
                write!(f, "{what} of flask {key} is {value}; it must be from {least} to {most}.")
            }
            Self::OutOfRange { what, key: None, value, least, most } => write!(f, "{what} is {value}; it must be from {least} to {most}."),
            Self::SameKey { key } => write!(f, "Two flasks are called {key}."),
            Self::TooMany { many, most } => write!(f, "{many} flasks; at most {most} are taken."),
        }
    }
}

impl std::error::Error for FloorError {}

/// No length that must be one may be smaller, in mm.
const SMALLEST_MM: f64 = 1.0;

/// Zones differ by no more, in K.
const WIDEST_K: f64 = 1000.0;

fn within(what: &'static str, key: Option<u32>, value: f64, least: f64, most: f64) -> Result<(), FloorError> {
    if (least..=most).contains(&value) { Ok(()) } else { Err(FloorError::OutOfRange { what, key, value, least, most }) }
}

/// That a floor's numbers make sense.
pub(super) fn sound_floor(floor: &Floor) -> Result<(), FloorError> {
    let [width, depth] = floor.shape.sides_mm();
    within("Width of the floor in mm", None, width, SMALLEST_MM, LARGEST_MM)?;
    within("Depth of the floor in mm", None, depth, SMALLEST_MM, LARGEST_MM)?;
    within("Height of the chamber in mm", None, floor.height_mm, SMALLEST_MM, LARGEST_MM)?;
    within("Clearance to the walls in mm", None, floor.wall_mm, 0.0, LARGEST_MM)?;
    within("Gap between flasks in mm", None, floor.gap_mm, 0.0, LARGEST_MM)?;
    within("The hottest zone's difference in K", None, floor.zones.hot_k, 0.0, WIDEST_K)?;
    within("The coldest zone's difference in K", None, floor.zones.cold_k, 0.0, WIDEST_K)
}

/// That a flask's diameter makes sense.
pub(super) fn sound_diameter(key: Option<u32>, diameter_mm: f64) -> Result<(), FloorError> {
    within("Diameter in mm", key, diameter_mm, SMALLEST_MM, LARGEST_MM)
}

/// That the numbers of a load make sense, but for where its flasks were put.
pub(super) fn sound_load(flasks: &[Flask]) -> Result<(), FloorError> {
    if flasks.len() > MOST_FLASKS {
        return Err(FloorError::TooMany { many: flasks.len(), most: MOST_FLASKS });
    }
    for (at, flask) in flasks.iter().enumerate() {
        let key = Some(flask.key);
        sound_diameter(key, flask.diameter_mm)?;
        within("Height in mm", key, flask.height_mm, SMALLEST_MM, LARGEST_MM)?;
        within("Importance", key, f64::from(flask.warmth), f64::from(-LARGEST_WARMTH), f64::from(LARGEST_WARMTH))?;
        for place in flask.held_mm.into_iter().flatten() {
            within("Place by hand in mm", key, place, -LARGEST_MM, 2.0 * LARGEST_MM)?;
        }
        if flasks[..at].iter().any(|other| other.key == flask.key) {
            return Err(FloorError::SameKey { key: flask.key });
        }
    }
    Ok(())
}
