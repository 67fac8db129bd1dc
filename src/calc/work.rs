//! The work before a pour, backwards from it: kiln, steam, setting, investing, trees, washing, printing; in working hours, with a kiln that
//! other loads may have taken.

use super::book::Id;
use super::burnout::BurnoutFigures;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::pass::Pass;
use super::print::PrintFigures;
use super::rule::{Given, givens, inputs, rules};
use super::timetable::{Gap, Hands, Hours, Pin, Problem, Resource, Row, Span, Step, StepKey, Taken, Timetable, WorkSpan, plan, pours_at};
use crate::job::{Burnout, BurnoutId, Day, PatternId, Place, Studio, WorkStep};
use crate::quantity::Finite;
use jiff::civil::{Time, Weekday};

inputs! {
    /// How long a step takes, as somebody said.
    MINUTES_SAID "work.minutes-said" Duration;
    /// When a step begins.
    BEGINS "work.begins" Moment;
    /// When it is over.
    ENDS "work.ends" Moment;
    /// How long what it made then waits.
    WAITS "work.waits" Duration;
    /// Setting.
    SET "work.set" Duration;
}

givens! {
    /// Washing, drying and curing.
    WASHING "work.washing" Duration = 120.0; CommonPractice "two hours to wash, dry and cure a batch of prints: common practice, no source"
    /// A tree.
    TREE "work.tree" Duration = 40.0; CommonPractice "forty minutes a tree: common practice, no source"
    /// Weighing out and cleaning up.
    AROUND_MIX "work.around-mix" Duration = 10.0; CommonPractice "ten minutes a flask to weigh out and clean up: common practice, no source"
    /// Loading.
    LOADING "work.loading" Duration = 15.0; CommonPractice "a quarter of an hour to load a kiln: common practice, no source"
    /// A flask may stand wet so long before it is heated.
    STANDS_WET "work.stands-wet" Duration = 1440.0; CommonPractice "a day, or it dries out; longer only wrapped damp: common practice, no source"
    /// A pour.
    POURING "work.pouring" Duration = 10.0; CommonPractice "ten minutes a flask: common practice, no source"
}

rules! {
    /// A step that is done flask by flask.
    EACH "work.each" (minutes: Duration) -> Duration = Sum "sum(minutes)"; Computed "one flask after the other"
    /// Mixing a flask, with what is around it.
    MIXED "work.mixed" (clock: Duration, around: Duration) -> Duration
        = Formula "clock + around" { clock + around };
        Computed "the mixing clock, weighing out and cleaning up"
    /// Setting of the load: as long as its slowest powder.
    SETS "work.sets" (set: Duration) -> Duration = Most "max(set)"; Computed "the slowest powder rules"
}

/// A step with its times.
#[derive(Debug, Clone)]
pub struct WorkRow {
    /// Which.
    pub step: WorkStep,
    /// How long it takes.
    pub minutes: Id,
    /// When it begins.
    pub begins: Id,
    /// When it is over.
    pub ends: Id,
    /// What waits after it; nothing where the next begins at once.
    pub waits: Option<Id>,
    /// What is wrong with it, and its pin.
    pub row: Row,
}

/// The work before one pour.
#[derive(Debug, Clone)]
pub struct WorkFigures {
    /// The load.
    pub load: BurnoutId,
    /// Its steps, the first one first.
    pub rows: Vec<WorkRow>,
    /// What is wrong with the pour itself.
    pub pour_problems: Vec<Problem>,
    /// What was asked, so that it can be asked again with a step elsewhere.
    pub steps: Vec<Step>,
    /// When somebody is there, and when the kiln is taken.
    pub hours: Hours,
    /// Now, as far as it is known: the day's first minute.
    pub now: f64,
    /// How long the pour takes.
    pub pouring_min: f64,
    /// Pours at the same time of the day for which everything fits, where it does not for this one; in minutes since the Unix epoch.
    pub possible: Vec<f64>,
}

/// So many other pours are offered.
const OFFERED: usize = 3;

/// The one thing that only one load has at a time.
const KILN: Resource = Resource(0);

/// The key of a step.
#[must_use]
pub fn key_of(step: WorkStep) -> StepKey {
    StepKey(WorkStep::ALL.iter().position(|other| *other == step).and_then(|at| u32::try_from(at).ok()).unwrap_or(u32::MAX))
}

