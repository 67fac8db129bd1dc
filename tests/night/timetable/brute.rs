//! Small nights against trying every start on a grid of 15 minutes, by a second reckoning of what is wrong that shares nothing with the
//! first.

use jiff::civil::Time;
use jiff::tz::TimeZone;
use pourbook::calc::timetable::{
    Ask, Gap, Hands, Hours, Pin, PinKind, Problem, Resource, Span, Step, StepKey, Taken, Timetable, WorkSpan, earliest_pour, plan, pours_at,
};

use super::WEEK;

const GRID: i64 = 15;
const DAY: i64 = 96;

/// A sequence of numbers that look random, always the same (xorshift).
pub struct Dice(pub u64);

impl Dice {
    pub fn below(&mut self, end: i64) -> i64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % end as u64) as i64
    }

    fn one_in(&mut self, many: i64) -> bool {
        self.below(many) == 0
    }
}

/// A night on the grid: all times in quarters of an hour from Monday 17 August 2026, midnight, in UTC. It is poured eleven weeks later.
struct Night {
    steps: Vec<Step>,
    hours: Hours,
    /// For every quarter from the first Monday on: is somebody there?
    is_open: Vec<bool>,
    taken: Vec<(i64, i64, u32)>,
    now: i64,
    pour: i64,
}

/// Midnight of that Monday, in minutes since the epoch: 20682 days.
const MONDAY: f64 = 20682.0 * 1440.0;
const WEEKS: i64 = 14;
const QUARTERS: i64 = WEEKS * 7 * DAY;

fn minutes(quarter: i64) -> f64 {
    MONDAY + (quarter * GRID) as f64
}

fn quarter(minutes: f64) -> i64 {
    let quarters = (minutes - MONDAY) / GRID as f64;
    assert_eq!(quarters.fract(), 0.0, "a start off the grid: {minutes}");
    quarters as i64
}

fn night(dice: &mut Dice) -> Night {
    let mut is_open = vec![false; QUARTERS as usize];
    let mut hours = Hours::default();
    let off = 77 + dice.below(14);
    for day in 0..7 {
        for _ in 0..dice.below(4) {
            let (from, long) = (dice.below(DAY), 1 + dice.below(30));
            let clock = |at: i64| Time::constant((at % DAY / 4) as i8, (at % 4 * GRID) as i8, 0, 0);
            hours.week.push(WorkSpan { weekday: WEEK[day as usize], from: clock(from), until: clock(from + long) });
            for day in (0..WEEKS).map(|week| 7 * week + day).filter(|day| *day != off) {
                for at in day * DAY + from..(day * DAY + from + long).min(QUARTERS) {
                    is_open[at as usize] = true;
                }
            }
        }
    }
    hours.days_off.push("2026-08-17".parse::<jiff::civil::Date>().unwrap().checked_add(jiff::Span::new().days(off)).unwrap());
    let span = |from: i64, until: i64| Span { start: minutes(from), end: minutes(until) };
    for _ in 0..dice.below(3) {
        let (from, long) = (77 * DAY + dice.below(14 * DAY), dice.below(DAY));
        hours.away.push(span(from, from + long));
        is_open[from as usize..(from + long).min(QUARTERS) as usize].fill(false);
    }
    let now = DAY * 81 + dice.below(DAY);
    let pour = now + 4 + dice.below(150);
    let mut taken = Vec::new();
    for _ in 0..dice.below(4) {
        let (from, long, resource) = (now + dice.below(pour - now), dice.below(40), dice.below(2) as u32);
        taken.push((from, from + long, resource));
        hours.taken.push(Taken { resource: Resource(resource), span: span(from, from + long) });
    }
    let many = 1 + dice.below(4);
    let steps = (0..many).map(|key| random_step(dice, key as u32)).collect();
    Night { steps, hours, is_open, taken, now, pour }
}

fn random_step(dice: &mut Dice, key: u32) -> Step {
    let least = if dice.one_in(2) { 0 } else { dice.below(8) };
    let most = (!dice.one_in(3)).then(|| least + if dice.one_in(2) { 0 } else { dice.below(20) });
    let resource = |dice: &mut Dice| dice.one_in(2).then(|| Resource(dice.below(2) as u32));
    Step {
        key: StepKey(key),
        minutes: (dice.below(12) * GRID) as f64,
        needs: [Hands::All, Hands::Start, Hands::End, Hands::Both, Hands::None][dice.below(5) as usize],
        uses: resource(dice),
        then: Gap {
            least_min: (least * GRID) as f64,
            most_min: most.map(|most| (most * GRID) as f64),
            strict: dice.one_in(2),
            keeps: resource(dice),
        },
    }
}

