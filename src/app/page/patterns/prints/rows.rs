//! What a run prints: how many of which pattern, and its size where it lies turned.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::page::settings::sections::heads;
use crate::app::widget::choice::choice;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::calc::PrintRowFigures;
use crate::job::{PatternId, PrintId, PrintRow, PrintRun};
use crate::quantity::{Finite, Kind};

/// Widths of the columns.
const PATTERN: f32 = 96.0;
const COUNT: f32 = 48.0;
const SIDE: f32 = 68.0;
const FITS: f32 = 60.0;

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, run: &PrintRun) {
    let (tokens, id) = (cx.tokens, run.id);
    heading::group(ui, &cx.label("prints-rows"), &tokens);
    if !run.rows.is_empty() {
        let columns = [
            ("prints-row-pattern", PATTERN),
            ("prints-row-count", COUNT),
            ("prints-row-x", SIDE),
            ("prints-row-y", SIDE),
            ("prints-row-height", SIDE),
            ("prints-row-fits", FITS),
        ];
        heads(ui, &columns.map(|(key, width)| (cx.label(key), width)), &tokens);
    }
    let found = cx.computed.report.prints.iter().find(|figures| figures.id == id).map(|figures| figures.rows.clone());
    let found = found.unwrap_or_default();
    for (place, row) in run.rows.iter().enumerate() {
        // A faulty row is left out of what is computed; the rows before it still stand at their places.
        let figures = found.get(place).filter(|figures| figures.pattern == row.pattern);
        ui.horizontal(|ui| one(ui, cx, (id, place), row, figures));
    }
    let pattern = cx.job.patterns.iter().find(|pattern| run.rows.iter().all(|row| row.pattern != pattern.id)).or(cx.job.patterns.first());
    let words = cx.label("prints-row-add");
    let some = button::outlined(ui, &words, &tokens, pattern.is_some()).on_disabled_hover_text(cx.label("prints-no-pattern"));
    if let Some(pattern) = pattern.filter(|_| some.clicked()) {
        let pattern = pattern.id;
        change(cx, id, move |run| run.rows.push(PrintRow { pattern, count: 1, ..PrintRow::default() }));
    }
}

/// Sets a length of a row.
type Length = fn(&mut PrintRow, Option<Finite>);

fn one(ui: &mut Ui, cx: &mut Cx<'_>, (id, place): (PrintId, usize), row: &PrintRow, found: Option<&PrintRowFigures>) {
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), place);
    let patterns: Vec<(PatternId, String)> =
        cx.job.patterns.iter().map(|pattern| (pattern.id, crate::app::names::pattern(cx, pattern.id))).collect();
    let field = (Id::unique(("print-row-pattern", id.0, place)), &*named(cx, "prints-row-pattern"), PATTERN);
    if let Some(Some(pattern)) = choice(ui, cx, field, Some(&row.pattern), &patterns, false) {
        edit(cx, id, place, move |row| row.pattern = pattern);
    }
    let name = named(cx, "prints-row-count");
    let field = Number::new(Id::unique(("print-row-count", id.0, place)), &name, Kind::Count).now(Some(f64::from(row.count))).width(COUNT);
    if let Some(many) = count(ui, cx, &field) {
        edit(cx, id, place, move |row| row.count = many.unwrap_or(1).max(1));
    }
    let sides: [(&str, Option<Finite>, Length); 3] = [
        ("prints-row-x", row.x_mm, |row, length| row.x_mm = length),
        ("prints-row-y", row.y_mm, |row, length| row.y_mm = length),
        ("prints-row-height", row.height_mm, |row, length| row.height_mm = length),
    ];
    for (axis, (key, now, set)) in sides.into_iter().enumerate() {
        let name = named(cx, key);
        // What the file says stands there in lighter ink until something else is typed.
        let by_file = found.and_then(|found| cx.computed.book.number(found.size[axis]));
        let field = Number::new(Id::unique((key, id.0, place)), &name, Kind::Length).now(now.map(Finite::get));
        if let Some(length) = number(ui, cx, &field.default(by_file).width(SIDE)) {
            edit(cx, id, place, move |row| set(row, length));
        }
    }
    match found {
        Some(found) => {
            figure(ui, cx, found.fits, Look::ROW.width(FITS));
        }
        None => ui.add_space(FITS + ui.spacing().item_spacing.x),
    }
    let name = numbered(&cx.label("prints-row-out"), place);
    if button::link(ui, &cx.label("row-take-out"), &cx.tokens.clone()).accessible_name(name).clicked() {
        change(cx, id, move |run| {
            if place < run.rows.len() {
                run.rows.remove(place);
            }
        });
    }
}

fn edit(cx: &mut Cx<'_>, id: PrintId, place: usize, edit: impl FnOnce(&mut PrintRow) + 'static) {
    change(cx, id, move |run| {
        if let Some(row) = run.rows.get_mut(place) {
            edit(row);
        }
    });
}
