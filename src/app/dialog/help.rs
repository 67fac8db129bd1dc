//! What can be done, and the keys for it, from the one list of actions.

use eframe::egui::{Grid, RichText, ScrollArea, Ui};

use super::Answer;
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};

/// Every action with its key, and how a field is written in.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, answer: &mut Option<Answer>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("do-help"), "", &tokens);
    ScrollArea::vertical().max_height(420.0).min_scrolled_height(420.0).show(ui, |ui| {
        Grid::new("keys").num_columns(2).spacing([32.0, 4.0]).show(ui, |ui| {
            for action in Action::PLAIN {
                let Some(shortcut) = action.shortcut() else { continue };
                ui.label(cx.label(action.key()));
                ui.label(RichText::new(ui.ctx().format_shortcut(&shortcut)).color(tokens.ink2));
                ui.end_row();
            }
        });
        for key in ["help-enter", "help-tab", "help-escape", "help-space", "help-choice", "help-figure", "help-units"] {
            heading::says(ui, &cx.label(key), &tokens);
        }
    });
    ui.add_space(8.0);
    if button::plain(ui, &cx.label("do-close"), &tokens).clicked() {
        *answer = Some(Answer::Cancel);
    }
}
