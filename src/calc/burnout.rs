//! Burnout: stages from a table or of the studio's own, ramps as the kiln really goes, both readings of a table's hours, clock times.

use super::book::Id;
use super::dewax::DewaxFigures;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::pass::Pass;
use super::pour_order::PourRound;
use super::rule::{inputs, rules};
use super::tree::TreeFigures;
use super::value::Cause;
use crate::job::{Burnout, BurnoutId, FlaskId, Place, Programme, Segment};
use crate::stock::{EntryId, Kiln, StageRow, StageTable};
use jiff::civil::DateTime;
use jiff::tz::AmbiguousOffset;

inputs! {
    /// Target of a stage.
    TARGET "stage.target" Temperature;
    /// Hours of a stage as the table prints them.
    HOURS "stage.hours" Duration;
    /// Hold of a segment.
    HOLD "stage.hold-asked" Duration;
    /// Ramp of a segment, as asked.
    RAMP_RATE "stage.ramp-rate" TemperatureRate;
    /// Minutes of a segment's ramp, as asked.
    RAMP_MINUTES "stage.ramp-asked" Duration;
    /// The kiln's fastest rise or fall in a band.
    KILN_RATE "kiln.rate" TemperatureRate;
    /// Where a band of the kiln ends.
    KILN_BAND "kiln.band" Temperature;
    /// The kiln when it is loaded.
    START "burnout.start" Temperature;
    /// The pour, by the clock on the wall.
    POUR_AT "burnout.pour-at" Moment;
    /// A hot kiln once the wet load is in.
    LOADED "burnout.loaded" Temperature;
    /// A hot kiln before the load.
    HOT_KILN "burnout.hot-kiln" Temperature;
    /// Steam dewaxing.
    DEWAX "burnout.dewax" Duration;
    /// The kiln chosen.
    NO_KILN "burnout.kiln" Duration;
}

rules! {
    /// Time the kiln needs between two temperatures within one of its bands.
    RAMP_PART "stage.ramp-part" (start: Temperature, end: Temperature, rate: TemperatureRate) -> Duration
        = Formula "60*abs(end - start)/rate" { 60.0 * (end - start).abs() / rate };
        Computed "difference over the kiln's own rate in this band"
    /// Time the kiln needs for a ramp.
    RAMP "stage.ramp" (part: Duration) -> Duration = Sum "sum(part)"; Computed "band by band"
    /// Time a ramp takes that was asked for as a rate.
    RAMP_AT_RATE "stage.ramp-at-rate" (start: Temperature, end: Temperature, rate: TemperatureRate) -> Duration
        = Formula "60*abs(end - start)/rate" { 60.0 * (end - start).abs() / rate };
        Computed "difference over the rate asked for"
    /// The ramp as it will be: what was asked, or what the kiln needs.
    RAMP_TAKEN "stage.ramp-taken" (asked: Duration, kiln: Duration) -> Duration
        = Formula "max(asked, kiln)" { asked.max(kiln) };
        Computed "a kiln rises and falls no faster than it can"
    /// A stage whose hours include the ramp.
    STAGE_INCLUDING "stage.minutes-including" (hours: Duration, ramp: Duration) -> Duration
        = Formula "max(hours, ramp)" { hours.max(ramp) };
        Computed "the table's hours with the way there in them"
    /// A stage whose hours come on top of the ramp.
    STAGE_BESIDES "stage.minutes-besides" (hours: Duration, ramp: Duration) -> Duration
        = Formula "hours + ramp" { hours + ramp };
        Computed "the way there, then the table's hours"
    /// What is left to hold where the hours include the ramp.
    HOLD_INCLUDING "stage.hold" (hours: Duration, ramp: Duration) -> Duration
        = Formula "max(hours - ramp, 0)" { (hours - ramp).max(0.0) };
        Computed "the table's hours less the way there"
    /// The programme where a table's hours include the ramps.
    TOTAL_INCLUDING "burnout.total-including" (stage: Duration) -> Duration = Sum "sum(stage)"; Computed "all stages"
    /// The programme where a table's hours come on top of the ramps.
    TOTAL_BESIDES "burnout.total-besides" (stage: Duration) -> Duration = Sum "sum(stage)"; Computed "all stages"
    /// The programme as it will be run.
    TOTAL "burnout.total" (stage: Duration) -> Duration = Sum "sum(stage)"; Computed "all stages, ramps and holds"
    /// When the kiln is started.
    KILN_START "burnout.kiln-start" (pour: Moment, total: Duration) -> Moment
        = Formula "pour - total" { pour - total };
        Computed "backwards from the pour"
    /// When steam dewaxing starts.
    DEWAX_START "burnout.dewax-start" (start: Moment, dewax: Duration) -> Moment
        = Formula "start - dewax" { start - dewax };
        Computed "straight from the steam into the warm kiln"
    /// When a kiln is lit that must be hot when it is loaded.
    LIT_AT "burnout.lit-at" (start: Moment, ramp: Duration) -> Moment
        = Formula "start - ramp" { start - ramp };
        Computed "as fast as the kiln rises, from the room"
    /// When a stage is over.
    STAGE_END "stage.end" (start: Moment, minutes: Duration) -> Moment
        = Formula "start + minutes" { start + minutes };
        Computed "one stage after the other"
    /// The highest target.
    TOP "burnout.top" (target: Temperature) -> Temperature = Most "max(target)"; Computed "the highest stage"
    /// The mould's temperature the load ends at.
    SOAK_TARGET "burnout.soak-target" (mould: Temperature) -> Temperature = Most "max(mould)"; CommonPractice "hottest mould first, the kiln falls for the others"
    /// Time held at 700 °C and above.
    HOT_TIME "burnout.time-above-700" (hold: Duration) -> Duration = Sum "sum(hold)"; Computed "holds of the stages at 700 °C and above; ramps not counted"
}

