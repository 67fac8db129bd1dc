//! The signs before marked lines: painted, so that they are there whatever the type.

use super::INK;
use super::mark::{Mark, Spot};
use crate::paper::block::Sign;

/// A sign around a centre; `radius` in mm.
pub(super) fn sign(sign: Sign, centre: Spot, radius: f64) -> Vec<Mark> {
    let [x, y] = centre;
    let triangle = |by: f64| {
        let (wide, high) = (radius * 1.1 * by, radius * by);
        vec![[x - wide, y + high], [x + wide, y + high], [x, y - high]]
    };
    let area = |corners| Mark::Area { corners, grey: INK };
    match sign {
        Sign::None => Vec::new(),
        Sign::Stop => {
            let corner = |n: u8| {
                let (sin, cos) = (std::f64::consts::TAU * (f64::from(n) + 0.5) / 8.0).sin_cos();
                [x + radius * 1.1 * cos, y + radius * 1.1 * sin]
            };
            vec![area((0..8).map(corner).collect())]
        }
        Sign::Caution => vec![area(triangle(1.0))],
        Sign::Note => vec![Mark::Disc { centre, radius: radius * 0.8, fill: None, edge: Some(INK) }],
        Sign::Care => {
            let corners = triangle(0.9);
            let side = |n: usize| Mark::Line { from: corners[n], to: corners[(n + 1) % 3], width: 0.25, grey: INK, broken: false };
            (0..3).map(side).collect()
        }
    }
}
