//! What a step costs by its own start: is somebody there when it needs somebody, and is what it uses free?

use super::span::{TickSpan, merged, shared};
use super::step::{Hands, Resource};
use super::ticks::{Ticks, of_bounded};
use super::tolls::{HOURS, Piece, TAKEN, Tolls};
use super::{Ask, Hours, Step};

/// Starts that have somebody there, between two moments, for a step of this length; `open` is when somebody is there.
pub(super) fn attended(needs: Hands, length: Ticks, open: &[TickSpan], window: TickSpan) -> Vec<TickSpan> {
    let earlier = |by: Ticks| open.iter().map(|span| TickSpan { from: span.from - by, until: span.until - by }).collect::<Vec<_>>();
    let starts = match needs {
        Hands::None => vec![window],
        Hands::Start => open.to_vec(),
        Hands::End => earlier(length),
        Hands::Both => shared(open, &earlier(length)),
        Hands::All => open
            .iter()
            .map(|span| TickSpan { from: span.from, until: span.until - length })
            .filter(|starts| starts.from <= starts.until)
            .collect(),
    };
    shared(&starts, &[window])
}

/// Spans in which something else has a resource.
pub(super) fn taken_spans(hours: &Hours, resource: Resource) -> impl Iterator<Item = TickSpan> {
    let of_it = hours.taken.iter().filter(move |taken| taken.resource == resource);
    of_it
        .map(|taken| TickSpan { from: of_bounded(taken.span.start), until: of_bounded(taken.span.end) })
        .filter(|span| span.from < span.until)
}

/// Starts at which what a step uses is free all the time it runs.
fn untaken(ask: &Ask<'_>, step: &Step, length: Ticks, window: TickSpan) -> Vec<TickSpan> {
    let Some(resource) = step.uses else { return vec![window] };
    // Starts that overlap, with the ends that just do not.
    let overlapping = taken_spans(ask.hours, resource).map(|span| TickSpan { from: span.from - length + 1, until: span.until - 1 });
    let mut out = Vec::new();
    let mut from = window.from;
    for hole in merged(overlapping.filter(|hole| hole.from <= hole.until).collect()) {
        out.push(TickSpan { from, until: window.until.min(hole.from - 1) });
        from = from.max(hole.until + 1);
    }
    out.push(TickSpan { from, until: window.until });
    out.retain(|span| span.from <= span.until);
    out
}

/// The tolls of a step by its own start, between two moments.
pub(super) fn tolls(ask: &Ask<'_>, step: &Step, length: Ticks, open: &[TickSpan], window: TickSpan) -> Tolls {
    let with = |free: Vec<TickSpan>, toll| {
        let free = free.into_iter().map(|span| Piece { span, toll: 0 });
        Tolls::least_of(free.chain([Piece { span: window, toll }]).collect())
    };
    let hours = with(attended(step.needs, length, open, window), HOURS);
    if step.uses.is_none() { hours } else { hours.plus(&with(untaken(ask, step, length, window), TAKEN)) }
}
