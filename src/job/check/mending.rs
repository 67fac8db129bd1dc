//! What every check uses: ranges, and how a value out of its range is told and taken out.

use std::collections::BTreeSet;

use super::{Fault, Wrong};
use crate::job::{Place, Weighing};
use crate::quantity::{Finite, Grams, Money};

/// Ranges outside of which a number is a slip, not a choice: (least, most).
pub(super) mod range {
    pub const GRAMS: (f64, f64) = (0.0001, 500_000.0);
    pub const LENGTH_MM: (f64, f64) = (0.01, 2_000.0);
    /// What is measured of a pattern file is in its own unit, which may be thousandths of a millimetre or metres.
    pub const FILE_LENGTH: (f64, f64) = (0.0, 1e7);
    pub const FILE_PLACE: (f64, f64) = (-1e7, 1e7);
    pub const FILE_AREA: (f64, f64) = (0.0, 1e14);
    pub const FILE_VOLUME: (f64, f64) = (0.0, 1e21);
    /// Of a joint over the dome.
    pub const HEIGHT_MM: (f64, f64) = (0.0, 2_000.0);
    pub const BAND_MM: (f64, f64) = (0.2, 60.0);
    /// A bore of a finger, or of anything else that is worn.
    pub const BORE_MM: (f64, f64) = (1.0, 500.0);
    /// What finishing takes away, or what a comfort fit is larger by; more is a piece of another size.
    pub const FINISHING_MM: (f64, f64) = (0.0, 5.0);
    /// Water that something is weighed in: the formula of its density goes no further.
    pub const WEIGHING_WATER_C: (f64, f64) = (0.0, 40.0);
    pub const ROOM_C: (f64, f64) = (-30.0, 60.0);
    pub const WAX_C: (f64, f64) = (20.0, 250.0);
    /// A kiln or a mould: it may stand in an unheated shed, and no kiln of the trade goes higher.
    pub const KILN_C: (f64, f64) = (-30.0, 1_500.0);
    pub const MOULD_C: (f64, f64) = (0.0, 1_500.0);
    pub const METAL_C: (f64, f64) = (100.0, 2_500.0);
    pub const TARGET_C: (f64, f64) = (20.0, 1_500.0);
    pub const TIERS: u32 = 1_000;
    pub const MINUTES: (f64, f64) = (0.0, 20_160.0);
    pub const SHARE: (f64, f64) = (0.0, 0.95);
    pub const RATIO: (f64, f64) = (0.05, 2.0);
    pub const RATE_K_H: (f64, f64) = (1.0, 5_000.0);
    pub const VOLUME_CM3: (f64, f64) = (1.0, 200_000.0);
    pub const SCALE: (f64, f64) = (0.01, 100.0);
    pub const ALTITUDE_M: (f64, f64) = (-450.0, 6_000.0);
    pub const BAROMETER_KPA: (f64, f64) = (40.0, 110.0);
    pub const PERMILLE: (f64, f64) = (0.0, 1000.0);
    pub const DEGREES: (f64, f64) = (-360.0, 360.0);
    /// Supports may weigh more than the part.
    pub const WASTE: (f64, f64) = (0.0, 10.0);
    pub const SPRUES: u32 = 10_000;
    pub const MARGIN: (f64, f64) = (-0.95, 20.0);
    pub const TAX: (f64, f64) = (0.0, 1.0);
    pub const MONEY: (f64, f64) = (0.0, 1e9);
    pub const PRICE: (f64, f64) = (0.0001, 1e9);
    pub const BALANCE_STEP_G: (f64, f64) = (0.0001, 100.0);
    pub const OFFSET_K: (f64, f64) = (-200.0, 200.0);
    pub const PRESSURE_KPA: (f64, f64) = (0.0, 2_000.0);
    pub const VACUUM_KPA: (f64, f64) = (0.0, 110.0);
    /// From a corner of a kiln's floor.
    pub const FLOOR_MM: (f64, f64) = (0.0, 5_000.0);
    /// Turns a minute.
    pub const RPM: (f64, f64) = (1.0, 5_000.0);
}

