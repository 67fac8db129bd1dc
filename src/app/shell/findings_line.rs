//! The findings line: how many of each weight, the worst of each, and the list when it is open.

use eframe::egui::{Align, Label, Layout, Rect, RichText, ScrollArea, Sense, Ui, WidgetInfo, accesskit::Role, vec2};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::patterns_run::Reading;
use crate::app::widget::finding::finding;
use crate::app::widget::mark::{colour, mark};
use crate::app::widget::{button, heading};
use crate::calc::{Finding, Weight};
use crate::paper::words::{finding_sentence, weight_words};

/// Shows the line. `reading` says how far the reading of pattern files is.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, reading: Option<Reading>) {
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
            if let Some(reading) = reading {
                progress(ui, cx, reading);
            }
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| counts(ui, cx));
        });
    });
}

/// How far the reading of pattern files is, with a way to stop it.
fn progress(ui: &mut Ui, cx: &mut Cx<'_>, reading: Reading) {
    let tokens = cx.tokens;
    if button::link(ui, &cx.label("do-stop-reading"), &tokens).clicked() {
        cx.act(Action::StopReading);
    }
    let args = [("read", reading.read.into()), ("all", reading.all.into())];
    let words = cx.say("findings-reading", &args);
    let left = reading.seconds_left.map(|left| cx.say("findings-reading-left", &[("seconds", left.into())]));
    let (rect, response) = ui.allocate_exact_size(vec2(90.0, 8.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::ProgressIndicator, true, &words));
    #[allow(clippy::cast_precision_loss, reason = "a share of a bar")]
    let share = reading.read as f32 / reading.all.max(1) as f32;
    ui.painter().rect_filled(rect, 2, tokens.rule);
    ui.painter().rect_filled(Rect::from_min_size(rect.min, vec2(rect.width() * share, rect.height())), 2, tokens.act);
    let words = [Some(words), left].into_iter().flatten().collect::<Vec<_>>().join(", ");
    ui.label(RichText::new(words).color(tokens.ink2));
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
