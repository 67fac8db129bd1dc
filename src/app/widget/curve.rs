//! A temperature over the clock: the one place that knows the plotting library. The plot stands still under the wheel and the mouse; only
//! the points of a programme of the studio's own can be taken hold of, or moved with the arrow keys.

use eframe::egui::{
    CursorIcon, EventFilter, FontId, Id, Key, Modifiers, Rangef, Rect, Response, Sense, Stroke, Ui, Vec2, WidgetInfo, accesskit::Role,
    pos2, text::LayoutJob, text::TextWrapping,
};
use egui_plot::{
    AxisHints, FilledArea, GridInput, GridMark, HLine, HoverPosition, Line, LineStyle, Plot, PlotPoint, PlotPoints, PlotTransform, PlotUi,
};
use jiff::tz::TimeZone;

use crate::app::cx::Cx;
use crate::app::theme::{Tokens, bold, size};
use crate::paper::words::{moment_of, moment_words};
use crate::quantity::{Kind, Style, print};
use crate::texts::Texts;

/// One stage of a programme: the way to a temperature, and the time it is held.
#[derive(Debug, Clone)]
pub struct Stage {
    /// When its temperature is reached, in minutes since 1970.
    pub there: f64,
    /// When it is over.
    pub end: f64,
    /// The temperature in °C.
    pub target: f64,
    /// What its point is called, where it can be taken hold of.
    pub handle: Option<String>,
}

/// A programme as it is drawn.
#[derive(Debug, Clone)]
pub struct Curve {
    /// Its id, from a stable key of the document.
    pub id: Id,
    /// What it shows, for those who hear the window.
    pub name: String,
    /// When it begins and how warm the kiln is then.
    pub start: [f64; 2],
    /// Its stages.
    pub stages: Vec<Stage>,
    /// A temperature that is not to be passed, and its words.
    pub ceiling: Option<(f64, String)>,
    /// What the mould feels, where that is known.
    pub under: Option<Under>,
    /// Temperatures between which something in the mould changes its size at once, in °C.
    pub bands: Vec<[f64; 2]>,
    /// What the kiln really did: minutes since 1970 and °C; empty where nobody knows.
    pub real: Vec<[f64; 2]>,
    /// Height of the drawing.
    pub height: f32,
}

/// What a mould feels: minutes since 1970 and °C.
#[derive(Debug, Clone)]
pub struct Under {
    /// The wall, as is likely.
    pub wall: Vec<[f64; 2]>,
    /// The core, as is likely.
    pub core: Vec<[f64; 2]>,
    /// The outermost cavity, as is likely.
    pub cavity: Vec<[f64; 2]>,
    /// The core where the mould conducts badly.
    pub low: Vec<[f64; 2]>,
    /// The core where it conducts well; at the same times.
    pub high: Vec<[f64; 2]>,
}

impl Under {
    fn draw(self, plot: &mut PlotUi<'_>, tokens: &Tokens) {
        let at = |points: &[[f64; 2]], axis: usize| points.iter().map(|point| point[axis]).collect::<Vec<f64>>();
        if self.low.len() == self.high.len() {
            let (low, high) = (at(&self.low, 1), at(&self.high, 1));
            let least: Vec<f64> = low.iter().zip(&high).map(|(low, high)| low.min(*high)).collect();
            let most: Vec<f64> = low.iter().zip(&high).map(|(low, high)| low.max(*high)).collect();
            let area =
                FilledArea::new("", &at(&self.low, 0), &least, &most).fill_color(tokens.core.gamma_multiply(0.22)).allow_hover(false);
            plot.add(area);
        }
        plot.line(Line::new("", PlotPoints::new(self.wall)).color(tokens.ink3).width(1.0));
        plot.line(Line::new("", PlotPoints::new(self.cavity)).color(tokens.act).width(1.5));
        plot.line(Line::new("", PlotPoints::new(self.core)).color(tokens.core).width(2.0));
    }
}

/// A point is moved in steps of so many °C: nobody sets a kiln to the degree by hand.
const STEP_C: f64 = 5.0;
/// And stays within these.
const RANGE_C: (f64, f64) = (20.0, 1200.0);

