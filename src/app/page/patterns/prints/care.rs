//! Wash, cure and rinse: what was done, what the resin bears, and what can hurt somebody meanwhile.

use eframe::egui::{Checkbox, Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::heading;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::job::{PrintId, PrintRun};
use crate::quantity::{Finite, Kind, print};
use crate::stock::PatternMaterial;

/// Shows it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, run: &PrintRun) {
    let (tokens, id) = (cx.tokens, run.id);
    heading::group(ui, &cx.label("prints-care"), &tokens);
    says(ui, cx, run);
    minutes(ui, cx, id, ("prints-washed", run.washed_min), |run, minutes| run.washed_min = minutes);
    minutes(ui, cx, id, ("prints-cured", run.cured_before_rinse_min), |run, minutes| run.cured_before_rinse_min = minutes);
    let mut rinsed = run.rinsed;
    if ui.add(Checkbox::new(&mut rinsed, cx.label("prints-rinsed"))).changed() {
        change(cx, id, move |run| run.rinsed = rinsed);
    }
    let label = cx.label("prints-surface");
    let options = [(true, cx.label("prints-surface-clean")), (false, cx.label("prints-surface-not-clean"))];
    let place = (Id::unique(("print-surface", id.0)), label.as_str(), 240.0);
    if let Some(clean) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, run.surface_clean.as_ref(), &options, true)) {
        change(cx, id, move |run| run.surface_clean = clean);
    }
}

/// What the resin bears, and the usual cautions.
fn says(ui: &mut Ui, cx: &mut Cx<'_>, run: &PrintRun) {
    let tokens = cx.tokens;
    let material = run.material.as_ref().and_then(|id| cx.computed.shelves.job.get::<PatternMaterial>(id.as_str()));
    let Some(after) = material.and_then(|material| material.after_print.as_ref()) else { return };
    let minutes = |value: f64| print(value, Kind::Duration, cx.style).to_string();
    let words = cx.say(
        "prints-bears",
        &[
            ("least", minutes(after.wash_min.low).into()),
            ("most", minutes(after.wash_min.high).into()),
            ("cure", minutes(after.cure_before_rinse_min.value).into()),
        ],
    );
    heading::says(ui, &words, &tokens);
    heading::says(ui, &cx.label("caution-uncured-resin"), &tokens);
    heading::says(ui, &cx.label("caution-solvent"), &tokens);
    heading::says(ui, &cx.label("prints-data-sheet"), &tokens);
}

fn minutes(ui: &mut Ui, cx: &mut Cx<'_>, id: PrintId, (key, now): (&'static str, Option<Finite>), set: fn(&mut PrintRun, Option<Finite>)) {
    let tokens = cx.tokens;
    let label = cx.label(key);
    let field = Number::new(Id::unique((key, id.0)), &label, Kind::Duration).now(now.map(Finite::get));
    if let Some(minutes) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, id, move |run| set(run, minutes));
    }
}
