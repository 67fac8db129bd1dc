//! Spans in ticks, both ends included, and sets of them: in order, apart from each other.

use super::ticks::Ticks;

/// From one moment to another, both included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct TickSpan {
    pub from: Ticks,
    pub until: Ticks,
}

/// In order, and what touches or overlaps made one.
pub(super) fn merged(mut spans: Vec<TickSpan>) -> Vec<TickSpan> {
    spans.sort_unstable();
    let mut out: Vec<TickSpan> = Vec::with_capacity(spans.len());
    for span in spans {
        match out.last_mut() {
            Some(last) if span.from <= last.until => last.until = last.until.max(span.until),
            _ => out.push(span),
        }
    }
    out
}

/// What is left of a set when the inside of another is taken out; both in order. What has no length left is dropped.
pub(super) fn without(set: &[TickSpan], out: &[TickSpan]) -> Vec<TickSpan> {
    let mut left = Vec::with_capacity(set.len() + out.len());
    let mut first = 0;
    for span in set {
        while out.get(first).is_some_and(|hole| hole.until <= span.from) {
            first += 1;
        }
        let mut from = span.from;
        for hole in out[first..].iter().take_while(|hole| hole.from < span.until) {
            if hole.from > from {
                left.push(TickSpan { from, until: hole.from });
            }
            from = hole.until;
        }
        if from < span.until {
            left.push(TickSpan { from, until: span.until });
        }
    }
    left
}

/// The parts that two sets share, also where that is a single moment; both in order.
pub(super) fn shared(one: &[TickSpan], other: &[TickSpan]) -> Vec<TickSpan> {
    let (mut a, mut b, mut out) = (0, 0, Vec::new());
    while let (Some(x), Some(y)) = (one.get(a), other.get(b)) {
        let (from, until) = (x.from.max(y.from), x.until.min(y.until));
        if from <= until {
            out.push(TickSpan { from, until });
        }
        if x.until < y.until {
            a += 1;
        } else {
            b += 1;
        }
    }
    out
}

/// The span of a set that a moment lies in.
pub(super) fn around(set: &[TickSpan], at: Ticks) -> Option<TickSpan> {
    let after = set.partition_point(|span| span.from <= at);
    after.checked_sub(1).map(|index| set[index]).filter(|span| at <= span.until)
}
