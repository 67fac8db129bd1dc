//! How a flask was really invested: it goes into the record, with the plan as it stood at that moment.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::page::{Page, really, record};
use crate::app::theme::STEP;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::calc::{FlaskFigures, Id as FigureId, against, plan_of};
use crate::job::{Entry, Event, Flask, FlaskId, Frozen, InvestedAs, standing};
use crate::paper::words::{moment_words, one_line};
use crate::quantity::{Finite, Grams, Kind};

const WIDE: f32 = 132.0;

/// Shows what was recorded of the mixing, or the fields to record it with.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("invest-record"), &tokens);
    if let Some((entry, plan, done)) = invested(cx, flask.id) {
        already(ui, cx, (entry, plan, done), flask.id);
        return;
    }
    let key = Id::unique(("really invested", flask.id.0));
    let before: InvestedAs = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let mut done = before.clone();
    words(ui, cx, flask, &mut done);
    numbers(ui, cx, figures, &mut done);
    if done != before {
        ui.data_mut(|data| data.insert_temp(key, done.clone()));
    }
    let hands = record::hands(ui, cx);
    ui.add_space(STEP);
    if button::outlined(ui, &cx.label("invest-mark"), &tokens, true).clicked() {
        ui.data_mut(|data| data.remove::<InvestedAs>(key));
        if done.lot.trim().is_empty() {
            done.lot.clone_from(&flask.powder_lot);
        }
        mark(cx, flask.id, done, hands);
    }
    heading::says(ui, &cx.label("invest-record-says"), &tokens);
}

/// The entry that a flask was invested, where it still stands.
fn invested<'a>(cx: &Cx<'a>, id: FlaskId) -> Option<(&'a Entry, &'a Frozen, &'a InvestedAs)> {
    let job = cx.job;
    standing(&job.record).find_map(|entry| match &entry.event {
        Event::Invested { flask, plan, done } if *flask == id => Some((entry, plan, done)),
        _ => None,
    })
}

fn already(ui: &mut Ui, cx: &mut Cx<'_>, (entry, plan, done): (&Entry, &Frozen, &InvestedAs), flask: FlaskId) {
    let tokens = cx.tokens;
    let at = entry.at.map_or_else(|| cx.label("undated"), |at| moment_words(at, cx.texts));
    heading::says(ui, &cx.say("invest-done", &[("at", at.into())]), &tokens);
    for (key, said) in [("done-lot", &done.lot), ("done-scale", &done.scale)] {
        if !said.trim().is_empty() {
            heading::says(ui, &cx.say(key, &[("said", one_line(said).into())]), &tokens);
        }
    }
    let rows = against::invested(&cx.computed.report, &cx.computed.book, flask, plan, done);
    really::show(ui, cx, &rows);
    if button::link(ui, &cx.label("pour-to-record"), &tokens).clicked() {
        cx.look(|view| view.page = Page::Record);
    }
}

/// The lot of the powder and the scale, by their labels.
fn words(ui: &mut Ui, cx: &Cx<'_>, flask: &Flask, done: &mut InvestedAs) {
    let lot = if done.lot.is_empty() { flask.powder_lot.clone() } else { done.lot.clone() };
    for (key, now, of) in [("invest-really-lot", lot, &mut done.lot), ("invest-really-scale", done.scale.clone(), &mut done.scale)] {
        let label = cx.label(key);
        let field = Id::unique((key, flask.id.0));
        if let Some(said) = row(ui, &label, &cx.tokens, |ui| text(ui, cx, field, &label, &now, WIDE)) {
            *of = said;
        }
    }
}

/// What scales, thermometer, clock and gauge said, each beside what is planned.
fn numbers(ui: &mut Ui, cx: &mut Cx<'_>, figures: &FlaskFigures, done: &mut InvestedAs) {
    let (id, mix) = (figures.id.0, &figures.mix);
    let (tokens, planned) = (cx.tokens, Look::ROW.width(110.0));
    for (key, of, plan) in [("invest-really-powder", &mut done.powder, mix.powder), ("invest-really-water", &mut done.water, mix.water)] {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, id)), &label, Kind::Mass).now(of.map(Grams::to_f64));
        row(ui, &label, &tokens, |ui| {
            if let Some(said) = grams(ui, cx, &field) {
                *of = said;
            }
            figure(ui, cx, plan, planned.powder());
        });
    }
    let rows: [(&'static str, Kind, &mut Option<Finite>, Option<FigureId>); 4] = [
        ("invest-really-water-c", Kind::Temperature, &mut done.water_c, Some(mix.water_c)),
        ("invest-really-room", Kind::Temperature, &mut done.room_c, None),
        ("invest-really-gloss-off", Kind::Duration, &mut done.gloss_off_min, None),
        ("invest-really-vacuum", Kind::Vacuum, &mut done.vacuum_kpa, Some(mix.gauge)),
    ];
    for (key, kind, of, plan) in rows {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, id)), &label, kind).now(of.map(Finite::get));
        row(ui, &label, &tokens, |ui| {
            if let Some(said) = number(ui, cx, &field) {
                *of = said;
            }
            if let Some(plan) = plan {
                figure(ui, cx, plan, planned);
            }
        });
    }
}

fn mark(cx: &mut Cx<'_>, flask: FlaskId, done: InvestedAs, hands: String) {
    let plan = plan_of(flask, &cx.computed.report, &cx.computed.book, &cx.computed.shelves).unwrap_or_default();
    let entry = Entry { at: record::now(cx), hands, event: Event::Invested { flask, plan, done }, ..Entry::default() };
    cx.edit("edit-invest-mark", move |job| record::append(job, entry));
}
