//! What was done with prints after they left the plate, and whether their printer was calibrated: washed too long, cured too short, not clean.

use super::calibrate::accepted;
use super::finding::{self, Arg};
use super::pass::Pass;
use super::pattern::PatternFigures;
use super::rule::inputs;
use crate::job::{Place, PrintRun, Printer};
use crate::stock::{AfterPrint, PatternMaterial, Section};

inputs! {
    /// Minutes in solvent.
    WASHED "print.washed" Duration;
    /// The most of them.
    WASH_MOST "print.wash-most" Duration;
    /// Minutes of ultraviolet light before the rinse.
    CURED "print.cured" Duration;
    /// The least of them.
    CURE_LEAST "print.cure-least" Duration;
}

/// Days before a calibration is due that it is told.
const DAYS_AHEAD: i64 = 7;

impl<'a> Pass<'a> {
    /// Wash, cure and rinse against what the resin bears.
    pub(super) fn after_print(&mut self, run: &'a PrintRun, material: Option<&'a PatternMaterial>, patterns: &[PatternFigures]) {
        let place = Place::Print(run.id);
        if run.surface_clean == Some(false) {
            self.find(&finding::PRINT_NOT_CLEAN, place, Vec::new());
        }
        let Some((material, after)) = material.and_then(|material| Some((material, material.after_print.as_ref()?))) else { return };
        self.washed(run, material, after, patterns);
        let Some(minutes) = run.cured_before_rinse_min else { return };
        let cured = self.book.entered(&CURED, place, minutes.get());
        let least = self.shelf_term(&CURE_LEAST, &material.id, &after.cure_before_rinse_min);
        if minutes.get() < after.cure_before_rinse_min.value {
            self.find_on(&finding::PRINT_CURED_SHORT, place, cured, vec![Arg::Figure(cured), Arg::Figure(least)]);
        }
    }

    /// Only thin walls swell through: a thick one takes a bath too many.
    fn washed(&mut self, run: &'a PrintRun, material: &'a PatternMaterial, after: &'a AfterPrint, patterns: &[PatternFigures]) {
        let Some(minutes) = run.washed_min else { return };
        let place = Place::Print(run.id);
        let washed = self.book.entered(&WASHED, place, minutes.get());
        let span = &after.wash_min;
        let most = self.book.shelf_number(&WASH_MOST, &material.id, span.high, &span.source, span.trust);
        let thin = |row: &&crate::job::PrintRow| {
            let found = patterns.binary_search_by_key(&row.pattern, |pattern| pattern.id).ok();
            found.is_some_and(|at| patterns[at].section == Some(Section::Filigree))
        };
        let Some(row) = run.rows.iter().find(thin).filter(|_| minutes.get() > span.high) else { return };
        let job = self.job;
        let name = job.patterns.iter().find(|pattern| pattern.id == row.pattern).map(|pattern| pattern.name.clone());
        let args = vec![Arg::Figure(washed), Arg::Figure(most), Arg::Text(name.unwrap_or_default())];
        self.find_on(&finding::PRINT_WASHED_LONG, place, washed, args);
    }

    /// Is there a calibration that counts, and is it still to be relied on?
    pub(super) fn calibrated(&mut self, run: &PrintRun, printer: Option<&Printer>) {
        let (Some(printer), Some(material)) = (printer, run.material.as_ref()) else { return };
        let place = Place::Print(run.id);
        let name = Arg::Text(printer.name.clone());
        let Some((_, calibration)) = accepted(self.studio, &printer.name, Some(material)).first().copied() else {
            let resin = Arg::Text(self.name_of(material));
            self.find(&finding::PRINT_UNCALIBRATED, place, vec![name, resin]);
            return;
        };
        let Some(due) = calibration.recheck else { return };
        let days = due.since(self.setting.at).map_or(i64::MAX, |span| i64::from(span.get_days()));
        let args = vec![name, Arg::Text(due.to_string())];
        if days < 0 {
            self.find(&finding::RECHECK_PASSED, place, args);
        } else if days <= DAYS_AHEAD {
            self.find(&finding::RECHECK_DUE, place, args);
        }
    }
}
