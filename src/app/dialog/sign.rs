//! Answering for a finding: who, and why.

use eframe::egui::{Id, RichText, Ui};

use super::Answer;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::{button, heading, text};
use crate::calc::Weight;
use crate::calc::finding::KINDS;
use crate::job::{Place, Role};
use crate::paper::words::finding_sentence;

/// Who answers for it, and why.
pub fn show(
    ui: &mut Ui,
    cx: &mut Cx<'_>,
    (kind, place): (&'static str, Place),
    (hands, reason, failed): (&mut String, &mut String, &mut Option<String>),
    answer: &mut Option<Answer>,
) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("sign-title"), "", &tokens);
    if let Some(found) = cx.computed.at(place).find(|found| found.kind.key == kind) {
        ui.label(finding_sentence(found, &cx.computed.book, &cx.words()));
    }
    ui.add_space(8.0);
    let stop = KINDS.iter().any(|known| known.key == kind && known.weight == Weight::Stop);
    let may = |role: Role| role == Role::Master || (!stop && role == Role::Caster);
    let options: Vec<(String, String)> = cx
        .computed
        .sound_studio
        .hands
        .iter()
        .filter(|hand| may(hand.role))
        .map(|hand| (hand.initials.clone(), hand.initials.clone()))
        .collect();
    if options.is_empty() {
        ui.label(RichText::new(cx.label("sign-master")).color(tokens.stop));
    }
    let label = cx.label("sign-hands");
    ui.label(RichText::new(&label).color(tokens.ink2));
    let now = Some(hands.clone()).filter(|hands| !hands.is_empty());
    if let Some(chosen) = choice(ui, cx, (Id::unique("sign-hands"), &label, 200.0), now.as_ref(), &options, false) {
        *hands = chosen.unwrap_or_default();
    }
    let label = cx.label("sign-reason");
    ui.label(RichText::new(&label).color(tokens.ink2));
    if let Some(why) = text::text(ui, cx, Id::unique("sign-reason"), &label, reason, 460.0) {
        *reason = why;
    }
    heading::says(ui, &cx.label("sign-says"), &tokens);
    if let Some(why) = failed {
        ui.label(RichText::new(why.as_str()).color(tokens.stop));
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("sign-do"), &tokens).clicked() {
            if reason.trim().is_empty() || hands.is_empty() {
                *failed = Some(cx.label("sign-no-reason"));
            } else {
                *answer = Some(Answer::Sign(kind, place, hands.clone(), reason.clone()));
            }
        }
        if button::plain(ui, &cx.label("do-cancel"), &tokens).clicked() {
            *answer = Some(Answer::Cancel);
        }
    });
}
