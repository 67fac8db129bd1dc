//! Work that was set aside before a crash and never saved.

use eframe::egui::Ui;

use super::Answer;
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};
use crate::files::recover::RecoveryFound;
use crate::paper::words::moment_words;

/// Take it up, or leave it out for good; closing the question leaves it for the next time.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, (name, found, differs): (&str, &RecoveryFound, &[&'static str]), answer: &mut Option<Answer>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("recover-title"), "", &tokens);
    let at = moment_words(cx.setting.zone.to_datetime(found.time), cx.texts);
    let file = found.key.path.as_ref().map(|path| path.display().to_string()).unwrap_or_default();
    let name = if name.trim().is_empty() { if file.is_empty() { cx.label("top-untitled") } else { file } } else { name.to_owned() };
    ui.label(cx.say("recover-says", &[("name", name.into()), ("at", at.into())]));
    heading::says(ui, &cx.say("recover-differs", &[("count", differs.len().into())]), &tokens);
    for key in differs {
        ui.label(cx.label(key));
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("do-recover"), &tokens).clicked() {
            *answer = Some(Answer::Recover);
        }
        if button::plain(ui, &cx.label("do-discard"), &tokens).clicked() {
            *answer = Some(Answer::LeaveOut);
        }
        if button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}
