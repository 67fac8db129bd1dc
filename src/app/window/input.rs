//! What reaches the window from outside a page: keys that do something everywhere, and files that are dropped on it.

use std::path::{Path, PathBuf};

use eframe::egui::Context;

use super::Window;
use crate::app::action::Action;
use crate::app::cx::Wish;
use crate::job::{PatternFile, Place};
use crate::texts::Texts;

impl Window {
    /// Keys that do something wherever the focus is. Undo belongs to a field while it is written in.
    pub(super) fn keys(&self, ctx: &Context) -> Vec<Action> {
        if self.dialog.is_some() || self.workbook.view.finder.is_some() {
            return Vec::new();
        }
        let writing = ctx.text_edit_focused();
        let mut pressed = Vec::new();
        // The longest keys first: Shift is part of one, and not a bystander.
        let mut all: Vec<Action> = Action::PLAIN.to_vec();
        all.sort_by_key(|action| action.shortcut().is_none_or(|shortcut| !shortcut.modifiers.shift));
        for action in all {
            let Some(shortcut) = action.shortcut() else { continue };
            if writing && matches!(action, Action::Undo | Action::Redo) {
                continue;
            }
            if action != Action::Quit && ctx.input_mut(|input| input.consume_shortcut(&shortcut)) {
                pressed.push(action);
            }
        }
        pressed
    }

    /// Pattern files that were dropped on the window become patterns.
    pub(super) fn drops(&self, ctx: &Context, wishes: &mut Vec<Wish>) {
        let dropped: Vec<PathBuf> = ctx.input(|input| input.raw.dropped_files.iter().map(|file| file.path().to_path_buf()).collect());
        let folder = self.workbook.folder().map(Path::to_path_buf);
        let mut next = crate::app::page::next_pattern(&self.workbook.job);
        let mut shown = None;
        for path in dropped {
            let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase());
            match ending.as_deref() {
                Some("ron") => wishes.push(Wish::Do(Action::OpenThis(path))),
                Some("stl" | "obj" | "ply" | "3mf") => {
                    shown = Some(next);
                    next.0 += 1;
                    let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
                    let relative = folder.as_ref().and_then(|folder| path.strip_prefix(folder).ok()).unwrap_or(&path).to_owned();
                    let relative = relative.to_string_lossy().replace('\\', "/");
                    let file = PatternFile { path: relative, ..PatternFile::default() };
                    let words = Texts::english().label("edit-drop-pattern");
                    wishes.push(Wish::Edit(words, Box::new(move |job| crate::app::page::add_pattern(job, name, Some(file)))));
                }
                _ => {}
            }
        }
        if let Some(pattern) = shown {
            wishes.push(Wish::Do(Action::Show(Place::Pattern(pattern))));
        }
    }
}
