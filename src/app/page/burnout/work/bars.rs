//! The steps as bars over the clock. A bar that may be put elsewhere is dragged with the mouse, or moved with the left and right arrows, to
//! the next time at which somebody is there for it.

use eframe::egui::{
    Align2, Color32, CornerRadius, CursorIcon, EventFilter, FontId, Id, Key, Modifiers, Pos2, Rect, Response, Sense, Stroke, StrokeKind,
    Ui, WidgetInfo, accesskit::Role, pos2, vec2,
};
use jiff::tz::TimeZone;

use crate::app::cx::Cx;
use crate::app::theme::{Tokens, bold, size};
use crate::calc::timetable::{Ask, BandKind, bands, nearest_allowed, next_allowed, previous_allowed};
use crate::calc::work::{WorkFigures, WorkRow, key_of, may_be_pinned, step_key};
use crate::job::WorkStep;
use crate::paper::words::{moment_of, moment_words};

/// Height of a bar's row.
const BAR: f32 = 24.0;
/// Room for the clock under the bars.
const CLOCK: f32 = 34.0;
/// Width of the names.
const NAMES: f32 = 120.0;

/// What was asked, again: for a step in somebody's hand.
fn ask<'w>(work: &'w WorkFigures, zone: &'w TimeZone) -> Ask<'w> {
    Ask { steps: &work.steps, hours: &work.hours, zone, now: work.now, pouring_min: work.pouring_min }
}

/// From minutes since 1970 to the screen.
struct Scale {
    from: f64,
    to: f64,
    rect: Rect,
}

impl Scale {
    fn x(&self, at: f64) -> f32 {
        let share = ((at - self.from) / (self.to - self.from)).clamp(0.0, 1.0);
        // A share of a few thousand points.
        #[allow(clippy::cast_possible_truncation)]
        let share = share as f32;
        self.rect.left() + self.rect.width() * share
    }

    fn minutes(&self, points: f32) -> f64 {
        f64::from(points) / f64::from(self.rect.width()) * (self.to - self.from)
    }
}

/// Shows the bars. `Some` is a step that was put at another time.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, work: &WorkFigures) -> Option<(WorkStep, f64)> {
    let (first, last) = (work.rows.first()?.row.start, work.rows.last()?.row.end);
    let rows = u16::try_from(work.rows.len()).unwrap_or(u16::MAX);
    let (space, response) = ui.allocate_exact_size(vec2(ui.available_width(), BAR * f32::from(rows) + CLOCK), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, cx.label("work-picture")));
    let rect = Rect::from_min_max(pos2(space.left() + NAMES, space.top()), pos2(space.right() - 8.0, space.bottom() - CLOCK));
    let aside = (last - first) * 0.02;
    let scale = Scale { from: first - aside, to: last + aside + work.pouring_min, rect };
    background(ui, cx, work, &scale);
    let mut moved = None;
    for (place, row) in work.rows.iter().enumerate() {
        let place = u16::try_from(place).unwrap_or(u16::MAX);
        let top = rect.top() + BAR * f32::from(place);
        let name = cx.label(step_key(row.step));
        let at = pos2(space.left(), top + BAR / 2.0);
        ui.painter().text(at, Align2::LEFT_CENTER, &name, FontId::proportional(13.0), cx.tokens.ink);
        let bar = Rect::from_min_max(pos2(scale.x(row.row.start), top + 3.0), pos2(scale.x(row.row.end), top + BAR - 3.0));
        // A step of some minutes in a week is still to be seen and taken hold of.
        let bar = if bar.width() < 6.0 { Rect::from_center_size(bar.center(), vec2(6.0, bar.height())) } else { bar };
        if may_be_pinned(row.step) {
            moved = held(ui, cx, work, (row, &name), (bar, &scale)).map(|at| (row.step, at)).or(moved);
        } else {
            paint(ui, &cx.tokens, row, bar, false);
        }
    }
    moved
}

/// A bar that may be put elsewhere, and where it was put.
fn held(ui: &Ui, cx: &Cx<'_>, work: &WorkFigures, (row, name): (&WorkRow, &str), (bar, scale): (Rect, &Scale)) -> Option<f64> {
    let id = Id::unique(("work bar", work.load.0, key_of(row.step).0));
    let response = ui.interact(bar.expand(2.0), id, Sense::drag()).on_hover_cursor(CursorIcon::ResizeHorizontal);
    let at = moment_of(row.row.start, &cx.setting.zone).map(|at| moment_words(at, cx.texts)).unwrap_or_default();
    let said = cx.say("work-bar", &[("step", name.into()), ("at", at.into())]);
    response.widget_info(|| WidgetInfo::labeled(Role::Slider, true, &said));
    let ask = ask(work, &cx.setting.zone);
    let moved_id = id.with("moved");
    if response.drag_started() {
        ui.data_mut(|data| data.insert_temp(moved_id, 0.0_f32));
    }
    if response.dragged() {
        let by: f32 = ui.data(|data| data.get_temp(moved_id)).unwrap_or(0.0) + response.drag_delta().x;
        ui.data_mut(|data| data.insert_temp(moved_id, by));
        paint(ui, &cx.tokens, row, bar, true);
        let wished = nearest_allowed(&ask, key_of(row.step), row.row.start + scale.minutes(by)).ok().flatten()?;
        let ghost = bar.translate(vec2(scale.x(wished) - scale.x(row.row.start), 0.0));
        ui.painter().rect_stroke(ghost, CornerRadius::same(3), Stroke::new(2.0, cx.tokens.act), StrokeKind::Inside);
        label_moment(ui, cx, wished, ghost.left_top());
        return None;
    }
    paint(ui, &cx.tokens, row, bar, response.has_focus() || response.hovered());
    if response.drag_stopped() {
        let by: f32 = ui.data_mut(|data| data.remove_temp(moved_id)).unwrap_or(0.0);
        let wished = nearest_allowed(&ask, key_of(row.step), row.row.start + scale.minutes(by)).ok().flatten()?;
        return ((wished - row.row.start).abs() > 0.5).then_some(wished);
    }
    by_keys(ui, &response, &ask, row)
}

