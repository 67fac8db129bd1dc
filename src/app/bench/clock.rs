//! The running clock of a step. It starts when the step is opened, goes on when one goes back to it or leaves the bench view, and across a
//! restart of the program.

use eframe::egui::Ui;
use std::time::Duration;

use super::now::now;
use super::steps::Step;
use super::words;
use crate::app::cx::Cx;
use crate::files::clocks::{Moment, Running};
use crate::job::BenchStep;

/// Clocks older than this are of another day at the bench, in seconds.
const OLD_S: f64 = 24.0 * 3600.0;
/// So many clocks are remembered over all batches.
const MOST: usize = 200;

/// The clock of a step as it is shown.
#[derive(Debug, Clone)]
pub struct Clock {
    /// Since the step was opened.
    pub runs: String,
    /// Since the first powder went into the water, where that is another time.
    pub since_powder: Option<String>,
    seconds: f64,
    minutes: Option<f64>,
}

impl Clock {
    /// The clock of a step that runs by one. Opens the step.
    pub fn of(ui: &Ui, cx: &mut Cx<'_>, step: &Step) -> Option<Self> {
        let now = now();
        let name = step.name(cx);
        let seconds = since(cx, name, &now);
        let minutes = words::minutes(cx, step)?;
        ui.ctx().request_repaint_after(Duration::from_millis(500));
        let since_powder = powder(cx, step, &now).filter(|_| words::since_powder(step) && step.what != BenchStep::Mix).map(clock);
        Some(Self { runs: clock(seconds), since_powder, seconds, minutes })
    }

    /// The clock of a step that was opened, is not done, and is not the one that is looked at.
    pub fn running(cx: &Cx<'_>, step: &Step) -> Option<Self> {
        let minutes = words::minutes(cx, step)?;
        let (now, job, name) = (now(), cx.job.job_id.to_string(), step.name(cx));
        let one = cx.clocks.iter().find(|one| one.job == job && one.step == name && !one.done)?;
        let seconds = now.seconds_since(&one.since);
        (seconds < OLD_S).then(|| Self { runs: clock(seconds), since_powder: None, seconds, minutes })
    }

    /// Seconds until its time is over, below nought once it is; what has no time comes after everything that has.
    pub fn left_s(&self) -> f64 {
        self.minutes.filter(|minutes| *minutes > 0.0).map_or(f64::MAX, |minutes| 60.0 * minutes - self.seconds)
    }

    /// How much of its time has run, and that in words.
    pub fn share(&self, cx: &Cx<'_>) -> Option<(f32, String)> {
        let minutes = self.minutes.filter(|minutes| *minutes > 0.0)?;
        #[allow(clippy::cast_possible_truncation, reason = "a share of a bar's width")]
        let share = (self.seconds / (60.0 * minutes)).clamp(0.0, 1.0) as f32;
        let all = clock(60.0 * minutes);
        Some((share, cx.say("bench-runs", &[("runs", (&self.runs).into()), ("all", all.into())])))
    }

    /// Has its time run out?
    pub fn is_over(&self) -> bool {
        self.minutes.is_some_and(|minutes| minutes > 0.0 && self.seconds >= 60.0 * minutes)
    }

    /// Is the sign that it is over to be seen at this moment? It comes and goes once a second, slower than any light that harms.
    pub fn flashes(&self) -> bool {
        self.is_over() && self.seconds.rem_euclid(1.0) < 0.5
    }

    /// Opens the next step. One that was opened before and was neither done nor has run out keeps running: it was left by mistake.
    pub fn go_on(cx: &mut Cx<'_>, step: &Step, minutes: Option<f64>) {
        let now = now();
        let (job, name) = (cx.job.job_id.to_string(), step.name(cx));
        let over = |since: &Moment| minutes.is_none_or(|minutes| now.seconds_since(since) > 60.0 * minutes);
        cx.clocks.retain(|one| one.job != job || one.step != name || !(one.done || over(&one.since)));
        since(cx, name, &now);
    }

    /// The step was done: how many seconds it took, where it runs by a clock and was not done before.
    pub fn done(cx: &mut Cx<'_>, step: &Step) -> Option<f64> {
        words::minutes(cx, step)?;
        let (now, job, name) = (now(), cx.job.job_id.to_string(), step.name(cx));
        let running = cx.clocks.iter_mut().find(|one| one.job == job && one.step == name && !one.done)?;
        running.done = true;
        Some(now.seconds_since(&running.since))
    }

    /// Forgets the clocks of this batch.
    pub fn forget(cx: &mut Cx<'_>) {
        let job = cx.job.job_id.to_string();
        cx.clocks.retain(|one| one.job != job);
    }

    /// Where the bench view was left: the step that was opened last, not longer ago than a day.
    pub fn last(cx: &Cx<'_>, steps: &[Step]) -> Option<usize> {
        let (now, job) = (now(), cx.job.job_id.to_string());
        let last = cx.clocks.iter().rev().find(|one| one.job == job && now.seconds_since(&one.since) < OLD_S)?;
        steps.iter().position(|step| step.name(cx) == last.step)
    }
}

/// Seconds since a step was opened. Opens it.
fn since(cx: &mut Cx<'_>, step: String, now: &Moment) -> f64 {
    let job = cx.job.job_id.to_string();
    cx.clocks.retain(|one| now.seconds_since(&one.since) < OLD_S);
    if let Some(one) = cx.clocks.iter().find(|one| one.job == job && one.step == step) {
        return now.seconds_since(&one.since);
    }
    let over = (cx.clocks.len() + 1).saturating_sub(MOST);
    cx.clocks.drain(..over);
    cx.clocks.push(Running { job, step, since: now.clone(), done: false });
    0.0
}

/// Seconds since the last mix of the same flask began: it is the one that has to be poured on in time.
fn powder(cx: &Cx<'_>, step: &Step, now: &Moment) -> Option<f64> {
    let job = cx.job.job_id.to_string();
    // Its name ends with a blank, so that flask 1 is not flask 12.
    let mix = Step { what: BenchStep::Mix, mix: None, ..*step }.name(cx);
    let of = cx.clocks.iter().rev().find(|one| one.job == job && one.step.starts_with(&mix))?;
    Some(now.seconds_since(&of.since))
}

/// Minutes and seconds, and hours where there are any.
fn clock(seconds: f64) -> String {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole seconds of one day at the bench")]
    let whole = seconds.max(0.0) as u64;
    let (hours, minutes, seconds) = (whole / 3600, whole / 60 % 60, whole % 60);
    if hours > 0 { format!("{hours}:{minutes:02}:{seconds:02}") } else { format!("{minutes}:{seconds:02}") }
}

#[cfg(test)]
mod tests {
    use super::clock;

    #[test]
    fn the_clock_reads_as_clocks_do() {
        assert_eq!(clock(0.0), "0:00");
        assert_eq!(clock(52.9), "0:52");
        assert_eq!(clock(246.0), "4:06");
        assert_eq!(clock(3_725.0), "1:02:05");
    }
}
