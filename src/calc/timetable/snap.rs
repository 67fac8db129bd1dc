//! Starts that are allowed, for a step in somebody's hand: by the mouse to the nearest, by keys to the next and the one before.

use super::check::{SEARCH, check, index};
use super::clock::open;
use super::own::tolls;
use super::span::TickSpan;
use super::step::StepKey;
use super::ticks::{MINUTE, Ticks, minutes, of_moment};
use super::{Ask, TimetableError};

/// Starts are offered on a grid of so many minutes since the Unix epoch, which is the clock's own grid in every zone of today.
pub const GRID_MIN: f64 = 5.0;
const GRID: Ticks = 5 * MINUTE;

/// The start nearest to the wished one at which the step is allowed for itself: not before now, somebody there when it needs somebody, what
/// it uses not taken. Of two that are equally near the earlier one. Starts are on a grid of [`GRID_MIN`]; a time too short to have a point
/// of the grid offers its beginning. Nothing where there is none within [`super::SEARCH_DAYS`] on either side.
///
/// # Errors
/// What is no number, too much, or contradicts itself; a key that no step has.
pub fn nearest_allowed(ask: &Ask<'_>, key: StepKey, wished: f64) -> Result<Option<f64>, TimetableError> {
    let allowed = Allowed::new(ask, key, wished)?;
    let (before, after) = (allowed.at_or_before(allowed.wished), allowed.at_or_after(allowed.wished));
    let nearest = [before, after].into_iter().flatten().min_by_key(|at| (at - allowed.wished).abs());
    Ok(nearest.map(minutes))
}

/// The first allowed start after a moment; see [`nearest_allowed`].
///
/// # Errors
/// As there.
pub fn next_allowed(ask: &Ask<'_>, key: StepKey, from: f64) -> Result<Option<f64>, TimetableError> {
    let allowed = Allowed::new(ask, key, from)?;
    Ok(allowed.at_or_after(allowed.wished + 1).map(minutes))
}

/// The last allowed start before a moment; see [`nearest_allowed`].
///
/// # Errors
/// As there.
pub fn previous_allowed(ask: &Ask<'_>, key: StepKey, from: f64) -> Result<Option<f64>, TimetableError> {
    let allowed = Allowed::new(ask, key, from)?;
    Ok(allowed.at_or_before(allowed.wished - 1).map(minutes))
}

/// Spans of allowed starts around a moment.
struct Allowed {
    spans: Vec<TickSpan>,
    wished: Ticks,
}

impl Allowed {
    fn new(ask: &Ask<'_>, key: StepKey, wished: f64) -> Result<Self, TimetableError> {
        let checked = check(ask)?;
        let at = index(ask, key)?;
        let wished = of_moment("the wished start, min", wished)?;
        let length = checked.ways[at].length;
        // From a moment before now, what is allowed begins now, however far that is.
        let middle = wished.max(checked.now);
        let window = TickSpan { from: middle - SEARCH, until: middle + SEARCH };
        let open = open(ask.hours, ask.zone, window.from, window.until + length);
        let spans = tolls(ask, &ask.steps[at], length, &open, window).not_before(checked.now).free().collect();
        Ok(Self { spans, wished })
    }

    fn at_or_after(&self, at: Ticks) -> Option<Ticks> {
        let first = self.spans.partition_point(|span| span.until < at);
        self.spans[first..].iter().find_map(|span| {
            let on_grid = up(span.from.max(at));
            if on_grid <= span.until { Some(on_grid) } else { off_grid(*span).filter(|start| *start >= at) }
        })
    }

    fn at_or_before(&self, at: Ticks) -> Option<Ticks> {
        let end = self.spans.partition_point(|span| span.from <= at);
        self.spans[..end].iter().rev().find_map(|span| {
            let on_grid = down(span.until.min(at));
            if on_grid >= span.from { Some(on_grid) } else { off_grid(*span) }
        })
    }
}

/// The beginning of a span that has no point of the grid.
fn off_grid(span: TickSpan) -> Option<Ticks> {
    (up(span.from) > span.until).then_some(span.from)
}

fn down(at: Ticks) -> Ticks {
    at.div_euclid(GRID) * GRID
}

fn up(at: Ticks) -> Ticks {
    -down(-at)
}
