//! The work before the pour: every step over the clock, with nights and days off; what may be put at another time is dragged there.

mod bars;

use eframe::egui::{Id as WidgetId, Label, RichText, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::cell;
use crate::app::widget::{button, heading};
use crate::calc::work::{WorkFigures, WorkRow, may_be_pinned, said_by_hand, step_key, why};
use crate::job::{Burnout, WorkStep};
use crate::paper::words::{moment_of, moment_words};
use crate::quantity::{Finite, Kind};

/// Widths of step, length, begins, ends, and the rest.
const COLUMNS: [f32; 4] = [122.0, 84.0, 118.0, 118.0];

/// Shows it, where pour and programme are known.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let computed = cx.computed;
    let Some(work) = computed.report.work.iter().find(|work| work.load == load.id) else { return };
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("work-heading"), &tokens);
    if cx.studio.hours.is_empty() {
        heading::says(ui, &cx.label("work-no-hours"), &tokens);
    }
    if let Some((step, at)) = bars::show(ui, cx, work) {
        pin(cx, load, step, Some(at));
    }
    ui.horizontal(|ui| {
        for (key, width) in ["work-step", "work-takes", "work-begins-at", "work-ends-at"].into_iter().zip(COLUMNS) {
            cell(ui, &cx.label(key), width, 12.0, tokens.ink2);
        }
    });
    for row in &work.rows {
        one(ui, cx, load, row);
    }
    other_pours(ui, cx, load, work);
    ui.add_space(STEP);
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, row: &WorkRow) {
    let (tokens, id, step) = (cx.tokens, load.id, row.step);
    let name = cx.label(step_key(step));
    ui.horizontal(|ui| {
        cell(ui, &name, COLUMNS[0], 14.0, tokens.ink);
        if said_by_hand(step) {
            let label = format!("{name}, {}", cx.label("work-takes"));
            let said = load.step_minutes.get(&step).map(|minutes| minutes.get());
            let usual = cx.computed.book.number(row.minutes).filter(|_| said.is_none());
            let field = Number::new(WidgetId::unique(("work-minutes", id.0, key(step))), &label, Kind::Duration)
                .now(said)
                .default(usual)
                .width(COLUMNS[1]);
            if let Some(minutes) = number(ui, cx, &field) {
                change(cx, "edit-work-minutes", id, move |load| set_minutes(load, step, minutes));
            }
        } else {
            figure(ui, cx, row.minutes, Look::ROW.width(COLUMNS[1]));
        }
        figure(ui, cx, row.begins, Look { right: false, size: 13.0, ..Look::ROW.width(COLUMNS[2]) });
        figure(ui, cx, row.ends, Look { right: false, size: 13.0, ..Look::ROW.width(COLUMNS[3]) });
        if load.pins.contains_key(&step) && may_be_pinned(step) {
            let words = cx.label("work-let-go");
            if button::link(ui, &words, &tokens).accessible_name(format!("{words} {name}")).clicked() {
                pin(cx, load, step, None);
            }
        }
    });
    for problem in &row.row.problems {
        ui.horizontal(|ui| {
            ui.add_space(COLUMNS[0] + 4.0);
            ui.add(Label::new(RichText::new(cx.label(why(problem))).color(tokens.caution)).wrap());
        });
    }
}

/// Where something does not fit: pours that would.
fn other_pours(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, work: &WorkFigures) {
    let tokens = cx.tokens;
    for problem in &work.pour_problems {
        ui.add(Label::new(RichText::new(format!("{} {}", cx.label("work-pour"), cx.label(why(problem)))).color(tokens.caution)).wrap());
    }
    if work.possible.is_empty() {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(cx.label("work-possible")).color(tokens.ink2));
        for at in &work.possible {
            let Some(at) = moment_of(*at, &cx.setting.zone) else { continue };
            if button::plain(ui, &moment_words(at, cx.texts), &tokens).clicked() {
                change(cx, "edit-pour-at", load.id, move |load| load.pour_at = Some(at));
            }
        }
    });
}

fn pin(cx: &mut Cx<'_>, load: &Burnout, step: WorkStep, at: Option<f64>) {
    let at = at.and_then(|at| moment_of(at, &cx.setting.zone));
    change(cx, "edit-work-pin", load.id, move |load| {
        match at {
            Some(at) => load.pins.insert(step, at),
            None => load.pins.remove(&step),
        };
    });
}

fn set_minutes(load: &mut Burnout, step: WorkStep, minutes: Option<Finite>) {
    match minutes {
        Some(minutes) => load.step_minutes.insert(step, minutes),
        None => load.step_minutes.remove(&step),
    };
}

fn key(step: WorkStep) -> u32 {
    crate::calc::work::key_of(step).0
}
