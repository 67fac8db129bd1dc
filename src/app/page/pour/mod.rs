//! Pour: how hot the metal, how hot the mould, in which order, and when to quench.

pub(super) mod done;
mod fill;

use eframe::egui::{Id, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::page::burnout::caution;
use crate::app::page::flasks::change;
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure, printed};
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::row::row;
use crate::app::widget::{button, finding, heading};
use crate::calc::FlaskFigures;
use crate::job::{Drive, Flask};
use crate::quantity::{Finite, Kind};
use crate::stock::Section;

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
    super::choose_flask(ui, cx);
    let chosen = job.flasks.iter().find(|flask| Some(flask.id) == cx.view.flask);
    let figures = cx.computed.report.flasks.iter().find(|figures| Some(figures.id) == cx.view.flask).cloned();
    if let (Some(flask), Some(figures)) = (chosen, figures) {
        heat(ui, cx, flask, &figures);
        how(ui, cx, flask, &figures);
        cx.folded(ui, "pour-fill", |ui, cx| fill::show(ui, cx, flask, &figures));
        quench(ui, cx, &figures);
        done::show(ui, cx, &figures);
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

fn how(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let (tokens, id) = (cx.tokens, flask.id);
    section(ui, cx, flask, figures);
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

/// The section that rules the temperatures: the lightest piece's, unless another is chosen.
fn section(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    let (tokens, id) = (cx.tokens, flask.id);
    let options = [
        (Section::Filigree, "section-filigree"),
        (Section::Thin, "section-thin"),
        (Section::Medium, "section-medium"),
        (Section::Heavy, "section-heavy"),
    ]
    .map(|(section, key)| (section, cx.label(key)));
    let label = cx.label("pour-lightest");
    let place = (Id::unique(("flask-section", id.0)), label.as_str(), 200.0);
    if let Some(section) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, flask.section.as_ref(), &options, true)) {
        change(cx, "edit-pour-section", id, move |flask| flask.section = section);
    }
    if flask.section.is_none() {
        let rules =
            options.iter().find(|(section, _)| *section == figures.pour.section).map(|(_, words)| words.clone()).unwrap_or_default();
        let key = if figures.pour.section_assumed { "pour-section-assumed" } else { "pour-section-lightest" };
        heading::says(ui, &cx.say(key, &[("section", rules.into())]), &tokens);
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
    if let Some([early, late]) = figures.pour.no_glow.filter(|_| !figures.pour.never_quench) {
        row(ui, &cx.label("pour-no-glow"), &tokens, |ui| figure(ui, cx, early, Look::ROW));
        row(ui, &cx.label("pour-no-glow-late"), &tokens, |ui| figure(ui, cx, late, Look::ROW));
    }
}

fn cautions(ui: &mut Ui, cx: &Cx<'_>, flask: &Flask, figures: &FlaskFigures) {
    caution(ui, cx, "caution-hot-flask");
    caution(ui, cx, "caution-molten-metal");
    match flask.drive {
        Drive::Centrifugal => {
            caution(ui, cx, "caution-centrifuge");
            caution(ui, cx, "caution-centrifuge-before");
        }
        Drive::Vacuum => caution(ui, cx, "caution-vacuum-pour"),
        Drive::Gravity => {}
    }
    if !figures.pour.never_quench {
        caution(ui, cx, "caution-quench-steam");
    }
}
