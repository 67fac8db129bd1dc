//! Somebody else has the open batch: who, and what can be done about it.

use eframe::egui::{Frame, Label, RichText, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::locks::Told;
use crate::app::widget::button;
use crate::paper::words::one_line;

/// Shows it over the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, told: &Told, only_reads: bool) {
    let tokens = cx.tokens;
    let who = if told.who.is_empty() { cx.label("lock-somebody") } else { one_line(&told.who) };
    let key = if told.silent { "lock-silent" } else { "lock-theirs" };
    Frame::new().fill(tokens.act_ground).corner_radius(3).inner_margin(8).show(ui, |ui| {
        ui.add(Label::new(RichText::new(cx.say(key, &[("who", who.into())])).color(tokens.ink)).wrap());
        if only_reads {
            ui.add(Label::new(RichText::new(cx.label("lock-only-read")).color(tokens.ink2)).wrap());
        }
        ui.horizontal_wrapped(|ui| {
            if !only_reads && button::link(ui, &cx.label("lock-read"), &tokens).clicked() {
                cx.act(Action::OnlyRead);
            }
            let too = if told.silent { "lock-take" } else { "lock-too" };
            if button::link(ui, &cx.label(too), &tokens).clicked() {
                cx.act(Action::WorkToo);
            }
        });
    });
    ui.add_space(8.0);
}
