//! A table that keeps the limits is never beaten by nothing: what comes out is as long as it at most.

use super::world::{Lot, VERIFIED, found, limits, load, mould, needs, solve, table};
use pourbook::calc::labour::Labour;
use pourbook::calc::shortest::{Kept, Least, Limits, Soak, judge};

#[test]
fn never_longer_than_a_table_that_keeps_the_same() {
    let mut lot = Lot(2024);
    let mut shorter = 0;
    for round in 0..8 {
        let (diameter, height) = (lot.between(38.0, 76.0), lot.between(50.0, 90.0));
        let hours = |lot: &mut Lot| (lot.between(1.0, 4.0) * 4.0).round() / 4.0;
        let plain = Limits { least: Vec::new(), ..limits() };
        let stages = [[149.0, hours(&mut lot)], [371.0, hours(&mut lot)], [732.0, hours(&mut lot) + 1.0], [538.0, hours(&mut lot)]];
        let table = table(&stages, &plain);
        let kept = if round % 4 == 0 { Kept::WholeBand } else { Kept::Likely };
        // The limits are what the table comes to, so that it keeps them by a hair: another programme must find its own way.
        let free = load(vec![mould(diameter, height, needs(2000.0, 2000.0, 1.0))], kept);
        let open = Limits { soak: Soak { within_k: 900.0, ..plain.soak }, ..plain.clone() };
        let values = judge(&table, &free, &open, &VERIFIED, &Labour::ALONE).unwrap().values;
        let most = |at: usize| values.iter().map(|v| v.apart[at].up_k.max(v.apart[at].down_k)).fold(0.0, f64::max) * 1.001 + 0.01;
        let above = values.iter().map(|v| v.above_min).fold(f64::INFINITY, f64::min) - 0.01;
        let off = values.iter().map(|v| (v.core_at_pour_c - 538.0).abs()).fold(0.0, f64::max) + 0.01;
        let asked = load(vec![mould(diameter, height, needs(most(0), most(1), above.floor().max(0.0)))], kept);
        let least = vec![Least { within_c: [120.0, 150.0], minutes: (stages[0][1] * 60.0).min(90.0) }];
        let soak = Soak { within_k: off.max(2.0), ..plain.soak };
        let limits = Limits { least, soak, ..plain };
        let judged = judge(&table, &asked, &limits, &VERIFIED, &Labour::ALONE).unwrap();
        assert!(judged.sound(), "the table is to keep what was read off it: {:?}", judged.breaches);
        let programme = found(solve(&asked, &limits, Some(&table)));
        assert!(programme.total_min <= judged.total_min, "{} min, the table {}", programme.total_min, judged.total_min);
        let again = judge(&programme.segments, &asked, &limits, &VERIFIED, &Labour::ALONE).unwrap();
        assert!(again.sound(), "{:?}", again.breaches);
        assert_eq!(again.values, programme.judged.values);
        shorter += usize::from(programme.total_min < judged.total_min - 5.0);
    }
    assert!(shorter >= 6, "only {shorter} of 8 were shortened");
}

/// A table that cannot be shortened at all comes out as it is, or as short.
#[test]
fn what_was_found_cannot_be_shortened_by_itself() {
    let load = load(vec![mould(51.0, 64.0, needs(70.0, 50.0, 45.0))], Kept::Likely);
    let first = found(solve(&load, &limits(), None));
    let second = found(solve(&load, &limits(), Some(&first.segments)));
    assert!(second.total_min <= first.total_min);
    assert!(second.total_min >= first.total_min * 0.98 - 2.0, "{} after {}", second.total_min, first.total_min);
}

#[test]
fn the_same_question_has_the_same_answer() {
    let load = load(vec![mould(51.0, 51.0, needs(90.0, 60.0, 30.0))], Kept::Likely);
    assert_eq!(solve(&load, &limits(), None), solve(&load, &limits(), None));
}
