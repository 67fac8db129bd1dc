//! The last plan: its flasks as a table, what it leaves out, what is proven, and what it was reckoned with.

use eframe::egui::{Label, RichText, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::settings::sections::heads;
use crate::app::theme::{STEP, Tokens, bold};
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::calc::batch::{Kept, Outcome, Row, Stands};
use crate::paper::batch::PlanWords;

/// Widths of the columns: flask, alloy, pieces, metal, crucible, and keeping it. The alloy has what is left, as far as it is of use.
fn columns(ui: &Ui) -> [f32; 6] {
    let others: f32 = 82.0 + 44.0 + 74.0 + 54.0 + 48.0;
    let alloy = ui.available_width() - others - 5.0 * ui.spacing().item_spacing.x;
    [82.0, alloy.clamp(112.0, 180.0), 44.0, 74.0, 54.0, 48.0]
}

/// Shows it, where there is one.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let (tokens, planner) = (cx.tokens, cx.planner);
    let Some(found) = planner.found() else { return };
    let stale = planner.is_stale();
    let computed = cx.computed;
    let style = *cx.style;
    let (texts, zone) = (cx.texts, cx.setting.zone.clone());
    let words = crate::paper::words::Words { texts, style: &style, zone: &zone, currency: "" };
    let said = PlanWords { job: &computed.sound, shelf: &computed.shelves.job, words };
    heading::group(ui, &cx.label("plan-result"), &tokens);
    if stale {
        ui.add(Label::new(RichText::new(cx.label("plan-stale")).color(tokens.caution)).wrap());
    }
    let outcome = &found.outcome;
    heading::says(ui, &said.total(outcome), &tokens);
    heading::says(ui, &said.proof(outcome), &tokens);
    if let Some(words) = said.arranged(outcome) {
        heading::says(ui, &words, &tokens);
    }
    if !outcome.rows.is_empty() {
        table(ui, cx, outcome, &said);
    }
    if !outcome.left.is_empty() {
        heading::group(ui, &cx.label("plan-left-over"), &tokens);
        for left in &outcome.left {
            ui.add(Label::new(RichText::new(said.left(left)).color(tokens.ink)).wrap());
        }
    }
    if let Some(ask) = planner.ask() {
        heading::group(ui, &cx.label("plan-with"), &tokens);
        for words in said.reckoned(ask, !computed.sound_studio.flasks.is_empty()) {
            heading::says(ui, &words, &tokens);
        }
    }
    ui.add_space(STEP);
    let some = !stale && outcome.rows.iter().any(|row| !row.pieces.is_empty());
    if button::outlined(ui, &cx.label("plan-build"), &tokens, some).clicked() {
        cx.act(Action::BuildPlan);
    }
}

fn table(ui: &mut Ui, cx: &mut Cx<'_>, outcome: &Outcome, said: &PlanWords<'_>) {
    let tokens = cx.tokens;
    let widths = columns(ui);
    let keys =
        ["plan-column-flask", "plan-column-alloy", "plan-column-count", "plan-column-metal", "plan-column-crucible", "plan-column-keep"];
    let columns: Vec<(String, f32)> = keys.iter().zip(widths).map(|(key, width)| (cx.label(key), width)).collect();
    heads(ui, &columns, &tokens);
    for (place, row) in outcome.rows.iter().enumerate() {
        ui.horizontal_top(|ui| {
            cell(ui, widths[0], RichText::new(said.flask(row)).family(bold()).color(tokens.ink));
            let cells = [said.entry(&row.alloy), row.pieces.len().to_string(), said.metal(row), said.fill(row)];
            for (words, width) in cells.into_iter().zip(&widths[1..]) {
                cell(ui, *width, RichText::new(words).color(tokens.ink));
            }
            keep(ui, cx, place, row, &tokens);
        });
        ui.indent(("plan-pieces", place), |ui| {
            heading::says(ui, &said.pieces(&row.pieces), &tokens);
            if let Some(words) = said.stands(row) {
                let short = matches!(row.stands, Stands::Short { .. });
                ui.add(Label::new(RichText::new(words).color(if short { tokens.caution } else { tokens.ink })).wrap());
            }
        });
        ui.add_space(STEP);
    }
}

fn cell(ui: &mut Ui, width: f32, words: RichText) {
    ui.vertical(|ui| {
        ui.set_width(width);
        ui.add(Label::new(words).wrap());
    });
}

/// A planned flask is kept, and the plan asked again around it; or let go.
fn keep(ui: &mut Ui, cx: &mut Cx<'_>, place: usize, row: &Row, tokens: &Tokens) {
    // What hangs in a flask of the batch stays there anyhow.
    if row.flask.is_some() || row.pieces.is_empty() {
        return;
    }
    let holds = |kept: &Kept| kept.pieces.iter().all(|piece| row.pieces.contains(piece));
    let kept = cx.view.plan.kept.iter().any(holds);
    let key = if kept { "plan-let-go" } else { "plan-keep" };
    let name = numbered(&cx.label(key), place);
    if button::link(ui, &cx.label(key), tokens).accessible_name(name).clicked() {
        let this = Kept { vessel: row.vessel.clone(), pieces: row.pieces.clone() };
        cx.look(move |view| {
            if kept {
                view.plan.kept.retain(|other| !other.pieces.iter().all(|piece| this.pieces.contains(piece)));
            } else {
                view.plan.kept.push(this);
            }
        });
    }
}
