//! Points over a line of nought: how far measured lengths lie off what was expected. Series are told apart by the shape of their points.

use eframe::egui::{FontId, Id, Rangef, Ui, WidgetInfo, accesskit::Role};
use egui_plot::{AxisHints, GridMark, HLine, HoverPosition, MarkerShape, Plot, PlotPoints, Points};

use super::curve::still;
use crate::app::cx::Cx;
use crate::app::theme::size;
use crate::quantity::{Kind, print};

/// Points as they are drawn.
#[derive(Debug, Clone)]
pub struct Scatter {
    /// Its id, from a stable key of the document.
    pub id: Id,
    /// What it shows, for those who hear the window.
    pub name: String,
    /// Up to three series of points: length in mm, distance in mm.
    pub series: Vec<Vec<[f64; 2]>>,
    /// Height of the drawing.
    pub height: f32,
}

/// Shapes of the series' points.
const SHAPES: [MarkerShape; 3] = [MarkerShape::Circle, MarkerShape::Square, MarkerShape::Up];

/// Shows them. The plot stands still under the wheel and the mouse.
pub fn scatter(ui: &mut Ui, cx: &Cx<'_>, drawn: &Scatter) {
    let tokens = cx.tokens;
    let all = || drawn.series.iter().flatten();
    let longest = all().map(|point| point[0]).fold(1.0, f64::max);
    // A plot of nothing but noughts still has a height.
    let farthest = all().map(|point| point[1].abs()).fold(0.001, f64::max);
    let (step_x, step_y) = (even(longest / 3.0), even(farthest / 1.5));
    let top = farthest * 1.25;
    let style = *cx.style;
    let axis = move |hints: AxisHints<'static>| {
        hints
            .formatter(move |mark, _| print(mark.value, Kind::Length, &style.finer()).to_string())
            .label_spacing(Rangef::new(12.0, 18.0))
            .tick_label_color(tokens.ink2)
            .tick_label_font(FontId::proportional(size::SMALL))
    };
    let series = drawn.series.clone();
    let shown = still(Plot::new(drawn.id))
        .width(ui.available_width().min(560.0))
        .height(drawn.height)
        .grid_color(tokens.rule)
        .grid_fade(0.0)
        .grid_spacing(Rangef::new(4.0, 24.0))
        .custom_x_axes(vec![axis(AxisHints::new_x())])
        .custom_y_axes(vec![axis(AxisHints::new_y()).min_thickness(64.0)])
        .x_grid_spacer(move |_| marks(0, 6, step_x))
        .y_grid_spacer(move |_| marks(-2, 2, step_y))
        .label_formatter(move |position: &HoverPosition<'_>| match position {
            HoverPosition::NearDataPoint { position, .. } => {
                let words = |value| print(value, Kind::Length, &style.finer()).to_string();
                Some(format!("{}\n{}", words(position.x), words(position.y)))
            }
            HoverPosition::Elsewhere { .. } => None,
        })
        .show(ui, move |plot| {
            plot.set_plot_bounds_x(-0.04 * longest..=1.06 * longest);
            plot.set_plot_bounds_y(-top..=top);
            plot.hline(HLine::new("", 0.0).color(tokens.ink3).width(1.0).allow_hover(false));
            let colours = [tokens.act, tokens.core, tokens.heat];
            for ((points, shape), colour) in series.into_iter().zip(SHAPES).zip(colours) {
                plot.points(Points::new("", PlotPoints::new(points)).shape(shape).radius(4.5).color(colour));
            }
        });
    shown.response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &drawn.name));
}

fn marks(first: i32, last: i32, step: f64) -> Vec<GridMark> {
    (first..=last).map(|number| GridMark { value: f64::from(number) * step, step_size: step }).collect()
}

/// The largest of 1, 2 and 5 times a power of ten that is not above a length.
fn even(length: f64) -> f64 {
    let power = 10_f64.powf(length.log10().floor());
    [5.0, 2.0].into_iter().map(|by| by * power).find(|step| *step <= length).unwrap_or(power)
}

#[cfg(test)]
mod tests {
    use super::even;

    #[test]
    fn marks_stand_at_even_lengths() {
        for (length, step) in [(20.0, 20.0), (19.9, 10.0), (0.021, 0.02), (0.0067, 0.005), (1.0, 1.0)] {
            assert!((even(length) - step).abs() < 1e-12 * step, "{length}: {}", even(length));
        }
    }
}
