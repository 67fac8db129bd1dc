//! Two castings side by side: what was done the last time a design was cast, and what is done or planned now.
//!
//! Of either side what was really done counts first, then its plan as it was frozen, then what follows from the job as it stands.

use std::collections::BTreeSet;

use super::against::then;
use super::book::{Book, Id};
use super::{FlaskFigures, Report};
use crate::job::{Event, Flask, FlaskId, Frozen, InvestedAs, Job, Melt, PouredAs, Programme, Segment, pieces_in, standing};
use crate::quantity::{Finite, Grams, Kind};
use crate::stock::EntryId;

/// One casting with what follows from its job.
#[derive(Clone, Copy)]
pub struct Side<'a> {
    /// The job.
    pub job: &'a Job,
    /// What follows from it.
    pub report: &'a Report,
    /// Its figures.
    pub book: &'a Book,
    /// The flask.
    pub flask: FlaskId,
}

/// What one side says.
#[derive(Debug, Clone, PartialEq)]
pub enum Told {
    /// A quantity, in its unit.
    Number(f64, Kind),
    /// An entry of the shelf.
    Entry(EntryId),
    /// What somebody wrote.
    Words(String),
    /// So many.
    Count(usize),
    /// A programme of the studio's own.
    Segments(Vec<Segment>),
}

/// One thing, then and now.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// The catalogue's key of what it is.
    pub label: &'static str,
    /// Then and now; nothing where a side does not say.
    pub sides: [Option<Told>; 2],
    /// Both say it, and not the same.
    pub differs: bool,
}

/// What a flask was really invested and poured with, by the record.
#[derive(Default)]
struct Done<'a> {
    invested: Option<(&'a Frozen, &'a InvestedAs)>,
    poured: Option<(&'a Frozen, &'a PouredAs)>,
}

/// Everything that is known of either casting, in the order of the work; nothing that neither says.
#[must_use]
pub fn compare(last: Side<'_>, now: Side<'_>) -> Vec<Compared> {
    let [last, now] = [last, now].map(Side::told);
    let rows = last.into_iter().zip(now).map(|((label, then), (_, now))| {
        let differs = then.as_ref().zip(now.as_ref()).is_some_and(|(then, now)| differ(then, now));
        Compared { label, sides: [then, now], differs }
    });
    rows.filter(|row| row.sides.iter().any(Option::is_some)).collect()
}

/// Whether two differ by more than a scale, a thermometer or a hand does from one day to the next: common practice, no source.
fn differ(then: &Told, now: &Told) -> bool {
    let (Told::Number(then, kind), Told::Number(now, _)) = (then, now) else { return then != now };
    let off = (then - now).abs();
    match kind {
        Kind::Temperature => off > 5.0,
        Kind::Ratio => off > 0.005,
        Kind::Vacuum => off > 2.0,
        _ => off > 0.03 * then.abs().max(now.abs()),
    }
}

impl<'a> Side<'a> {
    /// The same rows for any side, in the same order.
    fn told(self) -> Vec<(&'static str, Option<Told>)> {
        let Some(flask) = self.job.flasks.iter().find(|flask| flask.id == self.flask) else { return Vec::new() };
        let figures = self.report.flasks.iter().find(|figures| figures.id == self.flask);
        let done = self.done();
        let mut rows = self.documents(flask, figures, &done);
        rows.extend(self.invested(figures, &done));
        rows.extend(self.poured(figures, &done));
        rows
    }

