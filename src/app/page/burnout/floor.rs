//! The kiln's floor to scale: where every flask stands, how much hotter or colder it is there, and how it is moved by hand.

use std::sync::Arc;

use eframe::egui::{
    Align2, CornerRadius, CursorIcon, EventFilter, FontId, Id, Key, Label, Modifiers, Pos2, Rect, RichText, Sense, Stroke, StrokeKind, Ui,
    WidgetInfo, accesskit::Role, pos2, vec2,
};

use crate::app::cx::Cx;
use crate::app::page::flasks;
use crate::app::theme::{STEP, bold, size};
use crate::app::widget::{button, heading};
use crate::calc::BurnoutFigures;
use crate::calc::floor::{flasks_of, floor_of};
use crate::calc::kiln_floor::{Arrangement, Fault, Flask, Floor, Room, Shape, Standing, arrange};
use crate::job::{Burnout, FlaskId};
use crate::quantity::{Finite, Kind, print};

/// The drawing is no larger than this.
const MOST: [f32; 2] = [520.0, 340.0];
/// A flask is moved by keys in steps of so many mm.
const STEP_MM: f64 = 5.0;

/// What the floor was arranged from, and how.
type Kept = Arc<(Floor, Vec<Flask>, Option<Arrangement>)>;

/// Shows it, where the shelf knows the kiln's floor.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, figures: &BurnoutFigures) {
    let tokens = cx.tokens;
    let computed = cx.computed;
    let Some(floor) = floor_of(load, &computed.shelves.job) else {
        heading::says(ui, &cx.label("floor-unknown"), &tokens);
        return;
    };
    let flasks = flasks_of(load, figures, &computed.sound, &computed.report, &computed.shelves.job);
    if flasks.is_empty() {
        heading::says(ui, &cx.label("floor-empty"), &tokens);
        return;
    }
    let kept = arranged(ui, load, floor, flasks);
    let (floor, flasks, found) = (&kept.0, &kept.1, &kept.2);
    let Some(found) = found else {
        heading::says(ui, &cx.label("floor-unknown"), &tokens);
        return;
    };
    if let Some((flask, at)) = draw(ui, cx, floor, (flasks, found)) {
        flasks::change(cx, "edit-floor", flask, move |flask| flask.floor_mm = Some(at));
    }
    heading::says(ui, &cx.label("floor-says"), &tokens);
    told(ui, cx, found);
    let ids: Vec<FlaskId> = flasks.iter().map(|flask| FlaskId(flask.key)).collect();
    if flasks.iter().any(|flask| flask.held_mm.is_some()) && button::plain(ui, &cx.label("floor-arrange"), &tokens).clicked() {
        cx.edit("edit-floor-arrange", move |job| {
            job.flasks.iter_mut().filter(|flask| ids.contains(&flask.id)).for_each(|flask| flask.floor_mm = None);
        });
    }
    ui.add_space(STEP);
}

/// The arrangement of these flasks, made once for as long as nothing changes.
fn arranged(ui: &Ui, load: &Burnout, floor: Floor, flasks: Vec<Flask>) -> Kept {
    let id = Id::unique(("kiln floor", load.id.0));
    if let Some(kept) = ui.data(|data| data.get_temp::<Kept>(id)).filter(|kept| kept.0 == floor && kept.1 == flasks) {
        return kept;
    }
    let found = arrange(&floor, &flasks).ok();
    let kept: Kept = Arc::new((floor, flasks, found));
    ui.data_mut(|data| data.insert_temp(id, Arc::clone(&kept)));
    kept
}

/// From mm on the floor to the screen; the door is below.
struct Scale {
    rect: Rect,
    points_mm: f32,
}

impl Scale {
    fn at(&self, [x, y]: [f64; 2]) -> Pos2 {
        pos2(self.rect.left() + self.points(x), self.rect.bottom() - self.points(y))
    }

    fn points(&self, mm: f64) -> f32 {
        #[allow(clippy::cast_possible_truncation, reason = "a length on a screen")]
        let mm = mm as f32;
        mm * self.points_mm
    }
}

fn draw(ui: &mut Ui, cx: &Cx<'_>, floor: &Floor, (flasks, found): (&[Flask], &Arrangement)) -> Option<(FlaskId, [Finite; 2])> {
    let tokens = cx.tokens;
    let [wide, deep] = floor.shape.sides_mm();
    #[allow(clippy::cast_possible_truncation, reason = "a length on a screen")]
    let (wide_mm, deep_mm) = (wide as f32, deep as f32);
    let points_mm = (MOST[0].min(ui.available_width()) / wide_mm).min(MOST[1] / deep_mm);
    let (rect, response) = ui.allocate_exact_size(vec2(wide_mm * points_mm, deep_mm * points_mm + 20.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, cx.label("floor-picture")));
    let scale = Scale { rect: Rect::from_min_max(rect.min, pos2(rect.right(), rect.bottom() - 20.0)), points_mm };
    let painter = ui.painter();
    match floor.shape {
        Shape::Rectangle { .. } => {
            painter.rect(scale.rect, CornerRadius::ZERO, tokens.field, Stroke::new(2.0, tokens.edge), StrokeKind::Inside);
        }
        Shape::Round { .. } => {
            painter.circle(scale.rect.center(), scale.rect.width() / 2.0, tokens.field, Stroke::new(2.0, tokens.edge));
        }
    }
    let size = format!("{} × {}", print(wide, Kind::Length, cx.style), print(deep, Kind::Length, cx.style));
    let foot = format!("{}    {size}", cx.label("floor-door"));
    painter.text(pos2(scale.rect.left(), rect.bottom()), Align2::LEFT_BOTTOM, foot, FontId::proportional(size::SMALL), tokens.ink2);
    let mut moved = None;
    for standing in &found.standing {
        let Some(flask) = flasks.iter().find(|flask| flask.key == standing.key) else { continue };
        moved = one(ui, cx, &scale, (flask, standing, found)).or(moved);
    }
    moved
}

