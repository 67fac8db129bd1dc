//! The running clock of a step. It starts when the step is opened, and goes on running when one goes back to it.

use eframe::egui::{Id, Ui};
use std::time::Duration;

use super::steps::{Step, What};
use super::words;
use crate::app::cx::Cx;

/// When steps were opened, in seconds of the window.
#[derive(Debug, Clone, Default)]
struct Opened(Vec<(Step, f64)>);

fn key() -> Id {
    Id::unique("bench steps opened")
}

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
    pub fn of(ui: &Ui, cx: &Cx<'_>, step: &Step) -> Option<Self> {
        let now = ui.input(|input| input.time);
        let mut opened: Opened = ui.data(|data| data.get_temp(key())).unwrap_or_default();
        let since = since(&mut opened, *step, now);
        // The clock of the last mix counts: it is the one that has to be poured on in time.
        let powder = opened.0.iter().rev().find(|(other, _)| other.what == What::Mix && other.of == step.of).map(|(_, at)| *at);
        ui.data_mut(|data| data.insert_temp(key(), opened));
        let minutes = words::minutes(cx, step)?;
        ui.ctx().request_repaint_after(Duration::from_secs(1));
        let since_powder = powder.filter(|_| words::since_powder(step) && step.what != What::Mix).map(|at| clock(now - at));
        Some(Self { runs: clock(now - since), since_powder, seconds: now - since, minutes })
    }

    /// How much of its time has run, and that in words.
    pub fn share(&self, cx: &Cx<'_>) -> Option<(f32, String)> {
        let minutes = self.minutes.filter(|minutes| *minutes > 0.0)?;
        #[allow(clippy::cast_possible_truncation, reason = "a share of a bar's width")]
        let share = (self.seconds / (60.0 * minutes)).clamp(0.0, 1.0) as f32;
        let all = clock(60.0 * minutes);
        Some((share, cx.say("bench-runs", &[("runs", (&self.runs).into()), ("all", all.into())])))
    }

    /// Opens the next step. One that was opened before and has not run out keeps running: it was left by mistake.
    pub fn go_on(ui: &Ui, step: Step, minutes: Option<f64>) {
        let now = ui.input(|input| input.time);
        ui.data_mut(|data| {
            let opened: &mut Opened = data.get_temp_mut_or_default(key());
            let ran_out = |at: f64| minutes.is_none_or(|minutes| now - at > 60.0 * minutes);
            opened.0.retain(|(other, at)| *other != step || !ran_out(*at));
            since(opened, step, now);
        });
    }

    /// Forgets all clocks.
    pub fn forget(ui: &Ui) {
        ui.data_mut(|data| data.remove::<Opened>(key()));
    }
}

fn since(opened: &mut Opened, step: Step, now: f64) -> f64 {
    if let Some((_, at)) = opened.0.iter().find(|(other, _)| *other == step) {
        return *at;
    }
    opened.0.push((step, now));
    now
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
