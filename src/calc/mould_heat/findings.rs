//! What the heat of a mould warns of: a table that the mould does not follow.

use super::figures::{MouldHeat, Spread};
use crate::calc::burnout::BurnoutFigures;
use crate::calc::burnout::CARBON_NEEDED;
use crate::calc::finding::{self, Arg};
use crate::calc::flask::FlaskFigures;
use crate::calc::pass::Pass;
use crate::job::Place;

/// Core and the mould's aim may be so far apart at the pour, in K: common practice, no source.
pub(in crate::calc) const HELD_WITHIN_K: f64 = 20.0;

impl Pass<'_> {
    pub(super) fn heat_findings(&mut self, flask: &FlaskFigures, load: &BurnoutFigures, mould: &MouldHeat) {
        let place = Place::Flask(flask.id);
        let numbers = |of: &Spread| of.map(|id| self.book.number(id));
        let (dry, carbon) = (numbers(&mould.dry), numbers(&mould.carbon));
        let core = numbers(&mould.core_at_pour);
        // Water under liquid metal throws it out: told before anything else, and alone.
        if dry[1].is_none() {
            self.find_on(&finding::MOULD_WET, place, mould.core_at_pour[1], vec![Arg::Figure(mould.core_at_pour[1])]);
            return;
        }
        if dry[0].is_none() {
            self.find_on(&finding::MOULD_WET_PERHAPS, place, mould.core_at_pour[0], vec![Arg::Figure(mould.core_at_pour[0])]);
        }
        self.core_held(flask, load, mould, core);
        // Where the kiln itself is not hot for long enough, that is told of the load.
        let Some((material, span)) = self.hardest_to_burn(std::slice::from_ref(&flask)) else { return };
        let needs = span.low * 60.0;
        if self.book.number(load.hot).is_none_or(|hot| hot < needs) {
            return;
        }
        let needed = self.book.shelf_number(&CARBON_NEEDED, &material.id, needs, &span.source, span.trust);
        let short = |minutes: Option<f64>| minutes.is_some_and(|minutes| minutes < needs);
        let args = |id| vec![Arg::Figure(id), Arg::Figure(needed), Arg::Text(material.name.clone())];
        if short(carbon[1]) {
            self.find_on(&finding::CORE_CARBON_LEFT, place, mould.carbon[1], args(mould.carbon[1]));
        } else if short(carbon[0]) {
            self.find_on(&finding::CORE_CARBON_PERHAPS, place, mould.carbon[0], args(mould.carbon[0]));
        }
    }

    /// Is the core near what the mould is wanted at?
    fn core_held(&mut self, flask: &FlaskFigures, load: &BurnoutFigures, mould: &MouldHeat, core: [Option<f64>; 3]) {
        let place = Place::Flask(flask.id);
        // The kiln ends where the hottest mould is wanted, and falls for the others afterwards.
        let of_round = load.rounds.iter().find(|round| round.flasks.contains(&flask.id)).map(|round| round.target);
        let Some(target) = of_round.or(load.stages.last().map(|stage| stage.target)) else { return };
        let Some(wanted) = self.book.number(target) else { return };
        let off = |c: Option<f64>| c.is_some_and(|c| (c - wanted).abs() > HELD_WITHIN_K);
        let (kind, at) = if off(core[1]) {
            (&finding::CORE_NOT_HELD, mould.core_at_pour[1])
        } else if off(core[0]) {
            (&finding::CORE_NOT_HELD_PERHAPS, mould.core_at_pour[0])
        } else {
            return;
        };
        self.find_on(kind, place, at, vec![Arg::Figure(at), Arg::Figure(target)]);
    }
}
