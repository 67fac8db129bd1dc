//! The findings line: how many of each weight, the worst of each, and the list when it is open.

use eframe::egui::{Align, Label, Layout, RichText, ScrollArea, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::widget::finding::finding;
use crate::app::widget::mark::{colour, mark};
use crate::app::widget::{button, heading};
use crate::calc::{Finding, Weight};
use crate::paper::words::{finding_sentence, weight_words};

/// Shows the line. `reading` says how far the reading of pattern files is.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, reading: Option<(usize, usize)>) {
    let tokens = cx.tokens;
    ui.horizontal_centered(|ui| {
        ui.add_space(12.0);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.add_space(8.0);
            let dark = if ui.ctx().theme() == eframe::egui::Theme::Dark { "findings-dark" } else { "findings-light" };
            if button::link(ui, &cx.label(dark), &tokens).clicked() {
                cx.act(Action::Theme);
            }
            let metric = cx.style.units == crate::quantity::Units::METRIC;
            if button::link(ui, &cx.label(if metric { "findings-unit-metric" } else { "findings-unit-trade" }), &tokens).clicked() {
                cx.act(Action::Units);
            }
            if let Some((read, all)) = reading {
                ui.label(RichText::new(cx.say("findings-reading", &[("read", read.into()), ("all", all.into())])).color(tokens.ink2));
                ui.spinner();
            }
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| counts(ui, cx));
        });
    });
}

fn counts(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let open = |finding: &&Finding| finding.accepted.is_none();
    let mut any = false;
    for (weight, key) in [(Weight::Stop, "findings-stop"), (Weight::Caution, "findings-caution"), (Weight::Note, "findings-note")] {
        let count = cx.computed.of_weight(weight).filter(open).count();
        if count == 0 {
            continue;
        }
        any = true;
        let words = cx.say(key, &[("count", count.into())]);
        mark(ui, weight, 14.0, &weight_words(weight, cx.texts), &tokens);
        let head = RichText::new(&words).color(colour(weight, &tokens)).strong();
        if ui.add(eframe::egui::Button::new(head).frame(false)).clicked() {
            cx.act(Action::Findings);
        }
        let first = cx.computed.of_weight(weight).find(open).map(|first| finding_sentence(first, &cx.computed.book, &cx.words()));
        if let Some(first) = first.filter(|_| weight != Weight::Note) {
            ui.scope(|ui| {
                ui.set_max_width((ui.available_width() - 190.0).clamp(0.0, 330.0));
                ui.add(Label::new(RichText::new(first).size(12.5).color(tokens.ink)).truncate());
            });
        }
    }
    if !any {
        ui.label(RichText::new(cx.label("findings-none")).color(tokens.ink2));
    }
}

/// The whole list, and what was left out as a fault.
pub fn list(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        heading::group(ui, &cx.label("findings-title"), &tokens);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            if button::link(ui, &cx.label("do-close"), &tokens).clicked() {
                cx.act(Action::Findings);
            }
        });
    });
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        for fault in &cx.computed.faults {
            ui.horizontal_top(|ui| {
                mark(ui, Weight::Caution, 14.0, &cx.label("findings-faults"), &tokens);
                ui.add(Label::new(format!("{} {fault}", cx.label("findings-faults"))).wrap());
            });
        }
        let all = cx.computed.report.findings.clone();
        for one in &all {
            finding(ui, cx, one, true);
        }
    });
}
