//! The measured lengths of a calibration, row by row, each with its distance from the line.

use eframe::egui::{Id, Ui};

use super::calibrations::edit;
use crate::app::cx::Cx;
use crate::app::page::settings::sections::heads;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, number};
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::job::{Axis, Calibration, Gauge};
use crate::quantity::{Finite, Kind};

/// Widths of the columns.
const COLUMNS: [(&str, f32); 4] = [("gauge-axis", 68.0), ("gauge-nominal", 84.0), ("gauge-measured", 84.0), ("gauge-residual", 104.0)];

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, calibration: &Calibration) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("gauges"), &tokens);
    if !calibration.rows.is_empty() {
        heads(ui, &COLUMNS.map(|(key, width)| (cx.label(key), width)), &tokens);
    }
    for (place, gauge) in calibration.rows.iter().enumerate() {
        ui.horizontal(|ui| one(ui, cx, (at, place), gauge));
    }
    if button::plain(ui, &cx.label("gauge-add"), &tokens).clicked() {
        // The next length is most often measured along the same axis.
        let axis = calibration.rows.last().map(|gauge| gauge.axis).unwrap_or_default();
        edit(cx, at, move |calibration| calibration.rows.push(Gauge { axis, ..Gauge::default() }));
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, (at, place): (usize, usize), gauge: &Gauge) {
    let [(axis_key, axis_width), (nominal_key, nominal_width), (measured_key, measured_width), (_, residual_width)] = COLUMNS;
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), place);
    let axes = Axis::ALL.map(|axis| (axis, cx.label(axis_name(axis))));
    let field = (Id::unique((axis_key, at, place)), &*named(cx, axis_key), axis_width);
    if let Some(Some(axis)) = choice(ui, cx, field, Some(&gauge.axis), &axes, false) {
        change(cx, at, place, move |gauge| gauge.axis = axis);
    }
    let name = named(cx, nominal_key);
    let field = Number::new(Id::unique((nominal_key, at, place)), &name, Kind::Length);
    if let Some(length) = number(ui, cx, &field.now(gauge.nominal_mm.map(Finite::get)).width(nominal_width)) {
        change(cx, at, place, move |gauge| gauge.nominal_mm = length);
    }
    let name = named(cx, measured_key);
    let field = Number::new(Id::unique((measured_key, at, place)), &name, Kind::Length);
    if let Some(length) = number(ui, cx, &field.now(gauge.measured_mm.map(Finite::get)).width(measured_width)) {
        change(cx, at, place, move |gauge| gauge.measured_mm = length);
    }
    let lines = cx.computed.report.calibrations.iter().find(|found| found.at == at);
    let rows = lines.into_iter().flat_map(|lines| &lines.axes).flat_map(|axis| &axis.rows);
    let residual = rows.into_iter().find(|found| found.row == place).map(|found| found.residual);
    match residual {
        Some(residual) => {
            figure(ui, cx, residual, Look::ROW.width(residual_width));
        }
        None => ui.add_space(residual_width + ui.spacing().item_spacing.x),
    }
    let name = numbered(&cx.label("gauge-take-out"), place);
    if button::link(ui, &cx.label("row-take-out"), &cx.tokens.clone()).accessible_name(name).clicked() {
        edit(cx, at, move |calibration| {
            if place < calibration.rows.len() {
                calibration.rows.remove(place);
            }
        });
    }
}

/// The key of an axis's name.
pub fn axis_name(axis: Axis) -> &'static str {
    match axis {
        Axis::X => "axis-x",
        Axis::Y => "axis-y",
        Axis::Z => "axis-z",
    }
}

fn change(cx: &mut Cx<'_>, at: usize, place: usize, change: impl FnOnce(&mut Gauge) + 'static) {
    edit(cx, at, move |calibration| {
        if let Some(gauge) = calibration.rows.get_mut(place) {
            change(gauge);
        }
    });
}
