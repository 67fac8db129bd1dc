//! How large equal circles can be that a square or a circle holds, as far as that is known.
//!
//! Numbers from memory, of the literature on packing equal circles; those in a square are proven there to be the largest up to 30 circles, those in
//! a circle up to 13 and for 19, the others are the best that were found.

/// Largest radius of 1, 2, … equal circles in a square of side 1.
const SQUARE: [f64; 20] = [
    0.5,
    0.292_893_218_813,
    0.254_333_095_030,
    0.25,
    0.207_106_781_187,
    0.187_680_601_147,
    0.174_457_630_187,
    0.170_540_688_701,
    0.166_666_666_667,
    0.148_204_322_565,
    0.142_399_237_696,
    0.139_958_844_038,
    0.133_993_513_500,
    0.129_331_793_710,
    0.127_166_547_515,
    0.125,
    0.117_196_742_782,
    0.115_521_432_463,
    0.112_265_437_571,
    0.111_382_347_512,
];

/// Least radius of the circle around 1, 2, … circles of radius 1.
const ROUND: [f64; 20] = [
    1.0, 2.0, 2.154_701, 2.414_214, 2.701_302, 3.0, 3.0, 3.304_765, 3.613_126, 3.813_026, 3.923_805, 4.029_602, 4.236_068, 4.328_429,
    4.521_357, 4.615_426, 4.792_034, 4.863_703, 4.863_703, 5.122_321,
];

/// The largest radius of so many equal circles in a square of side 1; for 1 to 20. From memory; proven in the literature.
#[must_use]
pub fn best_known_square(many: usize) -> Option<f64> {
    SQUARE.get(many.checked_sub(1)?).copied()
}

/// The largest radius known of so many equal circles in a circle of radius 1; for 1 to 20, to six digits. From memory.
#[must_use]
pub fn best_known_round(many: usize) -> Option<f64> {
    ROUND.get(many.checked_sub(1)?).map(|around| 1.0 / around)
}
