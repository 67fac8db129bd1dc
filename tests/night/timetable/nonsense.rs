//! Input that makes no sense: an error or an honest answer, never a panic, and never long.

use std::time::{Duration, Instant};

use jiff::civil::Time;
use jiff::tz::TimeZone;
use pourbook::calc::timetable::{
    Ask, Gap, Hands, Hours, Pin, Problem, Resource, Span, Step, StepKey, Taken, TimetableError, bands, earliest_pour, free_spans,
    nearest_allowed, next_allowed, plan, pours_at, previous_allowed,
};
use proptest::prelude::*;

use super::{INVEST, KILN, SET, WEEK, WORKDAYS, ask, at, problems, step, work, zone};

const NOW: f64 = 29_900_000.0;

fn any_number() -> impl Strategy<Value = f64> {
    let odd =
        prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, f64::MIN_POSITIVE, -0.0, 1e8, -1e8, 86_400.0, NOW]);
    prop_oneof![odd, any::<f64>(), -1e5..1e5, NOW - 1e5..NOW + 1e5]
}

fn any_span() -> impl Strategy<Value = Span> {
    (any_number(), any_number()).prop_map(|(start, end)| Span { start, end })
}

fn any_step() -> impl Strategy<Value = Step> {
    let needs = prop::sample::select(vec![Hands::All, Hands::Start, Hands::End, Hands::Both, Hands::None]);
    let gap = (any_number(), prop::option::of(any_number()), any::<bool>());
    (0_u32..6, any_number(), needs, any::<bool>(), gap).prop_map(|(key, minutes, needs, kiln, (least_min, most_min, strict))| Step {
        key: StepKey(key),
        minutes,
        needs,
        uses: kiln.then_some(KILN),
        then: Gap { least_min, most_min, strict, keeps: kiln.then_some(Resource(1)) },
    })
}

proptest! {
    #![proptest_config(super::laws::fixed(3000))]

    #[test]
    fn nothing_panics(
        steps in prop::collection::vec(any_step(), 0..4),
        away in prop::collection::vec(any_span(), 0..2),
        taken in prop::collection::vec(any_span(), 0..2),
        numbers in prop::array::uniform5(any_number()),
    ) {
        let zone = TimeZone::UTC;
        let taken = taken.into_iter().map(|span| Taken { resource: KILN, span }).collect();
        let hours = Hours { week: work(&WORKDAYS, (22, 0), (3, 0)), away, taken, ..Hours::default() };
        let [now, pouring_min, pour, pin, other] = numbers;
        let ask = Ask { steps: &steps, hours: &hours, zone: &zone, now, pouring_min };
        let pins = [Pin::wished(StepKey(1), pin), Pin::done(StepKey(0), other)];
        for pins in [&[][..], &pins[..1], &pins[..]] {
            if let Ok(table) = plan(&ask, pour, pins) {
                prop_assert!(table.rows.iter().all(|row| row.start.is_finite() && row.end >= row.start && row.wait_min.is_finite()));
            }
            let _ = earliest_pour(&ask, pour, pins);
            let _ = pours_at(&ask, Time::MAX, pour, pins, usize::MAX);
        }
        for of in [nearest_allowed, next_allowed, previous_allowed] {
            let _ = of(&ask, StepKey(1), pin);
        }
        let _ = bands(&hours, &zone, pin, other);
        let _ = free_spans(&hours, &zone, pin, other);
    }
}

