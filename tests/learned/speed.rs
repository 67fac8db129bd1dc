//! Time to learn three years.

use crate::chance::Chance;
use crate::studio::{JOBS, TRUTHS};
use pourbook::calc::learned::learn;
use std::time::Instant;

/// Twenty quantities of 600 jobs, in release well under 20 ms; the best of thirty runs, since other work may share the machine.
#[test]
#[allow(clippy::print_stderr)]
fn twenty_quantities_of_three_years_are_quickly_learned() {
    let mut chance = Chance::new(1);
    let records: Vec<_> = (0..20).map(|at| TRUTHS[at % TRUTHS.len()].record(&mut chance, JOBS)).collect();
    let mut times: Vec<_> = (0..30)
        .map(|_| {
            let start = Instant::now();
            let jobs: usize = records.iter().map(|record| learn(record).unwrap().jobs).sum();
            assert_eq!(jobs, 12_000);
            start.elapsed()
        })
        .collect();
    times.sort_unstable();
    eprintln!("20 quantities of 600 jobs: {:?} at best, {:?} in the middle", times[0], times[15]);
    assert!(cfg!(debug_assertions) || times[0].as_millis() < 20);
}
