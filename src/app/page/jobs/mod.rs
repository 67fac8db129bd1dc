//! Every job of the folder: found by a word, held against what was done the last time, cast again; and the weeks ahead.

mod again;
mod compared;
mod found;
mod last;
mod troubles;
mod weeks;

use std::sync::Arc;

use eframe::egui::Ui;

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::index_run::EVERY;
use crate::app::theme::STEP;
use crate::app::widget::{button, heading};
use crate::folder::Index;

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-jobs"), "", &tokens);
    let Some(index) = index(ui, cx) else { return };
    found::show(ui, cx, &index);
    cx.folded(ui, "jobs-last", |ui, cx| last::show(ui, cx, &index));
    cx.folded(ui, "jobs-weeks", weeks::show);
    troubles::show(ui, cx, &index);
    ui.add_space(2.0 * STEP);
}

/// The index; until there is one, it is said why not.
fn index(ui: &mut Ui, cx: &mut Cx<'_>) -> Option<Arc<Index>> {
    let tokens = cx.tokens;
    if cx.folder.is_none() {
        heading::empty(ui, &cx.label("jobs-empty"), &cx.label("pieces-no-folder"), &tokens);
        if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
        return None;
    }
    // It looks by itself whether anything changed in the meantime.
    cx.act(Action::IndexFolder);
    ui.ctx().request_repaint_after(EVERY);
    if let Some(why) = cx.indexer.failed() {
        heading::says(ui, &cx.say("jobs-failed", &[("why", why.into())]), &tokens);
    }
    let index = cx.indexer.index().cloned();
    if index.is_none() && cx.indexer.failed().is_none() {
        // It takes a second at most: whoever looks through the folder wakes the window.
        heading::says(ui, &cx.label("jobs-looking"), &tokens);
    }
    index
}
