//! A job that was found: opened, cast again, or held against the flask that is at hand.

use std::path::Path;

use eframe::egui::Ui;

use super::compared;
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::widget::{button, heading};
use crate::folder::Brief;
use crate::job::{FlaskId, LineId};
use crate::paper::words::one_line;

/// Shows it. True where it is to be put away.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, (path, job): (&Path, &Brief), line: Option<LineId>) -> bool {
    let tokens = cx.tokens;
    let file = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let name = if job.name.trim().is_empty() { file.clone() } else { one_line(&job.name) };
    heading::group(ui, &name, &tokens);
    heading::says(ui, &file, &tokens);
    let mut close = false;
    ui.horizontal_wrapped(|ui| {
        if button::plain(ui, &cx.label("jobs-open"), &tokens).clicked() {
            cx.act(Action::OpenThis(path.to_path_buf()));
        }
        if button::plain(ui, &cx.label("jobs-again"), &tokens).clicked() {
            cx.act(Action::Again(path.to_path_buf()));
        }
        close = button::link(ui, &cx.label("jobs-close"), &tokens).clicked();
    });
    let then = flask_of(job, line);
    match (then, cx.view.flask) {
        _ if job.job_id == cx.job.job_id => {}
        (Some(then), Some(now)) => {
            let args = [("flask", names::flask(cx, now).into())];
            heading::says(ui, &cx.say("jobs-beside", &args), &tokens);
            compared::show(ui, cx, (path, then), now);
        }
        _ => {
            heading::says(ui, &cx.label("jobs-no-flask"), &tokens);
        }
    }
    close
}

/// The flask a line hangs in, or the first one.
fn flask_of(job: &Brief, line: Option<LineId>) -> Option<FlaskId> {
    let holds = |flask: &&crate::folder::BriefFlask| {
        let trees = job.trees.iter().filter(|tree| Some(tree.id) == flask.tree);
        trees.flat_map(|tree| &tree.pieces).any(|hung| Some(hung.line) == line)
    };
    job.flasks.iter().find(holds).or(job.flasks.first()).map(|flask| flask.id)
}
