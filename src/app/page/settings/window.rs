//! How the window looks: it belongs to the person before it, and to no document.

use eframe::egui::Ui;

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::{button, heading};

/// Shows the section; it is short, and stands open.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("settings-window"), &tokens);
    ui.horizontal_wrapped(|ui| {
        for action in [Action::Theme, Action::Units, Action::Comma, Action::Larger, Action::Smaller] {
            if button::plain(ui, &cx.label(action.key()), &tokens).clicked() {
                cx.act(action);
            }
        }
    });
    let units = if cx.style.units == crate::quantity::Units::TRADE { "settings-units-trade" } else { "settings-units-metric" };
    let mark = if cx.style.comma { "settings-mark-comma" } else { "settings-mark-point" };
    let words = format!("{} {}", cx.label(units), cx.label(mark));
    heading::says(ui, &words, &tokens);
    ui.add_space(2.0 * STEP);
}
