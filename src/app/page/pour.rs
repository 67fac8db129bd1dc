//! Pour: how hot the metal, how hot the mould, in which order, and when to quench.

use eframe::egui::{Id, RichText, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::page::burnout::caution;
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure, printed};
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::row::row;
use crate::app::widget::{button, finding, heading};
use crate::calc::{FlaskFigures, plan_of};
use crate::job::{Drive, Entry, Event, Flask, FlaskId, PouredAs, RecordId, standing};
use crate::quantity::{Finite, Kind};

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-pour"), "", &tokens);
    let job = cx.job;
    if job.flasks.is_empty() {
        heading::empty(ui, &cx.label("pour-empty"), &cx.label("pour-first"), &tokens);
        if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
        return;
    }
    ui.horizontal_wrapped(|ui| {
        for flask in &job.flasks {
            if ui.selectable_label(cx.view.flask == Some(flask.id), crate::app::names::flask(cx, flask.id)).clicked() {
                cx.view.flask = Some(flask.id);
            }
        }
    });
    let chosen = job.flasks.iter().find(|flask| Some(flask.id) == cx.view.flask);
    let figures = cx.computed.report.flasks.iter().find(|figures| Some(figures.id) == cx.view.flask).cloned();
    if let (Some(flask), Some(figures)) = (chosen, figures) {
        heat(ui, cx, flask, &figures);
        how(ui, cx, flask);
        quench(ui, cx, &figures);
        poured(ui, cx, flask);
        ui.add_space(2.0 * STEP);
        cautions(ui, cx, flask, &figures);
    }
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Pour);
}

/// A temperature that may be typed: its name, the name of the step, what was typed, what rules, its range, and where it goes.
type Typed = (&'static str, &'static str, Option<Finite>, crate::calc::Id, Option<[crate::calc::Id; 2]>, fn(&mut Flask, Option<Finite>));

fn heat(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let (tokens, id) = (cx.tokens, flask.id);
    let pour = &figures.pour;
    heading::group(ui, &cx.label("pour-heat"), &tokens);
    let typed: [Typed; 2] = [
        ("pour-metal-at", "edit-pour-metal", flask.metal_c, pour.metal, pour.metal_range, |flask, c| flask.metal_c = c),
        ("pour-mould-at", "edit-pour-mould", flask.mould_c, pour.mould, pour.mould_range, |flask, c| flask.mould_c = c),
    ];
    for (key, edit, now, computed, range, set) in typed {
        let label = cx.label(key);
        let default = cx.computed.book.number(computed);
        let field = Number::new(Id::unique((key, id.0)), &label, Kind::Temperature).now(now.map(Finite::get)).default(default).width(100.0);
        let entered = row(ui, &label, &tokens, |ui| {
            let entered = number(ui, cx, &field);
            figure(ui, cx, computed, Look::ROW.width(110.0));
            entered
        });
        if let Some(entered) = entered {
            change(cx, edit, id, move |flask| set(flask, entered));
        }
        if let Some([low, high]) = range {
            let words = |id| {
                let (number, unit, _) = printed(cx, id, false);
                format!("{number} {unit}")
            };
            let says = cx.say("pour-range", &[("low", words(low).into()), ("high", words(high).into())]);
            heading::says(ui, &says, &tokens);
        }
    }
    row(ui, &cx.label("pour-over-liquidus"), &tokens, |ui| figure(ui, cx, pour.superheat, Look::ROW));
}

fn how(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let (tokens, id) = (cx.tokens, flask.id);
    let label = cx.label("pour-order");
    let field = Number::new(Id::unique(("flask-turn", id.0)), &label, Kind::Count).now(flask.turn.map(f64::from)).width(70.0);
    if let Some(turn) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        change(cx, "edit-pour-turn", id, move |flask| flask.turn = turn);
    }
    let label = cx.label("pour-driven");
    let options = [(Drive::Gravity, "drive-gravity"), (Drive::Vacuum, "drive-vacuum"), (Drive::Centrifugal, "drive-centrifugal")]
        .map(|(drive, key)| (drive, cx.label(key)));
    let place = (Id::unique(("flask-drive", id.0)), label.as_str(), 200.0);
    if let Some(Some(drive)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&flask.drive), &options, false)) {
        change(cx, "edit-pour-drive", id, move |flask| flask.drive = drive);
    }
}

fn quench(ui: &mut Ui, cx: &mut Cx<'_>, figures: &FlaskFigures) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("pour-quench"), &tokens);
    match figures.pour.quench {
        _ if figures.pour.never_quench => drop(heading::says(ui, &cx.label("quench-never"), &tokens)),
        Some([from, until]) => {
            row(ui, &cx.label("pour-quench-from"), &tokens, |ui| figure(ui, cx, from, Look::ROW));
            row(ui, &cx.label("pour-quench-until"), &tokens, |ui| figure(ui, cx, until, Look::ROW));
        }
        None => drop(heading::says(ui, &cx.label("quench-unknown"), &tokens)),
    }
}

/// What was really done goes into the record, with the plan as it stood then.
fn poured(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("pour-record"), &tokens);
    let already = standing(&cx.job.record).any(|entry| matches!(&entry.event, Event::Poured { flask: of, .. } if *of == flask.id));
    if already {
        ui.label(RichText::new(cx.label("pour-done")).color(tokens.ink2));
        return;
    }
    heading::says(ui, &cx.label("pour-record-says"), &tokens);
    if button::plain(ui, &cx.label("pour-mark"), &tokens).clicked() {
        let plan = plan_of(flask.id, &cx.computed.report, &cx.computed.book, &cx.computed.shelves).unwrap_or_default();
        // What was planned is in the plan; what was really read is not known here.
        let done = PouredAs::default();
        let at = Some(jiff::ZonedDateTime::now().with_time_zone(cx.setting.zone.clone()).datetime());
        let flask = flask.id;
        cx.edit("edit-pour-mark", move |job| {
            let id = RecordId(job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1);
            job.record.push(Entry { id, at, event: Event::Poured { flask, plan, done }, ..Entry::default() });
        });
    }
}

fn cautions(ui: &mut Ui, cx: &Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    caution(ui, cx, "caution-hot-flask");
    caution(ui, cx, "caution-molten-metal");
    match flask.drive {
        Drive::Centrifugal => caution(ui, cx, "caution-centrifuge"),
        Drive::Vacuum => caution(ui, cx, "caution-vacuum-pour"),
        Drive::Gravity => {}
    }
    if !figures.pour.never_quench {
        caution(ui, cx, "caution-quench-steam");
    }
}

fn change(cx: &mut Cx<'_>, key: &str, id: FlaskId, change: impl FnOnce(&mut Flask) + 'static) {
    cx.edit(key, move |job| {
        if let Some(flask) = job.flasks.iter_mut().find(|flask| flask.id == id) {
            change(flask);
        }
    });
}
