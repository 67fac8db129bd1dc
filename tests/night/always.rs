//! What holds for every programme and every controller; rows played beside a simulation by small steps.

use pourbook::calc::controller::{
    Band, Controller, Kiln, Note, Programme, Ramp, RampBy, Row, Segment, Table, Unit, Wish, apart, key_in, planned, played,
};
use proptest::prelude::*;

/// A kiln that follows whatever is asked of it.
const SWIFT: [Band; 1] = [Band { up_to_c: 0.0, rise_k_h: 1e6, fall_k_h: 1e6 }];

fn controllers() -> impl Strategy<Value = Controller> {
    let rate = (1..80_u32, 100..2000_u32).prop_map(|(least, most)| RampBy::Rate { least, most });
    let minutes = (0..2_u32, 60..6000_u32).prop_map(|(least, most)| RampBy::Minutes { least, most });
    let unit = prop::sample::select(vec![Unit::Celsius, Unit::Fahrenheit]);
    (unit, prop::sample::select(vec![1_u32, 1, 2, 5]), prop_oneof![rate, minutes], any::<bool>(), 30..6000_u32, -25.0..25.0_f64).prop_map(
        |(unit, step, ramp, full_speed, most_hold_min, offset_k)| Controller {
            unit,
            step,
            ramp,
            full_speed,
            most_hold_min,
            most_segments: 1000,
            offset_k,
        },
    )
}

fn segments() -> impl Strategy<Value = Vec<Segment>> {
    let one = (50.0..900.0_f64, prop::option::weighted(0.8, 0.0..900.0_f64), prop_oneof![Just(0.0), 0.0..500.0_f64]);
    let one = one.prop_map(|(target_c, ramp_min, hold_min)| Segment { target_c, ramp_min, hold_min });
    prop::collection::vec(one, 0..7)
}

fn programmes() -> impl Strategy<Value = Programme> {
    (0.0..300.0_f64, segments()).prop_map(|(start_c, segments)| Programme { start_c, segments })
}

/// Degrees of the controller's unit in a kelvin.
fn degrees(controller: &Controller) -> f64 {
    if controller.unit == Unit::Fahrenheit { 1.8 } else { 1.0 }
}

/// True °C of a set point, by the other way round: the unit's own fixed points.
fn true_c(controller: &Controller, set_point: i32) -> f64 {
    let shown = f64::from(set_point);
    let celsius = if controller.unit == Unit::Fahrenheit { (shown - 212.0) * 5.0 / 9.0 + 100.0 } else { shown };
    celsius + controller.offset_k
}

fn rows_of(table: &Table, segment: usize) -> Vec<&Row> {
    table.rows.iter().filter(|row| row.segments[0] <= segment && segment <= row.segments[1]).collect()
}

