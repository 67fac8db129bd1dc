//! Nights, days off and what is taken, as bands for a drawing.

use jiff::civil::{Date, Time};
use jiff::tz::TimeZone;

use super::TimetableError;
use super::check::{hours as check_hours, ordered};
use super::clock::{away, by_the_week, days, first_showing, open};
use super::hours::{Hours, Span};
use super::own::taken_spans;
use super::span::{TickSpan, merged, shared, without};
use super::step::Resource;
use super::ticks::{DAY, Ticks, minutes};

/// The longest that bands are worked out for: two years.
const LONGEST: Ticks = 731 * DAY;

/// Why nothing is done in a band.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BandKind {
    /// Outside the hours of a day that has some.
    Night,
    /// A day off, or a weekday without hours, as far as no hours of the day before reach into it.
    DayOff,
    /// Nobody is there in spite of the week.
    Away,
    /// Something else has this.
    Taken(Resource),
}

/// A band of a drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// From when to when, in minutes since the Unix epoch.
    pub span: Span,
    /// Why.
    pub kind: BandKind,
}

/// When somebody is there, between two moments in minutes since the Unix epoch; in order, apart from each other.
///
/// # Errors
/// What is no number, reversed, too much, or more than two years.
pub fn free_spans(hours: &Hours, zone: &TimeZone, from: f64, until: f64) -> Result<Vec<Span>, TimetableError> {
    let window = window(hours, from, until)?;
    Ok(shared(&open(hours, zone, window.from, window.until), &[window])
        .into_iter()
        .filter(|span| span.from < span.until)
        .map(span_of)
        .collect())
}

/// Bands between two moments in minutes since the Unix epoch, by their start. Nights, days off and times away never overlap each other, and
/// fill together with [`free_spans`] all the time; what is taken lies over them, its own overlaps made one.
///
/// # Errors
/// What is no number, reversed, too much, or more than two years.
pub fn bands(hours: &Hours, zone: &TimeZone, from: f64, until: f64) -> Result<Vec<Band>, TimetableError> {
    let window = window(hours, from, until)?;
    let week = by_the_week(hours, zone, window.from, window.until);
    let closed = without(&[window], &week);
    let idle =
        merged(days(zone, window.from, window.until).filter(|date| !hours.work_on(*date)).filter_map(|date| day(zone, date)).collect());
    let mut kinds = vec![
        (BandKind::Night, without(&closed, &idle)),
        (BandKind::DayOff, shared(&closed, &idle)),
        (BandKind::Away, shared(&shared(&week, &away(hours)), &[window])),
    ];
    let mut resources: Vec<Resource> = hours.taken.iter().map(|taken| taken.resource).collect();
    resources.sort_unstable();
    resources.dedup();
    kinds.extend(resources.into_iter().map(|of| (BandKind::Taken(of), shared(&merged(taken_spans(hours, of).collect()), &[window]))));
    let mut out: Vec<(TickSpan, BandKind)> =
        kinds.into_iter().flat_map(|(kind, spans)| spans.into_iter().map(move |span| (span, kind))).collect();
    out.retain(|(span, _)| span.from < span.until);
    out.sort_unstable();
    Ok(out.into_iter().map(|(span, kind)| Band { span: span_of(span), kind }).collect())
}

/// A whole day, from midnight to midnight.
fn day(zone: &TimeZone, date: Date) -> Option<TickSpan> {
    let from = first_showing(zone, date, Time::midnight())?;
    let until = first_showing(zone, date.tomorrow().ok()?, Time::midnight())?;
    Some(TickSpan { from, until })
}

fn window(hours: &Hours, from: f64, until: f64) -> Result<TickSpan, TimetableError> {
    check_hours(hours)?;
    let (from, until) = ordered("the time to draw", from, until)?;
    if until - from > LONGEST {
        let (value, most) = (minutes(until - from), minutes(LONGEST));
        return Err(TimetableError::OutOfRange { what: "the time to draw, min", value, least: 0.0, most });
    }
    Ok(TickSpan { from, until })
}

fn span_of(span: TickSpan) -> Span {
    Span { start: minutes(span.from), end: minutes(span.until) }
}
