//! The people of the studio, by initials, and what they may answer for.

use eframe::egui::{Id, Ui};

use super::sections::heads;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::job::{Hand, Role};

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("hands-says"), &tokens);
    let (initials, role) = (cx.label("hands-initials"), cx.label("hands-role"));
    let roles = [Role::Apprentice, Role::Caster, Role::Master].map(|role| (role, cx.label(key(role))));
    if !cx.studio.hands.is_empty() {
        heads(ui, &[(initials.clone(), 90.0), (role.clone(), 160.0)], &tokens);
    }
    for (at, hand) in cx.studio.hands.iter().enumerate() {
        ui.horizontal(|ui| {
            if let Some(written) = text(ui, cx, Id::unique(("hand-initials", at)), &numbered(&initials, at), &hand.initials, 90.0) {
                edit(cx, at, move |hand| hand.initials = written);
            }
            let name = numbered(&role, at);
            let place = (Id::unique(("hand-role", at)), name.as_str(), 160.0);
            if let Some(Some(role)) = choice(ui, cx, place, Some(&hand.role), &roles, false) {
                edit(cx, at, move |hand| hand.role = role);
            }
            let name = numbered(&cx.label("row-take-out"), at);
            if button::plain(ui, &cx.label("row-take-out"), &tokens).accessible_name(name).clicked() {
                cx.edit_studio("edit-hand-out", move |studio| {
                    if at < studio.hands.len() {
                        studio.hands.remove(at);
                    }
                });
            }
        });
    }
    if button::plain(ui, &cx.label("hands-add"), &tokens).clicked() {
        cx.edit_studio("edit-hand-add", |studio| studio.hands.push(Hand { role: Role::Caster, ..Hand::default() }));
    }
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Hand) + 'static) {
    cx.edit_studio("edit-hand", move |studio| {
        if let Some(hand) = studio.hands.get_mut(at) {
            change(hand);
        }
    });
}

fn key(role: Role) -> &'static str {
    match role {
        Role::Apprentice => "role-apprentice",
        Role::Caster => "role-caster",
        Role::Master => "role-master",
    }
}