/// When somebody of a studio is there; always where it says nothing.
#[must_use]
pub fn hours_of(studio: &Studio) -> Hours {
    let weekday = |day: Day| match day {
        Day::Monday => Weekday::Monday,
        Day::Tuesday => Weekday::Tuesday,
        Day::Wednesday => Weekday::Wednesday,
        Day::Thursday => Weekday::Thursday,
        Day::Friday => Weekday::Friday,
        Day::Saturday => Weekday::Saturday,
        Day::Sunday => Weekday::Sunday,
    };
    let said = studio.hours.iter().filter_map(|one| Some(WorkSpan { weekday: weekday(one.day), from: one.from?, until: one.to? }));
    let mut week: Vec<WorkSpan> = said.collect();
    if week.is_empty() {
        week = Day::ALL.map(|day| WorkSpan { weekday: weekday(day), from: Time::midnight(), until: Time::midnight() }).to_vec();
    }
    Hours { week, days_off: studio.days_off.clone(), ..Hours::default() }
}

impl<'a> Pass<'a> {
    /// The work before every pour whose time and programme are known.
    pub(super) fn work(&mut self, loads: &[BurnoutFigures], flasks: &[FlaskFigures], prints: &[PrintFigures]) -> Vec<WorkFigures> {
        let job = self.job;
        job.burnouts.iter().filter_map(|burnout| self.work_of(burnout, loads, flasks, prints)).collect()
    }

    fn work_of(
        &mut self,
        burnout: &'a Burnout,
        loads: &[BurnoutFigures],
        flasks: &[FlaskFigures],
        prints: &[PrintFigures],
    ) -> Option<WorkFigures> {
        let load = loads.iter().find(|load| load.id == burnout.id)?;
        let pour = self.book.number(load.pour)?;
        self.book.number(load.total).filter(|total| *total > 0.0)?;
        let flasks: Vec<&FlaskFigures> = flasks.iter().filter(|flask| flask.burnout == Some(burnout.id)).collect();
        let lengths = self.lengths(burnout, load, &flasks, prints);
        let steps: Vec<Step> = lengths.iter().filter_map(|(step, id)| self.step(burnout, *step, self.book.number(*id)?)).collect();
        let mut hours = hours_of(self.studio);
        hours.taken = self.kiln_taken(burnout, loads);
        let now = self.minutes_of(self.setting.at.to_datetime(Time::midnight()))?;
        // A batch that is over is not reproached with the past.
        let over = pour < now;
        let now = if over { f64::MIN_POSITIVE } else { now };
        let pouring_min = POURING.value * flasks.len().max(1) as f64;
        let pins = self.pins(burnout, &steps);
        let ask = super::timetable::Ask { steps: &steps, hours: &hours, zone: &self.setting.zone, now, pouring_min };
        let table = plan(&ask, pour, &pins).ok()?;
        let clock = burnout.pour_at.filter(|_| !over && !table.is_clear()).map(jiff::civil::DateTime::time);
        let possible = clock.and_then(|clock| pours_at(&ask, clock, now, &[], OFFERED).ok()).unwrap_or_default();
        let rows = self.work_rows(burnout, &lengths, &table);
        Some(WorkFigures { load: burnout.id, rows, pour_problems: table.pour_problems, steps, hours, now, pouring_min, possible })
    }

