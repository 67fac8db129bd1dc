//! Advancing a field through time in steps that are as long as the tolerance allows.

use super::body::{Body, State};
use super::curve::Past;
use super::error::{HeatError, within};
use super::field::{FIRST_STEP_S, Field};
use super::run::{Run, Watch};
use super::sample::{Instant, Probe, Taken};
use super::step::{Goal, Stepper};
use super::surroundings::{LATEST_S, Span, Surroundings};
use std::sync::Arc;

/// Steps are never shorter than this share of the time to go, however far off they are: so there is an end.
const SHORTEST_SHARE: f64 = 1e-7;
/// Most steps of one run.
const MOST_STEPS: usize = 300_000;
/// Most samples of one run.
const MOST_SAMPLES: usize = 200_000;
/// Steps are this share of what the tolerance allows.
const CAUTION: f64 = 0.8;
/// From what misfit on a step is linearised anew: this many times the tolerance.
const MISFIT: f64 = 2.5;
/// Least and most that one step is to the one before it.
const MOST_SHRINKAGE: f64 = 0.2;
const MOST_GROWTH: f64 = 2.0;
const MOST_PROBES: usize = 1000;
/// How often `stop` is asked, in steps.
const STEPS_BETWEEN_QUESTIONS: usize = 16;

impl Field {
    /// Goes on to `watch.until_s`.
    ///
    /// `stop` is asked now and then; when it says yes, the run ends where it stands and says so.
    ///
    /// # Errors
    ///
    /// Where a number makes no sense, and where no end was reached in the steps allowed; the field then stands where it came to.
    pub fn advance(&mut self, surroundings: &Surroundings, watch: &Watch, stop: &mut dyn FnMut() -> bool) -> Result<Run, HeatError> {
        surroundings.check()?;
        self.check(watch)?;
        if !surroundings.ends_alike() {
            self.unfold();
        }
        let body = Arc::clone(&self.body);
        let mut march = March::new(self, &body, watch);
        let spans = surroundings.spans(self.time_s, watch.until_s, self.around);
        march.record.start(&body, self, spans.first());
        if let Some(first) = spans.first() {
            march.stepper.look(&body, &self.state, &first.at(self.time_s));
        }
        for span in &spans {
            if march.through(self, span, stop)? {
                march.record.run.stopped = true;
                break;
            }
        }
        Ok(march.record.finish(&body, self))
    }

    fn check(&self, watch: &Watch) -> Result<(), HeatError> {
        within("Time between samples in s", watch.every_s, 1e-3, LATEST_S)?;
        within("End of the run in s", watch.until_s, -LATEST_S, LATEST_S)?;
        if watch.until_s <= self.time_s {
            return Err(HeatError::BackInTime { what: "the end of the run" });
        }
        if watch.probes.len() > MOST_PROBES {
            return Err(HeatError::TooMany { what: "probes", most: MOST_PROBES });
        }
        for [r, z] in &watch.probes {
            within("Radius of a probe in m", *r, 0.0, self.flask.radius_m * (1.0 + 1e-9))?;
            within("Height of a probe in m", *z, 0.0, self.flask.height_m * (1.0 + 1e-9))?;
        }
        if (watch.until_s - self.time_s) / watch.every_s > MOST_SAMPLES as f64 {
            return Err(HeatError::TooMany { what: "samples", most: MOST_SAMPLES });
        }
        Ok(())
    }
}

/// A run under way.
struct March<'a> {
    body: &'a Body,
    stepper: Stepper,
    next: State,
    shortest_s: f64,
    record: Record,
}

impl<'a> March<'a> {
    fn new(field: &Field, body: &'a Body, watch: &Watch) -> Self {
        Self {
            body,
            stepper: Stepper::new(body, &field.state),
            next: field.state.clone(),
            shortest_s: (watch.until_s - field.time_s) * SHORTEST_SHARE,
            record: Record::new(body, field, watch),
        }
    }

    /// Through a span. Whether it was told to stop.
    fn through(&mut self, field: &mut Field, span: &Span, stop: &mut dyn FnMut() -> bool) -> Result<bool, HeatError> {
        if span.jumps {
            self.stepper.look(self.body, &field.state, &span.at(span.from_s));
            field.step_s = field.step_s.min(FIRST_STEP_S);
        }
        while field.time_s < span.to_s {
            let tried = self.record.run.steps + self.record.run.retries;
            if tried.is_multiple_of(STEPS_BETWEEN_QUESTIONS) && stop() {
                return Ok(true);
            }
            if tried >= MOST_STEPS {
                return Err(HeatError::GivenUp { reached_s: field.time_s });
            }
            self.step(field, span)?;
        }
        Ok(false)
    }