/// Shows a programme. `Some` is a stage, from 0, whose point was moved and let go, and the temperature it was moved to.
pub fn curve(ui: &mut Ui, cx: &Cx<'_>, curve: &Curve) -> Option<(usize, f64)> {
    let held_id = curve.id.with("held");
    let mut held: Option<(usize, f64)> = ui.data(|data| data.get_temp(held_id));
    let shown = |(place, stage): (usize, &Stage)| held.filter(|(at, _)| *at == place).map_or(stage.target, |(_, target)| target);
    let targets: Vec<f64> = curve.stages.iter().enumerate().map(shown).collect();
    let (response, transform) = plot(ui, cx, curve, &targets);
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &curve.name));
    if let Some((ceiling, words)) = &curve.ceiling {
        ceiling_words(ui, cx, &transform, *ceiling, words);
    }
    let mut moved = None;
    for (place, (stage, target)) in curve.stages.iter().zip(&targets).enumerate() {
        let Some(name) = &stage.handle else { continue };
        let at = transform.position_from_point(&PlotPoint::new(stage.there, *target));
        match handle(ui, cx, curve.id.with(("point", place)), Rect::from_center_size(at, Vec2::splat(18.0)), name) {
            Some(Found::Held(y)) => held = Some((place, whole(transform.value_from_position(pos2(at.x, y)).y))),
            Some(Found::LetGo) => moved = held.take().filter(|(_, target)| (stage.target - target).abs() > 0.01),
            Some(Found::Stepped(steps)) => moved = Some((place, whole(STEP_C.mul_add(steps, stage.target)))),
            None => {}
        }
    }
    ui.data_mut(|data| match held {
        Some(held) => {
            data.insert_temp(held_id, held);
        }
        None => data.remove::<(usize, f64)>(held_id),
    });
    moved
}

fn whole(c: f64) -> f64 {
    ((c / STEP_C).round() * STEP_C).clamp(RANGE_C.0, RANGE_C.1)
}

/// What happened to a point.
enum Found {
    /// It is held at this height of the screen.
    Held(f32),
    /// It was let go.
    LetGo,
    /// It was moved by keys.
    Stepped(f64),
}

fn handle(ui: &Ui, cx: &Cx<'_>, id: Id, rect: Rect, name: &str) -> Option<Found> {
    let tokens = &cx.tokens;
    let response = ui.interact(rect, id, Sense::drag()).on_hover_cursor(CursorIcon::ResizeVertical);
    response.widget_info(|| WidgetInfo::labeled(Role::Slider, true, name));
    let lively = response.hovered() || response.dragged() || response.has_focus();
    let painter = ui.painter();
    painter.circle(rect.center(), if lively { 6.5 } else { 5.0 }, tokens.field, Stroke::new(2.0, tokens.heat));
    if response.has_focus() {
        painter.circle_stroke(rect.center(), 9.0, Stroke::new(2.0, tokens.act));
        let filter = EventFilter { vertical_arrows: true, ..EventFilter::default() };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
        for (key, steps) in [(Key::ArrowUp, 1.0), (Key::ArrowDown, -1.0)] {
            if ui.input_mut(|input| input.consume_key(Modifiers::NONE, key)) {
                return Some(Found::Stepped(steps));
            }
        }
    }
    if response.drag_stopped() {
        return Some(Found::LetGo);
    }
    let pointer = response.interact_pointer_pos().filter(|_| response.dragged())?;
    Some(Found::Held(pointer.y))
}

