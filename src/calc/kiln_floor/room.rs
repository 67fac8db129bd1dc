//! The floor as a search sees it: circles, where their middles may be, and what is wished of them.

use super::{Flask, Floor, Shape, zone_k};

/// Places of flasks are found to this, in mm: with what rounding to hundredths takes off it is within the slack.
pub(super) const FINE_MM: f64 = 0.004;

/// Middle of a flask, in mm.
pub(super) type Point = [f64; 2];

/// Flasks that may stand at all, numbered anew.
#[derive(Debug, Clone)]
pub(super) struct Task {
    pub floor: Floor,
    /// In mm.
    pub radius: Vec<f64>,
    pub held: Vec<Option<Point>>,
    /// How much it matters that it stands hot.
    pub warmth: Vec<i64>,
    /// How much it matters that it stands far from the door.
    pub late: Vec<i64>,
}

pub(super) fn apart(one: Point, other: Point) -> f64 {
    let (x, y) = (one[0] - other[0], one[1] - other[1]);
    (x * x + y * y).sqrt()
}

impl Task {
    pub fn new(floor: &Floor, flasks: &[Flask]) -> Self {
        let mut pours: Vec<u32> = flasks.iter().filter_map(|flask| flask.pour).collect();
        pours.sort_unstable();
        pours.dedup();
        let many = pours.len() as i64;
        // Earlier than the middle of the order is drawn to the door, later than it to the back.
        let late = |pour: u32| 2 * pours.partition_point(|other| *other < pour) as i64 + 1 - many;
        Self {
            floor: *floor,
            radius: flasks.iter().map(|flask| 0.5 * flask.diameter_mm).collect(),
            held: flasks.iter().map(|flask| flask.held_mm).collect(),
            warmth: flasks.iter().map(|flask| i64::from(flask.warmth)).collect(),
            late: flasks.iter().map(|flask| flask.pour.map_or(0, late)).collect(),
        }
    }

    /// The same flask over and over, with no wish.
    pub fn alike(floor: &Floor, radius: f64, many: usize) -> Self {
        let none = vec![0; many];
        Self { floor: *floor, radius: vec![radius; many], held: vec![None; many], warmth: none.clone(), late: none }
    }

    /// How far two middles must be apart, in mm.
    pub fn needs(&self, one: usize, other: usize) -> f64 {
        self.radius[one] + self.radius[other] + self.floor.gap_mm
    }

    /// From a flask there to the wall, less what must be left, in mm.
    pub fn spare_wall(&self, radius: f64, [x, y]: Point) -> f64 {
        let to_wall = match self.floor.shape {
            Shape::Rectangle { width_mm, depth_mm } => x.min(y).min(width_mm - x).min(depth_mm - y),
            Shape::Round { diameter_mm } => 0.5 * diameter_mm - apart([x, y], [0.5 * diameter_mm; 2]),
        };
        to_wall - radius - self.floor.wall_mm
    }

    /// The nearest place where a flask keeps off the walls.
    pub fn clamp(&self, radius: f64, at: Point) -> Point {
        let away = radius + self.floor.wall_mm;
        match self.floor.shape {
            Shape::Rectangle { width_mm, depth_mm } => {
                let side = |place: f64, side: f64| place.max(away).min((side - away).max(0.5 * side));
                [side(at[0], width_mm), side(at[1], depth_mm)]
            }
            Shape::Round { diameter_mm } => {
                let (middle, reach) = (0.5 * diameter_mm, (0.5 * diameter_mm - away).max(0.0));
                let out = apart(at, [middle; 2]);
                if out <= reach {
                    return at;
                }
                at.map(|place| middle + (place - middle) * reach / out)
            }
        }
    }

    /// May a flask stand there, beside those that stand?
    pub fn is_free(&self, places: &[Option<Point>], flask: usize, at: Point) -> bool {
        let radius = self.radius[flask];
        if self.spare_wall(radius, at) < -FINE_MM {
            return false;
        }
        let reach = radius + self.floor.gap_mm - FINE_MM;
        places.iter().enumerate().all(|(other, place)| {
            let Some(place) = place.filter(|_| other != flask) else { return true };
            let (x, y, needs) = (at[0] - place[0], at[1] - place[1], reach + self.radius[other]);
            x * x + y * y >= needs * needs || needs <= 0.0
        })
    }

    /// How much it is worth that a flask stands there: first that it is as hot as it should be, in whole K, then that it is as far from the
    /// door, in whole mm. More is better.
    pub fn worth(&self, flask: usize, at: Point) -> [i64; 2] {
        // Less than a kelvin matters to nobody, and leaves the second wish something to choose from.
        let level = zone_k(&self.floor, at).round() as i64;
        [self.warmth[flask] * level, self.late[flask] * at[1].round() as i64]
    }

    /// The middle of the floor, in mm.
    pub fn middle(&self) -> Point {
        self.floor.shape.sides_mm().map(|side| 0.5 * side)
    }
}

/// Chance with a fixed beginning.
pub(super) struct Dice(pub u64);

impl Dice {
    /// From nought to below 1.
    pub fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Anywhere on the floor, or on the square around it.
    pub fn place(&mut self, floor: &Floor) -> Point {
        floor.shape.sides_mm().map(|side| side * self.roll())
    }
}
