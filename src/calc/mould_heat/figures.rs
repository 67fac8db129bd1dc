//! Figures read off the heat of each mould, from low to high conductivity.

use std::sync::Arc;

use super::answer::{Band, DRY_C, HeatAnswer, Mould};
use super::ask::HeatAsk;
use super::log::LogHeat;
use super::rules::{
    APART_CRISTOBALITE, APART_QUARTZ, BURNT_AFTER, BURNT_AT, CARBON_TIME, CAVITY_AT_POUR, CORE_AT_POUR, CORE_TOP, DRY_AFTER, DRY_AT, HEAT,
    LOAD_HEAT, OUT_FOR,
};
use crate::calc::book::Id;
use crate::calc::burnout::{BurnoutFigures, HOT_C};
use crate::calc::flask::FlaskFigures;
use crate::calc::pass::Pass;
use crate::calc::rule::{Input, Rule};
use crate::calc::tree::TreeFigures;
use crate::calc::value::Cause;
use crate::job::{BurnoutId, FlaskId, Place};

/// Wax and most resins have burnt or run out of a mould that was hotter than this, in °C: common practice, no source.
const BURNT_C: f64 = 230.0;

/// While cristobalite changes its lattice, in °C: about these, by the thermal chemistry of gypsum-bonded powders, from memory.
pub const CRISTOBALITE_C: [f64; 2] = [220.0, 270.0];

/// While quartz does: 573 °C by every handbook, and ten kelvins to either side.
pub const QUARTZ_C: [f64; 2] = [563.0, 583.0];

/// One figure from low to high conductivity. A line without a number is something that never happens.
pub type Spread = [Id; 3];

/// What a mould feels.
#[derive(Debug, Clone)]
pub struct MouldHeat {
    /// When its core is dry.
    pub dry: Spread,
    /// When its core is hot enough for wax to have burnt.
    pub burnt: Spread,
    /// How long its core is hot enough to burn carbon.
    pub carbon: Spread,
    /// The hottest its core becomes.
    pub top: Spread,
    /// Core at the pour.
    pub core_at_pour: Spread,
    /// Outermost cavity at the pour.
    pub cavity_at_pour: Spread,
    /// Wall and core apart while cristobalite and quartz change.
    pub apart: [Spread; 2],
    /// How long it may stand out; nothing where its range is not known.
    pub out_for: Option<Spread>,
    /// Heat it takes in.
    pub heat: Spread,
    /// What all this was read off.
    pub answer: Arc<HeatAnswer>,
}

/// A flask whose mould's heat is asked for.
#[derive(Debug, Clone)]
pub struct HeatFigures {
    /// The flask.
    pub flask: FlaskId,
    /// Its load.
    pub load: BurnoutId,
    /// What is asked.
    pub ask: HeatAsk,
    /// What came of it; nothing until the run has come back, and where it is refused.
    pub mould: Option<MouldHeat>,
    /// The run came back without an answer: its numbers make no mould.
    pub refused: bool,
    /// What the kiln's log makes of it, where there is one.
    pub log: Option<LogHeat>,
}

impl HeatFigures {
    /// Is the mould computed from what the kiln really did, to the pour?
    #[must_use]
    pub fn is_by_log(&self) -> bool {
        self.log.as_ref().is_some_and(LogHeat::rules)
    }

    /// What is asked and not answered.
    pub fn unanswered(&self) -> impl Iterator<Item = &HeatAsk> {
        let plan = (self.mould.is_none() && !self.refused).then_some(&self.ask);
        plan.into_iter().chain(self.log.iter().filter(|log| log.by.is_none()).map(|log| &log.ask))
    }

    /// The keys of everything it asks.
    pub fn keys(&self) -> impl Iterator<Item = u128> {
        std::iter::once(self.ask.key()).chain(self.log.iter().map(|log| log.ask.key()))
    }
}

/// The heat that the moulds of a load take in, in the book.
pub type HeatOfLoad = (BurnoutId, Id);

