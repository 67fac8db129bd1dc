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

/// Below this width what stands in the menu as well gives way.
const NARROW: f32 = 860.0;
/// What the finder and the bench view take at the right.
const RIGHT: f32 = 400.0;
/// A usual sign, in points.
const WIDE: f32 = 8.0;

/// Shows the top line.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, top: &Top<'_>) {
    let tokens = cx.tokens;
    // Large type on a small screen.
    let width = ui.max_rect().width();
    let narrow = width < NARROW;
    let title_room = if narrow { 150.0 } else { (280.0 - (1280.0 - width).max(0.0)).max(150.0) };
    ui.horizontal_centered(|ui| {
        ui.add_space(8.0);
        menu(ui, cx);
        if button::alarm(ui, &cx.label("do-what-now"), &tokens).on_hover_text(shown(ui, &Action::WhatNow)).clicked() {
            cx.act(Action::WhatNow);
        }
        let title = if top.title.is_empty() { cx.label("top-untitled") } else { top.title.clone() };
        ui.scope(|ui| {
            ui.set_max_width(title_room);
            ui.add(Label::new(RichText::new(title).family(bold()).size(15.0)).truncate());
        });
        ui.label(RichText::new(cx.label(top.state)).size(12.0).color(tokens.ink2));
        ui.add_space(8.0);
        let room = if narrow { 0 } else { room(ui.available_width(), top) };
        step(ui, cx, &Action::Undo, "do-undo-what", top.undo, room);
        step(ui, cx, &Action::Redo, "do-redo-what", top.redo, room);
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

/// Signs that undo and redo may have, so that they leave the right of the line its room.
fn room(free: f32, top: &Top<'_>) -> usize {
    let named = [top.undo, top.redo].iter().flatten().count().max(1);
    #[allow(clippy::cast_precision_loss, reason = "one or two")]
    let each = (free - RIGHT - 80.0 * (2 - named) as f32) / named as f32;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a line has few signs")]
    let signs = ((each - 36.0) / WIDE).clamp(6.0, 34.0) as usize;
    signs
}

fn step(ui: &mut Ui, cx: &mut Cx<'_>, action: &Action, key: &str, what: Option<&str>, room: usize) {
    let words = what.map_or_else(|| cx.label(action.key()), |what| cx.say(key, &[("what", what.into())]));
    let short: String = if room == 0 {
        cx.label(action.key())
    } else if words.chars().count() > room {
        words.chars().take(room - 1).chain(['…']).collect()
    } else {
        words.clone()
    };
    if button::outlined(ui, &short, &cx.tokens, what.is_some()).on_hover_text(&words).accessible_name(words).clicked() {
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
