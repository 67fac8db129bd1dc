//! The fast median slope against every pair looked at.

use crate::chance::Chance;
use pourbook::calc::learned::theil_sen;

/// By the definition, in the plainest way.
fn every_pair(points: &[(f64, f64)]) -> Option<f64> {
    let mut slopes = Vec::new();
    for (at, a) in points.iter().enumerate() {
        for b in &points[at + 1..] {
            if a.0 < b.0 {
                slopes.push((b.1 - a.1) / (b.0 - a.0));
            } else if b.0 < a.0 {
                slopes.push((a.1 - b.1) / (a.0 - b.0));
            }
        }
    }
    slopes.sort_unstable_by(f64::total_cmp);
    let (n, half) = (slopes.len(), slopes.len() / 2);
    if n == 0 {
        None
    } else if n % 2 == 1 {
        Some(slopes[half])
    } else {
        Some(f64::midpoint(slopes[half - 1], slopes[half]))
    }
}

/// Points of many kinds: smooth or rounded, days apart or many on one day, with wild ones among them.
fn points(chance: &mut Chance, kind: usize) -> Vec<(f64, f64)> {
    let count = 3 + chance.below(300);
    let days = [1100, 30, 7, 2][kind % 4];
    let step = [0.0, 0.1, 0.5, 1.0, 3.0][kind % 5];
    let drift = [0.0, 0.01, -3.0][kind % 3];
    let one = |chance: &mut Chance| {
        let x = (f64::from(chance.below(days)) - 500.0) / 30.0;
        let wild = if chance.uniform() < 0.05 { 100.0 } else { 1.0 };
        let y = drift * x + wild * chance.normal();
        (x, if step > 0.0 { (y / step).round() * step } else { y })
    };
    (0..count).map(|_| one(chance)).collect()
}

#[test]
fn the_median_slope_is_that_of_every_pair() {
    let mut chance = Chance::new(5);
    for kind in 0..480 {
        let points = points(&mut chance, kind);
        match (theil_sen(&points), every_pair(&points)) {
            (Some(ours), Some(theirs)) => {
                assert!(
                    (ours - theirs).abs() <= 1e-12 * theirs.abs().max(1e-3),
                    "kind {kind}, {} points: {ours:e}, {theirs:e}",
                    points.len()
                );
            }
            (ours, theirs) => assert_eq!(ours, theirs, "kind {kind}"),
        }
    }
}

#[test]
fn no_two_days_give_no_slope() {
    assert_eq!(theil_sen(&[]), None);
    assert_eq!(theil_sen(&[(1.0, 2.0)]), None);
    assert_eq!(theil_sen(&vec![(3.0, 1.0); 200]), None);
}
