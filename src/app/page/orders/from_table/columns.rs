//! Which column of a table is what, and what a person must say before some rows can be read.

use eframe::egui::{Id, Ui};

use super::words::{ROLES, role_key};
use crate::app::cx::Cx;
use crate::app::theme::size;
use crate::app::widget::choice::choice;
use crate::app::widget::heading;
use crate::app::widget::row::{cell, row};
use crate::app::widget::text::text;
use crate::files::order_table::{Mapping, Question, Role};
use crate::paper::words::one_line;
use crate::stock::EntryId;
use crate::table::{Decimal, Table};

const WIDE: f32 = 170.0;

/// A column's name: what its head says, or its number.
fn name(cx: &Cx<'_>, table: &Table, column: usize) -> String {
    let head = table.heading.and_then(|at| table.rows.get(at)).map(|row| one_line(row.cell(column))).unwrap_or_default();
    if head.is_empty() { cx.say("from-table-column", &[("number", (column + 1).into())]) } else { head }
}

/// Shows the columns with their first cell, and what each is taken for.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, table: &Table, mapping: &mut Mapping) {
    let options: Vec<(Role, String)> = ROLES.into_iter().map(|role| (role, cx.label(role_key(role)))).collect();
    let first = table.heading.map_or(0, |at| at + 1);
    for column in 0..mapping.columns.len() {
        let label = name(cx, table, column);
        let sample = table.rows.get(first).map(|row| one_line(row.cell(column))).unwrap_or_default();
        let now = mapping.columns[column];
        let said = row(ui, &label, &cx.tokens, |ui| {
            let spoken = cx.say("from-table-is", &[("column", (&label).into())]);
            let said = choice(ui, cx, (Id::unique(("from-table", column)), spoken.as_str(), WIDE), Some(&now), &options, false);
            cell(ui, &sample, WIDE, size::SMALL, cx.tokens.ink2);
            said
        });
        if let Some(Some(role)) = said {
            mapping.set(column, role);
        }
    }
    if mapping.column(Role::Client).is_none() {
        let label = cx.label("from-table-client");
        let now = mapping.client.clone().unwrap_or_default();
        if let Some(client) = row(ui, &label, &cx.tokens, |ui| text(ui, cx, Id::unique("from-table-client"), &label, &now, 80.0)) {
            mapping.client = Some(client).filter(|client| !client.trim().is_empty());
        }
    }
    if mapping.column(Role::Quantity).is_none() {
        mapping.quantity = Some(1);
        heading::says(ui, &cx.label("from-table-one-each"), &cx.tokens);
    }
}

/// Asks what nothing in the table decides.
pub fn questions(ui: &mut Ui, cx: &Cx<'_>, table: &Table, questions: &[Question], mapping: &mut Mapping) {
    if !questions.is_empty() {
        heading::group(ui, &cx.label("from-table-asks"), &cx.tokens);
    }
    for (nth, question) in questions.iter().enumerate() {
        let id = Id::unique(("from-table-question", nth));
        match question {
            Question::DayOrder { column } => {
                let label = name(cx, table, *column);
                let options = [(true, cx.label("from-table-day-first")), (false, cx.label("from-table-month-first"))];
                let said = row(ui, &label, &cx.tokens, |ui| {
                    choice(ui, cx, (id, label.as_str(), WIDE), mapping.day_first.as_ref(), &options, false)
                });
                mapping.day_first = said.unwrap_or(mapping.day_first);
            }
            Question::DecimalSign { column } => {
                let label = name(cx, table, *column);
                let options = [(Decimal::Point, cx.label("from-table-point")), (Decimal::Comma, cx.label("from-table-comma"))];
                let said =
                    row(ui, &label, &cx.tokens, |ui| choice(ui, cx, (id, label.as_str(), WIDE), mapping.decimal.as_ref(), &options, false));
                mapping.decimal = said.unwrap_or(mapping.decimal);
            }
            Question::Alloy { text, among } => alloy(ui, cx, id, (text, among), mapping),
        }
    }
}

/// What a word for an alloy means: those that fit first, then the whole shelf.
fn alloy(ui: &mut Ui, cx: &Cx<'_>, id: Id, (text, among): (&str, &[String]), mapping: &mut Mapping) {
    let shelf = &cx.computed.shelves.today;
    let named = |id: &str| Some((id.to_owned(), shelf.entry(id)?.name().to_owned()));
    let mut options: Vec<(String, String)> = among.iter().filter_map(|id| named(id)).collect();
    for entry in shelf.entries().filter(|entry| shelf.get::<crate::stock::Alloy>(entry.id().as_str()).is_some()) {
        let id: &EntryId = entry.id();
        if !among.iter().any(|other| *other == id.to_string()) {
            options.push((id.to_string(), entry.name().to_owned()));
        }
    }
    let label = one_line(text);
    let said = row(ui, &label, &cx.tokens, |ui| choice(ui, cx, (id, label.as_str(), 260.0), None::<&String>, &options, true));
    if let Some(Some(meant)) = said {
        mapping.name_alloy(text, &meant);
    }
}
