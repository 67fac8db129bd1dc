//! The table for a kiln's controller: examples worked by hand, what must never be, and rows played beside a plain simulation.

use pourbook::calc::controller::{
    Band, Controller, ControllerError, Kiln, Note, Programme, Ramp, RampBy, Row, Segment, Table, Unit, Wish, apart, key_in, planned, played,
};

const CELSIUS: Controller = Controller {
    unit: Unit::Celsius,
    step: 1,
    ramp: RampBy::Rate { least: 1, most: 999 },
    full_speed: true,
    most_hold_min: 5999,
    most_segments: 16,
    offset_k: 0.0,
};

const FAHRENHEIT: Controller = Controller { unit: Unit::Fahrenheit, offset_k: 12.0, ..CELSIUS };

const FREE: Wish = Wish { ceiling_c: None, behind_k: f64::INFINITY, bands: Vec::new() };

fn to(target_c: f64, ramp_min: f64, hold_min: f64) -> Segment {
    Segment { target_c, ramp_min: Some(ramp_min), hold_min }
}

fn full(target_c: f64, hold_min: f64) -> Segment {
    Segment { target_c, ramp_min: None, hold_min }
}

fn from_20(segments: &[Segment]) -> Programme {
    Programme { start_c: 20.0, segments: segments.to_vec() }
}

fn table(segments: &[Segment], controller: &Controller, wish: &Wish) -> Table {
    key_in(&from_20(segments), controller, wish).unwrap()
}

fn keyed(table: &Table) -> Vec<(i32, Ramp, u32)> {
    table.rows.iter().map(|row| (row.set_point, row.ramp, row.hold_min)).collect()
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-3
}

#[test]
fn fahrenheit_with_an_offset_by_hand() {
    let found = table(&[to(150.0, 120.0, 60.0), to(732.0, 180.0, 120.4), full(500.0, 90.0)], &FAHRENHEIT, &FREE);
    // 150 - 12 = 138 °C = 280.4 °F, keyed as 280: 137.778 + 12 = 149.778 true. 129.778 K in 120 min are 116.8 °F/h, keyed as 116: 233.6 °F take
    // 120.828 min. 732 - 12 = 720 °C = 1328 °F. 582 K in 180 min are 349.2 °F/h, keyed as 349: 1048 °F take 180.172 min.
    // 500 - 12 = 488 °C = 910.4 °F.
    assert_eq!(keyed(&found), [(280, Ramp::Rate(116), 60), (1328, Ramp::Rate(349), 121), (910, Ramp::Full, 90)]);
    let [first, second, third] = found.rows[..] else { panic!() };
    assert!(near(first.true_c, 149.778) && near(first.target_off_k, -0.222) && near(first.ramp_off_min.unwrap(), 0.828), "{first:?}");
    assert!(near(second.target_off_k, 0.0) && near(second.ramp_off_min.unwrap(), 0.172) && near(second.hold_off_min, 0.6), "{second:?}");
    assert!(near(third.target_off_k, -0.222) && third.ramp_off_min.is_none() && near(third.hold_off_min, 0.0), "{third:?}");
    assert!(found.notes.is_empty() && found.too_many.is_none());
}

#[test]
fn a_set_point_is_never_rounded_up_over_the_ceiling() {
    let tens = Controller { step: 10, ..FAHRENHEIT };
    // 732 true is 1328 °F, the nearest ten 1330: 721.1 + 12 = 733.1. Under a ceiling of 732 it is 1320: 715.556 + 12 = 727.556.
    assert_eq!(table(&[full(732.0, 10.0)], &tens, &FREE).rows[0].set_point, 1330);
    let under = Wish { ceiling_c: Some(732.0), ..FREE };
    let found = table(&[full(732.0, 10.0)], &tens, &under);
    assert!(found.rows[0].set_point == 1320 && near(found.rows[0].target_off_k, -4.444) && found.notes.is_empty());
    // What is planned over the ceiling is lowered to it, and told; what is exactly at it stays.
    let found = table(&[full(740.0, 10.0), full(732.0, 10.0)], &FAHRENHEIT, &under);
    assert_eq!((found.rows.len(), found.rows[0].set_point), (1, 1328));
    assert_eq!(found.notes, [Note::Lowered { segment: 0, by_k: 8.0 }, Note::Same { segments: [0, 1] }]);
}

