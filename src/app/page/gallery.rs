//! Every house widget in its states, by name: for looking at, and for checks of pictures. Nothing here is part of a batch.

use eframe::egui::{Id, RichText, Ui};

use super::settings::kept::{keep, kept};
use super::settings::sections::above;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::mark::mark;
use crate::app::widget::moment::{day, moment};
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, finding, heading};
use crate::calc::{Finding, Weight};
use crate::paper::words::weight_words;
use crate::quantity::Kind;

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-gallery"), &cx.label("gallery-about"), &tokens);
    heading::says(ui, &cx.label("gallery-says"), &tokens);
    heading::group(ui, &cx.label("gallery-numbers"), &tokens);
    numbers(ui, cx);
    heading::group(ui, &cx.label("gallery-words"), &tokens);
    words(ui, cx);
    heading::group(ui, &cx.label("gallery-choices"), &tokens);
    choices(ui, cx);
    heading::group(ui, &cx.label("gallery-figures"), &tokens);
    figures(ui, cx);
    heading::group(ui, &cx.label("gallery-buttons"), &tokens);
    buttons(ui, cx);
    cx.folded(ui, "gallery-fold", |ui, cx| {
        heading::says(ui, &cx.label("gallery-folded"), &cx.tokens.clone());
    });
    heading::group(ui, &cx.label("gallery-marks"), &tokens);
    marks(ui, cx);
    heading::group(ui, &cx.label("gallery-findings"), &tokens);
    findings(ui, cx);
    heading::group(ui, &cx.label("gallery-empty"), &tokens);
    heading::empty(ui, &cx.label("gallery-empty-what"), &cx.label("gallery-empty-first"), &tokens);
}

fn numbers(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let states = [
        ("gallery-number-empty", Kind::Mass, None, None),
        ("gallery-number-default", Kind::Temperature, None, Some(21.0)),
        ("gallery-number-filled", Kind::Length, Some(88.9), None),
        ("gallery-number-both", Kind::Ratio, Some(0.40), Some(0.38)),
        ("gallery-number-duration", Kind::Duration, Some(95.0), None),
    ];
    for (key, kind, now, default) in states {
        let label = cx.label(key);
        row(ui, &label, &tokens, |ui| {
            let field = Number::new(Id::unique(key), &label, kind).now(now).default(default);
            let _ = number(ui, cx, &field);
        });
    }
    refused(ui, cx);
    let label = cx.label("gallery-number-large");
    row(ui, &label, &tokens, |ui| {
        let field = Number::new(Id::unique("gallery-number-large"), &label, Kind::Mass).now(Some(184.6)).width(232.0).large();
        let _ = number(ui, cx, &field);
    });
}

/// A field that refuses whatever it is given: what is written in it stays, with its reason.
fn refused(ui: &mut Ui, cx: &Cx<'_>) {
    use crate::app::widget::entry::{Entry, Refusal, entry};
    let label = cx.label("gallery-number-refused");
    let (says, reading) = (cx.label("gallery-refusal"), cx.label("gallery-reading"));
    row(ui, &label, &cx.tokens, |ui| {
        let field = Entry { unit: "g", right: true, ..Entry::new(Id::unique("gallery-number-refused"), &label, String::new()) };
        let why = Refusal { says, readings: vec![(reading, "12".to_owned())] };
        let _ = entry(ui, &field, &cx.tokens, |_| Err(why.clone()));
    });
}

fn words(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let place = Id::unique("gallery-text");
    let label = cx.label("gallery-text");
    row(ui, &label, &tokens, |ui| {
        let now = kept(ui, place);
        if let Some(words) = text(ui, cx, place.with("field"), &label, &now, 232.0) {
            keep(ui, place, words);
        }
    });
    let label = cx.label("gallery-notes");
    row(ui, &label, &tokens, |ui| {
        let _ = notes(ui, cx, Id::unique("gallery-notes"), &label, "", 320.0);
    });
    let label = cx.label("gallery-day");
    row(ui, &label, &tokens, |ui| {
        let _ = day(ui, cx, Id::unique("gallery-day"), &label, Some(cx.setting.at), 132.0);
    });
    let label = cx.label("gallery-moment");
    row(ui, &label, &tokens, |ui| {
        let at = Some(cx.setting.at.at(9, 30, 0, 0));
        let _ = moment(ui, cx, Id::unique("gallery-moment"), &label, at, (168.0, false));
    });
}

fn choices(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let options = [(1_u32, cx.label("gallery-choice-one")), (2, cx.label("gallery-choice-two"))];
    for (key, now) in [("gallery-choice-none", None), ("gallery-choice-made", Some(2)), ("gallery-choice-gone", Some(3))] {
        let label = cx.label(key);
        row(ui, &label, &tokens, |ui| {
            let _ = choice(ui, cx, (Id::unique(key), &label, 168.0), now.as_ref(), &options, true);
        });
    }
}

/// Figures of the open batch: one that is known, one that is missing, large and small.
fn figures(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let book = &cx.computed.book;
    let known = book.figures().find(|figure| figure.value.number().is_some()).map(|figure| figure.id);
    let missing = book.figures().find(|figure| figure.value.cause().is_some()).map(|figure| figure.id);
    for (key, id) in [("gallery-figure-known", known), ("gallery-figure-missing", missing)] {
        row(ui, &cx.label(key), &tokens, |ui| match id {
            Some(id) => {
                figure(ui, cx, id, Look::ROW);
            }
            None => {
                heading::says(ui, &cx.label("gallery-figure-none"), &tokens);
            }
        });
    }
    let Some(id) = known else { return };
    row(ui, &cx.label("gallery-figure-chosen"), &tokens, |ui| {
        figure(ui, cx, id, Look::ROW);
        if button::link(ui, &cx.label("gallery-figure-choose"), &tokens).clicked() {
            cx.choose(id, true);
        }
    });
    above(ui, &cx.label("gallery-figure-large"), 240.0, &tokens, |ui| figure(ui, cx, id, Look::LARGE));
}

fn buttons(ui: &mut Ui, cx: &Cx<'_>) {
    let tokens = cx.tokens;
    ui.horizontal_wrapped(|ui| {
        let _ = button::main(ui, &cx.label("gallery-button-main"), &tokens);
        let _ = button::plain(ui, &cx.label("gallery-button-plain"), &tokens);
        let _ = button::outlined(ui, &cx.label("gallery-button-grey"), &tokens, false);
        let _ = button::link(ui, &cx.label("gallery-button-link"), &tokens);
    });
}

fn marks(ui: &mut Ui, cx: &Cx<'_>) {
    let tokens = cx.tokens;
    for weight in [Weight::Stop, Weight::Caution, Weight::Note] {
        let words = weight_words(weight, cx.texts);
        ui.horizontal(|ui| {
            for side in [13.0, 20.0, 32.0] {
                mark(ui, weight, side, &words, &tokens);
            }
            ui.label(RichText::new(&words).color(crate::app::widget::mark::colour(weight, &tokens)));
        });
        ui.add_space(STEP);
    }
}

/// The first finding of each weight in the open batch.
fn findings(ui: &mut Ui, cx: &mut Cx<'_>) {
    let first = |weight| cx.computed.of_weight(weight).next().cloned();
    let found: Vec<Finding> = [Weight::Stop, Weight::Caution, Weight::Note].into_iter().filter_map(first).collect();
    if found.is_empty() {
        heading::says(ui, &cx.label("findings-none"), &cx.tokens.clone());
    }
    for one in &found {
        finding::finding(ui, cx, one, true);
    }
}
