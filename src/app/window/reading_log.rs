//! A kiln's log on its way into the batch: chosen, typed, or dropped on the window.

use std::path::{Path, PathBuf};

use super::Window;
use crate::app::dialog::Dialog;
use crate::app::page::Page;
use crate::job::{BurnoutId, KilnReadings};
use crate::kiln_log::{KilnLog, Limits, Options, Unit, read, thin};
use crate::quantity::Finite;
use crate::texts::Texts;

/// A log in the batch has no more points than this; its curve is within a kelvin of the readings all the same, or as near as that allows.
const MOST_POINTS: usize = 1500;
/// A log is no longer than this, in min: two weeks.
const LONGEST_MIN: f64 = 20_160.0;
/// Endings of logs, for the system's own window.
pub(super) const LOGS: [&str; 5] = ["csv", "txt", "tsv", "log", "dat"];

/// May a file be a kiln's log, by its name?
pub(super) fn looks_like_log(path: &Path) -> bool {
    path.extension().is_some_and(|ending| LOGS.iter().any(|log| ending.eq_ignore_ascii_case(log)))
}

impl Window {
    /// Asks for a log.
    pub(super) fn ask_log(&mut self) {
        self.dialog = Some(Dialog::ReadLog { path: String::new(), unit: None, failed: None });
    }

    /// Reads a log into the load that is looked at, or the last one. Where it cannot be read the question stands, with why.
    pub(super) fn read_log(&mut self, path: &Path, unit: Option<Unit>) {
        match self.log_of(path, unit) {
            Ok((load, log)) => {
                self.dialog = None;
                self.workbook.edit(Texts::english().label("edit-log"), move |job| {
                    if let Some(load) = job.burnouts.iter_mut().find(|one| one.id == load) {
                        load.log = Some(log);
                    }
                });
                (self.workbook.view.page, self.workbook.view.burnout) = (Page::Burnout, Some(load));
            }
            Err(why) => self.dialog = Some(Dialog::ReadLog { path: path.display().to_string(), unit, failed: Some(why) }),
        }
    }

    fn log_of(&self, path: &Path, unit: Option<Unit>) -> Result<(BurnoutId, KilnReadings), String> {
        let texts = Texts::english();
        let loads = &self.workbook.job.burnouts;
        let chosen = loads.iter().find(|load| Some(load.id) == self.workbook.view.burnout).or(loads.last());
        let load = chosen.map(|load| load.id).ok_or_else(|| texts.label("log-no-load"))?;
        let limits = Limits::default();
        let bytes = self.disk.read(path, u64::try_from(limits.max_bytes).unwrap_or(u64::MAX)).map_err(|error| error.to_string())?;
        let options = Options { unit, zone: Some(self.workbook.setting.zone.clone()), limits, ..Options::default() };
        let log = read(&bytes, &options).map_err(|error| error.to_string())?;
        if log.points.last().is_some_and(|last| last[0] > LONGEST_MIN) {
            return Err(texts.label("log-too-long"));
        }
        let file = path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
        Ok((load, kept(&log, file)))
    }

    /// Logs among what was dropped are read, the rest is given back.
    pub(super) fn take_logs(&mut self, paths: Vec<PathBuf>) -> Vec<PathBuf> {
        let (logs, others): (Vec<PathBuf>, Vec<PathBuf>) = paths.into_iter().partition(|path| looks_like_log(path));
        if let Some(log) = logs.last() {
            self.read_log(log, None);
        }
        others
    }
}

/// A log as the batch keeps it: made light, with what its reader had to decide.
fn kept(log: &KilnLog, file: String) -> KilnReadings {
    let mut within_k = 0.5;
    let mut points = thin(&log.points, within_k);
    while points.len() > MOST_POINTS && within_k < 50.0 {
        within_k *= 2.0;
        points = thin(&log.points, within_k);
    }
    let tenth = |number: f64| Finite::new((number * 10.0).round() / 10.0);
    let points = points.iter().filter_map(|[minutes, c]| Some((tenth(*minutes)?, tenth(*c)?))).collect();
    let notes = log.remarks.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n");
    KilnReadings { file, start: log.start, points, notes }
}