fn one(ui: &Ui, cx: &Cx<'_>, scale: &Scale, (flask, standing, found): (&Flask, &Standing, &Arrangement)) -> Option<(FlaskId, [Finite; 2])> {
    let tokens = cx.tokens;
    let id = Id::unique(("flask on floor", flask.key));
    let held_id = id.with("moved");
    let radius = scale.points(flask.diameter_mm / 2.0);
    let name = crate::app::names::flask(cx, FlaskId(flask.key));
    let mut at = scale.at(standing.at_mm);
    let response = ui.interact(Rect::from_center_size(at, vec2(2.0, 2.0) * radius), id, Sense::drag()).on_hover_cursor(CursorIcon::Grab);
    let place = place_words(cx, standing);
    response.widget_info(|| WidgetInfo::labeled(Role::Slider, true, format!("{name}, {place}")));
    let by: eframe::egui::Vec2 = ui.data(|data| data.get_temp(held_id)).unwrap_or_default();
    if response.dragged() {
        let by = by + response.drag_delta();
        ui.data_mut(|data| data.insert_temp(held_id, by));
        at += by;
    }
    let wrong = found.held_faults.iter().any(|fault| fault.keys().contains(&flask.key));
    let edge = if wrong { tokens.stop } else { tokens.act };
    let width = if response.has_focus() || response.hovered() || wrong { 3.0 } else { 1.5 };
    ui.painter().circle(at, radius, tokens.act_ground, Stroke::new(width, edge));
    let short = cx.job.flasks.iter().find(|one| one.id.0 == flask.key).map(|one| one.scratch.trim().to_owned());
    let short = short.filter(|short| !short.is_empty()).unwrap_or_else(|| name.clone());
    ui.painter().text(at - vec2(0.0, 7.0), Align2::CENTER_CENTER, short, FontId::new(13.0, bold()), tokens.ink);
    let zone = format!("{:+.0} K", standing.zone_k);
    ui.painter().text(at + vec2(0.0, 9.0), Align2::CENTER_CENTER, zone, FontId::proportional(size::SMALL), tokens.ink2);
    let mm = |mm: f64| Finite::new(mm.max(0.0).round());
    if response.drag_stopped() {
        ui.data_mut(|data| data.remove::<eframe::egui::Vec2>(held_id));
        let back = |points: f32| f64::from(points / scale.points_mm);
        let to = [standing.at_mm[0] + back(by.x), standing.at_mm[1] - back(by.y)];
        return Some((FlaskId(flask.key), [mm(to[0])?, mm(to[1])?]));
    }
    let [x, y] = by_keys(ui, &response)?;
    Some((FlaskId(flask.key), [mm(standing.at_mm[0] + x * STEP_MM)?, mm(standing.at_mm[1] + y * STEP_MM)?]))
}

fn by_keys(ui: &Ui, response: &eframe::egui::Response) -> Option<[f64; 2]> {
    if !response.has_focus() {
        return None;
    }
    let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let ways = [(Key::ArrowLeft, [-1.0, 0.0]), (Key::ArrowRight, [1.0, 0.0]), (Key::ArrowUp, [0.0, 1.0]), (Key::ArrowDown, [0.0, -1.0])];
    ways.into_iter().find(|(key, _)| ui.input_mut(|input| input.consume_key(Modifiers::NONE, *key))).map(|(_, way)| way)
}

/// What is wrong, what does not stand, and what is taken out over a hot flask.
fn told(ui: &mut Ui, cx: &Cx<'_>, found: &Arrangement) {
    let tokens = cx.tokens;
    let name = |key: u32| crate::app::names::flask(cx, FlaskId(key));
    let mut says = |words: String| drop(ui.add(Label::new(RichText::new(words).color(tokens.caution)).wrap()));
    for fault in &found.held_faults {
        let flasks: Vec<String> = fault.keys().into_iter().map(name).collect();
        says(cx.say(fault_key(fault), &[("flasks", flasks.join(", ").into())]));
    }
    if !found.left.is_empty() {
        let flasks: Vec<String> = found.left.iter().map(|left| name(left.key)).collect();
        let key = if matches!(found.room, Room::NotFound { .. }) { "floor-not-found" } else { "floor-left" };
        says(cx.say(key, &[("flasks", flasks.join(", ").into())]));
    }
    for [first, second] in &found.reached_over {
        says(cx.say("floor-reached-over", &[("first", name(*first).into()), ("second", name(*second).into())]));
    }
}

const fn fault_key(fault: &Fault) -> &'static str {
    match fault {
        Fault::Overlap { .. } => "floor-overlap",
        Fault::TooNear { .. } => "floor-near",
        Fault::Outside { .. } => "floor-outside",
        Fault::NearWall { .. } => "floor-near-wall",
        Fault::TooHigh { .. } => "floor-too-high",
        Fault::Unknown { .. } | Fault::Twice { .. } | Fault::Number { .. } => "floor-unknown",
    }
}

/// A place in words.
fn place_words(cx: &Cx<'_>, standing: &Standing) -> String {
    cx.label(crate::paper::keyed::third_key(standing.row, standing.column))
}
