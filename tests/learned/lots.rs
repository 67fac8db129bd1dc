//! A bad powder lot is found, and none is found where there is none.

use crate::chance::Chance;
use crate::studio::{Lots, at_most};
use pourbook::calc::learned::{Said, clopper_pearson, rates_by};

const STUDIOS: usize = 2000;

const SOUND: Lots = Lots { lots: 12, share: 0.04, bad: 0.04, clumped: 0.0 };

/// Studios in which lot 3 is called worse, any other lot is called anything, and any lot is by the plain counts.
fn told(lots: &Lots, studios: usize) -> (usize, usize, usize) {
    let (mut found, mut others, mut plain) = (0, 0, 0);
    for seed in 0..studios {
        let rows = rates_by(lots.record(&mut Chance::new(seed as u64 + 40_000))).unwrap();
        assert_eq!(rows.len(), 12);
        found += usize::from(rows.iter().any(|row| row.key == 3 && row.said == Said::Worse));
        others += usize::from(rows.iter().any(|row| row.key != 3 && matches!(row.said, Said::Worse | Said::Better)));
        plain += usize::from(rows.iter().any(|row| row.plain_p * 12.0 <= 0.05));
        if rows.iter().any(|row| row.key == 3 && row.said == Said::Worse) && lots.bad > 0.1 {
            assert_eq!(rows[0].key, 3, "what is worst for certain stands first");
        }
    }
    (found, others, plain)
}

#[test]
fn a_bad_lot_is_found() {
    let (found, _, _) = told(&Lots { bad: 0.12, ..SOUND }, 300);
    assert!(found >= 297, "{found}");
    // Where jobs are unlike each other, less is certain, and still enough.
    let (found, _, _) = told(&Lots { bad: 0.16, clumped: 1.0, ..SOUND }, 300);
    assert!(found >= 285, "{found}");
}

#[test]
fn without_a_bad_lot_none_is_told() {
    let (worse, others, _) = told(&SOUND, STUDIOS);
    assert!(at_most(worse + others, STUDIOS, 0.05), "{worse} + {others}");
}

/// Defects that come by the flask are the usual case, and fool the plain test.
#[test]
fn clumped_defects_are_not_taken_for_a_bad_lot() {
    let (worse, others, plain) = told(&Lots { clumped: 1.0, ..SOUND }, STUDIOS);
    assert!(at_most(worse + others, STUDIOS, 0.05), "{worse} + {others}");
    assert!(plain > STUDIOS / 5, "plain counts called {plain}: the correction would not be needed");
}

#[test]
fn the_interval_of_a_share_covers_it_at_least_as_often_as_promised() {
    let mut chance = Chance::new(8);
    for share in [0.01, 0.05, 0.3, 0.5, 0.98] {
        for of in [10, 60, 300] {
            let covers =
                |chance: &mut Chance| clopper_pearson(f64::from(chance.hits(of, share)), f64::from(of), 0.95).unwrap().contains(share);
            let missed = (0..STUDIOS).filter(|_| !covers(&mut chance)).count();
            assert!(at_most(missed, STUDIOS, 0.05), "{share} of {of}: missed {missed}");
        }
    }
}