/// What is wrong: uses of what is taken, steps outside hours, waits too long.
type Wrong = (u32, u32, u32);

impl Night {
    fn quarter_open(&self, at: i64) -> bool {
        self.is_open[at as usize]
    }

    /// At a moment somebody is there who goes then, or who comes then.
    fn hand(&self, at: i64) -> bool {
        self.quarter_open(at - 1) || self.quarter_open(at)
    }

    fn has_hands(&self, step: &Step, start: i64) -> bool {
        let end = start + length(step);
        match step.needs {
            Hands::None => true,
            Hands::Start => self.hand(start),
            Hands::End => self.hand(end),
            Hands::Both => self.hand(start) && self.hand(end),
            Hands::All => self.hand(start) && (start..end).all(|at| self.quarter_open(at)),
        }
    }

    /// Is the resource taken somewhere strictly between two moments, or around one?
    fn is_taken(&self, resource: Option<Resource>, from: i64, until: i64) -> bool {
        let of_it = self.taken.iter().filter(|taken| resource == Some(Resource(taken.2)) && taken.0 < taken.1);
        // By points halfway between the grid and, where nothing passes, the moment itself.
        of_it.into_iter().any(|taken| {
            if from == until { taken.0 < from && from < taken.1 } else { (from..until).any(|at| taken.0 <= at && at < taken.1) }
        })
    }

    fn of_step(&self, step: &Step, start: i64) -> Wrong {
        (u32::from(self.is_taken(step.uses, start, start + length(step))), u32::from(!self.has_hands(step, start)), 0)
    }

    /// What is wrong with a wait; nothing where it is not possible.
    fn of_wait(&self, step: &Step, start: i64, follows: i64) -> Option<Wrong> {
        let end = start + length(step);
        let wait = follows - end;
        let is_long = step.then.most_min.is_some_and(|most| (wait * GRID) as f64 > most);
        let possible = (wait * GRID) as f64 >= step.then.least_min && !(is_long && step.then.strict);
        let taken = wait > 0 && self.is_taken(step.then.keeps, end, follows);
        possible.then_some((u32::from(taken), 0, u32::from(is_long)))
    }

    /// The best starts of the first `many` steps before what follows, none before `from`, done ones where they were.
    fn best(&self, many: usize, follows: i64, from: i64, done: Option<(usize, i64)>) -> Option<(Wrong, Vec<i64>)> {
        let mut best = None;
        let mut starts = vec![0; many];
        self.try_all(many, follows, from, done, (0, 0, 0), &mut starts, &mut best);
        best
    }

    // From the last step to the first and from late to early, so that the first of equally good plans is the latest.
    #[allow(clippy::too_many_arguments, reason = "a search by hand")]
    fn try_all(
        &self,
        many: usize,
        follows: i64,
        from: i64,
        done: Option<(usize, i64)>,
        wrong: Wrong,
        starts: &mut Vec<i64>,
        best: &mut Option<(Wrong, Vec<i64>)>,
    ) {
        if best.as_ref().is_some_and(|(least, _)| wrong >= *least) {
            return;
        }
        let Some(last) = many.checked_sub(1) else {
            *best = Some((wrong, starts.clone()));
            return;
        };
        let step = &self.steps[last];
        let here = done.filter(|(at, _)| *at == last).map(|(_, start)| start);
        for start in here.map_or(from..=follows, |start| start..=start).rev() {
            let Some(wait) = self.of_wait(step, start, follows) else { continue };
            let own = if here.is_some() { (0, 0, 0) } else { self.of_step(step, start) };
            let sum = (wrong.0 + wait.0 + own.0, wrong.1 + wait.1 + own.1, wrong.2 + wait.2 + own.2);
            starts[last] = start;
            // What stands before a done step is asked for by itself.
            let many = if here.is_some() { 0 } else { last };
            self.try_all(many, start, from, done, sum, starts, best);
        }
    }

    fn ask<'a>(&'a self, zone: &'a TimeZone) -> Ask<'a> {
        Ask { steps: &self.steps, hours: &self.hours, zone, now: minutes(self.now), pouring_min: 0.0 }
    }

