//! The studio and the window: what the whole house says of itself, section by section.

mod centrifuges;
mod flasks;
mod hands;
mod hours;
pub mod kept;
mod lots;
mod money;
mod moulds;
mod prices;
mod printers;
mod registers;
pub mod sections;
mod shelf;
mod shelf_entry;
mod site;
mod studio;
mod taught;
mod weighed;
mod window;

use eframe::egui::Ui;

use super::Page;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::{finding, heading};

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-settings"), &cx.studio.name.clone(), &tokens);
    heading::says(ui, &cx.label("settings-says"), &tokens);
    ui.add_space(2.0 * STEP);
    window::show(ui, cx);
    cx.folded(ui, "settings-letterhead", studio::show);
    cx.folded(ui, "settings-site", site::show);
    cx.folded(ui, "settings-hands", hands::show);
    cx.folded(ui, "settings-hours", hours::show);
    cx.folded(ui, "settings-prices", prices::show);
    cx.folded(ui, "settings-money", money::show);
    cx.folded(ui, "settings-lots", lots::show);
    cx.folded(ui, "settings-moulds", moulds::show);
    cx.folded(ui, "settings-material-lots", registers::lots);
    cx.folded(ui, "settings-equipment", registers::equipment);
    cx.folded(ui, "settings-printers", printers::show);
    cx.folded(ui, "settings-centrifuges", centrifuges::show);
    cx.folded(ui, "settings-shelf", shelf::show);
    cx.folded(ui, "settings-flasks", flasks::show);
    cx.folded(ui, "settings-weighed", weighed::show);
    cx.folded(ui, "settings-taught", taught::show);
    ui.add_space(3.0 * STEP);
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Settings);
}
