//! The spinning machine: what hangs on its arm, what balances it, and whether the flask goes on it at all.
//!
//! The machine's manual goes before every number here.

use super::book::Id;
use super::finding::{self, Arg};
use super::investment::{DOME, MixFigures, NO_DOME};
use super::metal::MetalFigures;
use super::pass::Pass;
use super::rule::{Input, givens, inputs, rules};
use super::tree::TreeFigures;
use super::value::Cause;
use crate::job::{Centrifuge, Drive, Flask, Place};
use crate::quantity::{Finite, Grams};
use crate::stock::{Base, Flask as Vessel};

inputs! {
    /// Turns a minute.
    SPEED "spin.speed" Rotation;
    /// The most the machine may turn.
    MOST_SPEED "spin.most-speed" Rotation;
    /// From the axle to the metal's surface.
    METAL_RADIUS "spin.metal-radius" Length;
    /// From the axle to the pattern.
    PATTERN_RADIUS "spin.pattern-radius" Length;
    /// From the axle to the middle of the flask.
    FLASK_RADIUS "spin.flask-radius" Length;
    /// From the axle to the middle of the crucible.
    CRUCIBLE_RADIUS "spin.crucible-radius" Length;
    /// From the axle to the middle of the counterweight.
    ARM "spin.counterweight-radius" Length;
    /// The flask's steel.
    STEEL "flask.steel" Mass;
    /// The flask as it goes onto the machine, weighed.
    LOADED "spin.flask-weighed" Mass;
    /// The crucible, empty.
    CRUCIBLE "spin.crucible" Mass;
    /// The cradle and whatever else turns with the flask.
    CRADLE "spin.cradle" Mass;
    /// The counterweight as it is set.
    SET "spin.counterweight-set" Mass;
    /// The most the machine can be given as a counterweight.
    MOST_COUNTERWEIGHT "spin.most-counterweight" Mass;
    /// The heaviest flask the cradle takes.
    HEAVIEST "spin.heaviest-flask" Mass;
}

givens! {
    /// So far off its balance an arm is put right first.
    OFF_MOST "spin.off-most" Ratio = 0.02; CommonPractice "a fiftieth of the counterweight: common practice, no source"
    /// So far off its balance an arm is not let go.
    OFF_NEVER "spin.off-never" Ratio = 0.1; CommonPractice "a tenth of the counterweight: common practice, no source"
}

rules! {
    /// The mould in the flask, fired.
    MOULD_MASS "spin.mould" (flask: Volume, tree: Volume, dome: Volume, each: Density) -> Mass
        = Formula "max(flask - tree - dome, 0)*each" { (flask - tree - dome).max(0.0) * each };
        Computed "the powder in it: its water is gone"
    /// The flask as it goes onto the machine.
    LOADED_FLASK "spin.flask" (steel: Mass, mould: Mass) -> Mass
        = Formula "steel + mould" { steel + mould };
        Computed "steel and mould; weigh it and enter that"
    /// What turns at one radius, as grams at the counterweight's.
    AT_COUNTERWEIGHT "spin.at-counterweight" (mass: Mass, radius: Length, arm: Length) -> Mass
        = Formula "mass*radius/arm" { mass * radius / arm };
        Computed "mass times radius is the same on both sides of the arm"
    /// The counterweight.
    COUNTERWEIGHT "spin.counterweight" (carried: Mass) -> Mass = Sum "sum(carried)"; CommonPractice "Σ m·r of cradle, flask, crucible and charge, measured cold with the real load: common practice, no source"
    /// What is set over what is needed.
    DIFFERENCE "spin.difference" (set: Mass, needed: Mass) -> Mass
        = Formula "set - needed" { set - needed };
        Computed "more than nought: too much is set"
    /// The same as a share.
    OFF_SHARE "spin.off-share" (set: Mass, needed: Mass) -> Ratio
        = Formula "abs(set - needed)/needed" { (set - needed).abs() / needed };
        Computed "share of the counterweight that is needed"
}

