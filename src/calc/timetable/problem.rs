//! What is wrong with a plan, row by row.

use super::check::{Checked, TickPin};
use super::own::{attended, taken_spans};
use super::reach::Way;
use super::span::{TickSpan, around, without};
use super::step::{Hands, Resource, Step};
use super::table::{Problem, Row, Timetable};
use super::ticks::{Ticks, minutes};
use super::tolls::Tolls;
use super::{Ask, SEARCH_DAYS};

/// Tells what is wrong.
pub(super) struct Teller<'a> {
    pub ask: &'a Ask<'a>,
    pub checked: &'a Checked,
    pub open: &'a [TickSpan],
    pub own: &'a [Tolls],
    pub window: TickSpan,
    pub over: usize,
}

impl Teller<'_> {
    /// The rows of these starts.
    pub fn timetable(&self, starts: &[Ticks], pins: &[Option<TickPin>], pour: Ticks) -> Timetable {
        let rows = self.ask.steps.iter().enumerate().map(|(at, step)| {
            let (start, way) = (starts[at], &self.checked.ways[at]);
            let follows = starts.get(at + 1).copied().unwrap_or(pour);
            let mut problems = if at < self.over { Vec::new() } else { self.of_start(at, start, follows, pins[at].is_some()) };
            // A wait between two that are over is over too.
            if at + 1 >= self.over {
                problems.extend(self.of_wait(at, start + way.length, follows));
            }
            Row {
                key: step.key,
                start: minutes(start),
                end: minutes(start + way.length),
                wait_min: minutes(follows - start - way.length),
                pin: pins[at].filter(|pin| pin.is_said).map(|pin| pin.kind),
                over: at < self.over,
                problems,
            }
        });
        let pouring = unattended(Hands::All, pour, self.checked.pouring, self.open);
        let pour_problems = self.past(pour).into_iter().chain(pouring).collect();
        Timetable { rows: rows.collect(), pour_at: minutes(pour), pour_problems }
    }

    fn past(&self, start: Ticks) -> Option<Problem> {
        (start < self.checked.now).then(|| Problem::Past { by_min: minutes(self.checked.now - start) })
    }

    /// What is wrong with a step that starts then.
    fn of_start(&self, at: usize, start: Ticks, follows: Ticks, is_pinned: bool) -> Vec<Problem> {
        let (step, way) = (&self.ask.steps[at], &self.checked.ways[at]);
        let mut problems: Vec<Problem> = self.past(start).into_iter().collect();
        let by_hours = unattended(step.needs, start, way.length, self.open);
        let by_others = self.taken_by_others(step, start, way.length);
        let latest = follows - way.length - way.least;
        let is_never_free = || self.own[at].least_within(self.window.from, latest).is_none_or(|(toll, _)| toll > 0);
        if !is_pinned && (by_hours.is_some() || by_others.is_some()) && is_never_free() {
            problems.push(Problem::NoFreeTime { days: SEARCH_DAYS });
        } else {
            problems.extend(by_hours.into_iter().chain(by_others));
        }
        problems
    }

    /// What is wrong with the wait after a step.
    fn of_wait(&self, at: usize, end: Ticks, follows: Ticks) -> impl Iterator<Item = Problem> {
        let (step, way) = (&self.ask.steps[at], &self.checked.ways[at]);
        let kept = step.then.keeps.and_then(|resource| Some(taken(resource, way.taken_of(end, follows)?)));
        too_short_or_long(way, follows - end).into_iter().chain(kept)
    }

    fn taken_by_others(&self, step: &Step, start: Ticks, length: Ticks) -> Option<Problem> {
        let resource = step.uses?;
        let end = start + length;
        let overlap = taken_spans(self.ask.hours, resource).filter(|span| span.from < end && start < span.until);
        let first = overlap.min()?;
        Some(taken(resource, TickSpan { from: first.from.max(start), until: first.until.min(end) }))
    }
}

/// Somebody that is needed and not there.
fn unattended(needs: Hands, start: Ticks, length: Ticks, open: &[TickSpan]) -> Option<Problem> {
    let moment = TickSpan { from: start, until: start };
    if !attended(needs, length, open, moment).is_empty() {
        return None;
    }
    let end = start + length;
    let is_there = |at: Ticks| around(open, at).is_some();
    let outside = |at: Ticks, length: Ticks| Some(Problem::OutsideHours { at: minutes(at), minutes: minutes(length) });
    match needs {
        Hands::None => None,
        Hands::All if length > 0 => {
            let alone = without(&[TickSpan { from: start, until: end }], open);
            let first = alone.first().map_or(start, |span| span.from);
            outside(first, alone.iter().map(|span| span.until - span.from).sum())
        }
        Hands::Start | Hands::All => outside(start, 0),
        Hands::End => outside(end, 0),
        Hands::Both => outside(if is_there(start) { end } else { start }, 0),
    }
}

fn taken(resource: Resource, span: TickSpan) -> Problem {
    Problem::Taken { resource, from: minutes(span.from), until: minutes(span.until) }
}

/// What is wrong with the length of a wait.
fn too_short_or_long(way: &Way, wait: Ticks) -> Option<Problem> {
    if wait < 0 {
        Some(Problem::Overlaps { by_min: minutes(-wait) })
    } else if wait < way.least {
        Some(Problem::WaitTooShort { by_min: minutes(way.least - wait) })
    } else {
        let over = way.most.map(|most| wait - most).filter(|over| *over > 0)?;
        Some(Problem::WaitTooLong { by_min: minutes(over) })
    }
}
