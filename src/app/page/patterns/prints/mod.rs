//! Print runs: what is printed together, how long it takes, how much resin and how many plates, and what was done with it afterwards.

mod care;
mod rows;

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::page::take_out::take_out;
use crate::app::theme::STEP;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading, order, rows as lists};
use crate::job::{Job, Place, PrintId, PrintRun};
use crate::stock::PatternMaterial;

/// Width of a choice.
const WIDE: f32 = 240.0;

/// Shows the runs.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("prints-says"), &tokens);
    let job = cx.job;
    lists::rows(ui, "prints", job.prints.len(), |ui, place| {
        let run = &job.prints[place];
        let name = crate::app::names::print_run(cx, run.id);
        if lists::choose(ui, cx, cx.view.print == Some(run.id), &name, run.printer.trim()) {
            let id = run.id;
            cx.look(move |view| view.print = Some(id));
        }
    });
    if button::plain(ui, &cx.label("prints-add"), &tokens).clicked() {
        add(ui, cx);
    }
    if let Some(run) = job.prints.iter().find(|run| Some(run.id) == cx.view.print) {
        ui.add_space(STEP);
        what(ui, cx, run);
        rows::show(ui, cx, run);
        figures(ui, cx, run.id);
        care::show(ui, cx, run);
        last(ui, cx, run);
    }
}

/// A run on the studio's first printer, with the resin it is set for first.
fn add(ui: &Ui, cx: &mut Cx<'_>) {
    let id = PrintId(cx.job.prints.iter().map(|run| run.id.0).max().unwrap_or(0) + 1);
    let printer = cx.studio.printers.first();
    let name = printer.map(|printer| printer.name.clone()).unwrap_or_default();
    let material = printer.and_then(|printer| printer.settings.first()).and_then(|setting| setting.material.clone());
    cx.look(move |view| view.print = Some(id));
    order::focus(ui.ctx(), Id::unique(("print-name", id.0)));
    cx.edit("edit-prints-add", move |job| job.prints.push(PrintRun { id, printer: name, material, ..PrintRun::default() }));
}

fn what(ui: &mut Ui, cx: &mut Cx<'_>, run: &PrintRun) {
    let (tokens, id) = (cx.tokens, run.id);
    let label = cx.label("prints-name");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("print-name", id.0)), &label, &run.name, WIDE)) {
        change(cx, id, move |run| run.name = name);
    }
    let label = cx.label("prints-printer");
    let printers: Vec<(String, String)> = cx.studio.printers.iter().map(|printer| (printer.name.clone(), printer.name.clone())).collect();
    let place = (Id::unique(("print-printer", id.0)), label.as_str(), WIDE);
    let now = Some(&run.printer).filter(|name| !name.trim().is_empty());
    if let Some(printer) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, now, &printers, true)) {
        change(cx, id, move |run| run.printer = printer.unwrap_or_default());
    }
    let label = cx.label("prints-material");
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    let place = (Id::unique(("print-material", id.0)), label.as_str(), WIDE);
    if let Some(material) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, run.material.as_ref(), words)) {
        change(cx, id, move |run| run.material = material);
    }
}

fn figures(ui: &mut Ui, cx: &mut Cx<'_>, id: PrintId) {
    let tokens = cx.tokens;
    let Some(found) = cx.computed.report.prints.iter().find(|figures| figures.id == id).cloned() else { return };
    heading::group(ui, &cx.label("prints-figures"), &tokens);
    let mut all = vec![
        ("prints-highest", found.highest),
        ("prints-layers", found.layers),
        ("prints-time", found.time),
        ("prints-plates", found.plates),
        ("prints-plates-least", found.plates_least),
        ("prints-time-all", found.time_all),
        ("prints-resin", found.resin),
        ("prints-mass", found.mass),
    ];
    all.extend(found.cost.map(|cost| ("prints-cost", cost)));
    for (key, figure_id) in all {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, figure_id, Look::ROW.width(190.0)));
    }
}

fn last(ui: &mut Ui, cx: &mut Cx<'_>, run: &PrintRun) {
    let (tokens, id) = (cx.tokens, run.id);
    let label = cx.label("prints-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("print-notes", id.0)), &label, &run.notes, 320.0)) {
        change(cx, id, move |run| run.notes = said);
    }
    take_out(ui, cx, ("prints-remove", "edit-prints-remove"), Place::Print(id), move |job: &mut Job| job.prints.retain(|run| run.id != id));
}

/// Changes a run.
fn change(cx: &mut Cx<'_>, id: PrintId, change: impl FnOnce(&mut PrintRun) + 'static) {
    cx.edit("edit-prints", move |job| {
        if let Some(run) = job.prints.iter_mut().find(|run| run.id == id) {
            change(run);
        }
    });
}