/// A flask on its machine.
#[derive(Debug, Clone, Copy)]
pub struct SpinFigures {
    /// Turns a minute.
    pub speed: Id,
    /// From the axle to the metal's surface.
    pub metal_radius: Id,
    /// From the axle to the pattern.
    pub pattern_radius: Id,
    /// The flask as it goes onto the machine.
    pub loaded: Id,
    /// The counterweight that balances it.
    pub counterweight: Id,
    /// What is set over that, where anything is.
    pub difference: Option<Id>,
}

impl<'a> Pass<'a> {
    /// The machine a flask is spun on, by its name in the studio's file; the only one where none is named.
    pub(super) fn machine(&self, flask: &Flask) -> Option<&'a Centrifuge> {
        let studio = self.studio;
        let name = flask.spin.machine.trim();
        match studio.centrifuges.as_slice() {
            [only] if name.is_empty() => Some(only),
            machines => machines.iter().find(|machine| !name.is_empty() && machine.name.trim() == name),
        }
    }

    pub(super) fn flask_spin(
        &mut self,
        flask: &'a Flask,
        (vessel, base): (Option<&'a Vessel>, Option<&'a Base>),
        tree: Option<&TreeFigures>,
        metal: &MetalFigures,
        mix: &MixFigures,
    ) -> Option<SpinFigures> {
        if flask.drive != Drive::Centrifugal {
            return None;
        }
        let place = Place::Flask(flask.id);
        let machine = self.machine(flask);
        if machine.is_none() && !flask.spin.machine.trim().is_empty() {
            self.find(&finding::MACHINE_UNKNOWN, place, vec![Arg::Text(flask.spin.machine.clone())]);
        }
        let of = |pick: fn(&Centrifuge) -> Option<Finite>| machine.and_then(pick);
        let speed = self.said(&SPEED, place, flask.spin.rpm, of(|machine| machine.rpm));
        let metal_radius = self.said(&METAL_RADIUS, place, flask.spin.metal_mm, of(|machine| machine.metal_mm));
        let pattern_radius = self.said(&PATTERN_RADIUS, place, flask.spin.pattern_mm, of(|machine| machine.pattern_mm));
        let flask_radius = self.said(&FLASK_RADIUS, place, None, of(|machine| machine.flask_mm));
        let crucible_radius = self.said(&CRUCIBLE_RADIUS, place, None, of(|machine| machine.crucible_mm));
        let arm = self.said(&ARM, place, None, of(|machine| machine.counterweight_mm));
        let loaded = self.loaded(flask, vessel, base, tree, mix);
        let crucible = self.grams_said(&CRUCIBLE, place, None, machine.and_then(|machine| machine.crucible));
        let mut carried = vec![(loaded, flask_radius), (crucible, crucible_radius), (metal.on_balance, crucible_radius)];
        if let Some(cradle) = machine.and_then(|machine| machine.cradle) {
            carried.push((self.book.studio_grams(&CRADLE, cradle), flask_radius));
        }
        let carried: Vec<Id> =
            carried.into_iter().map(|(mass, radius)| self.book.derive(&AT_COUNTERWEIGHT, place, [mass, radius, arm])).collect();
        let counterweight = self.book.derive_over(&COUNTERWEIGHT, place, &carried);
        let difference = flask.spin.counterweight.map(|set| {
            let set = self.book.weighed(&SET, place, set);
            self.balanced(place, set, counterweight);
            self.book.derive(&DIFFERENCE, place, [set, counterweight])
        });
        if let Some(machine) = machine {
            self.on_machine(place, machine, vessel, [speed, loaded, counterweight]);
        }
        Some(SpinFigures { speed, metal_radius, pattern_radius, loaded, counterweight, difference })
    }

    fn said(&mut self, input: &'static Input, place: Place, here: Option<Finite>, machine: Option<Finite>) -> Id {
        match (here, machine) {
            (Some(number), _) => self.book.entered(input, place, number.get()),
            (None, Some(number)) => self.book.studio(input, number.get()),
            (None, None) => self.book.absent(input, place, Cause::NotSaid),
        }
    }

    fn grams_said(&mut self, input: &'static Input, place: Place, here: Option<Grams>, machine: Option<Grams>) -> Id {
        match (here, machine) {
            (Some(grams), _) => self.book.weighed(input, place, grams),
            (None, Some(grams)) => self.book.studio_grams(input, grams),
            (None, None) => self.book.absent(input, place, Cause::NotSaid),
        }
    }

    /// The flask with its mould: as it was weighed, or steel and powder.
    fn loaded(
        &mut self,
        flask: &'a Flask,
        vessel: Option<&'a Vessel>,
        base: Option<&'a Base>,
        tree: Option<&TreeFigures>,
        mix: &MixFigures,
    ) -> Id {
        let place = Place::Flask(flask.id);
        if let Some(weighed) = flask.spin.loaded {
            return self.book.weighed(&LOADED, place, weighed);
        }
        let tree = tree.map_or_else(|| self.book.absent(&super::metal::FLASK_TREE, place, Cause::NotChosen), |tree| tree.volume);
        let dome = match base {
            Some(base) => self.shelf_term(&DOME, &base.id, &base.dome_cm3),
            None => self.book.assumed(&NO_DOME, place),
        };
        let mould = self.book.derive(&MOULD_MASS, place, [mix.flask_volume, tree, dome, mix.powder_in_slurry]);
        let steel = match vessel {
            Some(vessel) => self.shelf_term_or_absent(&STEEL, &vessel.id, vessel.mass_g.as_ref(), place),
            None => self.book.absent(&STEEL, place, Cause::NotChosen),
        };
        self.book.derive(&LOADED_FLASK, place, [steel, mould])
    }

    fn balanced(&mut self, place: Place, set: Id, needed: Id) {
        let off = self.book.derive(&OFF_SHARE, place, [set, needed]);
        let kind = match self.book.number(off) {
            Some(share) if share > OFF_NEVER.value => &finding::SPIN_UNBALANCED,
            Some(share) if share > OFF_MOST.value => &finding::SPIN_OFF_BALANCE,
            _ => return,
        };
        self.find_on(kind, place, off, vec![Arg::Figure(set), Arg::Figure(needed)]);
    }

    /// Whether the machine takes what goes onto it.
    fn on_machine(&mut self, place: Place, machine: &'a Centrifuge, vessel: Option<&'a Vessel>, [speed, loaded, counterweight]: [Id; 3]) {
        let name = || Arg::Text(if machine.name.trim().is_empty() { "?".to_owned() } else { machine.name.clone() });
        if let Some(vessel) = vessel {
            let over = |size: f64, most: Option<Finite>| most.is_some_and(|most| size > most.get());
            if over(vessel.inner_diameter_mm + 2.0 * vessel.wall_mm.value, machine.widest_mm) || over(vessel.height_mm, machine.highest_mm)
            {
                self.find(&finding::CRADLE_SIZE, place, vec![Arg::Text(vessel.to_string()), name()]);
            }
        }
        let most_speed = machine.most_rpm.map(|most| self.book.studio(&MOST_SPEED, most.get()));
        let most_load = machine.heaviest.map(|most| self.book.studio_grams(&HEAVIEST, most));
        let most_weight = machine.most_counterweight.map(|most| self.book.studio_grams(&MOST_COUNTERWEIGHT, most));
        let limits = [
            (speed, most_speed, &finding::SPIN_TOO_FAST),
            (loaded, most_load, &finding::CRADLE_LOAD),
            (counterweight, most_weight, &finding::COUNTERWEIGHT_OVER),
        ];
        for (has, most, kind) in limits {
            let Some(most) = most else { continue };
            if let (Some(value), Some(limit)) = (self.book.number(has), self.book.number(most))
                && value > limit
            {
                self.find_on(kind, place, has, vec![Arg::Figure(has), Arg::Figure(most), name()]);
            }
        }
    }
}
