//! What is asked, checked and turned into ticks.

use super::own::taken_spans;
use super::reach::Way;
use super::ticks::{DAY, Ticks, of_length, of_moment};
use super::{Ask, Hands, Hours, Pin, PinKind, SEARCH_DAYS, StepKey, TimetableError};

/// The most steps of a timetable.
pub(super) const MOST_STEPS: usize = 40;
/// The most spans or days of one kind. With the bounds on steps and lengths this bounds time and memory for any input.
const MOST_SPANS: usize = 500;
/// The most spans of a week.
const MOST_WEEK: usize = 50;
/// The longest step, the longest way of a whole timetable, and how far a pin may be from the pour, in min: 60 days.
const LONGEST_MIN: f64 = 60.0 * 24.0 * 60.0;
/// The longest that a wait may be allowed to be, in min: 366 days.
const LONGEST_WAIT_MIN: f64 = 366.0 * 24.0 * 60.0;

/// How far the search reaches beyond the length of the steps.
pub(super) const SEARCH: Ticks = SEARCH_DAYS as Ticks * DAY;

/// What is asked, in ticks.
#[derive(Debug, Clone)]
pub(super) struct Checked {
    pub ways: Vec<Way>,
    pub now: Ticks,
    pub pouring: Ticks,
    /// All steps with their least waits.
    pub total: Ticks,
}

/// A pin, in ticks.
#[derive(Debug, Clone, Copy)]
pub(super) struct TickPin {
    pub start: Ticks,
    pub kind: PinKind,
    /// Somebody said so; otherwise it follows from what is done.
    pub is_said: bool,
}

/// Checks what is asked.
///
/// # Errors
/// What is no number, too much, or contradicts itself.
pub(super) fn check(ask: &Ask<'_>) -> Result<Checked, TimetableError> {
    hours(ask.hours)?;
    at_most("steps", ask.steps.len(), MOST_STEPS)?;
    let mut keys: Vec<StepKey> = ask.steps.iter().map(|step| step.key).collect();
    keys.sort_unstable();
    if let Some(same) = keys.windows(2).find(|pair| pair[0] == pair[1]) {
        return Err(TimetableError::SameKey(same[0]));
    }
    let mut ways = Vec::with_capacity(ask.steps.len());
    let mut total_min = 0.0;
    for step in ask.steps {
        let length = of_length("the length of a step, min", step.minutes, LONGEST_MIN)?;
        let least = of_length("the least wait, min", step.then.least_min, LONGEST_MIN)?;
        let most = step.then.most_min.map(|most| of_length("the longest wait, min", most, LONGEST_WAIT_MIN)).transpose()?;
        if most.is_some_and(|most| most < least) {
            return Err(TimetableError::Reversed { what: "the wait after a step" });
        }
        total_min += step.minutes + step.then.least_min;
        let taken = step.then.keeps.into_iter().flat_map(|resource| taken_spans(ask.hours, resource)).collect();
        ways.push(Way::new(length, least, most, step.then.strict, taken));
    }
    of_length("all steps with their waits, min", total_min, LONGEST_MIN)?;
    let total = ways.iter().map(|way| way.length + way.least).sum();
    let now = of_moment("now, min", ask.now)?;
    let pouring = of_length("the pouring, min", ask.pouring_min, LONGEST_MIN)?;
    Ok(Checked { ways, now, pouring, total })
}

/// Checks hours.
///
/// # Errors
/// Too many spans, or one that is reversed or no number.
pub(super) fn hours(hours: &Hours) -> Result<(), TimetableError> {
    at_most("working hours of a week", hours.week.len(), MOST_WEEK)?;
    at_most("days off", hours.days_off.len(), MOST_SPANS)?;
    at_most("times away", hours.away.len(), MOST_SPANS)?;
    at_most("times taken", hours.taken.len(), MOST_SPANS)?;
    let away = hours.away.iter().map(|span| ("a time away", *span));
    let taken = hours.taken.iter().map(|taken| ("a time taken", taken.span));
    for (what, span) in away.chain(taken) {
        ordered(what, span.start, span.end)?;
    }
    Ok(())
}

/// Two moments, the first not after the second.
///
/// # Errors
/// `OutOfRange` and `Reversed`.
pub(super) fn ordered(what: &'static str, start: f64, end: f64) -> Result<(Ticks, Ticks), TimetableError> {
    let (start, end) = (of_moment(what, start)?, of_moment(what, end)?);
    if start <= end { Ok((start, end)) } else { Err(TimetableError::Reversed { what }) }
}

/// The pin of every step, in the order of the steps.
///
/// # Errors
/// A pin without its step, a second one of a step, or one too far from the pour.
pub(super) fn pins(ask: &Ask<'_>, checked: &Checked, pins: &[Pin], pour: Ticks) -> Result<Vec<Option<TickPin>>, TimetableError> {
    let mut of_step = vec![None; ask.steps.len()];
    for pin in pins {
        let at = index(ask, pin.key)?;
        let start = of_moment("a pin, min", pin.start)?;
        near("a pin beside the pour, min", start, pour)?;
        if of_step[at].replace(TickPin { start, kind: pin.kind, is_said: true }).is_some() {
            return Err(TimetableError::PinnedTwice(pin.key));
        }
    }
    let_run(ask, checked, &mut of_step);
    Ok(of_step)
}

/// What begins by itself, at once after something that is done, has begun then: nobody needs to say so.
fn let_run(ask: &Ask<'_>, checked: &Checked, pins: &mut [Option<TickPin>]) {
    for at in 1..pins.len() {
        let way = &checked.ways[at - 1];
        let begins = pins[at - 1].filter(|pin| pin.kind == PinKind::Done).map(|pin| pin.start + way.length + way.least);
        let by_itself = matches!(ask.steps[at].needs, Hands::None | Hands::End) && way.strict && way.most == Some(way.least);
        if let Some(start) = begins.filter(|start| by_itself && pins[at].is_none() && *start <= checked.now) {
            pins[at] = Some(TickPin { start, kind: PinKind::Done, is_said: false });
        }
    }
}

/// That two moments are at most 60 days apart.
///
/// # Errors
/// `OutOfRange`.
pub(super) fn near(what: &'static str, one: Ticks, other: Ticks) -> Result<(), TimetableError> {
    of_length(what, super::ticks::minutes((one - other).abs()), LONGEST_MIN).map(|_| ())
}

/// Where a step stands.
///
/// # Errors
/// `NoSuchStep`.
pub(super) fn index(ask: &Ask<'_>, key: StepKey) -> Result<usize, TimetableError> {
    ask.steps.iter().position(|step| step.key == key).ok_or(TimetableError::NoSuchStep(key))
}

fn at_most(what: &'static str, many: usize, most: usize) -> Result<(), TimetableError> {
    if many <= most { Ok(()) } else { Err(TimetableError::TooMany { what, most }) }
}
