//! Taking on pieces that wait in another job, such as the order book: nothing is typed again, and each piece knows where it came from.

use std::path::PathBuf;
use std::sync::Arc;

use eframe::egui::{Id, Label, RichText, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::number::{Number, count};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::files::batch::Batch;
use crate::files::disk::RealDisk;
use crate::job::{Job, LineId};
use crate::quantity::Kind;

/// The other job while it is looked at; kept by the window, not by any document.
#[derive(Debug, Clone, Default)]
struct Other {
    path: String,
    job: Option<Arc<Job>>,
    failed: Option<String>,
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
        other = look(&folder, path);
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

fn look(folder: &std::path::Path, path: String) -> Other {
    if path.is_empty() {
        return Other::default();
    }
    match Batch::open(&RealDisk, &folder.join(PathBuf::from(&path))) {
        Ok(batch) => Other { path, job: Some(Arc::new(batch.sound)), ..Other::default() },
        Err(error) => Other { path, failed: Some(error.to_string()), ..Other::default() },
    }
}

/// Every line of the other job of which pieces are left.
fn lines(ui: &mut Ui, cx: &mut Cx<'_>, from: &Arc<Job>, other: &mut Other) {
    let tokens = cx.tokens;
    let mut any = false;
    for (order, line) in from.lines() {
        let left = change::left_of(cx.job, from.job_id, line);
        if left.is_empty() {
            continue;
        }
        any = true;
        let all = u32::try_from(left.len()).unwrap_or(u32::MAX);
        let wanted = other.wanted.get(&line.id).copied().unwrap_or(all).min(all);
        ui.horizontal_wrapped(|ui| {
            let words = format!("{}, {}", line.design, order.client);
            ui.add_sized([200.0, 26.0], Label::new(words).truncate());
            let name = format!("{} {}", cx.label("orders-take-on-how-many"), line.design);
            let field = Number::new(Id::unique(("take-on", line.id.0)), &name, Kind::Count).now(Some(f64::from(wanted))).width(70.0);
            if let Some(Some(many)) = count(ui, cx, &field) {
                other.wanted.insert(line.id, many.clamp(1, all));
            }
            ui.label(RichText::new(cx.say("orders-take-on-of", &[("count", left.len().into())])).color(tokens.ink2));
            let (order, line, from_job) = (order.clone(), line.clone(), Arc::clone(from));
            if button::plain(ui, &cx.label("orders-take-on-do"), &tokens).clicked() {
                let numbers: Vec<u32> = left.iter().copied().take(wanted as usize).collect();
                cx.edit("edit-orders-take-on", move |job| change::take_on(job, &from_job, &order, &line, &numbers));
            }
        });
    }
    if !any {
        heading::says(ui, &cx.label("orders-take-on-none"), &tokens);
    }
}
