//! Work that was set aside before a crash and never saved.

use eframe::egui::{Grid, RichText, Ui};

use super::{Answer, Differs};
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};
use crate::files::recover::RecoveryFound;
use crate::paper::words::moment_words;

/// Take it up, or leave it out for good; closing the question leaves it for the next time. Where the file was saved by somebody else since, both
/// are kept unless this one is to go over it.
pub fn show(
    ui: &mut Ui,
    cx: &mut Cx<'_>,
    (name, found, differs): (&str, &RecoveryFound, &[Differs]),
    (changed, studio): (bool, bool),
    answer: &mut Option<Answer>,
) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("recover-title"), "", &tokens);
    let at = moment_words(cx.setting.zone.to_datetime(found.time), cx.texts);
    let file = found.key.path.as_ref().map(|path| path.display().to_string()).unwrap_or_default();
    let name = if !name.trim().is_empty() {
        name.to_owned()
    } else if file.is_empty() {
        cx.label("top-untitled")
    } else {
        file
    };
    let says = if studio { "recover-says-studio" } else { "recover-says" };
    ui.label(cx.say(says, &[("name", name.into()), ("at", at.into())]));
    if changed {
        ui.label(RichText::new(cx.label("recover-changed")).color(tokens.caution));
    }
    heading::says(ui, &cx.say("recover-differs", &[("count", differs.len().into())]), &tokens);
    if !differs.is_empty() {
        table(ui, cx, differs);
    }
    ui.add_space(12.0);
    ui.horizontal_wrapped(|ui| {
        // Nothing that stands is written over by the first button.
        let apart = changed && !studio;
        let first = if apart { ("do-recover-apart", Answer::RecoverApart) } else { ("do-recover", Answer::Recover) };
        if button::main(ui, &cx.label(first.0), &tokens).clicked() {
            *answer = Some(first.1);
        }
        if apart && button::plain(ui, &cx.label("do-recover-over"), &tokens).clicked() {
            *answer = Some(Answer::Recover);
        }
        if button::plain(ui, &cx.label("do-discard"), &tokens).clicked() {
            *answer = Some(Answer::LeaveOut);
        }
        if button::plain(ui, &cx.label("do-later"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}

/// Side by side: what stands in the file, and what was set aside.
fn table(ui: &mut Ui, cx: &Cx<'_>, differs: &[Differs]) {
    let tokens = cx.tokens;
    let head = |ui: &mut Ui, words: String| ui.label(RichText::new(words).size(12.0).color(tokens.ink2));
    Grid::new("what differs").num_columns(3).spacing([28.0, 4.0]).show(ui, |ui| {
        head(ui, String::new());
        head(ui, cx.label("recover-in-file"));
        head(ui, cx.label("recover-aside"));
        ui.end_row();
        for part in differs {
            ui.label(cx.label(part.key));
            ui.label(RichText::new(part.in_file.to_string()).color(tokens.ink2));
            let words = if part.in_file == part.aside { cx.label("recover-other") } else { part.aside.to_string() };
            ui.label(words);
            ui.end_row();
        }
    });
}
