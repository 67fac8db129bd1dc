//! The figures of one offer: its lines, what is asked for beside them, and the sums.

use eframe::egui::{Align, Label, Layout, RichText, Ui, vec2};

use crate::app::cx::Cx;
use crate::app::page::settings::sections::heads;
use crate::app::theme::{ROW, STEP, size};
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::row::row;
use crate::calc::{Id, OfferFigures, OfferLineFigures, WorkFor};
use crate::paper::words::one_line;

/// Width of a sum.
const SUM: f32 = 116.0;
/// Width of a line's name.
const NAME: f32 = 140.0;

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, offer: &OfferFigures) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("offer-lines"), &tokens);
    let columns = [("offer-line", NAME), ("offer-metal", SUM), ("offer-other", SUM), ("offer-sum", SUM)];
    heads(ui, &columns.map(|(key, width)| (cx.label(key), width)), &tokens);
    for line in &offer.lines {
        one(ui, cx, line);
    }
    if !offer.besides.is_empty() {
        heading::group(ui, &cx.label("offer-besides"), &tokens);
        for (what, id) in &offer.besides {
            row(ui, &what_words(cx, what), &tokens, |ui| figure(ui, cx, *id, Look::ROW));
        }
        if let Some(all) = offer.besides_all.filter(|_| offer.besides.len() > 1) {
            row(ui, &cx.label("offer-besides-all"), &tokens, |ui| figure(ui, cx, all, Look::ROW));
        }
    }
    ui.add_space(2.0 * STEP);
    if let Some([net, tax, total]) = offer.sums {
        row(ui, &cx.label("offer-net"), &tokens, |ui| figure(ui, cx, net, Look::ROW));
        row(ui, &cx.label("offer-tax"), &tokens, |ui| figure(ui, cx, tax, Look::ROW));
        row(ui, &cx.label("offer-total"), &tokens, |ui| figure(ui, cx, total, Look { size: size::FIGURE, ..Look::ROW.width(200.0) }));
    }
    if let Some(rest) = offer.rest {
        row(ui, &cx.label("offer-rest"), &tokens, |ui| figure(ui, cx, rest, Look::ROW));
    }
}

/// A line: its name, its metal, its work, its sum; the work in detail under it.
fn one(ui: &mut Ui, cx: &mut Cx<'_>, line: &OfferLineFigures) {
    let tokens = cx.tokens;
    let name = design(cx, line);
    let metal: Option<Id> = cx.computed.report.lines.get(line.index).map(|figures| figures.cost);
    ui.horizontal(|ui| {
        ui.allocate_ui_with_layout(vec2(NAME, ROW), Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(NAME);
            ui.add(Label::new(RichText::new(&name).color(tokens.ink)).truncate());
        });
        for id in [metal, line.other, Some(line.sum)] {
            match id {
                Some(id) => {
                    figure(ui, cx, id, Look::ROW.width(SUM));
                }
                None => {
                    ui.allocate_space(vec2(SUM, ROW));
                }
            }
        }
    });
    for (what, id) in &line.work {
        let words = what_words(cx, what);
        ui.horizontal(|ui| {
            ui.allocate_ui_with_layout(vec2(NAME + SUM + 8.0, ROW), Layout::left_to_right(Align::Center), |ui| {
                ui.set_min_width(NAME + SUM + 8.0);
                ui.add_space(4.0 * STEP);
                ui.add(Label::new(RichText::new(words).size(size::SMALL).color(tokens.ink2)).truncate());
            });
            figure(ui, cx, *id, Look::ROW.width(SUM));
        });
    }
}

/// How many of what: never the client.
fn design(cx: &Cx<'_>, line: &OfferLineFigures) -> String {
    let found = cx.computed.sound.lines().find(|(_, other)| other.id == line.line);
    found.map_or_else(String::new, |(_, found)| {
        let pieces = u64::from(crate::job::Job::pieces_of(found));
        cx.say("offer-design", &[("pieces", pieces.into()), ("design", one_line(&found.design).into())])
    })
}

fn what_words(cx: &Cx<'_>, what: &WorkFor) -> String {
    match what {
        WorkFor::Extra(words) => crate::paper::words::clean(words, cx.texts),
        WorkFor::Finishing => cx.label("offer-finishing"),
        WorkFor::Making => cx.label("offer-making"),
    }
}
