//! Going through a job: ids, references, and every number a caster types.

use std::collections::{BTreeMap, BTreeSet};

use super::mending::{Mending, range};
use super::{Fault, Wrong};
use crate::job::{self, Job, LineId, Place, Programme};

impl Mending {
    pub fn ids(&mut self, job: &mut Job) {
        self.unique(&mut job.orders, |order| order.id.0, |id| Place::Order(job::OrderId(id)));
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
        self.unique(&mut job.patterns, |pattern| pattern.id.0, |id| Place::Pattern(job::PatternId(id)));
        self.unique(&mut job.prints, |run| run.id.0, |id| Place::Print(job::PrintId(id)));
        self.unique(&mut job.trees, |tree| tree.id.0, |id| Place::Tree(job::TreeId(id)));
        self.unique(&mut job.flasks, |flask| flask.id.0, |id| Place::Flask(job::FlaskId(id)));
        self.unique(&mut job.burnouts, |burnout| burnout.id.0, |id| Place::Burnout(job::BurnoutId(id)));
        self.unique(&mut job.melts, |melt| melt.id.0, |id| Place::Melt(job::MeltId(id)));
        self.unique(&mut job.quotes, |quote| quote.id.0, |id| Place::Quote(job::QuoteId(id)));
        self.unique(&mut job.record, |entry| entry.id.0, |id| Place::Record(job::RecordId(id)));
    }

    pub fn references(&mut self, job: &mut Job) {
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
        for pattern in &mut job.patterns {
            // None makes a pair with itself.
            if let Some(with) = pattern.pair.as_ref().map(|pair| pair.with).filter(|with| *with == pattern.id || !patterns.contains(with)) {
                let what = if with == pattern.id { Wrong::PairWithItself } else { Wrong::Dangling(Place::Pattern(with)) };
                self.fault(Place::Pattern(pattern.id), "pair.with", what);
                pattern.pair = None;
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
            let mut seen = BTreeSet::new();
            tree.placed.retain(|placed| {
                let what = match quantities.get(&placed.line) {
                    None => Wrong::Dangling(Place::Line(placed.line)),
                    Some(quantity) if !(1..=*quantity).contains(&placed.number) => Wrong::NoSuchPiece(placed.number),
                    Some(_) if !seen.insert((placed.line, placed.number)) => Wrong::Twice(placed.number),
                    Some(_) => return true,
                };
                faults.push(Fault { place, field: "placed", what });
                false
            });
        }
    }

    pub fn orders(&mut self, job: &mut Job) {
        const MOST_PIECES: u32 = 100_000;
        for order in &mut job.orders {
            self.number(Place::Order(order.id), "agreed_loss", &mut order.agreed_loss, range::SHARE);
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
                self.number(place, "band_mm", &mut line.band_mm, range::BAND_MM);
                self.number(place, "comfort_mm", &mut line.comfort_mm, range::FINISHING_MM);
                self.number(place, "finishing_opens_mm", &mut line.finishing_opens_mm, range::FINISHING_MM);
                self.number(place, "finishing_takes_mm", &mut line.finishing_takes_mm, range::FINISHING_MM);
                self.number(place, "finished.x_mm", &mut line.finished.x_mm, range::LENGTH_MM);
                self.number(place, "finished.y_mm", &mut line.finished.y_mm, range::LENGTH_MM);
                self.number(place, "finished.z_mm", &mut line.finished.z_mm, range::LENGTH_MM);
            }
        }
    }