/// Stages from here up count as burning the last carbon.
pub(super) const HOT_C: f64 = 700.0;

/// One stage of a burnout.
#[derive(Debug, Clone, Copy)]
pub struct StageFigures {
    /// Its place.
    pub place: Place,
    /// Target.
    pub target: Id,
    /// Time of the ramp.
    pub ramp: Id,
    /// Time held.
    pub hold: Id,
    /// Time of both.
    pub minutes: Id,
    /// When it begins.
    pub start: Id,
    /// When it is over.
    pub end: Id,
}

/// Figures of one kiln load.
#[derive(Debug, Clone)]
pub struct BurnoutFigures {
    /// The load.
    pub id: BurnoutId,
    /// Its stages.
    pub stages: Vec<StageFigures>,
    /// Length of the programme as it will be run.
    pub total: Id,
    /// Its length with ramps in the table's hours and with ramps besides, where it comes from a table.
    pub both: Option<[Id; 2]>,
    /// Which reading is in effect, where it comes from a table; `None` is unanswered, and the longer one is run.
    pub hours_include_ramps: Option<bool>,
    /// Highest target.
    pub top: Id,
    /// Temperature of the kiln when it is loaded.
    pub start_c: Id,
    /// The pour.
    pub pour: Id,
    /// When the kiln is started.
    pub kiln_start: Id,
    /// When dewaxing starts, where there is any.
    pub dewax_start: Option<Id>,
    /// When the kiln is lit and how hot it is when it is loaded, where it is loaded hot.
    pub lit: Option<[Id; 2]>,
    /// Who is poured when, the kiln falling in between.
    pub rounds: Vec<PourRound>,
    /// What the scale says of the steam, flask by flask.
    pub dewax: Vec<(FlaskId, DewaxFigures)>,
    /// Held at 700 °C and above.
    pub hot: Id,
}

/// A stage before its ramp is known.
struct Planned {
    target: Id,
    /// Hours of a table, or the hold of a segment.
    hours: Id,
    /// The ramp that was asked for.
    ramp: AskedRamp,
}

#[derive(Clone, Copy)]
enum AskedRamp {
    KilnsOwn,
    Rate(f64),
    Minutes(f64),
    /// Minutes and a rate: the minutes count, and where they disagree that is told.
    Both(f64, f64),
}

impl<'a> Pass<'a> {
    pub(super) fn burnouts(&mut self, flasks: &[FlaskFigures], trees: &[TreeFigures]) -> Vec<BurnoutFigures> {
        let job = self.job;
        job.burnouts.iter().map(|burnout| self.burnout(burnout, flasks, trees)).collect()
    }

