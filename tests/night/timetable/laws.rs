//! Laws that hold for any night: random steps, hours, zones and pins, not on any grid.

use jiff::civil::Time;
use jiff::tz::TimeZone;
use pourbook::calc::timetable::{
    Ask, GRID_MIN, Gap, Hands, Hours, Pin, Problem, Resource, Row, Span, Step, StepKey, Taken, Timetable, WorkSpan, earliest_pour,
    free_spans, nearest_allowed, next_allowed, plan, pours_at, previous_allowed,
};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use super::{WEEK, zone};

const WEEK_MIN: f64 = 7.0 * 1440.0;
/// 1 October 2026 and half a year from then: both changes of the clock.
const FIRST: f64 = 20727.0 * 1440.0;
/// What the rounding of lengths to 2⁻²⁰ min may make of a sum.
const ROUNDING: f64 = 1e-5;

#[derive(Debug, Clone)]
struct Night {
    steps: Vec<Step>,
    hours: Hours,
    zone: &'static str,
    now: f64,
    pour: f64,
    pins: Vec<Pin>,
    pouring_min: f64,
}

impl Night {
    fn ask<'a>(&'a self, zone: &'a TimeZone) -> Ask<'a> {
        Ask { steps: &self.steps, hours: &self.hours, zone, now: self.now, pouring_min: self.pouring_min }
    }

    fn plan(&self) -> Timetable {
        plan(&self.ask(&zone(self.zone)), self.pour, &self.pins).unwrap()
    }

    fn shifted(&self, by: f64) -> Self {
        let mut night = self.clone();
        let later = |span: &mut Span| *span = Span { start: span.start + by, end: span.end + by };
        night.now += by;
        night.pour += by;
        night.pins.iter_mut().for_each(|pin| pin.start += by);
        night.hours.away.iter_mut().for_each(later);
        night.hours.taken.iter_mut().for_each(|taken| later(&mut taken.span));
        let days = jiff::Span::new().days((by / 1440.0) as i64);
        night.hours.days_off.iter_mut().for_each(|day| *day = day.checked_add(days).unwrap());
        night
    }
}

fn resource() -> impl Strategy<Value = Option<Resource>> {
    prop::option::of((0_u32..2).prop_map(Resource))
}

fn gap() -> impl Strategy<Value = Gap> {
    let any = (prop_oneof![Just(0.0), 0.0..300.0], prop::option::of(prop_oneof![Just(0.0), 0.0..3000.0]), any::<bool>(), resource());
    any.prop_map(|(least_min, more, strict, keeps)| Gap { least_min, most_min: more.map(|more| least_min + more), strict, keeps })
}

fn step() -> impl Strategy<Value = Step> {
    let needs = prop::sample::select(vec![Hands::All, Hands::Start, Hands::End, Hands::Both, Hands::None]);
    let minutes = prop_oneof![Just(0.0), 0.0..400.0, (0_u32..1000).prop_map(f64::from)];
    (minutes, needs, resource(), gap()).prop_map(|(minutes, needs, uses, then)| Step { key: StepKey(0), minutes, needs, uses, then })
}

fn hours() -> impl Strategy<Value = Hours> {
    let clock = || (0_i8..24, 0_i8..60).prop_map(|(hour, minute)| Time::constant(hour, minute, 0, 0));
    let work = (0_usize..7, clock(), clock()).prop_map(|(day, from, until)| WorkSpan { weekday: WEEK[day], from, until });
    let span = || (0.0..260_000.0, 0.0..3000.0).prop_map(|(from, long)| Span { start: FIRST + from, end: FIRST + from + long });
    let taken = (0_u32..2, span()).prop_map(|(of, span)| Taken { resource: Resource(of), span });
    let day = (0_i64..180).prop_map(|day| jiff::civil::date(2026, 10, 1).checked_add(jiff::Span::new().days(day)).unwrap());
    let lists = (prop::collection::vec(work, 0..12), prop::collection::vec(day, 0..20), prop::collection::vec(span(), 0..10));
    (lists, prop::collection::vec(taken, 0..30)).prop_map(|((week, days_off, away), taken)| Hours { week, days_off, away, taken })
}

fn night() -> impl Strategy<Value = Night> {
    let zones = prop::sample::select(vec!["America/New_York", "Europe/Dublin", "Asia/Kolkata", "UTC", "Australia/Lord_Howe"]);
    let pins = prop::collection::vec((0_usize..8, -20_000.0..2000.0, any::<bool>()), 0..3);
    let times = (0.0..260_000.0, -30_000.0..30_000.0, prop_oneof![Just(0.0), 0.0..60.0]);
    (prop::collection::vec(step(), 0..8), hours(), zones, times, pins).prop_map(|(mut steps, hours, zone, times, pins)| {
        for (key, step) in (0..).zip(&mut steps) {
            step.key = StepKey(key);
        }
        let pour = FIRST + times.0;
        let mut night = Night { steps, hours, zone, now: pour - times.1, pour, pins: Vec::new(), pouring_min: times.2 };
        for (at, before, is_done) in pins {
            let key = StepKey(at as u32);
            if at < night.steps.len() && night.pins.iter().all(|pin| pin.key != key) {
                let start = pour + before;
                night.pins.push(if is_done { Pin::done(key, start) } else { Pin::wished(key, start) });
            }
        }
        night
    })
}

