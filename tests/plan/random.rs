//! Small random batches against trying everything, and large ones against the bound.

use pourbook::calc::plan::{Company, Group, Lock, Plan, STEPS, Size, Wish, check, plan};
use std::time::Instant;

/// Random numbers of a fixed beginning.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    pub fn below(&mut self, many: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % many
    }
}

pub fn small(seed: u64) -> Wish {
    let mut dice = Dice::new(seed);
    let alloys = 1 + dice.below(2) as usize;
    let sizes: Vec<Size> = (0..1 + dice.below(3))
        .map(|at| Size {
            metal_mg: (0..alloys).map(|_| 20 + 15 * at + dice.below(20)).collect(),
            places: 2 + at as u32 + dice.below(2) as u32,
            volume_mm3: 100 + 60 * at + dice.below(40),
            stock: (dice.below(3) == 0).then(|| dice.below(4) as u32),
        })
        .collect();
    let groups = (0..2 + dice.below(6)).map(|_| {
        let low = 400 + 50 * dice.below(5) as i32;
        Group {
            alloy: dice.below(alloys as u64) as usize,
            metal_mg: 1 + dice.below(25),
            places: {
                let many = 1 + u32::from(dice.below(4) == 0);
                sizes.iter().map(|_| many + u32::from(dice.below(6) == 0)).collect()
            },
            fits: sizes.iter().map(|_| dice.below(6) > 0).collect(),
            mould_c: low..=low + 100,
            company: [Company::Any, Company::Any, Company::Irreplaceable, Company::Trial][dice.below(4) as usize],
            due: dice.below(3) as i64,
        }
    });
    Wish { alloys, groups: groups.collect(), sizes, locks: Vec::new(), most_flasks: None }
}

/// The least of everything there is: every group into every flask that is open, or into a new one of every size. Nothing where not all go in.
fn by_trying(wish: &Wish) -> Option<(usize, u64)> {
    fn go(wish: &Wish, at: usize, open: &mut Vec<(usize, Vec<usize>)>, best: &mut Option<(usize, u64)>) {
        let volume: u64 = open.iter().map(|(size, _)| wish.sizes[*size].volume_mm3).sum();
        if best.is_some_and(|best| (open.len(), volume) >= best) {
            return;
        }
        if at == wish.groups.len() {
            *best = Some((open.len(), volume));
            return;
        }
        for bin in 0..=open.len() {
            let sizes = if bin == open.len() { (0..wish.sizes.len()).collect() } else { vec![open[bin].0] };
            for size in sizes {
                if bin == open.len() {
                    open.push((size, Vec::new()));
                }
                open[bin].1.push(at);
                if holds(wish, open, bin) {
                    go(wish, at + 1, open, best);
                }
                open[bin].1.pop();
                if open[bin].1.is_empty() {
                    open.pop();
                }
            }
        }
    }
    let mut best = None;
    go(wish, 0, &mut Vec::new(), &mut best);
    best
}

fn holds(wish: &Wish, open: &[(usize, Vec<usize>)], bin: usize) -> bool {
    let (size, groups) = &open[bin];
    let all: Vec<&Group> = groups.iter().map(|at| &wish.groups[*at]).collect();
    let flask = &wish.sizes[*size];
    let company = |one| all.iter().any(|group| group.company == one);
    all.iter().all(|group| group.alloy == all[0].alloy && group.fits[*size])
        && all.iter().map(|group| group.metal_mg).sum::<u64>() <= flask.metal_mg[all[0].alloy]
        && all.iter().map(|group| group.places[*size]).sum::<u32>() <= flask.places
        && all.iter().map(|group| group.mould_c.start()).max() <= all.iter().map(|group| group.mould_c.end()).min()
        && !(company(Company::Irreplaceable) && company(Company::Trial))
        && flask.stock.is_none_or(|stock| open.iter().filter(|(other, _)| other == size).count() <= stock as usize)
}

#[test]
fn small_batches_are_as_good_as_trying_everything() {
    let (mut planned, mut refused) = (0, 0);
    for seed in 0..600 {
        let wish = small(seed);
        let found = plan(&wish, STEPS, &|_| true);
        check(&wish, &found).unwrap_or_else(|wrong| panic!("{seed}: {wrong}\n{wish:?}\n{found:?}"));
        match by_trying(&wish) {
            Some((flasks, volume)) => {
                assert_eq!((found.flasks.len(), found.volume_mm3(&wish)), (flasks, volume), "{seed}: {wish:?}\n{found:?}");
                assert!(found.left.is_empty() && found.is_proven(&wish), "{seed}: {found:?}");
                planned += 1;
            }
            None => {
                assert!(!found.left.is_empty(), "{seed}: {wish:?}");
                refused += 1;
            }
        }
    }
    assert!(planned > 150 && refused > 50, "{planned} {refused}");
}

