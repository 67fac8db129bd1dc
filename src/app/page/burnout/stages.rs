//! The stages of a programme: what was asked for at the left, what the kiln makes of it at the right.

use eframe::egui::{Id, Label, RichText, Ui, vec2};

use super::change;
use crate::app::cx::Cx;
use crate::app::theme::ROW;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, number};
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::calc::{BurnoutFigures, StageFigures};
use crate::job::{Burnout, Programme, Segment};
use crate::paper::words::finding_sentence;
use crate::quantity::{Finite, Kind};

/// Widths of number, target, ramp, hold, begins, ends.
const COLUMNS: [f32; 6] = [18.0, 80.0, 78.0, 84.0, 116.0, 116.0];
/// Width of a rate.
const RATE: f32 = 84.0;
/// From here up the rate of a stage of the studio's own stands in its row, otherwise under it.
const WIDE: f32 = 690.0;

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, figures: &BurnoutFigures) {
    let tokens = cx.tokens;
    if figures.stages.is_empty() {
        heading::says(ui, &cx.label("heat-no-programme"), &tokens);
        return;
    }
    ui.spacing_mut().item_spacing.x = 4.0;
    let wide = ui.available_width() >= WIDE;
    let own = match &load.programme {
        Some(Programme::Segments(segments)) => Some(segments),
        _ => None,
    };
    ui.horizontal(|ui| {
        for (key, width) in ["", "heat-to", "heat-ramp", "heat-hold", "heat-begins", "heat-ends"].into_iter().zip(COLUMNS) {
            head(ui, cx, key, width);
        }
        if own.is_some() && wide {
            head(ui, cx, "heat-rate", RATE);
        }
    });
    for (place, stage) in figures.stages.iter().enumerate() {
        let segment = own.and_then(|segments| Some((segments.get(place)?, segments.len())));
        one_row(ui, cx, load, (place, stage), segment, wide);
        wrong(ui, cx, stage);
    }
    let Some(many) = own.map(Vec::len) else { return };
    ui.horizontal(|ui| {
        if button::plain(ui, &cx.label("heat-add-stage"), &tokens).clicked() {
            segments(cx, "edit-burnout-stage", load, move |segments| segments.insert(many.saturating_sub(1), Segment::default()));
        }
    });
}

/// A stage: what is asked of it, where it is the studio's own, and what the kiln makes of it.
fn one_row(
    ui: &mut Ui,
    cx: &mut Cx<'_>,
    load: &Burnout,
    (place, stage): (usize, &StageFigures),
    segment: Option<(&Segment, usize)>,
    wide: bool,
) {
    let ink = cx.tokens.ink2;
    ui.horizontal(|ui| {
        ui.add_sized(vec2(COLUMNS[0], ROW), Label::new(RichText::new(format!("{}", place + 1)).color(ink)));
        match segment {
            Some((segment, _)) => typed(ui, cx, load, place, segment, stage),
            None => computed(ui, cx, stage),
        }
        figure(ui, cx, stage.start, Look { right: false, size: 13.0, ..Look::ROW.width(COLUMNS[4]) });
        figure(ui, cx, stage.end, Look { right: false, size: 13.0, ..Look::ROW.width(COLUMNS[5]) });
        if let Some((segment, many)) = segment.filter(|_| wide) {
            rest(ui, cx, load, (place, many), segment);
        }
    });
    if let Some((segment, many)) = segment.filter(|_| !wide) {
        ui.horizontal(|ui| {
            ui.add_space(COLUMNS[0] + COLUMNS[1] + 8.0);
            head(ui, cx, "heat-rate", COLUMNS[2]);
            rest(ui, cx, load, (place, many), segment);
        });
    }
}

/// What the kiln does not do as it is asked, under the stage itself.
fn wrong(ui: &mut Ui, cx: &Cx<'_>, stage: &StageFigures) {
    for found in cx.computed.at(stage.place).filter(|found| found.accepted.is_none()) {
        ui.horizontal_top(|ui| {
            ui.add_space(COLUMNS[0]);
            let words = finding_sentence(found, &cx.computed.book, &cx.words());
            ui.add(Label::new(RichText::new(words).size(12.0).color(cx.tokens.caution)).wrap());
        });
    }
}

fn head(ui: &mut Ui, cx: &Cx<'_>, key: &str, width: f32) {
    let words = if key.is_empty() { String::new() } else { cx.label(key) };
    ui.allocate_ui(vec2(width, 18.0), |ui| {
        ui.set_min_width(width);
        ui.add(Label::new(RichText::new(words).size(12.0).color(cx.tokens.ink2)).truncate());
    });
}

/// The rate a ramp is asked to take, and the way to take the stage out.
fn rest(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, (place, many): (usize, usize), segment: &Segment) {
    let (id, tokens) = (load.id, cx.tokens);
    let name = numbered(&cx.label("heat-rate"), place);
    let field = Number::new(Id::unique(("stage-rate", id.0, place)), &name, Kind::TemperatureRate)
        .now(segment.ramp_k_h.map(Finite::get))
        .width(RATE);
    if let Some(rate) = number(ui, cx, &field) {
        one(cx, "edit-burnout-ramp", load, place, move |segment| segment.ramp_k_h = rate);
    }
    let words = cx.label("heat-drop-stage");
    if many > 1 && button::link(ui, &words, &tokens).accessible_name(numbered(&words, place)).clicked() {
        segments(cx, "edit-burnout-stage", load, move |segments| {
            if place < segments.len() {
                segments.remove(place);
            }
        });
    }
}

fn computed(ui: &mut Ui, cx: &mut Cx<'_>, stage: &StageFigures) {
    figure(ui, cx, stage.target, Look::ROW.width(COLUMNS[1]));
    figure(ui, cx, stage.ramp, Look::ROW.width(COLUMNS[2]));
    figure(ui, cx, stage.hold, Look::ROW.width(COLUMNS[3]));
}

fn typed(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, place: usize, segment: &Segment, stage: &StageFigures) {
    let id = load.id;
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), place);
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
