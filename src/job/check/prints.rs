//! Going through print runs, printers and their calibrations.

use std::collections::BTreeSet;

use super::Wrong;
use super::mending::{Mending, range};
use crate::job::{Job, Place, Studio};
use crate::quantity::Finite;

/// Prints of one pattern in one run.
const MOST_PRINTS: u32 = 10_000;
/// Rows of one run, settings of one printer.
const MOST_ROWS: usize = 100;
/// Lengths measured in one calibration.
const MOST_GAUGES: usize = 1_000;
/// A plate's parts may touch.
const GAP_MM: (f64, f64) = (0.0, 200.0);
/// From the thinnest film that is exposed to the thickest bead that is laid.
const LAYER_MM: (f64, f64) = (0.001, 2.0);
const SECONDS: (f64, f64) = (0.0, 3_600.0);
const MOST_BASE_LAYERS: u32 = 10_000;

impl Mending {
    pub fn prints(&mut self, job: &mut Job) {
        let patterns: BTreeSet<_> = job.patterns.iter().map(|pattern| pattern.id).collect();
        for run in &mut job.prints {
            let place = Place::Print(run.id);
            self.at_most(place, "rows", &mut run.rows, MOST_ROWS);
            run.rows.retain_mut(|row| {
                let wrong = if !patterns.contains(&row.pattern) {
                    Some(("rows.pattern", Wrong::Dangling(Place::Pattern(row.pattern))))
                } else if !(1..=MOST_PRINTS).contains(&row.count) {
                    Some(("rows.count", Wrong::Prints { count: row.count, most: MOST_PRINTS }))
                } else {
                    None
                };
                if let Some((field, what)) = wrong {
                    self.fault(place, field, what);
                    return false;
                }
                self.number(place, "rows.x_mm", &mut row.x_mm, range::LENGTH_MM);
                self.number(place, "rows.y_mm", &mut row.y_mm, range::LENGTH_MM);
                self.number(place, "rows.height_mm", &mut row.height_mm, range::LENGTH_MM);
                true
            });
            self.number(place, "washed_min", &mut run.washed_min, range::MINUTES);
            self.number(place, "cured_before_rinse_min", &mut run.cured_before_rinse_min, range::MINUTES);
        }
    }

    pub fn printers(&mut self, studio: &mut Studio) {
        let place = Place::Studio;
        let mut names = BTreeSet::new();
        studio.printers.retain(|printer| {
            let first = names.insert(printer.name.trim().to_owned());
            if !first {
                self.fault(place, "printers.name", Wrong::LabelTwice(printer.name.clone()));
            }
            first
        });
        for printer in &mut studio.printers {
            self.number(place, "printers.plate_x_mm", &mut printer.plate_x_mm, range::LENGTH_MM);
            self.number(place, "printers.plate_y_mm", &mut printer.plate_y_mm, range::LENGTH_MM);
            self.number(place, "printers.height_mm", &mut printer.height_mm, range::LENGTH_MM);
            self.number(place, "printers.gap_mm", &mut printer.gap_mm, GAP_MM);
            self.at_most(place, "printers.settings", &mut printer.settings, MOST_ROWS);
            for setting in &mut printer.settings {
                self.number(place, "printers.settings.layer_mm", &mut setting.layer_mm, LAYER_MM);
                self.number(place, "printers.settings.base_exposure_s", &mut setting.base_exposure_s, SECONDS);
                self.number(place, "printers.settings.exposure_s", &mut setting.exposure_s, SECONDS);
                self.number(place, "printers.settings.move_s", &mut setting.move_s, SECONDS);
                self.number(place, "printers.settings.supports_share", &mut setting.supports_share, range::WASTE);
                self.money(place, "printers.settings.price_per_kg", &mut setting.price_per_kg, range::MONEY);
                let mut layers = setting.base_layers.and_then(|layers| Finite::new(f64::from(layers)));
                self.number(place, "printers.settings.base_layers", &mut layers, (0.0, f64::from(MOST_BASE_LAYERS)));
                setting.base_layers = setting.base_layers.filter(|_| layers.is_some());
            }
        }
        self.calibrations(studio);
    }

    fn calibrations(&mut self, studio: &mut Studio) {
        let place = Place::Studio;
        for calibration in &mut studio.calibrations {
            self.at_most(place, "calibrations.rows", &mut calibration.rows, MOST_GAUGES);
            self.number(place, "calibrations.wanted_mm", &mut calibration.wanted_mm, range::LENGTH_MM);
            for gauge in &mut calibration.rows {
                self.number(place, "calibrations.rows.nominal_mm", &mut gauge.nominal_mm, range::LENGTH_MM);
                self.number(place, "calibrations.rows.measured_mm", &mut gauge.measured_mm, range::LENGTH_MM);
            }
        }
    }

    fn at_most<T>(&mut self, place: Place, field: &'static str, rows: &mut Vec<T>, most: usize) {
        if rows.len() > most {
            self.fault(place, field, Wrong::TooManyRows(rows.len(), most));
            rows.truncate(most);
        }
    }
}
