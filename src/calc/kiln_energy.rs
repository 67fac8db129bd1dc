//! What a kiln load costs: heat for the moulds, for the kiln's lining, and what the kiln loses.

use super::book::Id;
use super::burnout::BurnoutFigures;
use super::mould_heat::HeatOfLoad;
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use super::site::ROOM_DEFAULT;
use crate::job::{BurnoutId, Place};
use crate::stock::Kiln;

inputs! {
    /// What a kiln loses in an hour when it is hot.
    LOST "kiln.lost" Energy;
    /// What its lining takes until it is hot.
    LINING "kiln.lining" Energy;
    /// Price of a kilowatt-hour.
    PRICE "kiln.price" Money;
}

givens! {
    /// How hot a kiln is whose losses are told.
    HOT "kiln.hot" Temperature = 730.0; CommonPractice "a kiln’s losses are told where a gypsum-bonded mould is hottest"
    /// An hour.
    HOUR "kiln.hour" Duration = 60.0; Standard "60 min"
    /// What is paid for.
    UNIT "kiln.kwh" Energy = 1.0; Standard "energy is paid by the kilowatt-hour"
}

rules! {
    /// What the kiln loses while a stage lasts.
    STAGE_LOST "burnout.stage-lost" (lost: Energy, start: Temperature, end: Temperature, room: Temperature, hot: Temperature, ramp: Duration, hold: Duration, hour: Duration) -> Energy
        = Formula "lost*(((start - room) + (end - room))/2*ramp + (end - room)*hold)/((hot - room)*hour)" {
            lost * (((start - room) + (end - room)) / 2.0 * ramp + (end - room) * hold) / ((hot - room) * hour)
        };
        CommonPractice "losses grow with how much hotter than the room the kiln is"
    /// What the kiln loses in all.
    ALL_LOST "burnout.lost" (stage: Energy) -> Energy = Sum "sum(stage)"; Computed "all stages"
    /// What its lining takes.
    LINING_HEAT "burnout.lining" (lining: Energy, top: Temperature, room: Temperature, hot: Temperature) -> Energy
        = Formula "lining*(top - room)/(hot - room)" { lining * (top - room) / (hot - room) };
        CommonPractice "in proportion to how hot it becomes; nothing of it comes back"
    /// The whole night.
    ENERGY "burnout.energy" (part: Energy) -> Energy = Sum "sum(part)"; Computed "moulds, lining and losses"
    /// What it costs.
    COST "burnout.cost" (energy: Energy, unit: Energy, price: Money) -> Money
        = Decimal "round2(energy/unit*price)" { Some(crate::quantity::half_up(energy.checked_div(unit)?.checked_mul(price)?, 2)) };
        Computed "kilowatt-hours times their price, to the cent"
}

/// Energy and cost of a load.
#[derive(Debug, Clone, Copy)]
pub struct EnergyFigures {
    /// What its moulds take.
    pub moulds: Id,
    /// What the lining takes.
    pub lining: Id,
    /// What the kiln loses.
    pub lost: Id,
    /// All of it.
    pub energy: Id,
    /// What it costs; nothing where the studio says no price.
    pub cost: Option<Id>,
}

impl<'a> Pass<'a> {
    /// Energy of the loads whose moulds are computed.
    pub(super) fn energy(&mut self, loads: &[BurnoutFigures], heat: &[HeatOfLoad]) -> Vec<(BurnoutId, EnergyFigures)> {
        let of = |load: &BurnoutFigures| heat.iter().find(|(id, _)| *id == load.id).map(|(_, heat)| *heat);
        loads.iter().filter_map(|load| Some((load.id, self.kiln_energy(load, of(load)?)?))).collect()
    }

    /// Energy of a load whose moulds are computed and whose kiln says what it loses.
    fn kiln_energy(&mut self, load: &BurnoutFigures, moulds: Id) -> Option<EnergyFigures> {
        let document = self.job.burnouts.iter().find(|burnout| burnout.id == load.id)?;
        let kiln = self.shelf.get::<Kiln>(document.kiln.as_ref()?.as_str())?;
        let (lost, lining) = (kiln.lost_kwh.as_ref()?, kiln.lining_kwh.as_ref()?);
        let place = Place::Burnout(load.id);
        let lost = self.shelf_term(&LOST, &kiln.id, lost);
        let lining = self.shelf_term(&LINING, &kiln.id, lining);
        let (room, hot, hour) = (self.book.constant(&ROOM_DEFAULT), self.book.constant(&HOT), self.book.constant(&HOUR));
        let mut from = load.start_c;
        let mut parts = Vec::new();
        for stage in &load.stages {
            parts.push(self.book.derive(&STAGE_LOST, stage.place, [lost, from, stage.target, room, hot, stage.ramp, stage.hold, hour]));
            from = stage.target;
        }
        let lost = self.book.derive_over(&ALL_LOST, place, &parts);
        let lining = self.book.derive(&LINING_HEAT, place, [lining, load.top, room, hot]);
        let energy = self.book.derive_over(&ENERGY, place, &[moulds, lining, lost]);
        let cost = self.studio.money.kwh.map(|price| {
            let price = self.book.studio_money(&PRICE, price);
            let unit = self.book.constant(&UNIT);
            self.book.derive(&COST, place, [energy, unit, price])
        });
        Some(EnergyFigures { moulds, lining, lost, energy, cost })
    }
}