fn by_keys(ui: &Ui, response: &Response, ask: &Ask<'_>, row: &WorkRow) -> Option<f64> {
    if !response.has_focus() {
        return None;
    }
    let filter = EventFilter { horizontal_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    let key = key_of(row.step);
    if pressed(Key::ArrowLeft) {
        return previous_allowed(ask, key, row.row.start).ok().flatten();
    }
    if pressed(Key::ArrowRight) {
        return next_allowed(ask, key, row.row.start).ok().flatten();
    }
    None
}

fn paint(ui: &Ui, tokens: &Tokens, row: &WorkRow, bar: Rect, lively: bool) {
    let (fill, edge) = match row.step {
        WorkStep::Burnout | WorkStep::Dewax => (tokens.heat, tokens.heat),
        WorkStep::Setting => (tokens.rule, tokens.edge),
        _ => (tokens.act, tokens.act),
    };
    let fill = if row.row.pin.is_some() { fill } else { fill.gamma_multiply(0.55) };
    let edge = if row.row.problems.is_empty() { edge } else { tokens.caution };
    let width = if lively || !row.row.problems.is_empty() { 2.5 } else { 1.0 };
    ui.painter().rect(bar, CornerRadius::same(3), fill, Stroke::new(width, edge), StrokeKind::Inside);
}

/// Nights, days off and the taken kiln as bands, midnights with their day, and the pour.
fn background(ui: &Ui, cx: &Cx<'_>, work: &WorkFigures, scale: &Scale) {
    let (painter, tokens) = (ui.painter(), &cx.tokens);
    painter.rect_filled(scale.rect, CornerRadius::ZERO, tokens.field);
    for band in bands(&work.hours, &cx.setting.zone, scale.from, scale.to).unwrap_or_default() {
        let ink: Color32 = match band.kind {
            BandKind::Night | BandKind::Away => tokens.rule.gamma_multiply(0.8),
            BandKind::DayOff => tokens.rule,
            BandKind::Taken(_) => tokens.heat.gamma_multiply(0.25),
        };
        let rect = Rect::from_x_y_ranges(scale.x(band.span.start)..=scale.x(band.span.end), scale.rect.y_range());
        painter.rect_filled(rect, CornerRadius::ZERO, ink);
    }
    clock(ui, cx, scale);
    if let Some(pour) = work.rows.last().map(|row| row.row.end) {
        let line = [pos2(scale.x(pour), scale.rect.top()), pos2(scale.x(pour), scale.rect.bottom())];
        painter.line_segment(line, Stroke::new(2.0, tokens.stop));
    }
    painter.rect_stroke(scale.rect, CornerRadius::ZERO, Stroke::new(1.0, tokens.rule), StrokeKind::Inside);
}

/// Midnights with the day that begins, and every sixth hour where there is room.
fn clock(ui: &Ui, cx: &Cx<'_>, scale: &Scale) {
    let (painter, tokens) = (ui.painter(), &cx.tokens);
    let days = (scale.to - scale.from) / 1440.0;
    let room = f64::from(scale.rect.width()) / days.max(0.1);
    let hours: i8 = [3, 6, 12, 24].into_iter().find(|hours| room * f64::from(*hours) / 24.0 >= 44.0).unwrap_or(24);
    let Some(mut at) = moment_of(scale.from, &cx.setting.zone) else { return };
    at = at.date().at(at.hour(), 0, 0, 0);
    let font = FontId::new(size::SMALL, bold());
    for _ in 0..24 * 70 {
        let Ok(next) = at.checked_add(jiff::Span::new().hours(1)) else { break };
        at = next;
        let Ok(zoned) = cx.setting.zone.to_zoned_datetime(at) else { continue };
        let minutes = zoned.timestamp().as_second() as f64 / 60.0;
        if minutes > scale.to {
            break;
        }
        if at.hour() % hours != 0 {
            continue;
        }
        let x = scale.x(minutes);
        let midnight = at.hour() == 0;
        let ink = if midnight { tokens.edge } else { tokens.rule };
        painter.line_segment([pos2(x, scale.rect.top()), pos2(x, scale.rect.bottom() + 3.0)], Stroke::new(1.0, ink));
        if midnight && room >= 30.0 {
            let day = cx.label(&format!("day-{}", at.weekday().to_monday_one_offset()));
            painter.text(pos2(x + 3.0, scale.rect.bottom() + 17.0), Align2::LEFT_TOP, day, font.clone(), tokens.ink);
        } else if !midnight {
            let words = format!("{:02}", at.hour());
            painter.text(pos2(x, scale.rect.bottom() + 4.0), Align2::CENTER_TOP, words, FontId::proportional(size::SMALL), tokens.ink2);
        }
    }
}

fn label_moment(ui: &Ui, cx: &Cx<'_>, at: f64, place: Pos2) {
    let Some(at) = moment_of(at, &cx.setting.zone) else { return };
    let font = FontId::new(size::SMALL, bold());
    ui.painter().text(place - vec2(0.0, 2.0), Align2::LEFT_BOTTOM, moment_words(at, cx.texts), font, cx.tokens.act);
}
