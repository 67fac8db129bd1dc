//! What a load is: its kiln, its pour, its programme, the flasks in it.

use eframe::egui::{Align, Checkbox, Id, Layout, Ui, vec2};

use super::change;
use crate::app::cx::Cx;
use crate::app::page::flasks;
use crate::app::page::take_out::take_out;
use crate::app::theme::ROW;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::moment::moment;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::{LABEL, row};
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::job::{Burnout, Place, Programme, Segment};
use crate::quantity::{Finite, Kind};
use crate::stock::{Kiln, StageTable};

/// Width of a choice.
const WIDE: f32 = 260.0;

/// Pour, kiln, programme.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let (tokens, id) = (cx.tokens, load.id);
    let label = cx.label("heat-pour-at");
    let place = Id::unique(("load-pour", id.0));
    if let Some(at) = row(ui, &label, &tokens, |ui| moment(ui, cx, place, &label, load.pour_at, (160.0, false))) {
        change(cx, "edit-pour-at", id, move |load| load.pour_at = at);
    }
    let label = cx.label("heat-kiln");
    let words = |kiln: &Kiln| (kiln.id.clone(), kiln.name.clone());
    let place = (Id::unique(("load-kiln", id.0)), label.as_str(), WIDE);
    if let Some(kiln) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, load.kiln.as_ref(), words)) {
        change(cx, "edit-burnout-kiln", id, move |load| load.kiln = kiln);
    }
    let label = cx.label("heat-table");
    let table = match &load.programme {
        Some(Programme::Table(table)) => Some(table),
        _ => None,
    };
    let words = |table: &StageTable| (table.id.clone(), table.name.clone());
    let place = (Id::unique(("load-table", id.0)), label.as_str(), WIDE);
    if let Some(table) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, table, words)) {
        change(cx, "edit-burnout-programme", id, move |load| load.programme = table.map(Programme::Table));
    }
    if table.is_some() {
        hours(ui, cx, load);
    }
    ui.horizontal(|ui| {
        if table.is_some() && button::plain(ui, &cx.label("heat-own"), &tokens).clicked() {
            own_segments(cx, load);
        }
        if load.programme.is_none() && button::plain(ui, &cx.label("heat-from-nothing"), &tokens).clicked() {
            change(cx, "edit-burnout-programme", id, |load| load.programme = Some(Programme::Segments(vec![Segment::default()])));
        }
    });
}

/// Whether the table's hours include the ramps: asked, not guessed.
fn hours(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let (tokens, id) = (cx.tokens, load.id);
    let label = cx.label("heat-hours");
    let options = [(true, cx.label("heat-hours-in")), (false, cx.label("heat-hours-besides"))];
    let place = (Id::unique(("load-hours", id.0)), label.as_str(), WIDE);
    if let Some(said) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, load.hours_include_ramps.as_ref(), &options, true)) {
        change(cx, "edit-burnout-hours", id, move |load| load.hours_include_ramps = said);
    }
}

/// The table's stages as segments of the studio's own: targets as they are, holds to the minute, ramps as the kiln goes.
fn own_segments(cx: &mut Cx<'_>, load: &Burnout) {
    let Some(figures) = cx.computed.report.burnouts.iter().find(|figures| figures.id == load.id) else { return };
    let book = &cx.computed.book;
    let last = figures.stages.len();
    let segments: Vec<Segment> = (1..)
        .zip(&figures.stages)
        .map(|(number, stage)| Segment {
            // The last stage is the mould's own temperature, which follows from metal and section.
            target_c: (number < last).then(|| book.number(stage.target).and_then(Finite::new)).flatten(),
            hold_min: book.number(stage.hold).and_then(|hold| Finite::new(hold.round())).unwrap_or_default(),
            ..Segment::default()
        })
        .collect();
    change(cx, "edit-burnout-own", load.id, move |load| load.programme = Some(Programme::Segments(segments)));
}

/// The flasks of the batch: which stand in it, and where.
pub fn flasks(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let tokens = cx.tokens;
    let job = cx.job;
    heading::group(ui, &cx.label("heat-flasks"), &tokens);
    for flask in &job.flasks {
        let (name, id, load_id) = (crate::app::names::flask(cx, flask.id), flask.id, load.id);
        ui.horizontal(|ui| {
            let mut stands = flask.burnout == Some(load_id);
            let place = Layout::left_to_right(Align::Center);
            let tick = ui.allocate_ui_with_layout(vec2(LABEL, ROW), place, |ui| {
                ui.set_min_width(LABEL);
                ui.add(Checkbox::new(&mut stands, &name))
            });
            if tick.inner.changed() {
                flasks::change(cx, "edit-burnout-stands", id, move |flask| flask.burnout = stands.then_some(load_id));
            }
            if flask.burnout != Some(load_id) {
                return;
            }
            let label = format!("{} {name}", cx.label("heat-position"));
            if let Some(position) = text(ui, cx, Id::unique(("flask-position", id.0)), &label, &flask.kiln_position, 160.0) {
                flasks::change(cx, "edit-burnout-position", id, move |flask| flask.kiln_position = position);
            }
        });
    }
}

/// What most loads do not need.
pub fn more(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let (tokens, id) = (cx.tokens, load.id);
    let label = cx.label("heat-name");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("load-name", id.0)), &label, &load.name, WIDE)) {
        change(cx, "edit-burnout-name", id, move |load| load.name = name);
    }
    let label = cx.label("heat-dewax-takes");
    let field = Number::new(Id::unique(("load-dewax", id.0)), &label, Kind::Duration).now(load.dewax_min.map(Finite::get));
    if let Some(minutes) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-burnout-dewax", id, move |load| load.dewax_min = minutes);
    }
    let label = cx.label("heat-loaded-at");
    let field = Number::new(Id::unique(("load-start", id.0)), &label, Kind::Temperature).now(load.start_c.map(Finite::get));
    if let Some(start) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-burnout-start", id, move |load| load.start_c = start);
    }
    let mut itself = load.starts_itself;
    if ui.checkbox(&mut itself, cx.label("heat-starts-itself")).changed() {
        change(cx, "edit-burnout-itself", id, move |load| load.starts_itself = itself);
    }
    let label = cx.label("heat-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("load-notes", id.0)), &label, &load.notes, 320.0)) {
        change(cx, "edit-burnout-notes", id, move |load| load.notes = said);
    }
    take_out(ui, cx, ("heat-remove", "edit-burnout-remove"), Place::Burnout(id), move |job| {
        job.burnouts.retain(|load| load.id != id);
        for flask in &mut job.flasks {
            flask.burnout = flask.burnout.filter(|load| *load != id);
        }
    });
}