#[test]
fn what_makes_no_sense_is_an_error() {
    let zone = TimeZone::UTC;
    let hours = Hours { week: work(&WORKDAYS, (9, 0), (17, 0)), ..Hours::default() };
    let good = step(INVEST, 60.0, Hands::All, Gap::ANY);
    let of = |step: Step| plan(&ask(&[step], &hours, &zone, NOW), NOW + 5000.0, &[]);
    assert!(of(good).is_ok());
    let out_of_range = |found: Result<_, TimetableError>| matches!(found, Err(TimetableError::OutOfRange { .. }));
    for minutes in [f64::NAN, -1.0, f64::INFINITY, 1e9] {
        assert!(out_of_range(of(Step { minutes, ..good })), "{minutes}");
        assert!(out_of_range(of(Step { then: Gap::at_least(minutes), ..good })), "{minutes}");
        assert!(out_of_range(of(Step { then: Gap::at_most(minutes), ..good })), "{minutes}");
    }
    let reversed = Gap { least_min: 10.0, ..Gap::at_most(5.0) };
    assert!(matches!(of(Step { then: reversed, ..good }), Err(TimetableError::Reversed { .. })));
    let with = |steps: &[Step], pins: &[Pin]| plan(&ask(steps, &hours, &zone, NOW), NOW + 5000.0, pins).unwrap_err();
    assert_eq!(with(&[good, good], &[]), TimetableError::SameKey(INVEST));
    assert_eq!(with(&[good], &[Pin::wished(SET, NOW)]), TimetableError::NoSuchStep(SET));
    assert_eq!(with(&[good], &[Pin::wished(INVEST, NOW), Pin::done(INVEST, NOW)]), TimetableError::PinnedTwice(INVEST));
    assert!(out_of_range(Err(with(&[good], &[Pin::wished(INVEST, f64::NAN)]))));
    assert!(out_of_range(Err(with(&[good], &[Pin::wished(INVEST, NOW - 200_000.0)]))));
    let many: Vec<Step> = (0..1000).map(|key| Step { key: StepKey(key), ..good }).collect();
    assert!(matches!(with(&many, &[]), TimetableError::TooMany { .. }));
    let backwards = Hours { taken: vec![Taken { resource: KILN, span: Span { start: NOW, end: NOW - 1.0 } }], ..hours.clone() };
    let error = plan(&ask(&[good], &backwards, &zone, NOW), NOW + 5000.0, &[]).unwrap_err();
    assert_eq!(error.to_string(), "a time taken ends before it begins.");
}

// Nobody is ever there, or the kiln is taken for ever: it is given up honestly, and the plan stands where it would have to be.
#[test]
fn hours_that_never_open_are_given_up() {
    let zone = zone("Europe/Dublin");
    let steps = super::whole_night();
    let pour = at(&zone, "2026-11-12T09:30");
    let none = Hours::default();
    let table = plan(&ask(&steps, &none, &zone, pour - 50_000.0), pour, &[]).unwrap();
    let needs_hands = steps.iter().filter(|step| step.needs != Hands::None);
    let expected: Vec<_> = needs_hands.map(|step| (step.key, Problem::NoFreeTime { days: 60 })).collect();
    assert_eq!(problems(&table), expected);
    // All the same in order, one right after the other.
    assert!(table.rows.iter().all(|row| row.wait_min == 0.0));
    let always = work(&WEEK, (0, 0), (0, 0));
    let taken = vec![Taken { resource: KILN, span: Span { start: pour - 200_000.0, end: pour + 200_000.0 } }];
    let table = plan(&ask(&steps, &Hours { week: always, taken, ..Hours::default() }, &zone, pour - 50_000.0), pour, &[]).unwrap();
    assert_eq!(problems(&table), [(super::BURNOUT, Problem::NoFreeTime { days: 60 })]);
}

#[test]
fn no_steps_and_the_pour_alone() {
    let zone = zone("Europe/Dublin");
    let hours = Hours { week: work(&WORKDAYS, (9, 0), (17, 0)), ..Hours::default() };
    let night = at(&zone, "2026-11-12T03:00");
    let table = plan(&ask(&[], &hours, &zone, night + 60.0), night, &[]).unwrap();
    assert!(table.rows.is_empty() && table.next().is_none());
    assert_eq!(table.pour_problems, [Problem::Past { by_min: 60.0 }, Problem::OutsideHours { at: night, minutes: 0.0 }]);
    assert_eq!(earliest_pour(&ask(&[], &hours, &zone, night), night, &[]).unwrap(), Some(night + 360.0));
}

