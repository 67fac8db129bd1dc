//! What is said where there is no programme: impossible, stopped, refused.

use super::world::{limits, load, mould, needs, solve, table};
use pourbook::calc::heat::{Fineness, HeatError};
use pourbook::calc::labour::Labour;
use pourbook::calc::shortest::{Bind, Kept, KilnBand, Least, Limits, Load, Outcome, Segment, Soak, judge, shortest_by};
use std::sync::Mutex;

fn small() -> Load {
    load(vec![mould(51.0, 51.0, needs(90.0, 60.0, 30.0))], Kept::Likely)
}

#[test]
fn a_ceiling_too_low_for_the_carbon() {
    // The reading ends at 690 °C and the kiln is 4 K colder than it says: 14 K under the 700 °C that are asked for.
    let limits = Limits { ceiling_c: 690.0, offset_k: -4.0, ..limits() };
    assert_eq!(solve(&small(), &limits, None), Outcome::Impossible { limit: Bind::Ceiling, by: 14.0, certain: true });
}

#[test]
fn a_ceiling_under_the_soak_and_under_the_sheet() {
    let low = Limits { ceiling_c: 500.0, ..limits() };
    assert_eq!(solve(&small(), &low, None), Outcome::Impossible { limit: Bind::Ceiling, by: 38.0, certain: true });
    let sheet = Limits { least: vec![Least { within_c: [800.0, 850.0], minutes: 60.0 }], ..limits() };
    let expected = Outcome::Impossible { limit: Bind::SheetLeast { least: 0 }, by: 60.0, certain: true };
    assert_eq!(solve(&small(), &sheet, None), expected);
}

/// Wall and core are never of one temperature while the kiln moves.
#[test]
fn no_difference_at_all() {
    let load = load(vec![mould(51.0, 51.0, needs(90.0, 0.0, 30.0))], Kept::Likely);
    let outcome = solve(&load, &limits(), None);
    let Outcome::Impossible { limit: Bind::Apart { mould: 0, inversion: 1 }, by, certain: false } = outcome else { panic!("{outcome:?}") };
    assert!(by > 0.0 && by < 90.0, "{by}");
}

#[test]
fn one_segment_is_too_few() {
    let outcome = solve(&small(), &Limits { most_segments: Some(1), ..limits() }, None);
    assert!(matches!(outcome, Outcome::Impossible { certain: false, .. }), "{outcome:?}");
}

#[test]
fn stops_wherever_it_is_told_to() {
    for after in [0, 1, 10, 100, 1000, 5000] {
        let asked = Mutex::new((0, 0.0));
        let go_on = |share: f64| {
            let (asked, last) = &mut *asked.lock().unwrap();
            assert!((0.0..=1.0).contains(&share) && share >= *last, "{share} after {last}");
            *last = share;
            *asked += 1;
            *asked <= after
        };
        let outcome = shortest_by(&small(), &limits(), None, &Fineness::PLAN, &Labour { go_on: &go_on, ..Labour::ALONE });
        assert_eq!(outcome, Outcome::Stopped);
        assert_eq!(asked.into_inner().unwrap().0, after + 1, "it goes on after it was told to stop");
    }
}

#[test]
fn refuses_what_makes_no_sense() {
    let refused = |load: &Load, limits: &Limits| assert!(matches!(solve(load, limits, None), Outcome::Refused(_)), "{load:?} {limits:?}");
    refused(&load(Vec::new(), Kept::Likely), &limits());
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1e300, 1e300] {
        refused(&small(), &Limits { start_c: bad, ..limits() });
        refused(&small(), &Limits { offset_k: bad, ..limits() });
        refused(&small(), &Limits { ceiling_c: bad, ..limits() });
        refused(&small(), &Limits { step_c: bad, ..limits() });
        refused(&small(), &Limits { least: vec![Least { within_c: [100.0, 150.0], minutes: bad }], ..limits() });
        refused(&small(), &Limits { least: vec![Least { within_c: [bad, 150.0], minutes: 1.0 }], ..limits() });
        refused(&small(), &Limits { soak: Soak { mould_c: bad, ..limits().soak }, ..limits() });
        refused(&small(), &Limits { bands: vec![KilnBand { up_to_c: 900.0, rise_k_h: bad, fall_k_h: 90.0 }], ..limits() });
        refused(&load(vec![mould(bad, 51.0, needs(90.0, 60.0, 30.0))], Kept::Likely), &limits());
        refused(&load(vec![mould(51.0, 51.0, needs(bad, 60.0, 30.0))], Kept::Likely), &limits());
        let mut hot = small();
        hot.moulds[0].start_c = bad;
        refused(&hot, &limits());
        let segments = [Segment { target_c: 500.0, ramp_min: bad, hold_min: 10.0 }];
        assert!(judge(&segments, &small(), &limits(), &Fineness::PLAN, &Labour::ALONE).is_err());
    }
    refused(&small(), &Limits { bands: Vec::new(), ..limits() });
    refused(&small(), &Limits { bands: limits().bands.into_iter().rev().collect(), ..limits() });
    refused(&small(), &Limits { bands: vec![KilnBand { up_to_c: 900.0, rise_k_h: 0.0, fall_k_h: 90.0 }], ..limits() });
    refused(&small(), &Limits { most_segments: Some(0), ..limits() });
    refused(&small(), &Limits { most_segments: Some(usize::MAX), ..limits() });
    let none: &[Segment] = &[];
    assert_eq!(judge(none, &small(), &limits(), &Fineness::PLAN, &Labour::ALONE), Err(HeatError::Empty { what: "the programme" }));
}

/// Each breach of a bad programme is told once, by how much.
#[test]
fn judges_what_a_table_breaks() {
    let limits = Limits { most_segments: Some(3), ..limits() };
    let mut segments = table(&[[149.0, 0.5], [371.0, 0.0], [760.0, 0.5], [538.0, 0.5]], &limits);
    segments[2].ramp_min -= 10.0;
    let judged = judge(&segments, &small(), &limits, &Fineness::PLAN, &Labour::ALONE).unwrap();
    let by = |limit: Bind| judged.breaches.iter().find(|breach| breach.limit == limit).map(|breach| breach.by);
    assert_eq!(by(Bind::Ceiling), Some(10.0));
    assert_eq!(by(Bind::SoakHold), Some(30.0));
    assert_eq!(by(Bind::Segments), Some(1.0));
    // 371 → 760 °C: 229 K at 300 K/h are 45.8 min, 160 K at 200 K/h are 48 min, in all 93.8; 84 are given.
    assert!(by(Bind::KilnRise).is_some_and(|by| (by - 9.8).abs() < 1e-6), "{judged:?}");
    // From 120 to 149 °C: 29 K of 129 K in 20 min, 4.496 min; 30 min held; then 1 K of 151 K that take 37 min less 14.2 min, 0.151 min.
    assert!(by(Bind::SheetLeast { least: 0 }).is_some_and(|by| (by - (60.0 - 4.496 - 30.0 - 0.151)).abs() < 1e-3), "{judged:?}");
    assert!(by(Bind::Apart { mould: 0, inversion: 0 }).is_some_and(|by| by > 20.0));
    assert!(judge(&segments, &small(), &limits, &Fineness::PLAN, &Labour { go_on: &|_| false, ..Labour::ALONE }).unwrap().stopped);
}
