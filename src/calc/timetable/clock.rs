//! The clock on the wall: moments of clock times, and the hours that are worked between two moments.

use jiff::Timestamp;
use jiff::civil::{Date, Time};
use jiff::tz::{AmbiguousOffset, TimeZone};

use super::hours::Hours;
use super::span::{TickSpan, merged, without};
use super::ticks::{MINUTE, Ticks, of_bounded};

const MICROSECONDS: i128 = 60_000_000;

/// The first moment at which the clock on the wall shows this time of this day, or a later one where it is skipped.
/// Nothing where the calendar ends.
pub(super) fn first_showing(zone: &TimeZone, date: Date, time: Time) -> Option<Ticks> {
    let shown = date.to_datetime(time);
    let timestamp = match zone.to_ambiguous_timestamp(shown).offset() {
        AmbiguousOffset::Unambiguous { offset } => offset.to_timestamp(shown).ok()?,
        AmbiguousOffset::Fold { before, .. } => before.to_timestamp(shown).ok()?,
        AmbiguousOffset::Gap { before, after } => {
            // Read by the offset that comes after, a skipped time lies before the change: the next change is the one that skips it.
            let earlier = after.to_timestamp(shown).ok()?;
            match zone.following(earlier).next() {
                Some(change) => change.timestamp(),
                None => before.to_timestamp(shown).ok()?,
            }
        }
    };
    Some(ticks_of(timestamp))
}

/// The day that the clock shows at a moment.
pub(super) fn date_at(zone: &TimeZone, at: Ticks) -> Option<Date> {
    let seconds = (at.div_euclid(MINUTE)) * 60 + at.rem_euclid(MINUTE) * 60 / MINUTE;
    Some(zone.to_datetime(Timestamp::from_second(seconds).ok()?).date())
}

/// Days from one before that of a moment to that of another.
pub(super) fn days(zone: &TimeZone, from: Ticks, until: Ticks) -> impl Iterator<Item = Date> + use<> {
    let first = date_at(zone, from).and_then(|date| date.yesterday().ok());
    let last = date_at(zone, until);
    std::iter::successors(first, |date| date.tomorrow().ok()).take_while(move |date| last.is_some_and(|last| *date <= last))
}

/// When somebody is there, between two moments and a day around them; in order, apart from each other.
pub(super) fn open(hours: &Hours, zone: &TimeZone, from: Ticks, until: Ticks) -> Vec<TickSpan> {
    without(&by_the_week(hours, zone, from, until), &away(hours))
}

/// What the week and the days off say, without regard to when nobody is there in spite of them.
pub(super) fn by_the_week(hours: &Hours, zone: &TimeZone, from: Ticks, until: Ticks) -> Vec<TickSpan> {
    let mut off = hours.days_off.clone();
    off.sort_unstable();
    let mut spans = Vec::new();
    for date in days(zone, from, until).filter(|date| off.binary_search(date).is_err()) {
        for work in hours.week.iter().filter(|work| work.weekday == date.weekday()) {
            let last_day = if work.until > work.from { Some(date) } else { date.tomorrow().ok() };
            let begins = first_showing(zone, date, work.from);
            let ends = last_day.and_then(|day| first_showing(zone, day, work.until));
            if let (Some(from), Some(until)) = (begins, ends)
                && from < until
            {
                spans.push(TickSpan { from, until });
            }
        }
    }
    merged(spans)
}

/// When nobody is there in spite of the week.
pub(super) fn away(hours: &Hours) -> Vec<TickSpan> {
    let spans = hours.away.iter().map(|span| TickSpan { from: of_bounded(span.start), until: of_bounded(span.end) });
    merged(spans.filter(|span| span.from < span.until).collect())
}

fn ticks_of(timestamp: Timestamp) -> Ticks {
    let ticks = (i128::from(timestamp.as_microsecond()) * i128::from(MINUTE) + MICROSECONDS / 2).div_euclid(MICROSECONDS);
    // Years from -9999 to 9999 take some 2⁵³ ticks.
    Ticks::try_from(ticks).unwrap_or(Ticks::MAX)
}