    /// The steps that this load has, each with its length.
    fn lengths(
        &mut self,
        burnout: &'a Burnout,
        load: &BurnoutFigures,
        flasks: &[&FlaskFigures],
        prints: &[PrintFigures],
    ) -> Vec<(WorkStep, Id)> {
        let place = Place::Burnout(burnout.id);
        let printing = self.printing(flasks, prints);
        let mut lengths = Vec::new();
        for step in WorkStep::ALL {
            let usual = match step {
                WorkStep::Printing if printing.is_empty() => None,
                WorkStep::Printing => Some(self.book.derive_over(&EACH, place, &printing)),
                WorkStep::Washing => (!printing.is_empty()).then(|| self.book.constant(&WASHING)),
                WorkStep::Tree => self.each(place, flasks, &TREE),
                WorkStep::Investing => self.investing(place, flasks),
                WorkStep::Setting => self.setting_time(place, flasks),
                WorkStep::Dewax => burnout.dewax_min.map(|minutes| self.book.entered(&super::burnout::DEWAX, place, minutes.get())),
                // From the steam straight into the kiln: there is no time between.
                WorkStep::Loading => burnout.dewax_min.is_none().then(|| self.book.constant(&LOADING)),
                WorkStep::Burnout => Some(load.total),
            };
            let said = burnout.step_minutes.get(&step).filter(|_| said_by_hand(step)).copied();
            let length = match (said, usual) {
                (Some(minutes), Some(_)) => Some(self.book.entered(&MINUTES_SAID, place, Finite::get(minutes))),
                // Prints that no run of the batch says.
                (Some(minutes), None) if step == WorkStep::Printing || step == WorkStep::Washing => {
                    Some(self.book.entered(&MINUTES_SAID, place, minutes.get()))
                }
                (_, usual) => usual,
            };
            lengths.extend(length.map(|length| (step, length)));
        }
        lengths
    }

    /// Times of the print runs that print what hangs in these flasks.
    fn printing(&self, flasks: &[&FlaskFigures], prints: &[PrintFigures]) -> Vec<Id> {
        let job = self.job;
        let trees = job.trees.iter().filter(|tree| flasks.iter().any(|flask| flask.tree == Some(tree.id)));
        let lines = trees.flat_map(|tree| tree.pieces.iter().map(|hung| hung.line));
        let patterns: Vec<PatternId> = lines.filter_map(|id| job.lines().find(|(_, line)| line.id == id)?.1.pattern).collect();
        let runs = job.prints.iter().filter(|run| run.rows.iter().any(|row| patterns.contains(&row.pattern)));
        let times = runs.filter_map(|run| prints.iter().find(|figures| figures.id == run.id)).map(|figures| figures.time_all);
        times.filter(|time| self.book.number(*time).is_some()).collect()
    }

    fn each(&mut self, place: Place, flasks: &[&FlaskFigures], given: &'static Given) -> Option<Id> {
        let one = self.book.constant(given);
        (!flasks.is_empty()).then(|| self.book.derive_over(&EACH, place, &vec![one; flasks.len()]))
    }

    fn investing(&mut self, place: Place, flasks: &[&FlaskFigures]) -> Option<Id> {
        let around = self.book.constant(&AROUND_MIX);
        let known = flasks.iter().filter(|flask| self.book.number(flask.mix.clock).is_some());
        let clocks: Vec<(Place, Id)> = known.map(|flask| (Place::Flask(flask.id), flask.mix.clock)).collect();
        let mixed: Vec<Id> = clocks.into_iter().map(|(at, clock)| self.book.derive(&MIXED, at, [clock, around])).collect();
        (!mixed.is_empty()).then(|| self.book.derive_over(&EACH, place, &mixed))
    }

    fn setting_time(&mut self, place: Place, flasks: &[&FlaskFigures]) -> Option<Id> {
        let powders = flasks.iter().filter_map(|flask| self.shelf.get::<crate::stock::Powder>(flask.powder.as_ref()?.as_str()));
        let powders: Vec<&'a crate::stock::Powder> = powders.collect();
        let sets: Vec<Id> = (powders.into_iter())
            .map(|powder| self.book.shelf_number(&SET, &powder.id, powder.set_h.low * 60.0, &powder.set_h.source, powder.set_h.trust))
            .collect();
        (!sets.is_empty()).then(|| self.book.derive_over(&SETS, place, &sets))
    }

    fn step(&self, burnout: &Burnout, step: WorkStep, minutes: f64) -> Option<Step> {
        let wet = Gap::at_most(STANDS_WET.value);
        let counts_down = Gap { keeps: Some(KILN), ..Gap::ANY };
        let (needs, then) = match step {
            WorkStep::Printing => (Hands::Start, Gap::ANY),
            WorkStep::Washing | WorkStep::Tree => (Hands::All, Gap::ANY),
            // It sets by itself, at once.
            WorkStep::Investing => (Hands::All, Gap::AT_ONCE),
            WorkStep::Setting => (Hands::None, wet),
            // Straight into the warm kiln: the flask never cools between.
            WorkStep::Dewax => (Hands::Both, Gap::AT_ONCE),
            WorkStep::Loading if burnout.starts_itself => (Hands::All, counts_down),
            WorkStep::Loading => (Hands::All, Gap::AT_ONCE),
            WorkStep::Burnout => (Hands::None, Gap::AT_ONCE),
        };
        let uses = matches!(step, WorkStep::Loading | WorkStep::Burnout).then_some(KILN);
        (minutes >= 0.0).then_some(Step { key: key_of(step), minutes, needs, uses, then })
    }

