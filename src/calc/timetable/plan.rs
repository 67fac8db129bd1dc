//! The plan: tolls carried forwards from the first step to the last, then read off backwards from the pour and from every pin.

use super::check::{Checked, SEARCH, TickPin, check, pins};
use super::clock::open;
use super::own::tolls;
use super::problem::Teller;
use super::span::TickSpan;
use super::step::{Pin, PinKind};
use super::table::Timetable;
use super::ticks::{Ticks, of_moment};
use super::tolls::Tolls;
use super::{Ask, TimetableError};

/// Plans a casting night backwards from its pour, in minutes since the Unix epoch. Which plan that is stands at the head of the module.
///
/// # Errors
/// What is no number, too much, or contradicts itself. That something cannot be done in time is no error: it is told in the rows.
pub fn plan(ask: &Ask<'_>, pour_at: f64, pinned: &[Pin]) -> Result<Timetable, TimetableError> {
    let checked = check(ask)?;
    let pour = of_moment("the pour, min", pour_at)?;
    let pins = pins(ask, &checked, pinned, pour)?;
    let targets = || pins.iter().flatten().map(|pin| pin.start).chain([pour]);
    let first = targets().min().unwrap_or(pour) - checked.total - SEARCH;
    let window = TickSpan { from: first, until: targets().max().unwrap_or(pour) };
    // What is told of a pin, or of the pour, may reach beyond the last of them.
    let longest = checked.ways.iter().map(|way| way.length).max().unwrap_or(0).max(checked.pouring);
    let open = open(ask.hours, ask.zone, window.from, window.until + longest);
    let search = Search::new(ask, &checked, &pins, &open, window);
    let starts = search.starts(pour);
    let teller = Teller { ask, checked: &checked, open: &open, own: &search.own, window, over: search.over };
    Ok(teller.timetable(&starts, &pins, pour))
}

/// What a plan has to keep to; the next is tried where one is impossible.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Keep {
    /// Nothing begins before now, and nothing before what is done has ended.
    NowAndDone,
    /// Nothing begins before now.
    Now,
    /// Only the order.
    Order,
}

/// In this order.
const KEEPS: [Keep; 3] = [Keep::NowAndDone, Keep::Now, Keep::Order];

/// The search for a plan.
pub(super) struct Search<'a> {
    checked: &'a Checked,
    pins: &'a [Option<TickPin>],
    /// Every step's tolls by its own start.
    pub own: Vec<Tolls>,
    /// So many steps are done, or stand before one that is.
    pub over: usize,
    until: Ticks,
}

impl<'a> Search<'a> {
    pub fn new(ask: &Ask<'_>, checked: &'a Checked, pins: &'a [Option<TickPin>], open: &[TickSpan], window: TickSpan) -> Self {
        let own = ask.steps.iter().zip(&checked.ways).map(|(step, way)| tolls(ask, step, way.length, open, window));
        let is_done = |pin: &Option<TickPin>| pin.is_some_and(|pin| pin.kind == PinKind::Done);
        let over = pins.iter().rposition(is_done).map_or(0, |last| last + 1);
        Self { checked, pins, own: own.collect(), over, until: window.until }
    }

    fn done(&self, step: usize) -> Option<Ticks> {
        self.pins[step].filter(|pin| pin.kind == PinKind::Done).map(|pin| pin.start)
    }

    /// For every step the least toll of it and all before it, over its starts.
    fn forwards(&self, keep: Keep) -> Vec<Tolls> {
        let mut so_far: Vec<Tolls> = Vec::with_capacity(self.own.len());
        for (step, own) in self.own.iter().enumerate() {
            let done = self.done(step).filter(|_| keep == Keep::NowAndDone);
            let before = step.checked_sub(1).filter(|before| keep == Keep::NowAndDone || self.done(*before).is_none());
            let own = if keep == Keep::Order || step < self.over { own } else { &own.not_before(self.checked.now) };
            so_far.push(match (done, before) {
                (Some(at), _) => Tolls::at_one_moment(at),
                (None, Some(before)) => self.checked.ways[before].onwards(&so_far[before], self.until).plus(own),
                (None, None) => own.clone(),
            });
        }
        so_far
    }

    /// The least toll of all steps over the starts of the last one, if work begins now.
    pub fn begun_now(&self) -> Option<Tolls> {
        self.forwards(Keep::NowAndDone).pop()
    }

    /// The start of every step.
    fn starts(&self, pour: Ticks) -> Vec<Ticks> {
        let mut tables: [Option<Vec<Tolls>>; KEEPS.len()] = [const { None }; KEEPS.len()];
        let mut starts = vec![pour; self.own.len()];
        let mut follows = pour;
        // From here on to the next pin, what the plan keeps to.
        let mut keeps: Option<usize> = None;
        for step in (0..starts.len()).rev() {
            if let Some(pin) = self.pins[step] {
                (follows, keeps) = (pin.start, None);
                starts[step] = follows;
                continue;
            }
            let way = &self.checked.ways[step];
            let mut back = |at: usize| {
                let table = tables[at].get_or_insert_with(|| self.forwards(KEEPS[at]));
                way.back(&table[step], follows).map(|(_, start)| (at, start))
            };
            let found = match keeps {
                Some(at) => back(at),
                None => (0..KEEPS.len()).find_map(back),
            };
            // The window reaches back over all steps with their least waits, so that the order alone can always be kept.
            let (at, start) = found.unwrap_or((KEEPS.len() - 1, follows - way.length - way.least));
            (follows, keeps) = (start, Some(at));
            starts[step] = start;
        }
        starts
    }
}
