//! Going through the studio's file.

use std::collections::BTreeSet;

use super::mending::{Mending, range};
use super::{Fault, Wrong};
use crate::job::{Place, Studio, UsualTree, WaterWeighing};

/// The studio without what is at fault, and the faults. The document on disk stays as it is.
#[must_use]
pub fn mend_studio(studio: &Studio) -> (Studio, Vec<Fault>) {
    let mut mending = Mending::default();
    let mut studio = studio.clone();
    mending.site_of(Place::Studio, &mut studio.site);
    mending.studio_money(&mut studio);
    mending.studio_metal(&mut studio);
    mending.registers(&mut studio);
    mending.usual_tree(&mut studio.usual_tree);
    mending.printers(&mut studio);
    mending.centrifuges(&mut studio);
    (studio, mending.faults)
}

impl Mending {
    fn usual_tree(&mut self, usual: &mut UsualTree) {
        let place = Place::Studio;
        self.number(place, "usual_tree.main_diameter_mm", &mut usual.main_diameter_mm, range::LENGTH_MM);
        self.number(place, "usual_tree.feed_diameter_mm", &mut usual.feed_diameter_mm, range::LENGTH_MM);
        self.number(place, "usual_tree.feed_length_mm", &mut usual.feed_length_mm, range::LENGTH_MM);
        self.number(place, "usual_tree.feed_angle_deg", &mut usual.feed_angle_deg, range::DEGREES);
        self.number(place, "usual_tree.gap_mm", &mut usual.gap_mm, range::LENGTH_MM);
    }

    fn studio_money(&mut self, studio: &mut Studio) {
        let place = Place::Studio;
        let money = &mut studio.money;
        self.money(place, "money.hour", &mut money.hour, range::MONEY);
        self.money(place, "money.kwh", &mut money.kwh, range::MONEY);
        self.number(place, "money.margin", &mut money.margin, range::MARGIN);
        self.number(place, "money.metal_premium", &mut money.metal_premium, range::MARGIN);
        self.number(place, "money.tax", &mut money.tax, range::TAX);
        studio.prices.retain(|price| {
            let mut amount = Some(price.amount);
            self.money(place, "prices.amount", &mut amount, range::PRICE);
            amount.is_some()
        });
    }

    fn studio_metal(&mut self, studio: &mut Studio) {
        let place = Place::Studio;
        let mut step = studio.balance_step.and_then(|step| crate::quantity::Finite::new(step.to_f64()));
        self.number(place, "balance_step", &mut step, range::BALANCE_STEP_G);
        studio.balance_step = studio.balance_step.filter(|_| step.is_some());
        self.number(place, "least_wall_mm", &mut studio.least_wall_mm, range::LENGTH_MM);
        self.number(place, "bowl_cm3", &mut studio.bowl_cm3, range::VOLUME_CM3);
        let mut labels = BTreeSet::new();
        studio.lots.retain_mut(|lot| {
            if !labels.insert(lot.id.clone()) {
                self.fault(place, "lots.id", Wrong::LabelTwice(lot.id.to_string()));
                return false;
            }
            if !lot.metal.is_empty() && ron::from_str::<crate::stock::Element>(&lot.metal).is_err() {
                self.fault(place, "lots.metal", Wrong::NoMetal(std::mem::take(&mut lot.metal)));
                // Thousandths of nobody knows what are no fineness.
                lot.fineness_permille = None;
            }
            self.number(place, "lots.fineness_permille", &mut lot.fineness_permille, range::PERMILLE);
            lot.receipts.retain(|receipt| {
                let mut grams = Some(receipt.grams);
                self.grams(place, "lots.receipts.grams", &mut grams);
                grams.is_some()
            });
            true
        });
    }

    /// What is under water weighs less there than in air: else a scale was misread.
    fn displaces(&mut self, weighing: &mut WaterWeighing) {
        if let (Some(dry), Some(sinker), Some(both)) = (weighing.dry, weighing.sinker_in_water, weighing.both_in_water) {
            let apart = dry.checked_add(sinker);
            if let Some(apart) = apart.filter(|apart| both >= *apart) {
                self.fault(Place::Studio, "water_weighings.both_in_water", Wrong::NoLighterInWater { both, apart });
                weighing.both_in_water = None;
            }
        }
    }

    fn centrifuges(&mut self, studio: &mut Studio) {
        let place = Place::Studio;
        for machine in &mut studio.centrifuges {
            self.number(place, "centrifuges.rpm", &mut machine.rpm, range::RPM);
            self.number(place, "centrifuges.most_rpm", &mut machine.most_rpm, range::RPM);
            let lengths = [
                ("centrifuges.metal_mm", &mut machine.metal_mm),
                ("centrifuges.pattern_mm", &mut machine.pattern_mm),
                ("centrifuges.flask_mm", &mut machine.flask_mm),
                ("centrifuges.crucible_mm", &mut machine.crucible_mm),
                ("centrifuges.counterweight_mm", &mut machine.counterweight_mm),
                ("centrifuges.widest_mm", &mut machine.widest_mm),
                ("centrifuges.highest_mm", &mut machine.highest_mm),
            ];
            for (field, length) in lengths {
                self.number(place, field, length, range::LENGTH_MM);
            }
            self.grams(place, "centrifuges.crucible", &mut machine.crucible);
            self.grams_or_none(place, "centrifuges.cradle", &mut machine.cradle);
            self.grams(place, "centrifuges.most_counterweight", &mut machine.most_counterweight);
            self.grams(place, "centrifuges.heaviest", &mut machine.heaviest);
        }
    }

    fn registers(&mut self, studio: &mut Studio) {
        let place = Place::Studio;
        for mould in &mut studio.moulds {
            self.number(place, "moulds.rubber_shrink", &mut mould.rubber_shrink, range::SHARE);
            self.number(place, "moulds.wax_c", &mut mould.wax_c, range::WAX_C);
            self.number(place, "moulds.pressure_kpa", &mut mould.pressure_kpa, range::PRESSURE_KPA);
            self.number(place, "moulds.reject_share", &mut mould.reject_share, range::SHARE);
            self.grams(place, "moulds.shot", &mut mould.shot);
        }
        for weighing in &mut studio.water_weighings {
            self.grams(place, "water_weighings.dry", &mut weighing.dry);
            self.grams_or_none(place, "water_weighings.sinker_in_water", &mut weighing.sinker_in_water);
            self.grams_or_none(place, "water_weighings.both_in_water", &mut weighing.both_in_water);
            self.number(place, "water_weighings.water_c", &mut weighing.water_c, range::WEIGHING_WATER_C);
            self.displaces(weighing);
        }
        for lot in &mut studio.materials {
            self.number(place, "materials.gloss_off_min", &mut lot.gloss_off_min, (0.5, 120.0));
        }
        for item in &mut studio.equipment {
            self.grams_or_none(place, "equipment.tare", &mut item.tare);
            self.grams(place, "equipment.resolution", &mut item.resolution);
            self.number(place, "equipment.offset_k", &mut item.offset_k, range::OFFSET_K);
        }
    }
}
