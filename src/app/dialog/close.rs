//! Before changes are lost.

use eframe::egui::Ui;

use super::{Answer, Then};
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};

/// Save, go on without saving, or stay.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, then: &Then, answer: &mut Option<Answer>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("close-title"), "", &tokens);
    let since = cx.label("close-since-open");
    heading::says(ui, &cx.say("close-says", &[("since", since.into())]), &tokens);
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("do-save-and-close"), &tokens).clicked() {
            *answer = Some(Answer::SaveThen(then.clone()));
        }
        if button::plain(ui, &cx.label("do-close-unsaved"), &tokens).clicked() {
            *answer = Some(Answer::Anyway(then.clone()));
        }
        if button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}
