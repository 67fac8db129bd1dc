//! Pieces and flasks of a studio, and numbers of a fixed beginning.

use pourbook::calc::arrange::{Limits, Task, Wanted};
use pourbook::calc::solid::Point;
use pourbook::calc::stand::{Form, Trunk};

/// Random numbers of a fixed beginning, from 0 to 1.
pub struct Dice(pub u64);

impl Dice {
    pub fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.roll()
    }
}

pub const TRUNK: Trunk = Trunk { diameter_mm: 8.0, length_mm: 60.0, dome_mm: 15.0 };

/// A usual flask, 89 by 102.
pub const LIMITS: Limits = Limits {
    inner_diameter_mm: 89.0,
    height_mm: 102.0,
    wall_mm: 6.0,
    between_mm: 2.0,
    feeds_mm: Some(0.5),
    trunk_mm: 2.0,
    top_mm: 12.0,
    bottom_mm: 10.0,
};

pub fn piece(form: Form, weight_g: f64, thinnest_mm: f64) -> Wanted {
    Wanted { form, weight_g, thinnest_mm: Some(thinnest_mm), feed_diameter_mm: 2.5, feed_length_mm: 7.0, angle_deg: 45.0, held: None }
}

pub fn straight(sides: [f64; 3]) -> Wanted {
    Wanted { angle_deg: 90.0, ..piece(Form::Sides(sides), 3.0, 1.0) }
}

/// Points all over an egg of these sides, from its foot at the feed on, evenly by the golden angle.
pub fn egg([along, across, deep]: [f64; 3], corners: usize) -> Form {
    let point = |at: usize| -> Point {
        let z = 1.0 - (2.0 * at as f64 + 1.0) / corners as f64;
        let (sin, cos) = (at as f64 * std::f64::consts::PI * (3.0 - 5.0_f64.sqrt())).sin_cos();
        let flat = (1.0 - z * z).sqrt();
        [0.5 * along * (1.0 - z), 0.5 * across * flat * cos, 0.5 * deep * flat * sin]
    };
    Form::Hull((0..corners).map(point).collect())
}

/// A ring that stands on its feed: two circles of corners.
pub fn ring(outer: f64, wide: f64) -> Form {
    let circle = (0..24).map(|at| (15.0 * f64::from(at)).to_radians().sin_cos());
    let points = circle.flat_map(|(sin, cos)| [-0.5, 0.5].map(|side| [0.5 * outer * (1.0 - cos), 0.5 * outer * sin, side * wide]));
    Form::Hull(points.collect())
}

/// A tree of charms, none like another: boxes, eggs of 48 corners, rings of 48 corners.
pub fn charms(many: usize, seed: u64) -> Task {
    let mut dice = Dice(seed);
    let pieces = (0..many).map(|at| {
        let sides = [dice.between(8.0, 18.0), dice.between(4.0, 9.0), dice.between(2.0, 6.0)];
        let weight = sides.iter().product::<f64>() * 0.004;
        let thin = dice.between(0.6, 2.0);
        match at % 3 {
            0 => piece(Form::Sides(sides), weight, thin),
            1 => piece(egg(sides, 48), 0.6 * weight, thin),
            _ => piece(ring(dice.between(12.0, 17.0), dice.between(2.0, 4.0)), dice.between(1.5, 5.0), thin),
        }
    });
    Task { trunk: TRUNK, pieces: pieces.collect(), limits: LIMITS }
}

pub fn equal(many: usize, one: &Wanted) -> Task {
    Task { trunk: TRUNK, pieces: vec![one.clone(); many], limits: LIMITS }
}
