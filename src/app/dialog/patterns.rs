//! Pattern files: which to add, and what to do with those that lie outside the batch's folder.

use std::path::{Path, PathBuf};

use eframe::egui::{RichText, Ui};

use super::{Answer, Outside};
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};

/// Names of files shown at once.
const NAMES: usize = 8;

/// Which files to add.
pub fn add(ui: &mut Ui, cx: &mut Cx<'_>, (path, failed): (&mut String, Option<&str>), answer: &mut Option<Answer>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("add-patterns-title"), "", &tokens);
    heading::says(ui, &cx.label("add-patterns-says"), &tokens);
    let enter = super::file::path_field(ui, cx, path, &cx.label("add-patterns-hint"));
    if let Some(why) = failed {
        ui.label(RichText::new(why).color(tokens.stop));
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        let ready = !path.trim().is_empty();
        if button::main(ui, &cx.label("do-add-patterns"), &tokens).clicked() || (enter && ready) {
            *answer = Some(if ready { Answer::AddPatterns(vec![PathBuf::from(path.trim())]) } else { Answer::Browse });
        }
        if button::plain(ui, &cx.label("do-browse"), &tokens).clicked() {
            *answer = Some(Answer::Browse);
        }
        if button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}

/// Files outside the batch's folder: those to be added, or those that the batch names already.
pub fn outside(ui: &mut Ui, cx: &mut Cx<'_>, (folder, files, adding): (&Path, &[String], bool), answer: &mut Option<Answer>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label(if adding { "outside-add-title" } else { "outside-read-title" }), "", &tokens);
    let key = if adding { "outside-add-says" } else { "outside-read-says" };
    heading::says(ui, &cx.say(key, &[("folder", folder.display().to_string().into())]), &tokens);
    for name in files.iter().take(NAMES) {
        ui.label(RichText::new(name).color(tokens.ink));
    }
    if files.len() > NAMES {
        let more = u64::try_from(files.len() - NAMES).unwrap_or(u64::MAX);
        heading::says(ui, &cx.say("outside-more", &[("count", more.into())]), &tokens);
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        let mut offer = |ui: &mut Ui, key: &str, main: bool, what: Outside| {
            let words = cx.label(key);
            let pressed = if main { button::main(ui, &words, &tokens) } else { button::plain(ui, &words, &tokens) };
            if pressed.clicked() {
                *answer = Some(Answer::Outside(what));
            }
        };
        if adding {
            offer(ui, "outside-copy", true, Outside::Copy);
            offer(ui, "outside-leave", false, Outside::Allow);
        } else {
            offer(ui, "outside-allow", true, Outside::Allow);
            offer(ui, "outside-refuse", false, Outside::Refuse);
        }
        if adding && button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}
