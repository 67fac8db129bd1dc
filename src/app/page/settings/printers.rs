//! Printers, how they are set resin by resin, and how true they print.

mod calibrations;
mod gauges;
mod lines;
mod resins;

use eframe::egui::{Id, Ui};

use super::kept::{keep, kept};
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::job::{Printer, Studio};
use crate::quantity::{Finite, Kind, print};

/// Width of a name.
const WIDE: f32 = 240.0;

fn chosen_id() -> Id {
    Id::unique("printers-chosen")
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("printers-says"), &tokens);
    let printers = &cx.studio.printers;
    let name = kept(ui, chosen_id());
    let chosen = printers.iter().position(|printer| printer.name == name).or((!printers.is_empty()).then_some(0));
    rows(ui, "printers", printers.len(), |ui, place| {
        let printer = &printers[place];
        if choose(ui, cx, chosen == Some(place), &printer.name, &about(cx, printer)) {
            keep(ui, chosen_id(), printer.name.clone());
        }
    });
    if button::plain(ui, &cx.label("printer-add"), &tokens).clicked() {
        let name = free_name(cx.studio, &cx.label("printer-new"));
        keep(ui, chosen_id(), name.clone());
        cx.edit_studio("edit-printer-add", |studio| studio.printers.push(Printer { name, ..Printer::default() }));
    }
    if let Some(at) = chosen {
        let printer = cx.studio.printers[at].clone();
        ui.add_space(2.0 * STEP);
        one(ui, cx, at, &printer);
        resins::show(ui, cx, at, &printer);
        ui.add_space(STEP);
        take_out(ui, cx, at, &printer);
    }
    calibrations::show(ui, cx);
}

/// A name that no printer has.
fn free_name(studio: &Studio, word: &str) -> String {
    let taken = |name: &str| studio.printers.iter().any(|printer| printer.name == name);
    (1..u32::MAX).map(|number| format!("{word} {number}")).find(|name| !taken(name)).unwrap_or_default()
}

/// Its plate and height.
fn about(cx: &Cx<'_>, printer: &Printer) -> String {
    let length = |length: Finite| print(length.get(), Kind::Length, cx.style).to_string();
    let sides = [printer.plate_x_mm, printer.plate_y_mm, printer.height_mm];
    sides.into_iter().flatten().map(length).collect::<Vec<_>>().join(" × ")
}

/// Sets a length of a printer.
type Length = fn(&mut Printer, Option<Finite>);

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, printer: &Printer) {
    let tokens = cx.tokens;
    let label = cx.label("printer-name");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("printer-name", at)), &label, &printer.name, WIDE)) {
        // Two printers of one name would be one and the same to every run.
        let taken = cx.studio.printers.iter().any(|other| other.name.trim() == name.trim());
        if !name.trim().is_empty() && !taken {
            keep(ui, chosen_id(), name.clone());
            rename(cx, at, name);
        }
    }
    let lengths: [(&str, Option<Finite>, Length); 4] = [
        ("printer-plate-x", printer.plate_x_mm, |printer, length| printer.plate_x_mm = length),
        ("printer-plate-y", printer.plate_y_mm, |printer, length| printer.plate_y_mm = length),
        ("printer-height", printer.height_mm, |printer, length| printer.height_mm = length),
        ("printer-gap", printer.gap_mm, |printer, length| printer.gap_mm = length),
    ];
    for (key, now, set) in lengths {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, at)), &label, Kind::Length).now(now.map(Finite::get));
        if let Some(length) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            edit(cx, at, move |printer| set(printer, length));
        }
    }
    let label = cx.label("printer-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("printer-notes", at)), &label, &printer.notes, 320.0)) {
        edit(cx, at, move |printer| printer.notes = said);
    }
}

fn take_out(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, printer: &Printer) {
    // A printer that a run of this batch names stays: the run would name nothing.
    let named = cx.job.prints.iter().any(|run| run.printer.trim() == printer.name.trim());
    if button::outlined(ui, &cx.label("printer-take-out"), &cx.tokens, !named).on_disabled_hover_text(cx.label("printer-named")).clicked() {
        cx.edit_studio("edit-printer-out", move |studio| {
            if at < studio.printers.len() {
                studio.printers.remove(at);
            }
        });
    }
}

/// Another name; calibrations, and runs of this batch, follow it.
fn rename(cx: &mut Cx<'_>, at: usize, name: String) {
    let Some(before) = cx.studio.printers.get(at).map(|printer| printer.name.trim().to_owned()) else { return };
    cx.edit_both("edit-printer", move |job, studio| {
        job.prints.iter_mut().filter(|run| run.printer.trim() == before).for_each(|run| run.printer.clone_from(&name));
        let calibrations = studio.calibrations.iter_mut().filter(|calibration| calibration.printer.trim() == before);
        calibrations.for_each(|calibration| calibration.printer.clone_from(&name));
        if let Some(printer) = studio.printers.get_mut(at) {
            printer.name = name;
        }
    });
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Printer) + 'static) {
    cx.edit_studio("edit-printer", move |studio| {
        if let Some(printer) = studio.printers.get_mut(at) {
            change(printer);
        }
    });
}
