//! What is said to bind does bind, and more room never makes a programme longer.

use super::world::{found, limits, load, mould, needs, solve};
use pourbook::calc::shortest::{Bind, Kept, Limits, Load, Programme, Soak};
use std::collections::BTreeSet;

/// So much longer is by chance: whole minutes, and a search that proves nothing.
const BY_CHANCE: f64 = 0.01;

fn asked() -> (Load, Limits) {
    (load(vec![mould(51.0, 64.0, needs(70.0, 45.0, 45.0))], Kept::Likely), limits())
}

/// With much more room in one limit.
fn loosened(limit: Bind) -> Option<(Load, Limits)> {
    let (mut load, mut limits) = asked();
    match limit {
        Bind::KilnRise => limits.bands.iter_mut().for_each(|band| band.rise_k_h *= 1.5),
        Bind::KilnFall => limits.bands.iter_mut().for_each(|band| band.fall_k_h *= 1.5),
        Bind::Apart { mould, inversion } => load.moulds[mould].needs.inversions[inversion].most_k *= 1.3,
        Bind::Carbon { mould } => load.moulds[mould].needs.above_min -= 20.0,
        Bind::SheetLeast { least } => limits.least[least].minutes -= 40.0,
        Bind::SoakHold => limits.soak.least_min -= 20.0,
        Bind::CoreAtPour { .. } => limits.soak.within_k *= 2.0,
        _ => return None,
    }
    Some((load, limits))
}

fn binding(programme: &Programme) -> BTreeSet<Bind> {
    programme.bound.iter().flat_map(|bound| [bound.ramp, bound.hold]).flatten().map(|held| held.limit).collect()
}

#[test]
fn loosening_what_binds_makes_it_shorter() {
    let (load, limits) = asked();
    let programme = found(solve(&load, &limits, None));
    let binding = binding(&programme);
    assert!(binding.len() >= 4, "{binding:?}");
    for limit in binding {
        let Some((load, limits)) = loosened(limit) else { continue };
        let more = found(solve(&load, &limits, None)).total_min;
        println!("{limit:?}: {more} after {}", programme.total_min);
        assert!(more < programme.total_min, "{limit:?} is said to bind: {more} min after {}", programme.total_min);
    }
}

#[test]
fn loosening_anything_makes_nothing_longer() {
    let (load, limits) = asked();
    let before = found(solve(&load, &limits, None)).total_min;
    let mut others = vec![
        (load.clone(), Limits { ceiling_c: 800.0, ..limits.clone() }),
        (load.clone(), Limits { most_segments: None, ..limits.clone() }),
        (load.clone(), Limits { soak: Soak { dip_k: 40.0, ..limits.soak }, ..limits.clone() }),
        (load, Limits { least: Vec::new(), ..limits }),
    ];
    let inversions = [0, 1].map(|inversion| Bind::Apart { mould: 0, inversion });
    let all = [Bind::KilnRise, Bind::KilnFall, Bind::Carbon { mould: 0 }, Bind::SoakHold, Bind::CoreAtPour { mould: 0 }];
    others.extend(inversions.into_iter().chain(all).filter_map(loosened));
    for (load, limits) in others {
        let after = found(solve(&load, &limits, None)).total_min;
        println!("{after} after {before}");
        assert!(after <= before * (1.0 + BY_CHANCE) + 1.0, "{after} min after {before}: {limits:?}");
    }
}
