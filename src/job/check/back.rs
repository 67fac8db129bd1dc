//! Quotes, the record and acceptances point back at what was planned: each must point at something that is there.

use std::collections::{BTreeMap, BTreeSet};

use super::Wrong;
use super::mending::Mending;
use crate::job::{Entry, Event, Job, LineId, OrderId, PieceId, Place, QuoteState};

/// What a job holds, to be pointed at.
struct Held {
    places: BTreeSet<Place>,
    quantities: BTreeMap<LineId, u32>,
    clients: BTreeMap<OrderId, String>,
    /// Rows of a tree and stages of a load are numbered by what they stand for, so that every number may be pointed at.
    numbered: BTreeSet<Place>,
}

impl Held {
    fn of(job: &Job) -> Self {
        let mut places = BTreeSet::from([Place::Job, Place::Studio]);
        places.extend(job.orders.iter().map(|order| Place::Order(order.id)));
        places.extend(job.lines().map(|(_, line)| Place::Line(line.id)));
        places.extend(job.patterns.iter().map(|pattern| Place::Pattern(pattern.id)));
        places.extend(job.prints.iter().map(|run| Place::Print(run.id)));
        places.extend(job.melts.iter().map(|melt| Place::Melt(melt.id)));
        places.extend(job.quotes.iter().map(|quote| Place::Quote(quote.id)));
        places.extend(job.record.iter().map(|entry| Place::Record(entry.id)));
        let trees = job.trees.iter().map(|tree| Place::Tree(tree.id));
        let flasks = job.flasks.iter().map(|flask| Place::Flask(flask.id));
        let burnouts = job.burnouts.iter().map(|load| Place::Burnout(load.id));
        Self {
            places,
            quantities: job.lines().map(|(_, line)| (line.id, line.quantity)).collect(),
            clients: job.orders.iter().map(|order| (order.id, order.client.trim().to_owned())).collect(),
            numbered: trees.chain(flasks).chain(burnouts).collect(),
        }
    }

    fn holds(&self, place: Place) -> bool {
        match place {
            Place::Piece(PieceId { line, number }) => self.quantities.get(&line).is_some_and(|quantity| (1..=*quantity).contains(&number)),
            Place::TreeRow(id, _) => self.numbered.contains(&Place::Tree(id)),
            Place::Mix(id, _) => self.numbered.contains(&Place::Flask(id)),
            Place::Stage(id, _) => self.numbered.contains(&Place::Burnout(id)),
            Place::Tree(_) | Place::Flask(_) | Place::Burnout(_) => self.numbered.contains(&place),
            _ => self.places.contains(&place),
        }
    }
}

/// Lets go of what pointed at something that was just taken out: acceptances, pairs, rows of a print run, and what a draft of a quote names. What was sent or recorded
/// stands.
pub fn let_go(job: &mut Job) {
    let held = Held::of(job);
    for pattern in &mut job.patterns {
        pattern.pair = pattern.pair.take().filter(|pair| held.holds(Place::Pattern(pair.with)));
    }
    for run in &mut job.prints {
        run.rows.retain(|row| held.holds(Place::Pattern(row.pattern)));
    }
    job.accepted.retain(|accepted| held.holds(accepted.place));
    for quote in job.quotes.iter_mut().filter(|quote| quote.state == QuoteState::Draft) {
        quote.orders.retain(|id| held.clients.contains_key(id));
        for extra in &mut quote.extras {
            extra.line = extra.line.filter(|line| held.quantities.contains_key(line));
        }
    }
}

impl Mending {
    /// `written` is the record as it was read, before anything of it was left out.
    pub fn pointing_back(&mut self, job: &mut Job, written: &[Entry]) {
        let held = Held::of(job);
        self.quotes_pointing(job, &held);
        self.quotes_superseded(job);
        // A clock may have run for a quote that was left out just now.
        let held = Held::of(job);
        self.record_pointing(job, &held, written);
        // What was left out just now is no longer there to be pointed at.
        let held = Held::of(job);
        job.accepted.retain(|accepted| {
            let there = held.holds(accepted.place);
            if !there {
                self.fault(Place::Job, "accepted.place", Wrong::Dangling(accepted.place));
            }
            there
        });
    }

