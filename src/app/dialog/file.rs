//! Files by path: typed, from those opened lately, or from the system's own window where there is one.

use std::path::PathBuf;

use eframe::egui::{Key, Modifiers, RichText, TextEdit, Ui};

use super::{Answer, Then};
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};

pub(super) fn path_field(ui: &mut Ui, cx: &Cx<'_>, path: &mut String, hint: &str) -> bool {
    let enter = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Enter));
    let field = TextEdit::singleline(path).desired_width(470.0).hint_text(RichText::new(hint).color(cx.tokens.ink3));
    let response = ui.add(field).accessible_name(cx.label("open-path"));
    if !response.has_focus() && ui.memory(|memory| memory.focused().is_none()) {
        response.request_focus();
    }
    enter
}

/// Which batch to open.
pub fn open(ui: &mut Ui, cx: &mut Cx<'_>, (path, failed): (&mut String, Option<&str>), recent: &[PathBuf], answer: &mut Option<Answer>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("open-title"), "", &tokens);
    let enter = path_field(ui, cx, path, &cx.label("save-hint"));
    if let Some(why) = failed {
        ui.label(RichText::new(why).color(tokens.stop));
    }
    if !recent.is_empty() {
        heading::group(ui, &cx.label("open-recent"), &tokens);
        for file in recent {
            if button::link(ui, &file.display().to_string(), &tokens).clicked() {
                *answer = Some(Answer::Open(file.clone()));
            }
        }
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        let ready = !path.trim().is_empty();
        if button::main(ui, &cx.label("do-open"), &tokens).clicked() || (enter && ready) {
            *answer = Some(if ready { Answer::Open(PathBuf::from(path.trim())) } else { Answer::Browse });
        }
        if button::plain(ui, &cx.label("do-browse"), &tokens).clicked() {
            *answer = Some(Answer::Browse);
        }
        if button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}

/// Under which name to save.
pub fn save_as(
    ui: &mut Ui,
    cx: &mut Cx<'_>,
    (path, failed): (&mut String, Option<&str>),
    then: Option<&Then>,
    answer: &mut Option<Answer>,
) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("save-title"), "", &tokens);
    let enter = path_field(ui, cx, path, &cx.label("save-hint"));
    if let Some(why) = failed {
        ui.label(RichText::new(why).color(tokens.stop));
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        let ready = !path.trim().is_empty();
        if (button::main(ui, &cx.label("do-save"), &tokens).clicked() || enter) && ready {
            let mut path = PathBuf::from(path.trim());
            if path.extension().is_none() {
                path.set_extension("ron");
            }
            *answer = Some(Answer::SaveAs(path, then.cloned()));
        }
        if button::plain(ui, &cx.label("do-browse"), &tokens).clicked() {
            *answer = Some(Answer::Browse);
        }
        if button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}