fn plot(ui: &mut Ui, cx: &Cx<'_>, curve: &Curve, targets: &[f64]) -> (Response, PlotTransform) {
    let tokens = cx.tokens;
    let mut points = vec![curve.start];
    for (stage, target) in curve.stages.iter().zip(targets) {
        points.extend([[stage.there, *target], [stage.end, *target]]);
    }
    let ends = |pick: fn(f64, f64) -> f64, from: f64| curve.real.iter().map(|point| point[0]).fold(from, pick);
    let first = ends(f64::min, curve.start[0]);
    let last = ends(f64::max, curve.stages.last().map_or(first, |stage| stage.end).max(first + 1.0));
    let aside = (last - first) * 0.02;
    let ceiling = curve.ceiling.as_ref().map(|(ceiling, _)| *ceiling);
    let top = points.iter().chain(&curve.real).map(|point| point[1]).chain(ceiling).fold(100.0, f64::max) * 1.09;
    let width = ui.available_width();
    let hours = hours_apart(last - first, width - 60.0);
    let midnight = midnight_before(first, &cx.setting.zone);
    let style = *cx.style;
    let under = curve.under.clone();
    let real = curve.real.clone();
    let bands = curve.bands.clone();
    let shown = still(Plot::new(curve.id))
        .width(width)
        .height(curve.height)
        .grid_color(tokens.rule)
        .grid_fade(0.0)
        .grid_spacing(Rangef::new(4.0, 24.0))
        .custom_x_axes(vec![hour_axis(cx)])
        .custom_y_axes(vec![degree_axis(cx)])
        .x_grid_spacer(move |input| hour_marks(&input, midnight, hours))
        .y_grid_spacer(move |input| degree_marks(&input, &style))
        .label_formatter(hover(cx))
        .show(ui, move |plot| {
            plot.set_plot_bounds_x(first - aside..=last + aside);
            plot.set_plot_bounds_y(0.0..=top);
            for [low, high] in bands {
                let (times, low, high) = ([first - aside, last + aside], [low, low], [high, high]);
                plot.add(FilledArea::new("", &times, &low, &high).fill_color(tokens.rule.gamma_multiply(0.7)).allow_hover(false));
            }
            if let Some(ceiling) = ceiling {
                let line = HLine::new("", ceiling).color(tokens.caution).width(1.5).style(LineStyle::dashed_loose()).allow_hover(false);
                plot.hline(line);
            }
            // What was planned steps back where it is known what was.
            let planned = Line::new("", PlotPoints::new(points)).color(tokens.heat);
            plot.line(if real.is_empty() { planned.width(2.5) } else { planned.width(1.5).style(LineStyle::dashed_dense()) });
            if !real.is_empty() {
                plot.line(Line::new("", PlotPoints::new(real)).color(tokens.ink).width(2.0));
            }
            if let Some(under) = under {
                under.draw(plot, &tokens);
            }
        });
    (shown.response, shown.transform)
}

