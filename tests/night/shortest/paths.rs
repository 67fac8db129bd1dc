//! The kiln's way, worked by hand.

use super::world::limits;
use pourbook::calc::shortest::{Segment, readings, total_min};

fn near(found: &[[f64; 2]], by_hand: &[[f64; 2]]) {
    assert_eq!(found.len(), by_hand.len(), "{found:?}");
    for (found, by_hand) in found.iter().flatten().zip(by_hand.iter().flatten()) {
        assert!((found - by_hand).abs() < 0.01, "{found} is not {by_hand}");
    }
}

/// 20 → 732 °C in 180 min. At one rate it would be 237 K/h, of which the kiln has only 200 above 600 °C: 132 K there take 39.6 min. The other
/// 580 K go in 140.4 min, at 247.9 K/h: 280 K in 67.78 min, 300 K in 72.62 min.
#[test]
fn the_kiln_goes_at_its_own_rate_where_it_cannot_follow() {
    let found = readings(&[Segment { target_c: 732.0, ramp_min: 180.0, hold_min: 30.0 }], &limits());
    near(&found, &[[0.0, 20.0], [67.78, 300.0], [140.4, 600.0], [180.0, 732.0], [210.0, 732.0]]);
}

/// 732 → 538 °C as fast as it falls: 132 K at 150 K/h are 52.8 min, 62 K at 90 K/h are 41.33 min. Asked for in 120 min, 97 K/h would do, of which
/// the kiln has 90 below 600 °C: 132 K in the other 78.67 min.
#[test]
fn the_way_down_goes_band_by_band() {
    let limits = pourbook::calc::shortest::Limits { start_c: 732.0, ..limits() };
    let found = readings(&[Segment { target_c: 538.0, ramp_min: 120.0, hold_min: 0.0 }], &limits);
    near(&found, &[[0.0, 732.0], [78.67, 600.0], [120.0, 538.0]]);
}

#[test]
fn a_ramp_to_where_it_is_waits() {
    let segments = [Segment { target_c: 20.0, ramp_min: 5.0, hold_min: 10.0 }];
    near(&readings(&segments, &limits()), &[[0.0, 20.0], [5.0, 20.0], [15.0, 20.0]]);
    assert!((total_min(&segments) - 15.0).abs() < 1e-12);
}
