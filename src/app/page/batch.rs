//! The batch itself: what it is called, when it was made, remarks.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::widget::moment::day;
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};

/// Shows the section, folded.
pub fn about(ui: &mut Ui, cx: &mut Cx<'_>) {
    cx.folded(ui, "batch-about", |ui, cx| {
        let (tokens, job) = (cx.tokens, cx.job);
        let label = cx.label("batch-name");
        if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique("batch-name"), &label, &job.name, 320.0)) {
            cx.edit("edit-batch-name", move |job| job.name = name);
        }
        let label = cx.label("batch-made");
        if let Some(made) = row(ui, &label, &tokens, |ui| day(ui, cx, Id::unique("batch-made"), &label, job.made, 132.0)) {
            cx.edit("edit-batch-made", move |job| job.made = made);
        }
        let label = cx.label("batch-notes");
        if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique("batch-notes"), &label, &job.notes, 320.0)) {
            cx.edit("edit-batch-notes", move |job| job.notes = said);
        }
    });
}
