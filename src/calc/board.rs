//! The board: every piece of a job with its client, its date, where it is and whether that is late.

use std::collections::BTreeMap;

use jiff::Span;
use jiff::civil::{Date, DateTime};

use crate::job::{Event, Followed, Job, Line, Order, PieceId, PieceStage, Size, follow, standing};

/// Whether a piece comes in time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Timely {
    /// Due, and not delivered: by so many days.
    Late(i64),
    /// It is cast so many days after it is due, or on that day.
    CastTooLate(i64),
    /// Nothing stands against it.
    InTime,
    /// Nobody said when it is due.
    NoDate,
    /// Delivered, or rejected with another made in its stead.
    Settled,
}

/// A piece on the board.
#[derive(Debug, Clone, PartialEq)]
pub struct BoardRow<'a> {
    /// Its order.
    pub order: &'a Order,
    /// Its line.
    pub line: &'a Line,
    /// What the record tells of it.
    pub followed: Followed,
    /// Its size since it was sized, its own, or the line's.
    pub size: Option<&'a Size>,
    /// When it is due.
    pub due: Option<Date>,
    /// When its flask is poured, by the plan.
    pub pour: Option<DateTime>,
    /// Whether it comes in time.
    pub timely: Timely,
    /// It is out of the house longer than was promised, by so many days.
    pub out_over: Option<i64>,
}

/// Every wanted piece of a job as it stands on a day.
#[must_use]
pub fn board(job: &Job, today: Date) -> Vec<BoardRow<'_>> {
    let mut followed = follow(job).into_iter().peekable();
    let mut rows = Vec::new();
    let sized: BTreeMap<PieceId, &Size> = standing(&job.record)
        .filter_map(|entry| match &entry.event {
            Event::Reworked { piece, rework } => Some((*piece, rework.size.as_ref()?)),
            _ => None,
        })
        .collect();
    for (order, line) in job.lines() {
        let due = line.due.or(order.due);
        while let Some(one) = followed.next_if(|one| one.piece.line == line.id) {
            let own = line.exceptions.get(&one.piece.number).and_then(|own| own.size.as_ref());
            let now = sized.get(&one.piece).copied();
            let pour = pour_of(job, &one);
            let out_over = one.out.as_ref().and_then(|out| out.promised).map(|promised| days(promised, today)).filter(|over| *over > 0);
            let timely = timely(&one, due, pour, today);
            rows.push(BoardRow { order, line, size: now.or(own).or(line.size.as_ref()), due, pour, timely, out_over, followed: one });
        }
    }
    rows
}

/// The planned pour of the piece's flask.
fn pour_of(job: &Job, one: &Followed) -> Option<DateTime> {
    let flask = job.flasks.iter().find(|flask| Some(flask.id) == one.flask)?;
    job.burnouts.iter().find(|load| Some(load.id) == flask.burnout)?.pour_at
}

fn timely(one: &Followed, due: Option<Date>, pour: Option<DateTime>, today: Date) -> Timely {
    if one.stage == Some(PieceStage::Delivered) || (one.rejected.is_some() && one.remade_by.is_some()) {
        return Timely::Settled;
    }
    let Some(due) = due else { return Timely::NoDate };
    let over = days(due, today);
    if over > 0 {
        return Timely::Late(over);
    }
    let cast = one.stage.is_some_and(|stage| stage >= PieceStage::Cast);
    match pour.filter(|_| !cast).map(|pour| days(due, pour.date())) {
        Some(after) if after >= 0 => Timely::CastTooLate(after),
        _ => Timely::InTime,
    }
}

/// Days from one day to another.
fn days(from: Date, to: Date) -> i64 {
    from.until(to).map_or(0, |span: Span| i64::from(span.get_days()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{
        Burnout, BurnoutId, Entry, Event, Flask, FlaskId, Hung, LineId, OutFor, PieceException, PieceId, RecordId, SentOut, Tree, TreeId,
    };
    use jiff::civil::date;

    const TODAY: Date = date(2026, 12, 1);

    fn job(due: Option<Date>, events: Vec<Event>) -> Job {
        let line = Line { id: LineId(7), quantity: 2, ..Line::default() };
        Job {
            orders: vec![Order { client: "C".to_owned(), due, lines: vec![line], ..Order::default() }],
            trees: vec![Tree { id: TreeId(1), pieces: vec![Hung { line: LineId(7), ..Hung::default() }], ..Tree::default() }],
            flasks: vec![Flask { id: FlaskId(3), tree: Some(TreeId(1)), burnout: Some(BurnoutId(5)), ..Flask::default() }],
            burnouts: vec![Burnout { id: BurnoutId(5), pour_at: Some(date(2026, 12, 4).at(9, 30, 0, 0)), ..Burnout::default() }],
            record: (1..).zip(events).map(|(id, event)| Entry { id: RecordId(id), event, ..Entry::default() }).collect(),
            ..Job::default()
        }
    }

    fn first(job: &Job) -> (Timely, Option<i64>) {
        let rows = board(job, TODAY);
        assert_eq!(rows.len(), 2);
        (rows[0].timely, rows[0].out_over)
    }

    #[test]
    fn late_is_what_is_due_and_not_delivered_or_cast_too_late() {
        let none = Vec::new;
        assert_eq!(first(&job(None, none())).0, Timely::NoDate);
        assert_eq!(first(&job(Some(date(2026, 12, 20)), none())).0, Timely::InTime);
        assert_eq!(first(&job(Some(date(2026, 12, 4)), none())).0, Timely::CastTooLate(0), "cast on the day it is due");
        assert_eq!(first(&job(Some(date(2026, 12, 2)), none())).0, Timely::CastTooLate(2));
        assert_eq!(first(&job(Some(date(2026, 12, 1)), none())).0, Timely::CastTooLate(3), "due today is not late yet");
        assert_eq!(first(&job(Some(date(2026, 11, 28)), none())).0, Timely::Late(3));
        let piece = PieceId { line: LineId(7), number: 1 };
        let delivered = Event::Reached { pieces: vec![piece], stage: PieceStage::Delivered };
        assert_eq!(first(&job(Some(date(2026, 11, 28)), vec![delivered])).0, Timely::Settled);
        let cast = Event::Poured { flask: FlaskId(3), plan: Default::default(), done: Default::default() };
        assert_eq!(first(&job(Some(date(2026, 12, 2)), vec![cast])).0, Timely::InTime, "what is cast is cast");
    }

    #[test]
    fn a_rejected_piece_is_open_until_another_is_made_in_its_stead() {
        let piece = |number| PieceId { line: LineId(7), number };
        let rejected = Event::Rejected { piece: piece(1), defect: "no-fill".to_owned() };
        let mut job = job(Some(date(2026, 11, 28)), vec![rejected]);
        assert_eq!(first(&job).0, Timely::Late(3));
        job.orders[0].lines[0].exceptions.insert(2, PieceException { remake_of: Some(piece(1)), ..PieceException::default() });
        assert_eq!(first(&job).0, Timely::Settled);
        assert_eq!(board(&job, TODAY)[0].followed.remade_by, Some(piece(2)));
    }

    #[test]
    fn what_is_out_longer_than_promised_is_told() {
        let piece = PieceId { line: LineId(7), number: 1 };
        let sent = SentOut { what_for: OutFor::Setting, to: "F".to_owned(), promised: Some(date(2026, 11, 29)), ..SentOut::default() };
        let job = job(Some(date(2026, 12, 20)), vec![Event::SentOut { pieces: vec![piece], sent }]);
        assert_eq!(first(&job), (Timely::InTime, Some(2)));
    }
}