    /// Tries a step, and takes it where it is good enough.
    fn step(&mut self, field: &mut Field, span: &Span) -> Result<(), HeatError> {
        let left = span.to_s - field.time_s;
        let wanted = field.step_s.max(self.shortest_s);
        // No splinter is left over for a last step.
        let (step, end) = match left / wanted {
            ..=1.0 => (left, span.to_s),
            ..2.0 => (left / 2.0, field.time_s + left / 2.0),
            _ => (wanted, field.time_s + wanted),
        };
        let around = span.at(end);
        let goal = Goal { step, around, misfit_k: field.tolerance_k * MISFIT };
        let off = self.stepper.attempt(self.body, (&field.state, &field.past), &mut self.next, &goal);
        let fits = if off.is_finite() { step * CAUTION * (field.tolerance_k / off).sqrt() } else { 0.0 };
        // A step that was cut short by the end of the span leaves the next as long as it would have been.
        field.step_s = fits.clamp(step * MOST_SHRINKAGE, wanted.max(step * MOST_GROWTH));
        if off.is_nan() || off > field.tolerance_k && step > self.shortest_s {
            self.record.run.retries += 1;
            return if step > self.shortest_s { Ok(()) } else { Err(HeatError::GivenUp { reached_s: field.time_s }) };
        }
        self.stepper.take(self.body, &field.past, &mut self.next, &around);
        let taken = Taken { from: &field.state, to: &self.next, step, stepper: &self.stepper };
        self.record.sample(self.body, &field.past, &taken, [field.time_s, end], span);
        field.time_s = end;
        field.around = Some(around);
        std::mem::swap(&mut field.state, &mut self.next);
        std::mem::swap(&mut self.stepper.now, &mut self.stepper.then);
        let places = field.state.enthalpy.iter().zip(&field.state.temperature).zip(&field.state.hint);
        for (past, ((enthalpy, temperature), hint)) in field.past.iter_mut().zip(places) {
            self.body.curve.remember(past, *enthalpy, *temperature, *hint);
        }
        Ok(())
    }
}

/// What is read on the way.
struct Record {
    run: Run,
    probes: Vec<Probe>,
    instant: Instant,
    from_s: f64,
    every_s: f64,
    until_s: f64,
    content: f64,
}

impl Record {
    fn new(body: &Body, field: &Field, watch: &Watch) -> Self {
        let probes: Vec<Probe> = watch.probes.iter().map(|&place| Probe::at(&body.mesh, place, field.flask.height_m)).collect();
        let run = Run { probes_c: vec![Vec::new(); probes.len()], held_kg_kg: vec![Vec::new(); body.curve.events.len()], ..Run::default() };
        Self {
            run,
            probes,
            instant: Instant::new(&field.state),
            from_s: field.time_s,
            every_s: watch.every_s,
            until_s: watch.until_s,
            content: body.content(&field.state.enthalpy),
        }
    }

    fn start(&mut self, body: &Body, field: &Field, span: Option<&Span>) {
        self.write(body, &field.past, field.time_s, span.map_or(0.0, |span| span.from_c));
    }

    /// Samples that are due within a step that was taken.
    fn sample(&mut self, body: &Body, past: &[Past], taken: &Taken<'_>, [from_s, to_s]: [f64; 2], span: &Span) {
        let heat = taken.stepper.heat * body.mesh.stands_for();
        self.run.steps += 1;
        self.run.energy.through_surfaces_j += heat;
        self.run.energy.exchanged_j += heat.abs();
        loop {
            let due = (self.from_s + self.every_s * self.run.times_s.len() as f64).min(self.until_s);
            if due > to_s || self.run.times_s.last().is_some_and(|&last| last >= due) {
                break;
            }
            self.instant.within(body, past, taken, ((due - from_s) / (to_s - from_s)).clamp(0.0, 1.0));
            self.write(body, past, due, span.at(due).temperature_c);
        }
    }

    fn write(&mut self, body: &Body, past: &[Past], time_s: f64, around_c: f64) {
        let mesh = &body.mesh;
        let (mould, shell) = self.instant.temperature.split_at(mesh.mould());
        let run = &mut self.run;
        run.times_s.push(time_s);
        run.around_c.push(around_c);
        for (series, probe) in run.probes_c.iter_mut().zip(&self.probes) {
            series.push(probe.read(mould));
        }
        run.core_c.push(mould[mesh.middle()]);
        run.skin_c.push(mould[mould.len() - mesh.rows() + mesh.middle()]);
        run.coldest_c.push(mould.iter().copied().fold(f64::INFINITY, f64::min));
        run.hottest_c.push(mould.iter().copied().fold(f64::NEG_INFINITY, f64::max));
        if !shell.is_empty() {
            let heat: f64 = shell.iter().zip(&mesh.shell).map(|(each, capacity)| each * capacity).sum();
            run.shell_c.push(heat / mesh.shell.iter().sum::<f64>());
        }
        run.steepest_k_m.push(self.instant.steepest(mesh));
        for (event, series) in run.held_kg_kg.iter_mut().enumerate() {
            series.push(self.instant.held(body, past, event));
        }
        run.heat_j.push(body.content(&self.instant.enthalpy) - self.content);
    }

    /// The run, with a last sample where it was stopped.
    fn finish(mut self, body: &Body, field: &Field) -> Run {
        self.run.energy.gained_j = body.content(&field.state.enthalpy) - self.content;
        self.run
    }
}
