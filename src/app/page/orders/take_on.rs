//! Taking on pieces that wait in another job, such as the order book: nothing is typed again, and each piece knows where it came from.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::{Align, Id, Label, Layout, RichText, Ui, vec2};

use super::{change, open};
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::ROW;
use crate::app::widget::number::{Number, count};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::files::batch::Batch;
use crate::files::disk::{RealDisk, folder_of};
use crate::job::{Job, JobId, LineId, PieceId, Place};
use crate::quantity::Kind;

/// The other job while it is looked at; kept by the window, not by any document.
#[derive(Debug, Clone, Default)]
struct Other {
    path: String,
    job: Option<Arc<Job>>,
    failed: Option<String>,
    /// What other jobs of its folder have taken on already.
    elsewhere: std::collections::BTreeSet<PieceId>,
    wanted: std::collections::BTreeMap<LineId, u32>,
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let Some(folder) = cx.folder.clone() else {
        heading::says(ui, &cx.label("orders-take-on-no-folder"), &tokens);
        return;
    };
    let key = Id::unique("take-on");
    let mut other: Other = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    heading::says(ui, &cx.label("orders-take-on-says"), &tokens);
    let label = cx.label("orders-take-on-path");
    if let Some(path) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique("take-on-path"), &label, &other.path, 280.0)) {
        other = look(&folder, path, cx.job.job_id);
    }
    if let Some(failed) = &other.failed {
        ui.add(Label::new(RichText::new(failed).color(tokens.stop)).wrap());
    }
    if let Some(job) = other.job.clone() {
        if job.job_id == cx.job.job_id {
            heading::says(ui, &cx.label("orders-take-on-itself"), &tokens);
        } else {
            lines(ui, cx, &job, &mut other);
        }
    }
    ui.data_mut(|data| data.insert_temp(key, other));
}

fn look(folder: &Path, path: String, here: JobId) -> Other {
    if path.is_empty() {
        return Other::default();
    }
    let full = folder.join(PathBuf::from(&path));
    match Batch::open(&RealDisk, &full) {
        Ok(batch) => {
            let mut job = batch.sound;
            let there = folder_of(&full);
            for file in job.patterns.iter_mut().filter_map(|pattern| pattern.file.as_mut()) {
                file.path = seen_from(folder, &there.join(&file.path));
            }
            let elsewhere = open::taken_in_folder(&RealDisk, there, job.job_id, here);
            Other { path, elsewhere, job: Some(Arc::new(job)), ..Other::default() }
        }
        Err(error) => Other { path, failed: Some(error.to_string()), ..Other::default() },
    }
}

/// A path as it is written in a job of `folder`.
fn seen_from(folder: &Path, path: &Path) -> String {
    path.strip_prefix(folder).unwrap_or(path).to_string_lossy().replace('\\', "/")
}

/// Every line of the other job of which pieces are left.
fn lines(ui: &mut Ui, cx: &mut Cx<'_>, from: &Arc<Job>, other: &mut Other) {
    let tokens = cx.tokens;
    let mut any = false;
    // What another job took on since it was looked at is found when the file is asked for again.
    let mut taken = other.elsewhere.clone();
    taken.extend(open::taken_by(cx.job, from.job_id));
    let lacking: Vec<_> =
        from.shelf.iter().filter(|copied| cx.computed.shelves.today.entry(copied.entry.id().as_str()).is_none()).collect();
    for (order, line) in from.lines() {
        let left = open::open_pieces(from, line, &taken);
        if left.is_empty() {
            continue;
        }
        any = true;
        let all = u32::try_from(left.len()).unwrap_or(u32::MAX);
        let wanted = other.wanted.get(&line.id).copied().unwrap_or(all).min(all);
        ui.horizontal_wrapped(|ui| {
            let words = format!("{}, {}", line.design, order.client);
            ui.allocate_ui_with_layout(vec2(200.0, ROW), Layout::left_to_right(Align::Center), |ui| {
                ui.set_min_width(200.0);
                ui.add(Label::new(words).truncate());
            });
            let name = format!("{} {}", cx.label("orders-take-on-how-many"), line.design);
            let field = Number::new(Id::unique(("take-on", line.id.0)), &name, Kind::Count).now(Some(f64::from(wanted))).width(70.0);
            if let Some(Some(many)) = count(ui, cx, &field) {
                other.wanted.insert(line.id, many.clamp(1, all));
            }
            ui.label(RichText::new(cx.say("orders-take-on-of", &[("count", left.len().into())])).color(tokens.ink2));
            let (order, line, from_job) = (order.clone(), line.clone(), Arc::clone(from));
            let take = cx.label("orders-take-on-do");
            if button::plain(ui, &take, &tokens).accessible_name(format!("{take}: {}", line.design)).clicked() {
                let numbers: Vec<u32> = left.iter().copied().take(wanted as usize).collect();
                let copies: Vec<_> = lacking.iter().copied().cloned().collect();
                let next = change::next_line(cx.job);
                cx.edit("edit-orders-take-on", move |job| {
                    change::take_on(job, &from_job, &order, &line, &numbers);
                    change::carry_copies(job, &copies);
                });
                cx.act(Action::Show(Place::Line(next)));
            }
        });
    }
    if !any {
        heading::says(ui, &cx.label("orders-take-on-none"), &tokens);
    }
}