/// The quickest of several runs: others use the machine too.
fn quickest<T>(run: impl Fn() -> T) -> Duration {
    let times = (0..20).map(|_| {
        let begins = Instant::now();
        std::hint::black_box(run());
        begins.elapsed()
    });
    times.min().unwrap()
}

#[test]
fn it_is_quick_enough_to_drag() {
    let zone = zone("America/New_York");
    let mut week = work(&WORKDAYS, (9, 0), (12, 30));
    week.extend(work(&WORKDAYS, (13, 15), (18, 0)));
    let now = at(&zone, "2026-10-20T10:00");
    let taken = (0..30)
        .map(|night| now - 40_000.0 + 1440.0 * f64::from(night))
        .map(|start| Taken { resource: KILN, span: Span { start, end: start + 900.0 } });
    let hours = Hours { week, taken: taken.collect(), days_off: vec!["2026-11-02".parse().unwrap()], ..Hours::default() };
    let steps: Vec<Step> = (0..20)
        .map(|key| Step { key: StepKey(key), uses: (key > 17).then_some(KILN), ..step(INVEST, 45.0, Hands::All, Gap::at_most(600.0)) })
        .collect();
    let pour = at(&zone, "2026-11-05T09:30");
    let asked = ask(&steps, &hours, &zone, now);
    let pin = [Pin::wished(StepKey(9), pour - 3000.0)];
    let planned = quickest(|| plan(&asked, pour, &pin));
    let late = quickest(|| plan(&ask(&steps, &hours, &zone, pour - 100.0), pour, &pin));
    let earliest = quickest(|| earliest_pour(&asked, now, &[]));
    let snapped = quickest(|| nearest_allowed(&asked, StepKey(9), pour - 3000.0));
    println!("20 steps, 60 days: plan {planned:?}, too late {late:?}, earliest pour {earliest:?}, snap {snapped:?}");
    assert!(planned.max(late).max(earliest).max(snapped) < Duration::from_millis(100), "far beyond what a frame takes, even unoptimised");
}

// The most of everything that is taken: forty steps, one right after the other, fifty spans a week, five hundred times away and taken.
#[test]
fn the_worst_is_bounded() {
    let zone = zone("America/New_York");
    let mut week = Vec::new();
    for hour in 0..7 {
        week.extend(work(&WEEK, (3 * hour, 7), (3 * hour + 1, 11)));
    }
    let every = |offset: f64, length: f64| {
        move |night: u32| Span {
            start: NOW - 85_000.0 + offset + 340.0 * f64::from(night),
            end: NOW - 85_000.0 + offset + length + 340.0 * f64::from(night),
        }
    };
    let taken = (0..500).map(every(11.3, 71.7)).map(|span| Taken { resource: KILN, span }).collect();
    let hours = Hours { week, away: (0..500).map(every(170.9, 5.3)).collect(), taken, days_off: Vec::new() };
    let step = |key: u32| Step {
        key: StepKey(key),
        minutes: 97.3 + f64::from(key),
        needs: if key.is_multiple_of(2) { Hands::All } else { Hands::Both },
        uses: Some(KILN),
        then: Gap { keeps: Some(KILN), most_min: Some(f64::from(key % 3)), strict: key.is_multiple_of(3), least_min: 0.0 },
    };
    let steps: Vec<Step> = (0..40).map(step).collect();
    let begins = Instant::now();
    let table = plan(
        &ask(&steps, &hours, &zone, NOW - 80_000.0),
        NOW,
        &[Pin::wished(StepKey(39), NOW - 86_000.0), Pin::done(StepKey(0), NOW + 86_000.0)],
    )
    .unwrap();
    let took = begins.elapsed();
    println!("the worst: {took:?}");
    assert_eq!(table.rows.len(), 40);
    assert!(took < Duration::from_secs(20), "{took:?}");
}