impl Pass<'_> {
    /// What the moulds feel, of those whose runs have come back.
    pub(in crate::calc) fn heat(
        &mut self,
        flasks: &[FlaskFigures],
        loads: &[BurnoutFigures],
        trees: &[TreeFigures],
    ) -> (Vec<HeatFigures>, Vec<HeatOfLoad>) {
        let (mut found, mut of_loads) = (Vec::new(), Vec::new());
        for load in loads {
            for flask in flasks.iter().filter(|flask| flask.burnout == Some(load.id)) {
                let Some(ask) = self.heat_ask(flask, load, trees) else { continue };
                let answer = self.runs.heat.get(&ask.key()).cloned();
                let refused = answer.as_ref().is_some_and(|answer| answer.moulds.iter().any(Result::is_err));
                let log = self.log_heat(flask, load, &ask);
                // A log that goes to the pour says what the plan only meant.
                let logged = log.as_ref().filter(|log| log.rules()).and_then(|log| Some((log.by.as_ref()?.answer.clone(), log.start?)));
                let mould = match (logged, answer.filter(|_| !refused)) {
                    (Some((answer, start)), _) => Some(self.mould_heat(flask, start, answer)),
                    (None, Some(answer)) => Some(self.mould_heat(flask, load.kiln_start, answer)),
                    (None, None) => None,
                };
                if let Some(mould) = &mould {
                    self.heat_findings(flask, load, mould);
                }
                found.push(HeatFigures { flask: flask.id, load: load.id, ask, mould, refused, log });
            }
            let of_load = found.iter().filter(|one: &&HeatFigures| one.load == load.id);
            let heats: Option<Vec<Id>> = of_load.map(|one| one.mould.as_ref().map(|mould| mould.heat[1])).collect();
            if let Some(heats) = heats.filter(|heats| !heats.is_empty()) {
                of_loads.push((load.id, self.book.derive_over(&LOAD_HEAT, Place::Burnout(load.id), &heats)));
            }
        }
        (found, of_loads)
    }

    fn mould_heat(&mut self, flask: &FlaskFigures, start: Id, answer: Arc<HeatAnswer>) -> MouldHeat {
        let place = Place::Flask(flask.id);
        let coolest = flask.pour.mould_range.and_then(|[low, _]| self.book.number(low));
        let mut read = |input: &'static Input, band: Band<f64>| self.spread(input, place, band);
        let dry = read(&DRY_AFTER, answer.band(|mould| mould.core_at(DRY_C)));
        let burnt = read(&BURNT_AFTER, answer.band(|mould| mould.core_at(BURNT_C)));
        let carbon = read(&CARBON_TIME, answer.band(|mould| Some(mould.core_above_min(HOT_C))));
        let top = read(&CORE_TOP, answer.band(Mould::core_top_c));
        let core_at_pour = read(&CORE_AT_POUR, answer.band(|mould| mould.at_pour().map(|[core, _]| core)));
        let cavity_at_pour = read(&CAVITY_AT_POUR, answer.band(|mould| mould.at_pour().map(|[_, cavity]| cavity)));
        let apart = [(&APART_CRISTOBALITE, CRISTOBALITE_C), (&APART_QUARTZ, QUARTZ_C)]
            .map(|(input, within)| read(input, answer.band(|mould| mould.apart_within(within))));
        let out_for = coolest.map(|coolest| read(&OUT_FOR, answer.band(|mould| mould.out_until(coolest))));
        let heat = read(&HEAT, answer.band(|mould| Some(mould.heat_kj / 3600.0)));
        let mut at = |rule: &'static Rule, after: Spread| after.map(|after| self.book.derive(rule, place, [start, after]));
        let (dry, burnt) = (at(&DRY_AT, dry), at(&BURNT_AT, burnt));
        MouldHeat { dry, burnt, carbon, top, core_at_pour, cavity_at_pour, apart, out_for, heat, answer }
    }

    pub(super) fn spread(&mut self, input: &'static Input, place: Place, band: Band<f64>) -> Spread {
        band.map(|number| match number {
            Some(number) => self.book.run(input, place, number),
            None => self.book.absent(input, place, Cause::DoesNotApply),
        })
    }
}