    fn done(self) -> Done<'a> {
        let mut done = Done::default();
        for entry in standing(&self.job.record) {
            match &entry.event {
                Event::Invested { flask, plan, done: how } if *flask == self.flask => done.invested = Some((plan, how)),
                Event::Poured { flask, plan, done: how } if *flask == self.flask => done.poured = Some((plan, how)),
                _ => {}
            }
        }
        done
    }

    fn documents(self, flask: &Flask, figures: Option<&FlaskFigures>, done: &Done<'_>) -> Vec<(&'static str, Option<Told>)> {
        let entry = |id: Option<&EntryId>| id.cloned().map(Told::Entry);
        let words = |words: &str| Some(words.trim()).filter(|words| !words.is_empty()).map(|words| Told::Words(words.to_owned()));
        let load = self.job.burnouts.iter().find(|load| Some(load.id) == flask.burnout);
        let lot = done.invested.map(|(_, how)| how.lot.as_str()).filter(|lot| !lot.trim().is_empty());
        let programme = load.and_then(|load| match load.programme.as_ref()? {
            Programme::Table(id) => Some(Told::Entry(id.clone())),
            Programme::Segments(segments) => Some(Told::Segments(segments.clone())),
        });
        vec![
            ("differ-alloy", entry(figures.and_then(|figures| figures.alloy.as_ref()))),
            ("differ-pieces", flask.tree.map(|_| Told::Count(pieces_in(self.job, self.flask).count()))),
            ("differ-vessel", entry(flask.vessel.as_ref())),
            ("differ-powder", entry(figures.and_then(|figures| figures.powder.as_ref()).or(flask.powder.as_ref()))),
            ("differ-powder-lot", words(lot.unwrap_or(&flask.powder_lot))),
            ("differ-scale", done.invested.and_then(|(_, how)| words(&how.scale))),
            ("differ-kiln", entry(load.and_then(|load| load.kiln.as_ref()))),
            ("differ-programme", programme),
            ("differ-metal-lots", self.metal_lots(flask).and_then(|lots| words(&lots))),
        ]
    }

    /// The lots its metal came from, each once.
    fn metal_lots(self, flask: &Flask) -> Option<String> {
        let melts: Vec<&Melt> = match flask.melt {
            Some(melt) => self.job.melts.iter().filter(|other| other.id == melt).collect(),
            None => {
                let of =
                    self.report.melts.iter().filter(|melt| melt.flasks.contains(&self.flask)).map(|melt| melt.place).collect::<Vec<_>>();
                self.job.melts.iter().filter(|melt| of.contains(&crate::job::Place::Melt(melt.id))).collect()
            }
        };
        let lots: BTreeSet<&str> = melts.iter().flat_map(|melt| &melt.charge).map(|draw| draw.lot.0.as_str()).collect();
        (!lots.is_empty()).then(|| lots.into_iter().collect::<Vec<_>>().join(", "))
    }

    fn invested(self, figures: Option<&FlaskFigures>, done: &Done<'_>) -> Vec<(&'static str, Option<Told>)> {
        let mix = figures.map(|figures| &figures.mix);
        let how = done.invested.map(|(_, how)| how);
        let grams = |grams: fn(&InvestedAs) -> Option<Grams>| how.and_then(grams).map(Grams::to_f64);
        let finite = |value: fn(&InvestedAs) -> Option<Finite>| how.and_then(value).map(Finite::get);
        let (powder, water) = (grams(|how| how.powder), grams(|how| how.water));
        let ratio = powder.zip(water).map(|(powder, water)| water / powder).filter(|ratio| ratio.is_finite());
        let plan = done.invested.map(|(plan, _)| plan);
        let row =
            |label, kind, done: Option<f64>, id: Option<Id>| (label, self.number(plan, done, id).map(|value| Told::Number(value, kind)));
        vec![
            row("done-ratio", Kind::Ratio, ratio, mix.map(|mix| mix.ratio)),
            row("done-powder", Kind::Mass, powder, mix.map(|mix| mix.powder)),
            row("done-water", Kind::Mass, water, mix.map(|mix| mix.water)),
            row("done-water-c", Kind::Temperature, finite(|how| how.water_c), mix.map(|mix| mix.water_c)),
            row("done-room", Kind::Temperature, finite(|how| how.room_c), Some(self.report.site.room)),
            row("done-vacuum", Kind::Vacuum, finite(|how| how.vacuum_kpa), mix.map(|mix| mix.gauge)),
            row("done-gloss-off", Kind::Duration, finite(|how| how.gloss_off_min), None),
        ]
    }

    fn poured(self, figures: Option<&FlaskFigures>, done: &Done<'_>) -> Vec<(&'static str, Option<Told>)> {
        let pour = figures.map(|figures| &figures.pour);
        let how = done.poured.map(|(_, how)| how);
        let finite = |value: fn(&PouredAs) -> Option<Finite>| how.and_then(value).map(Finite::get);
        let charge = how.and_then(|how| how.charge).map(Grams::to_f64);
        let plan = done.poured.map(|(plan, _)| plan);
        let row =
            |label, kind, done: Option<f64>, id: Option<Id>| (label, self.number(plan, done, id).map(|value| Told::Number(value, kind)));
        let quench = pour.and_then(|pour| pour.quench).map(|[from, _]| from);
        vec![
            row("done-charge", Kind::Mass, charge, figures.map(|figures| figures.metal.on_balance)),
            row("done-metal", Kind::Temperature, finite(|how| how.metal_c), pour.map(|pour| pour.metal)),
            row("done-mould", Kind::Temperature, finite(|how| how.mould_c), pour.map(|pour| pour.mould)),
            row("done-quench", Kind::Duration, finite(|how| how.quench_min), quench),
        ]
    }

    fn number(self, plan: Option<&Frozen>, done: Option<f64>, id: Option<Id>) -> Option<f64> {
        done.or_else(|| then(plan?, self.book, id?)).or_else(|| self.book.number(id?))
    }
}
