//! What the kiln really did: its log, the answer for every mould, large, and what its reader had to decide.

use eframe::egui::{FontId, Id, Label, RichText, Ui};

use super::change;
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::{STEP, Tokens, bold, size};
use crate::app::widget::mark::mark;
use crate::app::widget::moment::moment;
use crate::app::widget::row::row;
use crate::app::widget::{button, heading};
use crate::calc::mould_heat::{ByLog, Verdict};
use crate::calc::{HeatFigures, Weight};
use crate::job::{Burnout, KilnReadings};
use crate::kiln_log::find_drops;
use crate::paper::cut::{CutWords, answer};
use crate::paper::words::Words;

/// Shows it, or how to read one.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("log-heading"), &tokens);
    let Some(log) = &load.log else {
        ui.horizontal_wrapped(|ui| {
            if button::plain(ui, &cx.label("do-read-log"), &tokens).clicked() {
                cx.act(Action::ReadLog);
            }
            ui.label(RichText::new(cx.label("log-none")).color(tokens.ink2));
        });
        return;
    };
    answers(ui, cx, load);
    let id = load.id;
    let label = cx.label("log-start");
    let place = Id::unique(("log-start", id.0));
    if let Some(at) = row(ui, &label, &tokens, |ui| moment(ui, cx, place, &label, log.start, (160.0, false))) {
        change(cx, "edit-log-start", id, move |load| {
            if let Some(log) = &mut load.log {
                log.start = at;
            }
        });
    }
    for sentence in sentences(cx, log) {
        heading::says(ui, &sentence, &tokens);
    }
    ui.horizontal(|ui| {
        if button::plain(ui, &cx.label("log-another"), &tokens).clicked() {
            cx.act(Action::ReadLog);
        }
        if button::plain(ui, &cx.label("log-remove"), &tokens).clicked() {
            change(cx, "edit-log-remove", id, |load| load.log = None);
        }
    });
    ui.add_space(STEP);
}

/// How long the log is, where the kiln fell, and what its reader had to decide.
fn sentences(cx: &Cx<'_>, log: &KilnReadings) -> Vec<String> {
    let points: Vec<[f64; 2]> = log.points.iter().map(|(minutes, c)| [minutes.get(), c.get()]).collect();
    let words = words(cx);
    let mut all = vec![format!("{}  {}", log.file, words.log(&points, log.start))];
    for drop in find_drops(&points) {
        all.push(words.drop([drop.start_min, drop.fallen_min], [drop.start_c, drop.lowest_c], drop.recovers));
    }
    all.extend(log.notes.lines().map(str::to_owned));
    all
}

fn words<'a>(cx: &Cx<'a>) -> CutWords<'a> {
    CutWords { job: cx.job, words: Words { texts: cx.texts, style: cx.style, zone: &cx.setting.zone, currency: "" } }
}

/// One large answer for each mould; one for all where they agree.
fn answers(ui: &mut Ui, cx: &Cx<'_>, load: &Burnout) {
    let tokens = cx.tokens;
    let moulds: Vec<(&HeatFigures, Option<&ByLog>)> = (cx.computed.report.heat.iter())
        .filter(|one| one.load == load.id)
        .filter_map(|one| Some((one, one.log.as_ref()?.by.as_ref())))
        .collect();
    if moulds.is_empty() {
        heading::says(ui, &cx.label("log-no-mould"), &tokens);
        return;
    }
    let goes_on = moulds.iter().any(|(mould, _)| mould.log.as_ref().is_some_and(|log| log.goes_on));
    if moulds.iter().any(|(_, by)| by.is_none()) {
        heading::says(ui, &cx.label("heat-mould-computing"), &tokens);
    }
    let known: Vec<_> = moulds.into_iter().filter_map(|(mould, by)| Some((mould.flask, by?))).collect();
    for (names, by) in words(cx).alike(&known) {
        ui.add_space(STEP);
        ui.horizontal(|ui| {
            let (weight, ink) = look(by.verdict, &tokens);
            if let Some(weight) = weight {
                let name = crate::paper::words::weight_words(weight, cx.texts);
                mark(ui, weight, 22.0, &name, &tokens);
            }
            let name = cx.say("name-flask", &[("name", names.into())]);
            let said = cx.say("log-answer", &[("flask", name.into()), ("answer", cx.label(answer(by.verdict)).into())]);
            ui.add(Label::new(RichText::new(said).font(FontId::new(size::TITLE, bold())).color(ink)).wrap());
        });
        ui.add(Label::new(RichText::new(words(cx).why(by)).color(tokens.ink)).wrap());
    }
    if goes_on {
        heading::says(ui, &cx.label("log-goes-on"), &tokens);
    }
    ui.add_space(STEP);
}

const fn look(verdict: Verdict, tokens: &Tokens) -> (Option<Weight>, eframe::egui::Color32) {
    match verdict {
        Verdict::NotFired | Verdict::Reheat => (None, tokens.act),
        Verdict::Marginal => (Some(Weight::Caution), tokens.caution),
        Verdict::Scrap => (Some(Weight::Stop), tokens.stop),
    }
}
