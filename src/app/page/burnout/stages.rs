//! The stages of a programme: what was asked for at the left, what the kiln makes of it at the right.

use eframe::egui::{Id, Label, RichText, Ui, vec2};

use super::change;
use crate::app::cx::Cx;
use crate::app::theme::ROW;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, number};
use crate::app::widget::{button, heading};
use crate::calc::{BurnoutFigures, StageFigures};
use crate::job::{Burnout, Programme, Segment};
use crate::quantity::{Finite, Kind};

/// Widths of number, target, ramp, hold, begins, ends.
const COLUMNS: [f32; 6] = [18.0, 84.0, 78.0, 88.0, 107.0, 107.0];

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, figures: &BurnoutFigures) {
    let tokens = cx.tokens;
    if figures.stages.is_empty() {
        heading::says(ui, &cx.label("heat-no-programme"), &tokens);
        return;
    }
    ui.spacing_mut().item_spacing.x = 4.0;
    ui.horizontal(|ui| {
        for (key, width) in ["", "heat-to", "heat-ramp", "heat-hold", "heat-begins", "heat-ends"].into_iter().zip(COLUMNS) {
            let words = if key.is_empty() { String::new() } else { cx.label(key) };
            ui.allocate_ui(vec2(width, 18.0), |ui| {
                ui.set_min_width(width);
                ui.add(Label::new(RichText::new(words).size(12.0).color(tokens.ink2)).truncate());
            });
        }
    });
    let own = match &load.programme {
        Some(Programme::Segments(segments)) => Some(segments),
        _ => None,
    };
    for (place, stage) in figures.stages.iter().enumerate() {
        ui.horizontal(|ui| {
            ui.add_sized(vec2(COLUMNS[0], ROW), Label::new(RichText::new(format!("{}", place + 1)).color(tokens.ink2)));
            match own.and_then(|segments| segments.get(place)) {
                Some(segment) => typed(ui, cx, load, place, segment, stage),
                None => computed(ui, cx, stage),
            }
            figure(ui, cx, stage.start, Look { right: false, size: 13.0, ..Look::ROW.width(COLUMNS[4]) });
            figure(ui, cx, stage.end, Look { right: false, size: 13.0, ..Look::ROW.width(COLUMNS[5]) });
        });
    }
    let Some(many) = own.map(Vec::len) else { return };
    ui.horizontal(|ui| {
        if button::plain(ui, &cx.label("heat-add-stage"), &tokens).clicked() {
            segments(cx, "edit-burnout-stage", load, move |segments| segments.insert(many.saturating_sub(1), Segment::default()));
        }
        if many > 1 && button::plain(ui, &cx.label("heat-drop-stage"), &tokens).clicked() {
            segments(cx, "edit-burnout-stage", load, |segments| {
                segments.pop();
            });
        }
    });
}

fn computed(ui: &mut Ui, cx: &mut Cx<'_>, stage: &StageFigures) {
    figure(ui, cx, stage.target, Look::ROW.width(COLUMNS[1]));
    figure(ui, cx, stage.ramp, Look::ROW.width(COLUMNS[2]));
    figure(ui, cx, stage.hold, Look::ROW.width(COLUMNS[3]));
}

fn typed(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, place: usize, segment: &Segment, stage: &StageFigures) {
    let id = load.id;
    let named = |cx: &Cx<'_>, key: &str| format!("{} {}", cx.label(key), place + 1);
    let name = named(cx, "heat-to");
    let default = cx.computed.book.number(stage.target).filter(|_| segment.target_c.is_none());
    let field = Number::new(Id::unique(("stage-target", id.0, place)), &name, Kind::Temperature)
        .now(segment.target_c.map(Finite::get))
        .default(default)
        .width(COLUMNS[1]);
    if let Some(target) = number(ui, cx, &field) {
        one(cx, "edit-burnout-target", load, place, move |segment| segment.target_c = target);
    }
    let name = named(cx, "heat-ramp");
    let default = cx.computed.book.number(stage.ramp);
    let field = Number::new(Id::unique(("stage-ramp", id.0, place)), &name, Kind::Duration)
        .now(segment.ramp_min.map(Finite::get))
        .default(default)
        .width(COLUMNS[2]);
    if let Some(ramp) = number(ui, cx, &field) {
        one(cx, "edit-burnout-ramp", load, place, move |segment| segment.ramp_min = ramp);
    }
    let name = named(cx, "heat-hold");
    let field =
        Number::new(Id::unique(("stage-hold", id.0, place)), &name, Kind::Duration).now(Some(segment.hold_min.get())).width(COLUMNS[3]);
    if let Some(hold) = number(ui, cx, &field) {
        one(cx, "edit-burnout-hold", load, place, move |segment| segment.hold_min = hold.unwrap_or_default());
    }
}

fn segments(cx: &mut Cx<'_>, key: &str, load: &Burnout, with: impl FnOnce(&mut Vec<Segment>) + 'static) {
    change(cx, key, load.id, move |load| {
        if let Some(Programme::Segments(segments)) = &mut load.programme {
            with(segments);
        }
    });
}

/// Changes one segment.
pub fn one(cx: &mut Cx<'_>, key: &str, load: &Burnout, place: usize, with: impl FnOnce(&mut Segment) + 'static) {
    segments(cx, key, load, move |segments| {
        if let Some(segment) = segments.get_mut(place) {
            with(segment);
        }
    });
}