    pub fn patterns(&mut self, job: &mut Job) {
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
            if let Some(making) = &mut pattern.making {
                self.number(place, "making.labour_min", &mut making.labour_min, range::MINUTES);
                self.number(place, "making.waste_share", &mut making.waste_share, range::WASTE);
            }
            if let Some(file) = &mut pattern.file {
                self.number(place, "file.scale", &mut file.scale, range::SCALE);
                self.number(place, "file.bore_mm", &mut file.bore_mm, range::BORE_MM);
                self.on_file(place, file);
            }
        }
    }

    pub fn trees(&mut self, job: &mut Job) {
        for tree in &mut job.trees {
            let place = Place::Tree(tree.id);
            for hung in &mut tree.pieces {
                self.number(place, "pieces.around_deg", &mut hung.around_deg, range::DEGREES);
                self.counted_from_one(place, "pieces.tier", &mut hung.tier, range::TIERS);
                self.counted_from_one(place, "pieces.sprue", &mut hung.sprue, range::SPRUES);
            }
            for placed in &mut tree.placed {
                self.counted_from_one(place, "placed.tier", &mut placed.tier, range::TIERS);
                self.number(place, "placed.height_mm", &mut placed.height_mm, range::HEIGHT_MM);
                self.number(place, "placed.around_deg", &mut placed.around_deg, range::DEGREES);
                self.number(place, "placed.turn_deg", &mut placed.turn_deg, range::DEGREES);
                self.counted_from_one(place, "placed.sprue", &mut placed.sprue, range::SPRUES);
            }
            let most = range::TIERS as usize;
            if tree.tiers.len() > most {
                self.fault(place, "tiers", Wrong::OutOfRange { value: tree.tiers.len() as f64, low: 0.0, high: most as f64 });
                tree.tiers.truncate(most);
            }
            for tier in &mut tree.tiers {
                self.number(place, "tiers.height_mm", &mut tier.height_mm, range::HEIGHT_MM);
            }
            for part in &mut tree.weighed {
                self.weighing(place, "weighed", &mut part.weight);
            }
            if let Some(main) = &mut tree.main_sprue {
                self.number(place, "main_sprue.diameter_mm", &mut main.diameter_mm, range::LENGTH_MM);
                self.number(place, "main_sprue.length_mm", &mut main.length_mm, range::LENGTH_MM);
            }
            for run in &mut tree.sprues {
                if run.count > range::SPRUES {
                    let (value, high) = (f64::from(run.count), f64::from(range::SPRUES));
                    self.fault(place, "sprues.count", Wrong::OutOfRange { value, low: 0.0, high });
                    run.count = 0;
                }
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

    pub fn flasks(&mut self, job: &mut Job) {
        for flask in &mut job.flasks {
            let place = Place::Flask(flask.id);
            self.number(place, "collar_mm", &mut flask.collar_mm, (0.0, range::LENGTH_MM.1));
            self.number(place, "ratio", &mut flask.ratio, range::RATIO);
            self.number(place, "spill_share", &mut flask.spill_share, range::SHARE);
            self.number(place, "bowl_cm3", &mut flask.bowl_cm3, range::VOLUME_CM3);
            self.number(place, "water_c", &mut flask.water_c, (0.0, 100.0));
            self.number(place, "melt_loss", &mut flask.melt_loss, range::SHARE);
            self.number(place, "metal_c", &mut flask.metal_c, range::METAL_C);
            self.number(place, "mould_c", &mut flask.mould_c, range::MOULD_C);
            self.grams_or_none(place, "reserve", &mut flask.reserve);
            self.grams_or_none(place, "button.least", &mut flask.button.least);
            self.number(place, "button.share", &mut flask.button.share, range::SHARE);
            self.number(place, "vacuum_kpa", &mut flask.vacuum_kpa, range::VACUUM_KPA);
            self.number(place, "spin.rpm", &mut flask.spin.rpm, range::RPM);
            self.number(place, "spin.metal_mm", &mut flask.spin.metal_mm, range::LENGTH_MM);
            self.number(place, "spin.pattern_mm", &mut flask.spin.pattern_mm, range::LENGTH_MM);
            self.grams(place, "spin.loaded", &mut flask.spin.loaded);
            self.grams_or_none(place, "spin.counterweight", &mut flask.spin.counterweight);
            self.grams(place, "before_dewax", &mut flask.before_dewax);
            self.grams(place, "after_dewax", &mut flask.after_dewax);
            for side in [0, 1] {
                let mut mm = flask.floor_mm.map(|at| at[side]);
                self.number(place, "floor_mm", &mut mm, range::FLOOR_MM);
                flask.floor_mm = flask.floor_mm.filter(|_| mm.is_some());
            }
        }
    }

    pub fn burnouts(&mut self, job: &mut Job) {
        for burnout in &mut job.burnouts {
            let load = Place::Burnout(burnout.id);
            self.number(load, "dewax_min", &mut burnout.dewax_min, range::MINUTES);
            self.number(load, "start_c", &mut burnout.start_c, range::KILN_C);
            self.sheet(burnout);
            self.readings(burnout);
            if let Some(Programme::Segments(segments)) = &mut burnout.programme {
                for (number, segment) in (1..).zip(segments) {
                    let place = Place::Stage(burnout.id, number);
                    self.number(place, "target_c", &mut segment.target_c, range::TARGET_C);
                    self.number(place, "ramp_k_h", &mut segment.ramp_k_h, range::RATE_K_H);
                    self.number(place, "ramp_min", &mut segment.ramp_min, range::MINUTES);
                    let mut hold = Some(segment.hold_min);
                    self.number(place, "hold_min", &mut hold, range::MINUTES);
                    segment.hold_min = hold.unwrap_or_default();
                }
            }
        }
    }

    fn sheet(&mut self, burnout: &mut job::Burnout) {
        let load = Place::Burnout(burnout.id);
        burnout.sheet.retain(|line| {
            let numbers = [
                ("sheet.from_c", line.from_c, range::KILN_C),
                ("sheet.to_c", line.to_c, range::KILN_C),
                ("sheet.minutes", line.minutes, range::MINUTES),
            ];
            numbers.into_iter().all(|(field, number, within)| {
                let mut number = Some(number);
                self.number(load, field, &mut number, within);
                number.is_some()
            })
        });
        burnout.step_minutes.retain(|_, minutes| {
            let mut minutes = Some(*minutes);
            self.number(load, "step_minutes", &mut minutes, range::MINUTES);
            minutes.is_some()
        });
    }

    /// Readings of a log: no kiln's temperature is left out that could be one, and time does not go back.
    fn readings(&mut self, burnout: &mut job::Burnout) {
        let load = Place::Burnout(burnout.id);
        let Some(log) = &mut burnout.log else { return };
        let mut last = 0.0;
        log.points.retain(|(minutes, c)| {
            let (mut minutes, mut c) = (Some(*minutes), Some(*c));
            self.number(load, "log.points", &mut minutes, (last, range::MINUTES.1));
            self.number(load, "log.points", &mut c, range::KILN_C);
            let sound = minutes.zip(c).is_some();
            last = minutes.filter(|_| sound).map_or(last, crate::quantity::Finite::get);
            sound
        });
    }

    pub fn melts(&mut self, job: &mut Job) {
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

    pub fn site_of(&mut self, place: Place, site: &mut job::Site) {
        self.number(place, "site.altitude_m", &mut site.altitude_m, range::ALTITUDE_M);
        self.number(place, "site.barometer_kpa", &mut site.barometer_kpa, range::BAROMETER_KPA);
        self.number(place, "site.room_c", &mut site.room_c, range::ROOM_C);
        self.number(place, "site.water_c", &mut site.water_c, (0.0, 100.0));
    }
}
