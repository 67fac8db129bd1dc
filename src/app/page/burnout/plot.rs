//! The programme as a curve over the clock. Points of the studio's own programme are dragged up and down.

use eframe::egui::Ui;

use super::stages;
use crate::app::cx::Cx;
use crate::app::widget::curve::{Curve, curve};
use crate::calc::BurnoutFigures;
use crate::job::{Burnout, Programme};
use crate::quantity::Finite;

/// Shows it, where every point of it is known.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, figures: &BurnoutFigures) {
    let book = &cx.computed.book;
    let mut points = Vec::new();
    for (number, stage) in figures.stages.iter().enumerate() {
        let known = [stage.start, stage.end, stage.hold, stage.target].map(|id| book.number(id));
        let [Some(start), Some(end), Some(hold), Some(target)] = known else { return };
        if number == 0 {
            points.push([start, cold(load)]);
        }
        points.push([end - hold, target]);
        points.push([end, target]);
    }
    if points.is_empty() {
        return;
    }
    let own: Vec<usize> = match &load.programme {
        // The point where each ramp ends; the last one is the mould's, unless somebody said it.
        Some(Programme::Segments(segments)) => {
            (0..segments.len()).filter(|place| segments[*place].target_c.is_some()).map(|place| 2 * place + 1).collect()
        }
        _ => Vec::new(),
    };
    let name = cx.label("heat-plot");
    let drawn = Curve { name: &name, points: &points, dragged: &own };
    if let Some((point, target_c)) = curve(ui, cx, &drawn) {
        let place = point / 2;
        // Nobody drags to the degree.
        let target = Finite::new((target_c / 5.0).round() * 5.0);
        stages::one(cx, "edit-burnout-target", load, place, move |segment| segment.target_c = target);
    }
}

/// The kiln when it is loaded, for the foot of the first ramp.
fn cold(load: &Burnout) -> f64 {
    load.start_c.map_or(crate::calc::site::ROOM_DEFAULT.value, Finite::get)
}
