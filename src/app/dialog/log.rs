//! Which kiln log to read, and in which unit where its file does not say.

use std::path::PathBuf;

use eframe::egui::{RichText, Ui};

use super::Answer;
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};
use crate::kiln_log::Unit;

/// Asks.
pub fn ask(
    ui: &mut Ui,
    cx: &mut Cx<'_>,
    (path, unit, failed): (&mut String, &mut Option<Unit>, Option<&str>),
    answer: &mut Option<Answer>,
) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("log-title"), "", &tokens);
    heading::says(ui, &cx.label("log-says"), &tokens);
    let enter = super::file::path_field(ui, cx, path, &cx.label("log-hint"));
    ui.horizontal(|ui| {
        for (key, of) in [("log-unit-own", None), ("log-unit-c", Some(Unit::Celsius)), ("log-unit-f", Some(Unit::Fahrenheit))] {
            if ui.selectable_label(*unit == of, cx.label(key)).clicked() {
                *unit = of;
            }
        }
    });
    if let Some(why) = failed {
        ui.label(RichText::new(why).color(tokens.stop));
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        let ready = !path.trim().is_empty();
        if button::main(ui, &cx.label("log-read"), &tokens).clicked() || (enter && ready) {
            *answer = Some(if ready { Answer::ReadLog(PathBuf::from(path.trim()), *unit) } else { Answer::Browse });
        }
        if button::plain(ui, &cx.label("do-browse"), &tokens).clicked() {
            *answer = Some(Answer::Browse);
        }
        if button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}
