//! The batch plan: what hangs nowhere yet, what it is planned with, and the plan.

mod result;

use eframe::egui::{Id, ProgressBar, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::row::row;
use crate::app::widget::{button, heading};
use crate::calc::batch::Places;
use crate::stock::{Crucible, Kiln};

/// Width of a choice.
const WIDE: f32 = 240.0;

/// A search shows how far it is once it goes on for so long.
const SHOWN_AFTER_S: f64 = 0.5;

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("plan-says"), &tokens);
    open(ui, cx);
    options(ui, cx);
    ui.add_space(STEP);
    match cx.planner.progress() {
        Some((share, since)) => running(ui, cx, share, since.as_secs_f64()),
        None => {
            let some = cx.planner.ask().is_some_and(|ask| !ask.pieces.is_empty());
            if button::outlined(ui, &cx.label("plan-do"), &tokens, some).clicked() {
                cx.act(Action::Plan);
            }
        }
    }
    result::show(ui, cx);
    ui.add_space(2.0 * STEP);
}

/// The open pieces by alloy.
fn open(ui: &mut Ui, cx: &Cx<'_>) {
    let tokens = cx.tokens;
    let Some(ask) = cx.planner.ask() else { return };
    heading::group(ui, &cx.label("plan-open"), &tokens);
    if ask.pieces.is_empty() && ask.unknown.is_empty() {
        heading::says(ui, &cx.label("plan-nothing"), &tokens);
    }
    for (at, alloy) in ask.alloys.iter().enumerate() {
        let pieces = ask.pieces.iter().filter(|piece| piece.alloy == at).count();
        if pieces > 0 {
            heading::says(ui, &cx.say("plan-open-of", &[("alloy", alloy.name.as_str().into()), ("count", pieces.into())]), &tokens);
        }
    }
    if !ask.unknown.is_empty() {
        heading::says(ui, &cx.say("plan-open-unknown", &[("count", ask.unknown.len().into())]), &tokens);
    }
}

fn options(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let now = cx.view.plan.clone();
    let label = cx.label("plan-crucible");
    let words = |crucible: &Crucible| (crucible.id.clone(), crucible.name.clone());
    let place = (Id::unique("plan-crucible"), label.as_str(), WIDE);
    if let Some(crucible) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, now.crucible.as_ref(), words)) {
        cx.look(move |view| view.plan.crucible = crucible);
    }
    if now.crucible.is_none() {
        heading::says(ui, &cx.label("plan-crucible-largest"), &tokens);
    }
    let label = cx.label("plan-kiln");
    let mut kilns = vec![(Places::OfLoad, cx.label("plan-kiln-of-load")), (Places::NoMatter, cx.label("plan-kiln-no-matter"))];
    kilns.extend(cx.computed.shelves.job.all::<Kiln>().map(|kiln| (Places::Of(kiln.id.clone()), kiln.name.clone())));
    let place = (Id::unique("plan-kiln"), label.as_str(), WIDE);
    if let Some(Some(kiln)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&now.kiln), &kilns, false)) {
        cx.look(move |view| view.plan.kiln = kiln);
    }
    let mut add = now.add_to_flasks;
    if ui.checkbox(&mut add, cx.label("plan-add")).changed() {
        cx.look(move |view| view.plan.add_to_flasks = add);
    }
}

fn running(ui: &mut Ui, cx: &mut Cx<'_>, share: f64, since_s: f64) {
    let tokens = cx.tokens;
    if since_s >= SHOWN_AFTER_S {
        heading::says(ui, &cx.label("plan-running"), &tokens);
        let width = ui.available_width().min(400.0);
        #[allow(clippy::cast_possible_truncation, reason = "a bar has few points")]
        ui.add(ProgressBar::new(share as f32).desired_width(width).desired_height(6.0).fill(tokens.act));
    }
    if button::plain(ui, &cx.label("plan-stop"), &tokens).clicked() {
        cx.act(Action::StopPlan);
    }
    // Often enough for the bar, and rarely enough that the window rests between.
    ui.ctx().request_repaint_after(std::time::Duration::from_millis(300));
}
