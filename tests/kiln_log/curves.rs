//! Thinning a curve, and finding where it falls.

use pourbook::kiln_log::{find_drops, thin};

fn curve(count: u32, height: impl Fn(f64) -> f64) -> Vec<[f64; 2]> {
    (0..count).map(|at| [f64::from(at), height(f64::from(at))]).collect()
}

/// The greatest distance in K of a point from the thinned curve at its minute.
fn distance(points: &[[f64; 2]], thinned: &[[f64; 2]]) -> f64 {
    let mut at = 0;
    let mut most = 0.0_f64;
    for point in points {
        while at + 2 < thinned.len() && thinned[at + 1][0] < point[0] {
            at += 1;
        }
        let [from, to] = [thinned[at], thinned[at + 1]];
        let share = if to[0] > from[0] { (point[0] - from[0]) / (to[0] - from[0]) } else { 0.0 };
        most = most.max((point[1] - from[1] - share * (to[1] - from[1])).abs());
    }
    most
}

#[test]
fn thinning_stays_within_the_tolerance_and_makes_light() {
    let firing =
        curve(100_000, |t| 20.0 + 710.0 * (t / 30_000.0).min(1.0) + 0.3 * (t * 0.7).sin() - 180.0 * ((t - 80_000.0) / 20_000.0).max(0.0));
    let thinned = thin(&firing, 1.0);
    assert!(thinned.len() < 100, "{} points are left", thinned.len());
    assert!(distance(&firing, &thinned) <= 1.0 + 1e-9, "{} K", distance(&firing, &thinned));
    for (tolerance_k, at) in [(0.1, 1_u64), (2.0, 2), (5.0, 3), (20.0, 4)] {
        let mut random = crate::random::Random(at);
        let mut level = 300.0;
        let walk: Vec<[f64; 2]> = (0..5000)
            .map(|minute| {
                level += random.between(-3.0, 3.0);
                [f64::from(minute), level]
            })
            .collect();
        let thinned = thin(&walk, tolerance_k);
        assert!(distance(&walk, &thinned) <= tolerance_k + 1e-9);
        assert!(thinned.iter().all(|point| walk.contains(point)));
        assert!(tolerance_k < 1.0 || thinned.len() < 2500, "{}", thinned.len());
    }
}

#[test]
fn thinning_keeps_what_it_must() {
    assert!(thin(&[], 1.0).is_empty());
    assert_eq!(thin(&[[0.0, 1.0]], 1.0), [[0.0, 1.0]]);
    let line = curve(1000, |t| 3.0 * t);
    assert_eq!(thin(&line, 0.5), [[0.0, 0.0], [999.0, 2997.0]]);
    let corner = curve(21, |t| 10.0 * (10.0 - (t - 10.0).abs()));
    assert_eq!(thin(&corner, 0.01), [[0.0, 0.0], [10.0, 100.0], [20.0, 0.0]]);
    let steps = [[0.0, 20.0], [1.0, 20.0], [1.0, 90.0], [2.0, 90.0], [3.0, 90.0]];
    assert_eq!(thin(&steps, 0.5), [[0.0, 20.0], [1.0, 20.0], [1.0, 90.0], [3.0, 90.0]]);
    // Nonsense keeps every point.
    assert_eq!(thin(&corner, f64::NAN).len(), 21);
    assert_eq!(thin(&corner, -1.0).len(), 21);
}

#[test]
fn a_power_cut_is_found_with_its_times_and_rate() {
    // 730 °C, off at minute 100, falls 3 K a minute for 40 minutes, rises again 5 K a minute: 180 K/h by construction.
    let cut = curve(300, |t| {
        if t < 100.0 {
            730.0
        } else if t < 140.0 {
            730.0 - 3.0 * (t - 100.0)
        } else {
            (610.0 + 5.0 * (t - 140.0)).min(730.0)
        }
    });
    for noise_k in [0.0, 0.8] {
        let noisy: Vec<[f64; 2]> = cut.iter().map(|&[t, c]| [t, c + noise_k * (t * 2.3).sin()]).collect();
        let drops = find_drops(&noisy);
        assert_eq!(drops.len(), 1, "{drops:?}");
        let drop = drops[0];
        assert!((drop.start_min - 100.0).abs() <= 2.0 && (drop.end_min - 140.0).abs() <= 1.0 && drop.recovers, "{drop:?}");
        assert!(
            (drop.start_c - 730.0).abs() <= 3.0 && (drop.lowest_c - 610.0).abs() <= 2.0 && (drop.rate_k_h - 180.0).abs() < 8.0,
            "{drop:?}"
        );
    }
}

#[test]
fn falls_are_told_apart_and_ripples_are_none() {
    let ripple = curve(600, |t| 730.0 + 4.0 * (t / 5.0).sin());
    assert!(find_drops(&ripple).is_empty());
    assert!(find_drops(&curve(100, |t| t)).is_empty());
    assert!(find_drops(&[]).is_empty());
    // Cooling to the flask's temperature, a hold of two hours, then off: two falls, neither followed by a rise.
    let stairs = curve(400, |t| match t {
        t if t < 100.0 => 730.0,
        t if t < 150.0 => 730.0 - 4.0 * (t - 100.0),
        t if t < 270.0 => 530.0,
        t => (530.0 - 2.0 * (t - 270.0)).max(300.0),
    });
    let drops = find_drops(&stairs);
    assert_eq!(drops.len(), 2, "{drops:?}");
    assert_eq!((drops[0].start_min, drops[0].end_min, drops[0].lowest_c, drops[0].recovers), (100.0, 150.0, 530.0, false));
    assert_eq!((drops[1].start_min, drops[1].end_min, drops[1].lowest_c, drops[1].recovers), (270.0, 385.0, 300.0, false));
    assert!((drops[0].rate_k_h - 240.0).abs() < 1e-9 && (drops[1].rate_k_h - 120.0).abs() < 1e-9);
    // Two cuts in one firing.
    let two = curve(400, |t| 700.0 - 2.0 * (30.0 - (t - 100.0).abs()).max(0.0) - 3.0 * (40.0 - (t - 300.0).abs()).max(0.0));
    let drops = find_drops(&two);
    assert_eq!(drops.iter().map(|drop| drop.lowest_c).collect::<Vec<_>>(), [640.0, 580.0]);
}
