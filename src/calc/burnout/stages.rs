//! Stages of a load before they have a clock: from a table or of the studio's own, with ramp, hold and length.

use super::StageFigures;
use super::rules::{HOLD, HOLD_INCLUDING, HOURS, STAGE_BESIDES, STAGE_INCLUDING, TARGET, TOTAL_BESIDES, TOTAL_INCLUDING};
use crate::calc::book::Id;
use crate::calc::finding::{self, Arg};
use crate::calc::flask::FlaskFigures;
use crate::calc::pass::Pass;
use crate::job::{Burnout, BurnoutId, Place, Programme, Segment};
use crate::stock::{StageRow, StageTable};

/// A stage before its ramp is known.
pub(super) struct Planned {
    pub(super) target: Id,
    /// Hours of a table, or the hold of a segment.
    pub(super) hours: Id,
    /// The ramp that was asked for.
    pub(super) ramp: AskedRamp,
}

/// How a ramp was asked for.
#[derive(Clone, Copy)]
pub(super) enum AskedRamp {
    KilnsOwn,
    Rate(f64),
    Minutes(f64),
    /// Minutes and a rate: the minutes count, and where they disagree that is told.
    Both(f64, f64),
}

impl<'a> Pass<'a> {
    /// The stages, and for a table whether its hours include the ramps (`Some(None)`: nobody says).
    pub(super) fn planned(&mut self, burnout: &'a Burnout, load: &[&FlaskFigures], mould: Id) -> (Vec<Planned>, Option<Option<bool>>) {
        match &burnout.programme {
            None => (Vec::new(), None),
            Some(Programme::Segments(segments)) => {
                let stages = (1..).zip(segments).map(|(number, segment)| self.segment(Place::Stage(burnout.id, number), segment, mould));
                (stages.collect(), None)
            }
            Some(Programme::Table(table)) => {
                let Some(table) = self.entry::<StageTable>(Some(table), Place::Burnout(burnout.id)) else { return (Vec::new(), None) };
                let reading = burnout.hours_include_ramps.or(table.hours_include_ramps);
                (self.table_stages(burnout, table, load, mould), Some(reading))
            }
        }
    }

    fn segment(&mut self, at: Place, segment: &Segment, mould: Id) -> Planned {
        let target = segment.target_c.map_or(mould, |target| self.book.entered(&TARGET, at, target.get()));
        let hours = self.book.entered(&HOLD, at, segment.hold_min.get());
        let ramp = match (segment.ramp_min, segment.ramp_k_h) {
            (Some(minutes), Some(rate)) => AskedRamp::Both(minutes.get(), rate.get()),
            (Some(minutes), None) => AskedRamp::Minutes(minutes.get()),
            (None, Some(rate)) => AskedRamp::Rate(rate.get()),
            (None, None) => AskedRamp::KilnsOwn,
        };
        Planned { target, hours, ramp }
    }

    fn table_stages(&mut self, burnout: &'a Burnout, table: &'a StageTable, load: &[&FlaskFigures], mould: Id) -> Vec<Planned> {
        let place = Place::Burnout(burnout.id);
        let Some(row) = self.table_row(place, table, load) else { return Vec::new() };
        let origin = &table.origin;
        let mut stages = Vec::new();
        for stage in &row.stages {
            let target = self.book.shelf_number(&TARGET, &table.id, stage.target_c(), origin.source(), origin.trust());
            let hours = self.book.shelf_number(&HOURS, &table.id, stage.hours() * 60.0, origin.source(), origin.trust());
            stages.push(Planned { target, hours, ramp: AskedRamp::KilnsOwn });
        }
        let soak = self.book.shelf_number(&HOURS, &table.id, row.soak_h * 60.0, origin.source(), origin.trust());
        stages.push(Planned { target: mould, hours: soak, ramp: AskedRamp::KilnsOwn });
        stages
    }

    /// The table's row for the load's largest flask; the last row, and a finding, where the flask is larger than the table.
    fn table_row(&mut self, place: Place, table: &'a StageTable, load: &[&FlaskFigures]) -> Option<&'a StageRow> {
        let largest = load.iter().filter_map(|flask| flask.size_mm);
        let (diameter, height) = largest.fold((0.0, 0.0), |(d, h): (f64, f64), size| (d.max(size[0]), h.max(size[1])));
        let row = table.row_for(diameter, height);
        if row.is_none() {
            let flask = format!("{diameter:.0}×{height:.0}");
            self.find(&finding::TABLE_TOO_SMALL, place, vec![Arg::Text(flask), Arg::Text(table.name.clone())]);
        }
        row.or(table.rows.last())
    }

    /// Ramp, hold and length of every stage, by the reading in effect; the longer one where nobody says.
    pub(super) fn stage_times(
        &mut self,
        id: BurnoutId,
        planned: &[Planned],
        ramps: &[Id],
        reading: Option<Option<bool>>,
    ) -> Vec<StageFigures> {
        let mut stages = Vec::new();
        for (number, (stage, ramp)) in (1..).zip(planned.iter().zip(ramps)) {
            let (at, ramp) = (Place::Stage(id, number), *ramp);
            let (minutes, hold) = if reading == Some(Some(true)) {
                if let (Some(takes), Some(hours)) = (self.book.number(ramp), self.book.number(stage.hours))
                    && takes > hours + 0.5
                {
                    self.find(&finding::STAGE_TOO_SHORT, at, vec![Arg::Figure(ramp), Arg::Figure(stage.hours)]);
                }
                let hold = self.book.derive(&HOLD_INCLUDING, at, [stage.hours, ramp]);
                (self.book.derive(&STAGE_INCLUDING, at, [stage.hours, ramp]), hold)
            } else {
                (self.book.derive(&STAGE_BESIDES, at, [stage.hours, ramp]), stage.hours)
            };
            stages.push(StageFigures { place: at, target: stage.target, ramp, hold, minutes, start: minutes, end: minutes });
        }
        stages
    }

    pub(super) fn both_totals(&mut self, id: BurnoutId, planned: &[Planned], ramps: &[Id]) -> [Id; 2] {
        let (mut including, mut besides) = (Vec::new(), Vec::new());
        for (number, (stage, ramp)) in (1..).zip(planned.iter().zip(ramps)) {
            let at = Place::Stage(id, number);
            including.push(self.book.derive(&STAGE_INCLUDING, at, [stage.hours, *ramp]));
            besides.push(self.book.derive(&STAGE_BESIDES, at, [stage.hours, *ramp]));
        }
        let place = Place::Burnout(id);
        [self.book.derive_over(&TOTAL_INCLUDING, place, &including), self.book.derive_over(&TOTAL_BESIDES, place, &besides)]
    }
}