#[test]
fn segments_with_one_set_point_are_one_row_and_keep_their_time() {
    // 150.1 and 149.8 are both 150; the second's ramp of 20 min is waited for: 30.2 + 20 + 40 = 90.2.
    let found = table(&[to(150.1, 60.0, 30.2), to(149.8, 20.0, 40.0), to(300.0, 60.0, 5.0)], &CELSIUS, &FREE);
    assert_eq!(keyed(&found), [(150, Ramp::Rate(130), 91), (300, Ramp::Rate(150), 5)]);
    assert_eq!((found.rows[0].segments, found.rows[1].segments), ([0, 1], [2, 2]));
    assert!(near(found.rows[0].hold_off_min, 0.8));
    // A kiln that is there already waits.
    let found = table(&[to(20.3, 30.0, 15.0)], &CELSIUS, &FREE);
    assert_eq!(keyed(&found), [(20, Ramp::Full, 45)]);
}

#[test]
fn long_holds_become_several_rows() {
    let found = table(&[full(150.0, 12_000.0)], &CELSIUS, &FREE);
    assert_eq!(keyed(&found), [(150, Ramp::Full, 5999), (150, Ramp::Full, 5999), (150, Ramp::Full, 2)]);
    assert_eq!(found.notes, [Note::LongHold { segment: 0, rows: 3 }]);
}

#[test]
fn a_ramp_too_slow_for_the_controller_goes_in_steps() {
    let coarse = Controller { ramp: RampBy::Rate { least: 50, most: 999 }, ..CELSIUS };
    // 130 K in 260 min are 30 K/h. In two steps of 65 K, each due after 130 min: at 50 K/h they take 78, so 52 are waited, in which the plan goes
    // 26 K ahead.
    let found = table(&[to(150.0, 260.0, 60.0)], &coarse, &Wish { behind_k: 26.0, ..FREE });
    assert_eq!(keyed(&found), [(20, Ramp::Full, 52), (85, Ramp::Rate(50), 52), (150, Ramp::Rate(50), 60)]);
    assert!(matches!(found.notes[..], [Note::TooSlow { segment: 0, planned_k_h, steps: 2, behind_k }]
        if near(planned_k_h, 30.0) && near(behind_k, 26.0)));
    assert!(found.rows.iter().all(|row| near(row.hold_off_min, 0.0) && row.ramp_off_min.is_none_or(|off| near(off, 0.0))));
    assert_eq!(found.rows.iter().map(|row| row.wait_min.round() as u32).collect::<Vec<_>>(), [52, 52, 0]);
    // Where a row stands before it, that row waits: one step, 104 min of waiting besides the hold of 10.
    let found = table(&[full(40.0, 10.0), to(170.0, 260.0, 60.0)], &coarse, &FREE);
    assert_eq!(keyed(&found), [(40, Ramp::Full, 114), (170, Ramp::Rate(50), 60)]);
}

#[test]
fn controllers_that_count_minutes() {
    let clock = Controller { ramp: RampBy::Minutes { least: 0, most: 120 }, full_speed: false, ..CELSIUS };
    // 300 min are more than it takes: three parts of 40 K in 100 min. 59.5 min are 60. As fast as it can is no minutes.
    let found = table(&[to(140.0, 300.0, 30.0), to(400.0, 59.5, 0.0), full(300.0, 5.0)], &clock, &FREE);
    let minutes = Ramp::Minutes;
    let rows = [(60, minutes(100), 0), (100, minutes(100), 0), (140, minutes(100), 30), (400, minutes(60), 0), (300, minutes(0), 5)];
    assert_eq!(keyed(&found), rows);
    assert!(found.notes.contains(&Note::NoFullSpeed { segment: 2 }));
}

#[test]
fn ramps_faster_than_the_controller_takes() {
    let slow = Controller { ramp: RampBy::Rate { least: 1, most: 300 }, full_speed: false, ..CELSIUS };
    // 580 K in 60 min; at 300 K/h they take 116.
    let found = table(&[to(600.0, 60.0, 5.0), full(700.0, 5.0)], &slow, &FREE);
    assert_eq!(keyed(&found), [(600, Ramp::Rate(300), 5), (700, Ramp::Rate(300), 5)]);
    assert!(near(found.rows[0].ramp_off_min.unwrap(), 56.0));
    assert!(matches!(found.notes[0], Note::TooFast { segment: 0, planned_k_h, most_k_h }
        if near(planned_k_h, 580.0) && near(most_k_h, 300.0)));
    assert_eq!(found.notes[1], Note::NoFullSpeed { segment: 1 });
}

