//! What reaches the window from outside a page: keys that do something everywhere, and files that are dropped on it.

use std::path::PathBuf;

use eframe::egui::Context;

use super::Window;
use crate::app::action::Action;
use crate::app::cx::Wish;

impl Window {
    /// Keys that do something wherever the focus is. Undo belongs to a field while it is written in.
    pub(super) fn keys(&self, ctx: &Context) -> Vec<Action> {
        // Whatever is asked just now: the cards are never further than this key.
        let cards = Action::WhatNow.shortcut();
        if cards.is_some_and(|key| ctx.input_mut(|input| input.consume_shortcut(&key))) {
            return vec![Action::WhatNow];
        }
        if self.dialog.is_some() || self.workbook.view.finder.is_some() {
            return Vec::new();
        }
        let over = self.workbook.view.cards.is_some();
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
            // What the cards stand over stays as it was left.
            if over && !matches!(action, Action::Theme | Action::Units | Action::Larger | Action::Smaller) {
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
        let (batches, patterns): (Vec<PathBuf>, Vec<PathBuf>) =
            dropped.into_iter().partition(|path| path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("ron")));
        wishes.extend(batches.into_iter().map(|path| Wish::Do(Action::OpenThis(path))));
        if !patterns.is_empty() {
            wishes.push(Wish::Do(Action::TakeIn(patterns)));
        }
    }
}