/// Collects faults while a document is gone through.
#[derive(Default)]
pub(super) struct Mending {
    pub faults: Vec<Fault>,
}

impl Mending {
    pub fn fault(&mut self, place: Place, field: &'static str, what: Wrong) {
        self.faults.push(Fault { place, field, what });
    }

    /// Blanks a number outside its range.
    pub fn number(&mut self, place: Place, field: &'static str, number: &mut Option<Finite>, (low, high): (f64, f64)) {
        if let Some(value) = number.map(Finite::get)
            && !(low..=high).contains(&value)
        {
            self.fault(place, field, Wrong::OutOfRange { value, low, high });
            *number = None;
        }
    }

    /// Blanks a number of something counted from 1 that there cannot be.
    pub fn counted_from_one(&mut self, place: Place, field: &'static str, number: &mut Option<u32>, most: u32) {
        if let Some(value) = number.filter(|number| !(1..=most).contains(number)) {
            self.fault(place, field, Wrong::OutOfRange { value: f64::from(value), low: 1.0, high: f64::from(most) });
            *number = None;
        }
    }

    pub fn grams(&mut self, place: Place, field: &'static str, grams: &mut Option<Grams>) {
        let mut number = grams.and_then(|grams| Finite::new(grams.to_f64()));
        self.number(place, field, &mut number, range::GRAMS);
        *grams = grams.filter(|_| number.is_some());
    }

    /// The same where nought is an answer.
    pub fn grams_or_none(&mut self, place: Place, field: &'static str, grams: &mut Option<Grams>) {
        if *grams != Some(Grams::ZERO) {
            self.grams(place, field, grams);
        }
    }

    pub fn weighing(&mut self, place: Place, field: &'static str, weighing: &mut Option<Weighing>) {
        let (weight, tare) = match *weighing {
            None => return,
            Some(Weighing::Net(grams)) => (grams, None),
            Some(Weighing::Gross { weight, tare }) => (weight, tare),
        };
        let mut checked = Some(weight);
        self.grams(place, field, &mut checked);
        let mut checked_tare = tare.filter(|tare| *tare != Grams::ZERO);
        let tare_was = checked_tare;
        self.grams(place, field, &mut checked_tare);
        if checked.is_none() || checked_tare != tare_was {
            *weighing = None;
        } else if let Some(tare) = tare.filter(|tare| *tare >= weight) {
            self.fault(place, field, Wrong::TareOverGross { tare, weight });
            *weighing = None;
        }
    }

    /// Drops objects without an id or with one that was given before.
    pub fn unique<T>(&mut self, items: &mut Vec<T>, id: impl Fn(&T) -> u32, place: impl Fn(u32) -> Place) {
        let mut seen = BTreeSet::new();
        items.retain(|item| {
            let id = id(item);
            let wrong = if id == 0 {
                Some(Wrong::NoId)
            } else if seen.insert(id) {
                None
            } else {
                Some(Wrong::Twice(id))
            };
            match wrong {
                Some(what) => {
                    self.fault(place(id), "id", what);
                    false
                }
                None => true,
            }
        });
    }

    /// Blanks references that point at nothing.
    pub fn reference<T: Copy + Ord>(
        &mut self,
        place: Place,
        field: &'static str,
        at: &mut Option<T>,
        known: &BTreeSet<T>,
        target: fn(T) -> Place,
    ) {
        if let Some(id) = *at
            && !known.contains(&id)
        {
            self.fault(place, field, Wrong::Dangling(target(id)));
            *at = None;
        }
    }

    /// Blanks a sum of money outside its range.
    pub fn money(&mut self, place: Place, field: &'static str, money: &mut Option<Money>, range: (f64, f64)) {
        let mut number = money.and_then(|money| Finite::new(money.to_f64()));
        self.number(place, field, &mut number, range);
        *money = money.filter(|_| number.is_some());
    }
}
