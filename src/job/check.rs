//! What a job must keep beyond being well-formed: ids that are given once and point at something, numbers that can be true.
//!
//! A fault never hides the rest: [`mend`] gives the job without what is at fault, so that everything else still computes, while the
//! document on disk stays as it is.

use std::collections::{BTreeMap, BTreeSet};

use super::{Job, LineId, Place, Programme, Weighing};
use crate::quantity::{Finite, Grams};

/// Something in a job that cannot be.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// Where.
    pub place: Place,
    /// The field.
    pub field: &'static str,
    /// What is wrong with it.
    pub what: Wrong,
}

/// What is wrong with a field.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Wrong {
    /// No id.
    #[error("it has no id; ids are whole numbers from 1")]
    NoId,
    /// An id twice.
    #[error("the id {0} is given twice; the second one was left out")]
    Twice(u32),
    /// A reference to nothing.
    #[error("it points at {0}, which is not in this job")]
    Dangling(Place),
    /// Out of every sensible range.
    #[error("{value} cannot be right here; it must lie between {low} and {high}")]
    OutOfRange {
        /// What stands there.
        value: f64,
        /// Least.
        low: f64,
        /// Most.
        high: f64,
    },
    /// A tare above the gross weight.
    #[error("the tare ({tare} g) is more than the gross weight ({weight} g)")]
    TareOverGross {
        /// Tare.
        tare: Grams,
        /// Gross.
        weight: Grams,
    },
    /// An order line of nothing, or of absurdly much.
    #[error("a line has from 1 to 100000 pieces, not {0}")]
    Quantity(u32),
    /// A piece number beyond the line.
    #[error("piece {0} is not among the line's pieces")]
    NoSuchPiece(u32),
}

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}, {}: {}", self.place, self.field, self.what)
    }
}

/// The job without what is at fault, and the faults.
#[must_use]
pub fn mend(job: &Job) -> (Job, Vec<Fault>) {
    let mut mending = Mending { faults: Vec::new() };
    let mut job = job.clone();
    mending.ids(&mut job);
    // Lines that cannot stay go first, or references to them would be left behind.
    mending.orders(&mut job);
    mending.references(&mut job);
    mending.patterns(&mut job);
    mending.trees(&mut job);
    mending.flasks(&mut job);
    mending.burnouts(&mut job);
    mending.melts(&mut job);
    mending.site(&mut job);
    (job, mending.faults)
}

/// The faults alone.
#[must_use]
pub fn faults(job: &Job) -> Vec<Fault> {
    mend(job).1
}

struct Mending {
    faults: Vec<Fault>,
}

/// Ranges outside of which a number is a slip, not a choice: (least, most).
mod range {
    pub const GRAMS: (f64, f64) = (0.0001, 500_000.0);
    pub const LENGTH_MM: (f64, f64) = (0.01, 2_000.0);
    pub const TEMPERATURE_C: (f64, f64) = (-40.0, 2_500.0);
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
}

impl Mending {
    fn fault(&mut self, place: Place, field: &'static str, what: Wrong) {
        self.faults.push(Fault { place, field, what });
    }

    /// Blanks a number outside its range.
    fn number(&mut self, place: Place, field: &'static str, number: &mut Option<Finite>, (low, high): (f64, f64)) {
        if let Some(value) = number.map(Finite::get)
            && !(low..=high).contains(&value)
        {
            self.fault(place, field, Wrong::OutOfRange { value, low, high });
            *number = None;
        }
    }

    fn grams(&mut self, place: Place, field: &'static str, grams: &mut Option<Grams>) {
        let mut number = grams.and_then(|grams| Finite::new(grams.to_f64()));
        self.number(place, field, &mut number, range::GRAMS);
        *grams = grams.filter(|_| number.is_some());
    }

    /// The same where nought is an answer.
    fn grams_or_none(&mut self, place: Place, field: &'static str, grams: &mut Option<Grams>) {
        if *grams != Some(Grams::ZERO) {
            self.grams(place, field, grams);
        }
    }

