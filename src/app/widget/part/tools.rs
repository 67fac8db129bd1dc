//! The tools above the picture: standard sides, the whole, and the cut.

use eframe::egui::{Button, RichText, Ui, WidgetInfo, accesskit::Role, vec2};

use super::hands::KEY_CUT;
use super::sight::Sight;
use super::{Dress, Part};
use crate::app::widget::button;
use crate::mesh::look::{Axis, StandardView};

const fn key(view: StandardView) -> &'static str {
    match view {
        StandardView::Front => "part-front",
        StandardView::Back => "part-back",
        StandardView::Left => "part-left",
        StandardView::Right => "part-right",
        StandardView::Top => "part-top",
        StandardView::Bottom => "part-bottom",
        StandardView::Corner => "part-corner",
    }
}

/// Draws the tools and does what they are asked for.
pub(super) fn tools(ui: &mut Ui, dress: &Dress, part: &Part<'_>, sight: &mut Sight) {
    ui.scope(|ui| {
        ui.set_max_width(part.size.x);
        ui.horizontal_wrapped(|ui| {
            for view in StandardView::ALL {
                if button::link(ui, &dress.texts.label(key(view)), &dress.tokens).clicked() {
                    sight.camera = sight.camera.seen_from(view);
                }
            }
            if button::link(ui, &dress.texts.label("part-fit"), &dress.tokens).clicked() {
                sight.camera = sight.camera.fitted();
            }
            cut(ui, dress, sight);
        });
    });
}

fn cut(ui: &mut Ui, dress: &Dress, sight: &mut Sight) {
    if chosen(ui, dress, "part-cut", sight.is_cut) {
        if sight.is_cut {
            sight.is_cut = false;
        } else {
            sight.cut_across(sight.cut.axis);
        }
    }
    if !sight.is_cut {
        return;
    }
    for (axis, key) in Axis::ALL.into_iter().zip(["part-cut-x", "part-cut-y", "part-cut-z"]) {
        if chosen(ui, dress, key, sight.cut.axis == axis) {
            sight.cut_across(axis);
        }
    }
    for (key, by) in [("part-cut-back", -KEY_CUT), ("part-cut-on", KEY_CUT)] {
        if button::link(ui, &dress.texts.label(key), &dress.tokens).clicked() {
            sight.move_cut(by);
        }
    }
    if button::link(ui, &dress.texts.label("part-cut-round"), &dress.tokens).clicked() {
        sight.turn_cut_round();
    }
}

/// A tool that is on or off; on, it stands on a ground of its own.
fn chosen(ui: &mut Ui, dress: &Dress, key: &str, on: bool) -> bool {
    let words = dress.texts.label(key);
    let button = Button::new(RichText::new(&words).color(dress.tokens.act)).min_size(vec2(24.0, 24.0));
    let response = ui.add(if on { button.fill(dress.tokens.act_ground) } else { button.frame(false) });
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, on, &words));
    response.clicked()
}