#[test]
fn too_many_rows_and_what_alters_least() {
    let few = Controller { most_segments: 3, ..CELSIUS };
    // 150 to 300 and on to 452 in an hour each is nearly one ramp: halfway it would be 301.
    let plan = [to(150.0, 60.0, 60.0), to(300.0, 60.0, 0.0), to(452.0, 60.0, 60.0), to(732.0, 120.0, 90.0)];
    let found = table(&plan, &few, &FREE);
    let many = found.too_many.unwrap();
    assert_eq!((found.rows.len(), many.by, many.merges.len(), many.fits), (4, 1, 1, true));
    let merge = many.merges[0];
    assert_eq!((merge.first, merge.segment), (1, to(452.0, 120.0, 60.0)));
    assert!(near(merge.off.hotter_k, 1.0) && near(merge.off.colder_k, 0.0) && merge.hold_lost_min <= 0.0);
    assert_eq!(many.merged, from_20(&[plan[0], to(452.0, 120.0, 60.0), plan[3]]));
    // Two holds at 730 and 732: the second's is held for both times; the way there is at the first's rate, 580/120 K/min.
    let plan = [to(150.0, 60.0, 60.0), to(730.0, 120.0, 60.0), to(732.0, 10.0, 60.0), full(500.0, 60.0)];
    let bands = vec![Band { up_to_c: 0.0, rise_k_h: 400.0, fall_k_h: 100.0 }];
    let merge = table(&plan, &few, &Wish { bands, ..FREE }).too_many.unwrap().merges[0];
    assert!(merge.first == 1 && near(merge.off.most_k(), 2.0) && near(merge.hold_lost_min, 0.0), "{merge:?}");
    assert!(near(merge.segment.ramp_min.unwrap(), 120.0 * 582.0 / 580.0) && near(merge.segment.hold_min, 130.0 - 120.0 / 290.0));
    // At full speed through a temperature without a hold is the same without it.
    let merge = table(&[full(300.0, 0.0), full(500.0, 10.0)], &Controller { most_segments: 1, ..CELSIUS }, &FREE).too_many.unwrap();
    assert!(merge.fits && merge.merged.segments == [full(500.0, 10.0)] && merge.merges[0].off.most_k() <= 0.0);
    // Where only the kiln's bands would tell how long a ramp takes, and there are none, nothing is offered.
    let none = table(&[full(300.0, 10.0), full(500.0, 10.0)], &Controller { most_segments: 1, ..CELSIUS }, &FREE).too_many.unwrap();
    assert!(none.merges.is_empty() && !none.fits && none.by == 1);
}

const STEEP: [Band; 2] =
    [Band { up_to_c: 600.0, rise_k_h: 300.0, fall_k_h: 60.0 }, Band { up_to_c: 1100.0, rise_k_h: 200.0, fall_k_h: 120.0 }];

fn row(set_point: i32, ramp: Ramp, hold_min: u32) -> Row {
    let none = Row {
        segments: [0, 0],
        set_point,
        ramp,
        hold_min,
        true_c: f64::from(set_point),
        target_off_k: 0.0,
        ramp_off_min: None,
        wait_min: 0.0,
        hold_off_min: 0.0,
    };
    Row { ..none }
}

#[test]
fn a_kiln_that_falls_too_slowly_lags_by_so_much() {
    // From 730 to 500 in an hour. The kiln falls 120 K in the hour, so that it is at 610 and lags by 110; to 600 in 5 min more, to 500 in 100 more.
    let rows = [row(500, Ramp::Rate(230), 120)];
    let timed = played(&rows, &CELSIUS, 730.0, &Kiln { bands: STEEP.to_vec(), waits: false }).unwrap();
    let only = timed.rows[0];
    assert!(near(only.hold_begins_min, 60.0) && near(only.ends_min, 180.0) && near(only.lag_k, 110.0), "{only:?}");
    assert!(near(only.there_min.unwrap(), 165.0) && near(only.lag_at_end_k, 0.0));
    let waited = played(&rows, &CELSIUS, 730.0, &Kiln { bands: STEEP.to_vec(), waits: true }).unwrap().rows[0];
    assert!(near(waited.hold_begins_min, 165.0) && near(waited.ends_min, 285.0) && near(waited.lag_k, 110.0), "{waited:?}");
    // Beside the plan: at 60 min the plan is at 500 and the kiln at 610.
    let plan = planned(&Programme { start_c: 730.0, segments: vec![to(500.0, 60.0, 120.0)] }, &[]).unwrap();
    let off = apart(&timed.kiln, &plan);
    assert!(near(off.hotter_k, 110.0) && near(off.colder_k, 0.0), "{off:?}");
    // A hold of an hour is over before the kiln is there: 60 min more are 5 to 600 and 55 at 60 K/h, to 545.
    let short = played(&[row(500, Ramp::Rate(230), 60)], &CELSIUS, 730.0, &Kiln { bands: STEEP.to_vec(), waits: false }).unwrap().rows[0];
    assert!(short.there_min.is_none() && near(short.lag_at_end_k, 45.0), "{short:?}");
}

