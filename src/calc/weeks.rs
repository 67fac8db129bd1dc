//! The weeks ahead over several jobs: what is due, what is to be poured, and how much finishing that is.

use std::collections::{BTreeMap, BTreeSet};

use jiff::ToSpan;
use jiff::civil::{Date, Weekday};

use super::board::{Timely, board};
use crate::job::{Event, FlaskId, Job, PieceStage, standing};
use crate::quantity::Finite;

/// One week, from a Monday on.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Week {
    /// Pieces that are due in it and not delivered.
    pub due: usize,
    /// Of these, those that are not cast yet.
    pub uncast: usize,
    /// Flasks that are to be poured in it.
    pub flasks: usize,
    /// Minutes of finishing that its pieces still want, as far as somebody said how long a piece takes.
    pub finishing_min: f64,
}

/// What lies ahead.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Ahead {
    /// Pieces that are overdue.
    pub overdue: usize,
    /// Open pieces that nobody gave a date.
    pub undated: usize,
    /// By the Monday a week begins with; only weeks in which something is.
    pub weeks: BTreeMap<Date, Week>,
}

/// The Monday of a day's week.
fn monday(day: Date) -> Date {
    let back = day.weekday().since(Weekday::Monday);
    day.saturating_sub(i64::from(back).days())
}

/// What lies ahead of these jobs on a day.
#[must_use]
pub fn ahead<'a>(jobs: impl IntoIterator<Item = &'a Job>, today: Date) -> Ahead {
    let mut ahead = Ahead::default();
    for job in jobs {
        pieces(&mut ahead, job, today);
        pours(&mut ahead, job, today);
    }
    ahead
}

fn pieces(ahead: &mut Ahead, job: &Job, today: Date) {
    for row in board(job, today) {
        let due = match (row.timely, row.due) {
            (Timely::Settled, _) => continue,
            (Timely::Late(_), _) => {
                ahead.overdue += 1;
                continue;
            }
            (_, None) => {
                ahead.undated += 1;
                continue;
            }
            (_, Some(due)) => due,
        };
        let week = ahead.weeks.entry(monday(due)).or_default();
        week.due += 1;
        week.uncast += usize::from(row.followed.stage.is_none_or(|stage| stage < PieceStage::Cast));
        if row.followed.stage.is_none_or(|stage| stage < PieceStage::Finished) {
            week.finishing_min += row.line.finishing_min.map_or(0.0, Finite::get);
        }
    }
}

fn pours(ahead: &mut Ahead, job: &Job, today: Date) {
    let poured: BTreeSet<FlaskId> = standing(&job.record)
        .filter_map(|entry| match entry.event {
            Event::Poured { flask, .. } => Some(flask),
            _ => None,
        })
        .collect();
    for flask in job.flasks.iter().filter(|flask| !poured.contains(&flask.id)) {
        let load = job.burnouts.iter().find(|load| Some(load.id) == flask.burnout);
        if let Some(at) = load.and_then(|load| load.pour_at).filter(|at| at.date() >= today) {
            ahead.weeks.entry(monday(at.date())).or_default().flasks += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Burnout, BurnoutId, Entry, Flask, Frozen, Line, LineId, Order, PieceId, PouredAs, RecordId};
    use jiff::civil::date;

    fn job(due: Date, pour: Date, events: Vec<Event>) -> Job {
        let line = Line { id: LineId(7), quantity: 3, finishing_min: Finite::new(20.0), ..Line::default() };
        Job {
            orders: vec![Order { due: Some(due), lines: vec![line], ..Order::default() }],
            flasks: vec![Flask { id: FlaskId(3), burnout: Some(BurnoutId(5)), ..Flask::default() }],
            burnouts: vec![Burnout { id: BurnoutId(5), pour_at: Some(pour.at(9, 30, 0, 0)), ..Burnout::default() }],
            record: (1..).zip(events).map(|(id, event)| Entry { id: RecordId(id), event, ..Entry::default() }).collect(),
            ..Job::default()
        }
    }

    // A Saturday; the week began on the 23rd.
    const TODAY: Date = date(2026, 11, 28);

    #[test]
    fn a_week_begins_on_its_monday() {
        let ahead = ahead([&job(date(2026, 12, 6), date(2026, 11, 30), vec![])], TODAY);
        let week = ahead.weeks[&date(2026, 11, 30)];
        assert_eq!((ahead.weeks.len(), week), (1, Week { due: 3, uncast: 3, flasks: 1, finishing_min: 60.0 }));
    }

    #[test]
    fn what_is_done_weighs_no_more() {
        let piece = |number| PieceId { line: LineId(7), number };
        let reached = |number, stage| Event::Reached { pieces: vec![piece(number)], stage };
        let poured = Event::Poured { flask: FlaskId(3), plan: Frozen::default(), done: PouredAs::default() };
        let events = vec![reached(1, PieceStage::Cast), reached(2, PieceStage::Finished), reached(3, PieceStage::Delivered), poured];
        let ahead = ahead([&job(date(2026, 12, 6), date(2026, 12, 1), events)], TODAY);
        assert_eq!(ahead.weeks[&date(2026, 11, 30)], Week { due: 2, uncast: 0, flasks: 0, finishing_min: 20.0 });
    }

    #[test]
    fn overdue_and_undated_pieces_are_counted_apart_and_jobs_together() {
        let late = job(date(2026, 11, 20), date(2026, 11, 18), vec![]);
        let mut undated = job(TODAY, date(2026, 12, 9), vec![]);
        undated.orders[0].due = None;
        let ahead = ahead([&late, &undated], TODAY);
        assert_eq!((ahead.overdue, ahead.undated), (3, 3));
        // A pour that is over by the calendar is no load of the weeks ahead.
        assert_eq!(ahead.weeks.keys().copied().collect::<Vec<_>>(), [date(2026, 12, 7)]);
    }
}