    /// What the timetable itself says is wrong.
    fn told(table: &Timetable) -> Vec<(bool, bool, bool)> {
        let has = |problems: &[Problem], kind: fn(&Problem) -> bool| problems.iter().any(kind);
        let rows = table.rows.iter().map(|row| {
            let never = has(&row.problems, |problem| matches!(problem, Problem::NoFreeTime { .. }));
            let taken = has(&row.problems, |problem| matches!(problem, Problem::Taken { .. }));
            let outside = has(&row.problems, |problem| matches!(problem, Problem::OutsideHours { .. }));
            (taken || never, outside || never, has(&row.problems, |problem| matches!(problem, Problem::WaitTooLong { .. })))
        });
        rows.collect()
    }
}

fn length(step: &Step) -> i64 {
    step.minutes as i64 / GRID
}

fn starts(table: &Timetable) -> Vec<i64> {
    table.rows.iter().map(|row| quarter(row.start)).collect()
}

/// Every problem that is there is told, and none that is not.
fn assert_told(night: &Night, table: &Timetable, over: usize, what: &str) {
    let starts = starts(table);
    for (at, step) in night.steps.iter().enumerate() {
        let follows = starts.get(at + 1).copied().unwrap_or(quarter(table.pour_at));
        let own = if at < over { (0, 0, 0) } else { night.of_step(step, starts[at]) };
        let end = starts[at] + length(step);
        let is_waiting = at + 1 >= over;
        let kept = is_waiting && follows > end && night.is_taken(step.then.keeps, end, follows);
        let long = is_waiting && step.then.most_min.is_some_and(|most| ((follows - end) * GRID) as f64 > most);
        let row = &table.rows[at];
        if row.problems.iter().any(|problem| matches!(problem, Problem::NoFreeTime { .. })) {
            assert!(own.0 + own.1 > 0, "{what}: {row:?}");
            continue;
        }
        assert_eq!(Night::told(table)[at], (own.0 > 0 || kept, own.1 > 0, long), "{what}: row {at} {row:?}");
        let overlaps = row.problems.iter().any(|problem| matches!(problem, Problem::Overlaps { .. } | Problem::WaitTooShort { .. }));
        assert_eq!(overlaps, is_waiting && ((follows - end) * GRID) < step.then.least_min as i64, "{what}: row {at} {row:?}");
        let past = row.problems.iter().any(|problem| matches!(problem, Problem::Past { .. }));
        assert_eq!(past, at >= over && starts[at] < night.now, "{what}: row {at} {row:?}");
    }
}

#[test]
fn no_plan_on_the_grid_is_better() {
    let zone = TimeZone::UTC;
    let mut dice = Dice(0x5eed_cafe_f00d_0001);
    let (mut clear, mut wrong, mut late) = (0, 0, 0);
    for round in 0..600 {
        let night = night(&mut dice);
        let table = plan(&night.ask(&zone), minutes(night.pour), &[]).unwrap();
        assert_told(&night, &table, 0, &format!("round {round}"));
        match night.best(night.steps.len(), night.pour, night.now, None) {
            Some((least, best)) => {
                assert_eq!(starts(&table), best, "round {round}: {least:?} {:?}", night.steps);
                assert_eq!(table.rows.iter().all(|row| row.problems.is_empty()), least == (0, 0, 0));
                if least == (0, 0, 0) { clear += 1 } else { wrong += 1 }
            }
            None => {
                late += 1;
                assert!(starts(&table)[0] < night.now, "round {round}: there was time");
                // Then as if there had been time: where that needs no more than three days it is compared too.
                if let Some((_, best)) =
                    night.best(night.steps.len(), night.pour, night.now - 3 * DAY, None).filter(|(least, _)| *least == (0, 0, 0))
                {
                    assert_eq!(starts(&table), best, "round {round}, too late: {:?}", night.steps);
                }
            }
        }
    }
    println!("without a problem {clear}, with one {wrong}, too late {late}");
    assert!(clear > 100 && wrong > 200 && late > 30);
}

