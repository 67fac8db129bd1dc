//! Going through what is said to clients and what was written down afterwards.

use super::Wrong;
use super::mending::{Mending, range};
use crate::job::{Event, Job, Place};
use crate::quantity::Grams;

impl Mending {
    pub fn copies(&mut self, job: &mut Job) {
        job.shelf.retain(|copied| {
            let sound = copied.entry.faults().is_empty();
            if !sound {
                self.fault(Place::Job, "shelf", Wrong::FaultyCopy(copied.entry.id().to_string()));
            }
            sound
        });
    }

    pub fn quotes(&mut self, job: &mut Job) {
        for quote in &mut job.quotes {
            let place = Place::Quote(quote.id);
            self.number(place, "margin", &mut quote.margin, range::MARGIN);
            self.number(place, "tax", &mut quote.tax, range::TAX);
            self.money(place, "deposit", &mut quote.deposit, range::MONEY);
            for extra in &mut quote.extras {
                self.number(place, "extras.minutes", &mut extra.minutes, range::MINUTES);
                // A discount is an amount below nought.
                self.money(place, "extras.amount", &mut extra.amount, (-range::MONEY.1, range::MONEY.1));
            }
        }
    }

    /// A weight of the record that cannot be true counts for nothing; the entry itself stays in the file.
    pub fn record(&mut self, job: &mut Job) {
        job.record.retain_mut(|entry| {
            let place = Place::Record(entry.id);
            let weighed = |mending: &mut Self, grams: Grams| {
                let mut grams = Some(grams);
                mending.grams_or_none(place, "event.grams", &mut grams);
                grams.is_some()
            };
            match &mut entry.event {
                Event::Metal { grams, .. } | Event::PieceWeighed { grams, .. } | Event::HandedBack { grams, .. } => weighed(self, *grams),
                Event::Measured { measures, .. } => {
                    for (name, mm) in [
                        ("event.measures.model_mm", &mut measures.model_mm),
                        ("event.measures.pattern_mm", &mut measures.pattern_mm),
                        ("event.measures.cast_mm", &mut measures.cast_mm),
                        ("event.measures.finished_mm", &mut measures.finished_mm),
                    ] {
                        self.number(place, name, mm, range::LENGTH_MM);
                    }
                    true
                }
                Event::Reworked { rework, .. } => {
                    self.grams_or_none(place, "event.rework.added", &mut rework.added);
                    self.grams_or_none(place, "event.rework.taken", &mut rework.taken);
                    self.number(place, "event.rework.added_permille", &mut rework.added_permille, range::PERMILLE);
                    true
                }
                Event::Pattern { weight, .. } | Event::TreeWeighed { weight, .. } => {
                    self.weighing(place, "event.weight", weight);
                    true
                }
                Event::Kiln { temperature_c, .. } => {
                    self.number(place, "event.temperature_c", temperature_c, range::KILN_C);
                    true
                }
                Event::Invested { done, .. } => {
                    self.grams_or_none(place, "event.done.powder", &mut done.powder);
                    self.grams_or_none(place, "event.done.water", &mut done.water);
                    self.number(place, "event.done.room_c", &mut done.room_c, (-20.0, 60.0));
                    self.number(place, "event.done.water_c", &mut done.water_c, (0.0, 100.0));
                    self.number(place, "event.done.gloss_off_min", &mut done.gloss_off_min, range::MINUTES);
                    self.number(place, "event.done.vacuum_kpa", &mut done.vacuum_kpa, (0.0, range::BAROMETER_KPA.1));
                    true
                }
                Event::Poured { done, .. } => {
                    self.number(place, "event.done.metal_c", &mut done.metal_c, range::METAL_C);
                    self.number(place, "event.done.mould_c", &mut done.mould_c, range::MOULD_C);
                    self.grams_or_none(place, "event.done.charge", &mut done.charge);
                    self.number(place, "event.done.quench_min", &mut done.quench_min, range::MINUTES);
                    true
                }
                Event::SentOut { sent, .. } => {
                    self.grams_or_none(place, "event.sent.weight", &mut sent.weight);
                    true
                }
                Event::CameBack { back, .. } => {
                    self.grams_or_none(place, "event.back.weight", &mut back.weight);
                    true
                }
                Event::Remark | Event::Timed { .. } | Event::Reached { .. } | Event::Rejected { .. } | Event::Withdrawn { .. } => true,
            }
        });
    }
}
