//! In which order the flasks of a load are poured: the hottest moulds first, then the kiln falls for the others and holds until they have
//! followed.

use super::book::Id;
use super::burnout::BurnoutFigures;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::pass::Pass;
use super::rule::rules;
use crate::job::{FlaskId, Place};
use crate::stock::Kiln;

rules! {
    /// When the flasks of a later round are poured.
    ROUND_AT "pour.round-at" (before: Moment, ramp: Duration, hold: Duration) -> Moment
        = Formula "before + ramp + hold" { before + ramp + hold };
        CommonPractice "the kiln falls, and holds as long as it did for the first flasks"
    /// The mould's temperature a later round is wanted at.
    ROUND_TARGET "pour.round-target" (mould: Temperature) -> Temperature
        = Most "max(mould)";
        CommonPractice "the hottest mould of those that are left"
}

/// Flasks that are poured at one temperature of the kiln.
#[derive(Debug, Clone)]
pub struct PourRound {
    /// The flasks, in the order they are to be poured.
    pub flasks: Vec<FlaskId>,
    /// What the kiln stands at.
    pub target: Id,
    /// Its way there and its hold there, after the round before; nothing for the first, which ends the programme.
    pub wait: Option<[Id; 2]>,
    /// When they are poured.
    pub at: Id,
}

impl<'a> Pass<'a> {
    /// The rounds of a load.
    pub(super) fn pour_rounds(&mut self, load: &BurnoutFigures, kiln: Option<&'a Kiln>, flasks: &[&FlaskFigures]) -> Vec<PourRound> {
        let Some(last) = load.stages.last() else { return Vec::new() };
        let mut left: Vec<&FlaskFigures> = flasks.to_vec();
        // Hottest first; of equals the thinner, which lose their heat sooner on the way to the metal.
        left.sort_by(|a, b| {
            let wanted = |flask: &FlaskFigures| self.book.number(flask.pour.mould).unwrap_or(f64::INFINITY);
            wanted(b).total_cmp(&wanted(a)).then(a.pour.section.cmp(&b.pour.section)).then(a.id.cmp(&b.id))
        });
        let mut rounds = vec![PourRound { flasks: Vec::new(), target: last.target, wait: None, at: load.pour }];
        let mut stands = last.target;
        while !left.is_empty() {
            // The hottest is poured first, whatever the programme ends at: that is what it was made for.
            let first = left.first().map(|flask| flask.id);
            let (now, later): (Vec<&FlaskFigures>, Vec<&FlaskFigures>) =
                left.iter().partition(|flask| Some(flask.id) == first || self.poured_at(stands, flask));
            if let Some(round) = rounds.last_mut() {
                round.flasks.extend(now.iter().map(|flask| flask.id));
            }
            if later.is_empty() {
                break;
            }
            let Some(next) = self.next_round(kiln, (stands, last.hold), &later, rounds.last().map_or(load.pour, |round| round.at)) else {
                break;
            };
            stands = next.target;
            rounds.push(next);
            left = later;
        }
        rounds
    }

    /// Is a flask right at what the kiln stands at? One that says no temperature is taken as it comes.
    fn poured_at(&self, stands: Id, flask: &FlaskFigures) -> bool {
        let number = |id| self.book.number(id);
        let Some(stands) = number(stands) else { return true };
        match flask.pour.mould_range.map(|[low, high]| (number(low), number(high))) {
            Some((Some(low), Some(high))) => {
                // A temperature of its own may lie outside its alloy's range.
                let own = number(flask.pour.mould).unwrap_or(low);
                (low.min(own)..=high.max(own)).contains(&stands) || stands < low
            }
            _ => true,
        }
    }

    fn next_round(&mut self, kiln: Option<&'a Kiln>, (stands, hold): (Id, Id), later: &[&FlaskFigures], before: Id) -> Option<PourRound> {
        let first = later.first()?;
        let place = Place::Flask(first.id);
        let moulds: Vec<Id> = later.iter().map(|flask| flask.pour.mould).collect();
        let target = self.book.derive_over(&ROUND_TARGET, place, &moulds);
        let (from, to) = (self.book.number(stands)?, self.book.number(target)?);
        if to >= from {
            return None;
        }
        let ramp = self.kilns_ramp(place, kiln, stands, target);
        let at = self.book.derive(&ROUND_AT, place, [before, ramp, hold]);
        Some(PourRound { flasks: Vec::new(), target, wait: Some([ramp, hold]), at })
    }

    /// Turns that somebody gave, against the heat: a flask that wants a cooler mould before one that wants a hotter.
    pub(super) fn turns_against_heat(&mut self, rounds: &[PourRound]) {
        let turn = |id: FlaskId| self.job.flasks.iter().find(|flask| flask.id == id).and_then(|flask| flask.turn);
        let mut latest: Option<(u32, FlaskId)> = None;
        let mut against = Vec::new();
        for round in rounds {
            for id in &round.flasks {
                if let (Some(own), Some((before, hotter))) = (turn(*id), latest)
                    && own < before
                {
                    against.push((*id, hotter, round.target));
                }
            }
            let of_round = round.flasks.iter().filter_map(|id| Some((turn(*id)?, *id))).max();
            latest = latest.max(of_round);
        }
        for (id, hotter, target) in against {
            let name =
                self.job.flasks.iter().find(|flask| flask.id == hotter).map_or_else(String::new, |flask| flask.scratch.trim().to_owned());
            let name = if name.is_empty() { hotter.to_string() } else { name };
            self.find(&finding::TURN_AGAINST_HEAT, Place::Flask(id), vec![Arg::Figure(target), Arg::Text(name)]);
        }
    }
}