    fn quotes_pointing(&mut self, job: &mut Job, held: &Held) {
        job.quotes.retain_mut(|quote| {
            let place = Place::Quote(quote.id);
            let client = quote.client.trim().to_owned();
            let named = !quote.orders.is_empty();
            quote.orders.retain(|id| {
                let what = match held.clients.get(id) {
                    Some(other) if *other == client => return true,
                    Some(_) => Wrong::OtherClient(*id, client.clone()),
                    None => Wrong::Dangling(Place::Order(*id)),
                };
                self.fault(place, "orders", what);
                false
            });
            // What an extra is for is still owed: it counts for the whole quote.
            for extra in &mut quote.extras {
                if let Some(line) = extra.line.filter(|line| !held.quantities.contains_key(line)) {
                    self.fault(place, "extras.line", Wrong::Dangling(Place::Line(line)));
                    extra.line = None;
                }
            }
            // No order at all means every order of the client, which is not what a draft said that named some. What was sent stands.
            !named || !quote.orders.is_empty() || quote.state != QuoteState::Draft
        });
    }

    /// A quote replaced by one that is not there is left out, and with it what it replaced itself.
    fn quotes_superseded(&mut self, job: &mut Job) {
        loop {
            let known: BTreeSet<_> = job.quotes.iter().map(|quote| quote.id).collect();
            job.quotes.retain(|quote| match &quote.state {
                QuoteState::Superseded { by, .. } if !known.contains(by) => {
                    self.fault(Place::Quote(quote.id), "state", Wrong::Dangling(Place::Quote(*by)));
                    false
                }
                _ => true,
            });
            if job.quotes.len() == known.len() {
                return;
            }
        }
    }

    /// The record only grows, so what it points at may be gone: such an entry counts for nothing until it is withdrawn. What is left out here
    /// may be what another entry takes back, so this goes on until nothing more is left out.
    fn record_pointing(&mut self, job: &mut Job, held: &Held, written: &[Entry]) {
        loop {
            let standing: BTreeSet<_> = crate::job::standing(&job.record).map(|entry| entry.id).collect();
            let recorded: BTreeSet<_> = job.record.iter().map(|entry| Place::Record(entry.id)).collect();
            let before = job.record.len();
            job.record.retain(|entry| {
                let gone = |place: &Place| match place {
                    Place::Record(_) => !recorded.contains(place),
                    _ => !held.holds(*place),
                };
                let Some(missing) = points_at(&entry.event).into_iter().find(gone) else { return true };
                let withdrawal = matches!(entry.event, Event::Withdrawn { .. });
                if !withdrawal && !standing.contains(&entry.id) {
                    return true;
                }
                // A withdrawal of what was left out as a fault has nothing left to take back, and nothing is wrong with it.
                if !written.iter().any(|other| missing == Place::Record(other.id)) {
                    self.fault(Place::Record(entry.id), "event", Wrong::Dangling(missing));
                }
                false
            });
            if job.record.len() == before {
                return;
            }
        }
    }
}

/// Everything an event is about.
pub fn points_at(event: &Event) -> Vec<Place> {
    match event {
        Event::Remark => Vec::new(),
        Event::Reached { pieces, .. } => pieces.iter().copied().map(Place::Piece).collect(),
        Event::Pattern { pattern, .. } => vec![Place::Pattern(*pattern)],
        Event::TreeWeighed { tree, .. } => vec![Place::Tree(*tree)],
        Event::Invested { flask, .. } | Event::Poured { flask, .. } => vec![Place::Flask(*flask)],
        Event::Kiln { burnout, .. } => vec![Place::Burnout(*burnout)],
        Event::Metal { melt, flask, .. } => melt.map(Place::Melt).into_iter().chain(flask.map(Place::Flask)).collect(),
        Event::HandedBack { melt, .. } => melt.map(Place::Melt).into_iter().collect(),
        Event::PieceWeighed { piece, .. }
        | Event::Measured { piece, .. }
        | Event::Reworked { piece, .. }
        | Event::Rejected { piece, .. } => vec![Place::Piece(*piece)],
        Event::Timed { of, .. } => vec![*of],
        Event::SentOut { pieces, .. } => pieces.iter().copied().map(Place::Piece).collect(),
        Event::CameBack { sent, pieces, back } => {
            let pieces = pieces.iter().chain(&back.failed).copied().map(Place::Piece);
            std::iter::once(Place::Record(*sent)).chain(pieces).collect()
        }
        Event::Withdrawn { entry, .. } => vec![Place::Record(*entry)],
    }
}