#[test]
fn full_speed_is_over_when_the_kiln_is_there() {
    // 20 to 600 at 300 K/h is 116 min, to 700 at 200 K/h 30 more.
    let found = played(&[row(700, Ramp::Full, 30)], &CELSIUS, 20.0, &Kiln { bands: STEEP.to_vec(), waits: false }).unwrap();
    let only = found.rows[0];
    assert!(
        near(only.hold_begins_min, 146.0) && near(only.ends_min, 176.0) && near(only.there_min.unwrap(), 146.0) && near(only.lag_k, 0.0)
    );
    assert_eq!(planned(&from_20(&[full(700.0, 30.0)]), &STEEP).unwrap().len(), found.kiln.len());
    assert!(apart(&found.kiln, &planned(&from_20(&[full(700.0, 30.0)]), &STEEP).unwrap()).most_k() < 1e-9);
}

#[test]
fn curves_are_apart_just_before_a_jump_too() {
    // One goes up by 1 K a minute and falls back to nought at 10; the other stays at 4: 6 above it just before, 4 below it just after.
    let off = apart(&[[0.0, 0.0], [10.0, 10.0], [10.0, 0.0], [20.0, 0.0]], &[[0.0, 4.0]]);
    assert!(near(off.hotter_k, 6.0) && near(off.colder_k, 4.0) && near(off.most_k(), 6.0), "{off:?}");
    assert!(apart(&[], &[[0.0, 4.0]]).most_k() <= 0.0);
}

#[test]
fn numbers_that_make_no_sense_are_errors() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e9] {
        let out = |result: Result<Table, ControllerError>| assert!(matches!(result, Err(ControllerError::OutOfRange { .. })));
        out(key_in(&from_20(&[full(bad, 1.0)]), &CELSIUS, &FREE));
        out(key_in(&from_20(&[full(100.0, bad)]), &CELSIUS, &FREE));
        out(key_in(&from_20(&[to(100.0, bad, 1.0)]), &CELSIUS, &FREE));
        out(key_in(&from_20(&[]), &Controller { offset_k: bad, ..CELSIUS }, &FREE));
        out(key_in(&from_20(&[]), &CELSIUS, &Wish { ceiling_c: Some(bad), ..FREE }));
        assert!(played(&[], &CELSIUS, bad, &Kiln { bands: STEEP.to_vec(), waits: true }).is_err());
        let bands = vec![Band { rise_k_h: bad, ..STEEP[0] }];
        assert!(played(&[], &CELSIUS, 20.0, &Kiln { bands, waits: true }).is_err());
    }
    assert!(key_in(&from_20(&[]), &CELSIUS, &Wish { behind_k: f64::NAN, ..FREE }).is_err());
    let kiln = Kiln { bands: STEEP.to_vec(), waits: true };
    assert!(played(&[row(100, Ramp::Rate(0), 1)], &CELSIUS, 20.0, &kiln).is_err());
    assert_eq!(played(&[], &CELSIUS, 20.0, &Kiln { bands: Vec::new(), waits: true }), Err(ControllerError::Bands));
    let back = [STEEP[1], STEEP[0], STEEP[1]];
    assert_eq!(planned(&from_20(&[]), &back), Err(ControllerError::Bands));
    let minute = Controller { most_hold_min: 1, ..CELSIUS };
    assert!(matches!(key_in(&from_20(&[full(100.0, 100_000.0)]), &minute, &FREE), Err(ControllerError::TooMany { .. })));
    assert!(table(&[], &CELSIUS, &FREE).rows.is_empty());
}
