//! The other jobs of the folder, for a page that wants them: asked for once, with how far the reading is.

use eframe::egui::{ProgressBar, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::folder_run::Folder;
use crate::app::widget::heading;

/// What was read; until then it is said why not, or how far it is.
pub fn read<'a>(ui: &mut Ui, cx: &mut Cx<'a>) -> Option<&'a Folder> {
    let tokens = cx.tokens;
    if cx.folder.is_none() {
        heading::says(ui, &cx.label("pieces-no-folder"), &tokens);
        return None;
    }
    let reader = cx.folder_jobs;
    let found = reader.found();
    match reader.progress() {
        _ if found.is_some() => {}
        Some((share, _)) => {
            #[allow(clippy::cast_possible_truncation, reason = "a bar has few points")]
            ui.add(ProgressBar::new(share as f32).desired_width(300.0).desired_height(6.0).fill(tokens.act));
            ui.ctx().request_repaint_after(std::time::Duration::from_millis(300));
        }
        None => cx.act(Action::ReadFolder),
    }
    found
}