#[test]
fn pins_move_what_stands_before_them_and_nothing_else() {
    let zone = TimeZone::UTC;
    let mut dice = Dice(0x5eed_cafe_f00d_0002);
    let mut compared = 0;
    for round in 0..600 {
        let night = night(&mut dice);
        let many = night.steps.len();
        let mut pins: Vec<Pin> = Vec::new();
        for key in 0..many {
            if dice.one_in(2) {
                pins.push(Pin::wished(StepKey(key as u32), minutes(night.now + dice.below(night.pour - night.now))));
            }
        }
        let table = plan(&night.ask(&zone), minutes(night.pour), &pins).unwrap();
        assert_told(&night, &table, 0, &format!("round {round}"));
        // Every stretch before a pin, or the pour, is the end of a plan of all steps before it, as if no other pin were there.
        let (mut expected, mut found) = (Vec::new(), night.best(many, night.pour, night.now, None));
        for at in (0..many).rev() {
            if let Some(pin) = pins.iter().find(|pin| pin.key == StepKey(at as u32)) {
                expected.push(Some(quarter(pin.start)));
                found = night.best(at, quarter(pin.start), night.now, None);
            } else {
                // Nothing where there is no time for it before now: up to the next pin there is nothing to compare.
                expected.push(found.as_ref().map(|(_, best)| best[at]));
            }
        }
        expected.reverse();
        compared += expected.iter().flatten().count();
        for (at, (start, expected)) in starts(&table).into_iter().zip(expected).enumerate() {
            assert!(expected.is_none_or(|expected| expected == start), "round {round}, row {at}: {start} {expected:?} {pins:?}");
        }
    }
    println!("{compared} starts");
    assert!(compared > 800);
}

#[test]
fn what_comes_after_a_done_step_reckons_with_it() {
    let zone = TimeZone::UTC;
    let mut dice = Dice(0x5eed_cafe_f00d_0003);
    let mut compared = 0;
    for round in 0..600 {
        let night = night(&mut dice);
        let many = night.steps.len();
        let mut done = (dice.below(many as i64) as usize, night.now - dice.below(30));
        let pin = Pin { key: StepKey(done.0 as u32), start: minutes(done.1), kind: PinKind::Done };
        let table = plan(&night.ask(&zone), minutes(night.pour), &[pin]).unwrap();
        // What began by itself at once after it is done too.
        while let Some(next) = night.steps.get(done.0 + 1).filter(|next| matches!(next.needs, Hands::None | Hands::End)) {
            let Gap { least_min, most_min, strict, .. } = night.steps[done.0].then;
            let begins = done.1 + length(&night.steps[done.0]) + least_min as i64 / GRID;
            if !strict || most_min != Some(least_min) || begins > night.now {
                break;
            }
            done = (next.key.0 as usize, begins);
        }
        assert_told(&night, &table, done.0 + 1, &format!("round {round}"));
        if let Some((_, best)) = night.best(many, night.pour, night.now, Some(done)) {
            assert_eq!(starts(&table)[done.0..], best[done.0..], "round {round}");
            compared += 1;
        }
    }
    println!("{compared} nights");
    assert!(compared > 300);
}

#[test]
fn no_pour_on_the_grid_is_earlier() {
    let zone = TimeZone::UTC;
    let mut dice = Dice(0x5eed_cafe_f00d_0004);
    let (mut found, mut none) = (0, 0);
    for round in 0..300 {
        let mut night = night(&mut dice);
        night.steps.truncate(3);
        let last = night.now + 200;
        let is_clear = |pour: i64| {
            night.hand(pour) && night.best(night.steps.len(), pour, night.now, None).is_some_and(|(wrong, _)| wrong == (0, 0, 0))
        };
        let after = night.now + dice.below(20);
        let first = (after..last).find(|pour| is_clear(*pour));
        let earliest = earliest_pour(&night.ask(&zone), minutes(after), &[]).unwrap();
        assert_eq!(earliest.map(quarter).filter(|at| *at < last), first, "round {round}");
        let clock = Time::constant(9, 30, 0, 0);
        let every = (after..last).filter(|at| at.rem_euclid(DAY) == 38 && is_clear(*at));
        let pours = pours_at(&night.ask(&zone), clock, minutes(after), &[], 100).unwrap();
        assert_eq!(pours.into_iter().map(quarter).filter(|at| *at < last).collect::<Vec<_>>(), every.collect::<Vec<_>>());
        if first.is_some() { found += 1 } else { none += 1 }
    }
    println!("{found} found, {none} not");
    assert!(found > 100 && none > 20);
}
