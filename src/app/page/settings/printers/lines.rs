//! What a calibration says: the line of each axis, how sure it is, and how far each length lies off it.

use eframe::egui::{Id, Ui};

use super::gauges::axis_name;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::row::row;
use crate::app::widget::scatter::{Scatter, scatter};
use crate::calc::AxisFigures;

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, at: usize) {
    let Some(found) = cx.computed.report.calibrations.iter().find(|found| found.at == at).cloned() else { return };
    for axis in &found.axes {
        one(ui, cx, axis);
    }
    let book = &cx.computed.book;
    let points = |axis: &AxisFigures| -> Vec<[f64; 2]> {
        axis.rows.iter().filter_map(|row| Some([book.number(row.nominal)?, book.number(row.residual)?])).collect()
    };
    let series: Vec<Vec<[f64; 2]>> = crate::job::Axis::ALL
        .into_iter()
        .map(|wanted| found.axes.iter().find(|axis| axis.axis == wanted).map(points).unwrap_or_default())
        .collect();
    if series.iter().all(Vec::is_empty) {
        return;
    }
    ui.add_space(STEP);
    let id = Id::unique(("calibration residuals", at));
    scatter(ui, cx, &Scatter { id, name: cx.label("calibration-plot"), series, height: 150.0 });
    heading::says(ui, &cx.label("calibration-plot-says"), &cx.tokens.clone());
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, axis: &AxisFigures) {
    let tokens = cx.tokens;
    let words = cx.label(axis_name(axis.axis));
    heading::group(ui, &cx.say("calibration-axis", &[("axis", words.into())]), &tokens);
    let mut figures = vec![
        ("calibration-slope", axis.slope),
        ("calibration-slope-error", axis.slope_error),
        ("calibration-offset", axis.offset),
        ("calibration-offset-error", axis.offset_error),
        ("calibration-spread", axis.spread),
    ];
    if let Some([drawn, error]) = axis.drawn {
        figures.extend([("calibration-drawn", drawn), ("calibration-drawn-error", error)]);
    }
    for (key, id) in figures {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(190.0)));
    }
}