/// Rings, charms and pendants in six alloys.
pub fn large(pieces: usize, alloys: usize, seed: u64) -> Wish {
    let mut dice = Dice::new(seed);
    let shelf = [(64, 64, 40, 4), (76, 90, 75, 6), (89, 102, 120, 8), (102, 152, 260, 14)];
    let size = |(diameter, height, grams, places): (u64, u64, u64, u32)| Size {
        metal_mg: vec![1000 * grams; alloys],
        places,
        volume_mm3: 785 * diameter * diameter * height / 1000,
        stock: None,
    };
    let groups = (0..pieces).map(|_| {
        let metal_mg = 1500 + dice.below(12_000) + if dice.below(8) == 0 { 20_000 } else { 0 };
        let tall = dice.below(100);
        Group {
            alloy: dice.below(alloys as u64) as usize,
            metal_mg,
            places: vec![1 + u32::from(metal_mg > 20_000); shelf.len()],
            fits: vec![tall < 60, tall < 80, tall < 95, true],
            mould_c: if tall.is_multiple_of(5) { 480..=560 } else { 540..=650 },
            company: Company::Any,
            due: 0,
        }
    });
    Wish { alloys, sizes: shelf.map(size).into(), groups: groups.collect(), locks: Vec::new(), most_flasks: None }
}

#[test]
fn five_hundred_pieces_come_within_a_flask_of_the_bound() {
    for seed in 1..=4 {
        let wish = large(500, 6, seed);
        let begun = Instant::now();
        let found = plan(&wish, STEPS, &|_| true);
        let taken = begun.elapsed().as_secs_f64();
        check(&wish, &found).unwrap();
        println!(
            "500 pieces, seed {seed}: {} flasks, at least {}; {} ml, at least {}; {taken:.2} s",
            found.flasks.len(),
            found.bound.flasks,
            found.volume_mm3(&wish) / 1000,
            found.bound.volume_mm3 / 1000
        );
        assert!(found.left.is_empty());
        assert!(found.flasks.len() as u32 <= found.bound.flasks + 1, "{} {:?}", found.flasks.len(), found.bound);
    }
}

#[test]
fn the_same_wish_gets_the_same_plan() {
    for wish in [large(120, 3, 9), small(5), small(77)] {
        assert_eq!(plan(&wish, 20_000, &|_| true), plan(&wish, 20_000, &|_| true));
    }
}

#[test]
fn a_stopped_search_gives_the_best_so_far() {
    let wish = large(200, 4, 3);
    let asked = std::cell::Cell::new(0);
    let stopped: Plan = plan(&wish, STEPS, &|share| {
        assert!((0.0..=1.0).contains(&share));
        asked.set(asked.get() + 1);
        asked.get() < 3
    });
    assert!(stopped.stopped);
    check(&wish, &stopped).unwrap();
    assert!(stopped.left.is_empty() && stopped.bound.flasks as usize <= stopped.flasks.len());
}

#[test]
fn locked_flasks_stay_and_are_filled_up() {
    for seed in 0..200 {
        let mut wish = small(seed);
        wish.sizes.iter_mut().for_each(|size| size.stock = None);
        wish.locks = vec![Lock { size: wish.sizes.len() - 1, groups: vec![0] }];
        let found = plan(&wish, STEPS, &|_| true);
        check(&wish, &found).unwrap_or_else(|wrong| panic!("{seed}: {wrong}"));
        if found.left.iter().all(|(group, _)| *group != 0) {
            let holder = found.flasks.iter().find(|flask| flask.groups.contains(&0)).unwrap();
            assert_eq!(holder.size, wish.sizes.len() - 1, "{seed}");
        }
    }
}

#[test]
fn a_shelf_with_too_many_ways_claims_no_more_than_is_true() {
    // Every size four times over: nothing better is possible than with each once, and the ways are too many to list.
    let wish = large(160, 1, 5);
    let once = plan(&wish, STEPS, &|_| true);
    let mut over = wish.clone();
    for _ in 0..3 {
        over.sizes.extend(wish.sizes.clone());
        for (group, before) in over.groups.iter_mut().zip(&wish.groups) {
            group.fits.extend(&before.fits);
            group.places.extend(&before.places);
        }
    }
    let found = plan(&over, STEPS, &|_| true);
    check(&over, &found).unwrap();
    assert!(once.is_proven(&wish) && found.left.is_empty());
    assert!(found.bound <= once.bound, "{:?} {:?}", found.bound, once.bound);
    assert!(found.flasks.len() <= once.flasks.len() + 2, "{} {}", found.flasks.len(), once.flasks.len());
}
