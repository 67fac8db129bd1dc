//! What a kiln's log, kept in the job, makes of the moulds of its load.

use super::answer::Band;
use super::ask::HeatAsk;
use super::cut::{ByLog, Verdict, log_ask};
use super::figures::Spread;
use super::rules::{CORE_NOW, CORNER_LOW, CORNER_NOW, LOG_START, LOG_TOP};
use crate::calc::book::Id;
use crate::calc::burnout::BurnoutFigures;
use crate::calc::burnout::CEILING;
use crate::calc::finding::{self, Arg};
use crate::calc::flask::FlaskFigures;
use crate::calc::pass::Pass;
use crate::job::{Event, FlaskId, Job, KilnReadings, Place, standing};
use crate::stock::Powder;
use jiff::civil::DateTime;

/// A log that ends so many minutes before the pour, or less, tells of all of it.
const TO_THE_POUR_MIN: f64 = 10.0;

/// A mould by the log of its kiln.
#[derive(Debug, Clone)]
pub struct LogHeat {
    /// What is asked.
    pub ask: HeatAsk,
    /// When its first reading was, where that is known: a moment.
    pub start: Option<Id>,
    /// It goes on to the pour.
    pub to_the_pour: bool,
    /// It goes on after the planned pour, and the record does not say that the flask was poured: all of it counts.
    pub goes_on: bool,
    /// What came of it; nothing until the run has come back.
    pub by: Option<ByLog>,
    /// The coldest the mould's corner became in a fall, once it was fired.
    pub corner_low: Option<Spread>,
    /// Corner and core at its end.
    pub now: Option<[Spread; 2]>,
}

impl LogHeat {
    /// Does it say more than the plan?
    #[must_use]
    pub fn rules(&self) -> bool {
        self.to_the_pour && self.by.is_some() && self.start.is_some()
    }
}

impl Pass<'_> {
    /// What the log of a load's kiln makes of a mould.
    pub(super) fn log_heat(&mut self, flask: &FlaskFigures, load: &BurnoutFigures, ask: &HeatAsk) -> Option<LogHeat> {
        let place = Place::Flask(flask.id);
        let job = self.job;
        let log = job.burnouts.iter().find(|burnout| burnout.id == load.id)?.log.as_ref()?;
        let start = match log.start.and_then(|at| self.minutes_of(at)) {
            Some(at) => Some(self.book.entered(&LOG_START, place, at)),
            None => Some(load.kiln_start).filter(|start| self.book.number(*start).is_some()),
        };
        let round = load.rounds.iter().find(|round| round.flasks.contains(&flask.id));
        let planned = self.book.number(round.map_or(load.pour, |round| round.at));
        let poured = poured_at(job, flask.id).and_then(|at| self.minutes_of(at));
        let begun = start.and_then(|start| self.book.number(start));
        let after = |at: Option<f64>| begun.and_then(|begun| Some(at? - begun)).filter(|after| *after > 0.0);
        let points = until(log, after(poured));
        let ask = log_ask(ask, &points)?;
        let pour = after(poured).or(after(planned));
        let to_the_pour = pour.is_some_and(|pour| points.last().is_some_and(|last| last[0] >= pour - TO_THE_POUR_MIN));
        let goes_on = poured.is_none() && pour.is_some_and(|pour| points.last().is_some_and(|last| last[0] > pour + TO_THE_POUR_MIN));
        self.log_over_ceiling(flask, &ask);
        let by = self.runs.heat.get(&ask.key()).filter(|answer| answer.moulds.iter().all(Result::is_ok)).cloned().map(ByLog::of);
        let mut found = LogHeat { ask, start, to_the_pour, goes_on, by, corner_low: None, now: None };
        if let Some(by) = &found.by {
            let now = |at: usize| -> Band<f64> { by.now_c.map(|now| now.map(|now| now[at])) };
            let fired = by.corner_low_c.iter().any(Option::is_some);
            found.corner_low = fired.then(|| self.spread(&CORNER_LOW, place, by.corner_low_c));
            found.now = Some([self.spread(&CORNER_NOW, place, now(0)), self.spread(&CORE_NOW, place, now(1))]);
            self.fell(place, by.verdict, found.corner_low);
        }
        Some(found)
    }

    fn fell(&mut self, place: Place, verdict: Verdict, corner_low: Option<Spread>) {
        let Some([low, likely, _]) = corner_low else { return };
        match verdict {
            Verdict::Scrap => self.find_on(&finding::MOULD_FELL, place, likely, vec![Arg::Figure(likely)]),
            Verdict::Marginal => self.find_on(&finding::MOULD_FELL_NEAR, place, low, vec![Arg::Figure(low)]),
            Verdict::Reheat | Verdict::NotFired => {}
        }
    }

    fn log_over_ceiling(&mut self, flask: &FlaskFigures, ask: &HeatAsk) {
        let place = Place::Flask(flask.id);
        let Some(powder) = flask.powder.as_ref().and_then(|id| self.shelf.get::<Powder>(id.as_str())) else { return };
        let top_c = ask.kiln.iter().map(|point| point[1]).fold(f64::NEG_INFINITY, f64::max);
        if top_c > powder.stop_ceiling_c.value {
            let ceiling = self.shelf_term(&CEILING, &powder.id, &powder.stop_ceiling_c);
            let top = self.book.measured(&LOG_TOP, place, top_c);
            let args = vec![Arg::Figure(top), Arg::Figure(ceiling), Arg::Text(powder.name.clone())];
            self.find_on(&finding::LOG_OVER_CEILING, place, top, args);
        }
    }
}

/// When a flask was poured, by the record.
#[must_use]
pub fn poured_at(job: &Job, flask: FlaskId) -> Option<DateTime> {
    let poured = standing(&job.record).filter(|entry| matches!(&entry.event, Event::Poured { flask: of, .. } if *of == flask));
    poured.filter_map(|entry| entry.at).last()
}

/// What the log says until a flask is poured: afterwards the kiln is of no matter to it.
fn until(log: &KilnReadings, pour_min: Option<f64>) -> Vec<[f64; 2]> {
    let points = log.points.iter().map(|(minutes, c)| [minutes.get(), c.get()]);
    points.filter(|point| pour_min.is_none_or(|pour| point[0] <= pour)).collect()
}