fn told(row: &Row, kind: fn(&Problem) -> bool) -> bool {
    row.problems.iter().any(kind)
}

/// Minutes of a span in which nobody is there.
fn alone(free: &[Span], start: f64, end: f64) -> f64 {
    end - start - free.iter().map(|span| (span.end.min(end) - span.start.max(start)).max(0.0)).sum::<f64>()
}

fn is_there(free: &[Span], at: f64) -> bool {
    free.iter().any(|span| (span.start..=span.end).contains(&at))
}

fn attended(needs: Hands, free: &[Span], start: f64, end: f64) -> bool {
    match needs {
        Hands::None => true,
        Hands::Start => is_there(free, start),
        Hands::End => is_there(free, end),
        Hands::Both => is_there(free, start) && is_there(free, end),
        Hands::All => is_there(free, start) && alone(free, start, end) <= 0.0,
    }
}

pub fn fixed(cases: u32) -> ProptestConfig {
    ProptestConfig { cases, failure_persistence: None, rng_seed: RngSeed::Fixed(20_261_112), ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(fixed(1500))]

    #[test]
    fn lengths_and_waits_are_kept_or_told(night in night()) {
        let table = night.plan();
        prop_assert_eq!(table.rows.len(), night.steps.len());
        prop_assert_eq!(&table, &night.plan(), "the same again");
        for (at, (row, step)) in table.rows.iter().zip(&night.steps).enumerate() {
            let follows = table.rows.get(at + 1).map_or(table.pour_at, |next| next.start);
            prop_assert_eq!(row.key, step.key);
            prop_assert!((row.end - row.start - step.minutes).abs() < ROUNDING);
            prop_assert_eq!(row.wait_min, follows - row.end);
            let (least, most) = (step.then.least_min, step.then.most_min.unwrap_or(f64::INFINITY));
            if row.over && table.rows.get(at + 1).is_some_and(|next| next.over) {
                prop_assert!(row.problems.is_empty());
                continue;
            }
            let is_short = told(row, |problem| matches!(problem, Problem::Overlaps { .. } | Problem::WaitTooShort { .. }));
            let is_long = told(row, |problem| matches!(problem, Problem::WaitTooLong { .. }));
            prop_assert!(is_short || row.wait_min > least - ROUNDING);
            prop_assert!(!is_short || row.wait_min < least + ROUNDING);
            prop_assert!(is_long || row.wait_min < most + ROUNDING);
            prop_assert!(!is_long || row.wait_min > most - ROUNDING);
            // Only a pin, or a lack of time after what is done, breaks what is strict or too short.
            let is_settled = row.over || night.pins.iter().any(|pin| pin.key == step.key);
            prop_assert!(is_settled || !is_short);
            prop_assert!(is_settled || !(is_long && step.then.strict));
        }
    }

    #[test]
    fn nobody_works_alone_unless_told(night in night()) {
        let table = night.plan();
        for (row, step) in table.rows.iter().zip(&night.steps).filter(|(row, _)| !row.over) {
            let free = free_spans(&night.hours, &zone(night.zone), row.start - 2000.0, row.end + 2000.0).unwrap();
            let never = told(row, |problem| matches!(problem, Problem::NoFreeTime { .. }));
            let outside = row.problems.iter().find_map(|problem| match problem {
                Problem::OutsideHours { at, minutes } => Some((*at, *minutes)),
                _ => None,
            });
            let is_fine = attended(step.needs, &free, row.start, row.end);
            prop_assert!(never || is_fine == outside.is_none(), "{:?} {:?}", row, free);
            if let Some((at, minutes)) = outside {
                prop_assert!((row.start..=row.end).contains(&at));
                let is_all = step.needs == Hands::All && row.end > row.start;
                let missing = if is_all { alone(&free, row.start, row.end) } else { 0.0 };
                prop_assert!((minutes - missing).abs() < ROUNDING);
            }
            let of_it = night.hours.taken.iter().filter(|taken| Some(taken.resource) == step.uses).map(|taken| taken.span);
            let overlaps = of_it
                .filter(|span| span.start < span.end)
                .any(|span| span.start < row.end - ROUNDING && row.start + ROUNDING < span.end);
            let is_taken = told(row, |problem| matches!(problem, Problem::Taken { .. }));
            prop_assert!(!overlaps || is_taken || never);
            let is_past = told(row, |problem| matches!(problem, Problem::Past { by_min } if *by_min > ROUNDING));
            prop_assert_eq!(row.start < night.now - ROUNDING, is_past);
        }
    }

    #[test]
    fn a_week_later_is_the_same_a_week_later(night in night(), weeks in 1_u8..20) {
        let night = Night { zone: if night.zone == "UTC" { "UTC" } else { "Asia/Kolkata" }, ..night };
        // Whole multiples of a tick, so that nothing is rounded anew.
        let by = f64::from(weeks) * WEEK_MIN;
        let (one, other) = (night.plan(), night.shifted(by).plan());
        for (row, later) in one.rows.iter().zip(&other.rows) {
            prop_assert!((later.start - row.start - by).abs() < ROUNDING, "{:?} {:?}", row, later);
            prop_assert_eq!(row.problems.len(), later.problems.len());
        }
    }

    #[test]
    fn a_wish_leaves_what_comes_after_it(night in night()) {
        let mut night = night;
        night.pins.retain(|pin| night.steps.iter().any(|step| step.key == pin.key));
        night.pins.truncate(1);
        night.pins.iter_mut().for_each(|pin| *pin = Pin::wished(pin.key, pin.start));
        let pinned = night.plan();
        let free = Night { pins: Vec::new(), ..night.clone() }.plan();
        for pin in &night.pins {
            let at = pin.key.0 as usize;
            prop_assert!((pinned.rows[at].start - pin.start).abs() < ROUNDING);
            for (one, other) in pinned.rows[at + 1..].iter().zip(&free.rows[at + 1..]) {
                prop_assert_eq!(one.start, other.start);
            }
            // Put where it stood already, it moves nothing at all.
            let again = Night { pins: vec![Pin::wished(pin.key, free.rows[at].start)], ..night.clone() }.plan();
            prop_assert!(again.rows.iter().zip(&free.rows).all(|(one, other)| one.start == other.start));
        }
    }

    #[test]
    fn the_earliest_pour_is_possible_and_none_before(night in night(), after in 0.0..5000.0) {
        let of_zone = zone(night.zone);
        let ask = night.ask(&of_zone);
        let pins: Vec<Pin> = night.pins.iter().copied().filter(|pin| (pin.start - night.now).abs() < 50_000.0).collect();
        let pins: Vec<Pin> = pins.into_iter().filter(|pin| pin.kind == pourbook::calc::timetable::PinKind::Done).collect();
        let after = night.now + after;
        let earliest = earliest_pour(&ask, after, &pins).unwrap();
        if let Some(pour) = earliest {
            prop_assert!(pour > after - ROUNDING);
            let table = plan(&ask, pour, &pins).unwrap();
            prop_assert!(table.is_clear(), "{:?}", table);
        }
        for share in [0.1, 0.5, 0.9, 0.999] {
            let end = earliest.unwrap_or(after + 20_000.0);
            let before = after + share * (end - after);
            if before < end - ROUNDING {
                // Done ones may be at fault by what comes after them only, which is a fault all the same.
                prop_assert!(!plan(&ask, before, &pins).unwrap().is_clear());
            }
        }
        let clock = Time::constant(9, 30, 0, 0);
        let pours = pours_at(&ask, clock, after, &pins, 4).unwrap();
        prop_assert!(pours.windows(2).all(|pair| pair[0] < pair[1]));
        for pour in pours {
            prop_assert!(earliest.is_some_and(|earliest| earliest <= pour));
            prop_assert!(plan(&ask, pour, &pins).unwrap().is_clear());
        }
    }

    #[test]
    fn a_step_snaps_to_the_nearest_start_that_is_allowed(night in night(), at in 0_usize..8, offset in -4000.0..20_000.0) {
        prop_assume!(!night.steps.is_empty());
        let at = at % night.steps.len();
        // The step for itself, without the wait after it.
        let mut night = night;
        night.steps[at].then = Gap::ANY;
        let of_zone = zone(night.zone);
        let ask = night.ask(&of_zone);
        let (key, wished) = (StepKey(at as u32), night.now + offset);
        let is_allowed = |start: f64| {
            let table = plan(&ask, start + 10_000.0, &[Pin::wished(key, start)]).unwrap();
            let fault = |problem: &Problem| matches!(problem, Problem::Past { .. } | Problem::OutsideHours { .. } | Problem::Taken { .. });
            !table.rows[at].problems.iter().any(fault)
        };
        let nearest = nearest_allowed(&ask, key, wished).unwrap();
        let (next, previous) = (next_allowed(&ask, key, wished).unwrap(), previous_allowed(&ask, key, wished).unwrap());
        for found in [nearest, next, previous].into_iter().flatten() {
            prop_assert!(is_allowed(found), "{}", found);
        }
        prop_assert!(next.is_none_or(|next| next > wished) && previous.is_none_or(|previous| previous < wished));
        // No point of the grid that is nearer is allowed.
        let reach = nearest.map_or(3000.0, |nearest| (nearest - wished).abs()).min(3000.0) - ROUNDING;
        let first = ((wished - reach) / GRID_MIN).ceil() as i64;
        let nearer = (first..).map(|grid| grid as f64 * GRID_MIN).take_while(|grid| *grid <= wished + reach);
        for grid in nearer.step_by(7) {
            prop_assert!(!is_allowed(grid), "{} is nearer to {} than {:?}", grid, wished, nearest);
        }
    }
}