/// How long a ramp takes by the controller's clock.
fn minutes(controller: &Controller, ramp: Ramp, by_k: f64) -> f64 {
    match ramp {
        Ramp::Full => 0.0,
        Ramp::Rate(rate) => by_k.abs() * degrees(controller) / f64::from(rate) * 60.0,
        Ramp::Minutes(minutes) => f64::from(minutes),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn never_over_never_faster_never_shorter(
        programme in programmes(), controller in controllers(), ceiling in prop::option::of(400.0..800.0_f64), behind_k in 1.0..60.0_f64,
    ) {
        let table = key_in(&programme, &controller, &Wish { ceiling_c: ceiling, behind_k, bands: Vec::new() }).unwrap();
        let mut at_c = programme.start_c;
        let slow = |segment: usize| table.notes.iter().any(|note| matches!(note, Note::TooSlow { segment: this, .. } if *this == segment));
        for row in &table.rows {
            // What can be keyed in at all.
            prop_assert_eq!(row.set_point.rem_euclid(controller.step as i32), 0);
            prop_assert!(row.hold_min <= controller.most_hold_min);
            match (row.ramp, controller.ramp) {
                (Ramp::Full, _) => prop_assert!(controller.full_speed),
                (Ramp::Rate(rate), RampBy::Rate { least, most }) => prop_assert!((least..=most).contains(&rate)),
                (Ramp::Minutes(minutes), RampBy::Minutes { least, most }) => prop_assert!((least..=most).contains(&minutes)),
                _ => prop_assert!(false, "a ramp of the wrong kind"),
            }
            // Never over the ceiling.
            prop_assert!((row.true_c - true_c(&controller, row.set_point)).abs() < 1e-9);
            prop_assert!(ceiling.is_none_or(|ceiling| row.true_c <= ceiling + 1e-6));
            prop_assert!(row.hold_off_min > -1e-6 && row.hold_off_min < 1.0);
            // Never faster: neither in less time nor at a higher rate, but for the steps of ramps that are too slow to be keyed in.
            let segment = row.segments[0];
            let planned = programme.segments[segment];
            let from_c = if segment > 0 { programme.segments[segment - 1].target_c } else { programme.start_c };
            let goes_k = row.true_c - at_c;
            let is_way = goes_k.abs() > 1e-9 && !slow(segment);
            // A kiln that is there already, as near as can be said, waits in the hold instead.
            let is_there = at_c == programme.start_c && goes_k.abs() <= 0.5 * f64::from(controller.step) / degrees(&controller) + 1e-6;
            if let Some(minutes_planned) = planned.ramp_min.filter(|minutes| *minutes > 0.0 && is_way && !is_there) {
                let takes = minutes(&controller, row.ramp, goes_k);
                prop_assert!(takes >= minutes_planned - 1e-6, "{takes} for {minutes_planned}");
                let by_k = (planned.target_c - from_c).abs();
                prop_assert!(goes_k.abs() / takes <= by_k / minutes_planned + 1e-6 || by_k < 1e-9);
                prop_assert!((row.ramp_off_min.unwrap() - (takes - minutes_planned)).abs() < 1e-6);
            }
            at_c = row.true_c;
        }
        // Never shorter: the holds of the rows of each segment, less what they wait for others.
        for (number, segment) in programme.segments.iter().enumerate() {
            let rows = rows_of(&table, number);
            let held: f64 = rows.iter().map(|row| f64::from(row.hold_min) - row.wait_min).sum();
            prop_assert!(held >= segment.hold_min - 1e-6, "{number}: {held} for {}", segment.hold_min);
            let last = rows.last().unwrap();
            let half = 0.5 * f64::from(controller.step) / degrees(&controller);
            let ends = programme.segments[last.segments[1]].target_c;
            let under = ceiling.is_some_and(|ceiling| ends > ceiling - 2.0 * half);
            prop_assert!(under || (last.true_c - ends - last.target_off_k).abs() < 1e-6 && last.target_off_k.abs() <= half + 1e-6);
        }
    }

    #[test]
    fn a_rising_kiln_is_never_ahead_of_its_plan(
        rises in prop::collection::vec((8.0..200.0_f64, 1.0..900.0_f64, 0.0..300.0_f64), 1..6),
        start_c in 0.0..40.0_f64, controller in controllers(), behind_k in 1.0..60.0_f64, waits in any::<bool>(),
    ) {
        let mut target_c = start_c;
        let segments = rises.iter().map(|(by_k, ramp_min, hold_min)| {
            target_c += by_k;
            Segment { target_c, ramp_min: Some(*ramp_min), hold_min: *hold_min }
        });
        let programme = Programme { start_c, segments: segments.collect() };
        let table = key_in(&programme, &controller, &Wish { ceiling_c: None, behind_k, bands: Vec::new() }).unwrap();
        let found = played(&table.rows, &controller, start_c, &Kiln { bands: SWIFT.to_vec(), waits }).unwrap();
        let off = apart(&found.kiln, &planned(&programme, &[]).unwrap());
        let half = 0.5 * f64::from(controller.step) / degrees(&controller);
        prop_assert!(off.hotter_k <= half + 1e-6, "{off:?}");
    }

    #[test]
    fn what_is_played_is_the_plan_but_for_rounding(
        ways in prop::collection::vec((40.0..300.0_f64, any::<bool>(), 30.0..500.0_f64, 0.0..300.0_f64), 1..6),
        controller in controllers(), waits in any::<bool>(),
    ) {
        let mut at = 300.0_f64;
        let segments = ways.iter().map(|(by_k, falls, ramp_min, hold_min)| {
            at = if *falls && at - by_k > 60.0 || at + by_k > 900.0 { at - by_k } else { at + by_k };
            Segment { target_c: at, ramp_min: Some(*ramp_min), hold_min: *hold_min }
        });
        let programme = Programme { start_c: 300.0, segments: segments.collect() };
        let table = key_in(&programme, &controller, &Wish { ceiling_c: None, behind_k: 10.0, bands: Vec::new() }).unwrap();
        let is_other = |note: &Note| !matches!(note, Note::LongHold { .. });
        prop_assume!(!table.notes.iter().any(is_other));
        let found = played(&table.rows, &controller, 300.0, &Kiln { bands: SWIFT.to_vec(), waits }).unwrap();
        let plan = planned(&programme, &[]).unwrap();
        // What the rows say they take longer is what it takes longer.
        let later: f64 = table.rows.iter().map(|row| row.ramp_off_min.unwrap_or(0.0) + row.hold_off_min).sum();
        let repeats = table.rows.iter().filter(|row| row.ramp_off_min.is_none()).count() as f64;
        let took = found.rows.last().unwrap().ends_min - plan.last().unwrap()[0];
        // A row that repeats a hold takes a minute of its own where the controller knows no jump.
        prop_assert!(took >= later - 1e-3 && took <= later + repeats + 1e-2, "{took} for {later}");
        // At the same time it is as far off as it goes in what it is late, and half a step of the controller.
        let steepest = ways.iter().map(|(by_k, _, ramp_min, _)| by_k / ramp_min).fold(0.0, f64::max);
        let half = 0.5 * f64::from(controller.step) / degrees(&controller);
        let off = apart(&found.kiln, &plan).most_k();
        prop_assert!(off <= steepest * (took + 0.01) + half + 1e-6, "{off}");
        prop_assert!(found.rows.iter().all(|row| row.lag_k < 0.01 && row.there_min.is_some()));
    }

    #[test]
    fn rows_played_beside_small_steps(
        programme in programmes(), full_speed in any::<bool>(), waits in any::<bool>(), rates in [60.0..500.0_f64, 40.0..400.0, 30.0..300.0, 50.0..400.0],
    ) {
        let bands = vec![
            Band { up_to_c: 450.0, rise_k_h: rates[0], fall_k_h: rates[2] },
            Band { up_to_c: 0.0, rise_k_h: rates[1], fall_k_h: rates[3] },
        ];
        let ramp = RampBy::Rate { least: 1, most: 1000 };
        let controller =
            Controller { unit: Unit::Celsius, step: 1, ramp, full_speed, most_hold_min: 5999, most_segments: 99, offset_k: 0.0 };
        let table = key_in(&programme, &controller, &Wish { ceiling_c: None, behind_k: 10.0, bands: Vec::new() }).unwrap();
        let found = played(&table.rows, &controller, programme.start_c, &Kiln { bands: bands.clone(), waits }).unwrap();
        let (curve, ends) = small_steps(&table.rows, programme.start_c, &bands, waits);
        // Each row may be a step late at the end of its ramp, of the wait for the kiln and of its hold.
        let late = 0.15 * table.rows.len() as f64 + 0.01;
        for (row, end) in found.rows.iter().zip(&ends) {
            prop_assert!((row.ends_min - end).abs() < late, "{} for {end}", row.ends_min);
        }
        let off = apart(&found.kiln, &curve).most_k();
        prop_assert!(off < late * rates.into_iter().fold(0.0, f64::max) / 60.0, "{off} K");
    }

    #[test]
    fn an_offered_merge_is_off_by_what_it_says(programme in programmes(), most_segments in 1..4_u32) {
        let ramp = RampBy::Rate { least: 1, most: 1000 };
        let controller =
            Controller { unit: Unit::Celsius, step: 1, ramp, full_speed: true, most_hold_min: 5999, most_segments, offset_k: 0.0 };
        let bands = vec![Band { up_to_c: 0.0, rise_k_h: 300.0, fall_k_h: 100.0 }];
        let wish = Wish { ceiling_c: None, behind_k: 1e3, bands: bands.clone() };
        let table = key_in(&programme, &controller, &wish).unwrap();
        prop_assert_eq!(table.too_many.is_some(), table.rows.len() > most_segments as usize);
        let Some(many) = table.too_many else { return Ok(()) };
        prop_assert_eq!(many.by, table.rows.len() - most_segments as usize);
        let plan = planned(&programme, &bands).unwrap();
        let mut merged = programme.clone();
        for merge in &many.merges {
            // Every straight way to merge two: none that leaves fewer rows is nearer to the plan.
            let said = merge.off.most_k();
            for first in 0..merged.segments.len() - 1 {
                let mut straight = merged.clone();
                let two = straight.segments.remove(first + 1);
                let taken: f64 = span(&merged, first, &bands);
                straight.segments[first] = Segment { ramp_min: Some(taken), ..two };
                let before = key_in(&merged, &controller, &wish).unwrap().rows.len();
                if taken > 0.0 && key_in(&straight, &controller, &wish).unwrap().rows.len() < before {
                    let off = by_the_minute(&planned(&straight, &bands).unwrap(), &plan);
                    prop_assert!(off >= said - 1e-6, "{first}: {off} K is less than {said} K");
                }
            }
            merged.segments.splice(merge.first..merge.first + 2, [merge.segment]);
            let off = by_the_minute(&planned(&merged, &bands).unwrap(), &plan);
            prop_assert!((off - said).abs() <= 1e-6, "{off} K, said to be {said} K");
        }
        prop_assert_eq!(&merged, &many.merged);
        let rows = key_in(&merged, &controller, &wish).unwrap().rows.len();
        prop_assert_eq!(many.fits, rows <= most_segments as usize);
    }
}

/// From the beginning of a segment's ramp to the end of the next one's.
fn span(programme: &Programme, first: usize, bands: &[Band]) -> f64 {
    let end = |many: usize, hold: bool| {
        let mut part = Programme { start_c: programme.start_c, segments: programme.segments[..many].to_vec() };
        if let Some(last) = part.segments.last_mut().filter(|_| !hold) {
            last.hold_min = 0.0;
        }
        planned(&part, bands).unwrap().last().unwrap()[0]
    };
    end(first + 2, false) - end(first, true)
}

/// How far two curves are apart at whole minutes and where either has a corner.
fn by_the_minute(one: &[[f64; 2]], other: &[[f64; 2]]) -> f64 {
    let at = |curve: &[[f64; 2]], time: f64| {
        let mut value = curve[0][1];
        for pair in curve.windows(2) {
            if time >= pair[1][0] {
                value = pair[1][1];
            } else if time > pair[0][0] {
                value = pair[0][1] + (pair[1][1] - pair[0][1]) * (time - pair[0][0]) / (pair[1][0] - pair[0][0]);
            }
        }
        value
    };
    let end = one.last().unwrap()[0].max(other.last().unwrap()[0]) as u32 + 1;
    let corners = one.iter().chain(other).map(|point| point[0]);
    (0..=end).map(f64::from).chain(corners).map(|time| (at(one, time) - at(other, time)).abs()).fold(0.0, f64::max)
}

/// The rows of a controller in whole °C by steps of a twentieth of a minute, and when each row is over.
fn small_steps(rows: &[Row], start_c: f64, bands: &[Band], waits: bool) -> (Vec<[f64; 2]>, Vec<f64>) {
    const STEP: f64 = 0.05;
    let (mut time, mut at, mut set) = (0.0, start_c, start_c);
    let (mut curve, mut ends) = (vec![[0.0, start_c]], Vec::new());
    let mut tick = |at: &mut f64, set: f64, time: &mut f64| {
        let (up, mut left) = (set > *at, STEP);
        // Through the edge of a band with what is left of the step.
        for _ in 0..2 {
            let low = if up { *at < 450.0 } else { *at <= 450.0 };
            let band = if low { bands[0] } else { bands[1] };
            let rate = if up { band.rise_k_h } else { band.fall_k_h } / 60.0;
            let edge = if up == low { 450.0 } else { set };
            let goal = if up { set.min(edge) } else { set.max(edge) };
            let takes = ((goal - *at).abs() / rate).min(left);
            *at = if takes < left { goal } else { *at + if up { rate * takes } else { -rate * takes } };
            left -= takes;
        }
        *time += STEP;
        curve.push([*time, *at]);
    };
    for row in rows {
        let to = f64::from(row.set_point);
        if let Ramp::Rate(rate) = row.ramp {
            let ends = time + (to - set).abs() / f64::from(rate) * 60.0;
            let (from, begins) = (set, time);
            while time < ends {
                set = from + (to - from) * ((time + STEP - begins) / (ends - begins)).min(1.0);
                tick(&mut at, set, &mut time);
            }
        }
        set = to;
        while (waits || row.ramp == Ramp::Full) && (at - to).abs() > 1e-9 {
            tick(&mut at, set, &mut time);
        }
        let over = time + f64::from(row.hold_min);
        while time < over - 1e-9 {
            tick(&mut at, set, &mut time);
        }
        ends.push(time);
    }
    (curve, ends)
}