    fn weighing(&mut self, place: Place, field: &'static str, weighing: &mut Option<Weighing>) {
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
    fn unique<T>(&mut self, items: &mut Vec<T>, id: impl Fn(&T) -> u32, place: impl Fn(u32) -> Place) {
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

    fn ids(&mut self, job: &mut Job) {
        self.unique(&mut job.orders, |order| order.id.0, |id| Place::Order(super::OrderId(id)));
        let mut lines = BTreeSet::new();
        for order in &mut job.orders {
            let Self { faults } = self;
            order.lines.retain(|line| {
                let what = match line.id.0 {
                    0 => Wrong::NoId,
                    id if !lines.insert(id) => Wrong::Twice(id),
                    _ => return true,
                };
                faults.push(Fault { place: Place::Line(line.id), field: "id", what });
                false
            });
        }
        self.unique(&mut job.patterns, |pattern| pattern.id.0, |id| Place::Pattern(super::PatternId(id)));
        self.unique(&mut job.trees, |tree| tree.id.0, |id| Place::Tree(super::TreeId(id)));
        self.unique(&mut job.flasks, |flask| flask.id.0, |id| Place::Flask(super::FlaskId(id)));
        self.unique(&mut job.burnouts, |burnout| burnout.id.0, |id| Place::Burnout(super::BurnoutId(id)));
        self.unique(&mut job.melts, |melt| melt.id.0, |id| Place::Melt(super::MeltId(id)));
        self.unique(&mut job.quotes, |quote| quote.id.0, |id| Place::Quote(super::QuoteId(id)));
        self.unique(&mut job.record, |entry| entry.id.0, |id| Place::Record(super::RecordId(id)));
    }

    /// Blanks references that point at nothing.
    fn reference<T: Copy + Ord>(
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

    fn references(&mut self, job: &mut Job) {
        let patterns: BTreeSet<_> = job.patterns.iter().map(|pattern| pattern.id).collect();
        let trees: BTreeSet<_> = job.trees.iter().map(|tree| tree.id).collect();
        let burnouts: BTreeSet<_> = job.burnouts.iter().map(|burnout| burnout.id).collect();
        let melts: BTreeSet<_> = job.melts.iter().map(|melt| melt.id).collect();
        for line in job.orders.iter_mut().flat_map(|order| &mut order.lines) {
            let place = Place::Line(line.id);
            self.reference(place, "pattern", &mut line.pattern, &patterns, Place::Pattern);
            for exception in line.exceptions.values_mut() {
                self.reference(place, "exceptions.pattern", &mut exception.pattern, &patterns, Place::Pattern);
            }
        }
        for flask in &mut job.flasks {
            let place = Place::Flask(flask.id);
            self.reference(place, "tree", &mut flask.tree, &trees, Place::Tree);
            self.reference(place, "burnout", &mut flask.burnout, &burnouts, Place::Burnout);
            self.reference(place, "melt", &mut flask.melt, &melts, Place::Melt);
        }
        let quantities: BTreeMap<LineId, u32> = job.lines().map(|(_, line)| (line.id, line.quantity)).collect();
        for tree in &mut job.trees {
            let place = Place::Tree(tree.id);
            let faults = &mut self.faults;
            tree.pieces.retain_mut(|hung| {
                let Some(quantity) = quantities.get(&hung.line) else {
                    faults.push(Fault { place, field: "pieces", what: Wrong::Dangling(Place::Line(hung.line)) });
                    return false;
                };
                let all = hung.numbers.is_empty();
                hung.numbers.retain(|number| {
                    let there = (1..=*quantity).contains(number);
                    if !there {
                        faults.push(Fault { place, field: "pieces.numbers", what: Wrong::NoSuchPiece(*number) });
                    }
                    there
                });
                // No number at all means every piece: that is not what was said.
                all || !hung.numbers.is_empty()
            });
        }
    }

    fn orders(&mut self, job: &mut Job) {
        const MOST_PIECES: u32 = 100_000;
        for order in &mut job.orders {
            let faults = &mut self.faults;
            order.lines.retain(|line| {
                let good = (1..=MOST_PIECES).contains(&line.quantity);
                if !good {
                    faults.push(Fault { place: Place::Line(line.id), field: "quantity", what: Wrong::Quantity(line.quantity) });
                }
                good
            });
            for line in &mut order.lines {
                let place = Place::Line(line.id);
                let quantity = line.quantity;
                line.exceptions.retain(|number, _| {
                    let there = (1..=quantity).contains(number);
                    if !there {
                        self.faults.push(Fault { place, field: "exceptions", what: Wrong::NoSuchPiece(*number) });
                    }
                    there
                });
                self.number(place, "mark_permille", &mut line.mark_permille, range::PERMILLE);
                self.number(place, "finishing_min", &mut line.finishing_min, range::MINUTES);
            }
        }
    }

    fn patterns(&mut self, job: &mut Job) {
        for pattern in &mut job.patterns {
            let place = Place::Pattern(pattern.id);
            self.weighing(place, "weighed", &mut pattern.weighed);
            self.number(place, "thinnest_mm", &mut pattern.thinnest_mm, range::LENGTH_MM);
            if let Some(extents) = pattern.extents_mm {
                for (field, side) in [("along", extents.along), ("across", extents.across), ("deep", extents.deep)] {
                    let mut side = Some(side);
                    self.number(place, field, &mut side, range::LENGTH_MM);
                    if side.is_none() {
                        pattern.extents_mm = None;
                    }
                }
            }
            if let Some(file) = &mut pattern.file {
                self.number(place, "file.scale", &mut file.scale, range::SCALE);
            }
        }
    }

    fn trees(&mut self, job: &mut Job) {
        for tree in &mut job.trees {
            let place = Place::Tree(tree.id);
            for part in &mut tree.weighed {
                self.weighing(place, "weighed", &mut part.weight);
            }
            if let Some(main) = &mut tree.main_sprue {
                self.number(place, "main_sprue.diameter_mm", &mut main.diameter_mm, range::LENGTH_MM);
                self.number(place, "main_sprue.length_mm", &mut main.length_mm, range::LENGTH_MM);
            }
            for run in &mut tree.sprues {
                self.number(place, "sprues.diameter_mm", &mut run.diameter_mm, range::LENGTH_MM);
                self.number(place, "sprues.length_mm", &mut run.length_mm, range::LENGTH_MM);
                self.number(place, "sprues.angle_deg", &mut run.angle_deg, range::DEGREES);
            }
            if let Some(envelope) = &mut tree.envelope {
                self.number(place, "envelope.diameter_mm", &mut envelope.diameter_mm, range::LENGTH_MM);
                self.number(place, "envelope.height_mm", &mut envelope.height_mm, range::LENGTH_MM);
            }
        }
    }

    fn flasks(&mut self, job: &mut Job) {
        for flask in &mut job.flasks {
            let place = Place::Flask(flask.id);
            self.number(place, "collar_mm", &mut flask.collar_mm, (0.0, range::LENGTH_MM.1));
            self.number(place, "ratio", &mut flask.ratio, range::RATIO);
            self.number(place, "spill_share", &mut flask.spill_share, range::SHARE);
            self.number(place, "bowl_cm3", &mut flask.bowl_cm3, range::VOLUME_CM3);
            self.number(place, "water_c", &mut flask.water_c, (0.0, 100.0));
            self.number(place, "melt_loss", &mut flask.melt_loss, range::SHARE);
            self.number(place, "metal_c", &mut flask.metal_c, range::TEMPERATURE_C);
            self.number(place, "mould_c", &mut flask.mould_c, range::TEMPERATURE_C);
            self.grams_or_none(place, "reserve", &mut flask.reserve);
            self.grams_or_none(place, "button.least", &mut flask.button.least);
            self.number(place, "button.share", &mut flask.button.share, range::SHARE);
        }
    }

    fn burnouts(&mut self, job: &mut Job) {
        for burnout in &mut job.burnouts {
            let load = Place::Burnout(burnout.id);
            self.number(load, "dewax_min", &mut burnout.dewax_min, range::MINUTES);
            self.number(load, "start_c", &mut burnout.start_c, range::TEMPERATURE_C);
            if let Some(Programme::Segments(segments)) = &mut burnout.programme {
                for (number, segment) in (1..).zip(segments) {
                    let place = Place::Stage(burnout.id, number);
                    self.number(place, "target_c", &mut segment.target_c, range::TEMPERATURE_C);
                    self.number(place, "ramp_k_h", &mut segment.ramp_k_h, range::RATE_K_H);
                    self.number(place, "ramp_min", &mut segment.ramp_min, range::MINUTES);
                    let mut hold = Some(segment.hold_min);
                    self.number(place, "hold_min", &mut hold, range::MINUTES);
                    segment.hold_min = hold.unwrap_or_default();
                }
            }
        }
    }

    fn melts(&mut self, job: &mut Job) {
        for melt in &mut job.melts {
            let place = Place::Melt(melt.id);
            self.number(place, "target_permille", &mut melt.target_permille, range::PERMILLE);
            melt.charge.retain(|draw| {
                let mut grams = Some(draw.grams);
                self.grams(place, "charge.grams", &mut grams);
                grams.is_some()
            });
        }
    }

    fn site(&mut self, job: &mut Job) {
        let site = &mut job.site;
        self.number(Place::Job, "site.altitude_m", &mut site.altitude_m, range::ALTITUDE_M);
        self.number(Place::Job, "site.barometer_kpa", &mut site.barometer_kpa, range::BAROMETER_KPA);
        self.number(Place::Job, "site.room_c", &mut site.room_c, range::TEMPERATURE_C);
        self.number(Place::Job, "site.water_c", &mut site.water_c, (0.0, 100.0));
    }
}
