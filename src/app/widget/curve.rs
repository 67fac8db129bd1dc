//! A temperature over the clock: the one place that knows the plotting library.

use eframe::egui::{Id, Ui, WidgetInfo, accesskit::Role};
use egui_plot::{AxisHints, Line, Plot, PlotPoints, Points};

use crate::app::cx::Cx;
use crate::paper::words::moment_of;
use crate::quantity::{Kind, print};

/// A curve of minutes since the epoch and °C.
#[derive(Debug, Clone, Copy)]
pub struct Curve<'a> {
    /// Its name.
    pub name: &'a str,
    /// Its points.
    pub points: &'a [[f64; 2]],
    /// Places of points that may be dragged up and down.
    pub dragged: &'a [usize],
}

/// How far from a point the mouse may take hold of it, in points of the screen.
const HOLD: f32 = 14.0;

/// Shows a curve; a point that was dragged and let go, with the temperature it was let go at.
pub fn curve(ui: &mut Ui, cx: &Cx<'_>, drawn: &Curve<'_>) -> Option<(usize, f64)> {
    let tokens = cx.tokens;
    let key = Id::unique(("curve", drawn.name));
    let held: Option<(usize, f64)> = ui.data(|data| data.get_temp(key));
    let mut points = drawn.points.to_vec();
    if let Some((place, at)) = held.filter(|(place, _)| *place < points.len()) {
        // Ramp's end and hold's end are one temperature.
        points[place][1] = at;
        if let Some(end) = points.get_mut(place + 1) {
            end[1] = at;
        }
    }
    let style = *cx.style;
    let zone = cx.setting.zone.clone();
    let clock = move |minutes: f64| moment_of(minutes, &zone).map_or_else(String::new, |at| format!("{:02}:{:02}", at.hour(), at.minute()));
    let degrees = move |c: f64| print(c, Kind::Temperature, &style).to_string();
    let x_axis = AxisHints::new_x().formatter(move |mark, _| clock(mark.value));
    let y_axis = AxisHints::new_y().formatter(move |mark, _| degrees(mark.value)).min_thickness(56.0);
    let plot = Plot::new(key)
        .height(200.0)
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .show_crosshair(false)
        .include_y(0.0)
        .x_grid_spacer(egui_plot::uniform_grid_spacer(|_| [360.0, 120.0, 60.0]))
        .custom_x_axes(vec![x_axis])
        .custom_y_axes(vec![y_axis]);
    let shown = plot.show(ui, |plot| {
        plot.line(Line::new(drawn.name, PlotPoints::from(points.clone())).color(tokens.heat).width(2.5));
        let handles: Vec<[f64; 2]> = drawn.dragged.iter().filter_map(|place| points.get(*place).copied()).collect();
        if !handles.is_empty() {
            plot.points(Points::new(drawn.name, PlotPoints::from(handles)).color(tokens.act).radius(5.0));
        }
        (plot.pointer_coordinate(), plot.response().clone())
    });
    let (pointer, response) = shown.inner;
    let spoken = drawn.name.to_owned();
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, spoken.clone()));
    let near = || {
        let mouse = response.interact_pointer_pos()?;
        let far = |place: &usize| -> Option<f32> {
            let [x, y] = *drawn.points.get(*place)?;
            Some(shown.transform.position_from_point(&egui_plot::PlotPoint::new(x, y)).distance(mouse))
        };
        let found: Option<(usize, f32)> =
            drawn.dragged.iter().filter_map(|place| Some((*place, far(place)?))).min_by(|(_, a), (_, b)| a.total_cmp(b));
        found.filter(|(_, far)| *far < HOLD).map(|(place, _)| place)
    };
    let y = pointer.map(|pointer| pointer.y);
    let held = match (held, y) {
        (Some((place, _)), Some(y)) if response.dragged() => Some((place, y)),
        (None, Some(y)) if response.drag_started() => near().map(|place| (place, y)),
        (held, _) => held,
    };
    if response.drag_stopped() {
        ui.data_mut(|data| data.remove::<(usize, f64)>(key));
        return held;
    }
    match held {
        Some(held) => {
            ui.data_mut(|data| data.insert_temp(key, held));
        }
        None => ui.data_mut(|data| data.remove::<(usize, f64)>(key)),
    }
    None
}