    fn burnout(&mut self, burnout: &'a Burnout, flasks: &[FlaskFigures], trees: &[TreeFigures]) -> BurnoutFigures {
        let place = Place::Burnout(burnout.id);
        let load: Vec<&FlaskFigures> = flasks.iter().filter(|flask| flask.burnout == Some(burnout.id)).collect();
        let kiln = self.entry::<Kiln>(burnout.kiln.as_ref(), place);
        let mould = self.soak_target(place, &load);
        let (planned, reading) = self.planned(burnout, &load, mould);
        let fast = table_of(burnout).and_then(|id| self.shelf.get::<StageTable>(id.as_str())).filter(|table| table.fast.is_some());
        let start = self.start(place, burnout, fast);
        let mut from = start;
        let mut ramps = Vec::new();
        for (number, stage) in (1..).zip(&planned) {
            let at = Place::Stage(burnout.id, number);
            ramps.push(self.ramp(at, kiln, from, stage));
            from = stage.target;
        }
        let taken = self.stage_times(burnout.id, &planned, &ramps, reading);
        let minutes: Vec<Id> = taken.iter().map(|stage| stage.minutes).collect();
        let total = if minutes.is_empty() {
            self.book.absent(&NO_KILN, place, Cause::NotChosen)
        } else {
            self.book.derive_over(&TOTAL, place, &minutes)
        };
        let both = reading.map(|_| self.both_totals(burnout.id, &planned, &ramps));
        if let (Some(None), Some([including, besides])) = (reading, both) {
            self.find(&finding::RAMPS_UNSAID, place, vec![Arg::Figure(including), Arg::Figure(besides)]);
        }
        let targets: Vec<Id> = planned.iter().map(|stage| stage.target).collect();
        let top = self.book.derive_over(&TOP, place, &targets);
        let hot: Vec<Id> = taken
            .iter()
            .filter(|stage| self.book.number(stage.target).is_some_and(|target| target >= HOT_C))
            .map(|stage| stage.hold)
            .collect();
        let hot = self.book.derive_over(&HOT_TIME, place, &hot);
        let (pour, kiln_start, dewax_start) = self.clock(burnout, total);
        let stages = self.stage_clock(taken, kiln_start);
        let lit = fast.and_then(|table| self.lit(place, table, kiln, kiln_start));
        let dewax = load.iter().filter_map(|flask| Some((flask.id, self.dewax(burnout, flask, trees)?))).collect();
        let mut figures = BurnoutFigures {
            id: burnout.id,
            stages,
            total,
            both,
            hours_include_ramps: reading.flatten(),
            top,
            start_c: start,
            pour,
            kiln_start,
            dewax_start,
            lit,
            rounds: Vec::new(),
            dewax,
            hot,
        };
        figures.rounds = self.pour_rounds(&figures, kiln, &load);
        self.turns_against_heat(&figures.rounds);
        self.burnout_findings(burnout, &figures, kiln, &load, planned.is_empty());
        figures
    }

    /// The kiln when the load is in it: as said, as a hot kiln is by then, or as the room.
    fn start(&mut self, place: Place, burnout: &Burnout, fast: Option<&'a StageTable>) -> Id {
        let loaded = fast.and_then(|table| Some((table, table.fast.as_ref()?)));
        match (burnout.start_c, loaded) {
            (Some(number), _) => self.book.entered(&START, place, number.get()),
            (None, Some((table, hot))) => {
                self.book.shelf_number(&LOADED, &table.id, hot.loaded_c, table.origin.source(), table.origin.trust())
            }
            (None, None) => self.book.assumed(&super::site::ROOM_DEFAULT, place),
        }
    }

    /// When the kiln is lit for a fast schedule, and how hot it is then.
    fn lit(&mut self, place: Place, table: &'a StageTable, kiln: Option<&'a Kiln>, start: Id) -> Option<[Id; 2]> {
        let hot = table.fast.as_ref()?;
        let hot = self.book.shelf_number(&HOT_KILN, &table.id, hot.kiln_c, table.origin.source(), table.origin.trust());
        let room = self.book.constant(&super::site::ROOM_DEFAULT);
        let ramp = self.kilns_ramp(place, kiln, room, hot);
        Some([self.book.derive(&LIT_AT, place, [start, ramp]), hot])
    }

    fn soak_target(&mut self, place: Place, load: &[&FlaskFigures]) -> Id {
        let moulds: Vec<Id> = load.iter().map(|flask| flask.pour.mould).collect();
        self.book.derive_over(&SOAK_TARGET, place, &moulds)
    }

