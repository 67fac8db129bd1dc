//! A job opened and computed for the terminal. Pattern files are read and moulds computed first, so no figure is pending here.

use std::path::Path;
use std::time::SystemTime;

use jiff::ZonedDateTime;
use jiff::tz::TimeZone;

use super::args::Day;
use super::out::Out;
use crate::calc::mould_heat::answer_all;
use crate::calc::{Book, Report, Runs, Setting, Shelves, recompute};
use crate::cores::AllCores;
use crate::files::batch::{Batch, STUDIO_FILE};
use crate::files::disk::RealDisk;
use crate::files::pattern_runs::measure_patterns;
use crate::folder::{Index, taken_by_others};
use crate::mesh::Limits;
use crate::paper::words::Words;
use crate::quantity::Style;
use crate::texts::Texts;

/// Everything the terminal prints from.
pub(super) struct Computed {
    pub batch: Batch,
    pub shelves: Shelves,
    pub setting: Setting,
    pub runs: Runs,
    pub book: Book,
    pub report: Report,
    /// Something given could not be used; it was said already.
    pub faulty: bool,
}

impl Computed {
    /// Opens a job, says what is wrong with it, and computes what can be computed; `None` where it cannot be read at all.
    pub fn open(path: &Path, day: &Day, out: &mut Out) -> Option<Self> {
        let batch = match Batch::open(&RealDisk, path) {
            Ok(batch) => batch,
            Err(error) => {
                out.tell(&error.to_string());
                return None;
            }
        };
        let mut faulty = false;
        if batch.read_only {
            out.tell(&format!(
                "this file was written by a newer version; what this one does not know was passed over ({})",
                path.display()
            ));
        }
        for fault in &batch.faults {
            faulty = true;
            out.tell(&format!("{fault} ({}). It was left out; everything else is computed", path.display()));
        }
        for fault in &batch.studio_faults {
            faulty = true;
            let path = batch.folder().join(STUDIO_FILE);
            out.tell(&format!("{fault} ({}). It was left out; everything else is computed", path.display()));
        }
        if let Some(error) = &batch.studio_error {
            faulty = true;
            out.tell(&format!("{error}. The job is computed without its studio"));
        }
        let zone = zone(&batch, out, &mut faulty);
        let at = day.at.unwrap_or_else(|| ZonedDateTime::now().with_time_zone(zone.clone()).date());
        let setting = Setting { at, zone };
        let mut runs = measure_patterns(&RealDisk, batch.folder(), &batch.sound, &day.allowed(), &Limits::default());
        if batch.sound.lines().any(|(_, line)| line.exceptions.values().any(|own| own.from.is_some()))
            && let Ok(index) = Index::build(&RealDisk, batch.folder(), SystemTime::now())
        {
            runs.taken = taken_by_others(&index, batch.sound.job_id);
        }
        let shelves = Shelves::new(&batch.sound, &batch.sound_studio);
        let mut book = Book::default();
        let mut report = recompute(&batch.sound, &batch.sound_studio, &shelves, &runs, &setting, &mut book);
        if answer_all(&report, &mut runs, &AllCores) {
            report = recompute(&batch.sound, &batch.sound_studio, &shelves, &runs, &setting, &mut book);
        }
        Some(Self { batch, shelves, setting, runs, book, report, faulty })
    }

    /// How its figures become words.
    pub fn words<'a>(&'a self, style: &'a Style) -> Words<'a> {
        let currency = &self.batch.sound_studio.money.currency;
        Words { texts: Texts::english(), style, zone: &self.setting.zone, currency }
    }
}

/// The job's zone, or the studio's, or the machine's.
fn zone(batch: &Batch, out: &mut Out, faulty: &mut bool) -> TimeZone {
    let named = [&batch.sound.site.zone, &batch.sound_studio.site.zone].into_iter().find(|zone| !zone.is_empty());
    let Some(name) = named else { return TimeZone::system() };
    TimeZone::get(name).unwrap_or_else(|_| {
        *faulty = true;
        out.tell(&format!("“{name}” is no time zone that is known here; the machine's own is used ({})", batch.path.display()));
        TimeZone::system()
    })
}
