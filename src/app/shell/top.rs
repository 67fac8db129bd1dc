//! The top line: what batch this is and whether it is saved, undo and redo with what they would do, and the finder.

use eframe::egui::{Align, Label, Layout, RichText, Ui, vec2};

use crate::app::action::Action;
use crate::app::cx::{Cx, Wish};
use crate::app::theme::bold;
use crate::app::widget::button;

/// What the top line says of the batch.
pub struct Top<'a> {
    /// Its name.
    pub title: String,
    /// The key of how it lies on the disk.
    pub state: &'static str,
    /// What undo takes back.
    pub undo: Option<&'a str>,
    /// What redo does again.
    pub redo: Option<&'a str>,
}

/// Shows the top line.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, top: &Top<'_>) {
    let tokens = cx.tokens;
    // Large type on a small screen: what stands in the menu as well gives way.
    let narrow = ui.max_rect().width() < 860.0;
    ui.horizontal_centered(|ui| {
        ui.add_space(8.0);
        menu(ui, cx);
        if button::alarm(ui, &cx.label("do-what-now"), &tokens).on_hover_text(shown(ui, &Action::WhatNow)).clicked() {
            cx.act(Action::WhatNow);
        }
        let title = if top.title.is_empty() { cx.label("top-untitled") } else { top.title.clone() };
        ui.scope(|ui| {
            ui.set_max_width(if narrow { 150.0 } else { 280.0 });
            ui.add(Label::new(RichText::new(title).family(bold()).size(15.0)).truncate());
        });
        ui.label(RichText::new(cx.label(top.state)).size(12.0).color(tokens.ink2));
        ui.add_space(8.0);
        step(ui, cx, &Action::Undo, "do-undo-what", top.undo, narrow);
        step(ui, cx, &Action::Redo, "do-redo-what", top.redo, narrow);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.add_space(8.0);
            if narrow {
                if button::plain(ui, &cx.label("do-find"), &tokens).clicked() {
                    cx.act(Action::Find);
                }
                return;
            }
            let hint = cx.label("top-find-hint");
            let words = format!("{hint}    {}", shown(ui, &Action::Find));
            if ui.add_sized(vec2(252.0, 28.0), eframe::egui::Button::new(RichText::new(words).size(12.0).color(tokens.ink2))).clicked() {
                cx.act(Action::Find);
            }
            if button::plain(ui, &cx.label("do-bench"), &tokens).clicked() {
                cx.act(Action::Bench);
            }
        });
    });
}

fn step(ui: &mut Ui, cx: &mut Cx<'_>, action: &Action, key: &str, what: Option<&str>, narrow: bool) {
    let words = what.map_or_else(|| cx.label(action.key()), |what| cx.say(key, &[("what", what.into())]));
    let short: String = if narrow {
        cx.label(action.key())
    } else if words.chars().count() > 34 {
        words.chars().take(33).chain(['…']).collect()
    } else {
        words.clone()
    };
    if button::outlined(ui, &short, &cx.tokens, what.is_some()).on_hover_text(words).clicked() {
        cx.act(action.clone());
    }
}

fn menu(ui: &mut Ui, cx: &mut Cx<'_>) {
    let name = cx.label("do-menu");
    let tokens = cx.tokens;
    ui.menu_button(RichText::new(name).color(tokens.act), |ui| {
        ui.set_min_width(260.0);
        for action in Action::PLAIN {
            let key = shown(ui, &action);
            let item = eframe::egui::Button::new(cx.label(action.key())).shortcut_text(key).frame(false);
            // Read aloud the key comes after what it does, not as part of its name.
            let response = ui.add(item).accessible_name(cx.label(action.key()));
            if response.clicked() {
                cx.wishes.push(Wish::Do(action));
                ui.close();
            }
        }
    });
}

/// The keys of an action as they are called on this machine.
fn shown(ui: &Ui, action: &Action) -> String {
    action.shortcut().map(|shortcut| ui.ctx().format_shortcut(&shortcut)).unwrap_or_default()
}