    /// The stages, and for a table whether its hours include the ramps (`Some(None)`: nobody says).
    fn planned(&mut self, burnout: &'a Burnout, load: &[&FlaskFigures], mould: Id) -> (Vec<Planned>, Option<Option<bool>>) {
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

    /// The ramp to a stage as it will be, and what the kiln needs at least.
    fn ramp(&mut self, at: Place, kiln: Option<&'a Kiln>, from: Id, stage: &Planned) -> Id {
        let own = self.kilns_ramp(at, kiln, from, stage.target);
        let asked = match stage.ramp {
            AskedRamp::KilnsOwn => return own,
            AskedRamp::Minutes(minutes) => self.book.entered(&RAMP_MINUTES, at, minutes),
            AskedRamp::Rate(rate) => self.ramp_at_rate(at, from, stage.target, rate),
            AskedRamp::Both(minutes, rate) => {
                let minutes = self.book.entered(&RAMP_MINUTES, at, minutes);
                let by_rate = self.ramp_at_rate(at, from, stage.target, rate);
                if let (Some(one), Some(other)) = (self.book.number(minutes), self.book.number(by_rate))
                    && (one - other).abs() > 0.5
                {
                    self.find(&finding::RAMP_SAID_TWICE, at, vec![Arg::Figure(minutes), Arg::Figure(by_rate)]);
                }
                minutes
            }
        };
        if kiln.is_none() {
            return asked;
        }
        if let (Some(wants), Some(needs)) = (self.book.number(asked), self.book.number(own))
            && needs > wants + 0.5
        {
            self.find_on(&finding::KILN_CANNOT_FOLLOW, at, own, vec![Arg::Figure(own), Arg::Figure(asked)]);
        }
        self.book.derive(&RAMP_TAKEN, at, [asked, own])
    }

    fn ramp_at_rate(&mut self, at: Place, from: Id, to: Id, rate: f64) -> Id {
        let rate = self.book.entered(&RAMP_RATE, at, rate);
        self.book.derive(&RAMP_AT_RATE, at, [from, to, rate])
    }

    /// The kiln's own time between two temperatures, band by band.
    pub(super) fn kilns_ramp(&mut self, at: Place, kiln: Option<&'a Kiln>, from: Id, to: Id) -> Id {
        let (Some(kiln), Some(start), Some(end)) = (kiln, self.book.number(from), self.book.number(to)) else {
            let cause = if kiln.is_none() { Cause::NotChosen } else { Cause::Term };
            let nothing = self.book.absent(&NO_KILN, at, cause);
            return self.book.derive_over(&RAMP, at, &[nothing]);
        };
        let (low, high, rising) = (start.min(end), start.max(end), end >= start);
        let mut parts = Vec::new();
        let mut floor = f64::NEG_INFINITY;
        let origin = &kiln.bands_origin;
        for (index, band) in kiln.bands.iter().enumerate() {
            let ceiling = if index + 1 == kiln.bands.len() { f64::INFINITY } else { band.up_to_c };
            if ceiling > low && floor < high {
                let bound = |pass: &mut Self, c: f64| pass.book.shelf_number(&KILN_BAND, &kiln.id, c, origin.source(), origin.trust());
                let lower = if floor > low {
                    bound(self, floor)
                } else if rising {
                    from
                } else {
                    to
                };
                let upper = if ceiling < high {
                    bound(self, ceiling)
                } else if rising {
                    to
                } else {
                    from
                };
                let rate = if rising { band.rise_k_h } else { band.fall_k_h };
                let rate = self.book.shelf_number(&KILN_RATE, &kiln.id, rate, origin.source(), origin.trust());
                parts.push(self.book.derive(&RAMP_PART, at, [lower, upper, rate]));
            }
            floor = ceiling;
        }
        self.book.derive_over(&RAMP, at, &parts)
    }

    /// Ramp, hold and length of every stage, by the reading in effect; the longer one where nobody says.
    fn stage_times(&mut self, id: BurnoutId, planned: &[Planned], ramps: &[Id], reading: Option<Option<bool>>) -> Vec<StageFigures> {
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

    fn both_totals(&mut self, id: BurnoutId, planned: &[Planned], ramps: &[Id]) -> [Id; 2] {
        let (mut including, mut besides) = (Vec::new(), Vec::new());
        for (number, (stage, ramp)) in (1..).zip(planned.iter().zip(ramps)) {
            let at = Place::Stage(id, number);
            including.push(self.book.derive(&STAGE_INCLUDING, at, [stage.hours, *ramp]));
            besides.push(self.book.derive(&STAGE_BESIDES, at, [stage.hours, *ramp]));
        }
        let place = Place::Burnout(id);
        [self.book.derive_over(&TOTAL_INCLUDING, place, &including), self.book.derive_over(&TOTAL_BESIDES, place, &besides)]
    }

    fn clock(&mut self, burnout: &'a Burnout, total: Id) -> (Id, Id, Option<Id>) {
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

    fn stage_clock(&mut self, mut stages: Vec<StageFigures>, kiln_start: Id) -> Vec<StageFigures> {
        let mut start = kiln_start;
        for stage in &mut stages {
            stage.start = start;
            stage.end = self.book.derive(&STAGE_END, stage.place, [start, stage.minutes]);
            start = stage.end;
        }
        stages
    }

    /// Minutes since the Unix epoch of a time on the wall; a night when clocks change is as long as it really is.
    pub(super) fn minutes_of(&self, at: DateTime) -> Option<f64> {
        let zoned = self.setting.zone.to_zoned_datetime(at).ok()?;
        // Seconds since the epoch stay far below 2⁵³.
        #[allow(clippy::cast_precision_loss)]
        Some(zoned.timestamp().as_second() as f64 / 60.0)
    }
}

/// The id of the table a load's programme comes from.
#[must_use]
pub fn table_of(burnout: &Burnout) -> Option<&EntryId> {
    match &burnout.programme {
        Some(Programme::Table(table)) => Some(table),
        _ => None,
    }
}
