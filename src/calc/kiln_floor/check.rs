//! Checks where flasks stand by nothing but the floor's own words.

use super::error::{sound_floor, sound_load};
use super::{Flask, Floor, FloorError, Place, SLACK_MM, Shape};

/// What is wrong with where flasks stand. All lengths in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fault {
    /// No flask is called so.
    Unknown {
        /// What was called.
        key: u32,
    },
    /// A flask stands in two places.
    Twice {
        /// The flask.
        key: u32,
    },
    /// A place is no number.
    Number {
        /// The flask.
        key: u32,
    },
    /// Two flasks stand in each other.
    Overlap {
        /// The two, the one that was placed first first.
        keys: [u32; 2],
        /// How far.
        by_mm: f64,
    },
    /// There is too little air between two flasks.
    TooNear {
        /// The two, the one that was placed first first.
        keys: [u32; 2],
        /// What is between them.
        has_mm: f64,
        /// What must be.
        needs_mm: f64,
    },
    /// A flask stands through a wall.
    Outside {
        /// The flask.
        key: u32,
        /// How far.
        by_mm: f64,
    },
    /// A flask stands too near to a wall or its elements.
    NearWall {
        /// The flask.
        key: u32,
        /// What is between them.
        has_mm: f64,
        /// What must be.
        needs_mm: f64,
    },
    /// A flask is higher than the chamber.
    TooHigh {
        /// The flask.
        key: u32,
        /// Its height.
        needs_mm: f64,
        /// The chamber's.
        has_mm: f64,
    },
}

impl Fault {
    /// The flasks it is about: one, or the two of a pair.
    #[must_use]
    pub fn keys(&self) -> Vec<u32> {
        match self {
            Self::Overlap { keys, .. } | Self::TooNear { keys, .. } => keys.to_vec(),
            Self::Unknown { key }
            | Self::Twice { key }
            | Self::Number { key }
            | Self::Outside { key, .. }
            | Self::NearWall { key, .. }
            | Self::TooHigh { key, .. } => vec![*key],
        }
    }
}

/// All that is wrong with where flasks stand, as when they are moved by hand: first flask by flask, then by pairs. Flasks without a place do not
/// count. What is short by no more than [`SLACK_MM`] is not short.
///
/// # Errors
/// Where a number of the floor or of a flask makes no sense; a place that is no number is a fault.
pub fn check(floor: &Floor, flasks: &[Flask], places: &[Place]) -> Result<Vec<Fault>, FloorError> {
    sound_floor(floor)?;
    sound_load(flasks)?;
    let mut faults = Vec::new();
    let mut known: Vec<(Flask, [f64; 2])> = Vec::new();
    for place in places {
        let key = place.key;
        let Some(flask) = flasks.iter().find(|flask| flask.key == key) else {
            faults.push(Fault::Unknown { key });
            continue;
        };
        if known.iter().any(|(other, _)| other.key == key) {
            faults.push(Fault::Twice { key });
        } else if !place.at_mm.iter().all(|length| length.is_finite()) {
            faults.push(Fault::Number { key });
        } else {
            faults.extend(alone(floor, flask, place.at_mm));
            known.push((*flask, place.at_mm));
        }
    }
    for (at, one) in known.iter().enumerate() {
        faults.extend(known[at + 1..].iter().filter_map(|other| between(floor, one, other)));
    }
    Ok(faults)
}

/// What is wrong with a flask by itself.
fn alone(floor: &Floor, flask: &Flask, [x, y]: [f64; 2]) -> impl Iterator<Item = Fault> {
    let key = flask.key;
    let to_wall = match floor.shape {
        Shape::Rectangle { width_mm, depth_mm } => x.min(y).min(width_mm - x).min(depth_mm - y),
        Shape::Round { diameter_mm } => 0.5 * diameter_mm - (x - 0.5 * diameter_mm).hypot(y - 0.5 * diameter_mm),
    };
    let has_mm = to_wall - 0.5 * flask.diameter_mm;
    let wall = if has_mm < -SLACK_MM {
        Some(Fault::Outside { key, by_mm: -has_mm })
    } else if has_mm < floor.wall_mm - SLACK_MM {
        Some(Fault::NearWall { key, has_mm, needs_mm: floor.wall_mm })
    } else {
        None
    };
    let high = flask.height_mm > floor.height_mm;
    let high = high.then_some(Fault::TooHigh { key, needs_mm: flask.height_mm, has_mm: floor.height_mm });
    wall.into_iter().chain(high)
}

fn between(floor: &Floor, one: &(Flask, [f64; 2]), other: &(Flask, [f64; 2])) -> Option<Fault> {
    let keys = [one.0.key, other.0.key];
    let apart = (one.1[0] - other.1[0]).hypot(one.1[1] - other.1[1]);
    let has_mm = apart - 0.5 * (one.0.diameter_mm + other.0.diameter_mm);
    if has_mm < -SLACK_MM {
        Some(Fault::Overlap { keys, by_mm: -has_mm })
    } else if has_mm < floor.gap_mm - SLACK_MM {
        Some(Fault::TooNear { keys, has_mm, needs_mm: floor.gap_mm })
    } else {
        None
    }
}
