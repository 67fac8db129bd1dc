//! Burnout: stages from a table or of the studio's own, ramps as the kiln really goes, both readings of a table's hours, clock times.

pub(super) mod findings;

mod clock;
mod ramp;
mod rules;
mod stages;

pub(super) use findings::{CARBON_NEEDED, CEILING, THICK_MIX, kiln_offset_k};
pub(super) use rules::{DEWAX, INPUTS, RULES};

use super::book::Id;
use super::dewax::DewaxFigures;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::pass::Pass;
use super::pour_order::PourRound;
use super::tree::TreeFigures;
use super::value::Cause;
use crate::job::{Burnout, BurnoutId, FlaskId, Place, Programme};
use crate::stock::{EntryId, Kiln, StageTable};
use rules::{HOT_TIME, NO_KILN, SOAK_TARGET, TOP, TOTAL};

/// Stages from here up count as burning the last carbon.
pub(super) const HOT_C: f64 = 700.0;

/// One stage of a burnout.
#[derive(Debug, Clone, Copy)]
pub struct StageFigures {
    /// Its place.
    pub place: Place,
    /// Target.
    pub target: Id,
    /// Time of the ramp.
    pub ramp: Id,
    /// Time held.
    pub hold: Id,
    /// Time of both.
    pub minutes: Id,
    /// When it begins.
    pub start: Id,
    /// When it is over.
    pub end: Id,
}

/// Figures of one kiln load.
#[derive(Debug, Clone)]
pub struct BurnoutFigures {
    /// The load.
    pub id: BurnoutId,
    /// Its stages.
    pub stages: Vec<StageFigures>,
    /// Length of the programme as it will be run.
    pub total: Id,
    /// Its length with ramps in the table's hours and with ramps besides, where it comes from a table.
    pub both: Option<[Id; 2]>,
    /// Which reading is in effect, where it comes from a table; `None` is unanswered, and the longer one is run.
    pub hours_include_ramps: Option<bool>,
    /// Highest target.
    pub top: Id,
    /// Temperature of the kiln when it is loaded.
    pub start_c: Id,
    /// The pour.
    pub pour: Id,
    /// When the kiln is started.
    pub kiln_start: Id,
    /// When dewaxing starts, where there is any.
    pub dewax_start: Option<Id>,
    /// When the kiln is lit and how hot it is when it is loaded, where it is loaded hot.
    pub lit: Option<[Id; 2]>,
    /// Who is poured when, the kiln falling in between.
    pub rounds: Vec<PourRound>,
    /// What the scale says of the steam, flask by flask.
    pub dewax: Vec<(FlaskId, DewaxFigures)>,
    /// Held at 700 °C and above.
    pub hot: Id,
}

impl<'a> Pass<'a> {
    pub(super) fn burnouts(&mut self, flasks: &[FlaskFigures], trees: &[TreeFigures]) -> Vec<BurnoutFigures> {
        let job = self.job;
        job.burnouts.iter().map(|burnout| self.burnout(burnout, flasks, trees)).collect()
    }

    fn burnout(&mut self, burnout: &'a Burnout, flasks: &[FlaskFigures], trees: &[TreeFigures]) -> BurnoutFigures {
        let place = Place::Burnout(burnout.id);
        let load: Vec<&FlaskFigures> = flasks.iter().filter(|flask| flask.burnout == Some(burnout.id)).collect();
        let kiln = self.entry::<Kiln>(burnout.kiln.as_ref(), place);
        let mould = self.soak_target(place, &load);
        let (planned, reading) = self.planned(burnout, &load, mould);
        let fast = table_of(burnout).and_then(|id| self.shelf.get::<StageTable>(id.as_str())).filter(|table| table.fast.is_some());
        let start = self.start(place, burnout, fast);
        let mut from = start;
        let mut ramps = Vec::new();
        for (number, stage) in (1..).zip(&planned) {
            let at = Place::Stage(burnout.id, number);
            ramps.push(self.ramp(at, kiln, from, stage));
            from = stage.target;
        }
        let taken = self.stage_times(burnout.id, &planned, &ramps, reading);
        let minutes: Vec<Id> = taken.iter().map(|stage| stage.minutes).collect();
        let total = if minutes.is_empty() {
            self.book.absent(&NO_KILN, place, Cause::NotChosen)
        } else {
            self.book.derive_over(&TOTAL, place, &minutes)
        };
        let both = reading.map(|_| self.both_totals(burnout.id, &planned, &ramps));
        if let (Some(None), Some([including, besides])) = (reading, both) {
            self.find(&finding::RAMPS_UNSAID, place, vec![Arg::Figure(including), Arg::Figure(besides)]);
        }
        let targets: Vec<Id> = planned.iter().map(|stage| stage.target).collect();
        let top = self.book.derive_over(&TOP, place, &targets);
        let hot: Vec<Id> = taken
            .iter()
            .filter(|stage| self.book.number(stage.target).is_some_and(|target| target >= HOT_C))
            .map(|stage| stage.hold)
            .collect();
        let hot = self.book.derive_over(&HOT_TIME, place, &hot);
        let (pour, kiln_start, dewax_start) = self.clock(burnout, total);
        let stages = self.stage_clock(taken, kiln_start);
        let lit = fast.and_then(|table| self.lit(place, table, kiln, kiln_start));
        let dewax = load.iter().filter_map(|flask| Some((flask.id, self.dewax(burnout, flask, trees)?))).collect();
        let mut figures = BurnoutFigures {
            id: burnout.id,
            stages,
            total,
            both,
            hours_include_ramps: reading.flatten(),
            top,
            start_c: start,
            pour,
            kiln_start,
            dewax_start,
            lit,
            rounds: Vec::new(),
            dewax,
            hot,
        };
        figures.rounds = self.pour_rounds(&figures, kiln, &load);
        self.turns_against_heat(&figures.rounds);
        self.burnout_findings(burnout, &figures, kiln, &load, planned.is_empty());
        figures
    }

    fn soak_target(&mut self, place: Place, load: &[&FlaskFigures]) -> Id {
        let moulds: Vec<Id> = load.iter().map(|flask| flask.pour.mould).collect();
        self.book.derive_over(&SOAK_TARGET, place, &moulds)
    }
}

/// The id of the table a load's programme comes from.
#[must_use]
pub fn table_of(burnout: &Burnout) -> Option<&EntryId> {
    match &burnout.programme {
        Some(Programme::Table(table)) => Some(table),
        _ => None,
    }
}