    /// When other loads of the batch have the same kiln.
    fn kiln_taken(&self, burnout: &Burnout, loads: &[BurnoutFigures]) -> Vec<Taken> {
        let others = self.job.burnouts.iter().filter(|other| other.id != burnout.id && other.kiln.is_some() && other.kiln == burnout.kiln);
        let of = |other: &Burnout| {
            let load = loads.iter().find(|load| load.id == other.id)?;
            let (start, end) = (self.book.number(load.kiln_start)?, self.book.number(load.pour)?);
            let start = start - LOADING.value;
            (start < end).then_some(Taken { resource: KILN, span: Span { start, end } })
        };
        others.filter_map(of).collect()
    }

    fn pins(&self, burnout: &Burnout, steps: &[Step]) -> Vec<Pin> {
        let has = |step: WorkStep| steps.iter().any(|one| one.key == key_of(step));
        let pins = burnout.pins.iter().filter(|(step, _)| has(**step) && may_be_pinned(**step));
        pins.filter_map(|(step, at)| Some(Pin::wished(key_of(*step), self.minutes_of(*at)?))).collect()
    }

    fn work_rows(&mut self, burnout: &Burnout, lengths: &[(WorkStep, Id)], table: &Timetable) -> Vec<WorkRow> {
        let place = Place::Burnout(burnout.id);
        let mut rows = Vec::new();
        for (step, minutes) in lengths {
            let Some(row) = table.row(key_of(*step)) else { continue };
            let begins = self.book.laid_out(&BEGINS, place, row.start);
            let ends = self.book.laid_out(&ENDS, place, row.end);
            let waits = (row.wait_min > 0.5).then(|| self.book.laid_out(&WAITS, place, row.wait_min));
            for problem in &row.problems {
                self.find(&finding::WORK_DOES_NOT_FIT, place, vec![Arg::Words(vec![step_key(*step)]), Arg::Words(vec![why(problem)])]);
            }
            rows.push(WorkRow { step: *step, minutes: *minutes, begins, ends, waits, row: row.clone() });
        }
        for problem in &table.pour_problems {
            self.find(&finding::WORK_DOES_NOT_FIT, place, vec![Arg::Words(vec!["work-pour"]), Arg::Words(vec![why(problem)])]);
        }
        rows
    }
}

/// Steps whose length somebody may say here; the others have theirs elsewhere.
#[must_use]
pub const fn said_by_hand(step: WorkStep) -> bool {
    !matches!(step, WorkStep::Dewax | WorkStep::Burnout)
}

/// Steps that may be put at a time of their own; the others follow at once from what they belong to.
#[must_use]
pub const fn may_be_pinned(step: WorkStep) -> bool {
    matches!(step, WorkStep::Printing | WorkStep::Washing | WorkStep::Tree | WorkStep::Investing)
}

/// The catalogue's key of a step.
#[must_use]
pub const fn step_key(step: WorkStep) -> &'static str {
    match step {
        WorkStep::Printing => "work-printing",
        WorkStep::Washing => "work-washing",
        WorkStep::Tree => "work-tree",
        WorkStep::Investing => "work-investing",
        WorkStep::Setting => "work-setting",
        WorkStep::Dewax => "work-dewax",
        WorkStep::Loading => "work-loading",
        WorkStep::Burnout => "work-burnout",
    }
}

/// The catalogue's key of what is wrong.
#[must_use]
pub const fn why(problem: &Problem) -> &'static str {
    match problem {
        Problem::OutsideHours { .. } => "work-why-hours",
        Problem::Overlaps { .. } => "work-why-overlaps",
        Problem::WaitTooShort { .. } => "work-why-short",
        Problem::WaitTooLong { .. } => "work-why-long",
        Problem::Taken { .. } => "work-why-taken",
        Problem::Past { .. } => "work-why-past",
        Problem::NoFreeTime { .. } => "work-why-none",
    }
}
