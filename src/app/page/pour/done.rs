//! What was really done: it goes into the record, with the plan as it stood at that moment. Nothing of the plan is taken for what happened.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::page::{Page, really, record};
use crate::app::theme::STEP;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::{button, heading};
use crate::calc::{FlaskFigures, against, plan_of};
use crate::job::{Entry, Event, FlaskId, PouredAs, standing};
use crate::paper::words::moment_words;
use crate::quantity::{Finite, Grams, Kind};

/// Shows what was recorded of the pour, or the fields to record it with.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, figures: &FlaskFigures) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("pour-record"), &tokens);
    if let Some(entry) = poured(cx, figures.id) {
        already(ui, cx, entry);
        return;
    }
    let key = Id::unique(("really poured", figures.id.0));
    let before: PouredAs = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let really = fields(ui, cx, figures, before.clone());
    if really != before {
        ui.data_mut(|data| data.insert_temp(key, really.clone()));
    }
    let hands = record::hands(ui, cx);
    ui.add_space(STEP);
    if button::main(ui, &cx.label("pour-mark"), &tokens).clicked() {
        ui.data_mut(|data| data.remove::<PouredAs>(key));
        mark(cx, figures.id, really, hands);
    }
    heading::says(ui, &cx.label("pour-record-says"), &tokens);
}

/// The entry that a flask was poured, where it still stands.
pub fn poured<'a>(cx: &Cx<'a>, id: FlaskId) -> Option<&'a Entry> {
    let job = cx.job;
    standing(&job.record).find(|entry| matches!(&entry.event, Event::Poured { flask, .. } if *flask == id))
}

fn already(ui: &mut Ui, cx: &mut Cx<'_>, entry: &Entry) {
    let tokens = cx.tokens;
    let at = entry.at.map_or_else(|| cx.label("undated"), |at| moment_words(at, cx.texts));
    heading::says(ui, &cx.say("pour-done", &[("at", at.into())]), &tokens);
    if let Event::Poured { flask, plan, done } = &entry.event {
        let rows = against::poured(&cx.computed.report, &cx.computed.book, *flask, plan, done);
        really::show(ui, cx, &rows);
    }
    if button::link(ui, &cx.label("pour-to-record"), &tokens).clicked() {
        cx.look(|view| view.page = Page::Record);
    }
}

/// What the thermometer, the balance and the clock said, each beside what was planned.
fn fields(ui: &mut Ui, cx: &mut Cx<'_>, figures: &FlaskFigures, mut really: PouredAs) -> PouredAs {
    let (tokens, id) = (cx.tokens, figures.id.0);
    let planned = Look::ROW.width(120.0);
    let temperature = |ui: &mut Ui, cx: &mut Cx<'_>, key: &'static str, now: Option<Finite>, plan| {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, id)), &label, Kind::Temperature).now(now.map(Finite::get));
        row(ui, &label, &tokens, |ui| {
            let entered = number(ui, cx, &field);
            figure(ui, cx, plan, planned);
            entered
        })
        .unwrap_or(now)
    };
    really.metal_c = temperature(ui, cx, "pour-really-metal", really.metal_c, figures.pour.metal);
    really.mould_c = temperature(ui, cx, "pour-really-mould", really.mould_c, figures.pour.mould);
    let label = cx.label("pour-really-charge");
    let field = Number::new(Id::unique(("pour-really-charge", id)), &label, Kind::Mass).now(really.charge.map(Grams::to_f64));
    row(ui, &label, &tokens, |ui| {
        if let Some(charge) = grams(ui, cx, &field) {
            really.charge = charge;
        }
        figure(ui, cx, figures.metal.on_balance, planned);
    });
    if !figures.pour.never_quench {
        let label = cx.label("pour-really-quench");
        let field = Number::new(Id::unique(("pour-really-quench", id)), &label, Kind::Duration).now(really.quench_min.map(Finite::get));
        row(ui, &label, &tokens, |ui| {
            if let Some(minutes) = number(ui, cx, &field) {
                really.quench_min = minutes;
            }
            if let Some([from, _]) = figures.pour.quench {
                figure(ui, cx, from, planned);
            }
        });
    }
    really
}

fn mark(cx: &mut Cx<'_>, flask: FlaskId, done: PouredAs, hands: String) {
    let plan = plan_of(flask, &cx.computed.report, &cx.computed.book, &cx.computed.shelves).unwrap_or_default();
    let entry = Entry { at: record::now(cx), hands, event: Event::Poured { flask, plan, done }, ..Entry::default() };
    cx.edit("edit-pour-mark", move |job| record::append(job, entry));
}
