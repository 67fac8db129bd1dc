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

/// Shows them. The place of a step that was chosen.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, large: &Large, steps: &[Step], here: usize) -> Option<usize> {
    let mut running: Vec<(usize, Clock)> =
        steps.iter().enumerate().filter(|(at, _)| *at != here).filter_map(|(at, step)| Some((at, Clock::running(cx, step)?))).collect();
    if running.is_empty() {
        return None;
    }
    running.sort_by(|(_, a), (_, b)| a.left_s().total_cmp(&b.left_s()));
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
