//! A load by the clock: backwards from the pour to the kiln's start, and from there stage by stage.

use super::StageFigures;
use super::rules::{DEWAX, DEWAX_START, HOT_KILN, KILN_START, LIT_AT, LOADED, POUR_AT, STAGE_END, START};
use crate::calc::book::Id;
use crate::calc::finding::{self, Arg};
use crate::calc::pass::Pass;
use crate::calc::site;
use crate::calc::value::Cause;
use crate::job::{Burnout, Place};
use crate::stock::{Kiln, StageTable};
use jiff::civil::DateTime;
use jiff::tz::AmbiguousOffset;

impl<'a> Pass<'a> {
    /// The kiln when the load is in it: as said, as a hot kiln is by then, or as the room.
    pub(super) fn start(&mut self, place: Place, burnout: &Burnout, fast: Option<&'a StageTable>) -> Id {
        let loaded = fast.and_then(|table| Some((table, table.fast.as_ref()?)));
        match (burnout.start_c, loaded) {
            (Some(number), _) => self.book.entered(&START, place, number.get()),
            (None, Some((table, hot))) => {
                self.book.shelf_number(&LOADED, &table.id, hot.loaded_c, table.origin.source(), table.origin.trust())
            }
            (None, None) => self.book.assumed(&site::ROOM_DEFAULT, place),
        }
    }

    /// When the kiln is lit for a fast schedule, and how hot it is then.
    pub(super) fn lit(&mut self, place: Place, table: &'a StageTable, kiln: Option<&'a Kiln>, start: Id) -> Option<[Id; 2]> {
        let hot = table.fast.as_ref()?;
        let hot = self.book.shelf_number(&HOT_KILN, &table.id, hot.kiln_c, table.origin.source(), table.origin.trust());
        let room = self.book.constant(&site::ROOM_DEFAULT);
        let ramp = self.kilns_ramp(place, kiln, room, hot);
        Some([self.book.derive(&LIT_AT, place, [start, ramp]), hot])
    }

    pub(super) fn clock(&mut self, burnout: &'a Burnout, total: Id) -> (Id, Id, Option<Id>) {
        let place = Place::Burnout(burnout.id);
        let pour = match burnout.pour_at.and_then(|at| self.minutes_of(at)) {
            Some(minutes) => self.book.entered(&POUR_AT, place, minutes),
            None => self.book.absent(&POUR_AT, place, Cause::NotSaid),
        };
        match burnout.pour_at.map(|at| self.setting.zone.to_ambiguous_timestamp(at).offset()) {
            Some(AmbiguousOffset::Gap { .. }) => self.find(&finding::POUR_SKIPPED, place, vec![Arg::Figure(pour)]),
            Some(AmbiguousOffset::Fold { .. }) => self.find(&finding::POUR_SHOWN_TWICE, place, vec![Arg::Figure(pour)]),
            Some(AmbiguousOffset::Unambiguous { .. }) | None => {}
        }
        let kiln_start = self.book.derive(&KILN_START, place, [pour, total]);
        let dewax_start = burnout.dewax_min.map(|minutes| {
            let minutes = self.book.entered(&DEWAX, place, minutes.get());
            self.book.derive(&DEWAX_START, place, [kiln_start, minutes])
        });
        (pour, kiln_start, dewax_start)
    }

    pub(super) fn stage_clock(&mut self, mut stages: Vec<StageFigures>, kiln_start: Id) -> Vec<StageFigures> {
        let mut start = kiln_start;
        for stage in &mut stages {
            stage.start = start;
            stage.end = self.book.derive(&STAGE_END, stage.place, [start, stage.minutes]);
            start = stage.end;
        }
        stages
    }

    /// Minutes since the Unix epoch of a time on the wall; a night when clocks change is as long as it really is.
    pub(in crate::calc) fn minutes_of(&self, at: DateTime) -> Option<f64> {
        let zoned = self.setting.zone.to_zoned_datetime(at).ok()?;
        // Seconds since the epoch stay far below 2⁵³.
        #[allow(clippy::cast_precision_loss)]
        Some(zoned.timestamp().as_second() as f64 / 60.0)
    }
}
