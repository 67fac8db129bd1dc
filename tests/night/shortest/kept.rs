//! Every limit of what was found, checked by other means: the kiln's way by small steps in time, values counted sample by sample.

use super::world::{VERIFIED, found, limits, load, mould, needs, solve};
use pourbook::calc::heat::{Phase, Surroundings, Watch, run};
use pourbook::calc::shortest::{Kept, Least, Limits, Load, RampCap, Segment};

/// Minutes between two points of the way.
const STEP_MIN: f64 = 0.02;

/// The kiln through a ramp: at most at a rate, and never faster than it can, in small steps. Where it is after so many minutes.
fn through(from: f64, target: f64, rate_k_min: f64, minutes: f64, limits: &Limits) -> Vec<f64> {
    let mut at = from;
    let step = |_| {
        let band = limits.bands.iter().find(|band| if target > at { at < band.up_to_c } else { at <= band.up_to_c });
        let band = band.or(limits.bands.last()).unwrap();
        let own = if target > from { band.rise_k_h } else { band.fall_k_h } / 60.0;
        let by = rate_k_min.min(own) * STEP_MIN;
        at = if target > from { (at + by).min(target) } else { (at - by).max(target) };
        at
    };
    (0..(minutes / STEP_MIN).round() as usize).map(step).collect()
}

/// The reading every [`STEP_MIN`], the rate of each ramp found by halving.
fn way(segments: &[Segment], limits: &Limits) -> Vec<f64> {
    let mut all = vec![limits.start_c];
    for segment in segments {
        let from = *all.last().unwrap();
        let (mut low, mut high) = (0.0, 1000.0);
        for _ in 0..40 {
            let middle = f64::midpoint(low, high);
            // A hundredth of the ramp early is still in time: steps are not endlessly small.
            let steps = through(from, segment.target_c, middle, segment.ramp_min, limits);
            let there = steps.last().is_none_or(|last| (last - segment.target_c).abs() < 1e-9);
            if there { high = middle } else { low = middle }
        }
        assert!(high < 999.0 || segment.ramp_min == 0.0, "the kiln is not at {} °C in {} min", segment.target_c, segment.ramp_min);
        all.extend(through(from, segment.target_c, high, segment.ramp_min, limits));
        let hold = (segment.hold_min / STEP_MIN).round() as usize;
        all.extend(std::iter::repeat_n(segment.target_c, hold));
    }
    all
}

fn check_kiln(way: &[f64], segments: &[Segment], limits: &Limits) {
    assert!(way.iter().all(|c| *c <= limits.ceiling_c));
    for least in &limits.least {
        let within = way.iter().filter(|c| **c >= least.within_c[0] - 1e-6 && **c <= least.within_c[1] + 1e-6).count();
        assert!(within as f64 * STEP_MIN >= least.minutes - 0.2, "{} min within {:?}", within as f64 * STEP_MIN, least.within_c);
    }
    for cap in &limits.caps {
        let inside = way.windows(2).filter(|pair| pair.iter().all(|c| *c > cap.within_c[0] && *c < cap.within_c[1]));
        let fastest = inside.map(|pair| (pair[1] - pair[0]) / STEP_MIN * 60.0).fold(0.0, f64::max);
        assert!(fastest <= cap.rise_k_h.unwrap() * 1.002, "{fastest} K/h");
    }
    let last = segments.last().unwrap();
    assert!(last.hold_min >= limits.soak.least_min);
    assert!((last.target_c + limits.offset_k - limits.soak.mould_c).abs() <= limits.step_c / 2.0);
    for segment in segments {
        assert!(segment.ramp_min.fract() == 0.0 && segment.hold_min.fract() == 0.0 && (segment.target_c / limits.step_c).fract() == 0.0);
    }
    assert!(limits.most_segments.is_none_or(|most| segments.len() <= most));
}

fn check_moulds(way: &[f64], load: &Load, limits: &Limits) {
    let every = (0.5 / STEP_MIN) as usize;
    let last = (way.len() - 1, way[way.len() - 1]);
    let points = way.iter().copied().enumerate().step_by(every).chain([last]);
    let temperature: Vec<[f64; 2]> = points.map(|(at, c)| [at as f64 * STEP_MIN * 60.0, c + limits.offset_k]).collect();
    let until_s = temperature.last().unwrap()[0];
    for mould in &load.moulds {
        let kiln = Surroundings { temperature: temperature.clone(), phases: vec![Phase { from_s: 0.0, surfaces: mould.surfaces }] };
        for of in load.kept.all() {
            let watch = Watch { probes: vec![mould.places.wall_m], every_s: 20.0, until_s };
            let run = run((&mould.flask, &mould.materials[*of as usize], mould.start_c), &kiln, &watch, &VERIFIED, &mut || false).unwrap();
            let above = run.core_c.iter().filter(|c| **c >= mould.needs.above_c).count() as f64 / 3.0;
            assert!(above >= mould.needs.above_min - 1.0, "{above} min above");
            assert!(run.core_c.iter().any(|c| *c > 105.0));
            assert!((run.core_c.last().unwrap() - limits.soak.mould_c).abs() <= limits.soak.within_k + 0.1);
            for inversion in &mould.needs.inversions {
                let [from, to] = inversion.within_c;
                let pairs = run.probes_c[0].iter().zip(&run.core_c).filter(|(wall, core)| wall.max(**core) > from && wall.min(**core) < to);
                let apart = pairs.map(|(wall, core)| (wall - core).abs()).fold(0.0, f64::max);
                assert!(apart <= inversion.most_k + 0.5, "{apart} K at {from} °C, {} allowed", inversion.most_k);
            }
        }
    }
}

fn check(load: &Load, limits: &Limits) {
    let programme = found(solve(load, limits, None));
    let way = way(&programme.segments, limits);
    assert!(((way.len() - 1) as f64 * STEP_MIN - programme.total_min).abs() < 1e-6);
    check_kiln(&way, &programme.segments, limits);
    check_moulds(&way, load, limits);
    assert_eq!(programme.bound.len(), programme.segments.len());
    assert_eq!(programme.judged.values.len(), load.moulds.len() * load.kept.all().len());
}

#[test]
fn one_mould_over_the_whole_band() {
    check(&load(vec![mould(64.0, 64.0, needs(70.0, 50.0, 45.0))], Kept::WholeBand), &limits());
}

#[test]
fn two_moulds_with_an_offset_and_steps_of_five() {
    let moulds = vec![mould(51.0, 64.0, needs(60.0, 40.0, 30.0)), mould(76.0, 64.0, needs(120.0, 80.0, 60.0))];
    check(&load(moulds, Kept::Likely), &Limits { offset_k: -7.0, step_c: 5.0, ceiling_c: 760.0, ..limits() });
}

/// Slow to 300 °C as for resin, few segments, and a flask for stones that burns no carbon at 700 °C.
#[test]
fn ramps_of_a_sheet_and_few_segments() {
    let caps = vec![RampCap { within_c: [150.0, 300.0], rise_k_h: Some(90.0), fall_k_h: None }];
    let least = vec![Least { within_c: [120.0, 150.0], minutes: 120.0 }, Least { within_c: [250.0, 300.0], minutes: 90.0 }];
    let limits = Limits { caps, least, most_segments: Some(5), ..limits() };
    check(&load(vec![mould(51.0, 64.0, needs(90.0, 60.0, 0.0))], Kept::Likely), &limits);
}