/// A plot that neither wheel nor mouse can move.
pub(super) fn still(plot: Plot<'_>) -> Plot<'_> {
    plot.allow_zoom(false)
        .allow_scroll(false)
        .allow_drag(false)
        .allow_boxed_zoom(false)
        .allow_axis_zoom_drag(false)
        .allow_double_click_reset(false)
        .auto_bounds(false)
        .sense(Sense::hover())
        .show_x(false)
        .show_y(false)
}

fn hour_axis(cx: &Cx<'_>) -> AxisHints<'static> {
    let (zone, texts) = (cx.setting.zone.clone(), cx.texts);
    AxisHints::new_x()
        .formatter(move |mark, _| clock(mark.value, &zone, texts))
        .label_spacing(Rangef::new(20.0, 30.0))
        .tick_label_color(cx.tokens.ink2)
        .tick_label_font(FontId::proportional(size::SMALL))
}

fn degree_axis(cx: &Cx<'_>) -> AxisHints<'static> {
    let style = *cx.style;
    AxisHints::new_y()
        .formatter(move |mark, _| print(mark.value, Kind::Temperature, &style).to_string())
        .label_spacing(Rangef::new(12.0, 18.0))
        .min_thickness(52.0)
        .tick_label_color(cx.tokens.ink2)
        .tick_label_font(FontId::proportional(size::SMALL))
}

/// Moment and temperature under the mouse.
fn hover(cx: &Cx<'_>) -> impl Fn(&HoverPosition<'_>) -> Option<String> + 'static {
    let (zone, texts, style) = (cx.setting.zone.clone(), cx.texts, *cx.style);
    move |position| match position {
        HoverPosition::NearDataPoint { position, .. } => {
            let words = print(position.y, Kind::Temperature, &style).to_string();
            moment_of(position.x, &zone).map(|at| format!("{}\n{words}", moment_words(at, texts)))
        }
        HoverPosition::Elsewhere { .. } => None,
    }
}

/// The words of the ceiling's line, under it at the left, where the kiln is still cold.
fn ceiling_words(ui: &Ui, cx: &Cx<'_>, transform: &PlotTransform, ceiling: f64, words: &str) {
    let frame = transform.frame();
    let mut job = LayoutJob::simple_singleline(words.to_owned(), FontId::new(size::SMALL, bold()), cx.tokens.caution);
    job.wrap = TextWrapping::truncate_at_width(frame.width() - 16.0);
    let galley = ui.fonts_mut(|fonts| fonts.layout_job(job));
    let at = pos2(frame.left() + 8.0, transform.position_from_point_y(ceiling) + 3.0);
    ui.painter().galley(at, galley, cx.tokens.caution);
}

/// Hours between two marks, so that their words have room.
fn hours_apart(minutes: f64, width: f32) -> f64 {
    let room = f64::from((width / 64.0).max(2.0));
    [1.0, 2.0, 3.0, 4.0, 6.0, 12.0].into_iter().find(|hours| minutes / 60.0 / hours <= room).unwrap_or(24.0)
}

/// The midnight of the wall's clock before a moment, in minutes since 1970.
fn midnight_before(minutes: f64, zone: &TimeZone) -> f64 {
    minutes - moment_of(minutes, zone).map_or(0.0, |at| 60.0 * f64::from(at.hour()) + f64::from(at.minute()))
}

fn hour_marks(input: &GridInput, midnight: f64, hours: f64) -> Vec<GridMark> {
    let step = 60.0 * hours;
    let first = ((input.bounds.0 - midnight) / step).ceil();
    (0..200_u32)
        .map(|number| (first + f64::from(number)).mul_add(step, midnight))
        .take_while(|value| *value <= input.bounds.1)
        .map(|value| GridMark { value, step_size: step })
        .collect()
}

/// Marks at whole hundreds of the unit that is printed.
fn degree_marks(input: &GridInput, style: &Style) -> Vec<GridMark> {
    let unit = style.units.of(Kind::Temperature);
    let step = if unit.symbol == "°F" { 200.0 } else { 100.0 };
    (0..30_u32)
        .map(|number| unit.to_base(step * f64::from(number)))
        .skip_while(|value| *value < input.bounds.0)
        .take_while(|value| *value <= input.bounds.1)
        .map(|value| GridMark { value, step_size: 100.0 })
        .collect()
}

/// The clock on the wall at a mark; at midnight the day that begins.
fn clock(minutes: f64, zone: &TimeZone, texts: &Texts) -> String {
    let Some(at) = moment_of(minutes, zone) else { return String::new() };
    if at.hour() == 0 && at.minute() == 0 {
        return texts.label(&format!("day-{}", at.weekday().to_monday_one_offset()));
    }
    format!("{:02}:{:02}", at.hour(), at.minute())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_point_stops_at_whole_fives() {
        assert_eq!((whole(732.4), whole(732.6), whole(-40.0), whole(4000.0)), (730.0, 735.0, 20.0, 1200.0));
    }

    #[test]
    fn marks_stand_at_whole_hours_of_the_wall() {
        // Half an hour off the hour of UTC, as some clocks are.
        let zone = TimeZone::fixed(jiff::tz::Offset::from_seconds(19_800).unwrap());
        let begin = 29_000_000.0;
        let midnight = midnight_before(begin, &zone);
        let input = GridInput { bounds: (begin, begin + 1500.0), base_step_size: 1.0 };
        let marks = hour_marks(&input, midnight, 3.0);
        assert!(marks.len() >= 8);
        for mark in marks {
            assert_eq!(moment_of(mark.value, &zone).map(|at| (at.hour() % 3, at.minute())), Some((0, 0)));
        }
    }
}
