//! What can still be poured when: the same tolls, read off forwards.

use jiff::civil::Time;

use super::check::{Checked, SEARCH, check, near, pins};
use super::clock::{days, first_showing, open};
use super::own::attended;
use super::plan::Search;
use super::span::{TickSpan, around, shared};
use super::step::{Hands, Pin};
use super::ticks::{Ticks, minutes, of_moment};
use super::tolls::{Piece, Tolls};
use super::{Ask, TimetableError};

/// The earliest pour, not before `after`, that has a plan without any problem if work begins now; both in minutes since the Unix epoch.
/// Of the pins only what is done counts. Nothing where there is none within [`super::SEARCH_DAYS`] beyond the length of all steps.
///
/// # Errors
/// What is no number, too much, or contradicts itself; `after` more than 60 days from now.
pub fn earliest_pour(ask: &Ask<'_>, after: f64, pinned: &[Pin]) -> Result<Option<f64>, TimetableError> {
    let pours = Pours::new(ask, after, pinned)?;
    Ok(pours.free.iter().map(|span| span.from.max(pours.after)).min().map(minutes))
}

/// The next pours at this time of the day, at most so many, not before `after`, that have a plan without any problem if work begins now;
/// all in minutes since the Unix epoch. Of the pins only what is done counts. On a night that skips this time it is the moment of the
/// change, on one that shows it twice the first of both.
///
/// # Errors
/// What is no number, too much, or contradicts itself; `after` more than 60 days from now.
pub fn pours_at(ask: &Ask<'_>, clock: Time, after: f64, pinned: &[Pin], many: usize) -> Result<Vec<f64>, TimetableError> {
    let pours = Pours::new(ask, after, pinned)?;
    let moments = days(ask.zone, pours.after, pours.until).filter_map(|date| first_showing(ask.zone, date, clock));
    let possible = moments.filter(|at| *at >= pours.after && around(&pours.free, *at).is_some());
    Ok(possible.take(many).map(minutes).collect())
}

/// Pours without a problem.
struct Pours {
    free: Vec<TickSpan>,
    after: Ticks,
    until: Ticks,
}

impl Pours {
    fn new(ask: &Ask<'_>, after: f64, pinned: &[Pin]) -> Result<Self, TimetableError> {
        let checked = check(ask)?;
        let after = of_moment("the earliest pour asked for, min", after)?;
        near("the earliest pour asked for, from now, min", after, checked.now)?;
        let after = after.max(checked.now);
        let pins = pins(ask, &checked, pinned, after)?;
        let window = TickSpan {
            from: pins.iter().flatten().map(|pin| pin.start).fold(checked.now, Ticks::min),
            until: after + checked.total + SEARCH,
        };
        let longest = checked.ways.iter().map(|way| way.length).max().unwrap_or(0).max(checked.pouring);
        let open = open(ask.hours, ask.zone, window.from, window.until + longest);
        let attended = attended(Hands::All, checked.pouring, &open, TickSpan { from: after, until: window.until });
        let ready = ready(ask, &checked, &Search::new(ask, &checked, &pins, &open, window), TickSpan { from: after, until: window.until });
        Ok(Self { free: shared(&attended, &ready), after, until: window.until })
    }
}

/// When everything is ready for the pour, without any problem.
fn ready(ask: &Ask<'_>, checked: &Checked, search: &Search<'_>, window: TickSpan) -> Vec<TickSpan> {
    match (search.begun_now(), checked.ways.last()) {
        (Some(tolls), Some(way)) if !ask.steps.is_empty() => {
            let free = tolls.free().map(|span| Piece { span, toll: 0 });
            way.onwards(&Tolls::least_of(free.collect()), window.until).free().collect()
        }
        _ => vec![window],
    }
}
