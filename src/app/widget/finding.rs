//! A finding as it stands on a page: its mark, its sentence, who answers for it, and a way to answer.

use eframe::egui::{Label, RichText, Ui};

use super::button;
use super::mark::{colour, mark};
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::calc::Finding;
use crate::paper::words::{finding_sentence, one_line, weight_words};

/// Shows a finding. `with_place` adds a way to where it stands.
pub fn finding(ui: &mut Ui, cx: &mut Cx<'_>, finding: &Finding, with_place: bool) {
    let words = weight_words(finding.kind.weight, cx.texts);
    let sentence = finding_sentence(finding, &cx.computed.book, &cx.words());
    let said = sentence.clone();
    let tokens = cx.tokens;
    ui.horizontal_top(|ui| {
        ui.vertical(|ui| {
            ui.set_width(18.0);
            ui.add_space(6.0);
            mark(ui, finding.kind.weight, 14.0, &words, &tokens);
        });
        ui.vertical(|ui| {
            let ink = if finding.accepted.is_some() { tokens.ink2 } else { tokens.ink };
            let head = RichText::new(&words).color(colour(finding.kind.weight, &tokens)).strong();
            ui.horizontal_wrapped(|ui| {
                ui.spacing_mut().item_spacing.x = 5.0;
                ui.label(head);
                ui.add(Label::new(RichText::new(sentence).color(ink)).wrap());
            });
            if let Some(accepted) = finding.accepted.and_then(|index| cx.computed.sound.accepted.get(index)) {
                let args = [("hands", accepted.hands.clone().into()), ("reason", one_line(&accepted.reason).into())];
                ui.label(RichText::new(cx.say("finding-answered", &args)).size(12.0).color(tokens.ink2));
            }
            ui.horizontal(|ui| {
                // Heard alone, each says what it is about.
                let about = |cx: &Cx<'_>, key: &str| format!("{} {said}", cx.label(key));
                if with_place && button::link(ui, &cx.label("do-show"), &tokens).accessible_name(about(cx, "do-show")).clicked() {
                    cx.act(Action::Show(finding.place));
                }
                let may = finding.kind.may_be_signed && finding.accepted.is_none();
                if may && button::link(ui, &cx.label("do-answer"), &tokens).accessible_name(about(cx, "do-answer")).clicked() {
                    cx.act(Action::Answer(finding.kind.key, finding.place));
                }
            });
        });
    });
}

/// All findings of a page, under its figures.
pub fn of_page(ui: &mut Ui, cx: &mut Cx<'_>, belongs: impl Fn(&Finding) -> bool) {
    let found: Vec<Finding> = cx.computed.report.findings.iter().filter(|finding| belongs(finding)).cloned().collect();
    for one in &found {
        finding(ui, cx, one, false);
    }
}
