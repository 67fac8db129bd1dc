//! What rules over what: the highest mark over a lower target, the day over later prices, the job's place over the studio's barometer, a
//! piece's own pattern over its line's.

use jiff::civil::date;
use pourbook::job::{FileUnit, PatternId, PieceException, PriceUnit, SprueRun};

use super::world::{World, lot, price, said};

#[test]
fn a_target_below_the_mark_excuses_nothing() {
    let poor = |world: &mut World| world.studio.lots = vec![lot("S-1", "silver-835")];
    for target in [None, said(800.0)] {
        let outcome = World::sound()
            .with(|world| {
                poor(world);
                world.melt().target_permille = target;
            })
            .recompute();
        assert_eq!(outcome.findings("under-mark").len(), 1, "{target:?}");
    }
    // A target above the mark is asked for as well.
    let outcome = World::sound().with(|world| world.melt().target_permille = said(950.0)).recompute();
    assert_eq!(outcome.findings("under-mark").len(), 1);
}

#[test]
fn a_lot_of_base_metal_holds_what_its_alloy_says() {
    let outcome = World::sound().with(|world| world.studio.lots = vec![lot("S-1", "bronze-silicon")]).recompute();
    assert_eq!(outcome.number(outcome.report.melts[0].fineness.unwrap()), 0.0);
    assert_eq!(outcome.findings("under-mark").len(), 1);
}

#[test]
fn a_price_of_a_later_day_is_not_known_yet() {
    let later = |on| {
        let outcome = World::sound()
            .with(|world| {
                let mut dear = price("Ag", "9999", PriceUnit::TroyOunce);
                dear.on = Some(on);
                world.studio.prices.push(dear);
            })
            .recompute();
        outcome.number(outcome.report.lines[0].per_gram)
    };
    let sound = World::sound().recompute();
    let today = sound.number(sound.report.lines[0].per_gram);
    assert_eq!(later(date(2099, 1, 1)), today);
}

#[test]
fn the_jobs_altitude_rules_over_the_studios_barometer() {
    let outcome = World::sound()
        .with(|world| {
            world.studio.site.barometer_kpa = said(101.3);
            world.job.site.altitude_m = said(1609.0);
        })
        .recompute();
    // ISO 2533 at 1609 m: 83.43 kPa.
    assert!((outcome.number(outcome.report.site.barometer) - 83.43).abs() < 0.01);
}

#[test]
fn a_piece_with_a_pattern_of_its_own_weighs_its_own() {
    let plain = World::full().with(|world| world.job.orders[0].lines[1].exceptions.clear()).recompute();
    let own = World::full().recompute();
    let rough = |outcome: &super::world::Outcome, line: usize| outcome.number(outcome.report.lines[line].rough);
    // Three leaves, one of them cast as the knob of the next line.
    let round = |grams: f64| (grams * 100.0).round() / 100.0;
    let expected = 2.0 * round(rough(&plain, 1)) + round(rough(&plain, 2));
    assert!((own.number(own.report.lines[1].rough_all) - expected).abs() < 1e-9);
    assert!(own.number(own.report.trees[1].volume) != plain.number(plain.report.trees[1].volume));
}

#[test]
fn stones_on_a_piece_of_its_own_pattern_are_seen() {
    let outcome = World::sound()
        .with(|world| {
            let mut stones = world.job.patterns[0].clone();
            (stones.id, stones.stones) = (PatternId(8), true);
            world.job.patterns.push(stones);
            let own = PieceException { pattern: Some(PatternId(8)), ..PieceException::default() };
            world.line().exceptions.insert(1, own);
        })
        .recompute();
    assert!(outcome.report.flasks[0].stones);
}

#[test]
fn the_longest_run_of_sprues_rules_the_trees_diameter() {
    let with_run = |length: f64| {
        let outcome = World::full()
            .with(|world| {
                let run =
                    SprueRun { count: 1, diameter_mm: said(3.0), length_mm: said(length), angle_deg: said(80.0), ..SprueRun::default() };
                world.job.trees[1].sprues.push(run);
            })
            .recompute();
        outcome.number(outcome.report.trees[1].outline.diameter.unwrap())
    };
    // 30 mm more of sprue at 80° reaches 2 · 30 · sin 80° further, but for the corner's depth.
    let more = with_run(70.0) - with_run(40.0);
    assert!((more - 2.0 * 30.0 * 80_f64.to_radians().sin()).abs() < 1.0, "{more}");
}

#[test]
fn a_path_of_nothing_is_no_file() {
    let outcome = World::full()
        .with(|world| {
            world.job.patterns[2].file.as_mut().unwrap().path = String::new();
            world.job.patterns[2].file.as_mut().unwrap().unit = FileUnit::Millimetre;
        })
        .recompute();
    assert_eq!(outcome.findings("pattern-unknown").len(), 1);
}
