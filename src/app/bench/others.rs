//! The other clocks that run: a flask rests while the next is mixed, another cools. Each is a press away, and one whose time is over is told
//! whatever step is looked at.

use eframe::egui::Ui;

use super::clock::Clock;
use super::large::Large;
use super::steps::Step;
use super::words;
use crate::app::cx::Cx;

/// So many are shown; the nearest to its end comes first.
const MOST: usize = 4;

/// The height two lines of them need at full size, and that of the alarm, whose frame must not touch what stands below.
const LINES: f32 = 70.0;
const ALARM: f32 = 110.0;

/// The clocks that run beside that of the step looked at, with the places of their steps; the nearest to its end first.
pub fn running(cx: &Cx<'_>, steps: &[Step], here: usize) -> Vec<(usize, Clock)> {
    let others = steps.iter().enumerate().filter(|(at, _)| *at != here);
    let mut running: Vec<(usize, Clock)> = others.filter_map(|(at, step)| Some((at, Clock::running(cx, step)?))).collect();
    running.sort_by(|(_, a), (_, b)| a.left_s().total_cmp(&b.left_s()));
    running
}

/// How much height they need at full size.
pub fn height(running: &[(usize, Clock)]) -> f32 {
    let over = running.iter().any(|(_, clock)| clock.is_over());
    if running.is_empty() { 0.0 } else { LINES + if over { ALARM } else { 0.0 } }
}

/// Shows them. The place of a step that was chosen.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, large: &Large, steps: &[Step], running: &[(usize, Clock)]) -> Option<usize> {
    if running.is_empty() {
        return None;
    }
    let mut chosen = None;
    for (at, clock) in running.iter().filter(|(_, clock)| clock.is_over()).take(1) {
        let words = cx.say("bench-other-over", &[("step", words::next(cx, &steps[*at]).into())]);
        large.alarm(ui, &words, clock.flashes());
    }
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = super::APART * large.scale;
        for (at, clock) in running.iter().take(MOST) {
            let runs = clock.share(cx).map_or_else(|| clock.runs.clone(), |(_, words)| words);
            let words = cx.say("bench-other", &[("step", words::next(cx, &steps[*at]).into()), ("runs", runs.into())]);
            let link = large.link(ui, &words, 22.0);
            if link.clicked() {
                chosen = Some(*at);
                // Space is for the step that was gone to.
                link.surrender_focus();
            }
        }
    });
    chosen
}
